// Package plate draws a problem as a textbook's figure does, on paper: members,
// supports, bodies, loads and dimensions, with labels that lie on nothing; and
// each body cut free with every force that acts on it.
package plate

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/figure"
	"trivet/mechanics/ink"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
)

// Sizes on paper, in points.
const (
	planeWidth, planeHeight = 330, 180 // of a planar problem's figure
	viewSize                = 165      // of each of the views of a problem in space
	freeSize                = 84       // of a body cut free, without its arrows
	freeSmall               = 64       // and of one of several, so that two stand side by side
	arrowSmall              = 0.7      // of its arrows, beside those of one body alone
	textSize                = 9.5
	captionSize             = 9
	margin                  = 6
	between                 = 18 // views side by side
)

// Options say what stands in a figure beside what has to.
type Options struct {
	Dimensions bool
	Asked      []problem.Query // reactions among them are drawn as arrows with their names

	// Typed is the magnitude of a load as its cell has it, empty where the value is to be
	// printed; nil where all are.
	Typed func(load sheet.Ref) string
}

// System is the figure of the whole problem: the plane, or front, side and
// space side by side.
func System(p *problem.Problem, sol *statics.Solution, opt Options) ink.Drawing {
	if p.Planar {
		d := fit(planeWidth, planeHeight, p, func(k float64) *sketch {
			s := newSketch(p, sol, figure.Front(p), k)
			s.system(opt)
			return s
		})
		d.Title = title(p)
		return d
	}
	views := []struct {
		name string
		view figure.View
		opt  Options
	}{
		{"from the front", figure.Front(p), Options{Dimensions: opt.Dimensions, Typed: opt.Typed}},
		{"from the side", figure.Side(p), Options{Dimensions: opt.Dimensions, Typed: opt.Typed}},
		{"in space", Oblique(p), Options{Asked: opt.Asked, Typed: opt.Typed}},
	}
	var row []ink.Drawing
	for _, v := range views {
		d := fit(viewSize, viewSize*1.15, p, func(k float64) *sketch {
			s := newSketch(p, sol, v.view, k)
			s.system(v.opt)
			return s
		})
		row = append(row, captioned(d, v.name))
	}
	d := Side(row, between)
	d.Title = title(p)
	return d
}

// FreeBody is one body cut free: every force on it with its name and, where it
// is known or found, its value. An unknown force points the way that counts as
// positive, so that a negative value says that it acts against its arrow.
func FreeBody(p *problem.Problem, sol *statics.Solution, body int) ink.Drawing {
	view := Oblique(p)
	if p.Planar {
		view = figure.Front(p)
	}
	s := newSketch(p, sol, view, 1)
	if size := s.reach(body); size > 0 {
		s.scale = freeSize / size
		if len(p.Bodies) > 1 {
			s.scale = freeSmall / size
		}
	}
	s.freeBody(body)
	d := s.finish()
	d.Trim(margin)
	d.Title = "free-body diagram of " + p.Bodies[body].Name
	return captioned(d, p.Bodies[body].Name)
}

// Side sets drawings side by side, on a common bottom.
func Side(row []ink.Drawing, gap float64) ink.Drawing {
	var d ink.Drawing
	for _, one := range row {
		d.Height = math.Max(d.Height, one.Height)
	}
	x := 0.0
	for i, one := range row {
		if i > 0 {
			x += gap
		}
		d.Put(one, ink.Vec{X: x, Y: d.Height - one.Height}, 1)
		x += one.Width
	}
	d.Width = x
	return d
}

func title(p *problem.Problem) string {
	if p.Title == "" {
		return "figure"
	}
	return "figure: " + p.Title
}

func captioned(d ink.Drawing, words string) ink.Drawing {
	run := ink.Run{Text: words, Style: ink.Italic}
	w := ink.Width(captionSize, run)
	if w > d.Width {
		var wide ink.Drawing
		wide.Put(d, ink.Vec{X: (w - d.Width) / 2}, 1)
		wide.Width, wide.Height, wide.Title = w, d.Height, d.Title
		d = wide
	}
	d.Height += 1.6 * captionSize
	d.Write(ink.Vec{X: (d.Width - w) / 2, Y: d.Height - 0.4*captionSize}, captionSize, ink.Faint, run)
	return d
}

// fit draws at the scale at which everything, symbols and labels too, comes
// near the width and height wanted. Those do not shrink with the scale, so a
// few rounds are needed.
func fit(width, height float64, p *problem.Problem, draw func(scale float64) *sketch) ink.Drawing {
	const rounds = 4
	by := room(p)
	width, height = width*by, height*by
	low, high := p.Extent()
	size := math.Max(r3.Norm(r3.Sub(high, low)), 0)
	if size == 0 {
		size = 1
	}
	k := math.Min(width, height) / size
	var d ink.Drawing
	for range rounds {
		d = draw(k).finish()
		b := d.Bounds()
		w, h := b.High.X-b.Low.X, b.High.Y-b.Low.Y
		by = math.Min(width/w, height/h)
		if by > 0.97 && by < 1.05 {
			break
		}
		k *= math.Max(0.4, math.Min(by, 2.5))
	}
	d.Trim(margin)
	return d
}

// room is how much larger than usual a figure is drawn so that many labels
// have places near what they name; whoever prints it scales it down.
func room(p *problem.Problem) float64 {
	const usual = 40 // labels that a figure of the usual size takes
	n := len(p.Points) + len(p.Lines) + len(p.Couples) + len(p.Loads) + len(p.Bodies)/4
	return math.Max(1, math.Sqrt(float64(n)/usual))
}
