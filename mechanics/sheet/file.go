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

// FileError says why a file was not read or written. Hint says what would do;
// it may be empty. The caller puts the file's name before it.
type FileError struct {
	Msg, Hint string
	Err       error
}

func (e *FileError) Error() string { return e.Msg }

func (e *FileError) Unwrap() error { return e.Err }

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
		return "there is a file of this name already"
	}
	return "the file was changed by someone else since it was read, at " + e.Time.Format("15:04:05 on 2 January 2006")
}

// Load reads a sheet from a file. An error is a *FileError about the file or
// an *Error about its text.
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
		return &FileError{Msg: "this is a folder", Hint: "name a sheet in it"}
	case m.IsRegular():
		return nil
	case m&fs.ModeNamedPipe != 0:
		return &FileError{Msg: "this is a pipe, not a file", Hint: "use - to read standard input"}
	}
	return &FileError{Msg: "this is a device, not a file", Hint: "name a sheet"}
}

// inFileWords turns an error of the system into words; doing is "read" or
// "written".
func inFileWords(doing string, err error) error {
	if doing == "read" {
		switch {
		case errors.Is(err, fs.ErrNotExist):
			return &FileError{"there is no such file", "check the name, or make the sheet first", err}
		case errors.Is(err, fs.ErrPermission):
			return &FileError{"the file may not be read", "ask its owner for the right to read it", err}
		case errors.Is(err, syscall.ENOTDIR):
			return &FileError{"part of the path is a file, not a folder", "check the name", err}
		case errors.Is(err, syscall.ENAMETOOLONG):
			return &FileError{"the name is too long", "shorten it", err}
		case errors.Is(err, syscall.ELOOP):
			return &FileError{"the links lead in a circle", "name the file itself", err}
		}
		return &FileError{"the file cannot be read: " + cause(err), "", err}
	}
	const elsewhere = "save it under another name"
	switch {
	case errors.Is(err, syscall.ENOSPC), errors.Is(err, syscall.EDQUOT):
		return &FileError{"the disk is full; nothing was changed", "make room, or " + elsewhere, err}
	case errors.Is(err, syscall.EROFS):
		return &FileError{"the disk can only be read", elsewhere, err}
	case errors.Is(err, fs.ErrPermission):
		return &FileError{"nothing may be written in this folder", elsewhere, err}
	case errors.Is(err, fs.ErrNotExist):
		return &FileError{"there is no such folder", "make the folder, or " + elsewhere, err}
	case errors.Is(err, syscall.ENOTDIR):
		return &FileError{"part of the path is a file, not a folder", elsewhere, err}
	case errors.Is(err, syscall.ENAMETOOLONG):
		return &FileError{"the name is too long", "shorten it", err}
	}
	return &FileError{fmt.Sprintf("the file cannot be %s: %s", doing, cause(err)), elsewhere, err}
}

// WriteError turns an error of the system in writing into a *FileError.
func WriteError(err error) error { return inFileWords("written", err) }

// cause leaves the path out of a system error, since the caller names it.
func cause(err error) string {
	var p *fs.PathError
	if errors.As(err, &p) {
		return p.Err.Error()
	}
	return err.Error()
}
