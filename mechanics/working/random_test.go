package working

import (
	"fmt"
	"math/rand/v2"
	"strings"
)

func pick[T any](rng *rand.Rand, from ...T) T { return from[rng.IntN(len(from))] }

// proper is the text of a sheet whose equations have one solution, but for
// chance: particles on as many links as they have equations, or a body on
// supports that hold it.
func proper(rng *rand.Rand) string {
	place := func() string {
		return fmt.Sprintf("%.2f, %.1f, %d", 10*rng.Float64()-5, 10*rng.Float64()-5, rng.IntN(11)-5)
	}
	planar := rng.IntN(2) == 0
	n, head := 3, ""
	if planar {
		n, head = 2, "plane = \"xy\"\n"
		place = func() string { return fmt.Sprintf("%.2f, %d", 10*rng.Float64()-5, rng.IntN(11)-5) }
	}
	points, lines, rest := "[points]\n", "[lines]\n", ""
	if rng.IntN(2) == 0 {
		free := 1 + rng.IntN(4)
		for k := range free {
			points += fmt.Sprintf("P%d = { at = %q, on = \"particle\" }\n", k, place())
			for i := range n {
				points += fmt.Sprintf("A%d_%d = %q\n", k, i, place())
				to := fmt.Sprintf("A%d_%d", k, i)
				if k > 0 && i == 0 {
					to = fmt.Sprintf("P%d", k-1)
				}
				lines += fmt.Sprintf("T%d_%d = { kind = %q, path = \"P%d %s\" }\n", k, i, pick(rng, "link", "link", "cable", "strut"), k, to)
			}
			lines += fmt.Sprintf("F%d = { kind = \"force\", at = \"P%d\", along = \"(%s)\", magnitude = \"%.1f\" }\n", k, k, place(), 900*rng.Float64())
		}
		return head + points + lines
	}
	points += fmt.Sprintf("A = { at = %q, on = \"beam\" }\nB = { at = %q, on = \"beam\" }\nC = { at = %q, on = \"beam\" }\n", place(), place(), place())
	if planar {
		rest = "[joints]\nA = { kind = \"pin\" }\nB = { kind = \"roller\", normal = \"polar(70 deg)\" }\n" +
			pick(rng, "", "[couples]\nM = { on = \"beam\", magnitude = \"-75\" }\n") +
			pick(rng, "", "[distributed]\nq = { on = \"beam\", path = \"A C\", along = \"-y\", magnitude = \"3 .. 8\" }\n")
	} else {
		rest = "[joints]\nA = { kind = \"ball-and-socket\" }\n"
		for i := range 3 {
			points += fmt.Sprintf("E%d = %q\n", i, place())
			lines += fmt.Sprintf("T%d = { kind = \"cable\", path = \"%s E%d\" }\n", i, pick(rng, "B", "C"), i)
		}
		rest += "[couples]\nM = { on = \"beam\", about = \"(1, 2, 2)\", magnitude = \"60\" }\n"
	}
	lines += fmt.Sprintf("W = { kind = \"weight\", at = \"C\", magnitude = \"%.1f\" }\nF = { kind = \"force\", at = \"B\", along = \"(%s)\", magnitude = \"%.2f\" }\n", 500*rng.Float64(), place(), 80*rng.Float64())
	return head + points + lines + rest
}

// random is the text of a sheet: particles on cables, bodies on supports, frames.
func random(rng *rand.Rand) string {
	var b strings.Builder
	planar := rng.IntN(2) == 0
	n, axes := 3, []string{"+x", "-y", "+z", "-z"}
	if planar {
		n, axes = 2, []string{"+x", "-x", "+y", "-y"}
		b.WriteString("plane = \"xy\"\nup = \"+y\"\n")
	}
	fmt.Fprintf(&b, "figures = %d\n[units]\nlength = %q\nforce = %q\n", 2+rng.IntN(4), pick(rng, "m", "mm", "ft"), pick(rng, "N", "kN", "lbf"))
	tuple := func() string {
		of := make([]string, n)
		for k := range of {
			of[k] = pick(rng, fmt.Sprint(rng.IntN(9)-4), fmt.Sprintf("%.2f", 8*rng.Float64()-4), fmt.Sprintf("%.1f", 8*rng.Float64()-4))
		}
		return strings.Join(of, ", ")
	}
	rigid := rng.IntN(3) > 0
	on := func(k int) string {
		if rigid {
			return pick(rng, "beam", "beam", "arm", "beam arm")
		}
		return "particle"
	}
	b.WriteString("[points]\n")
	free := 1 + rng.IntN(3)
	if rigid {
		free = 3 + rng.IntN(3)
	}
	var frees, fixeds, beams []string
	for k := range free {
		name, body := fmt.Sprintf("P%d", k+1), on(k)
		fmt.Fprintf(&b, "%s = { at = %q, on = %q }\n", name, tuple(), body)
		frees = append(frees, name)
		if body == "beam" {
			beams = append(beams, name)
		}
	}
	for k := range 3 + rng.IntN(3) {
		name := string(rune('A' + k))
		fmt.Fprintf(&b, "%s = %q\n", name, tuple())
		fixeds = append(fixeds, name)
	}
	b.WriteString("[lines]\n")
	size := func() string { return fmt.Sprintf("%.*f", rng.IntN(3), 1+500*rng.Float64()) }
	for k := range 1 + rng.IntN(n*free) {
		body := ""
		if rigid {
			body = ", on = \"" + pick(rng, "beam", "arm") + "\""
		}
		fmt.Fprintf(&b, "T%d = { kind = %q, path = \"%s %s\"%s%s }\n", k+1, pick(rng, "cable", "link", "strut", "spring"), pick(rng, frees...), pick(rng, append(fixeds, frees...)...), body,
			pick(rng, "", "", ", magnitude = \""+size()+"\"", ", magnitude = \"2*T1 + 3\""))
	}
	for k := range 1 + rng.IntN(3) {
		body := ""
		if rigid {
			body = ", on = \"" + pick(rng, "beam", "arm") + "\""
		}
		switch rng.IntN(4) {
		case 0:
			fmt.Fprintf(&b, "G%d = { kind = \"weight\", at = %q, magnitude = \"%s\"%s }\n", k, pick(rng, frees...), size(), body)
		case 1:
			fmt.Fprintf(&b, "V%d = { kind = \"force\", at = %q, components = \"(%s)\"%s }\n", k, pick(rng, frees...), pick(rng, tuple(), strings.Repeat("?, ", n-1)+"5", "1"+strings.Repeat(", ?", n-1)), body)
		case 2:
			fmt.Fprintf(&b, "H%d = { kind = \"force\", at = %q, along = \"(%s)\", magnitude = \"%s\"%s }\n", k, pick(rng, frees...), tuple(), pick(rng, size(), "0.3*T1", "?"), body)
		case 3:
			fmt.Fprintf(&b, "R%d = { kind = \"cable\", path = \"%s %s %s\"%s }\n", k, pick(rng, fixeds...), pick(rng, frees...), pick(rng, append(fixeds, frees...)...), body)
		}
	}
	if !rigid {
		return b.String()
	}
	b.WriteString("[joints]\n")
	for k, name := range frees[:1+rng.IntN(len(frees))] {
		kind := pick(rng, "pin", "ball-and-socket", "roller", "fixed", "smooth-surface", "rough-surface", "slider", "collar", "hinge")
		fmt.Fprintf(&b, "J%d = { at = %q, kind = %q, normal = %q, axis = %q", k, name, kind, pick(rng, axes...), pick(rng, append(axes, "("+tuple()+")")...))
		if kind == "rough-surface" && rng.IntN(2) == 0 {
			fmt.Fprintf(&b, ", friction = \"0.3\", impending = \"(%s)\"", tuple())
		}
		b.WriteString(" }\n")
	}
	if rng.IntN(2) == 0 {
		about := ", about = \"+z\""
		fmt.Fprintf(&b, "[couples]\nM0 = { on = \"beam\"%s, magnitude = %q }\n", about, pick(rng, size(), "?", "-5 N m"))
	}
	if len(beams) > 1 && rng.IntN(2) == 0 {
		fmt.Fprintf(&b, "[distributed]\nq = { on = \"beam\", path = \"%s %s\", along = %q, magnitude = %q }\n", beams[0], beams[1], pick(rng, axes...), pick(rng, "5", "0 .. 7", "3 .. 1"))
	}
	return b.String()
}
