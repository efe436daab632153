package sheet

import (
	"strings"

	"trivet/mechanics/diag"
)

// DeleteTable takes a table out, with the comments that stand right above its
// headers. Where there is none nothing happens.
type DeleteTable struct{ Table string }

func (e DeleteTable) edit(s *Sheet) ([]splice, error) {
	t := s.table(e.Table)
	if t == nil {
		return nil, nil
	}
	if e.Table == "" {
		return nil, diag.New("the rows before the first header are not a table", "delete them one by one")
	}
	var out []splice
	headed := map[int]bool{}
	for i, sec := range s.sections[1:] {
		if sec.path[0] == e.Table {
			headed[i+1] = true
			out = append(out, s.cutLines(diag.Between(s.comments(sec.head.Start), max(sec.head.End, sec.end))))
		}
	}
	if t.braces != nil {
		return append(out, s.cutLines(t.braces.at)), nil
	}
	for _, r := range t.Rows { // answers.T1 = "..." before any header
		for _, p := range r.pieces {
			if !headed[p.section] && p.braces == nil {
				out = append(out, s.cutLines(p.whole))
			}
		}
	}
	return out, nil
}

// comments gives where the comments begin that stand right above a place.
func (s *Sheet) comments(at int) int {
	at = lineStart(s.text, at)
	for at > 0 {
		before := lineStart(s.text, at-1)
		if before == at || !strings.HasPrefix(strings.TrimSpace(s.text[before:at]), "#") {
			break
		}
		at = before
	}
	return at
}
