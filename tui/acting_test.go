package tui

import (
	"fmt"
	"math/rand/v2"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"trivet/mechanics/printable"
	"trivet/mechanics/sheet"
	"trivet/tui/keys"
)

// lampThatActs is the lamp with every character that acts on a terminal in its texts, and
// in its names all that a name may hold.
func lampThatActs(t *testing.T) *sheet.Sheet {
	t.Helper()
	var all, name strings.Builder
	for r := rune(0); r <= 0xfeff; r++ {
		if printable.Acts(r) {
			fmt.Fprintf(&all, `\u%04X`, r)
			if len(strings.Fields("a"+string(r)+"b")) == 1 {
				fmt.Fprintf(&name, `\u%04X`, r)
			}
		}
	}
	text := strings.NewReplacer("Lamp", "Lamp #", "D A", "D@ A@", "D B", "D@ B", `"D"`, `"D@"`, "\nD =", "\n\"D@\" =", "\nA =", "\n\"A@\" =", "T1 =", `"T1@" =`, `asked = "T1`, `asked = "T1@`).Replace(hanging)
	text = strings.NewReplacer("#", "\\u001B[2J"+all.String(), "@", name.String()).Replace(text)
	text = strings.Replace(text, "[given]", "statement = \"Find "+all.String()+" both.\"\n[given]\nz = \"1 m "+all.String()+"\"", 1)
	s, err := sheet.Parse([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// lineMoves are the sequences that the linear screen writes itself, and paneColours those of the
// full one.
var (
	lineMoves   = regexp.MustCompile("\r\x1b\\[K|\x1b\\[K|\x1b\\[[0-9]*C|\b|\r\n")
	paneColours = regexp.MustCompile("\x1b\\[[0-9;:]*m")
)

// Whatever a sheet holds, nothing of it acts on a terminal: in lines and in panes, read
// and typed at.
func TestNothingOfASheetActsOnTheScreen(t *testing.T) {
	folder := t.TempDir()
	opt := Options{Sheet: lampThatActs(t), Path: filepath.Join(folder, "a\x1b[2J\u202e\x9b2J.toml"), Width: 120, Height: 36}
	l, r := listen(t, opt), rigOf(t, opt)
	// A save would write files, and a session that was left shows nothing.
	not := map[keys.Intent]bool{keys.Save: true, keys.WritePage: true, keys.WriteField: true, keys.WriteTask: true, keys.Yes: true, keys.Quit: true}
	var all []string
	for _, b := range keys.Table() {
		for _, k := range b.Keys {
			if always, _ := keys.Find(keys.OnCells, k); !not[b.Intent] && !not[always.Intent] {
				all = append(all, k)
			}
		}
	}
	typed := false
	random := rand.New(rand.NewPCG(17, 18))
	for n := range 2000 {
		k := []string{"f2", "f7 g", "alt+p", "f7 f", "down", "right", "home", "end", "left", "esc"}[random.IntN(10)]
		if random.IntN(2) == 0 {
			k = all[random.IntN(len(all))]
		}
		l.written.Reset()
		l.keys(k)
		r.keys(k)
		if said := lineMoves.ReplaceAllString(l.written.String(), ""); strings.ContainsFunc(said, printable.Acts) {
			t.Fatalf("key %d, %s, writes a line that acts: %.200q", n, k, said)
		}
		typed = typed || l.m.cells.Cell != nil && strings.ContainsFunc(l.m.cells.Cell.Text, printable.Acts)
		v := r.m.View()
		if shown := strings.ReplaceAll(paneColours.ReplaceAllString(v.Content, ""), "\n", "") + v.WindowTitle; strings.ContainsFunc(shown, printable.Acts) {
			t.Fatalf("key %d, %s, draws what acts: %q", n, k, shown)
		}
	}
	if !typed {
		t.Error("no cell that acts was opened")
	}
}
