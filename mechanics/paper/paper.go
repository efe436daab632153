// Package paper sets a document on sheets of paper, as drawings for a PDF.
package paper

import (
	"math"
	"strconv"

	"trivet/mechanics/doc"
	"trivet/mechanics/ink"
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
	d      ink.Drawing
	height float64
	before float64 // space above it, unless it begins a page
	keep   bool    // stays with what follows
}

// compositor sets blocks in a column of slabs.
type compositor struct {
	size  float64
	width float64
	dense bool // on one page
	slabs []slab
}

// Pages lays a document out on as many sheets of paper as it takes. One that is to stand
// on one page is set smaller until it fits, down to what can still be read.
func Pages(d *doc.Doc) []ink.Drawing {
	if !d.OnePage {
		c := compositor{size: 10, width: ColumnWidth}
		c.head(d)
		c.sections(d.Sections)
		c.foot(d)
		return c.paginate(d.Title)
	}
	size := 9.0
	for ; size > leastSize; size *= 0.96 {
		if one, ok := onePage(d, size); ok {
			return []ink.Drawing{one}
		}
	}
	c := compositor{size: size, width: ColumnWidth, dense: true}
	c.head(d)
	c.sections(d.Sections)
	c.foot(d)
	return c.paginate(d.Title)
}

// onePage sets inputs beside results and checks, all else across. It says whether that
// fits.
func onePage(d *doc.Doc, size float64) (ink.Drawing, bool) {
	const gutter = 18
	half := (ColumnWidth - gutter) / 2.0
	head := compositor{size: size, width: ColumnWidth, dense: true}
	left, right, foot := head, head, head
	left.width, right.width = half, half
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
	page := ink.Drawing{Width: pageWidth, Height: pageHeight, Title: d.Title}
	y := head.putOn(&page, pageMargin, pageMargin) + size*0.9
	y = math.Max(left.putOn(&page, pageMargin, y), right.putOn(&page, pageMargin+half+gutter, y)) + size*0.9
	return page, foot.putOn(&page, pageMargin, y) <= pageHeight-pageMargin
}

// putOn puts the column on a page and gives where it ends.
func (c *compositor) putOn(page *ink.Drawing, x, y float64) float64 {
	for i, s := range c.slabs {
		if i > 0 {
			y += s.before
		}
		page.Put(s.d, ink.Vec{X: x, Y: y}, 1)
		y += s.height
	}
	return y
}

func (c *compositor) head(d *doc.Doc) {
	c.paragraph(setter{size: c.size * 1.7, style: ink.Bold, tone: ink.Dark}, doc.Plain(d.Title), 0, 0)
	for _, under := range d.Under {
		c.paragraph(setter{size: c.size * 0.92, style: ink.Italic, tone: ink.Faint}, under, 0, c.size*0.2)
	}
}

// foot sets the line that closes a document, in the smallest type of it; it does not
// stand on a sheet of paper of its own.
func (c *compositor) foot(d *doc.Doc) {
	if d.Foot != "" {
		c.keep(max(len(c.slabs)-1, 0))
		c.paragraph(setter{size: max(c.size*0.8, leastSize), style: ink.Italic, tone: ink.Faint}, doc.Plain(d.Foot), 0, c.size*0.9)
	}
}

// keep keeps the slabs from one on with what follows them.
func (c *compositor) keep(from int) {
	for i := from; i < len(c.slabs); i++ {
		c.slabs[i].keep = true
	}
}

func (c *compositor) sections(of []doc.Section) {
	for _, s := range of {
		c.section(s)
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
		c.paragraph(setter{size: size, style: ink.Bold, tone: ink.Dark}, doc.Plain(title), 0, before)
		c.keep(n)
	}
	for i := 0; i < len(s.Blocks); i++ {
		i += c.block(s.Blocks[i:]) - 1
	}
}

// block sets the first of some blocks, and gives how many it has set.
func (c *compositor) block(of []doc.Block) int {
	gap := c.size * 0.45
	if c.dense {
		gap = c.size * 0.2
	}
	plain := setter{size: c.size, tone: ink.Dark}
	switch b := of[0].(type) {
	case *doc.Paragraph:
		n := len(c.slabs)
		if b.Note {
			plain = setter{size: c.size * 0.88, style: ink.Italic, tone: ink.Faint}
		}
		c.paragraph(plain, b.Text, 0, gap)
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
	case *doc.Check:
		c.check(b, gap)
	case *doc.Table:
		c.table(b, gap)
	case *doc.List:
		for _, item := range b.Items {
			n := len(c.slabs)
			c.paragraph(plain, item, c.size*1.2, gap*0.6)
			c.mark(n, c.size, ink.Dark, "•", ink.Regular)
		}
	case *doc.Code:
		for _, line := range doc.CodeLines(b.Text) {
			c.paragraph(plain, doc.Plain(line), c.size*1.8, 0)
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

func (c *compositor) put(s slab) { c.slabs = append(c.slabs, s) }

// fewLines is up to how many lines a paragraph is not parted by the end of a page.
const fewLines = 3

// paragraph breaks a sentence with formulas in it into lines.
func (c *compositor) paragraph(t setter, of []doc.Inline, indent, before float64) {
	first := len(c.slabs)
	for k, line := range doc.Wrap[box](t, of, c.width-indent, c.width-indent) {
		var d ink.Drawing
		rise := math.Max(line.rise, 0.78*t.size)
		d.Put(line.d, ink.Vec{X: indent, Y: rise}, 1)
		s := slab{d: d, height: math.Max(rise+line.fall, lead*t.size*0.86), before: before}
		if k > 0 {
			s.before = t.size * (lead - 1.13)
		}
		c.put(s)
	}
	if n := len(c.slabs); n-first > 1 && n-first <= fewLines {
		for i := first; i < n-1; i++ {
			c.slabs[i].keep = true
		}
	}
}

// formulas sets equations under each other.
func (c *compositor) formulas(t setter, of []doc.Math, gap float64) {
	var all [][]doc.Piece[box]
	for _, m := range of {
		all = append(all, doc.Pieces[box](t, m))
	}
	indent, first := c.size*1.8, len(c.slabs)
	for _, l := range doc.Arrange[box](t, all, c.width-indent) {
		before := gap
		if l.From > 0 {
			before = c.size * 0.25
		}
		c.line(doc.Line[box](t, all[l.Of][l.From:l.To]), indent+l.X, before)
	}
	if n := len(c.slabs); n-first > 1 { // no last line stands on a page of its own
		c.slabs[n-2].keep = true
	}
}

// line makes a slab of a line of a formula, smaller where it cannot break any further.
func (c *compositor) line(b box, indent, before float64) {
	k := math.Min(1, (c.width-indent)/math.Max(b.width, 1))
	rise, fall := math.Max(b.rise, 0.72*c.size), math.Max(b.fall, 0.25*c.size)
	var d ink.Drawing
	d.Put(b.d, ink.Vec{X: indent, Y: k * rise}, k)
	c.put(slab{d: d, height: k * (rise + fall), before: before})
}

// boxed sets boxed answers in rows, as many beside each other as have room.
func (c *compositor) boxed(t setter, of []*doc.Boxed, gap float64) {
	pad, indent := 0.45*c.size, 1.8*c.size
	var row []box
	x := indent
	for _, answer := range of {
		b := doc.Set[box](t, answer.Math)
		if room := c.width - indent - 2*pad; b.width > room {
			b = b.scaled(room / b.width)
		}
		if len(row) > 0 && x+b.width+2*pad > c.width {
			c.boxes(row, gap)
			row, x = nil, indent
		}
		row, x = append(row, b), x+b.width+2*pad+c.size
	}
	c.boxes(row, gap)
}

// boxes is a slab of a row of boxed answers.
func (c *compositor) boxes(row []box, gap float64) {
	pad, x := 0.45*c.size, 1.8*c.size
	rise, fall := 0.72*c.size, 0.25*c.size
	for _, b := range row {
		rise, fall = math.Max(rise, b.rise), math.Max(fall, b.fall)
	}
	var d ink.Drawing
	for _, b := range row {
		right := x + b.width + 2*pad
		d.Area(ink.None, ink.Dark, 0.8, ink.Vec{X: x}, ink.Vec{X: right}, ink.Vec{X: right, Y: rise + fall + 2*pad}, ink.Vec{X: x, Y: rise + fall + 2*pad})
		d.Put(b.d, ink.Vec{X: x + pad, Y: pad + rise}, 1)
		x = right + c.size
	}
	c.put(slab{d: d, height: rise + fall + 2*pad, before: gap * 1.2})
}

func (c *compositor) figure(f ink.Drawing) {
	k := math.Min(1, c.width/f.Width)
	if c.dense {
		const most = 19 // sizes of the text, so that the rest has room
		k = math.Min(k, most*c.size/f.Height)
	}
	var d ink.Drawing
	d.Put(f, ink.Vec{X: (c.width - k*f.Width) / 2}, k)
	c.put(slab{d: d, height: k * f.Height, before: c.size * 0.5})
}

// check sets a check with a mark that is told by its shape as well as its colour.
func (c *compositor) check(b *doc.Check, gap float64) {
	indent := c.size * 3
	if b.State == doc.AtRisk {
		indent = c.size * 3.6 // "at risk" is wider
	}
	n := len(c.slabs)
	c.paragraph(setter{size: c.size, tone: ink.Dark}, b.Text, indent, gap*0.6)
	c.mark(n, c.size*0.9, [...]ink.Tone{ink.Good, ink.Risk, ink.Bad}[b.State], b.State.String(), ink.Bold)
}

// mark writes a mark at the left of a line of text.
func (c *compositor) mark(at int, size float64, tone ink.Tone, text string, style ink.Style) {
	if at < len(c.slabs) {
		c.slabs[at].d.Write(ink.Vec{Y: 0.78 * c.size}, size, tone, ink.Run{Text: text, Style: style})
	}
}

// paginate puts slabs on sheets of paper, with page numbers where there are several.
func (c *compositor) paginate(title string) []ink.Drawing {
	const room = pageHeight - 2*pageMargin - footHeight
	var pages []ink.Drawing
	var d ink.Drawing
	y := 0.0
	next := func() {
		d.Width, d.Height, d.Title = pageWidth, pageHeight, title
		pages = append(pages, d)
		d, y = ink.Drawing{}, 0
	}
	for i := 0; i < len(c.slabs); {
		// What is kept together: headings with the slab that follows them.
		end := i
		for end < len(c.slabs)-1 && c.slabs[end].keep {
			end++
		}
		need := 0.0
		for _, s := range c.slabs[i : end+1] {
			need += s.before + s.height
		}
		if y > 0 && y+need > room {
			next()
		}
		for ; i <= end; i++ {
			s := c.slabs[i]
			if y > 0 {
				y += s.before
			}
			k := math.Min(1, room/math.Max(s.height, 1)) // a figure higher than a page
			d.Put(s.d, ink.Vec{X: pageMargin, Y: pageMargin + y}, k)
			y += k * s.height
		}
	}
	next()
	for i := range pages {
		if len(pages) > 1 {
			foot := ink.Run{Text: strconv.Itoa(i+1) + " / " + strconv.Itoa(len(pages))}
			pages[i].Write(ink.Vec{X: (pageWidth - ink.Width(8.5, foot)) / 2, Y: pageHeight - pageMargin + 6}, 8.5, ink.Faint, foot)
		}
	}
	return pages
}
