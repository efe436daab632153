package tui

import (
	"fmt"
	"slices"
	"strings"

	"trivet/mechanics/names"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
)

// thingOf gives what a name belongs to: without a table to an unknown, which has no
// row of its own.
func thingOf(ref sheet.Ref) problem.Thing {
	if ref.Table == "" {
		return problem.AnUnknown
	}
	return problem.ThingOf(ref.Table)
}

// usersOf gives the rows with a cell that uses the name of a row.
func usersOf(s *sheet.Sheet, ref sheet.Ref) (rows []string) {
	for _, u := range names.UsesOf(s, thingOf(ref), ref.Row) {
		if own := u.Ref.Table == ref.Table && u.Ref.Row == ref.Row; !own && !slices.Contains(rows, u.Ref.Row) {
			rows = append(rows, u.Ref.Row)
		}
	}
	return rows
}

// maxNamed is how many rows a message names.
const maxNamed = 3

// enumerate names a few rows: "T1 and T2", "T1, T2, T3 and 4 more".
func enumerate(rows []string) string {
	switch n := len(rows); {
	case n == 0:
		return ""
	case n == 1:
		return rows[0]
	case n > maxNamed:
		return fmt.Sprintf("%s and %d more", strings.Join(rows[:maxNamed], ", "), n-maxNamed)
	}
	return strings.Join(rows[:len(rows)-1], ", ") + " and " + rows[len(rows)-1]
}

// listed says who uses something: "T1 and T2 use it".
func listed(rows []string) string {
	if len(rows) == 1 {
		return rows[0] + " uses it"
	}
	return enumerate(rows) + " use it"
}
