package report

import (
	"math"
	"strconv"
	"strings"

	"trivet/mechanics/doc"
	"trivet/mechanics/ink"
)

// A page is A4, in points, with the same margin all round.
const (
	pageWidth, pageHeight = 595.28, 841.89
	pageMargin            = 54
	columnWidth           = pageWidth - 2*pageMargin
	footHeight            = 22
	lead                  = 1.32 // distance of lines, in sizes
)

// slab is a piece of a page that does not break: a line, a figure, a row of a table.
type slab struct {
	d      ink.Drawing
	height float64
	before float64 // space above it, unless it begins a page
	keep   bool    // stays with what follows
}

// compositor sets a page in a column of slabs.
type compositor struct {
	size  float64
	width float64
	slabs []slab
}

// typeset lays a page out on as many sheets of paper as it takes. A field page
// is set smaller until it fits on one, down to what can still be read.
func typeset(pg page) []ink.Drawing {
	size := 10.0
	if pg.field {
		size = 9.0
	}
	for pg.field && size > leastSize {
		if one, ok := onePage(pg, size); ok {
			return []ink.Drawing{one}
		}
		size *= 0.96
	}
	c := compositor{size: size, width: columnWidth}
	c.page(pg)
	return c.paginate(pg)
}

func (c *compositor) page(pg page) {
	title := c.size * 1.7
	c.paragraph([]doc.Inline{{Words: pg.title}}, title, ink.Bold, ink.Dark, 0, 0)
	for _, u := range pg.under {
		c.paragraph([]doc.Inline{{Words: u}}, c.size*0.92, ink.Italic, ink.Faint, 0, c.size*0.2)
	}
	for _, p := range pg.parts {
		c.part(p, pg.field)
	}
	c.source(pg.source)
}

// source sets the line that closes a page, in the smallest type of it; it does
// not stand on a sheet of paper of its own.
func (c *compositor) source(line string) {
	if line != "" {
		if n := len(c.slabs); n > 0 {
			c.slabs[n-1].keep = true
		}
		c.paragraph([]doc.Inline{{Words: line}}, max(c.size*0.8, leastSize), ink.Italic, ink.Faint, 0, c.size*0.9)
	}
}

func (c *compositor) part(p part, field bool) {
	size, before := c.size*1.22, c.size*1.5
	if p.minor {
		size, before = c.size*1.02, c.size*1.0
	}
	if field {
		size, before = c.size*1.08, c.size*0.7
	}
	n := len(c.slabs)
	c.paragraph([]doc.Inline{{Words: p.title}}, size, ink.Bold, ink.Dark, 0, before)
	for i := n; i < len(c.slabs); i++ {
		c.slabs[i].keep = true
	}
	for _, b := range p.blocks {
		c.block(b, field)
	}
}

func (c *compositor) block(b block, field bool) {
	gap := c.size * 0.45
	if field {
		gap = c.size * 0.2
	}
	display := setter{size: c.size, tone: ink.Dark}
	n := len(c.slabs)
	defer func() {
		if b.quiet || leadsOn(b.Text) { // what announces the next does not stand alone
			for i := n; i < len(c.slabs); i++ {
				c.slabs[i].keep = true
			}
		}
	}()
	switch {
	case b.figure != nil:
		c.figure(*b.figure, field)
	case b.OK != nil:
		c.check(b, gap)
	case b.quiet:
		c.paragraph(b.Text, c.size*0.88, ink.Italic, ink.Faint, 0, gap)
	case b.Text != nil:
		c.paragraph(b.Text, c.size, ink.Regular, ink.Dark, 0, gap)
	case b.Formula != nil:
		c.lines(display.pieces(*b.Formula), c.size*1.8, c.size*2, gap)
	case b.Aligned != nil:
		c.aligned(display, b.Aligned, gap)
	case b.Boxed != nil:
		c.boxed(display, *b.Boxed, gap)
	case b.Table != nil:
		c.table(*b.Table, gap)
	}
}

// leadsOn tells a sentence that ends with a colon.
func leadsOn(of []doc.Inline) bool {
	return len(of) > 0 && strings.HasSuffix(strings.TrimSpace(of[len(of)-1].Words), ":")
}

func (c *compositor) put(s slab) { c.slabs = append(c.slabs, s) }

// setBox makes a slab of a line of a formula.
func (c *compositor) setBox(b mbox, indent, before float64) {
	rise, fall := math.Max(b.rise, 0.72*c.size), math.Max(b.fall, 0.25*c.size)
	var d ink.Drawing
	k := 1.0
	if room := c.width - indent; b.width > room && b.width > 0 {
		k = room / b.width // it cannot break any further
	}
	d.Put(b.d, ink.Vec{X: indent, Y: k * rise}, k)
	c.put(slab{d: d, height: k * (rise + fall), before: before})
}

// lines breaks pieces into lines that fit, the later ones further in.
func (c *compositor) lines(of []piece, indent, further, before float64) {
	var line mbox
	at := indent
	for _, p := range of {
		if p.free && line.width > 0 && at+line.width+p.before+p.box.width > c.width {
			c.setBox(line, at, before)
			line, at, before = mbox{}, indent+further, c.size*0.25
			p.before = 0
		}
		line.space(p.before)
		line.add(p.box, 0)
	}
	c.setBox(line, at, before)
}

// aligned sets equations under each other at their first relation.
func (c *compositor) aligned(t setter, of []doc.Math, gap float64) {
	type equation struct {
		left  mbox
		right []piece
	}
	var all []equation
	most := 0.0
	for _, m := range of {
		var e equation
		pieces := t.pieces(m)
		cut := len(pieces)
		for k, p := range pieces {
			if p.sign {
				cut = k
				break
			}
		}
		for _, p := range pieces[:cut] {
			e.left.space(p.before)
			e.left.add(p.box, 0)
		}
		e.right = pieces[cut:]
		most = math.Max(most, e.left.width)
		all = append(all, e)
	}
	indent := c.size * 1.8
	if most > c.width*0.45 { // sums as long as lines: no common place to align at
		for _, m := range of {
			c.lines(t.pieces(m), indent, c.size*2, gap)
		}
		return
	}
	for _, e := range all {
		n := len(c.slabs)
		if len(e.right) == 0 {
			c.setBox(e.left, indent, gap)
			continue
		}
		e.right[0].before = t.gap(0.28)
		c.lines(e.right, indent+most+e.right[0].before, 0, gap)
		s := &c.slabs[n]
		rise, fall := math.Max(s.rise(c.size), e.left.rise), e.left.fall
		shift := rise - s.rise(c.size)
		var d ink.Drawing
		d.Put(s.d, ink.Vec{Y: shift}, 1)
		d.Put(e.left.d, ink.Vec{X: indent + most - e.left.width, Y: rise}, 1)
		s.d, s.height = d, math.Max(s.height+shift, rise+fall)
	}
}

// rise is how far below its top a slab of one line has its baseline: that of
// its first text that is no smaller than the rest.
func (s *slab) rise(size float64) float64 {
	for _, t := range s.d.Texts {
		if t.Size >= 0.99*size {
			return t.At.Y
		}
	}
	return 0.72 * size
}

func (c *compositor) boxed(t setter, m doc.Math, gap float64) {
	b := t.set(m)
	pad := 0.45 * c.size
	rise, fall := math.Max(b.rise, 0.72*c.size), math.Max(b.fall, 0.25*c.size)
	var d ink.Drawing
	x := c.size * 1.8
	d.Area(ink.None, ink.Dark, 0.8, ink.Vec{X: x}, ink.Vec{X: x + b.width + 2*pad}, ink.Vec{X: x + b.width + 2*pad, Y: rise + fall + 2*pad}, ink.Vec{X: x, Y: rise + fall + 2*pad})
	d.Put(b.d, ink.Vec{X: x + pad, Y: pad + rise}, 1)
	c.put(slab{d: d, height: rise + fall + 2*pad, before: gap * 1.2})
}

func (c *compositor) figure(f ink.Drawing, field bool) {
	k := math.Min(1, c.width/f.Width)
	if field {
		const most = 19 // sizes of the text, so that the rest has room
		k = math.Min(k, most*c.size/f.Height)
	}
	var d ink.Drawing
	d.Put(f, ink.Vec{X: (c.width - k*f.Width) / 2}, k)
	c.put(slab{d: d, height: k * f.Height, before: c.size * 0.5})
}

// check sets a check with a mark that is told by its shape as well as its colour.
func (c *compositor) check(b block, gap float64) {
	mark, tone := "ok", ink.Good
	switch {
	case b.Risk:
		mark, tone = "at risk", ink.Risk
	case !*b.OK:
		mark, tone = "FAILS", ink.Bad
	}
	n := len(c.slabs)
	indent := c.size * 3
	if b.Risk {
		indent = c.size * 3.6 // "at risk" is wider
	}
	c.paragraph(b.Text, c.size, ink.Regular, ink.Dark, indent, gap*0.6)
	if n < len(c.slabs) {
		s := &c.slabs[n]
		s.d.Write(ink.Vec{Y: s.rise(c.size)}, c.size*0.9, tone, ink.Run{Text: mark, Style: ink.Bold})
	}
}

// paginate puts slabs on sheets of paper, with page numbers where there are
// several.
func (c *compositor) paginate(pg page) []ink.Drawing {
	const room = pageHeight - 2*pageMargin - footHeight
	var pages []ink.Drawing
	var d ink.Drawing
	y := 0.0
	next := func() {
		d.Width, d.Height, d.Title = pageWidth, pageHeight, pg.title
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
