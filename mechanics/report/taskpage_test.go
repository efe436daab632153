package report

import (
	"bytes"
	"math"
	"regexp"
	"strings"
	"testing"

	"trivet/fixtures"
	"trivet/fixtures/leak"
	"trivet/fixtures/long"
	"trivet/fixtures/solved"
	"trivet/mechanics/doc"
	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
	"trivet/mechanics/variant"
	"trivet/units"
)

// No result stands in a task, of a variant neither: not as text, and nothing on
// the page depends on what was found.
func TestATaskHoldsNoResult(t *testing.T) {
	looked := 0
	for _, f := range long.OfEach(fixtures.Starts(), fixtures.Sheet.Group) {
		s, sol := solved.Sheet(t, f.Answered())
		sheets := []variant.Variant{{Sheet: s, Solution: sol}}
		if src, err := variant.NewSource(s, sol); err == nil {
			drawn, _ := src.Draw(variant.Seeded(2), 1)
			for _, v := range drawn {
				if v, err := src.Finish(v, "variant 1"); err == nil {
					sheets = append(sheets, v)
				}
			}
		}
		for _, v := range sheets {
			for _, format := range []string{"md", "tex", "html", "svg"} {
				page, err := Page(format, v.Solution, PageOptions{Task: true, Sheet: v.Sheet})
				if err != nil {
					t.Fatal(err)
				}
				looked += noResult(t, f.Name+"."+format, leak.Readable(format, page), v)
			}
			a, err := Page("pdf", v.Solution, PageOptions{Task: true, Sheet: v.Sheet})
			other := *v.Solution
			other.X = append([]statics.Unknown{}, other.X...)
			for j := range other.X {
				other.X[j].Value = -math.Pi * (other.X[j].Value + 1)
			}
			other.Verdict, other.Checks, other.Answers = statics.Determinate, nil, nil
			b, err2 := Page("pdf", &other, PageOptions{Task: true, Sheet: v.Sheet})
			if err != nil || err2 != nil || !bytes.Equal(a, b) {
				t.Errorf("%s: the page to hand out depends on what was found: %v %v", f.Name, err, err2)
			}
		}
	}
	if looked < long.Of(200, 200) {
		t.Errorf("only %d results were looked for", looked)
	}
}

// noResult looks for the digits of results that the task itself does not say.
func noResult(t *testing.T, name, page string, v variant.Variant) (looked int) {
	t.Helper()
	p := v.Solution.Problem
	said := p.Title + p.Statement
	for _, table := range v.Sheet.Tables {
		for _, row := range table.Rows {
			for _, c := range row.Cells {
				if table.Name != "answers" && table.Name != "" {
					said += " " + c.Text
				}
			}
		}
	}
	for _, l := range append(Described(p, nil), LineCourses(p)...) { // what is known: forces by components, lengths
		said += " " + l
	}
	for _, q := range p.Results() {
		x, err := v.Solution.Evaluate(q)
		if err != nil {
			continue
		}
		for _, n := range []int{p.Figures, p.Figures + 1} {
			digits := strings.TrimPrefix(p.Units.For(q.Dim).Number(x, n), "-")
			if len(strings.ReplaceAll(strings.Trim(digits, "0."), ".", "")) < 2 || strings.Contains(said, digits) || strings.Contains(said, units.Compact(math.Abs(p.Units.For(q.Dim).In(x)))) {
				continue // a number of the task itself
			}
			looked++
			if strings.Contains(page, digits) {
				t.Errorf("%s holds %s = %s", name, q.Name, digits)
			}
		}
	}
	return looked
}

// What a task holds: what is given, with units, and room for what is asked.
func TestTask(t *testing.T) {
	s, sol := solved.Sheet(t, `title = "Lamp"
statement = "A lamp of 12 N."
asked = "T T.length"
[given]
W = { value = "12 N", range = "10 N .. 20 N", step = "2 N" }
V = "W/7"
[points]
P = { at = "0, 0, 0", on = "particle" }
A = "0, 0, 3"
[lines]
T = { kind = "cable", path = "P A" }
F = { kind = "force", at = "P", along = "-z", magnitude = "W + V" }
[answers]
source = "own"
T = "13.7 N"
`)
	page, err := Page("md", sol, PageOptions{Task: true, Sheet: s})
	blank := strings.Repeat(".", valueWidth)
	want := "# Lamp\n\nName: " + strings.Repeat(".", 40) + "\n\n## Problem\n\nA lamp of 12 N.\n\n## Figure\n\n![Figure 1][figure-1]\n\n" +
		"## Given\n\n" + // without V, which is computed
		"| Point | x (m) | y (m) | z (m) |\n| --- | ---: | ---: | ---: |\n| P | 0 | 0 | 0 |\n| A | 0 | 0 | 3 |\n\n" +
		"## Asked\n\nFind, to 3 significant figures:\n\n| Symbol | Result | Value | Unit |\n| --- | --- | --- | --- |\n" +
		"| $T$ | The tension in cable T (from P to A) | " + blank + " | N |\n|  | The length of cable T (from P to A) | " + blank + " | m |\n\n## Caution\n\n"
	if text := leak.Readable("md", page); err != nil || !strings.HasPrefix(text, want) {
		t.Errorf("%v\n%s\nwant\n%s", err, text, want)
	}
}

// programName is the name of a result as the program has it: heap.at, angle(F1, F2), |Cx|.
var programName = regexp.MustCompile(`\b\w+\.(x|y|z|u[xyz]|m[xyz]|size|magnitude|alpha|beta|gamma|angle|length|stretch|at|loads)\b|\b(angle|component|abs)\(|\|\w+\|`)

// A page to hand out asks for each result in words, never by a name of the program.
func TestATaskSpeaksInWords(t *testing.T) {
	named := 0
	for _, f := range append(fixtures.Starts(), fixtures.Published()...) {
		s, sol := solved.Sheet(t, f.Answered())
		p := sol.Problem
		d := pageOf(sol, PageOptions{Task: true, Sheet: s})
		text := doc.Text(d)
		if name := programName.FindString(text); name != "" {
			t.Errorf("%s: the task has %s", f.Name, name)
		}
		rows := 0
		for _, section := range d.Sections {
			for _, b := range section.Blocks {
				if table, ok := b.(*doc.Table); ok && section.Title == "Asked" {
					rows = len(table.Rows)
				}
			}
		}
		asked := p.Results()
		if rows != len(asked) {
			t.Errorf("%s: %d results asked for, %d defined", f.Name, len(asked), rows)
		}
		for _, q := range asked {
			if programName.MatchString(q.Name) {
				named++
			}
		}
		if open := !sol.Single() && p.Expect != problem.FailedCheck; strings.Contains(text, "What can be said of") != open {
			t.Errorf("%s expects %q, and its task asks\n%s", f.Name, p.Expect, text)
		}
	}
	if named < 20 {
		t.Errorf("only %d results have a name of the program's own", named)
	}
}

// What is given stands as typed, and not once more where the statement or the figure states it.
func TestATaskGivesWhatIsTyped(t *testing.T) {
	s, sol := solved.Sheet(t, `title = "Crate"
statement = "A crate hangs 2 m below a hook."
plane = "xy"
[given]
mass = "420 kg"
d = "2000 mm"
mu = "0.3"
[points]
P = { at = "0, -d", on = "particle" }
A = "0, 0"
[lines]
T = { kind = "cable", path = "P A" }
F = { kind = "weight", at = "P", magnitude = "mass" }
`)
	p := sol.Problem
	text := doc.Text(pageOf(sol, PageOptions{Task: true, Sheet: s}))
	if !strings.Contains(text, "0.3") || strings.Contains(text, "2000 mm") || strings.Contains(text, "420 kg") {
		t.Errorf("the givens of the task are not what the statement and the figure leave out:\n%s", text)
	}
	figure, _ := Page("svg", sol, PageOptions{Task: true, Sheet: s})
	value := p.Units.Force.Format(p.Lines[1].Magnitude.Const, p.Figures)
	if text := leak.Readable("svg", figure); !strings.Contains(text, "420 kg") || strings.Contains(text, value) {
		t.Errorf("the figure of the task does not state 420 kg as typed, or states %s:\n%s", value, text)
	}
}

// A task prints what is typed, and neither what its sheet computes from it nor an expression nor
// the direction of what it asks for; each result is defined so that no other can be meant.
func TestATaskPrintsNothingComputed(t *testing.T) {
	for name, row := range map[string]struct{ holds, lacks string }{
		"flap-on-torsion-spring":    {"k = 24 N m/rad", "9600"},
		"sluice-gate":               {"ρ = 1000 kg/m³", "78.48"},
		"wrench-of-three-forces":    {"direction of force R", "0.360"},
		"clamp-screw-loosened":      {"μ = 0.3", "atan"},
		"pulley-and-knot":           {"Half the tension in cable tackle", "unknown in"},
		"wedge-that-raises-a-block": {"The contact force between particle B and particle W", "The contact force on particle B"},
		"block-under-tied-block":    {"acts in the direction (-0.487, 0.873) on particle L", "The contact force on"},
		"clamp-screw-tightened":     {"μ = 0.3", "atan"},
		"lamp-on-spring-and-cord":   {"k = 300 N/m", "sqrt"},
	} {
		f, ok := fixtures.Get(name)
		if !ok {
			t.Fatal(name)
		}
		s, sol := solved.Sheet(t, f.Answered())
		page, err := Page("md", sol, PageOptions{Task: true, Sheet: s})
		figure, err2 := Page("svg", sol, PageOptions{Task: true, Sheet: s})
		text := leak.Readable("md", page) + strings.Join(strings.Fields(leak.Readable("svg", figure)), " ")
		if err != nil || err2 != nil || !strings.Contains(text, row.holds) || strings.Contains(text, row.lacks) {
			t.Errorf("%s: the task lacks %q, or has %q: %v\n%s", name, row.holds, row.lacks, err, text)
		}
	}
}

// What a sheet teaches stands behind its solution, and never on the task.
func TestTheLessonFollowsTheSolution(t *testing.T) {
	taught := 0
	for _, f := range fixtures.Starts() {
		s, sol := solved.Sheet(t, f.Answered())
		lesson := doc.Text(&doc.Doc{Sections: []doc.Section{lessonSection(sol.Problem)}})
		if sol.Problem.Lesson == "" {
			continue
		}
		taught++
		task := doc.Text(pageOf(sol, PageOptions{Task: true, Sheet: s}))
		worked := doc.Text(pageOf(sol, PageOptions{Sheet: s}))
		if strings.Contains(task, lesson) || strings.Index(worked, lesson) < strings.Index(worked, "Results") {
			t.Errorf("%s: the lesson is on the task, or not behind the results of the worked page", f.Name)
		}
		if text := Results("text", f.Name, sol, nil, true, nil); !strings.HasSuffix(strings.TrimSpace(text), strings.TrimSpace(lesson)) {
			t.Errorf("%s: what solve prints does not end in the lesson:\n%s", f.Name, text)
		}
	}
	if taught == 0 {
		t.Error("no sheet has a lesson")
	}
}
