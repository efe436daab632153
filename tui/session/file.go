package session

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	tea "charm.land/bubbletea/v2"

	"trivet/mechanics/sheet"
	"trivet/tui/grid"
	"trivet/tui/journal"
)

// File is where the sheet of a session lies, and the journal that is kept of it. Its
// commands alone touch the disk.
type File struct {
	Path   string      // "" for a sheet that has none yet
	Stamp  sheet.Stamp // what the file was when it was read or written last
	Store  Saver       // nil: sheets are saved by their path
	Folder string      // that the names of the store lie in
	Saving bool
	Opened func(path string) error // records a sheet opened; nil: none is

	Every    time.Duration // how often the file is looked at; 0: never
	reported string        // of the file on disk

	Keeps    bool             // a journal
	Journals []string         // further folders of them
	Journal  *journal.Journal // nil where none is kept
	noted    note             // what it was told last
	offered  bool             // what was left of sheets without a file
	others   int              // workbenches on the same sheet that were told of
}

// Saver writes a sheet under a name, as sheet.Save does.
type Saver func(path string, s *sheet.Sheet, was sheet.Stamp, force bool) (sheet.Stamp, error)

// Saved is what became of a save.
type Saved struct {
	Path    string
	Sheet   *sheet.Sheet
	Stamp   sheet.Stamp
	Err     error
	Changes []sheet.Change // in the file that is in the way
}

// Seen is what a look at the disk has found: the sheet's file, where it is not as it was,
// and the other workbenches that have it open.
type Seen struct {
	Path  string
	Sheet *sheet.Sheet // nil: as it was, or see below
	Stamp sheet.Stamp
	Gone  bool
	Err   error

	Beat    bool // the others and the journal were asked after
	Others  []journal.Other
	Trouble string
}

// Title is the file's name, or a word for none.
func (f *File) Title() string {
	if f.Path == "" {
		return "untitled"
	}
	return grid.Clean(filepath.Base(f.Path))
}

// at is where a sheet lies, for its journal: a name in a host's store is found by others
// on its whole path alone.
func (f *File) at(path string) string {
	if path == "" || f.Folder == "" {
		return path
	}
	return filepath.Join(f.Folder, path)
}

// Reopen turns to another sheet's file.
func (f *File) Reopen(path string, stamp sheet.Stamp) { f.Path, f.Stamp, f.reported = path, stamp, "" }

// Record puts the sheet among those opened last. Nothing but that list depends on it, so
// an error is not the person's concern.
func (f *File) Record() tea.Cmd {
	record, path := f.Opened, f.Path
	if record == nil || path == "" {
		return nil
	}
	return func() tea.Msg {
		_ = record(path)
		return nil
	}
}

// Save writes a sheet to the file of a path, which the journal and the list of those
// opened last then know it by. The reply is a Saved.
func (f *File) Save(path string, s *sheet.Sheet, was sheet.Stamp, force bool) tea.Cmd {
	f.Saving = true
	save, j, at, own := f.Store, f.Journal, f.at(path), f.Store == nil
	if own {
		save = sheet.Save
	}
	record := (&File{Opened: f.Opened, Path: path}).Record()
	return func() tea.Msg {
		out := Saved{Path: path, Sheet: s}
		out.Stamp, out.Err = save(path, s, was, force)
		if out.Err == nil && j != nil {
			j.Saved(at, s.Text())
		}
		if out.Err == nil && record != nil {
			record()
		}
		if changed := (*sheet.ChangedError)(nil); own && errors.As(out.Err, &changed) {
			if now, _, err := sheet.Load(path); err == nil {
				out.Changes = sheet.Diff(s, now)
			}
		}
		return out
	}
}

// Take receives a save that was done.
func (f *File) Take(msg Saved) {
	f.Saving = false
	if msg.Err == nil {
		f.Path, f.Stamp = msg.Path, msg.Stamp
	}
}

// Look reads the file where its time or size is not what it was. What a host stores for a
// session is not found by its path.
func (f *File) Look() tea.Cmd {
	look := f.look()
	if look == nil {
		return nil
	}
	return func() tea.Msg {
		if seen, changed := look(); changed {
			return seen
		}
		return nil
	}
}

// Watch does what Look does, tells the others that the session lives, and looks for them.
func (f *File) Watch() tea.Cmd {
	look, j, others := f.look(), f.Journal, f.others
	if j == nil {
		return f.Look()
	}
	path := f.Path
	return func() tea.Msg {
		seen, changed := Seen{Path: path}, false
		if look != nil {
			seen, changed = look()
		}
		j.Beat()
		seen.Beat, seen.Others, seen.Trouble = true, j.Others(), j.Trouble()
		if !changed && len(seen.Others) == others && seen.Trouble == "" {
			return nil
		}
		return seen
	}
}

func (f *File) look() func() (seen Seen, changed bool) {
	path, was := f.Path, f.Stamp
	if path == "" || was.IsZero() || f.Saving || f.Store != nil {
		return nil
	}
	return func() (Seen, bool) {
		seen := Seen{Path: path}
		info, err := os.Stat(path)
		switch {
		case errors.Is(err, fs.ErrNotExist):
			seen.Gone = true
			return seen, true
		case err != nil || info.Size() == was.Size && info.ModTime().Equal(was.Time):
			return seen, false
		}
		seen.Sheet, seen.Stamp, seen.Err = sheet.Load(path)
		return seen, true
	}
}

// Heard says what is to be said of the file on disk, each once; ask tells that its text
// is another one than the sheet's.
func (f *File) Heard(seen Seen, h *sheet.History) (says string, ask bool) {
	content := ""
	switch {
	case seen.Gone:
		says = f.Title() + " is gone from the disk: ctrl+s writes it again"
	case seen.Err != nil:
		says = f.Title() + " was changed on disk and does not read now: " + seen.Err.Error()
	case seen.Sheet == nil:
		return "", false
	case seen.Sheet.Text() == h.Current().Text():
		f.Stamp = seen.Stamp
		h.MarkSaved()
		return "", false
	default:
		content = seen.Sheet.Text()
	}
	if f.reported == says+content {
		return "", false
	}
	f.reported = says + content
	return says, says == ""
}

// Reload takes the file on disk for the sheet's own; the reply is nil.
func (f *File) Reload(seen Seen) tea.Cmd {
	f.Stamp = seen.Stamp
	j, at := f.Journal, f.at(f.Path)
	if j == nil {
		return nil
	}
	return func() tea.Msg {
		j.Saved(at, seen.Sheet.Text())
		return nil
	}
}
