package working

import (
	"testing"

	"trivet/mechanics/doc"
	"trivet/mechanics/problem"
	"trivet/mechanics/statics"
)

// everyResult is the name of each result of a problem.
func everyResult(p *problem.Problem) (names []string) {
	parts := []string{"x", "y", "z", "size", "alpha", "beta", "gamma", "angle", "mx", "my", "mz", "at", "ux", "uy", "uz", "length", "stretch"}
	holders := []string{}
	for i := range p.Lines {
		names = append(names, p.Lines[i].Name, "|"+p.Lines[i].Name+".x|")
		holders = append(holders, p.Lines[i].Name)
		if i > 0 {
			names = append(names, "angle("+p.Lines[0].Name+","+p.Lines[i].Name+")", "component("+p.Lines[i].Name+","+p.Lines[0].Name+")")
		}
	}
	for i := range p.Joints {
		names = append(names, p.Joints[i].Name+"F")
		holders = append(holders, p.Joints[i].Name)
		if i > 0 {
			names = append(names, "angle("+p.Joints[0].Name+","+p.Joints[i].Name+")")
		}
	}
	for i := range p.Loads {
		holders = append(holders, p.Loads[i].Name)
	}
	for i := range p.Bodies {
		holders = append(holders, p.Bodies[i].Name+".loads")
	}
	for _, holder := range holders {
		for _, part := range parts {
			names = append(names, holder+"."+part)
		}
	}
	return names
}

// Whatever may be asked is derived from numbers that give it, and boxed.
func TestWhatIsAskedIsDerived(t *testing.T) {
	asked, boxes := 0, 0
	for name, text := range sheets(t) {
		p := read(t, text)
		p.Asked = nil
		for _, result := range everyResult(p) {
			if q, err := problem.ParseQuery(p, result); err == nil {
				p.Asked = append(p.Asked, q)
			}
		}
		asked += len(p.Asked)
		w := Build(statics.Solve(p))
		_, _ = checkWorking(t, name, w)
		for _, step := range w.Steps {
			for _, b := range step.Body {
				if _, boxed := b.(*doc.Boxed); boxed && step.Kind == Answers {
					boxes++
				}
			}
		}
	}
	if asked < 3000 || boxes < 2*asked/3 {
		t.Errorf("%d results asked, %d boxed", asked, boxes)
	}
}

// The quadrant of an angle is that of its force.
func TestAnglesAreInTheirQuadrants(t *testing.T) {
	for components, want := range map[string]string{"(3, 4)": "53.1", "(-3, 4)": "127", "(-3, -4)": "233", "(3, -4)": "307", "(0, -4)": "270", "(-3, 0)": "180"} {
		p := read(t, "plane = \"xy\"\nexpect = \"resultant\"\nasked = \"F.angle\"\n[points]\nA = { at = \"0, 0\", on = \"particle\" }\n[lines]\nF = { kind = \"force\", at = \"A\", components = \""+components+" N\" }\n")
		w := Build(statics.Solve(p))
		checkWorking(t, components, w)
		found := ""
		eachFormula(w, func(step Step, m doc.Math) {
			if step.Kind == Answers && m.Op == doc.Row {
				found = m.Of[0].Of[1].Of[0].Text
			}
		})
		if found != want {
			t.Errorf("%s points along %s°, want %s°", components, found, want)
		}
	}
}
