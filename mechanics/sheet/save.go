package sheet

import (
	"crypto/rand"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"time"

	"trivet/mechanics/diag"
)

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
	written, err := replace(path, s.text, was, force)
	if err != nil {
		return Stamp{}, err
	}
	Sweep(path)
	// the stamp is of what is written here, not of what another program may
	// put in its place a moment later
	return stampOf([]byte(s.text), written), nil
}

// Write writes a file that is no sheet, such as a page, in the manner of Save:
// whole or not at all, a link followed. A file that is there is refused with a
// *ChangedError unless forced; any other error is a *diag.Error. After an error
// what was there is as it was.
func Write(path string, data []byte, force bool) error {
	_, err := replace(path, string(data), Stamp{}, force)
	return err
}

// replace writes a text to the file that a path leads to, by a file beside it that is
// renamed, and gives when it was written. What stands there is looked at before the work
// and right before the renaming.
func replace(path, text string, was Stamp, force bool) (written time.Time, err error) {
	target, err := follow(path)
	if err != nil {
		return written, WriteError(err)
	}
	mode, err := writable(target)
	if err != nil {
		return written, err
	}
	if err := unchanged(target, was, force); err != nil {
		return written, err
	}
	temp := filepath.Join(filepath.Dir(target), Beside())
	defer os.Remove(temp) // gone already once it is renamed
	if written, err = writeBeside(temp, target, text, mode); err != nil {
		return written, WriteError(err)
	}
	if err := unchanged(target, was, force); err != nil {
		return written, err
	}
	if err := os.Rename(temp, target); err != nil {
		return written, WriteError(err)
	}
	// Syncing the folder makes the rename last. Not every system can; the file itself is
	// whole either way.
	if folder, err := os.Open(filepath.Dir(target)); err == nil {
		folder.Sync()
		folder.Close()
	}
	return written, nil
}

// follow gives the file that a path leads to; the file need not be there.
func follow(path string) (string, error) {
	const most = 40 // links, the usual limit of the systems themselves
	for range most {
		to, err := os.Readlink(path)
		if err != nil {
			return path, nil // no link; what else is wrong with it shows when it is written
		}
		if !filepath.IsAbs(to) {
			to = filepath.Join(filepath.Dir(path), to)
		}
		path = to
	}
	return "", syscall.ELOOP
}

// writable gives the mode for the new file, 0 where there is none yet. A file
// that may not be written is refused here, since a rename would not ask.
func writable(path string) (fs.FileMode, error) {
	info, err := os.Stat(path)
	if errors.Is(err, fs.ErrNotExist) {
		return 0, nil
	}
	if err != nil {
		return 0, WriteError(err)
	}
	if err := regular(info); err != nil {
		return 0, err
	}
	f, err := os.OpenFile(path, os.O_WRONLY, 0)
	if err == nil {
		err = f.Close()
	}
	switch mode := info.Mode().Perm(); {
	case errors.Is(err, fs.ErrPermission), mode&0o222 == 0: // which holds for root too
		return 0, &diag.Error{Msg: "the file is read-only", Hint: elsewhere, Err: err}
	case err != nil:
		return 0, WriteError(err)
	default:
		return mode, nil
	}
}

// unchanged refuses a file on disk that is not what was read, unless forced.
func unchanged(path string, was Stamp, force bool) error {
	_, now, err := readFile(path)
	gone := errors.Is(err, fs.ErrNotExist)
	switch {
	case force, gone && was.IsZero():
		return nil
	case gone:
		return &ChangedError{Deleted: true}
	case was.IsZero():
		return &ChangedError{Appeared: true, Time: now.Time}
	case err != nil:
		return err
	case !was.same(now):
		return &ChangedError{Time: now.Time}
	}
	return nil
}

// writeBeside writes text to a new file that is to take the place of target, and gives
// when. mode is the target's, 0 where there is none.
func writeBeside(name, target, text string, mode fs.FileMode) (written time.Time, err error) {
	create := fs.FileMode(0o666) // less what the user's umask takes away
	if mode != 0 {
		create = 0o600 // until it has the old one's owner
	}
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, create)
	if err != nil {
		return written, err
	}
	_, err = f.WriteString(text)
	if err == nil && mode != 0 {
		keepOwner(f, target)
		err = f.Chmod(mode)
	}
	if err == nil {
		err = f.Sync()
	}
	info, statErr := f.Stat()
	if err := errors.Join(err, statErr, f.Close()); err != nil {
		return written, err
	}
	return info.ModTime(), nil
}

// Beside is a new name for a file that is being written and renamed once it is whole,
// such as Sweep knows where that never comes: random characters in RFC 4648's base 32.
func Beside() string { return ".trivet-" + rand.Text()[:12] }

var beside = ".trivet-" + strings.Repeat("[A-Z2-7]", 12)

// abandoned is the age at which a file that was to be renamed is nobody's any
// more: writing one takes seconds even on a slow disk.
const abandoned = 10 * time.Minute

// Sweep removes what saves that were killed left in the folder of path. Files
// that another session may still be writing stay, and what cannot be removed.
func Sweep(path string) {
	if target, err := follow(path); err == nil {
		path = target
	}
	folder := filepath.Dir(path)
	names, _ := fs.Glob(os.DirFS(folder), beside)
	for _, name := range names {
		name = filepath.Join(folder, name)
		if info, err := os.Lstat(name); err == nil && info.Mode().IsRegular() && time.Since(info.ModTime()) > abandoned {
			os.Remove(name)
		}
	}
}
