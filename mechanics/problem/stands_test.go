package problem

import (
	"math/rand/v2"
	"reflect"
	"testing"

	"trivet/fixtures"
	"trivet/mechanics/sheet"
)

func parsedSheet(t testing.TB, text string) *sheet.Sheet {
	t.Helper()
	s, err := sheet.Parse([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// TestWhatDoesNotDependStillStands: one bad cell makes one error, and what is not
// made of it keeps its values.
func TestWhatDoesNotDependStillStands(t *testing.T) {
	const text = `
[given]
h = "3"
k = "2*h"
w = "50 N"
[points]
P = { at = "0, 0, 0", on = "particle" }
A = "4, 0, h"
B = "A + (0, 1, k) m"
C = "-4, 0, 3"
[lines]
T1 = { kind = "cable", path = "P A" }
T2 = { kind = "cable", path = "P B" }
T3 = { kind = "cable", path = "P C" }
T4 = { kind = "cable", at = "P", along = "+y", magnitude = "2*T3" }
W = { kind = "force", at = "P", along = "-z", magnitude = "w" }
`
	base := parsedSheet(t, text)
	if _, errs := Read(base); len(errs) > 0 {
		t.Fatal(errs)
	}
	for _, c := range []struct {
		name  string
		ref   sheet.Ref
		text  string
		fails map[string]bool // points and lines that no longer stand
	}{
		{"a given below two points and two lines", sheet.Ref{Table: "given", Row: "h"}, "3 +",
			map[string]bool{"A": true, "B": true, "T1": true, "T2": true}},
		{"a given below one point", sheet.Ref{Table: "given", Row: "k"}, "2*", map[string]bool{"B": true, "T2": true}},
		{"a point below another", sheet.Ref{Table: "points", Row: "A"}, "4, 0,", map[string]bool{"A": true, "B": true, "T1": true, "T2": true}},
		{"a given below a magnitude", sheet.Ref{Table: "given", Row: "w"}, "50 M", map[string]bool{"W": true}},
		{"a point that is a particle", sheet.Ref{Table: "points", Row: "P", Key: "at"}, "0, 0, zero",
			map[string]bool{"P": true, "T1": true, "T2": true, "T3": true, "T4": true, "W": true}},
		{"a magnitude below another", sheet.Ref{Table: "lines", Row: "T3", Key: "magnitude"}, "5 m", map[string]bool{"T3": true, "T4": true}},
		{"a path", sheet.Ref{Table: "lines", Row: "T1", Key: "path"}, "P Z", map[string]bool{"T1": true}},
		{"a kind", sheet.Ref{Table: "lines", Row: "T3", Key: "kind"}, "rope", map[string]bool{"T3": true, "T4": true}},
		{"a limit", sheet.Ref{Table: "lines", Row: "T3", Key: "limit"}, "five", map[string]bool{}},
		{"figures", sheet.Ref{Row: "figures"}, "none", map[string]bool{}},
	} {
		t.Run(c.name, func(t *testing.T) {
			p, errs := Read(base.With(c.ref, c.text))
			if len(errs) != 1 {
				t.Errorf("%d errors: %v", len(errs), errs)
			}
			if len(errs) > 0 && errs[0].Ref != c.ref {
				t.Errorf("the error is at %v, want %v", errs[0].Ref, c.ref)
			}
			for _, pt := range p.Points {
				if pt.OK == c.fails[pt.Name] {
					t.Errorf("the point %s stands: %v", pt.Name, pt.OK)
				}
			}
			for _, l := range p.Lines {
				if l.OK == c.fails[l.Name] {
					t.Errorf("the line %s stands: %v", l.Name, l.OK)
				}
			}
		})
	}
}

// TestReaderRemembersRight: a reader that has read other sheets, and forgotten
// some, gives what a new one gives.
func TestReaderRemembersRight(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 1))
	rd := NewReader()
	words := []string{"", "6", "6 m", "4, 0, 0", "2*T1", "50 N", "P A", "(", "+x", "cable", "1/0", "g"}
	for round := range 3 {
		for _, f := range append(fixtures.Starts(), fixtures.Published()...) {
			s := parsedSheet(t, f.Answered())
			for range round * 4 {
				table := s.Tables[rng.IntN(len(s.Tables))]
				if len(table.Rows) == 0 {
					continue
				}
				row := table.Rows[rng.IntN(len(table.Rows))]
				if len(row.Cells) == 0 {
					continue
				}
				cell := row.Cells[rng.IntN(len(row.Cells))]
				s = s.With(sheet.Ref{Table: table.Name, Row: row.Name, Key: cell.Key}, words[rng.IntN(len(words))])
			}
			got, gotErrs := rd.Read(s)
			want, wantErrs := Read(s)
			if !reflect.DeepEqual(got, want) || !reflect.DeepEqual(gotErrs, wantErrs) {
				t.Fatalf("%s: a reader in use reads it otherwise", f.Name)
			}
		}
	}
}
