// Package paper sets a document on sheets of paper, as drawings for a PDF.
package paper

import (
	"math"
	"strconv"

	"trivet/mechanics/doc"
	"trivet/mechanics/drawing"
)

// A page is A4, in points, with the same margin all round.
const (
	pageWidth, pageHeight = 595.28, 841.89
	pageMargin            = 54
	footHeight            = 22
	lead                  = 1.32 // distance of lines, in sizes

	// ColumnWidth is how wide a line or a figure gets.
	ColumnWidth = pageWidth - 2*pageMargin
)

// leastSize is the smallest text of a document on one page: what a person still reads
// off paper.
const leastSize = 5.5

// slab is a piece of a page that does not break: a line, a figure, a row of a table.
type slab struct {
	box
	before float64 // space above it, unless it begins a page
	keep   bool    // stays with what follows
}

func (s *slab) height() float64 { return s.rise + s.fall }

// compositor sets blocks in a column of slabs.
type compositor struct {
	size  float64
	width float64
	dense bool // on one page
	slabs []slab
}

// Pages lays a document out on as many sheets of paper as it takes. One that is to stand
// on one page is set smaller until it fits, down to what can still be read.
func Pages(d *doc.Doc) []drawing.Drawing {
	c := compositor{size: 10, width: ColumnWidth}
	if d.OnePage {
		c.dense = true
		for c.size = 9; c.size > leastSize; c.size *= 0.96 {
			if one, ok := c.onePage(d); ok {
				return []drawing.Drawing{one}
			}
		}
	}
	c.head(d)
	for _, s := range d.Sections {
		c.section(s)
	}
	c.foot(d)
	return c.paginate(d.Title)
}

// onePage sets inputs beside results and checks, all else in the full width. It says
// whether that fits.
func (c compositor) onePage(d *doc.Doc) (drawing.Drawing, bool) {
	const gutter = 18
	head, left, right, foot := c, c, c, c
	left.width = (c.width - gutter) / 2
	right.width = left.width
	head.head(d)
	for _, s := range d.Sections {
		column := &foot
		switch s.Role {
		case doc.Risk, doc.Drawing:
			column = &head
		case doc.Inputs:
			column = &left
		case doc.Results, doc.Checks:
			column = &right
		}
		column.section(s)
	}
	foot.foot(d)
	page := drawing.Drawing{Width: pageWidth, Height: pageHeight, Title: d.Title}
	y := head.putOn(&page, pageMargin, pageMargin) + c.size*0.9
	y = math.Max(left.putOn(&page, pageMargin, y), right.putOn(&page, pageMargin+left.width+gutter, y)) + c.size*0.9
	return page, foot.putOn(&page, pageMargin, y) <= pageHeight-pageMargin
}

// putOn puts the column on a page and gives where it ends.
func (c *compositor) putOn(page *drawing.Drawing, x, y float64) float64 {
	for i, s := range c.slabs {
		if i > 0 {
			y += s.before
		}
		page.Put(s.d, drawing.Vec{X: x, Y: y + s.rise}, 1)
		y += s.height()
	}
	return y
}

// paginate puts slabs on sheets of paper, with page numbers where there are several.
func (c *compositor) paginate(title string) []drawing.Drawing {
	const room = pageHeight - 2*pageMargin - footHeight
	page := drawing.Drawing{Width: pageWidth, Height: pageHeight, Title: title}
	pages, y := []drawing.Drawing{page}, 0.0
	for i := 0; i < len(c.slabs); {
		// What is kept together: headings with the slab that follows them.
		end, need := i, c.slabs[i].before+c.slabs[i].height()
		for end < len(c.slabs)-1 && c.slabs[end].keep {
			end++
			need += c.slabs[end].before + c.slabs[end].height()
		}
		if y > 0 && y+need > room {
			pages, y = append(pages, page), 0
		}
		for ; i <= end; i++ {
			s := c.slabs[i]
			if y > 0 {
				y += s.before
			}
			k := math.Min(1, room/math.Max(s.height(), 1)) // a figure higher than a page
			pages[len(pages)-1].Put(s.d, drawing.Vec{X: pageMargin, Y: pageMargin + y + k*s.rise}, k)
			y += k * s.height()
		}
	}
	for i := range pages {
		if len(pages) > 1 {
			foot := drawing.Run{Text: strconv.Itoa(i+1) + " / " + strconv.Itoa(len(pages))}
			pages[i].Write(drawing.Vec{X: (pageWidth - drawing.Width(8.5, foot)) / 2, Y: pageHeight - pageMargin + 6}, 8.5, drawing.Faint, foot)
		}
	}
	return pages
}

// put puts a box below the others; keep keeps it with what follows.
func (c *compositor) put(b box, before float64, keep bool) {
	c.slabs = append(c.slabs, slab{b, before, keep})
}

// keep keeps the slabs from one on with what follows them.
func (c *compositor) keep(from int) {
	for i := from; i < len(c.slabs); i++ {
		c.slabs[i].keep = true
	}
}

func (c *compositor) head(d *doc.Doc) {
	c.paragraph(setter{size: c.size * 1.7, style: drawing.Bold, tone: drawing.Dark}, doc.Plain(d.Title), box{}, 0)
	for _, under := range d.Under {
		c.paragraph(setter{size: c.size * 0.92, style: drawing.Italic, tone: drawing.Faint}, under, box{}, c.size*0.2)
	}
}

// foot sets the line that closes a document, in the smallest type of it; it does not
// stand on a sheet of paper of its own.
func (c *compositor) foot(d *doc.Doc) {
	if d.Foot != "" {
		c.keep(max(len(c.slabs)-1, 0))
		c.paragraph(setter{size: max(c.size*0.8, leastSize), style: drawing.Italic, tone: drawing.Faint}, doc.Plain(d.Foot), box{}, c.size*0.9)
	}
}

func (c *compositor) section(s doc.Section) {
	size, before := c.size*1.22, c.size*1.5
	switch {
	case c.dense:
		size, before = c.size*1.08, c.size*0.7
	case s.Level > 1:
		size, before = c.size*1.02, c.size*1.0
	}
	title := s.Title
	if s.Number > 0 {
		title = strconv.Itoa(s.Number) + ". " + title
	}
	if title != "" {
		n := len(c.slabs)
		c.paragraph(setter{size: size, style: drawing.Bold, tone: drawing.Dark}, doc.Plain(title), box{}, before)
		c.keep(n)
	}
	for i := 0; i < len(s.Blocks); {
		i += c.block(s.Blocks[i:])
	}
}

// block sets the first of some blocks, and gives how many it has set.
func (c *compositor) block(of []doc.Block) int {
	gap := c.size * 0.45
	if c.dense {
		gap = c.size * 0.2
	}
	plain := setter{size: c.size, tone: drawing.Dark}
	switch b := of[0].(type) {
	case *doc.Paragraph:
		n := len(c.slabs)
		if b.Note {
			plain = setter{size: c.size * 0.88, style: drawing.Italic, tone: drawing.Faint}
		}
		c.paragraph(plain, b.Text, box{}, gap)
		if b.Note || len(of) > 1 && announced(of[1]) {
			c.keep(n)
		}
	case *doc.Formula:
		run := doc.Run[*doc.Formula](of)
		c.formulas(plain, doc.Equations(run), gap)
		return len(run)
	case *doc.Boxed:
		run := doc.Run[*doc.Boxed](of)
		c.boxed(plain, run, gap)
		return len(run)
	case *doc.Check: // its mark is told by its shape as well as its colour
		mark := setter{size: c.size * 0.9, tone: [...]drawing.Tone{drawing.Good, drawing.Risk, drawing.Bad}[b.State]}.text(drawing.Bold, b.State.String())
		mark.width = c.size * 3
		if b.State == doc.AtRisk {
			mark.width = c.size * 3.6 // "at risk" is wider
		}
		c.paragraph(plain, b.Text, mark, gap*0.6)
	case *doc.Table:
		c.table(b, gap)
	case *doc.List:
		for _, item := range b.Items {
			mark := plain.text(drawing.Regular, "•")
			mark.width = c.size * 1.2
			c.paragraph(plain, item, mark, gap*0.6)
		}
	case *doc.Code:
		for _, line := range doc.CodeLines(b.Text) {
			c.paragraph(plain, doc.Plain(line), box{width: c.size * 1.8}, 0)
		}
	case *doc.Figure:
		c.figure(b.Drawing)
	default:
		doc.Stray(b)
	}
	return 1
}

// announced tells a block that the sentence before it announces.
func announced(b doc.Block) bool {
	switch b.(type) {
	case *doc.Formula, *doc.Boxed, *doc.Table, *doc.List, *doc.Code, *doc.Figure:
		return true
	}
	return false
}

// fewLines is up to how many lines a paragraph is not parted by the end of a page.
const fewLines = 3

// paragraph breaks a sentence with formulas in it into lines, behind a mark that stands
// at the left of the first.
func (c *compositor) paragraph(t setter, of []doc.Inline, mark box, before float64) {
	room := c.width - mark.width
	lines := doc.Wrap[box](t, of, room, room)
	for k, line := range lines {
		in := box{d: mark.d, width: mark.width}
		in.add(line.strut(0.78*t.size, lead*t.size*0.86), 0)
		c.put(in, before, len(lines) <= fewLines && k < len(lines)-1)
		mark.d, before = drawing.Drawing{}, t.size*(lead-1.13)
	}
}

// formulas sets equations under each other.
func (c *compositor) formulas(t setter, of []doc.Math, gap float64) {
	indent, first := c.size*1.8, len(c.slabs)
	for _, l := range doc.Arrange[box](t, of, c.width-indent) {
		before := gap
		if l.From > 0 {
			before = c.size * 0.25
		}
		line := l.Box.least(0.72*c.size, 0.25*c.size)
		in := box{width: indent + l.X}
		in.add(line.within(c.width-in.width), 0) // smaller where it cannot break any further
		c.put(in, before, false)
	}
	if n := len(c.slabs); n-first > 1 { // no last line stands on a page of its own
		c.slabs[n-2].keep = true
	}
}

// boxed sets boxed answers in rows, as many beside each other as have room.
func (c *compositor) boxed(t setter, of []*doc.Boxed, gap float64) {
	pad, indent := 0.45*c.size, 1.8*c.size
	rise, fall := 0.72*c.size, 0.25*c.size
	answers := make([]box, len(of))
	for i, answer := range of {
		answers[i] = doc.Set[box](t, answer.Math).within(c.width - indent - 2*pad)
		rise, fall = math.Max(rise, answers[i].rise), math.Max(fall, answers[i].fall)
	}
	row := box{width: indent}
	for i, b := range answers {
		left, right := row.width, row.width+b.width+2*pad
		if i > 0 && right > c.width {
			c.put(row, gap*1.2, false)
			row = box{width: indent}
			left, right = indent, indent+b.width+2*pad
		}
		top, bottom := -rise-pad, fall+pad
		row.d.Area(drawing.None, drawing.Dark, 0.8, drawing.Vec{X: left, Y: top}, drawing.Vec{X: right, Y: top}, drawing.Vec{X: right, Y: bottom}, drawing.Vec{X: left, Y: bottom})
		row.d.Put(b.d, drawing.Vec{X: left + pad}, 1)
		row.width, row.rise, row.fall = right+c.size, -top, bottom
	}
	c.put(row, gap*1.2, false)
}

func (c *compositor) figure(f drawing.Drawing) {
	b := box{width: f.Width, fall: f.Height, d: f}
	k := math.Min(1, c.width/f.Width)
	if c.dense {
		const limit = 19 // sizes of the text, so that the rest has room
		k = math.Min(k, limit*c.size/f.Height)
	}
	in := box{width: (c.width - k*f.Width) / 2}
	in.add(b.scaled(k), 0)
	c.put(in, c.size*0.5, false)
}

// table sets a table between rules; columns of numbers to the right. The widest columns
// of words are wrapped until it fits, and where that is not enough it is set smaller.
func (c *compositor) table(t *doc.Table, gap float64) {
	const least = 36
	const whole = 16 // rows up to which a table stays on one page
	size := c.size * 0.94
	pad := 0.7 * size
	if len(t.Columns) == 0 {
		return
	}
	plain, head := setter{size: size, tone: drawing.Dark}, setter{size: size, style: drawing.Italic, tone: drawing.Faint}
	set := doc.SetTable[box](plain, head, t, pad, least, c.width)
	full := -pad
	for _, w := range set.Widths {
		full += w + pad
	}
	rule := func(before, width float64) {
		b := box{width: full, fall: 1}
		b.d.Line(drawing.Dark, width, drawing.Vec{}, drawing.Vec{X: math.Min(full, c.width)})
		c.put(b, before, true)
	}
	rights := t.Rights()
	row := func(cells [][]box, keep bool) {
		b := box{width: full}
		x := 0.0
		for col, lines := range cells {
			y := 0.0
			for _, line := range lines {
				line, at := line.strut(0.74*size, size*1.05), x
				if rights[col] {
					at += math.Max(0, set.Widths[col]-line.width)
				}
				b.d.Put(line.d, drawing.Vec{X: at, Y: y + line.rise}, 1)
				y += line.rise + line.fall
			}
			b.fall = math.Max(b.fall, y)
			x += set.Widths[col] + pad
		}
		b = b.within(c.width)
		c.put(b, size*0.22*b.width/full, keep)
	}
	rule(gap, 0.8)
	rows := set.Rows
	if t.Headed() {
		row(rows[0], true)
		rule(size*0.2, 0.4)
		rows = rows[1:]
	}
	for i, cells := range rows {
		row(cells, i == len(rows)-1 || len(rows) <= whole)
	}
	rule(size*0.25, 0.8)
	c.slabs[len(c.slabs)-1].keep = false
}
