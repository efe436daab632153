package layout

import (
	"flag"
	"fmt"
	"image"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the drawings anew")

// drawing shows a screen in box characters, each pane with its name and size.
func drawing(a Args) string {
	s := Arrange(a)
	if s.TooSmall {
		return "too small\n"
	}
	cells := make([][]rune, a.H)
	for y := range cells {
		cells[y] = []rune(strings.Repeat(" ", a.W))
	}
	box := func(r image.Rectangle, name string) {
		if r.Empty() {
			return
		}
		for x := r.Min.X; x < r.Max.X; x++ {
			cells[r.Min.Y][x] = '─'
		}
		for y := r.Min.Y; y < r.Max.Y; y++ {
			cells[y][r.Min.X], cells[y][r.Max.X-1] = '│', '│'
		}
		cells[r.Min.Y][r.Min.X], cells[r.Min.Y][r.Max.X-1] = '┌', '┐'
		copy(cells[r.Min.Y][r.Min.X+2:], []rune(fmt.Sprintf(" %s %d×%d ", name, r.Dx(), r.Dy())))
	}
	box(s.Top, "top")
	box(s.Strip, "strip")
	box(s.Foot, "foot")
	for p, r := range s.Panes {
		box(r, []string{"given", "points", "lines", "supports", "unknowns", "sheet", "system", "picture", "checks", "working", "hand solution", "ranges", "limits"}[p])
	}
	for _, w := range s.Walls {
		for y := w.Min.Y; y < w.Max.Y; y++ {
			cells[y][w.Min.X] = '║'
		}
	}
	var b strings.Builder
	for _, line := range cells {
		b.WriteString(strings.TrimRight(string(line), " ") + "\n")
	}
	return b.String()
}

func TestDrawings(t *testing.T) {
	rows, bare := [Panes]int{3, 6, 5, 4, 7, 12}, [Panes]int{0, 4, 4, 0, 3, 12}
	for _, c := range []struct {
		name string
		args Args
	}{
		{"59x24", Args{W: 59, H: 24}},
		{"60x16", Args{W: 60, H: 16, Turns: Turns{Side: System}}},
		{"80x24", Args{W: 80, H: 24, Turns: Turns{Side: System}}},
		{"80x24-checks", Args{W: 80, H: 24, Turns: Turns{Side: Checks, Turn: Checks}}},
		{"80x24-picture", Args{W: 80, H: 24, Turns: Turns{Side: Picture}}},
		{"80x24-large", Args{W: 80, H: 24, Turns: Turns{Large: true, Focus: Lines}}},
		{"80x24-bare", Args{W: 80, H: 24, Turns: Turns{Side: Picture, Focus: Points}, Rows: bare}},
		{"80x24-supports", Args{W: 80, H: 24, Turns: Turns{Side: Picture, Focus: Supports}, Rows: bare}},
		{"80x24-sheet", Args{W: 80, H: 24, Turns: Turns{Side: Picture, Focus: Sheet}}},
		{"120x36", Args{W: 120, H: 36, Turns: Turns{Focus: Points}, Rows: bare}},
		{"120x36-supports", Args{W: 120, H: 36}},
		{"120x36-working", Args{W: 120, H: 36, Turns: Turns{Turn: Working, Side: Picture}}},
		{"200x60", Args{W: 200, H: 60}},
		{"200x60-hand-solution", Args{W: 200, H: 60, Turns: Turns{Third: HandSolution, Turn: Checks}}},
	} {
		if c.args.Rows == ([Panes]int{}) {
			c.args.Rows = rows
		}
		got := drawing(c.args)
		file := filepath.Join("testdata", c.name+".txt")
		if *update {
			if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		golden, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if got != string(golden) {
			t.Errorf("%s:\n%s\nwant\n%s", c.name, got, golden)
		}
	}
}

func TestEveryCellBelongsToOneRectangle(t *testing.T) {
	for w := MinW; w < 260; w += 7 {
		for h := MinH; h < 90; h += 3 {
			for _, a := range []Args{{Turns: Turns{Side: Given}}, {Turns: Turns{Side: System}}, {Turns: Turns{Side: Points}}, {Turns: Turns{Side: Supports, Focus: Sheet}}, {Turns: Turns{Large: true, Focus: Picture}}, {Turns: Turns{Side: Ranges, Turn: Ranges, Third: Ranges}}, {Turns: Turns{Turn: Checks, Third: Checks}}, {Rows: [Panes]int{90, 1, 70, 3}}} {
				a.W, a.H = w, h
				s := Arrange(a)
				seen := make([]int, w*h)
				for _, r := range append(append([]image.Rectangle{s.Top, s.Strip, s.Foot}, s.Panes[:]...), s.Walls...) {
					for y := r.Min.Y; y < r.Max.Y; y++ {
						for x := r.Min.X; x < r.Max.X; x++ {
							seen[y*w+x]++
						}
					}
				}
				for i, n := range seen {
					if n != 1 {
						t.Fatalf("%d×%d %+v: cell %d,%d is in %d rectangles", w, h, a, i%w, i/w, n)
					}
				}
			}
		}
	}
}

// The picture has a third of the width from the smallest of common terminals on.
func TestThePictureHasAThird(t *testing.T) {
	for _, size := range [][2]int{{80, 24}, {100, 30}, {120, 36}, {160, 48}, {200, 60}} {
		if r := Arrange(Args{W: size[0], H: size[1], Turns: Turns{Side: Picture}}).Panes[Picture]; 3*r.Dx() < size[0] {
			t.Errorf("%v: the picture is %v", size, r)
		}
	}
}

func TestTooSmall(t *testing.T) {
	for _, a := range []Args{{}, {W: -1, H: -1}, {W: MinW - 1, H: 50}, {W: 100, H: MinH - 1}} {
		if s := Arrange(a); !s.TooSmall || !s.Top.Empty() {
			t.Errorf("%+v is divided: %+v", a, s)
		}
	}
}

func TestResultsTakeTurns(t *testing.T) {
	for _, c := range []struct {
		from, want Pane
		by         int
		among      func(Pane) bool
	}{
		{System, Checks, 1, Pane.Result}, {Limits, System, 1, Pane.Result}, {System, Limits, -1, Pane.Result},
		{Limits, Working, 1, Pane.Third}, {Working, Limits, -1, Pane.Third}, {HandSolution, Ranges, 1, Pane.Third},
	} {
		if got := c.from.next(c.by, c.among); got != c.want {
			t.Errorf("%d turns on from %d is %d, want %d", c.by, c.from, got, c.want)
		}
	}
	for p := range Panes {
		if p.Third() && !p.Result() || p.Result() == (p < System || p == Picture) {
			t.Errorf("pane %d is a result: %v, of the third place: %v", p, p.Result(), p.Third())
		}
	}
}
