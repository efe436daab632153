// Package practice is a person's practice on one problem after the other: what is entered is
// judged and kept, and nothing shows that follows from the solution and was not entered.
package practice

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"slices"
	"sync"
	"time"

	"trivet/mechanics/problemset"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/mechanics/tutor"
	"trivet/tui/record"
)

// Keeping says whose practice it is, and where it is kept.
type Keeping struct {
	Store  record.Store // nil: nothing is kept
	Person string
}

// Task is a problem to be practised. Without a set everything asked is to be answered, and
// hints are free.
type Task struct {
	Of    record.Problem
	Set   *problemset.Set
	Needs []problemset.Need
	rules problemset.Problem
	sheet string // what stands in the sheet, of which the work is: see printOf
}

// Alone is the task of a sheet that belongs to no set.
func Alone(name string, s *sheet.Sheet) Task {
	return Task{Of: record.Problem{Name: name}, Needs: []problemset.Need{problemset.NeedValues}, sheet: printOf(s)}
}

// InSet is the task of a problem of a set.
func InSet(set *problemset.Set, p problemset.Problem, s *sheet.Sheet) Task {
	return Task{Of: record.Problem{Set: set.Name(), Name: p.Name}, Set: set, Needs: p.Needs, rules: p, sheet: printOf(s)}
}

// printOf tells one problem from another of the same name: with other numbers, or an edited
// one, work begins anew. Words and answers do not count.
func printOf(s *sheet.Sheet) string {
	h := sha256.New()
	for _, t := range s.Tables {
		if t.Name == "answers" {
			continue
		}
		for _, r := range t.Rows {
			if t.Name == "" && slices.Contains([]string{"title", "statement", "lesson"}, r.Name) {
				continue
			}
			for _, c := range r.Cells {
				fmt.Fprintf(h, "%q", []string{t.Name, r.Name, c.Key, c.Text})
			}
		}
	}
	return hex.EncodeToString(h.Sum(nil)[:8])
}

// Work is a person's work on one problem. Its methods may be called from any goroutine. What
// the record does not take has not happened.
type Work struct {
	mu       sync.Mutex
	keep     Keeping
	task     Task
	solution *statics.Solution
	judge    *tutor.Practice
	items    []Item
	hints    int // in all, with those of other sessions
	end      End
}

// Item is an entry with its judgement, or a hint.
type Item struct {
	tutor.Judgement
	Hint *tutor.Hint // nil: it is an entry
}

// End is how a problem came to its end.
type End struct {
	Done   bool // all that is needed was right
	Shown  bool // the solution was shown
	Points float64
}

// State is how work stands: data that nothing changes any more.
type State struct {
	Items       []Item
	Found       map[int]float64 // right values of unknowns, as entered: N, N·m
	Independent int             // equations
	Needed      int
	Hints, Of   int  // asked for, and how many may be; Of is negative where all may
	Answered    bool // everything asked is answered rightly
	End
}

// New begins work anew.
func New(keep Keeping, task Task, s *statics.Solution) *Work {
	return &Work{keep: keep, task: task, solution: s, judge: tutor.New(s)}
}

// Begin goes on with work where the record has it, or begins it. The error says that the record
// cannot be read; the work begins anew then.
func Begin(keep Keeping, task Task, s *statics.Solution) (*Work, error) {
	w := New(keep, task, s)
	events, err := w.events()
	if err != nil {
		return w, err
	}
	w.count(events)
	for _, e := range standing(events) {
		if e.What == record.Hint {
			w.items = append(w.items, Item{Hint: &tutor.Hint{Stage: e.Stage, Says: e.Text}})
			w.judge.Hinted(e.Stage)
			continue
		}
		j := w.judge.Enter(e.Text)
		if string(j.Verdict) != e.Verdict {
			j.Says += " (When it was entered it was judged as " + verdicts[tutor.Verdict(e.Verdict)] + ".)"
		}
		w.items = append(w.items, Item{Judgement: j})
	}
	return w, nil
}

// standing are the entries and hints of events, less what was taken back.
func standing(events []record.Event) (kept []record.Event) {
	for _, e := range events {
		switch e.What {
		case record.Entry, record.Hint:
			kept = append(kept, e)
		case record.Undone:
			for k, was := range slices.Backward(kept) {
				if was.What == record.Entry && was.Text == e.Text {
					kept = slices.Delete(kept, k, k+1)
					break
				}
			}
		}
	}
	return kept
}

// events are those of this work, of all sessions.
func (w *Work) events() (own []record.Event, err error) {
	if w.keep.Store == nil {
		return nil, nil
	}
	all, err := w.keep.Store.Events(w.keep.Person)
	for _, e := range all {
		if e.Problem == w.task.Of && (e.Sheet == "" || e.Sheet == w.task.sheet) { // an old record does not tell them apart
			own = append(own, e)
		}
	}
	return own, err
}

// count counts the hints, and finds the end: the first time that all was done.
func (w *Work) count(events []record.Event) {
	w.hints = 0
	for _, e := range events {
		switch e.What {
		case record.Hint:
			w.hints++
		case record.Shown:
			w.end.Shown = true
		case record.Done:
			if !w.end.Done {
				w.end.Done, w.end.Points = true, e.Points
			}
		}
	}
}

// again judges items anew, from the first.
func (w *Work) again(items []Item) {
	w.judge, w.items = tutor.New(w.solution), items
	for _, one := range items {
		if one.Hint == nil {
			w.judge.Enter(one.Entry)
		} else {
			w.judge.Hinted(one.Hint.Stage)
		}
	}
}

// State is how the work stands.
func (w *Work) State() State {
	w.mu.Lock()
	defer w.mu.Unlock()
	s := State{Items: slices.Clone(w.items), Found: w.judge.Found(), Hints: w.hints, Of: -1, Answered: w.judge.Done(), End: w.end}
	s.Independent, s.Needed = w.judge.Progress()
	if w.task.Set != nil {
		s.Of = w.task.Set.Rules.Hints
	}
	return s
}

// add adds to the record what happens at one moment: all of it or nothing.
func (w *Work) add(events ...record.Event) error {
	if w.keep.Store == nil {
		return nil
	}
	now := time.Now()
	for i := range events {
		events[i].At, events[i].Problem, events[i].Sheet = now, w.task.Of, w.task.sheet
	}
	return w.keep.Store.Add(w.keep.Person, events...)
}

// Enter judges an entry, once the record has it; where it is the last one needed, with the end.
// On an error it is not entered.
func (w *Work) Enter(text string) (tutor.Judgement, error) {
	w.mu.Lock()
	defer w.mu.Unlock()
	j := w.judge.Enter(text)
	e := record.Event{What: record.Entry, Text: text, Kind: string(j.Kind), Verdict: string(j.Verdict)}
	if j.Mistake != nil {
		e.Mistake = string(j.Mistake.Kind)
	}
	happened, end := []record.Event{e}, w.end
	if !end.Done && w.reached() {
		if done := w.done(); !w.end.Done { // else another session has ended it
			happened, end.Done, end.Points = append(happened, done), true, done.Points
		}
	}
	if err := w.add(happened...); err != nil {
		w.again(w.items)
		return tutor.Judgement{}, err
	}
	w.items = append(w.items, Item{Judgement: j})
	if !w.end.Done {
		w.end = end
	}
	return j, nil
}

// reached tells that all that is needed is there.
func (w *Work) reached() bool {
	r := w.judge.Reached()
	has := map[problemset.Need]bool{
		problemset.NeedCut: r.Cut, problemset.NeedVectors: r.Vectors, problemset.NeedEquations: r.Equations, problemset.NeedValues: r.Values,
	}
	return !slices.ContainsFunc(w.task.Needs, func(n problemset.Need) bool { return !has[n] })
}

// done is that the problem is done, with its points; first it counts what other sessions did.
func (w *Work) done() record.Event {
	if events, err := w.events(); err == nil && w.keep.Store != nil {
		w.count(events)
	}
	e := record.Event{What: record.Done}
	if set := w.task.Set; set != nil {
		e.Points = set.Points(w.task.rules, problemset.Result{Done: time.Now(), Hints: w.hints, Shown: w.end.Shown})
		e.Of = w.task.rules.Points
	}
	return e
}

// Hint gives the next hint; ok is false where the set gives no more. Free tells that it costs
// nothing, since it says nothing new.
func (w *Work) Hint() (h tutor.Hint, free, ok bool, err error) {
	w.mu.Lock()
	defer w.mu.Unlock()
	events, err := w.events()
	if err != nil {
		return h, false, false, err
	}
	if w.keep.Store != nil {
		w.count(events)
	}
	was := w.judge.Hints()
	if h = w.judge.Hint(); w.judge.Hints() == was {
		return h, true, true, nil
	}
	if set := w.task.Set; set != nil && w.hints >= set.Rules.Hints {
		w.again(w.items)
		return h, false, false, nil
	}
	if err = w.add(record.Event{What: record.Hint, Stage: h.Stage, Text: h.Says}); err != nil {
		w.again(w.items)
		return h, false, false, err
	}
	w.hints++
	w.items = append(w.items, Item{Hint: &h})
	return h, false, true, nil
}

// Undo takes the last entry back; ok is false where there is none. The record keeps it.
func (w *Work) Undo() (text string, ok bool, err error) {
	w.mu.Lock()
	defer w.mu.Unlock()
	for i, one := range slices.Backward(w.items) {
		if one.Hint != nil {
			continue
		}
		if err = w.add(record.Event{What: record.Undone, Text: one.Entry}); err == nil {
			w.again(slices.Delete(slices.Clone(w.items), i, i+1))
		}
		return one.Entry, true, err
	}
	return "", false, nil
}

// MayShow tells that the solution may be shown to one who has answered, or has not.
func (t Task) MayShow(done bool) bool {
	return t.Set == nil || t.Set.Shows(time.Now(), done)
}

// Show ends practice on the problem: the solution is shown.
func (w *Work) Show() error {
	w.mu.Lock()
	defer w.mu.Unlock()
	if err := w.add(record.Event{What: record.Shown}); err != nil {
		return err
	}
	w.end.Shown = true
	return nil
}
