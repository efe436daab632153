package sheet

import (
	"crypto/sha256"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	"trivet/mechanics/diag"
)

// maxLinks is how many links are followed to the file that is written, the
// usual limit of the systems themselves.
const maxLinks = 40

// Save writes a sheet to a file, whole or not at all: it writes a file of its
// own beside the target and renames it. A link is followed; mode and, where
// possible, owner are kept. was is the stamp of the file as it was read, zero
// where there was none; where the file on disk is another one now, Save
// refuses with a *ChangedError unless forced. Any other error is a
// *diag.Error. After an error the file is as it was.
//
// Another program that writes the file between the last look at it and the
// rename is not noticed; no system call would close that gap. Hard links and
// extended attributes are not kept.
func Save(path string, s *Sheet, was Stamp, force bool) (Stamp, error) {
	target, written, err := replace(path, s.text, func(target string) error { return unchanged(target, was, force) })
	if err != nil {
		return Stamp{}, err
	}
	Sweep(target)
	// the stamp is of what is written here, not of what another program may
	// put in its place a moment later
	return Stamp{Time: written, Size: int64(len(s.text)), sum: sha256.Sum256([]byte(s.text))}, nil
}

// replace writes a text to the file that a path leads to, by a file beside it that is
// renamed, and gives the file and when it was written. free refuses a file that may not
// be replaced; it is asked before the work and right before the renaming.
func replace(path, text string, free func(target string) error) (target string, written time.Time, err error) {
	if target, err = follow(path); err != nil {
		return "", written, err
	}
	mode, err := writable(target)
	if err != nil {
		return "", written, err
	}
	if err := free(target); err != nil {
		return "", written, err
	}
	temp, err := writeBeside(target, text, mode)
	if err != nil {
		return "", written, inFileWords("written", err)
	}
	defer os.Remove(temp) // gone already once it is renamed
	written = time.Now()
	if info, err := os.Stat(temp); err == nil {
		written = info.ModTime()
	}
	if err := free(target); err != nil {
		return "", written, err
	}
	if err := os.Rename(temp, target); err != nil {
		return "", written, inFileWords("written", err)
	}
	syncFolder(filepath.Dir(target))
	return target, written, nil
}

// follow gives the file that a path leads to; the file need not be there.
func follow(path string) (string, error) {
	for range maxLinks {
		info, err := os.Lstat(path)
		if errors.Is(err, fs.ErrNotExist) {
			return path, nil
		}
		if err != nil {
			return "", inFileWords("written", err)
		}
		if info.Mode()&fs.ModeSymlink == 0 {
			return path, nil
		}
		to, err := os.Readlink(path)
		if err != nil {
			return "", inFileWords("written", err)
		}
		if !filepath.IsAbs(to) {
			to = filepath.Join(filepath.Dir(path), to)
		}
		path = to
	}
	return "", diag.New("the links form a loop", "save it under another name")
}

// writable gives the mode for the new file, 0 where there is none yet. A file
// that may not be written is refused here, since a rename would not ask.
func writable(path string) (fs.FileMode, error) {
	info, err := os.Stat(path)
	if errors.Is(err, fs.ErrNotExist) {
		return 0, nil
	}
	if err != nil {
		return 0, inFileWords("written", err)
	}
	if err := regular(info); err != nil {
		return 0, err
	}
	readOnly := diag.New("the file is read-only", "save it under another name")
	if info.Mode().Perm()&0o222 == 0 { // holds for root too
		return 0, readOnly
	}
	f, err := os.OpenFile(path, os.O_WRONLY, 0)
	if errors.Is(err, fs.ErrPermission) {
		readOnly.Err = err
		return 0, readOnly
	}
	if err != nil {
		return 0, inFileWords("written", err)
	}
	return info.Mode().Perm(), f.Close()
}

// unchanged compares the file on disk with what was read.
func unchanged(path string, was Stamp, force bool) error {
	if force {
		return nil
	}
	_, now, err := readFile(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		if was.IsZero() {
			return nil
		}
		return &ChangedError{Deleted: true}
	case err != nil:
		return err
	case was.IsZero():
		return &ChangedError{Appeared: true, Time: now.Time}
	case !was.same(now):
		return &ChangedError{Time: now.Time}
	}
	return nil
}

// writeBeside writes text to a new file in the folder of path and gives its
// name. After an error no such file is left.
func writeBeside(path, text string, mode fs.FileMode) (string, error) {
	name := besidePath(path)
	create := fs.FileMode(0o666) // less what the user's umask takes away
	if mode != 0 {
		create = 0o600 // until it has the old one's owner
	}
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, create)
	if err != nil {
		return "", err
	}
	_, err = f.WriteString(text)
	if err == nil && mode != 0 {
		keepOwner(f, path)
		err = f.Chmod(mode)
	}
	if err == nil {
		err = f.Sync()
	}
	if err = errors.Join(err, f.Close()); err != nil {
		os.Remove(name)
		return "", err
	}
	return name, nil
}

// syncFolder makes the rename last. Not every system can; the file itself is
// whole either way.
func syncFolder(path string) {
	if d, err := os.Open(path); err == nil {
		d.Sync()
		d.Close()
	}
}
