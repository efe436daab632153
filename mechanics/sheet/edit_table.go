package sheet

import (
	"slices"

	"trivet/mechanics/diag"
)

// The usual order of a sheet, which new entries and tables fall in with.
var (
	usualTop    = [...]string{"title", "statement", "lesson", "plane", "up", "g", "figures", "asked"}
	usualTables = [...]string{"units", "given", "points", "bodies", "lines", "joints", "couples", "distributed", "answers"}
)

// lastSection is the last section whose header begins with a name, or -1.
func (s *Sheet) lastSection(name string) int {
	for i := len(s.sections) - 1; i > 0; i-- {
		if s.sections[i].path[0] == name {
			return i
		}
	}
	return -1
}

// addTop adds a row before the first header: after the row named after, else
// in the usual order, else as the last one.
func (s *Sheet) addTop(name, text, after string) ([]splice, error) {
	if err := checkName("the name", name); err != nil {
		return nil, err
	}
	key, value := encodeName(name), encode(text, "")
	t := s.Table("")
	if r, ok := t.Row(after); ok {
		return s.behind(r.pieces[0], key, value), nil
	}
	if i := slices.Index(usualTop[:], name); i >= 0 && len(t.Rows) > 0 {
		for i--; i >= 0; i-- {
			if r, ok := t.Row(usualTop[i]); ok {
				return s.behind(r.pieces[0], key, value), nil
			}
		}
		whole := t.Rows[0].pieces[0].whole
		start := lineStart(s.text, whole.Start)
		return []splice{{diag.Between(start, start), s.assign(key, value, whole) + s.eol()}}, nil
	}
	root := s.sections[0]
	if root.end > root.head.End {
		var like diag.Span
		if n := len(t.Rows); n > 0 {
			like = t.Rows[n-1].pieces[0].whole
		}
		return []splice{s.lineAfter(root.end, s.assign(key, value, like))}, nil
	}
	return s.firstEntry(s.assign(key, value, diag.Span{})), nil
}

// firstEntry puts a line before the first header of a sheet that has none
// there: after a comment that opens the file and is set off by a blank line.
func (s *Sheet) firstEntry(line string) []splice {
	at := s.sections[0].head.End
	end := len(s.text)
	if len(s.sections) > 1 {
		end = lineStart(s.text, s.sections[1].head.Start)
	}
	for i, opened := at, false; i < end; {
		next := min(len(s.text), lineEnd(s.text, i)+1)
		if opened = opened || !s.blank(i); opened && s.blank(i) {
			at = next
		}
		i = next
	}
	eol := s.eol()
	if at == len(s.text) && at > s.sections[0].head.End && s.text[at-1] != '\n' {
		return []splice{{diag.Between(at, at), eol + line + eol}}
	}
	line += eol
	if !s.blank(at) {
		line += eol
	}
	return []splice{{diag.Between(at, at), line}}
}

// addTable adds a table with one row: after the table that comes before it in
// the usual order, else at the end of the file.
func (s *Sheet) addTable(table, entry string) []splice {
	for i := slices.Index(usualTables[:], table) - 1; i >= 0; i-- {
		if sec := s.lastSection(usualTables[i]); sec > 0 {
			return []splice{s.block(s.sections[sec].end, table, entry)}
		}
	}
	if root := s.sections[0]; root.end > root.head.End && slices.Contains(usualTables[:], table) {
		return []splice{s.block(root.end, table, entry)}
	}
	return []splice{s.block(len(s.text), table, entry)}
}

// block is a table with one row, set off by blank lines, after the line in
// which an entry ends.
func (s *Sheet) block(end int, table, entry string) splice {
	eol := s.eol()
	text := "[" + encodeName(table) + "]" + eol + entry + eol
	at := min(len(s.text), lineEnd(s.text, end)+1)
	if at > s.sections[0].head.End {
		text = eol + text
		if s.text[at-1] != '\n' {
			text = eol + text
		}
	}
	if !s.blank(at) {
		text += eol
	}
	return splice{diag.Between(at, at), text}
}
