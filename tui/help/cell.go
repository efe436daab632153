package help

import (
	"slices"
	"strings"

	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/tui/cells"
	"trivet/tui/grid"
	"trivet/tui/text"
	"trivet/tui/theme"
	"trivet/units"
)

// Takes says what a cell takes, from the table of keys.
func Takes(ref sheet.Ref) string {
	if k, ok := problem.CellKey(ref.Table, ref.Row, ref.Key); ok {
		return k.Says + ". Example: " + k.Example
	}
	return ""
}

// sort is what a cell is read as, of which dimension.
type sort struct {
	as  problem.Reads
	dim units.Dim
}

// more are examples beside that of the key, by what the cell is read as. The names in them stand
// for whatever the sheet has.
var more = map[sort][]string{
	{problem.ReadsValue, units.Dim{}}:           {"3.5 kN", "30 deg"},
	{problem.ReadsRange, units.Dim{}}:           {"2 m .. 4 m", "20 deg .. 40 deg"},
	{problem.ReadsVector, units.Length}:         {"0, 3, 4", "A + (1, 0, 0) m"},
	{problem.ReadsVector, units.Force}:          {"(0, -2, 0) kN", "(?, ?, 0)"},
	{problem.ReadsVector, units.Moment}:         {"(0, 0, -2) kN m", "(20, 0, 0) N m"},
	{problem.ReadsDirection, units.Dim{}}:       {"-y", "(3, 0, -4)", "dir(A, B)"},
	{problem.ReadsMagnitude, units.Force}:       {"5.6 kN", "?"},
	{problem.ReadsMagnitude, units.Moment}:      {"2 kN m", "?"},
	{problem.ReadsIntensity, units.LineLoad}:    {"2 kN/m", "3 kN/m * s/L"},
	{problem.ReadsQuantity, units.Force}:        {"500 N", "2*load"},
	{problem.ReadsQuantity, units.Length}:       {"250 mm", "h/2"},
	{problem.ReadsQuantity, units.Angle}:        {"30 deg", "0.5 rad"},
	{problem.ReadsQuantity, units.Number}:       {"0.25", "tan(20 deg)"},
	{problem.ReadsQuantity, units.LineLoad}:     {"2 kN/m", "0.5 N/mm"},
	{problem.ReadsQuantity, units.Acceleration}: {"1.62 m/s^2", "0 m/s^2"},
	{problem.ReadsPoint, units.Dim{}}:           {"A", "B"},
	{problem.ReadsPoints, units.Dim{}}:          {"A B", "A B C", "T A"},
	{problem.ReadsBody, units.Dim{}}:            {"beam", "ladder", "boom"},
	{problem.ReadsBodies, units.Dim{}}:          {"beam", "left right", "ladder"},
	{problem.ReadsPrinted, units.Dim{}}:         {"2.50 kN", "-1.2 kN m"},
	{problem.ReadsCount, units.Dim{}}:           {"4", "5"},
}

// examples are three texts that a cell may hold, where there are as many.
func examples(k problem.KeyInfo) []string {
	list := append([]string{k.Example}, more[sort{k.Reads, k.Dim}]...)
	if k.Reads == problem.ReadsUnit {
		for _, u := range units.Table() {
			if u.Dim == k.Dim {
				list = append(list, u.Symbol)
			}
		}
	}
	for i := 1; i < len(list); {
		if slices.Contains(list[:i], list[i]) {
			list = slices.Delete(list, i, i+1)
		} else {
			i++
		}
	}
	return list[:min(len(list), 3)]
}

// derived are the columns whose cells follow from the others, by the head without its unit.
var derived = map[string]string{
	"|r|":    "the length of the line between its ends",
	"u":      "its unit vector, from the first point to the second",
	"sense":  "T: tension, it pulls; C: compression, it pushes",
	"used":   "the force as a share of its limit",
	"ok":     "whether your answer agrees",
	"typed":  "the magnitude as typed; ? where it is to be found",
	"x":      "its coordinates",
	"is":     "the value of what is typed",
	"gives":  "the reactions that replace it",
	"holds":  "the reactions that replace it",
	"moment": "its moment as a vector",
}

// cellText says what the cell under the cursor takes, and what each column of its row means.
func (of For) cellText(w int) (d text.Lines) {
	if of.Table == nil || of.At.Row >= len(of.Table.Records) {
		return nil
	}
	slots := of.Table.Records[of.At.Row].Slots
	about := func(name, says string) {
		d.Behind(text.Span{Text: "  " + grid.Fit(name, max(grid.Width(name), 14)) + " "}, ": ", theme.Plain, says, w)
	}
	if of.At.Col < len(slots) && slots[of.At.Col].Does == cells.SetCell {
		s := slots[of.At.Col]
		if k, ok := problem.CellKey(s.Ref.Table, s.Ref.Row, s.Ref.Key); ok {
			d.Heading("This cell: " + s.Label())
			d.Wrapped(theme.Plain, "", say.Capital(k.Says)+".", w)
			if k.Reads != problem.ReadsWord {
				about("for example", strings.Join(examples(k), "; "))
			}
			for _, word := range k.Words {
				if word.Text != "" {
					about(word.Text, word.Says)
				}
			}
		}
	}
	d.Heading("Its row")
	for col, s := range slots {
		head, _, _ := strings.Cut(of.Table.Head(of.At.Row, col), " ")
		says := derived[head]
		if k, ok := problem.CellKey(s.Ref.Table, s.Ref.Row, s.Ref.Key); ok && s.Does == cells.SetCell {
			says = k.Says
		}
		if head != "" && says != "" {
			about(head, says)
		}
	}
	return d
}
