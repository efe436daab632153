package host

import "trivet/tui/host/line"

// shape is what two followers have in common to see the same bytes.
type shape struct {
	w, h int
	t    line.Terminal
}

// shared is a screen with how many follow on it.
type shared struct {
	*line.Screen
	n int
}

// shape is the one that a follower of a size shares. Each costs a drawing whenever
// something changes, so that where there are many already a newcomer gets one that
// is there and fits, or one of a few that any terminal has.
func (s *classroom) shape(w, h int, t line.Terminal) shape {
	k := shape{rounded(w, widths), rounded(h, heights), t}
	if s.screens[k] != nil || len(s.screens) < maxShapes {
		return k
	}
	best := shape{}
	for there := range s.screens {
		if there.t == t && there.w <= w && there.h <= h && there.w*there.h > best.w*best.h {
			best = there
		}
	}
	if 2*best.w*best.h > k.w*k.h {
		return best
	}
	t.Kind = line.UnknownKind
	k = shape{coarse[0].w, coarse[0].h, t}
	for _, c := range coarse {
		if c.w <= w && c.h <= h {
			k.w, k.h = c.w, c.h
		}
	}
	return k
}

// maxShapes is how many sizes and kinds of terminals are drawn each as it is; a
// class has a handful.
const maxShapes = 40

// coarse are the sizes of those who come after.
var coarse = []struct{ w, h int }{{40, 10}, {80, 24}, {120, 36}, {200, 60}}

// widths and heights are the sizes that are drawn: a screen between two gets
// the smaller, so that a class of many sizes needs few drawings.
var (
	widths  = []int{40, 50, 60, 64, 68, 72, 76, 80, 84, 90, 96, 100, 106, 112, 120, 126, 132, 140, 150, 160, 170, 180, 190, 200, 220, 240, 270, line.MaxW}
	heights = []int{10, 12, 14, 16, 18, 20, 22, 24, 26, 28, 30, 32, 34, 36, 38, 40, 43, 46, 50, 55, 60, 66, 72, 80, 90, line.MaxH}
)

func rounded(n int, steps []int) int {
	best := min(n, steps[0])
	for _, s := range steps {
		if s <= n {
			best = s
		}
	}
	return best
}
