package tui

import (
	"testing"

	"trivet/tui/cells"
)

func TestWidths(t *testing.T) {
	tab := cells.Table{
		Columns: []cells.Column{{Width: 4, Limit: 8}, {Width: 6, Grow: 1}, {Width: 5}, {Width: 5, Grow: 1}},
		Records: []cells.Record{{Slots: []cells.Slot{{Text: "longname"}}}},
	}
	for _, c := range []struct {
		name   string
		w, col int
		want   [4]int
	}{
		{"all fit exactly", 23, 0, [4]int{4, 6, 5, 5}},
		{"the name grows first", 25, 0, [4]int{6, 6, 5, 5}},
		{"then the others", 31, 0, [4]int{8, 8, 5, 7}},
		{"the last is left out", 17, 0, [4]int{4, 6, 5, 0}},
		{"the cursor's column comes into view", 17, 3, [4]int{5, 0, 5, 5}},
		{"a column that does not fit is cut", 10, 1, [4]int{4, 5, 0, 0}},
		{"hardly any room", 3, 2, [4]int{3, 0, 0, 0}},
	} {
		got := tab.Widths(c.w+2, c.col) // the first and the last column stay free
		sum := 0
		for i, w := range got[:len(c.want)] {
			if w != c.want[i] {
				t.Errorf("%s: %v, want %v", c.name, got, c.want)
				break
			}
			if w > 0 {
				sum += w + 1
			}
		}
		if sum-1 > c.w {
			t.Errorf("%s: %v is wider than %d", c.name, got, c.w)
		}
	}
}
