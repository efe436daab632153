package tui

import (
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	tea "charm.land/bubbletea/v2"

	"trivet/fixtures/leak"
	"trivet/fixtures/long"
	"trivet/mechanics/problem"
	"trivet/mechanics/problemset"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/tui/keys"
	"trivet/tui/practice"
	"trivet/tui/record"
)

// practising opens a sheet for practice on a screen, with a record in a folder.
func practising(t *testing.T, text string, store record.Store, w, h int) *rig {
	t.Helper()
	s, err := sheet.Parse([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return rigOf(t, Options{Sheet: s, Path: "lamp.toml", Width: w, Height: h, Practice: &practice.Options{Keeping: practice.Keeping{Store: store, Person: "Ada"}}})
}

func records(t *testing.T) record.Store {
	t.Helper()
	store, _, err := record.Open(filepath.Join(t.TempDir(), "record.db"))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { store.Close() })
	return store
}

// enter types an entry and enters it.
func (r *rig) enter(entry string) {
	r.text(entry)
	r.keys("enter")
}

// What is entered stands there with its mark and what is said of it; progress is in the head.
func TestEntriesAreJudged(t *testing.T) {
	r := practising(t, hanging, records(t), 80, 24)
	r.sees("practice: 0 of 2 independent equations", "find T1 and T2", "Nothing yet.")
	for _, c := range []struct{ entry, mark, says, head string }{
		{"ΣFx D: -0.6 T1 + 0.6 T2 = 0", "ok ΣFx D: -0.6 T1 + 0.6 T2 = 0", "This is ΣFx on D.", "1 of 2"},
		{"T1 = T2", "ok T1 = T2", "", "1 of 2"},
		{"ΣFy D: 0.6 T1 + 0.8 T2 = 60", "!  ΣFy D: 0.6 T1 + 0.8 T2 = 60", "the one", "1 of 2"},
		{"ΣFy D: 0.8 T1 + 0.8 T2 = W", "ok ΣFy D: 0.8 T1 + 0.8 T2 = W", "This is ΣFy on D.", "2 of 2"},
		{"T1 = 37", "≈  T1 = 37", "close", "2 of 2"},
		{"T1 =", "?  T1 =", "", "2 of 2"},
		{"T1 = 37.5 N T", "ok T1 = 37.5 N T", "T1 is right.", "2 of 2"},
	} {
		r.enter(c.entry)
		r.sees(c.mark, c.says, "practice: "+c.head)
	}
	r.enter("T2 = 37.5")
	r.sees("done", "The solution")
	r.keys("esc")
	r.sees("ok T2 = 37.5", "T1 (T)")
}

// Once all is right the working is there, behind the student's own equations.
func TestDoneOpensTheWorking(t *testing.T) {
	r := practising(t, hanging, records(t), 120, 60)
	for _, entry := range []string{"ΣFy: 0.8 T1 + 0.8 T2 = 60", "T1 = 37.5", "T2 = 37.5"} {
		r.enter(entry)
	}
	screen := r.screen()
	own, working := strings.Index(screen, "0.8 T1 + 0.8 T2 = 60"), strings.Index(screen, "1  Free body")
	if own < 0 || working < own {
		t.Errorf("the own equation stands at %d, the working at %d in\n%s", own, working, screen)
	}
}

// Work goes on where it was left, without what was taken back, and with it in the record.
func TestPracticeGoesOn(t *testing.T) {
	store := records(t)
	r := practising(t, hanging, store, 80, 24)
	r.enter("ΣFx: T1 = T2")
	r.enter("T2 = 5")
	r.keys("alt+h", "ctrl+z")
	r.sees("entry: T2 = 5")
	r = practising(t, hanging, store, 80, 24)
	r.sees("ok ΣFx: T1 = T2", "hint 1", "1 hint")
	if strings.Contains(r.screen(), "T2 = 5") {
		t.Errorf("what was taken back is there again:\n%s", r.screen())
	}
	events, err := store.Events("Ada")
	if err != nil {
		t.Fatal(err)
	}
	var what []string
	for _, e := range events {
		what = append(what, string(e.What))
	}
	if got := strings.Join(what, " "); got != "entry entry hint undone" {
		t.Errorf("the record has %s", got)
	}
}

// Show me asks first, ends practice and stands in the record.
func TestShowMe(t *testing.T) {
	store := records(t)
	r := practising(t, hanging, store, 120, 36)
	r.enter("show me")
	r.sees("Show the solution? Practice on this problem ends")
	r.keys("n")
	r.sees("practice: 0 of 2")
	r.keys("alt+w", "y")
	r.sees("The solution", "solution shown", "1  Free body")
	events, _ := store.Events("Ada")
	if len(events) != 1 || events[0].What != record.Shown {
		t.Errorf("the record has %v", events)
	}
}

// broken is a record that takes nothing.
type broken struct{ record.Store }

func (broken) Add(string, ...record.Event) error     { return errors.New("the disk is full") }
func (broken) Events(string) ([]record.Event, error) { return nil, nil }

// What the record does not take is not judged: the line is given back, and why is said.
func TestARecordThatTakesNothing(t *testing.T) {
	r := practising(t, hanging, broken{}, 80, 24)
	r.enter("ΣFx: T1 = T2")
	r.sees("entry: ΣFx: T1 = T2", "not judged, since the record cannot be written: the disk is full", "0 of 2", "Nothing yet.")
}

// early is a record that tells when an entry came.
type early struct {
	broken
	added *[]string
}

func (e early) Add(_ string, events ...record.Event) error {
	for _, v := range events {
		*e.added = append(*e.added, v.Text)
	}
	return nil
}

// No judgement shows before its entry is in the record.
func TestAnEntryIsKeptBeforeItIsJudged(t *testing.T) {
	var added []string
	r := practising(t, hanging, early{added: &added}, 80, 24)
	r.text("T1 = 3")
	next, cmd := r.m.Update(press("enter"))
	if m := next.(Model); strings.Contains(m.frame(), "T1 = 3") || len(added) > 0 {
		t.Errorf("it shows before it is kept, %v:\n%s", added, m.frame())
	}
	r.m = next.(Model)
	r.do(cmd)
	if r.sees("!  T1 = 3"); len(added) != 1 {
		t.Errorf("the record has %v", added)
	}
}

// A weight that is typed as a mass stands in the picture as that: the force is for the student to
// find.
func TestThePictureOfPracticeHasLoadsAsTyped(t *testing.T) {
	r := practising(t, "plane = \"xy\"\nasked = \"B\"\n[points]\nA = { at = \"0, 0\", on = \"beam\" }\nB = { at = \"4, 0\", on = \"beam\" }\n"+
		"[bodies]\nbeam = { weight = \"730 kg\", centre = \"(A + B)/2\" }\n[joints]\nA = { kind = \"pin\" }\nB = { kind = \"roller\", normal = \"+y\" }\n", nil, 120, 36)
	r.sees("Wbeam = 730 kg")
	if s := r.screen(); strings.Contains(s, "716") || strings.Contains(s, "7.16") {
		t.Errorf("the weight is worked out:\n%s", s)
	}
}

// What is typed before practice has opened goes to the entry, and not into the sheet.
func TestWhatIsTypedAheadOfPracticeWaitsForIt(t *testing.T) {
	r := newRig(t, hanging, 80, 24)
	before := r.m.history.Current().Text()
	next, open := r.m.Update(press("alt+q"))
	r.m = next.(Model)
	r.text("T1 = 3")
	r.send(tea.PasteMsg{Content: "5"})
	if r.m.history.Current().Text() != before || r.m.cells.Cell != nil {
		t.Errorf("the sheet takes it:\n%s", r.screen())
	}
	r.do(open)
	r.sees("practice: 0 of 2", "entry: T1 = 3")
}

// With other numbers a problem is another one: its work begins anew, and the old one is not lost.
func TestNewNumbersBeginAnew(t *testing.T) {
	store := records(t)
	r := practising(t, hanging, store, 80, 24)
	r.enter("T1 = 37.5")
	other := strings.Replace(hanging, `W = "60 N"`, `W = "80 N"`, 1)
	if o := practising(t, other, store, 80, 24); !strings.Contains(o.screen(), "Nothing yet.") {
		t.Errorf("the work on other numbers is there:\n%s", o.screen())
	}
	words := strings.Replace(hanging, "Lamp on two cables", "A lamp", 1)
	practising(t, words, store, 80, 24).sees("ok T1 = 37.5")
}

// Two sessions of one person share the hints of a set and its end.
func TestTwoSessionsOfOnePerson(t *testing.T) {
	store := records(t)
	one, two := lamps(t, store, time.Now().Add(48*time.Hour)), lamps(t, store, time.Now().Add(48*time.Hour))
	one.keys("enter")
	two.keys("enter")
	one.enter("hint")
	two.enter("hint")
	two.sees("2 of 2 hints")
	one.enter("hint")
	one.sees("the set gives no more hints")
	events, err := store.Events("Ada")
	if err != nil || len(events) != 2 {
		t.Errorf("the record has %d hints (%v)", len(events), err)
	}
}

// A hint that was given stays as it was, whatever is taken back; what is hinted at without a cost
// is told in the foot.
func TestHintsStayAsTheyWereGiven(t *testing.T) {
	store := records(t)
	r := practising(t, hanging, store, 80, 24)
	r.enter("hint")
	r.enter("ΣFx: T1 = T2")
	r.enter("ΣFy: 0.8 T1 + 0.8 T2 = 60")
	r.enter("hint")
	r.sees("All equations that are needed are there", "1 hint")
	r.keys("ctrl+z", "ctrl+u", "ctrl+z", "ctrl+u")
	r.sees("hint 1", "1 hint", "0 of 2")
	again := practising(t, hanging, store, 80, 24)
	if a, b := regexp.MustCompile("hint 1.*").FindString(r.screen()), regexp.MustCompile("hint 1.*").FindString(again.screen()); a != b || a == "" {
		t.Errorf("it was %q, and reads %q when opened again", a, b)
	}
}

// Several lines that are pasted are an entry each, the last one stays on the line.
func TestPastedLinesAreEntered(t *testing.T) {
	r := practising(t, hanging, records(t), 80, 24)
	r.send(tea.PasteMsg{Content: "ΣFx: T1 = T2\r\n\nT1 = 37.5\nT2 ="})
	r.sees("ok ΣFx: T1 = T2", "ok T1 = 37.5", "entry: T2 =")
}

// Who leaves while lines wait for their judgement loses none.
func TestLeavingLosesNothing(t *testing.T) {
	store := records(t)
	r := practising(t, hanging, store, 80, 24)
	var late []tea.Cmd
	for _, entry := range []string{"T1 = 1", "T1 = 2", "T1 = 3"} {
		r.text(entry)
		next, cmd := r.m.Update(press("enter"))
		r.m, late = next.(Model), append(late, cmd)
	}
	next, cmd := r.m.Update(press("esc"))
	r.m = next.(Model)
	for _, c := range append(late, cmd) {
		r.do(c)
	}
	events, err := store.Events("Ada")
	if err != nil || len(events) != 3 {
		t.Errorf("the record has %d entries (%v)", len(events), err)
	}
}

const setOfLamps = `title = "Week 4"
closes = "%s"
[rules]
hints = 2
show = "answered"
[problems]
lamp = { sheet = "lamp.toml", points = 4, variant = true, needs = "equations values" }
`

// lamps opens a set of one problem.
func lamps(t *testing.T, store record.Store, closes time.Time) *rig {
	t.Helper()
	text := fmt.Sprintf(setOfLamps, closes.Format("2006-01-02 15:04"))
	s, err := sheet.Parse([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	set, faults := problemset.Read(s, "week4.toml", time.Local)
	if len(faults) > 0 {
		t.Fatal(faults[0])
	}
	ranged := strings.Replace(hanging, `W = "60 N"`, `W = { value = "60 N", range = "10 N .. 50 N", step = "1 N" }`, 1)
	return rigOf(t, Options{Width: 80, Height: 24, Practice: &practice.Options{
		Keeping: practice.Keeping{Store: store, Person: "Ada"}, Set: set,
		Read: func(string) (*sheet.Sheet, error) { return sheet.Parse([]byte(ranged)) },
	}})
}

// A set is listed with how far one has come; its rules bound the hints and hold the solution
// back, and a problem that is done has its points.
func TestASetIsPractised(t *testing.T) {
	store := records(t)
	r := lamps(t, store, time.Now().Add(48*time.Hour))
	r.sees("Week 4", "open until ", "▸Lamp on two cables", "4 points")
	r.keys("enter")
	r.sees("0 of 2 hints")
	given := regexp.MustCompile(`W: (\d+) N`).FindStringSubmatch(r.screen())
	if given == nil || given[1] == "60" {
		r.keys("ctrl+w", "pgdown")
		if given = regexp.MustCompile(`W: (\d+) N`).FindStringSubmatch(r.screen()); given == nil || given[1] == "60" {
			t.Fatalf("nobody's own values:\n%s", r.screen())
		}
	}
	r.enter("hint")
	r.enter("hint")
	r.enter("hint")
	r.sees("2 of 2 hints", "the set gives no more hints: 2 hints a problem")
	r.keys("alt+w")
	r.sees("the worked solution opens once you have answered the problem")
	r.keys("esc")
	r.sees("▸Lamp on two cables", "0 entries, 2 hints")
	r.keys("enter")
	var w float64
	fmt.Sscan(given[1], &w)
	r.enter("ΣFx: T1 = T2")
	r.enter("ΣFy: 0.8 T1 + 0.8 T2 = W")
	r.enter(fmt.Sprintf("T1 = %.4g", w/1.6))
	r.enter(fmt.Sprintf("T2 = %.4g", w/1.6))
	r.sees("done", "The solution")
	r.keys("esc", "esc")
	r.sees("done, 3.2 of 4 points") // two tenths less, for two hints
	if r.keys("esc"); !r.quit {
		t.Error("esc on the list does not leave")
	}
}

// A set of one's own stands among what was opened last, with how far one has come and until when it
// is open; enter lists its problems.
func TestASetOfOnesOwnStandsOnTheStartScreen(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "week4.toml")
	for name, text := range map[string]string{"week4.toml": fmt.Sprintf(setOfLamps, "2999-12-08 23:59"), "lamp.toml": strings.Replace(hanging, `W = "60 N"`, `W = { value = "60 N", range = "10 N .. 50 N", step = "1 N" }`, 1)} {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	env := []string{"HOME=" + folder, "XDG_DATA_HOME=" + filepath.Join(folder, "data")}
	r := rigOf(t, Options{Start: true, Recent: []string{path}, Env: env, Width: 120, Height: 36})
	r.sees("Opened last", "week4.toml: 0 of 1 done, open until 8 December 2999", "Week 4", "1 problem to practise. Enter lists them.")
	r.keys("enter")
	r.sees("▸Lamp on two cables", "4 points")
	r.keys("enter")
	r.sees("practice: 0 of 2")
	r.keys("esc", "esc")
	r.sees("choose a sheet to start from")
}

// unlike is a sheet whose values have figures that nothing typed has.
const unlike = `plane = "xy"
asked = "Ax Ay B"

[points]
A = { at = "0, 0", on = "beam" }
C = { at = "1.7, 0", on = "beam" }
D = { at = "4.1, 0", on = "beam" }
B = { at = "6.1, 0", on = "beam" }

[lines]
P = { kind = "force", at = "C", along = "(5, -7)", magnitude = "523 N" }
Q = { kind = "weight", at = "D", magnitude = "617 N" }

[joints]
A = { kind = "pin" }
B = { kind = "roller", normal = "+y" }
`

// entriesOfAllKinds are one right sum, without which little is judged for long, and then such as
// are wrong or unfinished, one of each form.
var entriesOfAllKinds = []string{
	"ΣFx: Ax + 5 / sqrt(74) * P = 0",
	"cut beam: Ax", "cut beam: Ax Ay B P Q", "cut beam: B pulls", "u P = (1, 0)", "F P = (1, 2) N", "F P = P (1, 0)", "M A P = 3 N m", "M A Q = 2000 N m", "|r P| = 3 m",
	"angle(P, Q) = 4 deg", "ΣFx: Ax = 0", "ΣFx beam: Ax + P = 0", "ΣFy: Ay = B", "ΣFy: Ay + B - Q - P = 0", "ΣM A: B = 0", "ΣM A: 6.1 B = 4.1*617", "ΣM B: 6.1 Ay = 3",
	"ΣM D: Ay = B", "Ax = 300", "Ax = -300 N", "Ay = 1", "B = 100", "B = -540 N", "B = 540 kN", "Ax = Ay", "2*B = 3", "Ay =", "B = ?", "determinate", "indeterminate 1",
	"inadmissible", "no equilibrium", "A slips", "tips about D", "0 = 0", "Ax", "B.", "nonsense",
}

// Whatever is entered in practice, and whatever key is pressed, nothing of the solution shows,
// neither in panes nor in lines.
func TestNothingOfTheSolutionShowsInPractice(t *testing.T) {
	s, err := sheet.Parse([]byte(unlike))
	if err != nil {
		t.Fatal(err)
	}
	p, _ := problem.Read(s)
	sol := statics.Solve(p)
	var secret []float64
	for _, x := range sol.X {
		secret = append(secret, x.Value)
	}
	secret = append(secret, 523*5/math.Hypot(5, 7), 523*7/math.Hypot(5, 7)) // the components of P
	l := listen(t, Options{Sheet: s, Path: "beam.toml", Practice: &practice.Options{}})
	seen := 0
	look := func(did, screen string) {
		seen++
		for _, v := range secret {
			if leak.Shows(screen, v, 3) {
				t.Fatalf("after %s, %.4g shows in\n%s", did, v, screen)
			}
		}
		if sense := leak.Sense(screen); sense != "" {
			t.Fatalf("after %s the sense %q shows in\n%s", did, sense, screen)
		}
	}
	sizes := [][2]int{{80, 24}, {120, 36}, {200, 60}}
	for _, size := range sizes[:long.Of(1, len(sizes))] {
		r := practising(t, unlike, nil, size[0], size[1])
		for _, entry := range entriesOfAllKinds {
			r.enter(entry)
			look(entry, r.screen()+r.m.View().WindowTitle)
		}
		for _, mode := range []keys.Mode{keys.OnPractice, keys.OnTask, keys.OnDepicted} {
			for r.m.help == nil && r.m.mode() != mode {
				r.keys("ctrl+w")
			}
			for _, b := range keys.Table() {
				for _, k := range b.Keys {
					if b.Intent == keys.Quit || b.Intent == keys.AskHint || b.Intent == keys.Yes {
						continue
					}
					r.keys(k)
					look(fmt.Sprintf("%s (%s)", k, b.Help), r.screen())
					r.m.help, r.m.ask = nil, nil // from wherever that led
					if r.m.front.Desk == nil {
						r = practising(t, unlike, nil, size[0], size[1])
					}
				}
			}
		}
		r = practising(t, unlike, nil, size[0], size[1])
		for range 3 { // the last stage has the equation
			r.enter("hint")
			look("hint", r.screen())
		}
	}
	for _, entry := range append(entriesOfAllKinds, "hint", "hint", "hint") {
		l.lines = nil
		l.enterAloud(entry)
		l.keys("ctrl+w", "down", "end", "home", "ctrl+w", "up", "ctrl+w")
		look(entry, strings.Join(l.lines, "\n"))
	}
	if seen < 500 {
		t.Errorf("only %d screens were looked at", seen)
	}
}

// enterAloud types an entry on the linear screen.
func (l *listener) enterAloud(entry string) {
	for _, c := range entry {
		l.keys(strings.Replace(string(c), " ", "space", 1))
	}
	l.keys("enter")
}
