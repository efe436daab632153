package practice

import (
	"fmt"
	"slices"
	"strings"
	"sync/atomic"
	"unicode"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/doc"
	"trivet/mechanics/problem"
	"trivet/mechanics/report"
	"trivet/mechanics/say"
	"trivet/mechanics/scene"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/mechanics/tutor"
	"trivet/mechanics/working"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/picture"
	"trivet/tui/results"
	"trivet/tui/session"
	"trivet/tui/text"
)

// Desk is a problem being practised: the task, the picture, the work and the line that is
// typed. It is a value: what is done gives the next one. What it draws from has no solution in it
// until that may be seen.
type Desk struct {
	Problem *problem.Problem
	State
	Line text.Line

	work    *Work
	task    *document
	solved  *document              // nil: it does not show
	typed   func(sheet.Ref) string // what a cell has of a load, which the picture says as it is typed
	names   []string
	waiting []tea.Cmd // what was asked for while something is being judged
	busy    bool
	recall  int // entries back from the last; 0: none
	pane    pane
	large   bool
	scroll  [panes]int
	read    int // the line of the task that was read, where it is read aloud
	cam     picture.Camera
	drawn   *scene.Scene
	sketch  *picture.Kept
}

// document is what is read at a desk: the task, or one's own work with the worked solution behind it.
type document struct {
	blocks []doc.Block
	steps  *results.Steps       // nil: none stand behind the blocks
	laid   atomic.Pointer[laid] // as it was drawn last
}

// laid is a document in lines of a width.
type laid struct {
	w     int
	ascii bool
	lines text.Lines
}

// in gives the document in lines of a width.
func (d *document) in(w int, ascii bool) text.Lines {
	if l := d.laid.Load(); l != nil && l.w == w && l.ascii == ascii {
		return l.lines
	}
	var lines text.Lines
	lines.Laid(text.Layout(w, 0, ascii), d.blocks)
	if d.steps != nil {
		lines = append(lines, d.steps.All(w, ascii)...)
	}
	d.laid.Store(&laid{w, ascii, lines})
	return lines
}

// pane is a part of the desk.
type pane int

// The panes, in the order in which a key goes through them. Solution takes the place of task.
const (
	workPane pane = iota
	taskPane
	picturePane
	panes
)

// Told is what became of something done at a desk.
type Told struct {
	work   *Work
	state  State
	Says   string // in words, for whoever sees no pane
	Bad    bool
	Loud   bool   // no pane shows it
	Line   string // to be mended
	solved *document
}

// Open begins at a desk, with the work as far as it is done.
func Open(keep Keeping, task Task, s *sheet.Sheet, sol *statics.Solution) (Desk, error) {
	w, err := Begin(keep, task, sol)
	d := Desk{Problem: sol.Problem, work: w, task: &document{blocks: report.Task(sol.Problem, s)}, typed: report.TypedLoad(sol.Problem, s), names: namesOf(sol.Problem), cam: picture.NewCamera()}
	d.take(w.State())
	if d.Done && task.MayShow(true) || d.Shown {
		d.solved = w.solve()
	}
	return d, err
}

// namesOf are the names that an entry may contain.
func namesOf(p *problem.Problem) (all []string) {
	for _, u := range p.Unknowns {
		all = append(all, u.Name)
	}
	for _, l := range p.Lines {
		all = append(all, l.Name)
	}
	for _, q := range p.Points {
		all = append(all, q.Name)
	}
	for _, b := range p.Bodies {
		all = append(all, b.Name)
	}
	for _, g := range p.Givens {
		all = append(all, g.Name)
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// take takes a state, and draws what was found into the picture.
func (d *Desk) take(s State) {
	d.State = s
	found := &statics.Solution{Problem: d.Problem, X: make([]statics.Unknown, len(d.Problem.Unknowns))}
	for i, x := range s.Found {
		found.X[i] = statics.Unknown{Value: x, Fixed: true}
	}
	drawn := scene.System(d.Problem, found, scene.Options{Reactions: true, Typed: d.typed})
	d.drawn, d.sketch = &drawn, &picture.Kept{}
}

// Take receives what became of something done here, and goes on with what waits.
func (d Desk) Take(t Told) (Desk, tea.Cmd) {
	if t.work != d.work {
		return d, nil
	}
	d.busy = false
	d.take(t.state)
	d.scroll[workPane] = 0
	if t.Line != "" && d.Line.Text == "" {
		d.Line = text.NewLine(t.Line)
	}
	if t.solved != nil {
		d.solved, d.pane, d.scroll[taskPane], d.read = t.solved, taskPane, 0, 0
	}
	if len(d.waiting) == 0 {
		return d, nil
	}
	next := d.waiting[0]
	d.waiting = d.waiting[1:]
	d.busy = true
	return d, next
}

// queue has something done once all before it is.
func (d Desk) queue(do tea.Cmd) (Desk, tea.Cmd, string, Wish) {
	switch {
	case len(d.waiting) >= mostWaiting:
		return d, nil, "what was entered before is still being judged", Nothing
	case d.busy:
		d.waiting = append(slices.Clone(d.waiting), do)
		return d, nil, "", Nothing
	}
	d.busy = true
	return d, do, "", Nothing
}

// Wish is what is asked for at a desk and is not its own to do.
type Wish int

// The wishes.
const (
	Nothing Wish = iota
	Leave
	AskShow // whether the solution is to be shown
)

// Do does an intent on a screen w by h; says is a word about it.
func (d Desk) Do(i keys.Intent, w, h int) (_ Desk, cmd tea.Cmd, says string, wish Wish) {
	switch i {
	case keys.Cancel:
		if d.pane != workPane || d.large {
			d.pane, d.large = workPane, false
			return d, nil, "", Nothing
		}
		return d, nil, "", Leave
	case keys.NextPane:
		d.pane = (d.pane + 1) % panes
	case keys.PrevPane:
		d.pane = (d.pane + panes - 1) % panes
	case keys.Enlarge:
		d.large = !d.large
	case keys.Commit:
		return d.entered(w, h)
	case keys.AskHint:
		return d.queue(d.work.hinted())
	case keys.Undo:
		return d.queue(d.work.undone())
	case keys.ShowMe:
		switch {
		case d.solved != nil:
			d.pane = taskPane
		case !d.work.task.MayShow(d.Done):
			return d, nil, d.work.task.Set.Hidden(), Nothing
		default:
			return d, nil, "", AskShow
		}
	case keys.TakeWord:
		says = d.complete()
	case keys.Up, keys.Down, keys.PageUp, keys.PageDown, keys.First, keys.Last:
		d.move(i, w, h)
	default:
		switch {
		case d.pane == picturePane:
			says, _ = d.cam.Do(i)
		default:
			d.Line.Handle(i)
		}
	}
	return d, cmd, says, Nothing
}

// Reading is what the task is called, the line of it that was read, and what it was made of.
func (d *Desk) Reading() (name string, at int, of any) {
	if d.solved != nil {
		return "the solution", d.read, d.solved
	}
	return "the task", d.read, d.work
}

// Reads are the lines of the task as they are read aloud.
func (d *Desk) Reads(w int) []string { return d.lines(taskPane, w, false).Read() }

// Type adds characters to the entry; of several lines, as they are pasted, all but the last are
// entered.
func (d Desk) Type(chars string) (_ Desk, cmd tea.Cmd) {
	d.pane, d.large = workPane, d.large && d.pane == workPane
	lines := strings.Split(strings.ReplaceAll(strings.ReplaceAll(chars, "\r\n", "\n"), "\r", "\n"), "\n")
	for k, line := range lines {
		d.Line.Insert(line)
		if k == len(lines)-1 || strings.TrimSpace(d.Line.Text) == "" {
			continue
		}
		var one tea.Cmd
		d, one, _, _ = d.entered(0, 0)
		cmd = tea.Batch(cmd, one)
	}
	return d, cmd
}

// entered has what is typed judged; the words hint, undo and show me are no entries.
func (d Desk) entered(w, h int) (_ Desk, cmd tea.Cmd, says string, wish Wish) {
	typed := strings.TrimSpace(d.Line.Text)
	d.Line, d.recall, d.pane = text.Line{}, 0, workPane
	switch {
	case typed == "":
		return d, nil, "type an entry: " + example, Nothing
	case strings.EqualFold(typed, "hint"):
		return d.Do(keys.AskHint, w, h)
	case strings.EqualFold(typed, "show me"):
		return d.Do(keys.ShowMe, w, h)
	case strings.EqualFold(typed, "undo"):
		return d.Do(keys.Undo, w, h)
	}
	return d.queue(d.work.judged(typed))
}

// example is an entry as any problem has it.
const example = "ΣFx: ..., a value, or the word hint"

// mostWaiting is how much waits for what is being judged.
const mostWaiting = 20

// move goes up and down: among earlier entries where the line has the keys, else in the text.
func (d *Desk) move(i keys.Intent, w, h int) {
	if d.pane == picturePane {
		d.cam.Do(i)
		return
	}
	if d.pane == workPane && (i == keys.Up || i == keys.Down) {
		var all []string
		for _, one := range d.Items {
			if one.Hint == nil {
				all = append(all, one.Entry)
			}
		}
		d.recall = max(min(d.recall+map[keys.Intent]int{keys.Up: 1, keys.Down: -1}[i], len(all)), 0)
		d.Line = text.Line{}
		if d.recall > 0 {
			d.Line = text.NewLine(all[len(all)-d.recall])
		}
		return
	}
	o := text.Offset{Y: d.scroll[d.pane]}
	if d.pane == workPane { // counted from below
		i = map[keys.Intent]keys.Intent{keys.PageUp: keys.PageDown, keys.PageDown: keys.PageUp, keys.First: keys.Last, keys.Last: keys.First}[i]
	}
	r := d.places(w, h)[d.pane]
	rows := max(r.Dy()-layout.Frame, 1)
	text.Scroll(&o, i, rows)
	d.scroll[d.pane] = max(min(o.Y, len(d.lines(d.pane, r.Dx()-2, false))-rows), 0)
}

// complete completes the name before the cursor as far as it is certain, and says which go on
// so where there are several.
func (d *Desk) complete() (says string) {
	before := d.Line.Text[:d.Line.At]
	from := strings.LastIndexFunc(before, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '_' && r != '.' }) + 1
	for from < len(before) && before[from]&0xC0 == 0x80 { // the rest of a character that is none of a name
		from++
	}
	word := before[from:]
	var fit []string
	for _, n := range d.names {
		if strings.HasPrefix(n, word) {
			fit = append(fit, n)
		}
	}
	if len(fit) == 0 {
		return "no name begins with " + word
	}
	common := fit[0]
	for _, n := range fit[1:] {
		for !strings.HasPrefix(n, common) {
			common = common[:len(common)-1]
		}
	}
	d.Line.Insert(common[len(word):])
	if len(fit) > 1 {
		return "names: " + strings.Join(fit, ", ")
	}
	return ""
}

// Show has the solution shown, which ends practice.
func (d Desk) Show() (Desk, tea.Cmd) {
	w := d.work
	d, cmd, _, _ := d.queue(w.do("", func() Told {
		if err := w.Show(); err != nil {
			return Told{Says: "not shown, since the record cannot be written: " + err.Error(), Bad: true}
		}
		return Told{Says: "the solution is shown, and practice on this problem has ended", solved: w.solve()}
	}))
	return d, cmd
}

// flush does in one command what still waits, for one who leaves.
func (d *Desk) flush() tea.Cmd {
	waiting := d.waiting
	if len(waiting) == 0 {
		return nil
	}
	return func() tea.Msg {
		for _, do := range waiting {
			do()
		}
		return nil
	}
}

// Title is the problem's.
func (d *Desk) Title() string {
	if d.Problem.Title == "" {
		return "untitled"
	}
	return d.Problem.Title
}

// do does something in a command: its reply has the state as it is then. A fault of ours costs no
// more than what was asked for, and the line is given back.
func (w *Work) do(line string, work func() Told) tea.Cmd {
	return func() tea.Msg {
		out := session.Work(line, work)
		t := out.Value
		if out.Fault != "" {
			t = Told{Says: "this could not be judged (fault: " + out.Fault + ")", Bad: true, Line: line}
		}
		t.work, t.state = w, w.State()
		t.Loud = t.Loud || t.Bad
		return t
	}
}

// refused says that the record takes nothing, so that nothing is judged.
func refused(line string, err error) Told {
	return Told{Says: "not judged, since the record cannot be written: " + err.Error(), Bad: true, Line: line}
}

// judged judges an entry in a command: it is kept before its judgement shows.
func (w *Work) judged(entry string) tea.Cmd {
	return w.do(entry, func() Told {
		was := w.State().End
		j, err := w.Enter(entry)
		if err != nil {
			return refused(entry, err)
		}
		t := Told{Says: Spoken(j)}
		if now := w.State().End; now.Done && !was.Done {
			t.Says, t.Loud = t.Says+" "+w.congratulates(now), true
			if w.task.MayShow(true) {
				t.solved = w.solve()
			}
		}
		return t
	})
}

// congratulates says that all is done.
func (w *Work) congratulates(e End) string {
	says := "Everything that is needed is right."
	if w.task.Set != nil {
		says += fmt.Sprintf(" %.3g of %g points.", e.Points, w.task.rules.Points)
		if !w.task.MayShow(true) {
			says += " " + say.Capital(w.task.Set.Hidden()) + "."
		}
	}
	return says
}

func (w *Work) hinted() tea.Cmd {
	return w.do("", func() Told {
		h, free, ok, err := w.Hint()
		switch {
		case err != nil:
			return Told{Says: "no hint, since the record cannot be written: " + err.Error(), Bad: true}
		case !ok:
			return Told{Says: "the set gives no more hints: " + say.Count(w.task.Set.Rules.Hints, "hint") + " a problem", Bad: true}
		case free:
			return Told{Says: h.Says, Loud: true}
		}
		return Told{Says: fmt.Sprintf("hint %d: %s", h.Stage, h.Says)}
	})
}

func (w *Work) undone() tea.Cmd {
	return w.do("", func() Told {
		entry, ok, err := w.Undo()
		switch {
		case err != nil:
			return Told{Says: "not taken back, since the record cannot be written: " + err.Error(), Bad: true}
		case !ok:
			return Told{Says: "no entry to take back", Loud: true}
		}
		return Told{Says: "taken back: " + entry, Line: entry}
	})
}

// solve writes the worked solution, with the student's own work before it.
func (w *Work) solve() *document {
	var own []tutor.Judgement
	for _, one := range w.State().Items {
		if one.Hint == nil {
			own = append(own, one.Judgement)
		}
	}
	steps := results.Lay(working.Build(w.solution), results.Widths{})
	return &document{blocks: report.OwnWork(own), steps: &steps}
}

// verdicts are those of entries, in words.
var verdicts = map[tutor.Verdict]string{
	tutor.Right: "right", tutor.Dependent: "right, but not independent", tutor.Imprecise: "close", tutor.Wrong: "wrong", tutor.Unreadable: "not readable",
}

// Spoken is a judgement in words alone.
func Spoken(j tutor.Judgement) string {
	says := verdicts[j.Verdict] + ": " + j.Says
	if j.Kind == tutor.Equation && j.Verdict != tutor.Unreadable && j.Needed > 0 {
		says += " " + Progress(min(j.Independent, j.Needed), j.Needed)
	}
	return says
}

// Progress says how many equations stand there.
func Progress(independent, needed int) string {
	return fmt.Sprintf("%d of %s", independent, say.Count(needed, "independent equation"))
}
