package report

import (
	"trivet/mechanics/doc"
	"trivet/mechanics/tutor"
)

// Own is a student's own work on a problem.
type Own struct {
	Name    string            // of the student; empty where it is to be filled in
	Entries []tutor.Judgement // in the order in which they were made
	Reached string            // how far it came, as a sentence
}

// OwnWork are a student's own entries as blocks of a document: the right equations first,
// then what else was right, then what was wrong, each with what was said of it. An entry
// that did not read is left out. Nothing stands in them that was not entered or said
// before.
func OwnWork(entries []tutor.Judgement) []doc.Block {
	groups := []struct {
		title string
		holds func(tutor.Judgement) bool
	}{
		{"Right equations:", func(j tutor.Judgement) bool { return isRight(j) && j.Kind == tutor.Equation }},
		{"Also right:", func(j tutor.Judgement) bool { return isRight(j) && j.Kind != tutor.Equation }},
		{"Wrong:", func(j tutor.Judgement) bool { return j.Verdict == tutor.Wrong }},
	}
	var blocks []doc.Block
	for _, g := range groups {
		table := doc.NewTable("Entry", "Judgement")
		for _, j := range entries {
			if g.holds(j) {
				table.Add(doc.Inline{Words: j.Entry, Typed: true}, words(judged(j)))
			}
		}
		if len(table.Rows) > 0 {
			blocks = append(blocks, doc.Say(g.title), table)
		}
	}
	return blocks
}

func isRight(j tutor.Judgement) bool {
	return j.Verdict == tutor.Right || j.Verdict == tutor.Imprecise || j.Verdict == tutor.Dependent
}

// judged is what is said of an entry; of a right sum, which it is.
func judged(j tutor.Judgement) string {
	if j.Verdict == tutor.Right && j.Is != "" {
		return j.Is
	}
	return j.Says
}

// addOwn adds what a student has entered, to the page of the task. Nothing that was found
// stands in it.
func addOwn(d *doc.Doc, own *Own) {
	blocks := OwnWork(own.Entries)
	if own.Reached != "" {
		blocks = append([]doc.Block{doc.Say(own.Reached)}, blocks...)
	}
	d.Add(part(doc.Other, "Own work", blocks...))
}
