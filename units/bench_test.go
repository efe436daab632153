package units

import "testing"

// cells is a sheet of three points and three lines, as typed.
var cells = []string{
	"0, 0, h", "4, 0, 0", "-2, 3, 0", "-2, -3.5, 0", "400 lbf", "6 m", "9.81 m/s^2", "2*T1", "(O + T)/2",
	"T + 2 m * dir(T, A)", "1.8 kN", "(3, 0, -4)", "-z", "6 cos 30°", "5 kN",
}

func BenchmarkParse(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		for _, c := range cells {
			if _, err := Parse(c); err != nil {
				b.Fatal(err)
			}
		}
	}
}

func BenchmarkEval(b *testing.B) {
	var exprs []*Expr
	for _, c := range cells {
		e, err := Parse(c)
		if err != nil {
			b.Fatal(err)
		}
		exprs = append(exprs, e)
	}
	var env Env = newDesk()
	b.ReportAllocs()
	for b.Loop() {
		for _, e := range exprs {
			if _, err := e.Eval(env); err != nil {
				b.Fatal(err)
			}
		}
	}
}

func BenchmarkFigures(b *testing.B) {
	u, _ := Find("lbf")
	b.ReportAllocs()
	for b.Loop() {
		if u.Format(12345.678, 4) == "" {
			b.Fatal("nothing printed")
		}
	}
}
