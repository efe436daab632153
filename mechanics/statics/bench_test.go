package statics

import (
	"fmt"
	"testing"
	"time"

	"gonum.org/v1/gonum/mat"

	"trivet/mechanics/linear"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
)

// mast is a particle on three guys: three equations for three unknowns.
const mast = `title = "Mast top"
[given]
h = "12"
[points]
T = { at = "0, 0, h", on = "particle" }
A = "9, 0, 0"
B = "-3, 4, 0"
C = "-3, -4, 0"
[lines]
T1 = { kind = "cable", path = "T A" }
T2 = { kind = "cable", path = "T B" }
T3 = { kind = "cable", path = "T C" }
F = { kind = "force", at = "T", components = "(-600, -400, 5600)" }
`

// keystrokes gives a function that types into one cell of the mast, another text
// each time, and solves it anew with all checks.
func keystrokes(b testing.TB) func(i int) *Solution {
	base, err := sheet.Parse([]byte(mast))
	if err != nil {
		b.Fatal(err)
	}
	rd := problem.NewReader()
	cell := sheet.Ref{Table: "points", Row: "A"}
	// More texts than a reader remembers, so that each is parsed when it is typed.
	texts := make([]string, 20000)
	for i := range texts {
		texts[i] = fmt.Sprintf("9.%05d, 0, 0", i)
	}
	return func(i int) *Solution {
		p, errs := rd.Read(base.With(cell, texts[i%len(texts)]))
		if len(errs) > 0 {
			b.Fatal(errs)
		}
		return Solve(p)
	}
}

// bareLU gives a function that factorises and solves the mast's matrix, no more.
func bareLU(b testing.TB) func() {
	s := keystrokes(b)(0)
	n := len(s.System.Cols)
	if n != 3 || len(s.System.Rows) != 3 || s.Verdict != Determinate {
		b.Fatalf("%d rows, %d columns, %v", len(s.System.Rows), n, s.Verdict)
	}
	entries := (&linear.Matrix{Rows: s.System.Terms, Cols: n}).Dense().RawMatrix().Data
	return func() {
		a := mat.NewDense(n, n, append([]float64{}, entries...))
		var lu mat.LU
		lu.Factorize(a)
		x := mat.NewVecDense(n, nil)
		if err := lu.SolveVecTo(x, false, mat.NewVecDense(n, s.System.B)); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkChangedCell(b *testing.B) {
	typed := keystrokes(b)
	b.ReportAllocs()
	i := 0
	for b.Loop() {
		typed(i)
		i++
	}
}

func BenchmarkSolveAlone(b *testing.B) {
	p := keystrokes(b)(0).Problem
	b.ReportAllocs()
	for b.Loop() {
		Solve(p)
	}
}

func BenchmarkBareLU(b *testing.B) {
	solve := bareLU(b)
	b.ReportAllocs()
	for b.Loop() {
		solve()
	}
}

// BenchmarkRatio takes both in turns, so that both meet the same machine, and
// reports how many times the bare solve a keystroke takes.
func BenchmarkRatio(b *testing.B) {
	typed, solve := keystrokes(b), bareLU(b)
	const turn = 200
	var full, bare time.Duration
	i := 0
	for b.Loop() {
		start := time.Now()
		for range turn {
			typed(i)
			i++
		}
		middle := time.Now()
		for range turn {
			solve()
		}
		full += middle.Sub(start)
		bare += time.Since(middle)
	}
	b.ReportMetric(float64(full)/float64(bare), "times-bare-LU")
}
