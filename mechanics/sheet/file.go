package sheet

import (
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"syscall"
	"time"

	"trivet/mechanics/diag"
)

// Stamp tells one content of a file from another. The zero Stamp stands for
// no file.
type Stamp struct {
	Time time.Time // of the last change
	Size int64
	sum  [sha256.Size]byte
}

// same compares contents: a file touched but not changed is the same.
func (s Stamp) same(o Stamp) bool {
	return s.Size == o.Size && s.sum == o.sum && s.IsZero() == o.IsZero()
}

// IsZero reports whether the stamp stands for no file.
func (s Stamp) IsZero() bool { return s.Time.IsZero() }

// ChangedError says that the file to be written is not the one that was read.
type ChangedError struct {
	Deleted  bool // it is gone
	Appeared bool // it was not there
	Time     time.Time
}

func (e *ChangedError) Error() string {
	switch {
	case e.Deleted:
		return "the file was deleted since it was read"
	case e.Appeared:
		return "a file of this name exists already"
	}
	return "the file was changed by someone else since it was read, at " + e.Time.Format("15:04:05 on 2 January 2006")
}

// Load reads a sheet from a file. An error is a *diag.Error about the file or
// an *diag.Error about its text.
func Load(path string) (*Sheet, Stamp, error) {
	text, stamp, err := readFile(path)
	if err != nil {
		return nil, Stamp{}, err
	}
	s, err := Parse(text)
	if err != nil {
		return nil, Stamp{}, err
	}
	return s, stamp, nil
}

// Read reads a sheet from r, which need not end: more than MaxBytes is
// refused.
func Read(r io.Reader) (*Sheet, error) {
	text, err := io.ReadAll(io.LimitReader(r, MaxBytes+1))
	if err != nil {
		return nil, inFileWords("read", err)
	}
	return Parse(text)
}

// readFile reads no more than Parse needs to refuse a file that is too long.
func readFile(path string) ([]byte, Stamp, error) {
	info, err := os.Stat(path) // before opening, which would wait at a pipe
	if err != nil {
		return nil, Stamp{}, inFileWords("read", err)
	}
	if err := regular(info); err != nil {
		return nil, Stamp{}, err
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, Stamp{}, inFileWords("read", err)
	}
	defer f.Close()
	text, err := io.ReadAll(io.LimitReader(f, MaxBytes+1))
	if err != nil {
		return nil, Stamp{}, inFileWords("read", err)
	}
	return text, Stamp{Time: info.ModTime(), Size: int64(len(text)), sum: sha256.Sum256(text)}, nil
}

func regular(info fs.FileInfo) error {
	switch m := info.Mode(); {
	case m.IsDir():
		return diag.New("this is a folder", "a file in it")
	case m.IsRegular():
		return nil
	case m&fs.ModeNamedPipe != 0:
		return diag.New("this is a pipe, not a file", "- for standard input")
	}
	return diag.New("this is a device, not a file", "the name of a file")
}

// inFileWords turns an error of the system into words; doing is "read" or
// "written".
func inFileWords(doing string, err error) error {
	known, hint := inReading, ""
	if doing == "written" {
		known, hint = inWriting, elsewhere
	}
	for _, k := range known {
		if errors.Is(err, k.is) {
			return &diag.Error{Msg: k.msg, Hint: k.hint, Err: err}
		}
	}
	return &diag.Error{Msg: fmt.Sprintf("the file cannot be %s: %s", doing, cause(err)), Hint: hint, Err: err}
}

const elsewhere = "save it under another name"

// systemError is what an error of the system is in words.
type systemError struct {
	is        error
	msg, hint string
}

// The errors of the system that have words of their own.
var (
	inReading = []systemError{
		{fs.ErrNotExist, "there is no such file", "check the name, or make the sheet first"},
		{fs.ErrPermission, "the file may not be read", "ask its owner for permission to read it"},
		{syscall.ENOTDIR, "part of the path is a file, not a folder", "check the name"},
		{syscall.ENAMETOOLONG, "the name is too long", "shorten it"},
		{syscall.ELOOP, "the links form a loop", "the file itself"},
	}
	inWriting = []systemError{
		{syscall.ENOSPC, "the disk is full, so nothing was changed", "make room, or " + elsewhere},
		{syscall.EDQUOT, "the disk is full, so nothing was changed", "make room, or " + elsewhere},
		{syscall.EROFS, "the disk is read-only", elsewhere},
		{fs.ErrPermission, "writing in this folder is not permitted", elsewhere},
		{fs.ErrNotExist, "there is no such folder", "make the folder, or " + elsewhere},
		{syscall.ENOTDIR, "part of the path is a file, not a folder", elsewhere},
		{syscall.ENAMETOOLONG, "the name is too long", "shorten it"},
	}
)

// WriteError turns an error of the system in writing into a *diag.Error.
func WriteError(err error) error { return inFileWords("written", err) }

// cause leaves the path out of a system error, since the caller names it.
func cause(err error) string {
	var p *fs.PathError
	if errors.As(err, &p) {
		return p.Err.Error()
	}
	return err.Error()
}
