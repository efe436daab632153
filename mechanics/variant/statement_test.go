package variant

import (
	"strings"
	"testing"

	"trivet/fixtures"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
)

// Words that state another value than a given has are found, and no others: no sheet of ours
// contradicts itself, and of a given that is changed behind the back of the words nothing
// else is said to be wrong.
func TestContradictions(t *testing.T) {
	const share = 0.9 // some values stand elsewhere in their sheet too, and the words may mean those
	found, changed := 0, 0
	for _, f := range append(fixtures.Starts(), fixtures.Published()...) {
		s, err := sheet.Parse([]byte(f.Answered()))
		if err != nil {
			t.Fatal(err)
		}
		p, _ := problem.Read(s)
		for _, c := range Contradictions(s, p) {
			t.Errorf("%s: %s", f.Name, c.Text())
		}
		for _, g := range Grids(s, p) {
			told := Follow(s, p, g.Name).Times > 0
			for k := range min(g.Count, 50) {
				if g.own() == k {
					continue
				}
				other, err := s.Apply(sheet.SetCell{Ref: g.Ref, Text: g.Text(k)})
				if err != nil {
					t.Fatal(err)
				}
				q, _ := problem.Read(other)
				said := Contradictions(other, q)
				for _, c := range said {
					if !strings.Contains(c.Msg, ", but "+g.Name+" is ") || !told {
						t.Errorf("%s with %s = %s: %s", f.Name, g.Name, g.Text(k), c.Text())
					}
				}
				if told {
					changed++
					found += min(len(said), 1)
				}
			}
		}
	}
	if changed == 0 || float64(found) < share*float64(changed) {
		t.Errorf("of %d changes that contradict the words %d were found", changed, found)
	}
}
