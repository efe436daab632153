package figure

import (
	"math"

	"trivet/mechanics/drawing"
	"trivet/mechanics/scene"
)

// Sizes on a page, in points.
const (
	planeWidth, planeHeight = 330, 180 // of a problem in the plane
	spaceSize               = 260      // of the view in space
	viewsSize               = 215      // of the three views beside it together
	freeSize                = 170      // of a free body with its arrows
	freeSmall               = 130      // and of one of several, so that three stand side by side
	captionSize             = 9
	margin                  = 6
	between                 = 16 // views
	symbols                 = 90 // that arrows, supports and labels take beside a figure
)

// System sets the figure of a whole problem on paper: the plane, or the view in space with
// front, side and top beside it at one scale, the one in line with the other.
func System(s *scene.Scene) drawing.Drawing {
	const usual = 24 // labels that a figure of the usual size takes
	by := enlarged(s, usual)
	if s.Planar {
		size := Front(s).reach(s).Size()
		scale := math.Min(planeWidth/size.X, planeHeight/size.Y)
		if used := (scale*size.X + symbols) * (scale*size.Y + symbols) / (planeWidth * planeHeight); by > 1 && used < 1 { // a long figure has less room beside it
			by /= math.Sqrt(used)
		}
		return trimmed(s, roomy(s, Front(s), Paper(planeWidth*by, planeHeight*by)))
	}
	bare := *s
	bare.Dimensions = nil
	space := trimmed(s, Set(&bare, oblique(s), Paper(spaceSize*by, spaceSize*by)))
	plain := *s
	plain.Things = nil // letters and loads have their values in the view in space
	for _, t := range s.Things {
		if t.Label.Short != nil {
			t.Label.Runs = t.Label.Short
		}
		plain.Things = append(plain.Things, t)
	}
	d := Row([]drawing.Drawing{captioned(space, scene.Italic("in space")...), views(&plain, viewsSize*by)}, between)
	d.Title = s.Alt()
	return d
}

// views are front, side and top, the side in line with the front and the top below it.
func views(s *scene.Scene, size float64) drawing.Drawing {
	extent := func(v View) drawing.Vec { return v.reach(s).Size() }
	seen, above := extent(Front(s)), extent(Top(s))
	m := Paper(0, 0)
	m.Scale = (size - symbols) / math.Max(math.Max(seen.X, seen.Y)+above.Y, scene.Flat*s.Size)
	front := Set(s, Front(s), m)
	bare := *s
	bare.Dimensions = nil
	side, top := Set(&bare, Side(s), m), Set(&bare, Top(s), m)
	var d drawing.Drawing
	put := func(one Drawing, at drawing.Vec, words string) {
		d.Put(one.Drawing, at, 1)
		b := one.Bounds()
		run := drawing.Run{Text: words, Style: drawing.Italic}
		d.Write(drawing.Vec{X: at.X + b.Centre().X - drawing.Width(captionSize, run)/2, Y: at.Y + b.High.Y + 1.2*captionSize}, captionSize, drawing.Faint, run)
	}
	put(front, drawing.Vec{}, "from the front")
	put(side, drawing.Vec{X: front.Bounds().High.X - side.Bounds().Low.X + between}, "from the side")
	put(top, drawing.Vec{Y: front.Bounds().High.Y - top.Bounds().Low.Y + between + captionSize}, "from above")
	d.Trim(margin)
	return d
}

// Free sets a free body on paper.
func Free(s *scene.Scene, name string, several bool) drawing.Drawing {
	const usual = 10 // labels that a body of the usual size takes
	by := enlarged(s, usual)
	m := Paper(by*freeSize, 0.8*by*freeSize)
	if several {
		m = Paper(by*freeSmall, by*freeSmall)
	}
	m.Triad = !s.Planar
	return captioned(trimmed(s, roomy(s, oblique(s), m)), scene.Italic(name)...)
}

// roomy sets a figure, larger than the medium has room for where labels have their places
// nearer then.
func roomy(s *scene.Scene, v View, m Medium) Drawing {
	const (
		larger, steps = 1.25, 3
		near          = 25.0 // points: a line to a label is no trouble as long as this
		many          = 60   // things are not set more than once
	)
	best := Set(s, v, m)
	for range steps {
		if best.led < near || len(s.Things) > many {
			break
		}
		m.Width, m.Height = m.Width*larger, m.Height*larger
		if next := Set(s, v, m); next.led < best.led/larger {
			best = next
		}
	}
	return best
}

// trimmed takes off what is empty, and says what does not show: forces that are zero, and
// labels without room.
func trimmed(s *scene.Scene, d Drawing) drawing.Drawing {
	d.Trim(margin)
	d.Title = s.Alt()
	var note []drawing.Run
	for i, name := range d.zero {
		if i > 0 {
			note = scene.With(note, ", ")
		}
		note = append(note, name...)
	}
	also := ""
	if note != nil {
		note, also = scene.With(note, " = 0"), "; "
	}
	if left := d.LeftOut(); left != "" {
		note = scene.With(note, also+left)
	}
	if note != nil {
		return captioned(d.Drawing, note...)
	}
	return d.Drawing
}

// Row sets drawings side by side, on a common bottom.
func Row(row []drawing.Drawing, gap float64) (d drawing.Drawing) {
	for _, one := range row {
		d.Height = math.Max(d.Height, one.Height)
	}
	for i, one := range row {
		if i > 0 {
			d.Width += gap
		}
		d.Put(one, drawing.Vec{X: d.Width, Y: d.Height - one.Height}, 1)
		d.Width += one.Width
	}
	return d
}

func captioned(d drawing.Drawing, words ...drawing.Run) drawing.Drawing {
	w := drawing.Width(captionSize, words...)
	if w > d.Width {
		wide := drawing.Drawing{Width: w, Height: d.Height, Title: d.Title}
		wide.Put(d, drawing.Vec{X: (w - d.Width) / 2}, 1)
		d = wide
	}
	d.Height += 1.6 * captionSize
	d.Write(drawing.Vec{X: (d.Width - w) / 2, Y: d.Height - 0.4*captionSize}, captionSize, drawing.Faint, words...)
	return d
}

// enlarged is how much larger than usual a figure is drawn so that many labels have
// places near what they name; whoever prints it scales it down.
func enlarged(s *scene.Scene, usual float64) float64 {
	n := 0.0
	for i := range s.Things {
		if s.Things[i].Label.Runs != nil {
			n++
		}
	}
	return math.Max(1, math.Sqrt(n/usual))
}
