package tui

import (
	"strings"
	"testing"

	"trivet/fixtures"
	"trivet/mechanics/sheet"
)

// mast is a sheet with own answers, each wrong in its way.
func mast(t testing.TB, answers string) string {
	t.Helper()
	s, ok := fixtures.Get("mast-top")
	if !ok {
		t.Fatal("there is no mast")
	}
	return s.Text + "\n[answers]\n" + answers
}

// With the cursor on an own answer that is not met the foot says which mistake is
// the likeliest, and of one that is met, or no number to know by, nothing.
func TestAnUnmetAnswerSaysTheLikeliestMistake(t *testing.T) {
	for _, c := range []struct{ answers, want string }{
		{`T1 = "-2.50 kN"`, "your T1: sign reversed"},
		{`T1 = "2.60 kN"`, "your T1: that is the value of T2"},
		{`T1 = "0.255"`, "your T1: factor g missing: a mass taken for a force"},
		{`T1 = "2.5004"`, "your T1: right to fewer figures than are written"},
		{"T1 = \"1.75\"\nT2 = \"2.275\"\nT3 = \"2.275\"", "your T1: as if wire were left out"},
		{`T1 = "2.9"`, ""},
		{`T1 = "2.50 kN"`, ""},
	} {
		r := newRig(t, mast(t, c.answers+"\n"), 120, 40)
		r.keys("alt+m")
		r.has(t, "own answer", c.want)
		r.keys("left")
		if strings.Contains(r.screen(), "your T1") {
			t.Errorf("%s: it is said of another cell", c.answers)
		}
	}
}

// has goes to the own answer of T1 and sees what is said of it.
func (r *rig) has(t *testing.T, head, want string) {
	t.Helper()
	for range 9 {
		if s, _ := r.m.slot(); s.Ref.Table == "answers" && s.Ref.Row == "T1" {
			lines := strings.Split(r.screen(), "\n")
			if got := strings.TrimSpace(lines[len(lines)-2]); got != want && !(want == "" && !strings.HasPrefix(got, "your ")) {
				t.Errorf("%q is said, want %q", got, want)
			}
			return
		}
		r.keys("right")
	}
	t.Fatalf("the cursor does not come to %s", head)
}

// What is typed is looked at once it is done, and the word goes with the mistake.
func TestATypedAnswerIsDiagnosed(t *testing.T) {
	r := newRig(t, mast(t, "T1 = \"2.50 kN\"\n"), 120, 40)
	r.keys("alt+m")
	r.has(t, "own answer", "")
	r.keys("2", ".", "6", "enter")
	r.keys("up")
	r.has(t, "own answer", "your T1: that is the value of T2")
	r.keys("2", ".", "5")
	if strings.Contains(r.screen(), "your T1") {
		t.Error("it is said while another is typed")
	}
	r.keys("enter", "up")
	r.has(t, "own answer", "")
}

// In lines it is said once, when the cursor comes to the cell.
func TestADiagnosisInLines(t *testing.T) {
	s, err := sheet.Parse([]byte(mast(t, "T1 = \"-2.50 kN\"\n")))
	if err != nil {
		t.Fatal(err)
	}
	l := listen(t, Options{Sheet: s, Path: "mast.toml"})
	l.keys("alt+m", "right", "right", "right", "right", "right", "right", "right")
	for range 8 {
		l.keys("left")
	}
	if got := strings.Count(strings.Join(l.lines, "\n"), "your T1: sign reversed"); got < 1 || got > 2 {
		t.Errorf("it is said %d times:\n%s", got, strings.Join(l.lines, "\n"))
	}
}
