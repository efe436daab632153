package tui

import (
	"fmt"
	"strings"
	"unicode"

	"trivet/mechanics/sheet"
)

// mentions gives the rows with a cell that uses a name as a word.
func mentions(s *sheet.Sheet, ref sheet.Ref) (rows []string) {
	for _, t := range s.Tables {
		for _, r := range t.Rows {
			if t.Name == ref.Table && r.Name == ref.Row || t.Name == "" && r.Name != "asked" {
				continue
			}
			for _, c := range r.Cells {
				if c.Readable && uses(c.Text, ref.Row) {
					rows = append(rows, r.Name)
					break
				}
			}
		}
	}
	return rows
}

func uses(text, name string) bool {
	isName := func(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) || r == '_' || r == '\'' }
	for i := 0; ; {
		k := strings.Index(text[i:], name)
		if k < 0 || name == "" {
			return false
		}
		k += i
		before, after := []rune(text[:k]), []rune(text[k+len(name):])
		if (len(before) == 0 || !isName(before[len(before)-1])) && (len(after) == 0 || !isName(after[0])) {
			return true
		}
		i = k + len(name)
	}
}

// listed names a few rows: "T1 and T2 use it".
func listed(rows []string) string {
	const most = 3
	switch n := len(rows); {
	case n == 1:
		return rows[0] + " uses it"
	case n > most:
		return fmt.Sprintf("%s and %d more use it", strings.Join(rows[:most], ", "), n-most)
	}
	return strings.Join(rows[:len(rows)-1], ", ") + " and " + rows[len(rows)-1] + " use it"
}
