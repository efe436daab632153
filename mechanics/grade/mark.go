// Package grade holds students' answers to a sheet against its solution and says
// which mistake was most likely made. It is pure: a solution and answers in, marks
// out; and it says no more than the numbers show.
package grade

import (
	"math"
	"strings"
	"sync"

	"trivet/mechanics/diag"
	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/mechanics/tutor"
	"trivet/units"
)

// Verdict is what became of one answer.
type Verdict int

// The verdicts. The first two count as right.
const (
	Right      Verdict = iota
	TooFew             // right, with fewer figures than are asked for
	Sign               // right but for its sign
	Unit               // right in another unit, or but for the factor g
	Another            // it is the value of another quantity
	Slipped            // it is right but for a factor of 2, the decimal point or two digits
	AsIf               // it is right of the sheet with a common mistake in it
	Follows            // it follows from an earlier answer of the same student that is wrong
	Close              // near, so that it was rounded on the way, perhaps
	Wrong              // none of these
	Missing            // nothing is written
	Unreadable         // it does not read
	NoValue            // the sheet has no single value to hold it against
)

// verdicts are the words of each, and a short one for the head of a table.
var verdicts = [...]struct{ words, short string }{
	Right:      {"right", "right"},
	TooFew:     {"right, too few figures", "figures"},
	Sign:       {"sign reversed", "sign"},
	Unit:       {"wrong unit", "unit"},
	Another:    {"another quantity's value", "other"},
	Slipped:    {"slip in the number", "slip"},
	AsIf:       {"as if", "as if"},
	Follows:    {"follows from a wrong one", "follows"},
	Close:      {"close, rounded on the way", "close"},
	Wrong:      {"wrong", "wrong"},
	Missing:    {"missing", "-"},
	Unreadable: {"unreadable", "?"},
	NoValue:    {"no single value", "none"},
}

func (v Verdict) String() string { return verdicts[v].words }

// Short is the verdict in one word, for a table.
func (v Verdict) Short() string { return verdicts[v].short }

// OK tells whether an answer counts as right.
func (v Verdict) OK() bool { return v == Right || v == TooFew }

// mistaken tells that an answer was held against a value and is not right.
func (v Verdict) mistaken() bool { return v >= Sign && v <= Wrong }

// Typed is what somebody wrote for a result. Bare is the unit of a number without
// one; where its Symbol is empty that is the sheet's. Comma tells that a comma is a
// decimal point, as in files whose cells are parted by semicolons.
type Typed struct {
	Name  string
	Text  string
	Bare  units.Unit
	Comma bool
}

// Mark is what became of one answer. Says is the verdict in words, with what it is
// that the answer fits; it never gives the right value away.
type Mark struct {
	Name    string
	Typed   string
	Verdict Verdict
	Says    string

	query   problem.Query
	value   value   // where it reads
	weighs  bool    // it is the factor g that it is off by
	speaks  bool    // a wrong unit is evidence
	swapped bool    // it stands in the place of another answer
	want    float64 // SI
}

// Key is a solved sheet that answers are held against. It belongs to one goroutine:
// what the common mistakes come to is worked out when first asked for.
type Key struct {
	sheet    *sheet.Sheet
	solution *statics.Solution
	rule     Rule
	largest  map[units.Dim]float64 // of the values, by dimension
	known    []quantity            // what has a name and a value

	mistakes func() []mistake
	others   []mistake          // the sheets of all students, see variants.go
	effects  func() [][]float64 // see follow.go
	sums     func() []tutor.Sum
	slips    func() []slip // see slip.go
}

// NewKey makes the key of a sheet and its solution.
func NewKey(s *sheet.Sheet, solution *statics.Solution, rule Rule) *Key {
	k := &Key{sheet: s, solution: solution, rule: rule, largest: map[units.Dim]float64{}}
	k.mistakes = sync.OnceValue(k.allMistakes)
	k.effects = sync.OnceValue(func() [][]float64 { return effects(solution) })
	k.sums = sync.OnceValue(func() []tutor.Sum {
		if len(solution.X) > maxFollowed {
			return nil
		}
		return tutor.Sums(solution)
	})
	k.slips = sync.OnceValue(k.allSlips)
	k.quantities()
	return k
}

// Asked are the names of the results that are marked where nobody says which: those
// that the sheet asks for, else all unknowns.
func (k *Key) Asked() (names []string) {
	return say.Each(k.solution.Problem.Results(), func(q problem.Query) string { return q.Name })
}

// Title is that of the sheet.
func (k *Key) Title() string { return k.solution.Problem.Title }

// Query reads the name of a result.
func (k *Key) Query(name string) (problem.Query, *diag.Error) {
	return problem.ParseQuery(k.solution.Problem, name)
}

// Mark holds one student's answers against the sheet; the notes are what holds of
// several at once. The one mistake that explains all that is wrong comes before what each
// answer shows by itself, and what equations hold with the answers before what may follow.
func (k *Key) Mark(answers []Typed) (marks []Mark, notes []string) {
	marks = make([]Mark, len(answers))
	for i, a := range answers {
		marks[i] = k.one(a)
	}
	k.exchanged(marks)
	notes = k.likeliest(marks)
	k.slipped(marks)
	if !k.hold(marks) {
		k.follow(marks)
	}
	k.close(marks)
	return marks, notes
}

// close tells of answers that are nearly right that they were perhaps rounded on the way:
// only where the others are not wrong by more.
func (k *Key) close(marks []Mark) {
	near := func(m *Mark) bool {
		return m.Verdict == Wrong && !k.zero(m.query, m.want) && math.Abs(m.query.Near(m.value.Value, m.want)-m.want) <= nearShare*math.Abs(m.want)
	}
	for i := range marks {
		if m := &marks[i]; m.Verdict.mistaken() && !near(m) {
			return
		}
	}
	for i := range marks {
		if m := &marks[i]; near(m) {
			m.Verdict, m.Says = Close, "close, perhaps rounded on the way"
		}
	}
}

// one reads an answer and says whether it is right, or which mistake it shows by itself.
func (k *Key) one(a Typed) (m Mark) {
	m.Name, m.Typed = a.Name, a.Text
	m.Verdict, m.Says = func() (Verdict, string) {
		q, err := k.Query(a.Name)
		if err != nil {
			return NoValue, err.Error()
		}
		want, none := k.solution.Evaluate(q)
		if none != nil {
			return NoValue, none.Error()
		}
		m.query, m.want = q, want
		if strings.TrimSpace(a.Text) == "" {
			return Missing, Missing.String()
		}
		if m.value, err = k.read(q, a); err != nil {
			return Unreadable, "unreadable: " + err.Error()
		}
		if m.value.Dim != q.Dim {
			return Unit, k.otherDimension(&m)
		}
		if v := k.judge(q, m.value, want); v.OK() {
			return v, v.String()
		}
		return k.explain(&m)
	}()
	return m
}

// Unmet says which mistake is likeliest in each answer that the sheet itself holds
// and that is not met, by the name of its result; nothing where the numbers show none.
func (k *Key) Unmet() map[string]string {
	typed := say.Each(k.solution.Problem.Answers, func(a problem.Answer) Typed { return Typed{Name: a.Query.Name, Text: a.Printed} })
	marks, _ := k.Mark(typed)
	says := map[string]string{}
	for i, a := range k.solution.Answers {
		switch m := marks[i]; {
		case a.OK || a.Err != "" || m.Verdict == Wrong:
		case m.Verdict.OK():
			says[m.Name] = "right to fewer figures than are written"
		default:
			says[m.Name] = m.Says
		}
	}
	return says
}
