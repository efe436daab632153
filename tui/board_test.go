package tui

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"trivet/fixtures/long"
	"trivet/mechanics/working"
	"trivet/tui/results"
)

// stepNamed goes to a step by its title.
func (r *rig) stepNamed(title string) {
	r.t.Helper()
	for i, s := range r.m.boardOf().Steps() {
		if s.Title == title {
			for _, digit := range fmt.Sprint(i + 1) {
				r.keys(string(digit))
			}
			if r.m.board.At != i {
				r.t.Fatalf("the number %d leads to step %d", i+1, r.m.board.At+1)
			}
			return
		}
	}
	r.t.Fatalf("no step is called %q", title)
}

func TestTheBoardWalksThroughEveryStep(t *testing.T) {
	for _, size := range long.Share([][2]int{{80, 24}, {60, 16}, {120, 36}, {200, 60}}) {
		r := newRig(t, beam, size[0], size[1])
		r.keys("f5")
		steps := r.m.boardOf().Steps()
		if len(steps) < 8 {
			t.Fatalf("%d steps", len(steps))
		}
		seen := map[int]bool{}
		for range 300 {
			seen[r.m.board.At] = true
			if r.m.board.Line == 0 {
				r.sees(steps[r.m.board.At].Title, fmt.Sprintf("step %d of %d", r.m.board.At+1, len(steps)))
			}
			checkFrame(t, r.m)
			r.keys("space")
		}
		r.sees("this is the last step")
		if len(seen) != len(steps) {
			t.Errorf("%v: %d of %d steps seen", size, len(seen), len(steps))
		}
		for range 300 {
			r.keys("left")
		}
		r.sees("this is the first step", steps[0].Title)
		r.keys("end", "home", "b")
		r.sees("Points")
	}
}

// TestNothingOfAStepIsLost pages through each step on the smallest screen and
// looks for every line of it.
func TestNothingOfAStepIsLost(t *testing.T) {
	r := newRig(t, crane, 60, 16)
	r.keys("f5")
	shown := map[string]bool{}
	for range 400 {
		for _, l := range strings.Split(r.screen(), "\n") {
			shown[strings.TrimSpace(l)] = true
		}
		r.keys("space")
	}
	for i, step := range r.m.boardOf().Steps() {
		r.m.board = r.m.board.Go(i, r.m.boardOf().Steps())
		for _, l := range r.m.board.Page(r.m.boardOf()).Text {
			text := ""
			for _, s := range l {
				text += s.Text
			}
			if text = strings.TrimSpace(text); text != "" && !shown[text] {
				t.Errorf("%s: %q never shows", step.Title, text)
			}
		}
	}
}

func TestTheBoardKeepsItsStepAndItsValuesAreLive(t *testing.T) {
	r := newRig(t, beam, 120, 36)
	r.keys("alt+y", "b")
	r.stepNamed("Answers")
	r.sees("B = 1880 N")
	r.keys("esc")
	// Without the weight: 6 B = 2000 + 8400 - 900, B = 1583 N.
	r.keys("f7 s", "ctrl+d", "f5")
	r.sees("Answers", "B = 1580 N")
	// A cell that does not read leaves the last working, and says so.
	r.keys("esc", "f7 f", "right", "right", "right", "right")
	r.text("2 m")
	r.keys("enter", "f5")
	r.sees("stale", "B = 1580 N") // as it was kept last, not as half of it was typed
}

func TestTheListOfSteps(t *testing.T) {
	r := newRig(t, beam, 80, 24)
	r.keys("f5", "l", "end", "up", "enter")
	if got, want := r.m.board.At, len(r.m.boardOf().Steps())-2; got != want {
		t.Errorf("the list leads to step %d, want %d", got, want)
	}
	r.keys("l", "home", "esc")
	if r.m.board.At != len(r.m.boardOf().Steps())-2 || r.m.board.List != nil {
		t.Error("esc in the list moves")
	}
	r.keys("0", "9", "9")
	r.sees("step 9 of")
	r.keys("1", "up", "2")
	r.sees("step 2 of")
}

// answersOf are the values of the unknowns as a working prints them.
func answersOf(r *rig) (values []string) {
	p, s := r.m.live.Problem, r.m.live.Solution
	for i, x := range s.X {
		if x.Value != 0 {
			values = append(values, results.Format(p, x.Value, p.Unknowns[i].Dim))
		}
	}
	return values
}

func TestHiddenAnswersDoNotShow(t *testing.T) {
	sheets := map[string]string{"beam": beam, "crane": crane, "boom": boom, "lamp": hanging}
	files, err := filepath.Glob(filepath.Join("..", "fixtures", "start", "*.toml"))
	if err != nil || len(files) < 20 {
		t.Fatalf("%d sheets to start from, %v", len(files), err)
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		sheets[filepath.Base(file)] = string(text)
	}
	for name, text := range sheets {
		r := newRig(t, text, 120, 36)
		r.keys("f5")
		values := answersOf(r)
		// What is given may be as large as an answer, and then it shows.
		var given []string
		for i, s := range r.m.boardOf().Steps() {
			if s.Kind >= working.HandStep {
				break
			}
			r.m.board = r.m.board.Go(i, r.m.boardOf().Steps())
			for _, v := range values {
				if strings.Contains(r.screen(), v) {
					given = append(given, v)
				}
			}
		}
		r.keys("h")
		for i := range r.m.boardOf().Steps() {
			r.m.board = r.m.board.Go(i, r.m.boardOf().Steps())
			screen := r.screen()
			for _, v := range values {
				if strings.Contains(screen, v) && !slices.Contains(given, v) {
					t.Errorf("%s: %s shows in\n%s", name, v, screen)
				}
			}
			senses := []string{"tension)", "compression)"}
			for _, u := range r.m.live.Problem.Unknowns {
				senses = append(senses, u.Name+" (T)", u.Name+" (C)")
			}
			for _, sense := range senses {
				if strings.Contains(screen, sense) {
					t.Errorf("%s: %s shows in\n%s", name, sense, screen)
				}
			}
		}
		r.keys("h", "h", "h")
	}
}

func TestAnswersAreRevealedStepByStep(t *testing.T) {
	r := newRig(t, beam, 80, 24)
	r.keys("f5", "r")
	r.sees("answers are shown already")
	r.stepNamed("Answers")
	r.keys("h")
	r.sees("answers hidden", "B = ?")
	r.keys("r")
	r.sees("B = 1880 N")
	r.keys("left", "right")
	r.sees("B = ?")
	r.stepNamed("Checks")
	r.sees("hidden: r shows it")
	r.keys("r")
	r.sees("exceeds its limit")
	r.keys("h", "h", "h")
	r.stepNamed("Answers")
	r.sees("B = 1880 N")
}

// What is hidden grows: the answers, the equations, the vectors, and all shows again.
func TestTheBoardHidesMoreAndMore(t *testing.T) {
	r := newRig(t, crane, 120, 36)
	r.keys("f5")
	for _, c := range []struct{ head, vectors, equations string }{
		{"answers hidden", "0.6667", "0.6667 TA"},
		{"answers and equations hidden", "0.6667", "hidden: r shows it"},
		{"answers, equations and vectors hidden", "hidden: r shows it", "hidden: r shows it"},
		{"step ", "0.6667", "0.6667 TA"},
	} {
		r.keys("h")
		r.stepNamed("Position and unit vectors")
		r.sees(c.head, c.vectors)
		r.stepNamed("Equilibrium of particle D, with numbers")
		r.sees(c.head, c.equations)
	}
}

func TestThePictureShowsTheStep(t *testing.T) {
	r := newRig(t, crane, 120, 36)
	r.keys("f5")
	r.stepNamed("Position and unit vectors")
	if s := r.screen(); !strings.Contains(s, "TA") || strings.Contains(s, "load1") || strings.Contains(s, "(T)") {
		t.Errorf("the step of the vectors shows\n%s", s)
	}
	r.keys("p")
	if !r.m.board.Page(r.m.boardOf()).Picture.Empty() {
		t.Error("text alone has a picture")
	}
	r.keys("p")
	if p := r.m.board.Page(r.m.boardOf()); p.Picture.Empty() || len(p.Text) > 0 {
		t.Error("the picture alone has text")
	}
	w := newRig(t, beam, 120, 36)
	w.keys("f5")
	w.stepNamed("Resultant of the distributed load q")
	if s := w.screen(); strings.Contains(s, "M0") || strings.Contains(s, "Ay") {
		t.Errorf("the step of the load shows\n%s", s)
	}
	r.keys("p", "t", "?")
	r.sees("Keys: On the board")
	r.keys("esc")
	if r.m.cam.Name(r.m.live.Problem) != "top" {
		t.Errorf("seen from %s", r.m.cam.Name(r.m.live.Problem))
	}
}

func TestTheBoardWithoutASolution(t *testing.T) {
	r := rigOf(t, Options{Width: 80, Height: 24})
	r.keys("f5")
	r.sees("No result yet")
	r.keys("space", "left", "l", "down", "enter", "end", "h", "r", "7", "esc")
	r.sees("Points")
	// No equilibrium, and too many supports: the steps end in why.
	for _, c := range [][2]string{
		{strings.Replace(beam, `B = { kind = "roller"`, `D = { kind = "roller", on = "beam"`, 1), "step"},
		{strings.Replace(beam, `kind = "pin"`, `kind = "fixed"`, 1), "Why there is no single solution"},
	} {
		r = newRig(t, c[0], 80, 24)
		r.keys("f5", "l")
		r.sees(c[1])
	}
}

func TestTheBoardSavesAndAsks(t *testing.T) {
	r, path := onDisk(t, hanging)
	moveA(r)
	r.keys("enter", "f5", "ctrl+q")
	r.sees("unsaved changes")
	r.keys("esc", "ctrl+s")
	fileIs(t, path, moved)
	r.sees("saved to")
	if !r.m.board.On {
		t.Error("saving leaves the board")
	}
}

func BenchmarkBoardStep(b *testing.B) {
	r := newRig(b, beam, 120, 36)
	r.keys("f5")
	b.ReportAllocs()
	i := 0
	for b.Loop() {
		if i++; i%20 < 10 {
			r.keys("right")
		} else {
			r.keys("left")
		}
		r.m.View()
	}
}
