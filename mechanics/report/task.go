package report

import (
	"slices"
	"strings"

	"trivet/mechanics/doc"
	"trivet/mechanics/names"
	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
)

// Task is a sheet as one who practises it has it at hand: the statement, what is asked, and the
// rows as they are typed. It is made of the problem and the sheet alone, so that no value found
// can stand in it.
func Task(p *problem.Problem, s *sheet.Sheet) []doc.Block {
	out := Paragraphs(p.Statement)
	asked := askedWords(p)
	if len(asked) > 0 {
		out = append(out, doc.Say("Find, to "+say.Count(p.Figures, "significant figure")+":"), itemsOf(asked))
	}
	for _, t := range s.Tables {
		if head, ok := taskHeads[t.Name]; ok && len(t.Rows) > 0 {
			out = append(out, doc.Note(head), itemsOf(say.Each(t.Rows, func(r sheet.Row) string { return typedRow(t.Name, r) })))
		}
	}
	return out
}

// askedWords define what is asked, a sentence each.
func askedWords(p *problem.Problem) []string {
	asked := p.Results()
	if noSingleAnswer(p) {
		return []string{"what can be said of " + say.And(say.Each(asked, func(q problem.Query) string { return names.Called(p, q) })...)}
	}
	return say.Each(asked, func(q problem.Query) string { return q.Name + ": " + names.Meaning(p, q) })
}

func itemsOf(of []string) *doc.List {
	return &doc.List{Items: say.Each(of, doc.Plain)}
}

// taskHeads are the tables of a sheet that a task is made of, each with what it is called.
var taskHeads = map[string]string{
	"given": "Givens", "points": "Points", "bodies": "Bodies", "lines": "Force lines", "joints": "Supports and connections",
	"couples": "Couples", "distributed": "Distributed loads", "ties": "Ties",
}

// untold are the keys that do not belong to the problem as it is set: how a variant is drawn, how
// a body looks.
var untold = []string{"range", "step", "outline"}

// typedRow is a row as typed, in words.
func typedRow(table string, r sheet.Row) string {
	parts := []string{r.Name}
	for _, c := range r.Cells {
		text := strings.TrimSpace(c.Text)
		switch {
		case text == "" || text == "?" || !c.Readable || slices.Contains(untold, c.Key):
			continue
		case c.Key == "kind":
			text = strings.ReplaceAll(text, "-", " ")
		case c.Key == "path":
			text = "through " + text
		case c.Key == "" || c.Key == "value" || table == "points" && c.Key == "at":
		default:
			text = c.Key + " " + text
		}
		parts = append(parts, text)
	}
	return parts[0] + ": " + strings.Join(parts[1:], "; ")
}
