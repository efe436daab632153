package report

import (
	"crypto/sha256"
	"fmt"
	"strings"
	"testing"

	"trivet/fixtures/solved"
	"trivet/mechanics/doc"
	"trivet/mechanics/uncertainty"
)

const hung = `title = "Load"
plane = "xy"
[given]
h = "4 m"
reach = "h - 1 m"
[points]
P = { at = "0, 0", on = "particle" }
A = "-3, h"
B = "reach, h"
[lines]
T1 = { kind = "cable", path = "P A"LIMIT }
T2 = { kind = "cable", path = "P B" }
F = { kind = "force", at = "P", along = "DOWN", magnitude = "100 N" }
`

func fieldText(t *testing.T, limit, down string, opt PageOptions) string {
	t.Helper()
	s, sol := solved.Sheet(t, strings.NewReplacer("LIMIT", limit, "DOWN", down).Replace(hung))
	opt.Field, opt.Sheet, opt.Uncertainty = true, s, uncertainty.Of(s, sol)
	return doc.Text(pageOf(sol, opt))
}

// A page for a job begins with one line that says whether it is accepted, and why not.
func TestTheFieldPageSaysWhetherItIsAccepted(t *testing.T) {
	for _, c := range []struct {
		limit, down, head string
		apart             bool // a utilisation above 90 %
	}{
		{"", "-y", "Accepted", false},
		{`, limit = "100 N"`, "-y", "Accepted", false},
		{`, limit = "65 N"`, "-y", "Accepted", true},
		{`, limit = "60 N"`, "-y", "Not accepted: T1 exceeds its limit of 60.0 N: utilisation 104 %", true},
		{`, limit = "100 N"`, "+y", "Not accepted: cable T1 in compression; and 1 more, below", false},
	} {
		text := fieldText(t, c.limit, c.down, PageOptions{})
		found := false
		for line := range strings.Lines(text) {
			found = found || strings.TrimSpace(line) == c.head
		}
		if !found {
			t.Errorf("limit %q, force along %s: the page does not say %q:\n%s", c.limit, c.down, c.head, text)
		}
		if apart := strings.Contains(text, "Utilisation above 90 %"); apart != c.apart {
			t.Errorf("limit %q, force along %s: high utilisation set apart: %v, want %v", c.limit, c.down, apart, c.apart)
		}
	}
	s, sol := solved.Sheet(t, strings.NewReplacer("LIMIT", `, limit = "63 N"`, "DOWN", "-y", "100 N", "100 N ± 10 N").Replace(hung))
	text := doc.Text(pageOf(sol, PageOptions{Field: true, Sheet: s, Uncertainty: uncertainty.Of(s, sol)}))
	if !strings.Contains(text, "At risk: T1 could reach ") {
		t.Errorf("the page does not say what is at risk:\n%s", text)
	}
}

// A page for a job says of which sheet it is, from which version of the program, who answers
// for it, and what the inputs that were computed come to.
func TestTheFieldPageSaysWhereItIsFrom(t *testing.T) {
	of := PageOptions{File: "jobs/load.toml", Version: "v1.2.3", By: "A. Rigger", Checked: "B. Lead", Date: "2026-05-04 14:30"}
	text := fieldText(t, "", "-y", of)
	hash := fmt.Sprintf("%x", sha256.Sum256([]byte(strings.NewReplacer("LIMIT", "", "DOWN", "-y").Replace(hung))))
	for _, want := range []string{
		"load.toml, sha256 " + hash[:12] + ", trivet v1.2.3",
		"prepared by A. Rigger, checked by B. Lead, date and time 2026-05-04 14:30",
		"h - 1 m = 3.00 m", "reach, h = (3.00, 4.00) m",
	} {
		if !strings.Contains(text, want) {
			t.Errorf("the page does not say %q:\n%s", want, text)
		}
	}
	if text := oneLine(fieldText(t, "", "-y", PageOptions{})); !strings.Contains(text, "prepared by ...") || !strings.Contains(text, "date and time ...") {
		t.Errorf("the page has no room for who prepared it and when:\n%s", text)
	}
}
