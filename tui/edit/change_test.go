package edit

import (
	"testing"

	"trivet/mechanics/sheet"
	"trivet/tui/cells"
)

// One of the results asked for is changed, or added, and the others stay as they stand.
func TestOneOfTheResultsAskedFor(t *testing.T) {
	s, err := sheet.Parse([]byte(`asked = " T1,  angle(T1, T2)  |u| T2.x"`))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		word       int
		text, want string
	}{
		{0, "T3", "T3,  angle(T1, T2)  |u| T2.x"},
		{1, "T3", "T1,  T3  |u| T2.x"},
		{2, "", "T1,  angle(T1, T2)   T2.x"},
		{3, " T2.y ", "T1,  angle(T1, T2)  |u| T2.y"},
		{4, "T3", "T1,  angle(T1, T2)  |u| T2.x"},
		{behindAll, "T3", "T1,  angle(T1, T2)  |u| T2.x T3"},
	} {
		ref, got := CellOf(s, cells.Slot{Does: cells.SetAsked, Word: c.word}, c.text)
		if ref != askedFor || got != c.want {
			t.Errorf("word %d made %q: %v %q, want %q", c.word, c.text, ref, got, c.want)
		}
	}
}
