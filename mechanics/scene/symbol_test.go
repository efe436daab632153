package scene_test

import (
	"fmt"
	"strings"
	"testing"

	"trivet/mechanics/problem"
	"trivet/mechanics/scene"
	"trivet/mechanics/sheet"
)

// supported is the sheet of a bar with a joint of a kind at one of its ends.
func supported(kind problem.JointInfo, planar bool, between bool) string {
	holds, head := kind.Space, ""
	if planar {
		holds, head = kind.Plane, "plane = \"xy\"\nup = \"+y\"\n"
	}
	row := fmt.Sprintf("kind = %q", kind.Name)
	if holds.Needs != "" {
		row += fmt.Sprintf(", %s = \"+y\"", holds.Needs)
	}
	on := "bar"
	if between {
		on = "bar other"
	}
	return head + fmt.Sprintf("[points]\nA = { at = \"0 m, 0 m, 0 m\", on = %q }\nB = { at = \"2 m, 0 m, 0 m\", on = \"bar\" }\nC = { at = \"0 m, 3 m, 0 m\", on = \"other\" }\n[joints]\nA = { %s }\n", on, row)
}

// Each kind of joint has a symbol, in the plane and in space, on the ground and between two
// bodies, and no two kinds that a textbook tells apart have the same.
func TestEachKindOfJointHasASymbol(t *testing.T) {
	for _, planar := range []bool{true, false} {
		seen := map[string]string{}
		for _, kind := range problem.Joints() {
			if holds := kind.Space; planar && !kind.Plane.Stands || !planar && !holds.Stands {
				continue
			}
			for _, between := range []bool{false, true} {
				text := supported(kind, planar, between)
				if planar {
					text = strings.NewReplacer(", 0 m\"", "\"").Replace(text)
				}
				s, err := sheet.Parse([]byte(text))
				if err != nil {
					t.Fatal(err)
				}
				p, errs := problem.Read(s)
				if len(errs) > 0 {
					t.Fatalf("%s: %v\n%s", kind.Name, errs, text)
				}
				var symbols []string
				for _, thing := range scene.System(p, nil, scene.Options{}).Things {
					if thing.Kind == scene.Support && thing.Ref.Table == "joints" {
						symbols = append(symbols, fmt.Sprint(*thing.Symbol))
					} else if thing.Kind == scene.Pin {
						symbols = append(symbols, "pin")
					}
				}
				if len(symbols) == 0 {
					t.Errorf("%s, in the plane: %v, between bodies: %v: no symbol", kind.Name, planar, between)
				}
				if len(symbols) > 0 && !between {
					if other, same := seen[symbols[0]]; same && !likeEachOther(kind.Name, other) {
						t.Errorf("%s looks like %s", kind.Name, other)
					}
					seen[symbols[0]] = kind.Name
				}
			}
		}
	}
}

// likeEachOther are kinds with the same symbol on purpose: a pin in space is a journal
// bearing that carries thrust, a hinge in the plane a pin.
func likeEachOther(a, b string) bool {
	return strings.Contains("pin journal-bearing hinge", a) && strings.Contains("pin journal-bearing hinge", b)
}

// Loads have one scale for the whole sheet; two on one stretch stand one upon the other,
// and one that is not even says where it has its value.
func TestDistributedLoads(t *testing.T) {
	s, err := sheet.Parse([]byte(`plane = "xy"
up = "+y"
[units]
force = "kN"
[points]
A = { at = "0 m, 0 m", on = "beam" }
B = { at = "4 m, 0 m", on = "beam" }
C = { at = "6 m, 0 m", on = "beam" }
[joints]
A = { kind = "fixed" }
[distributed]
snow = { on = "beam", path = "A B", along = "-y", magnitude = "2 kN/m" }
heap = { on = "beam", path = "A B", along = "-y", magnitude = "0 kN/m .. 4 kN/m" }
rest = { on = "beam", path = "B C", along = "-y", magnitude = "1 kN/m" }
`))
	if err != nil {
		t.Fatal(err)
	}
	p, errs := problem.Read(s)
	if len(errs) > 0 {
		t.Fatal(errs)
	}
	got := map[string]scene.Thing{}
	for _, thing := range scene.System(p, nil, scene.Options{}).Things {
		if thing.Kind == scene.Load {
			got[thing.Ref.Row] = thing
		}
	}
	for _, c := range []struct {
		name         string
		height, base float64
		label        string
	}{{"snow", 0.5, 0, "snow = 2.00 kN/m"}, {"heap", 1, 0.5, "heap = 4.00 kN/m at B"}, {"rest", 0.25, 0, "rest = 1.00 kN/m"}} {
		thing := got[c.name]
		height := 0.0
		for _, h := range thing.Heights {
			height = max(height, h)
		}
		label := ""
		for _, r := range thing.Label.Runs {
			label += r.Text
		}
		if height != c.height || thing.Base != c.base || label != c.label {
			t.Errorf("%s: %g high on %g, %q; want %g on %g, %q", c.name, height, thing.Base, label, c.height, c.base, c.label)
		}
	}
}
