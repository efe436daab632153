package report

import (
	"strings"
	"testing"

	"trivet/fixtures/leak"
	"trivet/fixtures/solved"
	"trivet/mechanics/doc"
	"trivet/mechanics/tutor"
)

const hungLamp = `plane = "xy"
title = "Lamp"
statement = "A lamp of 12 N."
[points]
P = { at = "0, 0", on = "particle" }
A = "-3, 4"
B = "3, 4"
[lines]
T1 = { kind = "cable", path = "P A" }
T2 = { kind = "cable", path = "P B" }
F = { kind = "force", at = "P", along = "-y", magnitude = "12 N" }
`

func enteredAs(t *testing.T, entries ...string) (*tutor.Practice, PageOptions) {
	t.Helper()
	s, sol := solved.Sheet(t, hungLamp)
	p := tutor.New(sol)
	for _, e := range entries {
		p.Enter(e)
	}
	return p, PageOptions{Task: true, Sheet: s, Own: &Own{Entries: p.Entries}}
}

// The student's right equations stand first, then what else was right, then what was
// wrong; what did not read is left out.
func TestOwnWork(t *testing.T) {
	p, _ := enteredAs(t, "T1 = 7 N", "ΣFx P: T2*0.6 - T1*0.6 = 0", "cut P: T1 T2 F", "0.8 T1 + + T2", "ΣFy P: 0.8 T1 + 0.8 T2 = 12", "1.6 T1 + 1.6 T2 = 24", "T1 = 7.50 N")
	got := doc.Text(&doc.Doc{Sections: []doc.Section{{Blocks: OwnWork(p.Entries)}}})
	at := -1
	for _, want := range []string{"Right equations:", "ΣFx P: T2*0.6 - T1*0.6 = 0", "ΣFx on P", "ΣFy P: 0.8 T1 + 0.8 T2 = 12", "adds nothing new", "Also right:", "cut P: T1 T2 F", "T1 = 7.50 N", "Wrong:", "T1 = 7 N"} {
		i := strings.Index(got, want)
		if i <= at {
			t.Errorf("%q is at %d, behind %d of\n%s", want, i, at, got)
		}
		at = max(at, i)
	}
	if strings.Contains(got, "+ +") {
		t.Errorf("what did not read is there:\n%s", got)
	}
	if none := OwnWork(nil); none != nil {
		t.Errorf("nothing entered is %v", none)
	}
}

// A page to hand in has the task, the work, the name and the date, or room for these, and
// no value that was not entered.
func TestOwnPage(t *testing.T) {
	p, opt := enteredAs(t, "ΣFx P: T2*0.6 - T1*0.6 = 0", "T1 = 7 N")
	opt.Own.Reached = "2 entries and 1 hint; not done."
	for _, format := range []string{"md", "tex", "html", "svg", "pdf", "png"} {
		page, err := Page(format, solution(t, hungLamp), opt)
		if err != nil || len(page) == 0 {
			t.Errorf("%s: %v", format, err)
		}
		if text := leak.Readable(format, page); format != "pdf" && format != "png" && strings.Contains(text, "7.5") {
			t.Errorf("%s has the value of T1", format)
		}
	}
	page, _ := Page("md", solution(t, hungLamp), opt)
	text := string(page)
	for _, want := range []string{"Name: ....", "Date: ....", "A lamp of 12 N.", "![Figure 1]", "## Own work", "2 entries and 1 hint; not done.", "T1 = 7 N", "| Symbol | Result | Unit |"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in\n%s", want, leak.Readable("md", page))
		}
	}
	opt.Own.Name, opt.Date = "A. Student", "2026-12-02"
	page, _ = Page("md", solution(t, hungLamp), opt)
	if text := string(page); !strings.Contains(text, "Name: A. Student") || !strings.Contains(text, "Date: 2026-12-02") {
		t.Errorf("%s", leak.Readable("md", page))
	}
	if len(p.Entries) != 2 {
		t.Errorf("%d entries", len(p.Entries))
	}
}
