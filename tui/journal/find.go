package journal

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"trivet/mechanics/sheet"
)

const (
	fileEnd = ".journal"
	tempEnd = ".new"
)

// prefix begins the names of the journals of a sheet. 16 bytes of the hash tell
// more sheets apart than there are.
func prefix(path string) string {
	sum := sha256.Sum256([]byte(path))
	return hex.EncodeToString(sum[:16]) + "-"
}

// absolute gives the one name of a file that is reached on several ways.
func absolute(path string) string {
	if path == "" {
		return ""
	}
	abs, err := filepath.Abs(path)
	if err != nil {
		return path
	}
	if real, err := filepath.EvalSymlinks(abs); err == nil {
		return real
	}
	// A file that is not there yet lies in a folder that is.
	if real, err := filepath.EvalSymlinks(filepath.Dir(abs)); err == nil {
		return filepath.Join(real, filepath.Base(abs))
	}
	return abs
}

// Found is what the state folder says of a sheet.
type Found struct {
	Offers []Offer // of sessions that ended without order, the latest first
	Others []Other // other sessions that have the sheet open now
}

// Offer is unsaved work. Text has the cell that was being typed in it, where the
// sheet takes it; Typed is that cell, nil where none was.
type Offer struct {
	Path    string // "" of a sheet that had no file yet
	When    time.Time
	Text    string
	Typed   *Typed
	Changes []sheet.Change // from the current text; nil where that does not read
	file    string
	applied bool // Text has Typed in it
}

// Other is another session with the same sheet.
type Other struct {
	Host   string
	Pid    int
	Opened time.Time
	Here   bool // on this machine
}

// String words it: "process 4123, since 10:02".
func (o Other) String() string {
	where := ""
	if !o.Here {
		where = " on " + o.Host
	}
	return fmt.Sprintf("process %d%s, since %s", o.Pid, where, o.Opened.Format("15:04"))
}

// Find looks for what other sessions left or have of the sheet at path, "" for
// one without a file, whose text is current now; in the folders that Open may
// use. Journals that hold nothing unsaved, and leftovers, are removed. Nothing
// found is all that an unreadable folder gives.
func Find(env []string, path, current string, others ...string) Found {
	folders, _ := foldersOf(env, others)
	return find(folders, absolute(path), current, "")
}

// Others gives the other sessions that have this journal's sheet open now.
func (j *Journal) Others() []Other {
	j.mu.Lock()
	defer j.mu.Unlock()
	if j.name == "" || j.head.Path == "" {
		return nil // sheets without a file are each one's own
	}
	return find(j.folders, j.head.Path, "", j.name).Others
}

// find leaves the journal named own alone; where there is one, it only looks for others.
func find(folders []string, path, current, own string) Found {
	var found Found
	for _, folder := range folders {
		found.in(folder, path, current, own)
	}
	slices.SortStableFunc(found.Offers, func(a, b Offer) int { return b.When.Compare(a.When) })
	slices.SortStableFunc(found.Others, func(a, b Other) int { return cmp.Or(a.Opened.Compare(b.Opened), a.Pid-b.Pid) })
	return found
}

func (found *Found) in(folder, path, current, own string) {
	entries, _ := os.ReadDir(folder)
	for _, e := range entries {
		name := filepath.Join(folder, e.Name())
		if !strings.HasPrefix(e.Name(), prefix(path)) || name == own || !e.Type().IsRegular() {
			continue
		}
		k, ok, alive, when := look(name)
		switch {
		case alive && ok && k.Path == path && path != "":
			found.Others = append(found.Others, Other{k.Host, k.Pid, k.Opened, k.Host == hostname()})
		case alive || own != "":
		case !ok || !k.dirty() || strings.HasSuffix(name, tempEnd):
			os.Remove(name)
		case k.Path == path:
			o := k.offer(current)
			if o.Text == current && (o.Typed == nil || o.applied) {
				os.Remove(name)
				continue
			}
			o.When, o.file = when, name
			found.Offers = append(found.Offers, o)
		}
	}
}

// look reads a journal and tells whether its session lives.
func look(name string) (k kept, ok, alive bool, when time.Time) {
	f, err := os.Open(name)
	if err != nil {
		return k, false, true, when // not ours to judge: leave it
	}
	defer f.Close()
	if info, err := f.Stat(); err == nil {
		when = info.ModTime()
	}
	k, ok = read(f)
	locked, known := isLocked(f)
	switch {
	case known:
		alive = locked
	case !ok:
		alive = time.Since(when) < beats
	default:
		alive = living(k.entry, when)
	}
	return k, ok, alive, when
}

// offer puts the cell that was being typed into the text.
func (k kept) offer(current string) Offer {
	o := Offer{Path: k.Path, Text: k.text, Typed: k.typed}
	s, err := sheet.Parse([]byte(k.text))
	if err != nil {
		return o
	}
	if k.typed != nil {
		if next, err := s.Apply(sheet.SetCell{Ref: k.typed.Ref, Text: k.typed.Text}); err == nil {
			s = next
			o.Text, o.applied = s.Text(), true
		}
	}
	if now, err := sheet.Parse([]byte(current)); err == nil {
		o.Changes = sheet.Diff(now, s)
	}
	return o
}

// Discard removes an offer, taken or not. Where it was taken, the session that
// took it has it in its own journal first.
func (o Offer) Discard() { os.Remove(o.file) }
