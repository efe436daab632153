package tutor

import (
	"fmt"
	"strings"
	"testing"

	"trivet/fixtures"
	"trivet/fixtures/solved"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
)

// solved is the practice of a sheet's text.
func practice(t testing.TB, text string) *Practice {
	t.Helper()
	_, s := solved.Sheet(t, text)
	return New(s)
}

// practise is the practice of a sheet that comes with the program.
func practise(t testing.TB, name string) *Practice {
	t.Helper()
	for _, f := range append(fixtures.Starts(), fixtures.Published()...) {
		if f.Name == name {
			return practice(t, f.Text)
		}
	}
	t.Fatalf("there is no sheet %s", name)
	return nil
}

// alikes is a sheet whose names look like the forms of entries.
const alikes = `
plane = "xy"
up    = "+y"
asked = "r F M u"

[units]
length = "m"
force  = "N"

[given]
W = "600 N"

[points]
A = { at = "0, 0", on = "beam" }
B = { at = "6, 0", on = "beam" }
C = { at = "3, 0", on = "beam" }

[lines]
r     = { kind = "force", at = "A", along = "+x" }
F     = { kind = "force", at = "A", along = "+y" }
M     = { kind = "force", at = "B", along = "+y" }
u     = { kind = "force", at = "C", along = "+x", magnitude = "0.5*r" }
"T-1" = { kind = "force", at = "C", along = "-y", magnitude = "W" }
"P-Q" = { kind = "force", at = "C", along = "-x", magnitude = "90 N" }
`

// What people write on paper reads, as what it is meant. Where two entries look alike, both
// stand here.
func TestEntriesRead(t *testing.T) {
	starts := func(name string) func(testing.TB) *Practice {
		return func(t testing.TB) *Practice { return practise(t, name) }
	}
	own := func(t testing.TB) *Practice { return practice(t, alikes) }
	for _, c := range []struct {
		sheet   func(testing.TB) *Practice
		entry   string
		kind    Kind
		verdict Verdict
		is      string
	}{
		// in space: a particle and four forces
		{starts("mast-top"), "cut T: T1 T2 T3 mast wire", FreeBody, Right, "the free body of T"},
		{starts("mast-top"), "cut T: T1 pulls, T2 pulls, T3, mast pushes, wire", FreeBody, Right, "the free body of T"},
		{starts("mast-top"), "r T1 = (9, 0, -12) m", VectorKind, Right, ""},
		{starts("mast-top"), "u T1 = (0.6, 0, -0.8)", VectorKind, Right, ""},
		{starts("mast-top"), "F T1 = T1 (0.6, 0, -0.8)", VectorKind, Right, ""},
		{starts("mast-top"), "F T1 = T1*(0.6, 0, -0.8)", VectorKind, Right, ""},
		{starts("mast-top"), "F T1 = (1.5, 0, -2) kN", VectorKind, Right, ""},
		{starts("mast-top"), "n = u T1 x u T2 = (0.246, 0.738, 0.185)", VectorKind, Right, ""},
		{starts("mast-top"), "n = u T1 × u T2 = (0.246, 0.738, 0.185)", VectorKind, Right, ""},
		{starts("mast-top"), "|r T1| = 15 m", LengthKind, Right, ""},
		{starts("mast-top"), "T1.length = 15.0 m", LengthKind, Right, ""},
		{starts("mast-top"), "angle(T1, T2) = 53.1 deg", AngleKind, Right, ""},
		{starts("mast-top"), "ΣFx T: 0.6 T1 - 0.231 T2 - 0.231 T3 = 0.6 kN", Equation, Right, "ΣFx on T"},
		{starts("mast-top"), "sum Fx T: 3/5 T1 - 3/13 T2 - 3/13 T3 - 0.6 = 0", Equation, Right, "ΣFx on T"},
		{starts("mast-top"), "ΣFx: 3/5 T1 - 3/13 (T2 + T3) - 0.6 = 0", Equation, Right, "ΣFx on T"},
		{starts("mast-top"), "∑F_y T: 4/13·T2 - 4/13·T3 = 0.4", Equation, Right, "ΣFy on T"},
		{starts("mast-top"), "ΣFz T: mast = 0.8 T1 + 0.923 T2 + 0.923 T3", Equation, Right, "ΣFz on T"},
		{starts("mast-top"), "0.8 T1 + 12/13 (T2 + T3) = 5600 N", Equation, Right, "ΣFz on T"},
		{starts("mast-top"), "ΣF along T1 T: T1 - 0.877 T2 - 0.877 T3 + 4.12 = 0", Equation, Wrong, "ΣF along T1 on T"},
		{starts("mast-top"), "ΣF along (-0.308, -0.923, -0.231) T: 0.568 T3 - 0.738 = 0", Equation, Right, "ΣF along (-0.308, -0.923, -0.231) on T"},
		{starts("mast-top"), "T1 = 2.50 kN", ValueKind, Right, ""},
		{starts("mast-top"), "T1 = 2.5 kN T", ValueKind, Right, ""},
		{starts("mast-top"), "T1 = 2.5 kN tension", ValueKind, Right, ""},
		{starts("mast-top"), "T1 = 2500 N (T)", ValueKind, Right, ""},
		{starts("mast-top"), "T1 = 2.5 (T)", ValueKind, Right, ""},
		{starts("mast-top"), "2*T1 = 5 kN", ValueKind, Right, ""},
		{starts("mast-top"), "T2 = 2*T3", ValueKind, Right, ""},
		{starts("mast-top"), "T1 = T2", ValueKind, Wrong, ""},
		{starts("mast-top"), "determinate", VerdictOf, Right, ""},
		{starts("mast-top"), "T2 slack", VerdictOf, Wrong, ""},

		// in the plane: moments, printed names, givens, joined bodies
		{starts("beam-on-supports"), "cut beam: Ax Ay B P W", FreeBody, Right, "the free body of the beam"},
		{starts("beam-on-supports"), "cut beam: A_x A_y B P", FreeBody, Wrong, "the free body of the beam"},
		{starts("beam-on-supports"), "ΣFx beam: A_x + 3/5 P = 0", Equation, Right, "ΣFx on the beam"},
		{starts("beam-on-supports"), "ΣFx: Ax + 0.6 pull = 0", Equation, Right, "ΣFx on the beam"},
		{starts("beam-on-supports"), "ΣM A beam: 6 B - 1.5*400 - 3*600 = 0", Equation, Right, "ΣM about A on the beam"},
		{starts("beam-on-supports"), "sum M A beam: 6 B = 2400 N m", Equation, Right, "ΣM about A on the beam"},
		{starts("beam-on-supports"), "ΣM_A beam: 6 B = 2400 N m", Equation, Right, "ΣM about A on the beam"},
		{starts("beam-on-supports"), "ΣM B beam: -6 Ay + 4.5*400 + 3*600 = 0", Equation, Right, "ΣM about B on the beam"},
		{starts("beam-on-supports"), "M A P = -600 N m", MomentKind, Right, ""},
		{starts("beam-on-supports"), "Ax = -300 N", ValueKind, Right, ""},
		{starts("beam-on-supports"), "B = 0.4 kN", ValueKind, Right, ""},
		{starts("beam-on-supports"), "A.size = 671 N", ValueKind, Right, ""},
		{starts("frame-of-two-members"), "ΣFx (left, right): Ax + Bx = 0", Equation, Right, "ΣFx on the left part and the right part"},
		{starts("frame-of-two-members"), "Ax + Bx = 0", Equation, Right, "ΣFx on the left part and the right part"},
		{starts("frame-of-two-members"), "ΣFx right: Bx - Cx = 0", Equation, Right, "ΣFx on the right part"},
		{starts("frame-of-two-members"), "cut (left, right): Ax Ay Bx By load", FreeBody, Right, "the free body of the left part and the right part"},
		{starts("frame-of-two-members"), "cut (left, right): Ax Ay Bx By load Cx Cy", FreeBody, Wrong, "the free body of the left part and the right part"},

		// friction and ties
		{starts("block-about-to-slip"), "AF = -0.4 AN", Equation, Right, ""},
		{starts("block-about-to-slip"), "AF = 0.4 AN", ValueKind, Wrong, ""},
		{starts("ladder-on-rough-floor"), "AF = -0.375 AN", ValueKind, Right, ""},
		{starts("impending-slip"), "F = mu*N", Equation, Right, ""},

		// a contact called N, and the newton
		{starts("impending-slip"), "ΣF along P B: P - 0.3 N - 300 = 0", Equation, Right, "ΣF along P on B"},
		{starts("impending-slip"), "ΣF along P B: P - 0.3 N - 300 N = 0", Equation, Right, "ΣF along P on B"},
		{starts("impending-slip"), "F = 0.3 N", Equation, Right, ""},
		{starts("impending-slip"), "F = 120 N", ValueKind, Right, ""},
		{starts("impending-slip"), "N = 400 N", ValueKind, Right, ""},

		// a word alone before = is always a name of the sheet
		{own, "r = 60", ValueKind, Right, ""},
		{own, "r + u = 90 N", Equation, Right, "ΣFx on the beam"},
		{own, "r r = (1, 0)", VectorKind, Unreadable, ""},
		{own, "u r = (1, 0)", VectorKind, Right, ""},
		{own, "u = 30 N", ValueKind, Right, ""},
		{own, "u (2) = 60", Equation, Right, "ΣFx on the beam"},
		{own, "F = 300 N", ValueKind, Right, ""},
		{own, "F F = (0, 300) N", VectorKind, Right, ""},
		{own, "F F = F (0, 1)", VectorKind, Right, ""},
		{own, "F + M = 600", Equation, Right, "ΣFy on the beam"},
		{own, "F (1) + M = 600", Equation, Right, "ΣFy on the beam"},
		{own, "F(1) + M = 600", Equation, Right, "ΣFy on the beam"},
		{own, "M = 300", ValueKind, Right, ""},
		{own, "M A M = 1800 N m", MomentKind, Right, ""},
		{own, "M A F = 0", MomentKind, Right, ""},
		{own, "ΣM A beam: 6 M = 3*600", Equation, Right, "ΣM about A on the beam"},
		{own, "ΣM A: 6 cos(60 deg)*M = 900", Equation, Right, "ΣM about A on the beam"},

		// a name that is no identifier
		{own, `F "T-1" = (0, -600) N`, VectorKind, Right, ""},
		{own, `M A "T-1" = -1800 N m`, MomentKind, Right, ""},
		{own, `ΣFy beam: F + M - "T-1" = 0`, Equation, Right, "ΣFy on the beam"},
		{own, `F = 0.5 "T-1"`, ValueKind, Right, ""},
		{own, `cut beam: r F M u "T-1" "P-Q"`, FreeBody, Right, "the free body of the beam"},
		{own, `cut beam: r F M u T-1 P-Q`, FreeBody, Right, "the free body of the beam"},

		// characters that are pasted
		{own, "F − 600 N = −M", Equation, Right, "ΣFy on the beam"},
		{own, "\tF + M\u00a0= 600 N ", Equation, Right, "ΣFy on the beam"},
		{own, "F+M=6e2", Equation, Right, "ΣFy on the beam"},
	} {
		if j := c.sheet(t).Enter(c.entry); j.Kind != c.kind || j.Verdict != c.verdict || j.Is != c.is {
			t.Errorf("%s\n   is %q %q %q: %s\n want %q %q %q", c.entry, j.Kind, j.Verdict, j.Is, j.Says, c.kind, c.verdict, c.is)
		}
	}
}

// A line that does not read says what is the matter, where, and what would do.
func TestEntriesThatDoNotRead(t *testing.T) {
	for _, c := range []struct{ entry, at, says string }{
		{"", "", "the line is empty. Try: an equation, such as ΣFx beam: ... = 0"},
		{"what is this", "what is this", `"what is this" is not an entry. Try: an equation such as ΣFx beam: ... = 0, or a value such as r = ... N`},
		{"F + M =", "", "one side of the equation is empty. Try: 0, or a sum of forces"},
		{"F + = 600", "+", "a term is missing after +. Try: a force"},
		{"  F − Q = 600", "Q", `unknown name "Q". Try: r, F, M or u`},
		{"ΣFy beam: F + Q = 600", "Q", `unknown name "Q". Try: r, F, M or u`},
		{"F F = foo*(0, 1)", "foo", `unknown name "foo". Try: r, F, M or u`},
		{"M A F = foo", "foo", `unknown name "foo". Try: r, F, M or u`},
		{"F = foo", "foo", `unknown name "foo". Try: r, F, M or u`},
		{"F = 3 foo", "foo", `unknown unit "foo". Try: r, F, M or u`},
		{"ΣF along foo beam: F = 3", "foo", `"foo" is not a direction. Try: the name of a line, or a vector such as (3, 4)`},
		{"F·M = 600", "F·M", "F*M multiplies two unknowns; only linear relations between magnitudes are possible"},
		{"F + M = 3 m", "3 m", "expected a force, but 3 m is a length. Try: a value in N"},
		{"F + M = 60 kg", "60 kg", "expected a force, but 60 kg is a mass. Try: a value in N"},
		{"F + M = (600", "(", "this ( is not closed. Try: add a )"},
		{"F + M = 600 = 3", "F + M = 600 = 3", "an equation has one =. Try: ΣFx beam: ... = 0"},
		{"ΣFz beam: r = 0", "ΣFz", `"ΣFz beam" is not the name of a sum. Try: ΣFx beam: ... = 0`},
		{"ΣM (A, B) beam: 6 M = 3", "(A, B)", "moments in the plane are taken about a point. Try: ΣM A"},
		{"ΣM Q beam: 6 M = 3", "Q", `there is no point "Q". Try: A, B or C`},
		{"ΣM A post: 6 M = 3", "post", `there is no body "post". Try: beam`},
		{"cut beam", "cut beam", "the forces on the free body are missing. Try: cut beam: and the names of all forces on it"},
		{"cut beam: r Q", "Q", `there is no force "Q". Try: r, F, M or u`},
		{"F = 300 N T", "300 N T", "a force has no tension. Try: the value with its sign"},
		{"r r = (1, 0)", "", "the line r has no second point, so it has no position vector. Try: u r"},
		{"A slips", "A", "the sheet has no joints. Try: an entry about what it has, such as r = ... N"},
		{"tips about Q", "Q", `there is no point "Q". Try: A, B or C`},
	} {
		p := practice(t, alikes)
		j := p.Enter(c.entry)
		if j.Verdict != Unreadable || j.Says != c.says {
			t.Errorf("%q is %s:\n%s\nwant\n%s", c.entry, j.Verdict, j.Says, c.says)
			continue
		}
		if at := c.entry[j.Error.Span.Start:j.Error.Span.End]; c.at != "" && at != c.at {
			t.Errorf("%q is marked at %q, want %q", c.entry, at, c.at)
		}
		if len(p.guesses) != 0 {
			t.Errorf("%q costs, though it does not read", c.entry)
		}
	}
}

// Whatever is typed is judged, and the error of what does not read lies within it.
func FuzzEntries(f *testing.F) {
	for _, s := range []string{"ΣFx T: 0.6 T1 - 0.231 T2 + 0.231 T3 = 0.6 kN", "cut T: T1 pulls", `ΣM (A, "B") T: T1(2) = 3`, "n = u T1 x u T2 = (1, 2, 3)", "|r T1| = 6", "T1 = 2.5 kN (T)", "∑ F_x: −T1 · 2 = 0.3N", "M A T1 = (1, 2, 3) N m", "T2 slack", "r T1 = (1/0, 2, 3)", "2*W = 3", "1e300 T1 + 1e300 F = 1e-300", "1e154 F + 1e154 M = 1e200 N", "ΣM A: 1e300 M = 1e300"} {
		f.Add(s)
	}
	sheets := []*Practice{practise(f, "mast-top"), practise(f, "impending-slip"), practice(f, alikes)}
	f.Fuzz(func(t *testing.T, text string) {
		for _, p := range sheets {
			p := New(p.solution)
			j := p.Enter(text)
			if j.Says == "" || j.Verdict == "" {
				t.Errorf("%q is judged %q and told %q", text, j.Verdict, j.Says)
			}
			if e := j.Error; e != nil && (e.Span.Start < 0 || e.Span.Start > e.Span.End || e.Span.End > len(text)) {
				t.Errorf("%q is marked from %d to %d", text, e.Span.Start, e.Span.End)
			}
		}
	})
}

// Whatever a sheet asks, each of its kinds of entries is judged and a hint is given; what
// trivet computes for it is right.
func TestEverySheetCanBePractised(t *testing.T) {
	for _, f := range append(fixtures.Starts(), fixtures.Published()...) {
		s, err := sheet.Parse([]byte(f.Text))
		if err != nil {
			t.Fatal(err)
		}
		read, errs := problem.Read(s)
		if len(errs) > 0 {
			continue
		}
		p := New(statics.Solve(read))
		body, line := "beam", "T1"
		if len(read.Bodies) > 0 {
			body = read.Bodies[0].Name
		}
		if len(read.Lines) > 0 {
			line = read.Lines[0].Name
		}
		for _, entry := range []string{
			"cut " + body + ":", "r " + line + " = (1, 2, 3) m", "r " + line + " = (1, 2) m", "u " + line + " = (0.6, 0.8)", "F " + line + " = (1, 2, 3) N", "|r " + line + "| = 3 m",
			"ΣFx " + body + ": " + line + " = 3", "ΣM A " + body + ": 2 " + line + " = 3", line + " = 3", "M A " + line + " = 3", "2*" + line + " = 3", line + " slack", "A slips", "tips about A",
			"determinate", "indeterminate 1", "inadmissible", "no equilibrium", "ΣF along " + line + " " + body + ": " + line + " = 0", "0.3 " + line + " + 2 = 0",
		} {
			if j := p.Enter(entry); j.Says == "" || j.Verdict == "" {
				t.Errorf("%s: %s is judged %q and told %q", f.Name, entry, j.Verdict, j.Says)
			}
		}
		for range 2 * stages {
			if h := p.Hint(); h.Says == "" || h.Stage == 0 {
				t.Errorf("%s: an empty hint", f.Name)
			}
		}
		for _, q := range p.asked() {
			v, err := p.solution.Evaluate(q)
			if err != nil || strings.ContainsAny(q.Name, "-") {
				continue
			}
			unit := read.Units.For(q.Dim)
			entry := fmt.Sprintf("%s = %.6g %s", q.Name, v/unit.Factor, unit.Symbol)
			if j := p.Enter(entry); j.Verdict != Right {
				t.Errorf("%s: %s is %s: %s", f.Name, entry, j.Verdict, j.Says)
			}
		}
	}
}
