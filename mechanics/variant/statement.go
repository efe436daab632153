package variant

import (
	"math"
	"regexp"
	"slices"
	"strings"

	"trivet/mechanics/diag"
	"trivet/mechanics/problem"
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
var quantity = regexp.MustCompile(`([-+−]?(?:\d{1,3}(?:,\d{3})+|\d+)(?:\.\d+)?)([ \x{a0}-]?)((?:[\p{L}°%]+(?: (?:m|mm|cm|ft)\b)?)?(?:[·/^*][\p{L}\d]+)*)`)

// parted is the beginning of a number whose thousands are parted: 12 300, 1,200.
var parted = regexp.MustCompile(`\d[ ,\x{a0}\x{202f}]$`)

// place is a quantity in a text: its number, what stands between, its unit.
type place struct {
	start, end int // of the number
	number     float64
	unit       string // "" where none is read
	typed      string
}

// places finds the quantities of a text. A number that is part of a name or of a
// longer number is none.
func places(text string) []place {
	var out []place
	for _, m := range quantity.FindAllStringSubmatchIndex(text, -1) {
		start, end := m[2], m[3]
		if start > 0 && strings.ContainsAny(text[start:start+1], "+-") {
			if before := text[start-1]; before != ' ' && before != '(' && before != '\n' {
				start++ // a dash, or a sign between two numbers
			}
		}
		if end-start >= 3 && parted.MatchString(text[:start]) {
			continue
		}
		if after := text[m[7]:]; after != "" && strings.ContainsAny(after[:1], "0123456789^") || strings.HasPrefix(after, "²") || strings.HasPrefix(after, "³") {
			continue // 12 m2
		}
		before, _ := lastRune(text[:start])
		if before == '.' || before == '_' || isLetter(before) || before >= '0' && before <= '9' {
			continue
		}
		q := place{start: start, end: end, number: parseNumber(strings.ReplaceAll(text[start:end], ",", ""))}
		if u, ok := unitNamed(text[m[6]:m[7]]); ok {
			q.unit, q.typed = u, text[start:m[7]]
		} else {
			q.typed = text[start:end]
		}
		out = append(out, q)
	}
	return out
}

// unitNamed reads a unit as words have it: its symbol, or its name in one or many.
func unitNamed(word string) (string, bool) {
	if word == "" {
		return "", false
	}
	if _, err := units.ParseUnit(word); err == nil {
		return word, true
	}
	for _, u := range units.Table() {
		if word == u.Name || word == u.Name+"s" {
			return u.Symbol, true
		}
	}
	return "", false
}

// si gives a quantity in SI, where it is one of a dimension.
func (q place) si(d units.Dim) (factor float64, ok bool) {
	if q.unit == "" {
		return 1, d == units.Number
	}
	u, err := units.ParseUnit(q.unit)
	return u.Factor, err == nil && u.Dim == d
}

func same(a, b float64) bool { return math.Abs(a-b) <= 1e-9*math.Max(math.Abs(a), math.Abs(b)) }

// States tells whether a text states a value of a dimension, in any unit of it.
func States(text string, v float64, d units.Dim) bool {
	return slices.ContainsFunc(places(text), func(q place) bool {
		factor, ok := q.si(d)
		return ok && same(q.number*factor, v)
	})
}

// Follow finds what the words of a sheet say of a given; p is that sheet as it reads.
func Follow(s *sheet.Sheet, p *problem.Problem, name string) Task {
	out := Task{Given: name}
	i := given(p, name)
	if i < 0 || p.Givens[i].Value.N != 1 {
		return out
	}
	g := &p.Givens[i]
	out.Value = certain(textOf(s, name, cellOf(s, p, g).Ref.Key))
	if len(places(out.Value)) != 1 || strings.Contains(out.Value, "/") && unitOf(out.Value) == "" {
		return out // 1/2 is said in words, or as another thing's 0.5
	}
	for _, ref := range words {
		c, _ := s.Cell(ref)
		for _, q := range places(c.Text) {
			if factor, ok := q.si(g.Value.Dim); ok && same(q.number*factor, g.Value.V[0]) {
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

// certain is a cell without the ± behind its value, of which words say nothing.
func certain(text string) string {
	text, _, _ = strings.Cut(text, "±")
	text, _, _ = strings.Cut(text, "+-")
	return strings.TrimSpace(text)
}

func given(p *problem.Problem, name string) int {
	for i := range p.Givens {
		if p.Givens[i].Name == name {
			return i
		}
	}
	return -1
}

// rivals are the cells, but for those of a given, that hold a value of its dimension: the words may mean
// them. A bare number counts in the sheet's unit, that of a point as a length. A limit counts only where the
// words have the value more than once: a statement says a load before a capacity.
func rivals(s *sheet.Sheet, p *problem.Problem, g *problem.Given, v float64, limits bool) (out []string) {
	dim := g.Value.Dim
	bare := p.Units.For(dim).Factor
	for _, t := range s.Tables {
		switch t.Name {
		case "", "units", "answers":
			continue
		}
		for _, r := range t.Rows {
			if problem.Private(r.Name) {
				continue
			}
			for _, c := range r.Cells {
				switch {
				case t.Name == "given" && r.Name == g.Name, c.Key == "range", c.Key == "step", c.Key == "limit" && !limits:
					continue
				}
				for _, q := range places(c.Text) {
					factor, ok := q.si(dim)
					if q.unit == "" {
						factor, ok = bare, t.Name != "points" || dim == units.Length
					}
					if ok && same(q.number*factor, v) {
						out = append(out, t.Name+"."+r.Name)
						break
					}
				}
			}
		}
	}
	return out
}

// Contradiction is a value that the words state where a given has another.
type Contradiction struct {
	Given string
	Note  problem.Error // at the value in the words
}

// Contradictions finds givens with a range whose value the words do not state, while the
// statement states one value of their range that is nowhere in the sheet.
func Contradictions(s *sheet.Sheet, p *problem.Problem) (out []Contradiction) {
	for i := range p.Givens {
		g := &p.Givens[i]
		if !g.HasRange || g.Value.N != 1 {
			continue
		}
		dim, stated := g.Value.Dim, false
		type said struct {
			place
			ref sheet.Ref
		}
		var other []said
		for _, ref := range words[:2] {
			c, _ := s.Cell(ref)
			for _, q := range places(c.Text) {
				factor, ok := q.si(dim)
				v := q.number * factor
				switch {
				case !ok:
				case same(v, g.Value.V[0]):
					stated = true
				case v >= g.Low && v <= g.High && len(rivals(s, p, g, v, true)) == 0:
					other = append(other, said{q, ref})
				}
			}
		}
		if !stated && len(other) == 1 {
			q := other[0]
			value := certain(textOf(s, g.Name, cellOf(s, p, g).Ref.Key))
			fault := diag.At(diag.Span{Start: q.start, End: q.end}, "the "+q.ref.Row+" states "+q.typed+", but "+g.Name+" is "+value, "the same value in both")
			out = append(out, Contradiction{g.Name, problem.Error{Error: *fault, Ref: q.ref}})
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
	found := places(text)
	for k := len(found) - 1; k >= 0; k-- {
		q := found[k]
		for _, c := range changes {
			if factor, ok := q.si(c.Dim); ok && same(q.number*factor, c.Was) {
				text = text[:q.start] + units.Compact(rounded(c.Now/factor)) + text[q.end:]
				break
			}
		}
	}
	return text
}

// Retell gives the edits by which the words of a sheet follow changes of its givens.
func Retell(s *sheet.Sheet, changes []Change) []sheet.Edit {
	var out []sheet.Edit
	for _, ref := range words {
		if c, there := s.Cell(ref); there {
			if text := told(c.Text, changes); text != c.Text {
				out = append(out, sheet.SetCell{Ref: ref, Text: text})
			}
		}
	}
	return out
}

// retold gives the edits of the words for a combination. The title ends in the one given here.
func (src *Source) retold(at []int, title string) []sheet.Edit {
	p := src.Solution.Problem
	var changes []Change
	for i := range src.Grids {
		if g := &src.Grids[i]; src.tasks[i].Times > 0 {
			changes = append(changes, Change{p.Givens[given(p, g.Name)].Value.Dim, g.was, g.SI(at[i])})
		}
	}
	var out []sheet.Edit
	for _, ref := range words {
		c, there := src.Sheet.Cell(ref)
		text := told(c.Text, changes)
		if ref.Row == "title" && title != "" {
			if text = strings.TrimSpace(text); text == "" {
				text = strings.ToUpper(title[:1]) + title[1:]
			} else {
				text += ", " + title
			}
			there = true
		}
		if there {
			out = append(out, sheet.SetCell{Ref: ref, Text: text})
		}
	}
	return out
}
