package report

import (
	"trivet/mechanics/doc"
	"trivet/mechanics/say"
	"trivet/mechanics/tutor"
)

// OwnWork is what a student has entered: the right equations first, each with the sum that it
// is, then what else is right, then what is not, with what was said of it.
func OwnWork(entries []tutor.Judgement) (out []doc.Block) {
	parts := []struct {
		head string
		has  func(*tutor.Judgement) bool
		line func(*tutor.Judgement) string
	}{
		{"Your own equations", func(j *tutor.Judgement) bool { return right(j) && j.Kind == tutor.Equation }, func(j *tutor.Judgement) string {
			if j.Is == "" {
				return j.Entry
			}
			return j.Entry + ": " + j.Is
		}},
		{"What else you entered and is right", func(j *tutor.Judgement) bool { return right(j) && j.Kind != tutor.Equation }, func(j *tutor.Judgement) string { return j.Entry }},
		{"What is not right", func(j *tutor.Judgement) bool { return !right(j) && j.Verdict != tutor.Unreadable }, func(j *tutor.Judgement) string { return j.Entry + ": " + j.Says }},
	}
	for _, part := range parts {
		var of []string
		for i := range entries {
			if part.has(&entries[i]) {
				of = append(of, part.line(&entries[i]))
			}
		}
		if len(of) > 0 {
			out = append(out, doc.Note(part.head), &doc.List{Items: say.Each(of, doc.Plain)})
		}
	}
	return out
}

func right(j *tutor.Judgement) bool {
	return j.Verdict == tutor.Right || j.Verdict == tutor.Dependent
}
