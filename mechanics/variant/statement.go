package variant

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"unicode/utf8"

	"trivet/mechanics/diag"
	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/units"
)

// Task is what the words of a sheet say of a varied given.
type Task struct {
	Given  string
	Value  string // as the words have it, or as the cell has it where they have none
	Times  int    // how often the words follow the given; 0 where they stay as they are
	Rivals string // what else has the same value, so that the words may mean that
}

// words are the cells that a student reads.
var words = []sheet.Ref{{Row: "title"}, {Row: "statement"}, {Row: "lesson"}}

// quantity is a number with its unit in a text; moments are written with a blank
// in their unit, and commas may part the thousands.
var quantity = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`([-+−]?(?:\d{1,3}(?:,\d{3})+|\d+)(?:\.\d+)?)([ \x{a0}-]?)((?:[\p{L}°%]+(?: (?:m|mm|cm|ft)\b)?)?(?:[·/^*][\p{L}\d]+)*)`)
})

// What stands before a number, or behind it and its unit, that is part of a name or of a
// longer number; thousands may be parted: 12 300, 1,200, 12 m2.
var (
	joined = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`[\p{L}\d._]$`) })
	parted = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`\d[ ,\x{a0}\x{202f}]$`) })
	more   = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^[\d^²³]`) })
)

// place is a quantity in a text.
type place struct {
	start, end int // of the number
	number     float64
	unit       units.Unit // that of a bare number where none is read
	bare       bool
	typed      string
}

// places finds the quantities of a text. A number that is part of a name or of a
// longer number is none.
func places(text string) []place {
	var out []place
	for _, m := range quantity().FindAllStringSubmatchIndex(text, -1) {
		start, end := m[2], m[3]
		if start > 0 && strings.ContainsAny(text[start:start+1], "+-") {
			if before := text[start-1]; before != ' ' && before != '(' && before != '\n' {
				start++ // a dash, or a sign between two numbers
			}
		}
		before := text[max(0, start-2*utf8.UTFMax):start]
		if end-start >= 3 && parted().MatchString(before) || joined().MatchString(before) || more().MatchString(text[m[7]:]) {
			continue
		}
		q := place{start: start, end: end, unit: units.Unit{Factor: 1, Dim: units.Number}, bare: true, typed: text[start:end]}
		q.number, _ = strconv.ParseFloat(strings.NewReplacer(",", "", "−", "-").Replace(q.typed), 64)
		if u, ok := unitNamed(text[m[6]:m[7]]); ok {
			q.unit, q.bare, q.typed = u, false, text[start:m[7]]
		}
		out = append(out, q)
	}
	return out
}

// unitNamed reads a unit as words have it: its symbol, or its name in one or many.
func unitNamed(word string) (units.Unit, bool) {
	if word == "" {
		return units.Unit{}, false
	}
	if u, err := units.ParseUnit(word); err == nil {
		return u, true
	}
	for _, u := range units.Table() {
		if word == u.Name || word == u.Name+"s" {
			return u, true
		}
	}
	return units.Unit{}, false
}

func (q place) si() float64 { return q.number * q.unit.Factor }

// states tells whether a quantity is a value of a dimension.
func (q place) states(v float64, d units.Dim) bool { return q.unit.Dim == d && same(q.si(), v) }

func same(a, b float64) bool { return math.Abs(a-b) <= 1e-9*math.Max(math.Abs(a), math.Abs(b)) }

// States tells whether a text states a value of a dimension, in any unit of it.
func States(text string, v float64, d units.Dim) bool {
	return slices.ContainsFunc(places(text), func(q place) bool { return q.states(v, d) })
}

// Follow finds what the words of a sheet say of a given; p is that sheet as it reads.
func Follow(s *sheet.Sheet, p *problem.Problem, name string) Task {
	out := Task{Given: name}
	g := p.GivenNamed(name)
	if g == nil || g.Value.N != 1 {
		return out
	}
	out.Value = cellOf(s, p, g).typed
	if len(places(out.Value)) != 1 || strings.Contains(out.Value, "/") && written(p, g, out.Value).Symbol == "" {
		return out // 1/2 is said in words, or as another thing's 0.5
	}
	for _, ref := range words {
		c, _ := s.Cell(ref)
		for _, q := range places(c.Text) {
			if q.states(g.Value.V[0], g.Value.Dim) {
				out.Value = q.typed
				out.Times++
			}
		}
	}
	if out.Times == 0 {
		return out
	}
	if rivals := rivals(s, p, g, g.Value.V[0], out.Times > 1); len(rivals) > 0 {
		out.Times, out.Rivals = 0, strings.Join(rivals, ", ")
	}
	return out
}

// rivals are the cells, but for those of a given, that hold a value of its dimension: the words may mean
// them. A bare number counts in the sheet's unit, that of a point as a length. A limit counts only where the
// words have the value more than once: a statement says a load before a capacity.
func rivals(s *sheet.Sheet, p *problem.Problem, g *problem.Given, v float64, limits bool) (out []string) {
	dim := g.Value.Dim
	holds := func(ref sheet.Ref, q place) bool {
		switch {
		case !q.bare:
			return q.states(v, dim)
		case ref.Table == "points" && dim != units.Length:
			return false
		}
		return same(q.number*p.Units.For(dim).Factor, v)
	}
	for ref, c := range s.Cells() {
		switch {
		case ref.Table == "", ref.Table == "units", ref.Table == "answers", problem.Private(ref.Row), ref.Table == "given" && ref.Row == g.Name:
		case ref.Key == "range", ref.Key == "step", ref.Key == "limit" && !limits:
		case slices.ContainsFunc(places(c.Text), func(q place) bool { return holds(ref, q) }):
			out = append(out, ref.Table+"."+ref.Row)
		}
	}
	return out
}

// Contradictions finds givens with a range whose value the words do not state, while the
// statement states one value of their range that is nowhere in the sheet, and says so of
// each at that value.
func Contradictions(s *sheet.Sheet, p *problem.Problem) (out []problem.Error) {
	for i := range p.Givens {
		g := &p.Givens[i]
		if !g.HasRange || g.Value.N != 1 {
			continue
		}
		stated := false
		var others []problem.Error
		for _, ref := range words[:2] {
			c, _ := s.Cell(ref)
			for _, q := range places(c.Text) {
				switch v := q.si(); {
				case q.states(g.Value.V[0], g.Value.Dim):
					stated = true
				case q.unit.Dim == g.Value.Dim && v >= g.Low && v <= g.High && len(rivals(s, p, g, v, true)) == 0:
					msg := "the " + ref.Row + " states " + q.typed + ", but " + g.Name + " is " + cellOf(s, p, g).typed
					fault := diag.At(diag.Between(q.start, q.end), msg, "the same value in both")
					others = append(others, problem.Error{Error: *fault, Ref: ref})
				}
			}
		}
		if !stated && len(others) == 1 {
			out = append(out, others...)
		}
	}
	return out
}

// Change is a value of a given that words state, and the one that is to take its place.
type Change struct {
	Dim      units.Dim
	Was, Now float64 // SI
}

// told is a text with the new values in place of the old ones, in the units that it uses.
func told(text string, changes []Change) string {
	for _, q := range slices.Backward(places(text)) {
		if i := slices.IndexFunc(changes, func(c Change) bool { return q.states(c.Was, c.Dim) }); i >= 0 {
			text = text[:q.start] + units.Compact(to(digits, changes[i].Now/q.unit.Factor)) + text[q.end:]
		}
	}
	return text
}

// Retell gives the edits by which the words of a sheet follow changes of its givens.
func Retell(s *sheet.Sheet, changes []Change) []sheet.Edit {
	var out []sheet.Edit
	for _, ref := range words {
		c, _ := s.Cell(ref)
		if text := told(c.Text, changes); text != c.Text {
			out = append(out, sheet.SetCell{Ref: ref, Text: text})
		}
	}
	return out
}

// Finish makes a sheet of its own of a variant: its title says which it is (as it
// was where title is ""), what title and statement say of the varied givens follows,
// and the printed answers are left out with the comments right above them, since they
// hold no longer.
func (src *Source) Finish(v Variant, title string) (Variant, error) {
	var changes []Change
	for i := range src.Grids {
		if g := &src.Grids[i]; src.Tasks[i].Times > 0 {
			changes = append(changes, Change{g.Value.Dim, g.Value.V[0], g.SI(v.At[i])})
		}
	}
	edits := append(Retell(src.Sheet, changes), sheet.DeleteTable{Table: "answers"})
	if title != "" {
		c, _ := src.Sheet.Cell(words[0])
		text := say.Capital(title)
		if was := strings.TrimSpace(told(c.Text, changes)); was != "" {
			text = was + ", " + title
		}
		edits = append(edits, sheet.SetCell{Ref: words[0], Text: text})
	}
	s, err := v.Sheet.Apply(edits...)
	if err != nil {
		return v, err
	}
	sol, err := solve(src.reader, s)
	if err != nil {
		return v, fmt.Errorf("the variant %w", err)
	}
	v.Sheet, v.Solution = s, sol
	return v, nil
}

// Number writes the number of a variant among so many: "07".
func Number(i, count int) string {
	return fmt.Sprintf("%0*d", max(2, len(strconv.Itoa(count))), i)
}
