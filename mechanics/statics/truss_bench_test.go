package statics

import (
	"fmt"
	"math"
	"runtime"
	"testing"
	"time"

	"gonum.org/v1/gonum/mat"

	"trivet/mechanics/linear"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
)

// retyped gives a function that types one of two texts into a cell, in turns, and
// takes the sheet from there to the solution with verdict and checks, as the
// workbench does: with a reader that remembers the other cells.
func retyped(b testing.TB, text string, ref sheet.Ref, one, other string) func() *Solution {
	sh, err := sheet.Parse([]byte(text))
	if err != nil {
		b.Fatal(err)
	}
	reader := problem.NewReader()
	i := 0
	return func() *Solution {
		cell := one
		if i++; i%2 == 0 {
			cell = other
		}
		p, errs := reader.Read(sh.With(ref, cell))
		if len(errs) > 0 {
			b.Fatal(errs[0])
		}
		return Solve(p)
	}
}

func (t *truss) retyped(b testing.TB) func() *Solution {
	zero := "0, "
	if !t.planar {
		zero = "0, 0, "
	}
	return retyped(b, t.text(), sheet.Ref{Table: "lines", Row: "L0", Key: "components"}, zero+"-1 kN", zero+"-2 kN")
}

// bareDense gives a function that factors and solves the dense matrix of a
// solution with gonum, no more.
func bareDense(b testing.TB, s *Solution) func() {
	n := len(s.X)
	if n != len(s.System.Rows) || s.Verdict != Determinate {
		b.Fatalf("%d rows, %d columns, %v", len(s.System.Rows), n, s.Words())
	}
	entries := (&linear.Matrix{Rows: s.System.Terms, Cols: n}).Dense().RawMatrix().Data
	return func() {
		var lu mat.LU
		lu.Factorize(mat.NewDense(n, n, append([]float64{}, entries...)))
		x := mat.NewVecDense(n, nil)
		if err := lu.SolveVecTo(x, false, mat.NewVecDense(n, s.System.B)); err != nil {
			b.Fatal(err)
		}
	}
}

// trussKinds are trusses with about n unknowns.
func trussKinds() map[string]func(n int) *truss {
	return map[string]func(n int) *truss{
		"warren": func(n int) *truss { return warren((n - 2) / 4) },
		"pratt":  func(n int) *truss { return pratt((n - 4) / 4) },
		"tower":  func(n int) *truss { return tower(n / 9) },
	}
}

// BenchmarkTruss is a changed cell of a truss.
func BenchmarkTruss(b *testing.B) {
	for name, kind := range trussKinds() {
		for _, n := range []int{30, 300, 1000, 3000} {
			b.Run(fmt.Sprintf("%s/%d", name, n), func(b *testing.B) {
				run := kind(n).retyped(b)
				run()
				b.ReportAllocs()
				for b.Loop() {
					run()
				}
			})
		}
	}
}

// BenchmarkTrussRatio takes a changed cell and gonum's bare dense LU of the same
// matrix of about 300 unknowns in turns, and a truss of ten times as many beside
// it: times-bare-LU is to be at most 1, growth the exponent of n, at most 1.5.
func BenchmarkTrussRatio(b *testing.B) {
	for name, kind := range trussKinds() {
		b.Run(name, func(b *testing.B) {
			run, large := kind(300).retyped(b), kind(3000).retyped(b)
			first := run()
			bare := bareDense(b, first)
			ratio := math.Log(float64(len(large().X)) / float64(len(first.X)))
			var cell, lu, most time.Duration
			for b.Loop() {
				start := time.Now()
				for range 10 {
					run()
				}
				cell += time.Since(start)
				start = time.Now()
				for range 10 {
					bare()
				}
				lu += time.Since(start)
				start = time.Now()
				for range 10 {
					large()
				}
				most += time.Since(start)
			}
			b.ReportMetric(float64(cell)/float64(lu), "times-bare-LU")
			b.ReportMetric(math.Log(float64(most)/float64(cell))/ratio, "growth")
		})
	}
}

// BenchmarkTrussMemory reports the most memory that the program holds from the
// system while it works on 3,000 unknowns, the sheet and Go itself included; it
// is to be below 200 MB. Run alone, since the system gets memory back late.
func BenchmarkTrussMemory(b *testing.B) {
	run := warren(750).retyped(b)
	var m runtime.MemStats
	most := uint64(0)
	for b.Loop() {
		run()
		runtime.ReadMemStats(&m)
		most = max(most, m.Sys)
	}
	b.ReportMetric(float64(most)/1e6, "MB")
}

// plate is a rigid body on six links: six equations for six unknowns.
const plate = `[points]
A = { at = "0, 0, 0", on = "plate" }
B = { at = "4, 0, 0", on = "plate" }
C = { at = "0, 3, 0", on = "plate" }
A1 = "0, 0, -2"
B1 = "4, 0, -2"
C1 = "0, 3, -2"
A2 = "-2, 0, 0"
A3 = "0, -2, 0"
B2 = "4, -2, 0"
[lines]
S1 = { kind = "link", path = "A A1" }
S2 = { kind = "link", path = "B B1" }
S3 = { kind = "link", path = "C C1" }
S4 = { kind = "link", path = "A A2" }
S5 = { kind = "link", path = "A A3" }
S6 = { kind = "link", path = "B B2" }
F = { kind = "force", at = "C", components = "(30, 40, -500) N" }
`

// BenchmarkBodyRatio is a changed cell of the plate beside the bare LU of its
// matrix: times-bare-LU is to be at most 20.
func BenchmarkBodyRatio(b *testing.B) {
	run := retyped(b, plate, sheet.Ref{Table: "points", Row: "C1"}, "0.1, 3, -2", "0.2, 3, -2")
	bare := bareDense(b, run())
	var cell, lu time.Duration
	for b.Loop() {
		start := time.Now()
		for range 200 {
			run()
		}
		middle := time.Now()
		for range 200 {
			bare()
		}
		cell += middle.Sub(start)
		lu += time.Since(middle)
	}
	b.ReportMetric(float64(cell)/float64(lu), "times-bare-LU")
}
