package tui

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"sync/atomic"
	"time"

	tea "charm.land/bubbletea/v2"

	"trivet/fixtures"
	"trivet/mechanics/diag"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/tui/journal"
	"trivet/tui/keys"
	"trivet/tui/session"
	"trivet/tui/settings"
)

// dice makes what happens at a workbench by chance, the same for the same seed.
type dice struct {
	*rand.Rand
	next *[]string // keys of a way that was begun
}

func newDice(seed uint64) dice {
	return dice{rand.New(rand.NewPCG(seed, 5)), new([]string)}
}

// ways lead where chance seldom does, for people go there.
var ways = [...]string{"esc f7 s ctrl+n", "esc f5 l", "esc f5 space h space", "esc f7 f right f2", "esc alt+i g", "esc alt+y down", "esc alt+s enter", "esc f7 g s", "ctrl+q"}

func pick[T any](d dice, list ...T) T { return list[d.IntN(len(list))] }

// one is true once in n times.
func (d dice) one(n int) bool { return d.IntN(n) == 0 }

// The sizes of the storm; some are larger or nothing at all.
func (d dice) size() tea.WindowSizeMsg {
	w, h := 20+d.IntN(281), 5+d.IntN(96)
	switch d.IntN(12) {
	case 0:
		w, h = 80, 24
	case 1:
		w, h = pick(d, 0, 1, 2, 59, 60, 61, 300, 500), pick(d, 0, 1, 2, 15, 16, 17, 100, 200)
	case 2, 3, 4:
		w, h = 60+d.IntN(60), 16+d.IntN(24)
	}
	return tea.WindowSizeMsg{Width: w, Height: h}
}

// event is the next thing that happens to a model.
func (d dice) event(m Model) tea.Msg {
	if way := *d.next; len(way) > 0 {
		*d.next = way[1:]
		return press(way[0])
	}
	switch n := d.IntN(100); {
	case n < 2:
		*d.next = strings.Fields(ways[d.IntN(len(ways))])
		return tick{}
	case n < 42:
		return d.bound(m.mode().Scopes()...)
	case n < 50:
		return d.bound()
	case n < 66:
		return typedKey(d.character())
	case n < 72:
		return tea.KeyPressMsg{Text: d.word(m), Code: tea.KeyExtended}
	case n < 77:
		return tea.PasteMsg{Content: d.paste(m)}
	case n < 92:
		return d.mouse(m)
	case n < 96:
		return d.size()
	case n < 98:
		return d.disk(m)
	}
	return pick[tea.Msg](d, tea.FocusMsg{}, tea.BlurMsg{}, tick{}, tea.BackgroundColorMsg{}, tea.KeyReleaseMsg{}, tea.ColorProfileMsg{})
}

// bound is a key of some scopes, or of any. Leaving is tried less often.
func (d dice) bound(in ...keys.Scope) tea.Msg {
	var list []keys.Binding
	for _, b := range keys.Table() {
		for _, s := range in {
			if b.Scope == s {
				list = append(list, b)
			}
		}
	}
	if in == nil {
		list = keys.Table()
	}
	b := pick(d, list...)
	if b.Intent == keys.Quit && !d.one(8) {
		b = pick(d, list...)
	}
	return press(pick(d, b.Keys...))
}

func typedKey(c string) tea.Msg {
	return tea.KeyPressMsg{Text: c, Code: []rune(c)[0]}
}

func (d dice) character() string {
	if d.one(8) {
		return pick(d, "e\u0301", "👩‍👩‍👧", "\u202e", "\u200b", "\U0001F1E9\U0001F1EA", "\ufffd", "\x1b", "\x00", "\x7f", "\u00ad", "ﷺ")
	}
	if d.one(6) {
		return pick(d, "°", "±", "Σ", "×", "起", "é", "½", "²", "µ", "\t", "\"", "'", "\\")
	}
	return string("0123456789.,,,  -+*/()=?ABCDTWxyzknm"[d.IntN(36)])
}

// word is what a person might type into a cell, or a name that the sheet has.
func (d dice) word(m Model) string {
	if rows := m.history.Current().Table(pick(d, "points", "lines", "given", "joints")).Rows; len(rows) > 0 && d.one(2) {
		return rows[d.IntN(len(rows))].Name
	}
	return pick(d, "0, 1, 3", "2*T1", "1 kN", "3 ft 6 in", "5'-6 1/2\"", "sqrt(", "1/0", "1e400", "polar(30 deg)", "dir(A, B)", "-z", "D A", "A P B",
		"?", "6 m ± 2 cm", "particle", "boom", "cable", "pin", "fixed", "20 kg", "3 m + 2 N", "2 kN/m .. 4 kN/m", "xy", "lbf", "lamp.toml", "out.pdf", "a/b.toml", "T1.x", "Σ", "起重机")
}

func (d dice) paste(m Model) string {
	var b strings.Builder
	for range 1 + d.IntN(4) {
		for range 1 + d.IntN(4) {
			b.WriteString(d.word(m))
			b.WriteString(pick(d, "\t", " ", ""))
		}
		b.WriteString(pick(d, "\n", "\r\n", "\r", ""))
	}
	switch d.IntN(12) {
	case 0:
		return strings.Repeat(d.word(m)+" ", 400)
	case 1:
		return "\x1b[2J\x1b]0;x\a\x9b31m\xff\xfe\x00" + b.String()
	case 2:
		return ""
	}
	return b.String()
}

func (d dice) mouse(m Model) tea.Msg {
	at := tea.Mouse{X: d.IntN(m.w+4) - 2, Y: d.IntN(m.h+4) - 2, Button: tea.MouseLeft}
	if m.drag != nil && !d.one(4) {
		at.X, at.Y = m.drag.At.X+d.IntN(5)-2, m.drag.At.Y+d.IntN(5)-2
		if d.one(3) {
			return tea.MouseReleaseMsg(at)
		}
		return tea.MouseMotionMsg(at)
	}
	switch d.IntN(8) {
	case 0:
		at.Button = pick(d, tea.MouseRight, tea.MouseMiddle, tea.MouseNone, tea.MouseBackward)
		return tea.MouseClickMsg(at)
	case 1:
		return tea.MouseReleaseMsg(at)
	case 2:
		return tea.MouseMotionMsg(at)
	case 3, 4:
		at.Button = pick(d, tea.MouseWheelUp, tea.MouseWheelDown, tea.MouseWheelLeft, tea.MouseWheelRight)
		return tea.MouseWheelMsg(at)
	}
	return tea.MouseClickMsg(at)
}

// disk is what another program did to the sheet's file.
func (d dice) disk(m Model) tea.Msg {
	msg := session.Seen{Path: m.file.Path, Stamp: sheet.Stamp{Time: time.Unix(int64(d.IntN(1e9)), 0)}}
	switch d.IntN(4) {
	case 0:
		msg.Gone = true
	case 1:
		msg.Err = diag.New("the file may not be read", "ask its owner")
	default:
		msg.Sheet = d.sheet()
	}
	return msg
}

// sheet is one to work on, of every kind.
func (d dice) sheet() *sheet.Sheet {
	starts := fixtures.Starts()
	text := pick(d, crane, beam, boom, hanging, fixtures.Blanks()[0].Text, fixtures.Blanks()[1].Text, "", strings.Replace(crane, "Wall crane", "Wändkran 起重机", 1),
		starts[d.IntN(len(starts))].Text, rows(40))
	s, err := sheet.Parse([]byte(text))
	if err != nil {
		panic(err)
	}
	return s
}

// rows is a sheet of many points.
func rows(n int) string {
	var b strings.Builder
	b.WriteString("title = \"Many points\"\n[points]\n")
	for i := range n {
		fmt.Fprintf(&b, "P%d = \"%d m, %d m, 0\"\n", i, i%25, i/25)
	}
	return b.String()
}

// options are those of a session: with a journal or without, at the start or in
// a sheet. Saving goes nowhere, and sometimes wrong.
func (d dice) options(state string) Options {
	size := d.size()
	o := Options{
		Sheet: d.sheet(), Path: pick(d, "lamp.toml", ""), Start: d.one(5), Recent: []string{"/nowhere/起.toml"}, ASCII: d.one(8),
		Journal: d.one(2), Env: []string{"XDG_STATE_HOME=" + pick(d, state, "/dev/null"), "LANG=" + pick(d, "C.UTF-8", "C")},
		Width: size.Width, Height: size.Height,
	}
	var turn atomic.Int32 // since commands run beside the rest
	o.Save = func(string, *sheet.Sheet, sheet.Stamp, bool) (sheet.Stamp, error) {
		return sheet.Stamp{Time: time.Unix(1, 0)}, refusal(turn.Add(1))
	}
	if likes := settings.Defaults(); d.one(2) {
		o.Settings = &likes
		o.Keep = func(settings.Settings, settings.Settings) error { return refusal(turn.Add(1)) }
	}
	o.Page = func(session.Page, string, string, *statics.Solution, *sheet.Sheet, bool) error {
		return refusal(turn.Add(1))
	}
	return o
}

// left is work that an earlier session is said to have left.
func (d dice) left() []journal.Offer {
	s := d.sheet()
	return []journal.Offer{{When: time.Unix(0, 0), Text: s.Text(), Changes: sheet.Diff(d.sheet(), s)}, {Text: pick(d, crane, "not a sheet")}}
}

// refusal is what becomes of a save or a page.
func refusal(turn int32) error {
	switch turn % 4 {
	case 1:
		return &sheet.ChangedError{Time: time.Unix(0, 0)}
	case 2:
		return diag.New("the disk is full, so nothing was changed", "make room")
	}
	return nil
}
