package topic

import (
	"slices"
	"strings"

	"github.com/charmbracelet/x/ansi"

	"trivet/tui/grid"
)

// Span is a piece of a line in one look.
type Span struct {
	Text string
	Look Look
}

// Look is how a piece of a line is shown.
type Look int

// The looks. None carries a meaning alone.
const (
	Plain Look = iota
	Heading
	Strong
	Typed // as it is typed into a cell or a shell
)

// Narrowest is the width down to which lines keep to a width.
const Narrowest = 24

// between is the room between two columns.
const between = 2

// Lines set a document in lines of a width at most; text as it is typed is not broken.
func Lines(d Doc, width int) (lines [][]Span) {
	width = max(width, Narrowest)
	add := func(l ...Span) { lines = append(lines, l) }
	heading := func(title string) {
		if title == "" {
			return
		}
		if len(lines) > 0 {
			add()
		}
		for _, l := range wrapped([]Inline{{Words: title}}, width) {
			for k := range l {
				l[k].Look = Heading
			}
			add(l...)
		}
	}
	heading(d.Title)
	for _, s := range d.Sections {
		heading(s.Title)
		for i, b := range s.Blocks {
			if i > 0 || s.Title == "" {
				add()
			}
			lines = append(lines, blockLines(b, width)...)
		}
	}
	return lines
}

func blockLines(b Block, width int) (lines [][]Span) {
	switch b := b.(type) {
	case *Paragraph:
		return wrapped(b.Text, width)
	case *List:
		for _, item := range b.Items {
			for k, l := range wrapped(item, width-between) {
				mark := "- "
				if k > 0 {
					mark = "  "
				}
				lines = append(lines, append([]Span{{mark, Plain}}, l...))
			}
		}
	case *Code:
		for l := range strings.Lines(b.Text) {
			lines = append(lines, []Span{{strings.TrimRight("  "+l, " \n"), Typed}})
		}
	case *Table:
		return tableLines(b, width)
	}
	return lines
}

// word is what no line break parts.
type word []Span

func (w word) width() (n int) {
	for _, s := range w {
		n += grid.Width(s.Text)
	}
	return n
}

// parts are the words of a sentence. What is typed stays whole, and among other words
// it is in quotes, since blanks may be part of it.
func parts(text []Inline) (words []word) {
	open := false // the next piece belongs to the last word
	for _, i := range text {
		look := [...]Look{Upright: Plain, Emphasis: Strong, Mono: Typed}[i.Style]
		pieces := []string{i.Words}
		if i.Style == Mono && len(text) > 1 {
			pieces[0] = "`" + i.Words + "`"
		} else if i.Style != Mono {
			pieces = strings.FieldsFunc(i.Words, func(r rune) bool { return r == ' ' })
			open = open && !strings.HasPrefix(i.Words, " ")
		}
		for _, p := range pieces {
			if open {
				last := len(words) - 1
				words[last] = append(words[last], Span{p, look})
			} else {
				words = append(words, word{{p, look}})
			}
			open = false
		}
		open = !strings.HasSuffix(i.Words, " ") || i.Style == Mono
	}
	return words
}

// wrapped breaks a sentence into lines of a width; a word that is longer is broken.
func wrapped(text []Inline, width int) (lines [][]Span) {
	var line []Span
	used := 0
	end := func() {
		if used > 0 {
			lines = append(lines, line)
		}
		line, used = nil, 0
	}
	for _, w := range parts(text) {
		n := w.width()
		if used > 0 && used+1+n > width {
			end()
		}
		if used > 0 {
			line, used = append(line, Span{" ", Plain}), used+1
		}
		for n > width && used == 0 {
			head, rest := cut(w, width)
			lines = append(lines, head)
			w, n = rest, rest.width()
		}
		line, used = append(line, w...), used+n
	}
	end()
	return lines
}

// cut parts a word behind the last blank within a width, or at the width.
func cut(w word, width int) (head []Span, rest word) {
	for i, s := range w {
		n := grid.Width(s.Text)
		if n < width {
			width -= n
			continue
		}
		at := len(ansi.Truncate(s.Text, width, ""))
		if blank := strings.LastIndexByte(s.Text[:at], ' '); blank > 0 {
			at = blank
		}
		head = append(append(head, w[:i]...), Span{s.Text[:at], s.Look})
		rest = append(word{{strings.TrimLeft(s.Text[at:], " "), s.Look}}, w[i+1:]...)
		return head, rest
	}
	return w, nil
}

// tableLines sets a table, its columns as wide as they need, or as the width allows.
func tableLines(t *Table, width int) (lines [][]Span) {
	widths := t.widths(width)
	row := func(cells [][][]Span, look Look) {
		high := 0
		for _, c := range cells {
			high = max(high, len(c))
		}
		for y := range high {
			var line []Span
			gap := 0
			for k, c := range cells {
				used := 0
				if y < len(c) {
					line = append(line, Span{strings.Repeat(" ", gap), look})
					for _, s := range c[y] {
						if look != Plain {
							s.Look = look
						}
						line = append(line, s)
						used += grid.Width(s.Text)
					}
					gap = 0
				}
				gap += widths[k] - used + between
			}
			lines = append(lines, line)
		}
	}
	if t.headed() {
		var cells [][][]Span
		for k, c := range t.Columns {
			cells = append(cells, wrapped([]Inline{{Words: c.Head}}, widths[k]))
		}
		row(cells, Heading)
	}
	for _, r := range t.Rows {
		var cells [][][]Span
		for k := range t.Columns {
			cells = append(cells, wrapped([]Inline{t.cell(r, k)}, widths[k]))
		}
		row(cells, Plain)
	}
	return lines
}

func (t *Table) headed() bool {
	for _, c := range t.Columns {
		if c.Head != "" {
			return true
		}
	}
	return false
}

func (t *Table) cell(row []Inline, k int) Inline {
	if k < len(row) {
		return row[k]
	}
	return Inline{}
}

// widths are those of the columns: what each needs, where all fit; otherwise the narrow
// ones have what they need and the others share what is left.
func (t *Table) widths(width int) []int {
	widths := make([]int, len(t.Columns))
	order := make([]int, len(widths))
	for k, c := range t.Columns {
		order[k] = k
		widths[k] = grid.Width(c.Head)
		for _, r := range t.Rows {
			widths[k] = max(widths[k], grid.Width(t.cell(r, k).Words))
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return widths[a] - widths[b] })
	left := width - between*(len(widths)-1)
	for i, k := range order {
		widths[k] = min(widths[k], max(left/(len(order)-i), 1))
		left -= widths[k]
	}
	return widths
}

// Spoken are the lines of a document for a screen reader: a sentence, or a row of a
// table with its cells one behind the other.
func Spoken(d Doc) (lines []string) {
	add := func(s string) {
		if s != "" {
			lines = append(lines, s)
		}
	}
	add(d.Title)
	for _, s := range d.Sections {
		add(s.Title)
		for _, b := range s.Blocks {
			switch b := b.(type) {
			case *Paragraph:
				add(words(b.Text))
			case *List:
				for _, item := range b.Items {
					add(words(item))
				}
			case *Code:
				for l := range strings.Lines(b.Text) {
					add(strings.TrimSpace(l))
				}
			case *Table:
				for _, r := range b.Rows {
					add(b.spoken(r))
				}
			}
		}
	}
	return lines
}

// spoken is a row, its first cell before the others. Of a wide table the heads say what
// each cell is.
func (t *Table) spoken(row []Inline) string {
	var rest []string
	for k := 1; k < len(t.Columns); k++ {
		cell := t.cell(row, k).Words
		switch {
		case cell == "":
		case len(t.Columns) > 2:
			rest = append(rest, t.Columns[k].Head+" "+cell)
		default:
			rest = append(rest, cell)
		}
	}
	return t.cell(row, 0).Words + ": " + strings.Join(rest, ", ")
}
