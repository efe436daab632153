package doc

import (
	"fmt"
	"strings"

	"trivet/mechanics/drawing"
)

// markup is a format that writes a document as text with marks: templates, in which a text
// takes the place of each %s.
type markup struct {
	*notation
	text  func(string) string // what a user typed
	begin func(string) string // what begins a line; nil where it may begin with anything

	between, title, under, foot     string
	part, caution, endPart          string // round the sections of the first level, and a caution
	headings                        [3]string
	step                            string // the number of a step, before its heading
	paragraph, note, endParagraph   string // its end, where no display follows, which would be part of it
	boxed, list, item, checks, code string
	states                          [3]string // the mark of a check
	check                           string    // behind its mark

	source func(text string) string // the lines of a code
	figure func(d drawing.Drawing, n int) string
	table  tableForm
}

// writer writes one document in a format.
type writer struct {
	*markup
	b       strings.Builder
	figures []drawing.Drawing
}

func (w *writer) put(form string, parts ...any) {
	if w.b.Len() > 0 {
		w.b.WriteString(w.between)
	}
	fmt.Fprintf(&w.b, form, parts...)
}

// document writes a document between its head and its end.
func (w *writer) document(d *Doc) {
	if d.Title != "" {
		w.put(w.title, w.text(d.Title))
	}
	for _, under := range d.Under {
		w.put(w.under, w.line(under))
	}
	open := false
	for _, s := range d.Sections {
		if s.Level < 2 {
			if open {
				w.b.WriteString(w.endPart)
			}
			open = true
			w.b.WriteString(map[bool]string{true: w.caution, false: w.part}[s.Role == Caution])
		}
		number := ""
		if s.Number > 0 {
			number = fmt.Sprintf(w.step, s.Number)
		}
		if s.Title != "" {
			w.put(w.headings[min(s.Level, 2)], number+w.text(s.Title))
		}
		w.blocks(s.Blocks)
	}
	if open {
		w.b.WriteString(w.endPart)
	}
	if d.Foot != "" {
		w.put(w.foot, w.text(d.Foot))
	}
}

func (w *writer) blocks(blocks []Block) {
	for i := 0; i < len(blocks); i++ {
		switch x := blocks[i].(type) {
		case *Paragraph:
			w.put(map[bool]string{true: w.note, false: w.paragraph}[x.Note], w.line(x.Text))
			if !displayed(blocks[i+1:]) {
				w.b.WriteString(w.endParagraph)
			}
		case *Formula:
			run := Run[*Formula](blocks[i:])
			w.put("%s", w.equations(Equations(run)))
			i += len(run) - 1
		case *Boxed:
			w.put(w.boxed, Set[string](code{notation: w.notation}, x.Math))
		case *Table:
			w.put("%s", w.tabled(x))
		case *Check:
			run := Run[*Check](blocks[i:])
			list := ""
			for _, c := range run {
				list += fmt.Sprintf(w.check, fmt.Sprintf(w.states[c.State], c.State), w.sentence(c.Text))
			}
			w.put(w.checks, list)
			i += len(run) - 1
		case *List:
			list := ""
			for _, item := range x.Items {
				list += fmt.Sprintf(w.item, w.sentence(item))
			}
			w.put(w.list, list)
		case *Code:
			w.put(w.code, w.source(x.Text))
		case *Figure:
			w.figures = append(w.figures, x.Drawing)
			w.put("%s", w.figure(x.Drawing, len(w.figures)))
		default:
			Stray(x)
		}
	}
}

// displayed tells that blocks begin with a formula.
func displayed(blocks []Block) bool {
	return len(Run[*Formula](blocks))+len(Run[*Boxed](blocks)) > 0
}

// line is prose that begins a line.
func (f *markup) line(of []Inline) string {
	if f.begin == nil {
		return f.sentence(of)
	}
	return f.begin(f.sentence(of))
}

// sentence is prose with formulas in it.
func (f *markup) sentence(of []Inline) string {
	var out strings.Builder // of a problem with thousands of members long
	for _, in := range of {
		switch {
		case in.Math != nil:
			out.WriteString(f.notation.sentence(*in.Math))
		case in.Blank > 0:
			out.WriteString(strings.Repeat(".", in.Blank))
		default:
			out.WriteString(f.text(in.Words))
		}
	}
	return out.String()
}
