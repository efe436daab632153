package host

import (
	"errors"
	"os"
	"slices"
	"sync/atomic"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/diag"
	"trivet/mechanics/sheet"
	"trivet/tui"
	"trivet/tui/grid"
	"trivet/tui/host/line"
	"trivet/tui/host/pace"
	"trivet/tui/host/store"
)

// room is one private visitor's: a list of sheets, or a workbench on one.
type room struct {
	lib       *library
	own       *store.Store
	v         *visitor
	workbench *workbench
	turns     pace.Turns
	quit      chan struct{} // the workbench was left
	list      atomic.Pointer[list]
	draws     atomic.Pointer[line.Screen]
}

func (r *room) changed() {
	if s := r.draws.Load(); s != nil {
		s.Touch()
	}
}

// sit draws in the visitor's size.
func (r *room) sit() {
	w, h := r.v.size()
	old := r.draws.Load()
	workbench, t := r.workbench, r.v.term
	s := line.NewScreen(r.lib.log, w, h, t, line.AtOnce, func() grid.Frame {
		switch {
		case workbench != nil && workbench.full.Load():
			return line.Under(workbench.look.Load().Own(), w, h, t, store.TooLarge)
		case workbench != nil && r.lib.set != nil:
			return line.Under(workbench.look.Load().Own(), w, h, t, "your own work, kept with the host; ctrl+q: leave")
		case workbench != nil:
			return line.Under(workbench.look.Load().Own(), w, h, t, "your own copy; ctrl+s: save, ctrl+q: back to the list of sheets")
		}
		return r.list.Load().draw(w, h, t)
	}).Begin(r.turns, r.turns)
	r.draws.Store(s)
	r.v.sender.Show(s)
	if old != nil {
		old.Close()
	}
}

// offer shows the list: the visitor's own sheets, and the folder's not opened yet.
func (r *room) offer(note string) {
	names := append(r.own.Names(), r.lib.from.Names()...)
	slices.Sort(names)
	l := &list{names: slices.Compact(names), note: note}
	if old := r.list.Load(); old != nil {
		l.at = max(min(old.at, len(l.names)-1), 0)
	}
	r.list.Store(l)
}

func (r *room) event(msg tea.Msg) {
	switch msg := msg.(type) {
	case tea.WindowSizeMsg:
		if r.workbench != nil {
			r.workbench.post(fit(func(m tui.Model) tui.Model { return m.Fitted(msg.Width, msg.Height-1, r.v.term.Set) }))
		}
		r.sit()
	case tea.KeyPressMsg:
		r.v.types()
		if r.workbench != nil {
			r.workbench.post(msg)
			return
		}
		l, does := r.list.Load().key(msg.String())
		r.list.Store(&l)
		switch does {
		case leave:
			r.v.end(r.farewell())
		case open:
			if err := r.open(l.names[l.at]); err != nil {
				r.offer(err.Error())
			}
			r.sit()
		}
		r.changed()
	case tea.PasteMsg:
		r.v.types()
		if r.workbench != nil {
			r.workbench.post(msg)
		}
	}
}

// farewell is what a visitor who leaves is told; only of sheets that there are.
func (r *room) farewell() string {
	if len(r.own.Names()) == 0 {
		return "good-bye"
	}
	return "good-bye; your sheets stay with the host"
}

// open starts the workbench on a sheet, copied first where it is the folder's.
func (r *room) open(name string) error {
	s, stamp, err := r.own.Load(name)
	if errors.Is(err, os.ErrNotExist) {
		if s, _, err = r.lib.from.Load(name); err == nil {
			stamp, err = r.own.Save(name, s, sheet.Stamp{}, false)
		}
	}
	if err != nil {
		return err
	}
	keep, err := r.lib.works.keeping(r.v.who)
	if err != nil { // sheets are kept all the same
		r.lib.log.Error("practice is not kept", "visitor", r.v.who.Name(), "why", err.Error())
	}
	r.begin(tui.Options{Path: name, Sheet: s, Stamp: stamp, Save: r.own.Save, Record: keep})
	return nil
}

// practise starts the workbench on the set: it shows its problems, and practises only.
func (r *room) practise() error {
	practised, err := r.lib.set.options(r.v.who)
	if err != nil {
		return err
	}
	r.begin(tui.Options{Practice: practised, Save: keepsNothing})
	return nil
}

// keepsNothing is how a workbench saves a sheet that only practises.
func keepsNothing(string, *sheet.Sheet, sheet.Stamp, bool) (sheet.Stamp, error) {
	return sheet.Stamp{}, diag.New("no sheet is kept here", "your own work is in the record: `ssh HOST record`")
}

// begin starts the workbench in the visitor's size.
func (r *room) begin(opt tui.Options) {
	w, h := r.v.size()
	opt.Env, opt.Width, opt.Height = []string{"TERM=xterm"}, w, h-1
	r.workbench = newWorkbench(r.lib.log, opt, bounds{store.MaxRows, store.MaxBytes, privateRests, r.turns}, r.changed, func(tui.Model) { pace.Nudge(r.quit) })
	set := r.v.term.Set
	r.workbench.post(fit(func(m tui.Model) tui.Model { return m.Fitted(w, h-1, set) }))
}

// shut ends the workbench and keeps what it had not saved.
func (r *room) shut() {
	if r.workbench == nil {
		return
	}
	if r.v.ended() && r.own != nil {
		r.workbench.see(func(m tui.Model) {
			says, _ := rescue(r.lib.log, r.own, m)
			r.v.also(says)
		})
	}
	r.workbench.close()
	r.workbench = nil
}
