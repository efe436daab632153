package results

import (
	"regexp"
	"strings"
	"testing"

	"trivet/fixtures"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/tui/text"
	"trivet/tui/theme"
	"trivet/units"
)

// Where a line of a text ends in a number, or in a sign that wants one, and the next goes on.
var (
	numberEnds = regexp.MustCompile(`(?:^| )[-+(]*\d[^ ]*[\d)]$`)
	signEnds   = regexp.MustCompile(`[^ ]+ [=±≈<>≤≥]$`)
	signBegins = regexp.MustCompile(`^[=±≈<>≤≥] `)
)

// No text of any sheet that comes with the program parts a number from its unit, nor a name from
// its value, where a line has room for both.
func TestNumbersAreNotBrokenOverLines(t *testing.T) {
	symbols := map[string]bool{}
	for _, u := range units.Table() {
		symbols[u.Symbol] = true
	}
	sheets := append(fixtures.Starts(), fixtures.Published()...)
	for _, set := range fixtures.Sets() {
		sheets = append(sheets, set.Sheets...)
	}
	looked := 0
	for _, f := range sheets {
		of, err := sheet.Parse([]byte(f.Answered()))
		if err != nil {
			t.Fatal(err)
		}
		p, _ := problem.Read(of)
		s := statics.Solve(p)
		texts := append([]string{p.Statement}, s.Words()...)
		for _, c := range s.Checks {
			texts = append(texts, c.Says(p))
		}
		for w := 40; w <= 100; w++ {
			for _, says := range texts {
				var d text.Lines
				d.Wrapped(theme.Plain, "", says, w)
				for i := 1; i < len(d); i++ {
					before, after := d[i-1][0].Text, d[i][0].Text
					first, _, _ := strings.Cut(after, " ")
					looked++
					if symbols[strings.TrimRight(first, ",;:.)")] && numberEnds.MatchString(before) || signEnds.MatchString(before) || signBegins.MatchString(after) {
						t.Errorf("%s at %d columns:\n%s\n%s", f.Name, w, before, after)
					}
				}
			}
		}
	}
	if looked < 10000 {
		t.Errorf("only %d ends of lines looked at", looked)
	}
}
