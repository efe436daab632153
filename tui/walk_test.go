package tui

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"trivet/fixtures"
	"trivet/fixtures/long"
)

// walks are the recorded sittings; each is a file of its name.
var walks = append([]string{"instructor", "student", "engineer", "practise-particle", "practise-beam", "practise-ladder"}, fromBlank...)

// fromBlank are the problems that are typed from a blank sheet: the first step of each is all of it.
var fromBlank = []string{"blank-crate", "blank-mast", "blank-beam", "blank-ladder", "blank-truss", "blank-frame"}

// TestKeysFromABlankSheet counts the keys that a problem takes until its answer shows.
func TestKeysFromABlankSheet(t *testing.T) {
	const limit = 90 // on average
	all := 0
	for _, name := range fromBlank {
		w, err := readWalk(name)
		if err != nil {
			t.Fatal(err)
		}
		keys, err := strokes(w.steps[0].keys)
		if err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(strings.Join(w.steps[0].screen, "\n"), "statically determinate") {
			t.Errorf("%s: the last screen shows no answer", name)
		}
		t.Logf("%s: %d keys", name, len(keys))
		all += len(keys)
	}
	if n := all / len(fromBlank); n > limit {
		t.Errorf("%d keys on average, and at most %d are expected", n, limit)
	}
}

// ended is the screen once the program has ended.
const ended = "(the program has ended)"

// sitting begins a walk on a screen of a size.
func (w *walk) sitting(t *testing.T, width, height int) *seat {
	t.Helper()
	at := seating{w: width, h: height, file: w.opens, inside: true}
	if w.opens != "" {
		start, ok := fixtures.Get(w.from)
		if !ok {
			t.Fatalf("there is no starting sheet %q", w.from)
		}
		at.text = start.Text
	}
	return sit(t, at)
}

// look is the whole screen, without the blanks at its ends.
func (s *seat) look() (lines []string, cursor string) {
	if s.gone() {
		return []string{ended}, ""
	}
	v := s.sees()
	for l := range strings.Lines(v.text) {
		lines = append(lines, strings.TrimRight(l, " \n"))
	}
	for len(lines) > 0 && lines[len(lines)-1] == "" {
		lines = lines[:len(lines)-1]
	}
	if cursor = strings.TrimSpace(v.cursor); cursor == "" && v.lit {
		cursor = "(a blank)"
	}
	return lines, cursor
}

// alike compares texts but for the digits of what rounding leaves.
func alike(a, b []string) bool {
	return rounded(strings.Join(a, "\n")) == rounded(strings.Join(b, "\n"))
}

// leaves is the text of a file in the folder.
func (s *seat) leaves(name string) []string {
	s.t.Helper()
	var lines []string
	for l := range strings.Lines(strings.TrimRight(s.file(name), "\n")) {
		lines = append(lines, strings.TrimRight(l, " \n"))
	}
	return lines
}

// TestWalks plays each walk as it was recorded, and compares every screen and
// every file it leaves. With -update they are recorded anew.
func TestWalks(t *testing.T) {
	for _, name := range walks {
		t.Run(name, func(t *testing.T) {
			w, err := readWalk(name)
			if err != nil {
				t.Fatal(err)
			}
			back, err := os.Getwd()
			if err != nil {
				t.Fatal(err)
			}
			s := w.sitting(t, w.w, w.h)
			wrong := 0
			for i := range w.steps {
				step := &w.steps[i]
				s.does(step.keys)
				if len(step.screen) == 1 && step.screen[0] == ended {
					s.ends() // the message that ends it comes behind the key
				}
				lines, cursor := s.look()
				if !*update && wrong == 0 && (!alike(lines, step.screen) || cursor != step.cursor) {
					// What follows from a wrong screen says nothing more.
					wrong++
					t.Errorf("step %d, %s\nafter > %s shows, with the cursor on %q,\n%s\nand was recorded as, with the cursor on %q,\n%s",
						i+1, strings.Join(step.words, " "), step.keys, cursor, strings.Join(lines, "\n"), step.cursor, strings.Join(step.screen, "\n"))
				}
				step.screen, step.cursor = lines, cursor
			}
			if !s.ends() {
				t.Error("it does not end with the program left")
			}
			for i := range w.files {
				f := &w.files[i]
				if got := s.leaves(f.name); !*update && !alike(got, f.text) {
					t.Errorf("%s is left as\n%s\nand was recorded as\n%s", f.name, strings.Join(got, "\n"), strings.Join(f.text, "\n"))
				} else {
					f.text = got
				}
			}
			if *update {
				t.Chdir(back)
				w.store(t)
			}
		})
	}
}

// TestWalksOnOtherScreens plays the same keys on other screens: they lead to the
// same verdicts on the way, and leave the same sheet.
func TestWalksOnOtherScreens(t *testing.T) {
	for i, name := range long.Share(walks) {
		w, err := readWalk(name)
		if err != nil {
			t.Fatal(err)
		}
		var first []string
		own := [2]int{w.w, w.h}
		others := [][2]int{{80, 24}, {120, 36}, {200, 60}, {80, 24}, {120, 36}}[i%3:][:3]
		others = slices.DeleteFunc(others, func(size [2]int) bool { return size == own })
		for _, size := range append([][2]int{own}, others[:long.Of(len(others), len(others))]...) {
			t.Run(name, func(t *testing.T) {
				s := w.sitting(t, size[0], size[1])
				var verdicts []string
				for _, step := range w.steps {
					s.does(step.keys)
					_, v := s.watch.now()
					verdicts = append(verdicts, v)
				}
				if first == nil {
					first = verdicts
				}
				for i, v := range verdicts {
					if v != first[i] {
						t.Fatalf("%v: after > %s it is called %q, and elsewhere %q:\n%s", size, w.steps[i].keys, v, first[i], s.term.screen())
					}
				}
				for _, f := range w.files {
					if got := s.leaves(f.name); !alike(got, f.text) {
						t.Errorf("%v: %s is left as\n%s\nand elsewhere as\n%s", size, f.name, strings.Join(got, "\n"), strings.Join(f.text, "\n"))
					}
				}
			})
		}
	}
}

func TestEveryWalkIsPlayed(t *testing.T) {
	files, err := filepath.Glob(walkFile("*"))
	if err != nil || len(files) != len(walks) {
		t.Errorf("there are %v, and %v are played (%v)", files, walks, err)
	}
	for _, name := range walks {
		w, err := readWalk(name)
		if err != nil {
			t.Fatal(err)
		}
		text, err := os.ReadFile(walkFile(name))
		if err != nil || w.String() != string(text) {
			t.Errorf("%s is not written as it is read: play it with -update (%v)", name, err)
		}
	}
}
