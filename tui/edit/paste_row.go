package edit

import (
	"fmt"
	"strings"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/tui/cells"
	"trivet/tui/layout"
	"trivet/tui/session"
	"trivet/units"
)

// paster makes the new rows of one pasted block.
type paster struct {
	*Editor
	Where
	used
	asking *sheet.Sheet // the sheet as it asks for the results that are pasted
}

// row gives the edits that make a new row of a line whose first text is for the
// column col, or why none can be made.
func (p *paster) row(line []string, col int) (edits []sheet.Edit, why string) {
	switch {
	case p.Pane == layout.Sheet:
		return nil, "there are fewer rows here, and the rows of the sheet are fixed"
	case p.Pane == layout.Unknowns:
		return p.result(line, col)
	case p.Pane == layout.Supports && col > 0:
		return nil, "a new row here needs its name and kind: paste from the first column on"
	case p.Pane == layout.Supports:
		return p.support(line)
	}
	table, list := "given", []sheet.KeyText{{Key: "", Text: ""}}
	switch p.Pane {
	case layout.Points:
		table = "points"
	case layout.Lines:
		table, list = "lines", []sheet.KeyText{{Key: "kind", Text: "cable"}}
		if k := 1 - col; k >= 0 && k < len(line) && strings.TrimSpace(line[k]) != "" {
			list[0].Text = strings.TrimSpace(line[k])
		}
	}
	first := p.pattern(table, list)
	name, texts := textsOf(first, line, col)
	stem := map[string]string{"points": "P0", "lines": "F0", "given": "v0"}[table] // of rows that come without a name
	if name == "" {
		name = p.next(stem)
	}
	name = p.free(name)
	usual := map[string]string{"points": "at", "given": "value"}[table]
	for i := range texts {
		if texts[i].Key == "" && len(texts) > 1 {
			texts[i].Key = usual
		}
	}
	if table == "lines" && (len(texts) == 0 || texts[0].Key != "kind") || len(texts) == 0 {
		texts = append(list, texts...)
	}
	return []sheet.Edit{sheet.AddRow{Table: table, Name: name, Cells: texts}}, ""
}

// pattern is a row with some cells as the pane has it: what its columns are.
func (p *paster) pattern(table string, texts []sheet.KeyText) cells.Record {
	blank := cells.Builder{Result: session.Result{Latest: p.Made.Latest}}
	blank.Typed, _ = sheet.Parse(nil) // an empty text always reads
	if s, err := blank.Typed.Apply(sheet.AddRow{Table: table, Name: "A", Cells: texts}); err == nil {
		blank.Typed = s
	}
	var rows []cells.Record
	switch table {
	case "given":
		rows = blank.Given().Records
	case "points":
		rows = blank.Points().Records
	case "lines":
		rows = blank.Lines().Records
	default:
		rows = blank.Supports().Records
	}
	if len(rows) == 0 {
		return cells.Record{} // a cell's text was refused
	}
	return rows[0]
}

// textsOf takes a line's texts for the name and the cells of a row.
func textsOf(first cells.Record, line []string, col int) (name string, texts []sheet.KeyText) {
	for j, text := range line {
		if col+j >= len(first.Slots) {
			break
		}
		text = strings.TrimSpace(text)
		switch s := first.Slots[col+j]; {
		case s.Does == cells.SetName:
			name = text
		case s.Does == cells.SetCell && text != "":
			texts = append(texts, sheet.KeyText{Key: s.Ref.Key, Text: text})
		}
	}
	return name, texts
}

// supportTable gives the table that a kind of row among the supports is of.
func supportTable(kind string) (table string, ok bool) {
	kind = strings.TrimSpace(kind)
	if table, ok := map[string]string{"body": "bodies", "couple": "couples", "load": "distributed"}[kind]; ok {
		return table, true
	}
	_, ok = cells.JointNamed(kind)
	return "joints", ok
}

// supportKinds are the words of the kind column.
func supportKinds() []string {
	kinds := []string{"body", "couple", "load"}
	for _, j := range problem.Joints() {
		kinds = append(append(kinds, j.Name), j.Aliases...)
	}
	return kinds
}

// support makes a joint, a body, a couple or a load, as its kind says. Its name
// stays as it is: a joint is named after its point, a body after itself.
func (p *paster) support(line []string) ([]sheet.Edit, string) {
	kind := ""
	if len(line) > cells.ColKind {
		kind = strings.TrimSpace(line[cells.ColKind])
	}
	table, ok := supportTable(kind)
	if s := units.Suggest(kind, supportKinds()); !ok && s != "" {
		return nil, fmt.Sprintf("not pasted: %q is not a kind of row here. Try: %s", kind, s)
	}
	if !ok {
		return nil, "a new row here needs its kind behind its name: a joint's, such as pin, or body, couple, load"
	}
	var own []sheet.KeyText
	switch {
	case table == "joints":
		own = []sheet.KeyText{{Key: "kind", Text: kind}}
	case table == "distributed" && len(line) > cells.ColMore && strings.TrimSpace(line[cells.ColMore]) != "":
		own = []sheet.KeyText{{Key: "kind", Text: strings.TrimSpace(line[cells.ColMore])}}
	}
	name, texts := textsOf(p.pattern(table, own), line, 0)
	return []sheet.Edit{sheet.AddRow{Table: table, Name: name, Cells: texts}}, ""
}

// result asks for a result, and takes the answer that stands beside it.
func (p *paster) result(line []string, col int) (edits []sheet.Edit, why string) {
	if col > 0 {
		return nil, "a new row here names a result: paste from the first column on"
	}
	name := strings.TrimSpace(line[0])
	if len(problem.ResultNames(name)) != 1 {
		return nil, "a new row here needs a result, such as T1.x, in its first column"
	}
	if latest := p.Made.Latest; latest != nil {
		if _, err := problem.ParseQuery(latest, name); err != nil {
			return nil, "not pasted: " + err.Error()
		}
	}
	ref, all := CellOf(p.asking, cells.Slot{Does: cells.SetAsked, Word: behindAll}, name)
	p.asking = p.asking.With(ref, all)
	for j, s := range p.Made.Asks(name, 0).Slots {
		if j < len(line) && s.Does == cells.SetCell && strings.TrimSpace(line[j]) != "" {
			edits = append(edits, change(p.Sheet, s.Ref, strings.TrimSpace(line[j])))
		}
	}
	return edits, ""
}
