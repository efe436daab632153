package figure

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"trivet/mechanics/ink"
	"trivet/mechanics/problem"
	"trivet/mechanics/scene"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
)

func TestZZ(t *testing.T) {
	out := os.Getenv("ZZ")
	if out == "" {
		t.Skip()
	}
	a, _ := filepath.Glob("../../fixtures/start/*.toml")
	b, _ := filepath.Glob("../../fixtures/published/*/*.toml")
	var sheetOf ink.Drawing
	n := 0
	flush := func() {
		sheetOf.Width, sheetOf.Height = 1640, 1090
		png, err := ink.PNG(sheetOf, 80)
		if err != nil {
			t.Error(err)
		}
		os.WriteFile(filepath.Join(out, fmt.Sprintf("s%02d.png", (n-1)/8)), png, 0o644)
		sheetOf = ink.Drawing{}
	}
	defer flush()
	for _, f := range append(a, b...) {
		if m := os.Getenv("ONLY"); m != "" && !strings.Contains(f, m) {
			continue
		}
		data, _ := os.ReadFile(f)
		s, err := sheet.Parse(data)
		if err != nil {
			t.Fatal(err)
		}
		p, _ := problem.Read(s)
		sol := statics.Solve(p)
		at := time.Now()
		sc := scene.System(p, nil, scene.Options{Dimensions: true})
		stack := []ink.Drawing{System(&sc)}
		var row []ink.Drawing
		for _, with := range []*statics.Solution{nil, sol} {
			for i := range p.CutFree() {
				if i > 3 {
					break
				}
				fr := scene.Free(p, with, i)
				row = append(row, Free(&fr, p.Bodies[i].Name, len(p.Bodies) > 1))
			}
			stack = append(stack, Row(row, 10))
			row = nil
		}
		el := time.Since(at)
		var d ink.Drawing
		for _, one := range stack {
			d.Put(one, ink.Vec{Y: d.Height}, 1)
			d.Height += one.Height + 8
			d.Width = max(d.Width, one.Width)
		}
		name := strings.TrimSuffix(filepath.Base(f), ".toml")
		fmt.Println(name, el)
		k := min(1, 400/d.Width, 520/d.Height)
		var tile ink.Drawing
		tile.Put(d, ink.Vec{X: (400 - k*d.Width) / 2, Y: 14}, k)
		tile.Write(ink.Vec{X: 4, Y: 10}, 9, ink.Bad, ink.Run{Text: name})
		sheetOf.Put(tile, ink.Vec{X: float64(n%4) * 410, Y: float64(n/4%2) * 545}, 1)
		if n++; n%8 == 0 {
			flush()
		}
	}
}
