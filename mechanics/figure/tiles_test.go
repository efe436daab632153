package figure

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"trivet/mechanics/drawing"
)

// tiles writes the figures of all sheets, for a person to look at:
//
//	go test ./mechanics/figure -run TestTiles -tiles FOLDER
var tiles = flag.String("tiles", "", "the folder to write sheets of all figures to, as PNG")

func TestTiles(t *testing.T) {
	if *tiles == "" {
		t.Skip("no -tiles")
	}
	const columns, rows, width, height, dpi = 4, 3, 420, 300, 90
	var page drawing.Drawing
	n, pages := 0, 0
	write := func() {
		if n == 0 {
			return
		}
		page.Width, page.Height = columns*width, rows*height
		data, err := drawing.PNG(page, dpi)
		if err == nil {
			err = os.WriteFile(filepath.Join(*tiles, fmt.Sprintf("figures-%02d.png", pages)), data, 0o644)
		}
		if err != nil {
			t.Fatal(err)
		}
		page, n, pages = drawing.Drawing{}, 0, pages+1
	}
	figures(t, func(name string, d drawing.Drawing) {
		const head = 14
		at := drawing.Vec{X: float64(n%columns) * width, Y: float64(n/columns) * height}
		page.Put(d, at.Add(drawing.Vec{Y: head}), min(1, (width-10)/d.Width, (height-head-6)/d.Height))
		page.Write(at.Add(drawing.Vec{X: 2, Y: 10}), 9, drawing.Bad, drawing.Run{Text: strings.TrimSuffix(name, ".toml")})
		if n++; n == columns*rows {
			write()
		}
	})
	write()
}
