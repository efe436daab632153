package sheet

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
	"unicode/utf8"
)

// oddTexts are what people type and what breaks quoting.
var oddTexts = []string{"", "1", "4, 0, 0", `5'-6 1/2"`, `"`, `'`, `"""`, `"""x`, `a""""b`, `'''x`, `'''`, `\`, `\\n`, `a\`, "a\nb", "\n", "\r\nx", "a\r\nb\r\n", "\r", "\t",
	"°", "±", "日本", "\U0001F9F5", "# no comment", "}", "]", "= x", " ", " x ", "a\x00b", "\x7f", "\x1b[0m", `''"`, `"x""`, "x'", "x\"\"", "3", "-2.5e3", "true",
	"1_000", "inf", "0x1F", "2026-01-02", "{ at = 1 }", "007", "99999999999999999999", "1e999", "\u2028", "\u0085"}

var oddNames = []string{"A", "B", "T1", "C.x", "x y", "é", `q"`, `b\s`, "'", "1", "-", "true", "=", "#", "[a]", "title", "at"}

// maker writes a random sheet.
type maker struct {
	*rand.Rand
	sb  strings.Builder
	eol string
}

func pick[T any](m *maker, from []T) T { return from[m.IntN(len(from))] }

func (m *maker) value() string {
	text := pick(m, oddTexts)
	switch m.IntN(8) {
	case 0:
		return encode(text, "'")
	case 1:
		return encode(text, `""""""`)
	case 2:
		return encode(text, "''''''")
	case 3:
		return pick(m, []string{"3", "-1.5", "1_000", "true", "0x1F", "inf"})
	case 4:
		return pick(m, []string{"[1, 2]", "2026-01-02", "[ # c" + m.eol + " 1,\t'x' ]", "10:00:00"})
	}
	return encode(text, "")
}

func (m *maker) blank() string { return pick(m, []string{"", " ", "  ", "\t"}) }

func (m *maker) cells() []string {
	var out []string
	for _, k := range m.Perm(4)[:m.IntN(4)] {
		out = append(out, []string{"at", "on", `"a b"`, "x.y"}[k]+m.blank()+"="+m.blank()+m.value())
	}
	return out
}

func (m *maker) line(s string) {
	m.sb.WriteString(m.blank() + s + m.blank() + pick(m, []string{"", "", "# note é", "#"}) + m.eol)
	for m.IntN(4) == 0 {
		m.sb.WriteString(pick(m, []string{"", "  ", "# a = 1", "\t# [x]"}) + m.eol)
	}
}

// rows writes the rows of a table; dots goes before each name.
func (m *maker) rows(dots string) []string {
	var headed []string
	for _, i := range m.Perm(len(oddNames))[:m.IntN(6)] {
		name := EncodeName(oddNames[i])
		switch m.IntN(5) {
		case 0:
			m.line(dots + name + m.blank() + "=" + m.blank() + "{" + m.blank() + strings.Join(m.cells(), m.blank()+","+m.blank()) + m.blank() + "}")
		case 1:
			for _, c := range m.cells() {
				m.line(dots + name + m.blank() + "." + c)
			}
		case 2:
			if dots == "" {
				headed = append(headed, name)
			}
		default:
			m.line(dots + name + m.blank() + "=" + m.blank() + m.value())
		}
	}
	return headed
}

func (m *maker) sheet() string {
	m.eol = pick(m, []string{"\n", "\r\n"})
	if m.IntN(5) == 0 {
		m.sb.WriteString(bom)
	}
	for _, k := range m.Perm(len(usualTop))[:m.IntN(4)] {
		m.line(usualTop[k] + m.blank() + "=" + m.blank() + m.value())
	}
	if m.IntN(3) == 0 {
		m.rows("points.")
	} else {
		m.table("points")
	}
	for _, k := range m.Perm(5)[:m.IntN(5)] {
		m.table([]string{"given", "lines", "answers", `"odd table"`, "units"}[k])
	}
	if m.IntN(3) == 0 {
		m.line("[[views]]")
		m.line("A = 1")
		m.line("[[views]]")
		m.line("[views.B]")
		m.line("x = 1")
	}
	text := m.sb.String()
	if m.IntN(4) == 0 {
		text = strings.TrimSuffix(text, m.eol)
	}
	return text
}

func (m *maker) table(name string) {
	m.line("[" + name + "]")
	for _, r := range m.rows("") {
		m.line("[" + name + "." + r + "]")
		for _, c := range m.cells() {
			m.line(c)
		}
	}
}

// edit makes a random edit of a sheet, not always one that can be done.
func (m *maker) edit(s *Sheet) Edit {
	table := pick(m, []string{"", "points", "points", "given", "lines", "answers", "odd table", "joints"})
	row := pick(m, oddNames)
	if t := s.Table(table); len(t.Rows) > 0 && m.IntN(5) > 0 {
		row = pick(m, t.Rows).Name
	}
	key := pick(m, []string{"", "", "at", "on", "a b", "new"})
	if r, ok := s.Table(table).Row(row); ok && len(r.Cells) > 0 && m.IntN(2) == 0 {
		key = pick(m, r.Cells).Key
	}
	ref := Ref{table, row, key}
	switch m.IntN(7) {
	case 0:
		return DropCell{ref}
	case 1:
		return DeleteRow{table, row}
	case 2:
		return RenameRow{table, row, pick(m, oddNames)}
	case 3:
		e := AddRow{Table: table, Name: pick(m, oddNames)}
		if m.IntN(2) == 0 {
			e.After = row
		}
		for _, k := range m.Perm(3)[:m.IntN(3)] {
			e.Cells = append(e.Cells, KeyText{[]string{"", "at", "on"}[k], pick(m, oddTexts)})
		}
		return e
	}
	return SetCell{ref, pick(m, oddTexts)}
}

// contents lists all cells but those of a row that an edit is about.
func contents(s *Sheet, table string, rows ...string) map[string]string {
	out := map[string]string{}
	for _, t := range s.Tables {
	rows:
		for _, r := range t.Rows {
			for _, name := range rows {
				if t.Name == table && r.Name == name {
					continue rows
				}
			}
			out[fmt.Sprintf("%q %q", t.Name, r.Name)] = fmt.Sprint(len(r.Cells))
			for i, c := range r.Cells {
				out[fmt.Sprintf("%q %q %q", t.Name, r.Name, c.Key)] = fmt.Sprintf("%d %v %q", i, c.Readable, c.Text)
			}
		}
	}
	return out
}

// about names the rows an edit may change.
func about(e Edit) (table string, rows []string) {
	switch e := e.(type) {
	case SetCell:
		return e.Table, []string{e.Row}
	case DropCell:
		return e.Table, []string{e.Row}
	case DeleteRow:
		return e.Table, []string{e.Row}
	case RenameRow:
		return e.Table, []string{e.Row, e.To}
	case AddRow:
		return e.Table, []string{e.Name}
	}
	return "", nil
}

// checkEdit makes an edit and checks all that must hold of it.
func checkEdit(t *testing.T, s *Sheet, e Edit) *Sheet {
	t.Helper()
	next, err := s.Apply(e)
	if err != nil {
		if set, ok := e.(SetCell); ok && utf8.ValidString(set.Text) && len(set.Text) <= maxCell {
			if c, ok := s.Cell(set.Ref); ok && c.Readable {
				t.Fatalf("%#v: %v in\n%s", e, err, s.text)
			}
		}
		if err.Error() == "" || strings.Contains(err.Error(), "toml") {
			t.Fatalf("%#v: %q", e, err)
		}
		return s
	}
	h := NewHistory(s)
	if err := h.Do(e); err != nil || h.Current().Text() != next.Text() {
		t.Fatalf("%#v: done again it gives %v\n%s", e, err, h.Current().Text())
	}
	if h.Undo(); h.Current().Text() != s.text {
		t.Fatalf("%#v: undone it gives\n%s\nnot\n%s", e, h.Current().Text(), s.text)
	}
	table, rows := about(e)
	before, after := contents(s, table, rows...), contents(next, table, rows...)
	if fmt.Sprint(before) != fmt.Sprint(after) {
		t.Fatalf("%#v changed another cell:\n%v\n%v\n%s", e, before, after, next.text)
	}
	checkDone(t, s, next, e)
	return next
}

// checkDone checks that an edit did what it says.
func checkDone(t *testing.T, s, next *Sheet, e Edit) {
	t.Helper()
	switch e := e.(type) {
	case SetCell:
		r, _ := next.Table(e.Table).Row(e.Row)
		if c, ok := r.Cell(r.keyIn(e.Table, e.Key)); !ok || c.Text != e.Text {
			t.Fatalf("%#v reads back %q in\n%s", e, c.Text, next.text)
		}
		if got, want := contents(s.With(e.Ref, e.Text), ""), contents(next, ""); fmt.Sprint(got) != fmt.Sprint(want) {
			t.Fatalf("%#v: the preview has\n%v\nthe edit\n%v", e, got, want)
		}
	case DropCell:
		if r, _ := next.Table(e.Table).Row(e.Row); len(r.Cells) > 0 {
			if _, ok := r.Cell(e.Key); ok {
				t.Fatalf("%#v left it in\n%s", e, next.text)
			}
		}
	case DeleteRow:
		if _, ok := next.Table(e.Table).Row(e.Row); ok {
			t.Fatalf("%#v left it in\n%s", e, next.text)
		}
	case RenameRow:
		was, _ := s.Table(e.Table).Row(e.Row)
		is, ok := next.Table(e.Table).Row(e.To)
		if !ok || len(was.Cells) != len(is.Cells) {
			t.Fatalf("%#v gave %v in\n%s", e, is, next.text)
		}
	case AddRow:
		r, ok := next.Table(e.Table).Row(e.Name)
		if !ok || len(r.Cells) != len(e.Cells) {
			t.Fatalf("%#v gave %v in\n%s", e, r, next.text)
		}
		for i, c := range e.Cells {
			if r.Cells[i].Text != c.Text {
				t.Fatalf("%#v gave %v in\n%s", e, r, next.text)
			}
		}
	}
}

// TestEditsChangeOnlyThemselves edits random sheets: what is not edited
// survives byte for byte, and what is edited reads back as typed.
func TestEditsChangeOnlyThemselves(t *testing.T) {
	done := 0
	for seed := range uint64(3000) {
		m := &maker{Rand: rand.New(rand.NewPCG(seed, 1))}
		text := m.sheet()
		s, err := Parse([]byte(text))
		if err != nil {
			t.Fatalf("seed %d: %v in\n%s", seed, err, text)
		}
		if s.Text() != text {
			t.Fatalf("seed %d: the text changed", seed)
		}
		for range 8 {
			next := checkEdit(t, s, m.edit(s))
			if next != s {
				done++
			}
			s = next
		}
	}
	if done < 8000 {
		t.Errorf("only %d edits could be done", done)
	}
}

func TestHistoryGoesBackAndForth(t *testing.T) {
	for seed := range uint64(300) {
		m := &maker{Rand: rand.New(rand.NewPCG(seed, 2))}
		s := mustParse(t, m.sheet())
		h := NewHistory(s)
		texts, at, saved := []string{s.Text()}, 0, s.Text()
		for range 60 {
			switch m.IntN(6) {
			case 0, 1:
				if h.Undo() != (at > 0) {
					t.Fatalf("seed %d: undo at %d of %d", seed, at, len(texts))
				}
				at = max(0, at-1)
			case 2:
				if h.Redo() != (at < len(texts)-1) {
					t.Fatalf("seed %d: redo at %d of %d", seed, at, len(texts))
				}
				at = min(len(texts)-1, at+1)
			case 3:
				if m.IntN(4) == 0 {
					h.MarkSaved()
					saved = texts[at]
				}
			default:
				before := h.Current().Text()
				if err := h.Do(m.edit(h.Current())); err == nil && h.Current().Text() != before {
					at++
					texts = append(texts[:at], h.Current().Text())
				}
			}
			if h.Current().Text() != texts[at] {
				t.Fatalf("seed %d: the text is not the one of step %d", seed, at)
			}
			if h.Modified() != (texts[at] != saved) {
				t.Fatalf("seed %d: modified is %v", seed, h.Modified())
			}
		}
		for h.Undo() {
		}
		if h.Current().Text() != s.Text() {
			t.Fatalf("seed %d: undoing all does not give the first text", seed)
		}
	}
}
