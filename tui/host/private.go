package host

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"hash/crc32"
	"log/slog"
	"os"
	"path/filepath"
	"slices"
	"sync"
	"sync/atomic"
	"time"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/tui"
)

// visitorsFolder is where private visitors' sheets are kept below the host's own
// folder.
const visitorsFolder = "visitors"

// mostFolders is how many keys may keep sheets at all: anybody can make keys.
const mostFolders = 5000

// library gives each visitor a workbench of its own on copies of a folder's
// sheets.
type library struct {
	log    *slog.Logger
	from   *store   // the sheets to copy
	folder *os.Root // one folder a key

	mu    sync.Mutex
	rooms map[*visitor]*room
	empty *sync.Cond // whether there is a room
	turns [64]sync.Mutex
}

func newLibrary(log *slog.Logger, from, state string) (*library, error) {
	f, err := os.OpenRoot(from)
	if err != nil {
		return nil, fmt.Errorf("%s: the folder of sheets cannot be opened: %w", from, err)
	}
	kept := filepath.Join(state, visitorsFolder)
	if err := os.MkdirAll(kept, folderMode); err != nil {
		return nil, fmt.Errorf("the visitors' folder cannot be made: %w", err)
	}
	r, err := os.OpenRoot(kept)
	if err != nil {
		return nil, fmt.Errorf("the visitors' folder cannot be opened: %w", err)
	}
	l := &library{log: log, from: &store{root: f}, folder: r, rooms: map[*visitor]*room{}}
	l.empty = sync.NewCond(&l.mu)
	return l, nil
}

// folderOf names the folder of a key: of the key alone, so that it is found
// again, and without anything that the visitor could choose.
func folderOf(key []byte) string {
	sum := sha256.Sum256(key)
	return hex.EncodeToString(sum[:16])
}

func (l *library) open(p person) (*store, error) {
	if p.folder == "" {
		return nil, errors.New("a private workbench is kept by key: come with one (ssh-keygen makes it)")
	}
	if _, err := l.folder.Stat(p.folder); err != nil {
		d, err := l.folder.Open(".")
		if err != nil {
			return nil, err
		}
		defer d.Close()
		if names, _ := d.Readdirnames(mostFolders); len(names) >= mostFolders {
			return nil, errors.New("the host keeps sheets for as many visitors as it can")
		}
		if err := l.folder.MkdirAll(p.folder, folderMode); err != nil {
			return nil, fmt.Errorf("no folder could be made for your sheets: %w", err)
		}
	}
	root, err := l.folder.OpenRoot(p.folder)
	if err != nil {
		return nil, fmt.Errorf("your folder cannot be opened: %w", err)
	}
	return &store{root: root, most: mostSheets, rows: mostRows, bytes: mostBytes, turn: l.turn(p.folder)}, nil
}

// turn is held while a key's sheets are written: one key may have two sessions.
func (l *library) turn(folder string) *sync.Mutex {
	return &l.turns[int(crc32.ChecksumIEEE([]byte(folder)))%len(l.turns)]
}

// room is one private visitor's: a list of sheets, or a workbench on one.
type room struct {
	lib   *library
	own   *store
	v     *visitor
	desk  *desk
	quit  chan struct{} // the workbench was left
	list  atomic.Pointer[list]
	draws atomic.Pointer[screen]
}

// attend keeps a visitor until the visit ends; what is not saved then is.
func (l *library) attend(v *visitor) {
	own, err := l.open(v.who)
	if err != nil {
		v.end(err.Error())
		return
	}
	defer own.root.Close()
	r := &room{lib: l, own: own, v: v, quit: make(chan struct{}, 1)}
	l.mu.Lock()
	l.rooms[v] = r
	l.mu.Unlock()
	defer func() {
		v.feed.show(nil)
		if s := r.draws.Load(); s != nil {
			s.close()
		}
		r.shut()
		l.gone(v)
	}()
	r.offer("")
	r.sit()
	for {
		select {
		case <-v.over:
			return
		case <-r.quit:
			r.shut()
			r.offer("")
			r.sit()
		case msg := <-v.events:
			r.event(msg)
		}
	}
}

func (r *room) changed() {
	if s := r.draws.Load(); s != nil {
		s.touch()
	}
}

// sit draws in the visitor's size.
func (r *room) sit() {
	w, h := r.v.size()
	old := r.draws.Load()
	desk, t := r.desk, r.v.term
	s := newScreen(r.lib.log, w, h, t, atOnce, func() string {
		switch {
		case desk != nil && desk.full.Load():
			return desk.look.Load().Own() + line(w, t, tooLarge)
		case desk != nil:
			return desk.look.Load().Own() + line(w, t, "your own copy: ctrl+s saves it, ctrl+q back to the list of sheets")
		}
		return r.list.Load().draw(w, h, t)
	}).begin(nil)
	r.draws.Store(s)
	r.v.feed.show(s)
	if old != nil {
		old.close()
	}
}

// offer shows the list: the visitor's own sheets, and the folder's not opened yet.
func (r *room) offer(note string) {
	names := append(r.own.names(), r.lib.from.names()...)
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
		if r.desk != nil {
			r.desk.post(fit(func(m tui.Model) tui.Model { return m.Fitted(msg.Width, msg.Height-1, r.v.term.set) }))
		}
		r.sit()
	case tea.KeyPressMsg:
		r.v.typed()
		if r.desk != nil {
			r.desk.post(msg)
			return
		}
		l, does := r.list.Load().key(msg.String())
		r.list.Store(&l)
		switch does {
		case leave:
			r.v.end("good-bye; your sheets stay with the host")
		case open:
			if err := r.open(l.names[l.at]); err != nil {
				r.offer(err.Error())
			}
			r.sit()
		}
		r.changed()
	case tea.PasteMsg:
		r.v.typed()
		if r.desk != nil {
			r.desk.post(msg)
		}
	}
}

// open starts the workbench on a sheet, copied first where it is the folder's.
func (r *room) open(name string) error {
	s, stamp, err := r.own.load(name)
	var missing *sheet.FileError
	if errors.As(err, &missing) && errors.Is(err, os.ErrNotExist) {
		if s, _, err = r.lib.from.load(name); err == nil {
			stamp, err = r.own.save(name, s, sheet.Stamp{}, false)
		}
	}
	if err != nil {
		return err
	}
	w, h := r.v.size()
	opt := tui.Options{Path: name, Sheet: s, Stamp: stamp, Save: r.own.save, Env: []string{"TERM=xterm"}, Width: w, Height: h - 1}
	r.desk = newDesk(r.lib.log, opt, bounds{mostRows, mostBytes, privateRests}, r.changed, func(tui.Model) { nudge(r.quit) })
	set := r.v.term.set
	r.desk.post(fit(func(m tui.Model) tui.Model { return m.Fitted(w, h-1, set) }))
	return nil
}

// shut ends the workbench and keeps what it had not saved.
func (r *room) shut() {
	if r.desk == nil {
		return
	}
	if r.v.ended() {
		r.desk.see(func(m tui.Model) { r.v.also(r.own.rescue(r.lib.log, m)) })
	}
	r.desk.close()
	r.desk = nil
}

// end tells everybody, and waits until what they had not saved is.
func (l *library) end(why string) {
	l.mu.Lock()
	for v := range l.rooms {
		v.end(why + "; your sheets are kept")
	}
	l.mu.Unlock()
	late := time.AfterFunc(savingLimit, func() {
		l.log.Error("not everybody's sheets could be saved in time")
		l.mu.Lock()
		defer l.mu.Unlock()
		clear(l.rooms)
		l.empty.Broadcast()
	})
	defer late.Stop()
	l.mu.Lock()
	defer l.mu.Unlock()
	for len(l.rooms) > 0 {
		l.empty.Wait()
	}
}

func (l *library) gone(v *visitor) {
	l.mu.Lock()
	defer l.mu.Unlock()
	delete(l.rooms, v)
	l.empty.Broadcast()
}

func (l *library) watch(now time.Time) {
	l.mu.Lock()
	defer l.mu.Unlock()
	for v := range l.rooms {
		switch {
		case v.feed.stalled(now):
			v.end("the terminal takes no more")
			v.kill()
		case v.idle(now) > privateIdle:
			v.end("nothing was typed for " + privateIdle.String() + "; your sheets are kept")
		}
	}
}
