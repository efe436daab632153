package names_test

import (
	"fmt"
	"reflect"
	"strings"
	"testing"

	"trivet/fixtures"
	"trivet/fixtures/long"
	"trivet/mechanics/names"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
)

func parse(t testing.TB, text string) *sheet.Sheet {
	t.Helper()
	s, err := sheet.Parse([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return s
}

const rig = `plane = "xy"
asked = "T1 T2.x angle(T1, T2) boom.loads.x Ox O.size q.size P.loads.y M0"
[given]
h = "3 m"
W = { value = "2*w", range = "w .. 3*w" }
w = "10 N"
[points]
O = { at = "0, 0", on = "boom" }
B = { at = "4 m, h", on = "boom" }
A = "(O + B)/2 + (0, 5 m)"
P = { at = "6, 6", on = "particle" }
C = "9, 9"
D = "9, 3"
N = "4, 9"
[bodies]
boom = { weight = "W", centre = "(O + B)/2", about = "O" }
[lines]
T1 = { kind = "cable", path = "B A" }
T2 = { kind = "cable", path = "P C" }
T3 = { kind = "cable", path = "P D", magnitude = "0.5 T2 + 0*S" }
N = { kind = "cable", path = "P N", magnitude = "S" }
F = { kind = "force", at = "B", along = "dir(B, A)", magnitude = "0.3*T1 + 2 N" }
V = { kind = "force", at = "P", components = "(W, -2*w)" }
[joints]
O = { kind = "pin" }
[couples]
M0 = { on = "boom", magnitude = "0*Ox*h" }
[distributed]
q = { on = "boom", path = "O B", along = "-y", magnitude = "w/h*s/(1 m)" }
[answers]
source = "T1 of ours"
T1 = "1 N"
"boom.loads.x" = "0 N"
"O.x" = { printed = "1 N", within = "0.2*w" }
`

// cells shows the lines in which two texts differ, the new ones.
func changed(old, now string) string {
	a, b := strings.Split(old, "\n"), strings.Split(now, "\n")
	var out []string
	for i := range b {
		if i >= len(a) || a[i] != b[i] {
			out = append(out, b[i])
		}
	}
	return strings.Join(out, "\n")
}

func TestRename(t *testing.T) {
	for _, c := range []struct {
		what     problem.Thing
		from, to string
		want     string
	}{
		{problem.AGiven, "w", "v", `W = { value = "2*v", range = "v .. 3*v" }
v = "10 N"
V = { kind = "force", at = "P", components = "(W, -2*v)" }
q = { on = "boom", path = "O B", along = "-y", magnitude = "v/h*s/(1 m)" }
"O.x" = { printed = "1 N", within = "0.2*v" }`},
		{problem.APoint, "B", "K", `K = { at = "4 m, h", on = "boom" }
A = "(O + K)/2 + (0, 5 m)"
boom = { weight = "W", centre = "(O + K)/2", about = "O" }
T1 = { kind = "cable", path = "K A" }
F = { kind = "force", at = "K", along = "dir(K, A)", magnitude = "0.3*T1 + 2 N" }
q = { on = "boom", path = "O K", along = "-y", magnitude = "w/h*s/(1 m)" }`},
		{problem.APoint, "O", "Q", `asked = "T1 T2.x angle(T1, T2) boom.loads.x Qx Q.size q.size P.loads.y M0"
Q = { at = "0, 0", on = "boom" }
A = "(Q + B)/2 + (0, 5 m)"
boom = { weight = "W", centre = "(Q + B)/2", about = "Q" }
Q = { kind = "pin" }
M0 = { on = "boom", magnitude = "0*Qx*h" }
q = { on = "boom", path = "Q B", along = "-y", magnitude = "w/h*s/(1 m)" }
"Q.x" = { printed = "1 N", within = "0.2*w" }`},
		{problem.APoint, "P", "R", `asked = "T1 T2.x angle(T1, T2) boom.loads.x Ox O.size q.size R.loads.y M0"
R = { at = "6, 6", on = "particle" }
T2 = { kind = "cable", path = "R C" }
T3 = { kind = "cable", path = "R D", magnitude = "0.5 T2 + 0*S" }
N = { kind = "cable", path = "R N", magnitude = "S" }
V = { kind = "force", at = "R", components = "(W, -2*w)" }`},
		{problem.APoint, "N", "E", `E = "4, 9"
N = { kind = "cable", path = "P E", magnitude = "S" }`},
		{problem.ABody, "boom", "jib", `asked = "T1 T2.x angle(T1, T2) jib.loads.x Ox O.size q.size P.loads.y M0"
O = { at = "0, 0", on = "jib" }
B = { at = "4 m, h", on = "jib" }
jib = { weight = "W", centre = "(O + B)/2", about = "O" }
M0 = { on = "jib", magnitude = "0*Ox*h" }
q = { on = "jib", path = "O B", along = "-y", magnitude = "w/h*s/(1 m)" }
"jib.loads.x" = "0 N"`},
		{problem.ALine, "T1", "stay", `asked = "stay T2.x angle(stay, T2) boom.loads.x Ox O.size q.size P.loads.y M0"
stay = { kind = "cable", path = "B A" }
F = { kind = "force", at = "B", along = "dir(B, A)", magnitude = "0.3*stay + 2 N" }
stay = "1 N"`},
		{problem.AnUnknown, "T2", "U", `asked = "T1 U.x angle(T1, U) boom.loads.x Ox O.size q.size P.loads.y M0"
U = { kind = "cable", path = "P C" }
T3 = { kind = "cable", path = "P D", magnitude = "0.5 U + 0*S" }`},
		{problem.AnUnknown, "S", "U", `T3 = { kind = "cable", path = "P D", magnitude = "0.5 T2 + 0*U" }
N = { kind = "cable", path = "P N", magnitude = "U" }`},
		{problem.ACouple, "M0", "M1", `asked = "T1 T2.x angle(T1, T2) boom.loads.x Ox O.size q.size P.loads.y M1"
M1 = { on = "boom", magnitude = "0*Ox*h" }`},
		{problem.ALoad, "q", "wind", `asked = "T1 T2.x angle(T1, T2) boom.loads.x Ox O.size wind.size P.loads.y M0"
wind = { on = "boom", path = "O B", along = "-y", magnitude = "w/h*s/(1 m)" }`},
	} {
		t.Run(fmt.Sprint(c.what, " ", c.from), func(t *testing.T) {
			h := sheet.NewHistory(parse(t, rig))
			edits, err := names.Rename(h.Current(), c.what, c.from, c.to)
			if err != nil {
				t.Fatal(err)
			}
			if err := h.Do(edits...); err != nil {
				t.Fatal(err)
			}
			if got := changed(rig, h.Current().Text()); got != c.want {
				t.Errorf("got\n%s\nwant\n%s", got, c.want)
			}
			if !h.Undo() || h.Current().Text() != rig {
				t.Error("one step does not take it back")
			}
		})
	}
}

func TestRenameRefuses(t *testing.T) {
	for _, c := range []struct {
		what     problem.Thing
		from, to string
		want     string
	}{
		{problem.APoint, "X", "Y", `there is no point "X"`},
		{problem.APoint, "OO", "Y", `there is no point "OO". Try: O`},
		{problem.ALine, "T1", "T2", `the name "T2" is already used for a line. Try: another name`},
		{problem.ALine, "T1", "O", `the name "O" is already used for a joint. Try: another name`},
		{problem.ALine, "T1", "Ox", `the name "Ox" is already used for an unknown. Try: another name`},
		{problem.ALine, "T1", "S", `the name "S" is already used for an unknown. Try: another name`},
		{problem.ALine, "T1", "w", `the name "w" is already used for a given. Try: another name`},
		{problem.AGiven, "w", "T1", `the name "T1" is already used for a line. Try: another name`},
		{problem.AGiven, "w", "s", `a given cannot be named s, which is a unit. Try: s1`},
		{problem.AGiven, "w", "a b", `"a b" cannot be used as a name in a cell. Try: letters, digits and _, beginning with a letter`},
		{problem.AGiven, "w", "kN", `a given cannot be named kN, which is a unit. Try: kN1`},
		{problem.APoint, "A", "h", `the name "h" is already used for a given. Try: another name`},
		{problem.APoint, "A", "a.b", `"a.b" cannot be the name of a point. Try: one word without , ( ) . ? or quotes`},
		{problem.APoint, "A", "A-1", `"A-1" would not be read as a name in [lines] F along. Try: another name`},
		{problem.APoint, "P", "boom", `the name "boom" is already used for a body. Try: another name`},
		{problem.APoint, "O", "T", ""},
		{problem.ABody, "boom", "P", `the name "P" is already used for a point. Try: another name`},
		{problem.ABody, "boom", "particle", `"particle" cannot be the name of a body. Try: another name`},
		{problem.ALine, "T2", "kN", `"kN" would not be read as a name in [lines] T3 magnitude. Try: another name`},
		{problem.AnUnknown, "S", "N", `"N" cannot be the name of an unknown. Try: letters, digits and _, beginning with a letter, that are not a unit`},
		{problem.AnUnknown, "Ox", "Q", `Ox is named after the joint O. Try: rename O`},
		{problem.AnUnknown, "Z", "Q", `there is no unknown "Z"`},
		{problem.ALine, "T1", "", `"" cannot be the name of a line. Try: one word without , ( ) . ? or quotes`},
		{problem.NoThing, "T1", "x", `this cannot be renamed`},
	} {
		_, err := names.Rename(parse(t, rig), c.what, c.from, c.to)
		got := ""
		if err != nil {
			got = err.Error()
		}
		if got != c.want {
			t.Errorf("%v %s to %q: %s, want %s", c.what, c.from, c.to, got, c.want)
		}
	}
}

// A name that stands for something of the reader's own is not captured.
func TestRenameDoesNotCapture(t *testing.T) {
	const text = "plane = \"xy\"\n[given]\na = \"2\"\n[points]\nO = { at = \"0, 0\", on = \"particle\" }\nA = \"3 a, 1\"\n" +
		"[lines]\nT = { kind = \"cable\", path = \"O A\" }\nF = { kind = \"force\", at = \"O\", along = \"-x\", magnitude = \"3 N\" }\n"
	_, err := names.Rename(parse(t, text), problem.AGiven, "a", "x")
	if err == nil || err.Error() != `the name "x" already has another meaning in [lines] F along. Try: another name` {
		t.Error(err)
	}
}

// Renaming to a fresh name leaves the solution as it is, and renaming back gives
// the same bytes.
func TestRenameKeepsTheSolution(t *testing.T) {
	for _, f := range append(fixtures.Starts(), fixtures.Published()...) {
		s := parse(t, f.Answered())
		p, errs := problem.Read(s)
		if len(errs) > 0 {
			t.Fatalf("%s: %v", f.Name, errs)
		}
		want := statics.Solve(p)
		for what, listed := range named(s, p) {
			for _, from := range listed[:min(len(listed), long.Of(1, len(listed)))] {
				const to = "Fresh7"
				edits, err := names.Rename(s, what, from, to)
				if err != nil {
					t.Errorf("%s: %v %s: %v", f.Name, what, from, err)
					continue
				}
				next, err := s.Apply(edits...)
				if err != nil {
					t.Fatalf("%s: %v %s: %v", f.Name, what, from, err)
				}
				if next.Text() == s.Text() {
					t.Errorf("%s: %v %s: nothing changed", f.Name, what, from)
				}
				q, errs := problem.Read(next)
				if len(errs) > 0 {
					t.Errorf("%s: %v %s: %v", f.Name, what, from, errs)
					continue
				}
				got := statics.Solve(q)
				if got.Verdict != want.Verdict || !reflect.DeepEqual(values(got), values(want)) || len(q.Asked) != len(p.Asked) || got.Well() != want.Well() {
					t.Errorf("%s: %v %s: another solution: %v, was %v", f.Name, what, from, values(got), values(want))
				}
				if left := names.UsesOf(next, what, from); len(left) > 0 {
					t.Errorf("%s: %v %s is still used: %v", f.Name, what, from, left)
				}
				back, err := names.Rename(next, what, to, from)
				if err != nil {
					t.Errorf("%s: %v %s: back: %v", f.Name, what, from, err)
					continue
				}
				same, err := next.Apply(back...)
				if err != nil || same.Text() != s.Text() {
					t.Errorf("%s: %v %s: renaming back gives other bytes (%v): %s", f.Name, what, from, err, changed(s.Text(), same.Text()))
				}
			}
		}
	}
}

func values(s *statics.Solution) (all []float64) {
	for _, u := range s.X {
		all = append(all, u.Value)
	}
	return all
}

// named lists what a sheet names, by kind.
func named(s *sheet.Sheet, p *problem.Problem) map[problem.Thing][]string {
	out := map[problem.Thing][]string{}
	for _, table := range s.Tables {
		if what := problem.ThingOf(table.Name); what != problem.NoThing && what != problem.ABody {
			for _, r := range table.Rows {
				out[what] = append(out[what], r.Name)
			}
		}
	}
	for _, b := range p.Bodies {
		if !b.Particle {
			out[problem.ABody] = append(out[problem.ABody], b.Name)
		}
	}
	for _, u := range p.Unknowns {
		component := u.Line >= 0 && strings.HasPrefix(u.Name, p.Lines[u.Line].Name) && len(u.Name) == len(p.Lines[u.Line].Name)+1
		if _, line := p.Find(u.Name, problem.ALine); u.Line >= 0 && !u.Own && !component && !line {
			out[problem.AnUnknown] = append(out[problem.AnUnknown], u.Name)
		}
	}
	return out
}

// A result that is called as a text prints it, or by its magnitude, is renamed with
// what it is of.
func TestRenamePrintedNames(t *testing.T) {
	s := parse(t, `plane = "xy"
asked = "|Ax| abs(A_y) A_x |T_1| angle(T1, T2) angle(A, T2) A.ux"
[points]
A = { at = "0, 0", on = "beam" }
B = { at = "4, 0", on = "beam" }
C = "4, 3"
[joints]
A = { kind = "pin" }
[lines]
T1 = { kind = "link", path = "B C" }
T2 = { kind = "force", at = "B", along = "-y", magnitude = "5 N" }
T3 = { kind = "force", at = "B", along = "-y", magnitude = "2*T_1 + 0*A_x" }
[answers]
A_y = "0 N"
"|Ax|" = "0 N"
"abs(T_1)" = "5 N"
`)
	for _, c := range []struct {
		what     problem.Thing
		from, to string
		asked    string
		tied     string
		answers  []string
	}{
		{problem.AJoint, "A", "P", "|Px| abs(Py) Px |T_1| angle(T1, T2) angle(P, T2) P.ux", "2*T_1 + 0*Px", []string{"Py", "|Px|", "abs(T_1)"}},
		{problem.ALine, "T1", "tie", "|Ax| abs(A_y) A_x |tie| angle(tie, T2) angle(A, T2) A.ux", "2*tie + 0*A_x", []string{"A_y", "|Ax|", "abs(tie)"}},
	} {
		edits, err := names.Rename(s, c.what, c.from, c.to)
		if err != nil {
			t.Fatal(err)
		}
		next, err := s.Apply(edits...)
		if err != nil {
			t.Fatal(err)
		}
		if _, errs := problem.Read(next); len(errs) > 0 {
			t.Error(errs)
		}
		if asked, _ := next.Cell(sheet.Ref{Row: "asked"}); asked.Text != c.asked {
			t.Errorf("%s to %s: asked = %q, want %q", c.from, c.to, asked.Text, c.asked)
		}
		if tied, _ := next.Cell(sheet.Ref{Table: "lines", Row: "T3", Key: "magnitude"}); tied.Text != c.tied {
			t.Errorf("%s to %s: the magnitude %q, want %q", c.from, c.to, tied.Text, c.tied)
		}
		for i, row := range next.Table("answers").Rows {
			if row.Name != c.answers[i] {
				t.Errorf("%s to %s: the answer %q, want %q", c.from, c.to, row.Name, c.answers[i])
			}
		}
	}
}

// TestSetAside: a row renamed to x-... is kept and not read, and comes back as it was.
func TestSetAside(t *testing.T) {
	for _, c := range []struct {
		what      problem.Thing
		from, to  string
		want, err string // the row as it stands after it, or why not
	}{
		{problem.ALine, "F", "x-F", `x-F = { kind = "force", at = "B"`, ""},
		{problem.APoint, "D", "x-D", "", `D is used in [lines] T3 path, but a row whose name begins with x- is ignored. Try: remove it there first`},
		{problem.ALine, "T1", "x-T1", "", `T1 is used in asked, but a row whose name begins with x- is ignored. Try: remove it there first`},
		{problem.AGiven, "h", "x-h", "", `h is used in [points] B at, but a row whose name begins with x- is ignored. Try: remove it there first`},
		{problem.ALine, "x-G", "G", `G = { kind = "weight"`, ""},
		{problem.ALine, "x-G", "x-H", `x-H = { kind = "weight"`, ""},
		{problem.ALine, "x-G", "x-G", `x-G = { kind = "weight"`, ""},
		{problem.ALine, "x-G", "T1", "", `the name "T1" is already used for a line. Try: another name`},
		{problem.ALine, "x-nobody", "T9", "", `there is no line "x-nobody"`},
	} {
		s := parse(t, strings.Replace(rig, "[joints]", "x-G = { kind = \"weight\", at = \"P\" }\n[joints]", 1))
		edits, err := names.Rename(s, c.what, c.from, c.to)
		if err != nil || c.err != "" {
			if err == nil || !strings.HasPrefix(err.Error(), c.err) || c.err == "" {
				t.Errorf("%s to %s: %v, want %s", c.from, c.to, err, c.err)
			}
			continue
		}
		next, err := s.Apply(edits...)
		if err != nil || !strings.Contains(next.Text(), "\n"+c.want) {
			t.Errorf("%s to %s: %v\n%s", c.from, c.to, err, next.Text())
		}
	}
	for _, name := range []string{"x-note", "x-see page 3"} {
		if err := names.NewName(parse(t, rig), problem.AGiven, name); err != nil {
			t.Error(err)
		}
	}
}

// A line, or a given, may be named in a magnitude before it has a row.
func TestNewNameOfAnUnknown(t *testing.T) {
	s := parse(t, rig)
	for _, what := range []problem.Thing{problem.ALine, problem.AGiven, problem.ACouple} {
		if err := names.NewName(s, what, "S"); err != nil {
			t.Errorf("a new %v S: %v", what, err)
		}
		if err := names.NewName(s, what, "Ox"); err == nil {
			t.Errorf("a new %v takes the name of an unknown of the joint O", what)
		}
	}
}
