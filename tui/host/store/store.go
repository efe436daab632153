// Package store keeps the sheets of a host: each in one folder, within quotas, and none lost at the
// end of a session.
package store

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
	"unicode"

	"trivet/mechanics/diag"
	"trivet/mechanics/sheet"
)

// Quotas of one private visitor. A sheet of 500 rows that is made to be hard takes
// half a second to solve; each doubling of the rows takes ten times as long.
const (
	maxSheets   = 40
	maxRescued  = 10        // more that may be kept where a session ends
	MaxRows     = 500       // of one sheet
	MaxBytes    = 256 << 10 // of one sheet
	MaxKept     = 2 << 30   // bytes of all visitors together, rescued sheets among them
	LastBytes   = 256 << 20 // of MaxKept, for what is saved where a session ends: of 1000 visitors a sheet of the largest size
	longestName = 80
	maxListed   = 400 // files looked at in a folder
	FolderMode  = 0o700
	SheetMode   = 0o600
	Ending      = ".toml"
)

// Store keeps sheets in one folder and nowhere else: names have no folders in
// them, and the root refuses links that lead out.
type Store struct {
	folder      func(create bool) (*os.Root, error) // to be closed; made where it is not there and that is asked for
	own         string                              // a name that is well whatever badName says of it: of the sheet presented
	limit       int                                 // sheets; 0 for no quota
	rows, bytes int                                 // of a sheet; 0 for no quota
	turn        *sync.Mutex
	kept        *atomic.Int64            // bytes that all visitors keep; nil without a quota
	rescues     bool                     // what ends is saved beyond the number of sheets, and into the last bytes
	spare       func() (*os.Root, error) // where a sheet goes at the end that its folder does not take; may be nil
}

// OfFolder is the store of a folder that is there, whose sheets are copied.
func OfFolder(root *os.Root) *Store { return &Store{folder: fixed(root)} }

// OfSheet is the store of the one sheet that is presented. What its folder does not take at the
// end goes to what spare gives.
func OfSheet(root *os.Root, name string, spare func() (*os.Root, error)) *Store {
	return &Store{folder: fixed(root), own: name, spare: spare}
}

// OfVisitor is the store of a private visitor, within the quotas: in a folder that is made where
// create asks for it, written in turn, with the bytes of all visitors together in kept.
func OfVisitor(folder func(create bool) (*os.Root, error), turn *sync.Mutex, kept *atomic.Int64) *Store {
	return &Store{folder: folder, limit: maxSheets, rows: MaxRows, bytes: MaxBytes, kept: kept, turn: turn}
}

// TooLarge is said of a change that is not made.
const TooLarge = "a sheet may have 500 rows and 256 kB here, so the last key was not applied"

// fits tells whether a sheet is within the quota.
func (st *Store) fits(s *sheet.Sheet) error {
	rows := 0
	for _, t := range s.Tables {
		rows += len(t.Rows)
	}
	switch bytes := len(s.Text()); {
	case st.rows > 0 && rows > st.rows:
		return diag.New(fmt.Sprintf("the sheet has %d rows, but a visitor's sheet may have %d", rows, st.rows), "remove rows")
	case st.bytes > 0 && bytes > st.bytes:
		return diag.New(fmt.Sprintf("the sheet has %d kB, but a visitor's sheet may have %d", bytes>>10, st.bytes>>10), "remove rows")
	}
	return nil
}

// fine says what is wrong with a name in this folder.
func (st *Store) fine(name string) error {
	if st.own != "" && name == st.own {
		return nil
	}
	return badName(name)
}

// badName says what is wrong with a name for a sheet.
func badName(name string) error {
	refuse := func(msg string) error {
		return diag.New(fmt.Sprintf("%q %s", name, msg), "a name such as mast.toml")
	}
	switch {
	case strings.ContainsAny(name, `/\:`):
		return refuse("is in another folder, but all sheets are kept in one")
	case !strings.HasSuffix(name, Ending) || len(name) == len(Ending):
		return refuse("does not end in .toml")
	case len(name) > longestName:
		return refuse("is too long")
	case name[0] == '.' || name[0] == '-' || name[0] == ' ':
		return refuse("begins with a character that hides it")
	}
	for _, r := range name {
		if !unicode.IsLetter(r) && !unicode.IsDigit(r) && !strings.ContainsRune("._- ", r) {
			return refuse("has characters other than letters, digits and . _ -")
		}
	}
	return nil
}

// stampOf tells one state of a file from another, by its time and size: what is
// in this folder is written here alone.
func stampOf(info fs.FileInfo) sheet.Stamp {
	return sheet.Stamp{Time: info.ModTime(), Size: info.Size()}
}

// Load reads a sheet.
func (st *Store) Load(name string) (*sheet.Sheet, sheet.Stamp, error) {
	if err := st.fine(name); err != nil {
		return nil, sheet.Stamp{}, err
	}
	root, err := st.folder(false)
	if err != nil {
		return nil, sheet.Stamp{}, sheet.ReadError(err)
	}
	defer root.Close()
	info, err := root.Stat(name) // before opening, which would wait at a pipe
	if err != nil {
		return nil, sheet.Stamp{}, sheet.ReadError(err)
	}
	if !info.Mode().IsRegular() {
		return nil, sheet.Stamp{}, diag.New("this is not a file", "the name of a sheet")
	}
	f, err := root.Open(name)
	if err != nil {
		return nil, sheet.Stamp{}, sheet.ReadError(err)
	}
	defer f.Close()
	s, err := sheet.Read(f)
	if err == nil {
		err = st.fits(s)
	}
	return s, stampOf(info), err
}

// Names lists the sheets.
func (st *Store) Names() []string {
	root, err := st.folder(false)
	if err != nil {
		return nil
	}
	defer root.Close()
	return namesIn(root)
}

func namesIn(root *os.Root) (all []string) {
	d, err := root.Open(".")
	if err != nil {
		return nil
	}
	defer d.Close()
	entries, _ := d.ReadDir(maxListed)
	for _, e := range entries {
		if e.Type().IsRegular() && badName(e.Name()) == nil {
			all = append(all, e.Name())
		}
	}
	slices.Sort(all)
	return all
}

// Save writes a sheet beside its place and moves it there, so that a crash
// leaves the old one or the new one.
func (st *Store) Save(name string, s *sheet.Sheet, was sheet.Stamp, force bool) (sheet.Stamp, error) {
	if err := st.fine(name); err != nil {
		return sheet.Stamp{}, err
	}
	if err := st.fits(s); err != nil {
		return sheet.Stamp{}, err
	}
	if st.turn != nil {
		st.turn.Lock()
		defer st.turn.Unlock()
	}
	root, err := st.folder(true)
	if err != nil {
		return sheet.Stamp{}, sheet.WriteError(err)
	}
	defer root.Close()
	mode := fs.FileMode(SheetMode)
	info, err := root.Lstat(name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		limit := st.limit
		if st.rescues {
			limit += maxRescued
		}
		if st.limit > 0 && len(namesIn(root)) >= limit {
			return sheet.Stamp{}, diag.New(fmt.Sprintf("a visitor may keep %d sheets, and there are so many already", st.limit), "save over one of them")
		}
		if !was.IsZero() && !force {
			return sheet.Stamp{}, &sheet.ChangedError{Deleted: true}
		}
	case err != nil:
		return sheet.Stamp{}, sheet.WriteError(err)
	case !info.Mode().IsRegular():
		return sheet.Stamp{}, diag.New("this is not a file", "save it under another name")
	case info.Mode().Perm()&0o222 == 0: // a rename would not ask
		return sheet.Stamp{}, diag.New("the file is read-only", "save it under another name")
	case force:
	case was.IsZero():
		return sheet.Stamp{}, &sheet.ChangedError{Appeared: true}
	default:
		if now := stampOf(info); now.Size != was.Size || !now.Time.Equal(was.Time) {
			return sheet.Stamp{}, &sheet.ChangedError{Time: now.Time}
		}
	}
	grows := int64(len(s.Text()))
	if err == nil {
		mode = info.Mode().Perm()
		grows -= info.Size()
	}
	if !st.keeps(grows) {
		return sheet.Stamp{}, diag.New("the host's storage is full", "remove rows, or ask whoever runs it")
	}
	stamp, err := writeSheet(root, name, []byte(s.Text()), mode)
	if err != nil {
		if st.kept != nil {
			st.kept.Add(-grows)
		}
		return sheet.Stamp{}, sheet.WriteError(err)
	}
	return stamp, nil
}

// keeps counts bytes that are to be kept, unless all visitors together would then
// keep too many. The last are for what is saved where a session ends.
func (st *Store) keeps(bytes int64) bool {
	if st.kept == nil {
		return true
	}
	limit := int64(MaxKept)
	if !st.rescues {
		limit -= LastBytes
	}
	if now := st.kept.Add(bytes); bytes > 0 && now > limit {
		st.kept.Add(-bytes)
		return false
	}
	return true
}

// fixed is a folder that is there.
func fixed(root *os.Root) func(bool) (*os.Root, error) {
	return func(bool) (*os.Root, error) { return root.OpenRoot(".") }
}

func writeSheet(root *os.Root, name string, text []byte, mode fs.FileMode) (sheet.Stamp, error) {
	temp := sheet.Beside()
	f, err := root.OpenFile(temp, os.O_WRONLY|os.O_CREATE|os.O_EXCL, mode)
	if err != nil {
		return sheet.Stamp{}, err
	}
	defer func() { _ = root.Remove(temp) }() // gone already once it is renamed
	_, err = io.Copy(f, bytes.NewReader(text))
	if err == nil {
		err = f.Sync()
	}
	err = errors.Join(err, f.Chmod(mode)) // whatever the umask is
	info, statErr := f.Stat()
	if err := errors.Join(err, statErr, f.Close()); err != nil {
		return sheet.Stamp{}, err
	}
	return stampOf(info), root.Rename(temp, name)
}
