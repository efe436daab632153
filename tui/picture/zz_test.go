package picture

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"
	"time"

	"math"
	"trivet/mechanics/figure"
	"trivet/mechanics/problem"
	"trivet/mechanics/scene"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/tui/grid"
)

func TestZZ(t *testing.T) {
	if os.Getenv("ZZ") == "" {
		t.Skip()
	}
	a, _ := filepath.Glob("../../fixtures/start/" + os.Getenv("ZZ") + ".toml")
	b, _ := filepath.Glob("../../fixtures/published/*/" + os.Getenv("ZZ") + ".toml")
	for _, f := range append(a, b...) {
		data, _ := os.ReadFile(f)
		s, err := sheet.Parse(data)
		if err != nil {
			t.Fatal(err)
		}
		p, _ := problem.Read(s)
		sol := statics.Solve(p)
		sc := scene.System(p, sol, scene.Options{Reactions: true})
		for _, ascii := range []bool{false, true} {
			for _, size := range [][2]int{{30, 18}, {56, 15}, {61, 40}} {
				g := grid.New(size[0], size[1])
				at := time.Now()
				Draw(g.All(), &sc, figure.Space(&sc, -math.Pi/6, math.Pi/9), Options{ASCII: ascii, Zoom: 1})
				el := time.Since(at)
				fmt.Println(f, size, el)
				fmt.Println(g.Render(nil))
			}
		}
	}
}
