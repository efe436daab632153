package tui

import (
	"testing"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/tui/keys"
)

// FuzzKeys plays bytes as keys, pastes and sizes: nothing panics, every frame
// has its size, and the sheet still reads.
func FuzzKeys(f *testing.F) {
	f.Add([]byte("\x01\x02abc"))
	f.Add([]byte{255, 80, 24, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
	f.Add([]byte{27, 28, 29, 30, 31, 32, 33, 'x', 40, 'y', 50, 254, 60, 70})
	var bound []string
	for _, b := range keys.Table() {
		for _, k := range b.Keys {
			// A save would write files, and a name for one could be anything.
			if b.Intent != keys.Save && b.Intent != keys.SaveAs && b.Intent != keys.WritePage && b.Intent != keys.WriteField && b.Intent != keys.WriteTask && b.Intent != keys.Yes {
				bound = append(bound, k)
			}
		}
	}
	at := func(names ...string) (data []byte) {
		for _, n := range names {
			for i, k := range bound {
				if k == n {
					data = append(data, byte(i))
					break
				}
			}
		}
		return data
	}
	f.Add(at("f5", "space", "h", "space", "r", "p", "l", "down", "enter", "b", "f5", "end", "left"))
	f.Add(append(at("f7 s", "ctrl+n", "j"), append([]byte{200, 'z'}, at("enter", "down", "enter", "f5", "space")...)...))
	f.Add(at("f7 s", "down", "right", "f2", "down", "down", "enter", "ctrl+d", "ctrl+z", "ctrl+n", "l", "esc", "ctrl+n", "b", "enter"))
	f.Fuzz(func(t *testing.T, data []byte) {
		const limit = 60 // keys; more finds nothing new and is slow
		text := crane
		switch len(data) % 3 {
		case 1:
			text = boom
		case 2:
			text = beam
		}
		r := newRig(t, text, 80, 24)
		for i := 0; i < len(data) && i < limit; i++ {
			switch b := data[i]; {
			case b == 255 && i+2 < len(data):
				r.send(tea.WindowSizeMsg{Width: int(data[i+1]), Height: int(data[i+2])})
				i += 2
			case b == 254 && i+1 < len(data):
				r.send(tea.PasteMsg{Content: string(data[i+1 : min(i+9, len(data))])})
				i += 8
			case int(b) < len(bound):
				r.keys(bound[b])
			default:
				r.send(tea.KeyPressMsg{Text: string(rune(b)), Code: rune(b)})
			}
			checkFrame(t, r.m)
		}
		if _, err := sheet.Parse([]byte(r.m.history.Current().Text())); err != nil {
			t.Errorf("the sheet does not read any more: %v", err)
		}
	})
}
