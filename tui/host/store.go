package host

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"log/slog"
	"os"
	"path"
	"slices"
	"strings"
	"time"
	"unicode"

	"trivet/mechanics/sheet"
	"trivet/tui"
)

// Quotas of one private visitor.
const (
	mostSheets   = 40
	mostBytes    = 256 << 10 // of one sheet
	longestName  = 80
	mostListed   = 400 // files looked at in a folder
	folderMode   = 0o700
	sheetMode    = 0o600
	sheetsEnding = ".toml"
)

// saver is what the workbench saves with instead of the file system.
type saver interface {
	save(name string, s *sheet.Sheet, was sheet.Stamp, force bool) (sheet.Stamp, error)
	rescue(log *slog.Logger, m tui.Model) (says string)
}

// store keeps sheets in one folder and nowhere else: names have no folders in
// them, and the root refuses links that lead out.
type store struct {
	root  *os.Root
	most  int // sheets; 0 for no quota
	bytes int
}

// badName says what is wrong with a name for a sheet.
func badName(name string) error {
	refuse := func(msg string) error {
		return &sheet.FileError{Msg: fmt.Sprintf("%q %s", name, msg), Hint: "try a name such as mast.toml"}
	}
	switch {
	case strings.ContainsAny(name, `/\:`):
		return refuse("leads into another folder, and sheets are kept in one")
	case !strings.HasSuffix(name, sheetsEnding) || len(name) == len(sheetsEnding):
		return refuse("does not end in .toml")
	case len(name) > longestName:
		return refuse("is too long")
	case name[0] == '.' || name[0] == '-' || name[0] == ' ':
		return refuse("begins with a sign that hides it")
	}
	for _, r := range name {
		if !unicode.IsLetter(r) && !unicode.IsDigit(r) && !strings.ContainsRune("._- ", r) {
			return refuse("has other signs than letters, digits and . _ -")
		}
	}
	return nil
}

// stampOf tells one state of a file from another, by its time and size: what is
// in this folder is written here alone.
func stampOf(info fs.FileInfo) sheet.Stamp {
	return sheet.Stamp{Time: info.ModTime(), Size: info.Size()}
}

func inWords(doing string, err error) error {
	var p *fs.PathError
	if errors.As(err, &p) {
		err = p.Err
	}
	return &sheet.FileError{Msg: "the sheet cannot be " + doing + ": " + err.Error(), Err: err}
}

func (st *store) load(name string) (*sheet.Sheet, sheet.Stamp, error) {
	if err := badName(name); err != nil {
		return nil, sheet.Stamp{}, err
	}
	f, err := st.root.Open(name)
	if err != nil {
		return nil, sheet.Stamp{}, inWords("read", err)
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil {
		return nil, sheet.Stamp{}, inWords("read", err)
	}
	if !info.Mode().IsRegular() {
		return nil, sheet.Stamp{}, &sheet.FileError{Msg: "this is not a file"}
	}
	s, err := sheet.Read(f)
	return s, stampOf(info), err
}

// names lists the sheets.
func (st *store) names() (all []string) {
	d, err := st.root.Open(".")
	if err != nil {
		return nil
	}
	defer d.Close()
	entries, _ := d.ReadDir(mostListed)
	for _, e := range entries {
		if e.Type().IsRegular() && badName(e.Name()) == nil {
			all = append(all, e.Name())
		}
	}
	slices.Sort(all)
	return all
}

// save writes a sheet beside its place and moves it there, so that a crash
// leaves the old one or the new one.
func (st *store) save(name string, s *sheet.Sheet, was sheet.Stamp, force bool) (sheet.Stamp, error) {
	if err := badName(name); err != nil {
		return sheet.Stamp{}, err
	}
	text := []byte(s.Text())
	if st.bytes > 0 && len(text) > st.bytes {
		return sheet.Stamp{}, &sheet.FileError{Msg: fmt.Sprintf("the sheet has %d kB, and a visitor's may have %d", len(text)>>10, st.bytes>>10), Hint: "take rows out"}
	}
	info, err := st.root.Lstat(name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		if st.most > 0 && len(st.names()) >= st.most {
			return sheet.Stamp{}, &sheet.FileError{Msg: fmt.Sprintf("there are %d sheets already, which is all a visitor may keep", st.most), Hint: "save over one of them"}
		}
		if !was.IsZero() && !force {
			return sheet.Stamp{}, &sheet.ChangedError{Deleted: true}
		}
	case err != nil:
		return sheet.Stamp{}, inWords("written", err)
	case !info.Mode().IsRegular():
		return sheet.Stamp{}, &sheet.FileError{Msg: "this is not a file", Hint: "save it under another name"}
	case force:
	case was.IsZero():
		return sheet.Stamp{}, &sheet.ChangedError{Appeared: true}
	default:
		if now := stampOf(info); now.Size != was.Size || !now.Time.Equal(was.Time) {
			return sheet.Stamp{}, &sheet.ChangedError{Time: now.Time}
		}
	}
	stamp, err := st.write(name, text)
	if err != nil {
		return sheet.Stamp{}, inWords("written", err)
	}
	return stamp, nil
}

func (st *store) write(name string, text []byte) (sheet.Stamp, error) {
	temp := fmt.Sprintf(".%s.%d", name, time.Now().UnixNano())
	f, err := st.root.OpenFile(temp, os.O_WRONLY|os.O_CREATE|os.O_EXCL, sheetMode)
	if err != nil {
		return sheet.Stamp{}, err
	}
	defer func() { _ = st.root.Remove(temp) }() // gone already once it is renamed
	_, err = io.Copy(f, bytes.NewReader(text))
	if err == nil {
		err = f.Sync()
	}
	info, statErr := f.Stat()
	if err := errors.Join(err, statErr, f.Close()); err != nil {
		return sheet.Stamp{}, err
	}
	return stampOf(info), st.root.Rename(temp, name)
}

// rescue saves what a session that ends has not saved: to its file, or where
// another has written that meanwhile, beside it.
func (st *store) rescue(log *slog.Logger, m tui.Model) (says string) {
	name, s, was, lost := m.Unsaved()
	if !lost {
		return ""
	}
	if name == "" {
		name = "untitled" + sheetsEnding
	}
	name = path.Base(name)
	_, err := st.save(name, s, was, false)
	var changed *sheet.ChangedError
	if errors.As(err, &changed) {
		name = strings.TrimSuffix(name, sheetsEnding) + time.Now().Format("-20060102-150405") + sheetsEnding
		_, err = st.save(name, s, sheet.Stamp{}, false)
	}
	if err != nil {
		log.Error("a sheet could not be saved", "sheet", name, "why", err)
		return "; the sheet could not be saved: " + err.Error()
	}
	log.Info("a sheet is saved at the end", "sheet", name)
	return "; what was not saved is in " + name
}
