// Package practice is a person's practice on one problem after the other: what is entered is
// judged and kept, and nothing shows that follows from the solution and was not entered.
package practice

import (
	"slices"
	"sync"
	"time"

	"trivet/mechanics/problemset"
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
}

// Alone is the task of a sheet that belongs to no set.
func Alone(name string) Task {
	return Task{Of: record.Problem{Name: name}, Needs: []problemset.Need{problemset.NeedValues}}
}

// InSet is the task of a problem of a set.
func InSet(set *problemset.Set, p problemset.Problem) Task {
	return Task{Of: record.Problem{Set: set.Name(), Name: p.Name}, Set: set, Needs: p.Needs, rules: p}
}

// Work is a person's work on one problem. Its methods may be called from any goroutine; each
// change is kept before it is told.
type Work struct {
	mu       sync.Mutex
	keep     Keeping
	task     Task
	solution *statics.Solution
	judge    *tutor.Practice
	items    []Item
	hints    int // in all, with those of entries taken back
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
	if keep.Store == nil {
		return w, nil
	}
	events, err := keep.Store.Events(keep.Person)
	if err != nil {
		return w, err
	}
	var kept []record.Event // less what was taken back
	for _, e := range events {
		if e.Problem != task.Of {
			continue
		}
		switch e.What {
		case record.Undone:
			if k := lastEntry(kept); k >= 0 {
				kept = slices.Delete(kept, k, k+1)
			}
			continue
		case record.Hint:
			w.hints++
		case record.Shown:
			w.end.Shown = true
		case record.Done:
			w.end.Done, w.end.Points = true, e.Points
		}
		kept = append(kept, e)
	}
	for _, e := range kept {
		switch e.What {
		case record.Entry:
			w.items = append(w.items, Item{Judgement: w.judge.Enter(e.Text)})
		case record.Hint:
			h := w.judge.Hint()
			w.items = append(w.items, Item{Hint: &h})
		}
	}
	return w, nil
}

func lastEntry(kept []record.Event) int {
	for k, e := range slices.Backward(kept) {
		if e.What == record.Entry {
			return k
		}
	}
	return -1
}

// State is how the work stands.
func (w *Work) State() State {
	w.mu.Lock()
	defer w.mu.Unlock()
	return w.state()
}

func (w *Work) state() State {
	s := State{Items: slices.Clone(w.items), Found: w.judge.Found(), Hints: w.hints, Of: -1, Answered: w.judge.Done(), End: w.end}
	s.Independent, s.Needed = w.judge.Progress()
	if w.task.Set != nil {
		s.Of = w.task.Set.Rules.Hints
	}
	return s
}

// keepEvents adds to the record what happens at one moment: all of it or nothing.
func (w *Work) keepEvents(events ...record.Event) error {
	if w.keep.Store == nil {
		return nil
	}
	now := time.Now()
	for i := range events {
		events[i].At, events[i].Problem = now, w.task.Of
	}
	return w.keep.Store.Add(w.keep.Person, events...)
}

// Enter judges an entry. The error is that of the record: the entry is judged all the same.
// Where the entry is the last one needed, the record has it with the end or not at all.
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
		done := w.done()
		happened, end.Done, end.Points = append(happened, done), true, done.Points
	}
	err := w.keepEvents(happened...)
	w.items = append(w.items, Item{Judgement: j})
	if err == nil {
		w.end = end
	}
	return j, err
}

// reached tells that all that is needed is there.
func (w *Work) reached() bool {
	r := w.judge.Reached()
	has := map[problemset.Need]bool{
		problemset.NeedCut: r.Cut, problemset.NeedVectors: r.Vectors, problemset.NeedEquations: r.Equations, problemset.NeedValues: r.Values,
	}
	return !slices.ContainsFunc(w.task.Needs, func(n problemset.Need) bool { return !has[n] })
}

// done is that the problem is done, with its points.
func (w *Work) done() record.Event {
	e := record.Event{What: record.Done}
	if set := w.task.Set; set != nil {
		e.Points = set.Points(w.task.rules, problemset.Result{Done: time.Now(), Hints: w.hints, Shown: w.end.Shown})
		e.Of = w.task.rules.Points
	}
	return e
}

// Hint gives the next hint; ok is false where the set gives no more.
func (w *Work) Hint() (h tutor.Hint, ok bool, err error) {
	w.mu.Lock()
	defer w.mu.Unlock()
	if set := w.task.Set; set != nil && w.hints >= set.Rules.Hints {
		return h, false, nil
	}
	was := w.judge.Hints()
	if h = w.judge.Hint(); w.judge.Hints() > was { // else it says that nothing is left to hint at
		err = w.keepEvents(record.Event{What: record.Hint, Stage: h.Stage})
		w.hints++
	}
	w.items = append(w.items, Item{Hint: &h})
	return h, true, err
}

// Undo takes the last entry back; ok is false where there is none. The record keeps it.
func (w *Work) Undo() (text string, ok bool, err error) {
	w.mu.Lock()
	defer w.mu.Unlock()
	k := -1
	for i, one := range slices.Backward(w.items) {
		if one.Hint == nil {
			k = i
			break
		}
	}
	if k < 0 {
		return "", false, nil
	}
	text = w.items[k].Entry
	err = w.keepEvents(record.Event{What: record.Undone})
	items := slices.Delete(slices.Clone(w.items), k, k+1)
	w.judge, w.items = tutor.New(w.solution), nil
	for _, one := range items {
		if one.Hint == nil {
			one.Judgement = w.judge.Enter(one.Entry)
		} else {
			h := w.judge.Hint()
			one.Hint = &h
		}
		w.items = append(w.items, one)
	}
	return text, true, err
}

// MayShow tells that the solution may be shown to one who has not answered.
func (w *Work) MayShow() bool {
	return w.task.Set == nil || w.task.Set.Shows(time.Now(), w.State().Done)
}

// Show ends practice on the problem: the solution is shown.
func (w *Work) Show() error {
	w.mu.Lock()
	defer w.mu.Unlock()
	err := w.keepEvents(record.Event{What: record.Shown})
	w.end.Shown = true
	return err
}
