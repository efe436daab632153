package host

import (
	"errors"
	"fmt"
	"hash/crc32"
	"io"
	"io/fs"
	"log/slog"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"sync/atomic"
	"time"

	"trivet/mechanics/diag"
	"trivet/tui/host/pace"
	"trivet/tui/host/store"
)

// visitorsFolder is where private visitors' sheets are kept below the host's own
// folder.
const visitorsFolder = "visitors"

// maxFolders is how many keys may keep sheets at all: anybody can make keys.
const maxFolders = 5000

// library gives each visitor a workbench of its own on copies of a folder's
// sheets, or to practise a set, of which no sheet is kept.
type library struct {
	log    *slog.Logger
	from   *store.Store // the sheets to copy
	folder *os.Root     // one folder a key
	set    *assignment  // practised in place of a folder's sheets; else nil
	works  *works       // the record of what is practised

	mu       sync.Mutex
	rooms    map[*visitor]*room
	empty    *sync.Cond // whether there is a room
	turns    [64]sync.Mutex
	accounts pace.Accounts
	kept     atomic.Int64 // bytes of all sheets
}

func newLibrary(log *slog.Logger, from, state string) (*library, error) {
	f, err := os.OpenRoot(from)
	if err != nil {
		return nil, fmt.Errorf("%s: the folder of sheets cannot be opened: %w", from, err)
	}
	kept := filepath.Join(state, visitorsFolder)
	if err := os.MkdirAll(kept, store.FolderMode); err != nil {
		return nil, fmt.Errorf("the visitors' folder cannot be made: %w", err)
	}
	r, err := os.OpenRoot(kept)
	if err != nil {
		return nil, fmt.Errorf("the visitors' folder cannot be opened: %w", err)
	}
	l := &library{log: log, from: store.OfFolder(f), folder: r, rooms: map[*visitor]*room{}}
	l.empty = sync.NewCond(&l.mu)
	if err := l.count(); err != nil {
		return nil, fmt.Errorf("the visitors' folder cannot be read: %w", err)
	}
	var notice *diag.Error
	if l.works, notice, err = openWorks(state); notice != nil {
		log.Error(notice.Error())
	}
	return l, err
}

// newPractice is a library of a set.
func newPractice(log *slog.Logger, set, state string) (*library, error) {
	a, notice, err := newAssignment(set, state)
	if notice != nil {
		log.Error(notice.Error())
	}
	if err != nil {
		return nil, err
	}
	l := &library{log: log, set: a, works: a.works, rooms: map[*visitor]*room{}}
	l.empty = sync.NewCond(&l.mu)
	return l, nil
}

// kept says what stays with the host.
func (l *library) keeps() string {
	if l.set != nil {
		return "your work is kept"
	}
	return "your sheets are kept"
}

// count adds up what is kept. What a crash has left half written goes, and so do
// folders without a sheet.
func (l *library) count() error {
	err := fs.WalkDir(l.folder.FS(), ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || !d.Type().IsRegular() {
			return err
		}
		info, err := d.Info()
		if err != nil {
			return err
		}
		if strings.HasPrefix(d.Name(), ".") && time.Since(info.ModTime()) > time.Hour {
			return l.folder.Remove(name)
		}
		l.kept.Add(info.Size())
		return nil
	})
	if err != nil {
		return err
	}
	folders, err := fs.ReadDir(l.folder.FS(), ".")
	for _, d := range folders {
		if d.IsDir() {
			l.giveBack(d.Name())
		}
	}
	return err
}

// giveBack removes a key's folder that has nothing in it; what is not empty stays.
func (l *library) giveBack(folder string) {
	turn := l.turn(folder)
	turn.Lock()
	defer turn.Unlock()
	_ = l.folder.Remove(folder)
}

// store is where a key's sheets are kept. Its folder is made with the first of them.
func (l *library) store(folder string) *store.Store {
	return store.OfVisitor(func(create bool) (*os.Root, error) {
		if create {
			if err := l.folder.MkdirAll(folder, store.FolderMode); err != nil {
				return nil, err
			}
		}
		return l.folder.OpenRoot(folder)
	}, l.turn(folder), &l.kept)
}

// roomFor gives a visitor a room, or refuses one whose key could keep no sheet. Whoever
// has a room may make a folder, so keys with a room count as if they had one: what is
// free at the door is still free at the first save.
func (l *library) roomFor(v *visitor, r *room) error {
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.set == nil {
		if err := l.hasSpace(v.who.Folder); err != nil {
			return err
		}
	}
	l.rooms[v] = r
	return nil
}

// hasSpace tells whether a key may have a folder; l.mu is held.
func (l *library) hasSpace(folder string) error {
	if _, err := l.folder.Stat(folder); err == nil {
		return nil
	}
	d, err := l.folder.Open(".")
	if err != nil {
		return err
	}
	defer d.Close()
	names, err := d.Readdirnames(maxFolders)
	if err != nil && !errors.Is(err, io.EOF) {
		return err
	}
	taken := make(map[string]bool, len(names)+len(l.rooms))
	for _, name := range names {
		taken[name] = true
	}
	for v := range l.rooms {
		taken[v.who.Folder] = true
	}
	if len(taken) >= maxFolders && !taken[folder] {
		return errors.New("the host has no room for the sheets of more visitors")
	}
	return nil
}

// turn is held while a key's sheets are written: one key may have two sessions.
func (l *library) turn(folder string) *sync.Mutex {
	return &l.turns[int(crc32.ChecksumIEEE([]byte(folder)))%len(l.turns)]
}

// attend keeps a visitor until the visit ends; what is not saved then is.
func (l *library) attend(v *visitor) {
	r := &room{lib: l, v: v, turns: l.accounts.Of(v.who.Folder), quit: make(chan struct{}, 1)}
	if l.set == nil {
		r.own = l.store(v.who.Folder)
	}
	if err := l.roomFor(v, r); err != nil {
		v.end(err.Error())
		return
	}
	defer func() {
		v.sender.Show(nil)
		if s := r.draws.Load(); s != nil {
			s.Close()
		}
		r.shut()
		if l.set == nil {
			l.giveBack(v.who.Folder)
		}
		l.gone(v)
	}()
	if l.set != nil {
		if err := r.practise(); err != nil {
			v.end(err.Error())
			return
		}
	} else {
		r.offer("")
	}
	r.sit()
	for {
		select {
		case <-v.ctx.Done():
			return
		case <-r.quit:
			if l.set != nil {
				v.end("good-bye; " + l.keeps())
				return
			}
			r.shut()
			r.offer("")
			r.sit()
		case msg := <-v.events:
			r.event(msg)
		}
	}
}

// end tells everybody, and waits until what they had not saved is.
func (l *library) end(why string) {
	l.mu.Lock()
	for v := range l.rooms {
		v.end(why + "; " + l.keeps())
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
	if err := l.works.store.Close(); err != nil {
		l.log.Error("the record could not be closed", "why", err)
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
		case v.sender.Stalled(now):
			v.end("the terminal takes no more")
			v.kill()
		case v.idle(now) > privateIdle:
			v.end("nothing was typed for " + privateIdle.String() + "; " + l.keeps())
		}
	}
}
