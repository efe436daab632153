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

func stampOf(text []byte, changed time.Time) Stamp {
	return Stamp{changed, int64(len(text)), sha256.Sum256(text)}
}

// same compares contents: a file touched but not changed is the same.
func (s Stamp) same(o Stamp) bool { return s.sum == o.sum && s.IsZero() == o.IsZero() }

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
	text, err := readAll(r)
	if err != nil {
		return nil, err
	}
	return Parse(text)
}

// readAll reads no more than Parse needs to refuse a text that is too long.
func readAll(r io.Reader) ([]byte, error) {
	text, err := io.ReadAll(io.LimitReader(r, MaxBytes+1))
	if err != nil {
		return nil, ReadError(err)
	}
	return text, nil
}

func readFile(path string) ([]byte, Stamp, error) {
	info, err := os.Stat(path) // before opening, which would wait at a pipe
	if err != nil {
		return nil, Stamp{}, ReadError(err)
	}
	if err := regular(info); err != nil {
		return nil, Stamp{}, err
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, Stamp{}, ReadError(err)
	}
	defer f.Close()
	text, err := readAll(f)
	return text, stampOf(text, info.ModTime()), err
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

const elsewhere = "save it under another name"

// systemErrors are errors of the system in words, from the top the first that it is.
type systemErrors []struct {
	is        error
	msg, hint string
}

// The errors of the system that have words of their own.
var (
	inReading = systemErrors{
		{fs.ErrNotExist, "there is no such file", "check the name, or make the sheet first"},
		{fs.ErrPermission, "the file may not be read", "ask its owner for permission to read it"},
		{syscall.ENOTDIR, "part of the path is a file, not a folder", "check the name"},
		{syscall.ENAMETOOLONG, "the name is too long", "shorten it"},
		{syscall.ELOOP, "the links form a loop", "the file itself"},
	}
	inWriting = systemErrors{
		{syscall.ENOSPC, "the disk is full, so nothing was changed", "make room, or " + elsewhere},
		{syscall.EDQUOT, "the disk is full, so nothing was changed", "make room, or " + elsewhere},
		{syscall.EROFS, "the disk is read-only", elsewhere},
		{fs.ErrPermission, "writing in this folder is not permitted", elsewhere},
		{fs.ErrNotExist, "there is no such folder", "make the folder, or " + elsewhere},
		{syscall.ENOTDIR, "part of the path is a file, not a folder", elsewhere},
		{syscall.ENAMETOOLONG, "the name is too long", "shorten it"},
		{syscall.ELOOP, "the links form a loop", elsewhere},
	}
)

// ReadError turns an error of the system in reading into a *diag.Error.
func ReadError(err error) error { return inReading.words("read", "", err) }

// WriteError turns an error of the system in writing into a *diag.Error.
func WriteError(err error) error { return inWriting.words("written", elsewhere, err) }

// words turns an error of the system into words. The path is left out, since the caller names it.
func (known systemErrors) words(done, hint string, err error) error {
	for _, k := range known {
		if errors.Is(err, k.is) {
			return &diag.Error{Msg: k.msg, Hint: k.hint, Err: err}
		}
	}
	cause := err.Error()
	if p := (*fs.PathError)(nil); errors.As(err, &p) {
		cause = p.Err.Error()
	}
	return &diag.Error{Msg: fmt.Sprintf("the file cannot be %s: %s", done, cause), Hint: hint, Err: err}
}
