package picture

import (
	"fmt"
	"math"
	"testing"

	"trivet/mechanics/figure"
	"trivet/mechanics/sheet"
	"trivet/tui/grid"
)

// tower is a mast of bays in space, each of four legs, four rungs and four
// diagonals: twelve members a bay.
func tower(bays int) figure.Figure {
	turn, tilt := math.Pi/7, math.Pi/9
	at := func(k, corner int) (figure.Vec, float64) {
		a := turn + math.Pi/2*float64(corner)
		x, y, z := math.Cos(a), math.Sin(a), 1.5*float64(k)
		return figure.Vec{X: x, Y: z*math.Cos(tilt) + y*math.Sin(tilt)}, z*math.Sin(tilt) - y*math.Cos(tilt)
	}
	var f figure.Figure
	member := func(k0, c0, k1, c1 int) {
		a, za := at(k0, c0)
		b, zb := at(k1, c1)
		ref := sheet.Ref{Table: "lines", Row: fmt.Sprintf("%d%c%d%c", k0, 'A'+c0, k1, 'A'+c1)}
		f.Strokes = append(f.Strokes, figure.Stroke{Kind: figure.Link, Pts: []figure.Vec{a, b}, Ref: ref, Near: [2]float64{za, zb}})
		f.Labels = append(f.Labels, figure.Label{At: figure.Vec{X: (a.X + b.X) / 2, Y: (a.Y + b.Y) / 2}, Text: ref.Row, Mark: "(T)", Ref: ref, Along: [2]figure.Vec{a, b}})
	}
	for k := range bays + 1 {
		for c := range 4 {
			p, _ := at(k, c)
			f.Labels = append(f.Labels, figure.Label{At: p, Text: fmt.Sprintf("%c%d", 'A'+c, k), Ref: sheet.Ref{Table: "points", Row: fmt.Sprint(k, c)}, Rank: figure.OfPoint})
			if k < bays {
				member(k, c, k+1, c)
				member(k, c, k+1, (c+1)%4)
				member(k+1, c, k+1, (c+1)%4)
			}
			f.Low = figure.Vec{X: math.Min(f.Low.X, p.X), Y: math.Min(f.Low.Y, p.Y)}
			f.High = figure.Vec{X: math.Max(f.High.X, p.X), Y: math.Max(f.High.Y, p.Y)}
		}
	}
	return f
}

// BenchmarkTower draws 300 members at the sizes of a picture on screens of 120 by
// 36 and of 200 by 60.
func BenchmarkTower(b *testing.B) {
	f := tower(25)
	for _, size := range [][2]int{{56, 15}, {61, 55}} {
		for _, ascii := range []bool{false, true} {
			b.Run(fmt.Sprintf("%dx%d/%v", size[0], size[1], ascii), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					Draw(grid.New(size[0], size[1]).All(), f, Options{ASCII: ascii, Zoom: 1})
				}
			})
		}
	}
}

// BenchmarkSmall draws three cables and a load.
func BenchmarkSmall(b *testing.B) {
	f := vee()
	b.ReportAllocs()
	for b.Loop() {
		Draw(grid.New(56, 15).All(), f, Options{Zoom: 1})
	}
}
