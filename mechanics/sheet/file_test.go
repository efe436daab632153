//go:build linux

package sheet

import (
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"trivet/mechanics/diag"
)

// wantFile checks the words of a file error.
func wantFile(t *testing.T, err error, msg, hint string) {
	t.Helper()
	var e *diag.Error
	if !errors.As(err, &e) {
		t.Fatalf("got %v, want a file error", err)
	}
	if e.Msg != msg || e.Hint != hint {
		t.Errorf("got\n%s\n%s\nwant\n%s\n%s", e.Msg, e.Hint, msg, hint)
	}
}

func write(t *testing.T, path, text string, mode os.FileMode) {
	t.Helper()
	if err := os.WriteFile(path, []byte(text), mode); err != nil {
		t.Fatal(err)
	}
	if err := os.Chmod(path, mode); err != nil {
		t.Fatal(err)
	}
}

func content(t *testing.T, path string) string {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func TestLoadErrors(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "a.toml")
	_, _, err := Load(path)
	wantFile(t, err, "there is no such file", "check the name, or make the sheet first")
	_, _, err = Load(dir)
	wantFile(t, err, "this is a folder", "a file in it")
	write(t, path, "a = 1", 0o644)
	_, _, err = Load(filepath.Join(path, "b"))
	wantFile(t, err, "part of the path is a file, not a folder", "check the name")
	_, _, err = Load(filepath.Join(dir, strings.Repeat("x", 300)))
	wantFile(t, err, "the name is too long", "shorten it")
	_, _, err = Load(os.DevNull)
	wantFile(t, err, "this is a device, not a file", "the name of a file")
	pipe := filepath.Join(dir, "pipe")
	if err := syscall.Mkfifo(pipe, 0o600); err != nil {
		t.Fatal(err)
	}
	_, _, err = Load(pipe)
	wantFile(t, err, "this is a pipe, not a file", "- for standard input")
	link := filepath.Join(dir, "link")
	if err := os.Symlink("link", link); err != nil {
		t.Fatal(err)
	}
	_, _, err = Load(link)
	wantFile(t, err, "the links form a loop", "the file itself")
	write(t, path, strings.Repeat("#", MaxBytes+9), 0o644)
	if _, _, err = Load(path); err == nil || err.Error() != "1:1: the sheet is larger than 1 MiB. Try: check that this is the intended file" {
		t.Errorf("got %v", err)
	}
}

// endless never stops giving text.
type endless struct{}

func (endless) Read(b []byte) (int, error) {
	for i := range b {
		b[i] = '#'
	}
	return len(b), nil
}

func TestRead(t *testing.T) {
	if s, err := Read(strings.NewReader("a = 1")); err != nil || s.Text() != "a = 1" {
		t.Errorf("got %v, %v", s, err)
	}
	if _, err := Read(endless{}); err == nil || err.Error() != "1:1: the sheet is larger than 1 MiB. Try: check that this is the intended file" {
		t.Errorf("got %v", err)
	}
	r, w := io.Pipe()
	w.CloseWithError(errors.New("the line dropped"))
	_, err := Read(r)
	wantFile(t, err, "the file cannot be read: the line dropped", "")
}

// alone checks that a folder holds these files and nothing left over.
func alone(t *testing.T, dir string, names ...string) {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, e := range entries {
		got = append(got, e.Name())
	}
	if strings.Join(got, " ") != strings.Join(names, " ") {
		t.Errorf("the folder holds %q, want %q", got, names)
	}
}

func TestSave(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "a.toml")
	one, two := mustParse(t, "a = 1"), mustParse(t, "\ufeffa = 2\r\n")
	stamp, err := Save(path, one, Stamp{}, false)
	if err != nil {
		t.Fatal(err)
	}
	if content(t, path) != one.Text() {
		t.Error("the first save went wrong")
	}
	if err := os.Chmod(path, 0o640); err != nil {
		t.Fatal(err)
	}
	if stamp, err = Save(path, two, stamp, false); err != nil {
		t.Fatal(err)
	}
	info, err := os.Stat(path)
	if err != nil {
		t.Fatal(err)
	}
	if content(t, path) != two.Text() || info.Mode().Perm() != 0o640 {
		t.Errorf("got %q with mode %v", content(t, path), info.Mode())
	}
	_, loaded, err := Load(path)
	if err != nil || !loaded.same(stamp) {
		t.Errorf("the stamp of the save is not the one of the file: %v", err)
	}
	alone(t, dir, "a.toml")
}

func TestSaveFollowsLinks(t *testing.T) {
	dir, other := t.TempDir(), t.TempDir()
	target := filepath.Join(other, "target.toml")
	write(t, target, "a = 1", 0o600)
	path := filepath.Join(dir, "a.toml")
	for link, to := range map[string]string{path: "b.toml", filepath.Join(dir, "b.toml"): target, filepath.Join(dir, "new.toml"): "made.toml", filepath.Join(dir, "round"): "round"} {
		if err := os.Symlink(to, link); err != nil {
			t.Fatal(err)
		}
	}
	s, stamp, err := Load(path)
	if err != nil {
		t.Fatal(err)
	}
	s, err = s.Apply(SetCell{Ref{"", "a", ""}, "2"})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := Save(path, s, stamp, false); err != nil {
		t.Fatal(err)
	}
	if to, err := os.Readlink(path); err != nil || to != "b.toml" {
		t.Errorf("the link is %q now: %v", to, err)
	}
	if content(t, target) != "a = 2" {
		t.Errorf("got %q", content(t, target))
	}
	if _, err := Save(filepath.Join(dir, "new.toml"), s, Stamp{}, false); err != nil {
		t.Fatal(err)
	}
	if content(t, filepath.Join(dir, "made.toml")) != "a = 2" {
		t.Error("a link to a file yet to be made was not followed")
	}
	_, err = Save(filepath.Join(dir, "round"), s, Stamp{}, false)
	wantFile(t, err, "the links form a loop", "save it under another name")
	alone(t, other, "target.toml")
}

func TestSaveRefusesWhatChanged(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "a.toml")
	write(t, path, "a = 1", 0o644)
	s, stamp, err := Load(path)
	if err != nil {
		t.Fatal(err)
	}
	check := func(was Stamp, want string) {
		t.Helper()
		_, err := Save(path, s, was, false)
		var changed *ChangedError
		if !errors.As(err, &changed) || !strings.HasPrefix(err.Error(), want) {
			t.Errorf("got %v, want %s", err, want)
		}
	}
	check(Stamp{}, "a file of this name exists already")
	write(t, path, "a = 9", 0o644)
	check(stamp, "the file was changed by someone else since it was read, at ")
	if content(t, path) != "a = 9" {
		t.Error("the other's change is lost")
	}
	alone(t, dir, "a.toml")
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	check(stamp, "the file was deleted since it was read")
	alone(t, dir)
	if _, err := Save(path, s, stamp, true); err != nil || content(t, path) != "a = 1" {
		t.Errorf("forced: %v", err)
	}
	write(t, path, "a = 1", 0o644) // touched, with the same content
	if _, err := Save(path, s, stamp, false); err != nil {
		t.Errorf("touched: %v", err)
	}
}

func TestSaveRefusals(t *testing.T) {
	dir := t.TempDir()
	s := mustParse(t, "a = 2")
	save := func(path, msg, hint string) {
		t.Helper()
		_, err := Save(path, s, Stamp{}, true)
		wantFile(t, err, msg, hint)
	}
	save(dir, "this is a folder", "a file in it")
	save(filepath.Join(dir, "none", "a.toml"), "there is no such folder", "make the folder, or save it under another name")
	path := filepath.Join(dir, "a.toml")
	write(t, path, "a = 1", 0o444)
	save(path, "the file is read-only", "save it under another name")
	save(filepath.Join(path, "b"), "part of the path is a file, not a folder", "save it under another name")
	save(filepath.Join(dir, strings.Repeat("x", 300)), "the name is too long", "shorten it")
	save(os.DevNull, "this is a device, not a file", "the name of a file")
	if content(t, path) != "a = 1" {
		t.Error("the read-only file changed")
	}
	alone(t, dir, "a.toml")
}

func TestSaveInAReadOnlyFolder(t *testing.T) {
	if os.Getuid() == 0 {
		// root may write anywhere; the words are checked by themselves
		wantFile(t, WriteError(&os.PathError{Op: "open", Path: "x", Err: syscall.EACCES}), "writing in this folder is not permitted", "save it under another name")
		wantFile(t, WriteError(&os.PathError{Op: "open", Path: "x", Err: syscall.EROFS}), "the disk is read-only", "save it under another name")
		t.Skip("only the words were checked: root may write in a read-only folder")
	}
	dir := t.TempDir()
	path := filepath.Join(dir, "a.toml")
	write(t, path, "a = 1", 0o644)
	if err := os.Chmod(dir, 0o555); err != nil {
		t.Fatal(err)
	}
	defer os.Chmod(dir, 0o755)
	_, err := Save(path, mustParse(t, "a = 2"), Stamp{}, true)
	wantFile(t, err, "writing in this folder is not permitted", "save it under another name")
	if content(t, path) != "a = 1" {
		t.Error("the old file changed")
	}
}

func TestSaveOnAFullDisk(t *testing.T) {
	wantFile(t, WriteError(&os.PathError{Op: "write", Path: "x", Err: syscall.ENOSPC}), "the disk is full, so nothing was changed", "make room, or save it under another name")
	dir := t.TempDir()
	if err := mountTiny(dir); err != nil {
		t.Skipf("only the words were checked: no small disk can be mounted here: %v", err)
	}
	defer unmount(dir)
	path := filepath.Join(dir, "a.toml")
	write(t, path, "a = 1", 0o644)
	long := mustParse(t, "a = 2\n"+strings.Repeat("# filling\n", 20000))
	_, err := Save(path, long, Stamp{}, true)
	wantFile(t, err, "the disk is full, so nothing was changed", "make room, or save it under another name")
	if content(t, path) != "a = 1" {
		t.Error("the old file changed")
	}
	alone(t, dir, "a.toml")
}
