package tui

import (
	"reflect"
	"strings"
	"testing"

	tea "charm.land/bubbletea/v2"
	"github.com/charmbracelet/x/ansi"

	"trivet/mechanics/sheet"
	"trivet/tui/keys"
)

// hanging is a lamp of 60 N at D on two cables, in the plane: r = (-3, 4) and
// (3, 4), so each carries 60 / (2 * 0.8) = 37.5 N.
const hanging = `title = "Lamp on two cables"
plane = "xy"
asked = "T1 T2"

[given]
W = "60 N"

[points]
D = { at = "0, 0", on = "particle" }
A = "-3, 4"
B = "3, 4"

[lines]
T1 = { kind = "cable", path = "D A", limit = "50 N" }
T2 = { kind = "cable", path = "D B" }
F = { kind = "force", at = "D", along = "-y", magnitude = "W" }

[answers]
T1 = "37.5 N"
`

// rig drives a model by messages and does its commands at once.
type rig struct {
	t    testing.TB
	m    Model
	quit bool
}

func newRig(t testing.TB, text string, w, h int) *rig {
	t.Helper()
	s, err := sheet.Parse([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return rigOf(t, Options{Sheet: s, Path: "lamp.toml", Width: w, Height: h})
}

func rigOf(t testing.TB, o Options) *rig {
	r := &rig{t: t, m: New(o)}
	r.do(r.m.Init())
	return r
}

func (r *rig) send(msg tea.Msg) {
	next, cmd := r.m.Update(msg)
	r.m = next.(Model)
	r.do(cmd)
}

// do runs commands until none is left.
func (r *rig) do(cmd tea.Cmd) {
	if cmd == nil {
		return
	}
	switch msg := cmd().(type) {
	case nil:
	case tea.QuitMsg:
		r.quit = true
	case tea.BatchMsg:
		for _, c := range msg {
			r.do(c)
		}
	default:
		r.send(msg)
	}
}

// named are the keys that are not characters.
var named = map[string]rune{
	"enter": tea.KeyEnter, "tab": tea.KeyTab, "esc": tea.KeyEscape, "up": tea.KeyUp, "down": tea.KeyDown,
	"left": tea.KeyLeft, "right": tea.KeyRight, "home": tea.KeyHome, "end": tea.KeyEnd, "pgup": tea.KeyPgUp,
	"pgdown": tea.KeyPgDown, "delete": tea.KeyDelete, "backspace": tea.KeyBackspace, "insert": tea.KeyInsert,
	"space": tea.KeySpace, "f1": tea.KeyF1, "f2": tea.KeyF2, "f3": tea.KeyF3, "f4": tea.KeyF4, "f5": tea.KeyF5, "f6": tea.KeyF6, "f7": tea.KeyF7, "f8": tea.KeyF8, "f9": tea.KeyF9,
}

// press makes the message of a key by its name in the table.
func press(name string) tea.KeyPressMsg {
	var k tea.Key
	for {
		before, after, ok := strings.Cut(name, "+")
		if !ok || before == "" {
			break
		}
		k.Mod |= map[string]tea.KeyMod{"ctrl": tea.ModCtrl, "alt": tea.ModAlt, "shift": tea.ModShift}[before]
		name = after
	}
	if code, ok := named[name]; ok {
		k.Code = code
		if name == "space" && k.Mod == 0 {
			k.Text = " "
		}
		return tea.KeyPressMsg(k)
	}
	k.Code = []rune(name)[0]
	if k.Mod == 0 {
		k.Text = name
	}
	return tea.KeyPressMsg(k)
}

func (r *rig) keys(names ...string) {
	r.t.Helper()
	for _, n := range strings.Fields(strings.Join(names, " ")) {
		r.send(press(n))
	}
}

func (r *rig) text(s string) {
	for _, c := range s {
		r.keys(strings.Replace(string(c), " ", "space", 1))
	}
}

func (r *rig) screen() string { return ansi.Strip(r.m.frame()) }

func (r *rig) sees(pieces ...string) {
	r.t.Helper()
	s := r.screen()
	for _, p := range pieces {
		if !strings.Contains(s, p) {
			r.t.Errorf("the screen does not hold %q:\n%s", p, s)
		}
	}
}

// live: the pane of this title has the keys.
func (r *rig) live(title string) {
	r.t.Helper()
	if got := r.m.heading(r.m.Focus); !strings.HasPrefix(got, title) {
		r.t.Errorf("%s has the keys, want %s", got, title)
	}
}

func (r *rig) holds(ref sheet.Ref, want string) {
	r.t.Helper()
	c, ok := r.m.history.Current().Cell(ref)
	if want == "" && ok || c.Text != want {
		r.t.Errorf("%v is %q, want %q", ref, c.Text, want)
	}
}

func TestPressSpeaksTheTablesNames(t *testing.T) {
	for _, b := range keys.Table() {
		for _, k := range b.Keys {
			if got := press(k).String(); got != k {
				t.Errorf("press(%q) is %q", k, got)
			}
		}
	}
}

func TestEveryBoundKeyReachesAHandler(t *testing.T) {
	for mode, reach := range map[keys.Mode][]string{
		keys.OnCells: nil, keys.InCell: {"f2"}, keys.InList: {"f7 f", "right", "f2"}, keys.OnChoice: {"f7 s", "ctrl+n"}, keys.OnBoard: {"f5"}, keys.OnSteps: {"f5", "l"}, keys.OnResult: {"alt+y"}, keys.OnPicture: {"alt+i"},
		keys.OnName: {"ctrl+o"}, keys.OnQuestion: {"delete", "ctrl+q"}, keys.OnHelp: {"?"}, keys.OnStart: nil,
		keys.OnSearch: {"ctrl+f"}, keys.OnHelpSearch: {"?", "/"}, keys.OnPalette: {"ctrl+k"}, keys.InWords: {"f7 g", "s"}, keys.OnSettings: {"alt+s"}, keys.InSetting: {"f9", "enter"},
		keys.OnPractice: {"alt+q"}, keys.OnTask: {"alt+q", "ctrl+w"}, keys.OnDepicted: {"alt+q", "ctrl+w", "ctrl+w"},
	} {
		for _, b := range keys.Table() {
			for _, k := range b.Keys {
				if got, ok := keys.Find(mode, k); !ok || !reflect.DeepEqual(got, b) {
					continue
				}
				r := newRig(t, hanging, 120, 36)
				if mode == keys.OnStart {
					r = rigOf(t, Options{Start: true, Width: 120, Height: 36})
				} else {
					r.keys("right")
				}
				r.keys(reach...)
				if got := r.m.mode(); got != mode {
					t.Fatalf("%v leads to mode %d, want %d", reach, got, mode)
				}
				m := r.m
				if _, ok := m.handle(b.Intent); !ok {
					t.Errorf("mode %d: nothing handles %s (%s)", mode, k, b.Help)
				}
			}
		}
	}
}
