package doc

import (
	"fmt"
	"strings"
)

// notation is how formulas are written in code: templates, in which what the parts have
// become takes the place of each %s.
type notation struct {
	letter func(m Math) string
	number func(digits string) string
	words  func(text string, small bool) string
	signs  map[string]string
	other  func(sign string) string // a sign that is not among them
	gaps   map[Gap]string

	sub, power, fraction, root string
	fences                     map[Op]string
	matrix, determinant        string
	nextCell, nextRow          string

	flat string // parentheses where fractions stand as a/b, as they do in lines of prose; empty where they never do

	alone    string // a formula in a sentence
	aligned  string // equations under each other
	room     float64
	nextLine string
	lines    [3]string // the two sides of a line that is aligned; one that begins at the column; one that goes on behind it
}

// code sets formulas as code in a notation.
type code struct {
	*notation
	small, inline bool
}

func (c code) Traits() Traits                       { return Traits{Flat: c.inline && c.flat != "", Small: c.small} }
func (c code) Small() Setter[string]                { c.small, c.inline = true, true; return c }
func (c code) Inline() Setter[string]               { c.inline = true; return c }
func (c code) Letter(m Math) string                 { return c.letter(m) }
func (c code) Number(digits string, _ Math) string  { return c.number(digits) }
func (c code) Words(text string) string             { return c.words(text, c.small) }
func (c code) Space(g Gap) string                   { return c.gaps[g] }
func (c code) Join(of ...string) string             { return strings.Join(of, "") }
func (c code) Sub(_ Math, base, sub string) string  { return fmt.Sprintf(c.sub, base, sub) }
func (c code) Power(base, up string, _ Math) string { return fmt.Sprintf(c.power, base, up) }
func (c code) Fraction(over, under string) string   { return fmt.Sprintf(c.fraction, over, under) }
func (c code) Root(in string) string                { return fmt.Sprintf(c.root, in) }
func (c code) Width(string) float64                 { return 0 } // the reader's program breaks the lines
func (c code) Prose(text string) string             { return text }

func (c code) Sign(text string) string {
	if s, ok := c.signs[text]; ok {
		return s
	}
	return c.other(text)
}

func (c code) Fence(op Op, in string) string {
	form := c.fences[op]
	if op == Paren && c.Traits().Flat {
		form = c.flat
	}
	return fmt.Sprintf(form, in)
}

func (c code) Grid(op Op, rows [][]string, _ []float64) string {
	form := c.matrix
	if op == Det {
		form = c.determinant
	}
	lines := make([]string, len(rows))
	for i, r := range rows {
		lines[i] = strings.Join(r, c.nextCell)
	}
	return fmt.Sprintf(form, strings.Join(lines, c.nextRow))
}

// sentence is a formula among words.
func (n *notation) sentence(m Math) string {
	return fmt.Sprintf(n.alone, strings.TrimSpace(Set[string](code{notation: n, inline: true}, m)))
}

// equations are formulas under each other, the first relation of each in one column. What
// is wider than the room, in cells of its print as text, goes on in a line below.
func (n *notation) equations(of []Math) string {
	c := code{notation: n}
	var lines []string
	for _, l := range Arrange[cells](cellSetter{}, of, n.room) {
		pieces := Pieces[string](c, of[l.Of])
		form, at := n.lines[1], l.From
		switch {
		case l.At > l.From:
			form, at = n.lines[0], l.At
		case l.At < 0 && l.From > 0:
			form = n.lines[2]
		}
		lines = append(lines, fmt.Sprintf(form, Line[string](c, pieces[l.From:at]), Line[string](c, pieces[at:l.To])))
	}
	return fmt.Sprintf(n.aligned, strings.Join(lines, n.nextLine))
}
