package edit

import (
	"encoding/csv"
	"slices"
	"strings"

	"trivet/mechanics/names"
	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/tui/layout"
	"trivet/units"
)

// list reads a block of a spreadsheet that is no block of a pane's cells, line by line: a name and
// coordinates make a point; a name and a value a given; a name, or none, and two points a bar
// between them. Lines that are none of these are heads, and stand before such lines.
type list struct {
	s      *sheet.Sheet
	planar bool
	points map[string]bool // of the sheet and of the block

	edits  []sheet.Edit
	made   map[string]int // rows by what they are
	joined []string       // points with a bar, in their order
	free   bool           // the points are joints, as the head says
	unit   string         // of the coordinates, as the head says
	why    error
}

// pasteList gives the edits of a block that is such a list; ok is false where it is none.
func pasteList(w Where, text string) (edits []sheet.Edit, says string, ok bool) {
	if w.Pane == layout.Unknowns {
		return nil, "", false // names and values are answers there
	}
	plane, _ := w.Sheet.Table("").Row("plane")
	l := &list{s: w.Sheet, planar: strings.TrimSpace(plane.Text("")) != "", points: map[string]bool{}, made: map[string]int{}}
	for _, row := range w.Sheet.Table("points").Rows {
		l.points[row.Name] = true
	}
	head, any := false, false
	for _, line := range fieldsOf(text) {
		switch {
		case len(line) == 0:
		case l.take(line):
			head, any = false, true
		case head:
			return nil, "", false // two lines that are nothing
		default:
			head = true
			l.readHead(line)
		}
		if l.why != nil {
			return nil, "not pasted: " + l.why.Error(), true
		}
	}
	if !any || head {
		return nil, "", false
	}
	says = l.release()
	var parts []string
	for _, what := range []string{"point", "given value", "bar"} {
		if n := l.made[what]; n > 0 {
			parts = append(parts, say.Count(n, what))
		}
	}
	return l.edits, "pasted " + say.And(parts...) + says, true
}

// fieldsOf splits a block at its tabs, or where it has none at its commas.
func fieldsOf(text string) (lines [][]string) {
	if strings.Contains(text, "\t") {
		lines, _ = sheet.ParseTSV(text)
	} else {
		r := csv.NewReader(strings.NewReader(text))
		r.FieldsPerRecord, r.TrimLeadingSpace, r.LazyQuotes = -1, true, true
		lines, _ = r.ReadAll()
	}
	for i, line := range lines {
		for k := range line {
			line[k] = strings.TrimSpace(line[k])
		}
		for len(line) > 0 && line[len(line)-1] == "" {
			line = line[:len(line)-1]
		}
		lines[i] = line
	}
	return lines
}

// readHead takes the unit of the coordinates from a head, "x (mm)", and that its points are the
// joints of a truss.
func (l *list) readHead(line []string) {
	first := strings.ToLower(line[0])
	l.free, l.unit = strings.HasPrefix(first, "joint") || strings.HasPrefix(first, "node"), ""
	if len(line) < 2 {
		return
	}
	_, unit, _ := strings.Cut(strings.NewReplacer("[", "(", "]", ")").Replace(line[1]), "(")
	unit, _, _ = strings.Cut(unit, ")")
	if u, ok := units.Find(strings.TrimSpace(unit)); ok && u.Dim == units.Length {
		l.unit = u.Symbol
	}
}

// take makes the row that a line stands for.
func (l *list) take(line []string) bool {
	name, rest := line[0], line[1:]
	numbers := 0
	for numbers < len(rest) && isNumber(rest[numbers]) {
		numbers++
	}
	coordinates := 3
	if l.planar {
		coordinates = 2
	}
	switch {
	case isNumber(name):
		return false
	case numbers == len(rest) && numbers == 1:
		l.row("given", "given value", name, []sheet.KeyText{{Key: "", Text: rest[0]}})
		return true
	case numbers == coordinates && len(rest) <= coordinates+1:
		l.point(name, rest[:numbers], slices.Concat(rest[numbers:], []string{""})[0])
		return true
	case len(line) == 2 && l.points[name] && l.points[rest[0]]:
		l.bar(name+rest[0], name, rest[0])
		return true
	case len(line) == 3 && l.points[rest[0]] && l.points[rest[1]]:
		l.bar(name, rest[0], rest[1])
		return true
	}
	return false
}

// isNumber tells a number, with a unit or without, from a name.
func isNumber(text string) bool {
	return strings.ContainsAny(text[:min(1, len(text))], "0123456789.-+") && !strings.Contains(text, ",") && func() bool {
		_, err := units.Parse(text)
		return err == nil
	}()
}

func (l *list) point(name string, at []string, on string) {
	for i, x := range at {
		if isBareNumber := !strings.ContainsFunc(x, func(r rune) bool { return r > '9' }); isBareNumber && l.unit != "" {
			at[i] = x + " " + l.unit
		}
	}
	texts := []sheet.KeyText{{Key: "", Text: strings.Join(at, ", ")}}
	if on == "" && l.free {
		on = "particle"
	}
	if on != "" {
		texts = []sheet.KeyText{{Key: "at", Text: texts[0].Text}, {Key: "on", Text: on}}
	}
	l.row("points", "point", name, texts)
	l.points[name] = true
}

func (l *list) bar(name, from, to string) {
	l.row("lines", "bar", name, []sheet.KeyText{{Key: "kind", Text: problem.Link.String()}, {Key: "path", Text: from + " " + to}})
	for _, p := range []string{from, to} {
		if !slices.Contains(l.joined, p) {
			l.joined = append(l.joined, p)
		}
	}
}

// row adds a row, or gives the one of its name its cells.
func (l *list) row(table, what, name string, texts []sheet.KeyText) {
	l.made[what]++
	if _, there := l.s.Table(table).Row(name); there {
		for _, c := range texts {
			if c.Key == "" && table == "points" {
				c.Key = "at"
			}
			l.edits = append(l.edits, change(l.s, sheet.Ref{Table: table, Row: name, Key: c.Key}, c.Text))
		}
		return
	}
	if err := names.NewName(l.s, problem.ThingOf(table), name); err != nil && l.why == nil {
		l.why = err
	}
	l.edits = append(l.edits, sheet.AddRow{Table: table, Name: name, Cells: texts})
}

// release makes the points that bars join free, where nothing is yet: the joints of a truss are
// particles.
func (l *list) release() string {
	for _, row := range l.s.Table("points").Rows {
		if row.Text("on") != "" {
			return ""
		}
	}
	made := false
	for _, e := range l.edits {
		add, ok := e.(sheet.AddRow)
		made = made || ok && add.Table == "points" && len(add.Cells) > 1
	}
	if made || len(l.joined) == 0 {
		return ""
	}
	for _, name := range l.joined {
		i := slices.IndexFunc(l.edits, func(e sheet.Edit) bool {
			add, ok := e.(sheet.AddRow)
			return ok && add.Table == "points" && add.Name == name
		})
		if i < 0 {
			l.edits = append(l.edits, change(l.s, sheet.Ref{Table: "points", Row: name, Key: "on"}, "particle"))
			continue
		}
		add := l.edits[i].(sheet.AddRow)
		add.Cells = []sheet.KeyText{{Key: "at", Text: add.Cells[0].Text}, {Key: "on", Text: "particle"}}
		l.edits[i] = add
	}
	return "; the points that they join are particles"
}
