package record

import (
	"bytes"
	"context"
	"database/sql"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"trivet/mechanics/diag"
)

// The folder and the file are made, and are their owner's alone.
func TestOpenMakes(t *testing.T) {
	path := File(filepath.Join(t.TempDir(), "a b", "what? 100% #1"))
	s := opened(t, path)
	add(t, s, "Ada", entry(beam, 0, "a", "right"))
	holds(t, opened(t, path), "Ada", entry(beam, 0, "a", "right"))
	info, err := os.Stat(path)
	if err != nil {
		t.Fatal(err)
	}
	if mode := info.Mode().Perm(); runtime.GOOS != "windows" && mode != 0o600 {
		t.Errorf("the file has the mode %v", mode)
	}
	if folder, _ := os.Stat(filepath.Dir(path)); runtime.GOOS != "windows" && folder.Mode().Perm() != 0o700 {
		t.Errorf("the folder has the mode %v", folder.Mode().Perm())
	}
}

// Many open a new record at once, as do visitors' programs at one host: each finds it
// whole, and none loses an entry.
func TestOpenAtOnce(t *testing.T) {
	path := File(t.TempDir())
	var wait sync.WaitGroup
	const many = 12
	for range many {
		wait.Go(func() {
			s, notice, err := Open(path)
			if err != nil || notice != nil {
				t.Errorf("%v, %v", notice, err)
				return
			}
			if err := s.Add("Ada", entry(beam, 0, "a", "right")); err != nil {
				t.Error(err)
			}
			if err := s.Close(); err != nil {
				t.Error(err)
			}
		})
	}
	wait.Wait()
	if got, err := opened(t, path).Events("Ada"); len(got) != many || err != nil {
		t.Errorf("%d entries of %d, %v", len(got), many, err)
	}
}

// A person who is forgotten has left no word in the folder.
func TestForgetLeavesNothing(t *testing.T) {
	path := File(t.TempDir())
	s := opened(t, path)
	for range 50 {
		add(t, s, "Ada Unforgettable", entry(Problem{"week4", "beam"}, 0, "unforgettable entry "+strings.Repeat("x", 300), "right"))
		add(t, s, "Ben", entry(beam, 0, "of Ben", "right"))
	}
	if _, err := s.Forget("Ada Unforgettable"); err != nil {
		t.Fatal(err)
	}
	files, err := filepath.Glob(filepath.Join(filepath.Dir(path), "*"))
	if err != nil || len(files) == 0 {
		t.Fatal(err)
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, word := range []string{"Unforgettable", "unforgettable"} {
			if bytes.Contains(text, []byte(word)) {
				t.Errorf("%s still says %q", filepath.Base(file), word)
			}
		}
	}
	if got, _ := s.Events("Ben"); len(got) != 50 {
		t.Errorf("%d entries of Ben are left", len(got))
	}
}

// A damaged file is kept under another name, a message says where, and the record opens.
func TestDamaged(t *testing.T) {
	whole := func(t *testing.T, path string) []byte {
		t.Helper()
		s, _, err := Open(path)
		if err != nil {
			t.Fatal(err)
		}
		for range 200 {
			add(t, s, "Ada", entry(beam, 0, strings.Repeat("x", 200), "right"))
		}
		if err := s.Close(); err != nil {
			t.Fatal(err)
		}
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		return text
	}
	const page = 4096 // bytes, SQLite's usual
	for name, damage := range map[string]func([]byte) []byte{
		"no database":     func([]byte) []byte { return []byte(strings.Repeat("this is no database\n", 100)) },
		"a short text":    func([]byte) []byte { return []byte("hello") },
		"its head lost":   func(text []byte) []byte { return append(make([]byte, 100), text[100:]...) },
		"its end lost":    func(text []byte) []byte { return text[:len(text)/2/page*page] },
		"a page of noise": func(text []byte) []byte { copy(text[page:], bytes.Repeat([]byte{0xa5}, page)); return text },
	} {
		t.Run(name, func(t *testing.T) {
			path := File(t.TempDir())
			bad := damage(whole(t, path))
			if err := os.WriteFile(path, bad, 0o600); err != nil {
				t.Fatal(err)
			}
			s, notice, err := Open(path)
			if err != nil || notice == nil {
				t.Fatalf("%v, %v", notice, err)
			}
			defer s.Close()
			aside, _ := filepath.Glob(path + "-damaged-*")
			if len(aside) != 1 {
				t.Fatalf("set aside are %q", aside)
			}
			if want := "the record was damaged, so a new one is begun; the damaged file is kept as " + aside[0] + ". Try: a copy of the record from a backup"; notice.Error() != want {
				t.Errorf("%s, want\n%s", notice, want)
			}
			if kept, err := os.ReadFile(aside[0]); err != nil || !bytes.Equal(kept, bad) {
				t.Errorf("what is set aside has changed (%v)", err)
			}
			add(t, s, "Ada", entry(beam, 0, "a", "right"))
			holds(t, opened(t, path), "Ada", entry(beam, 0, "a", "right"))
		})
	}
}

// Two that are set aside within a second have names of their own.
func TestSetAside(t *testing.T) {
	path := File(t.TempDir())
	now := time.Date(2026, 12, 1, 13, 5, 9, 0, time.UTC)
	for i, want := range []string{"-damaged-20261201-130509", "-damaged-20261201-130509-2", "-damaged-20261201-130509-3"} {
		for _, part := range []string{"", "-wal"} {
			if err := os.WriteFile(path+part, []byte{byte(i)}, 0o600); err != nil {
				t.Fatal(err)
			}
		}
		got, err := setAside(path, now)
		if err != nil || got != path+want {
			t.Fatalf("%s, %v, want %s", got, err, want)
		}
		for _, part := range []string{"", "-wal"} {
			if text, err := os.ReadFile(got + part); err != nil || !bytes.Equal(text, []byte{byte(i)}) {
				t.Errorf("%s holds %v (%v)", got+part, text, err)
			}
		}
	}
}

// exec does something to the file behind the record's back.
func exec(t *testing.T, path, query string) {
	t.Helper()
	db, err := sql.Open("sqlite", path)
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	if _, err := db.ExecContext(context.Background(), query); err != nil {
		t.Fatal(err)
	}
}

// What an older program wrote is taken along step by step; what a newer one or another
// program wrote is left as it is, and said.
func TestMigrations(t *testing.T) {
	path := File(t.TempDir())
	add(t, opened(t, path), "Ada", entry(beam, 0, "a", "right"))
	next := append(slices.Clone(migrations), "ALTER TABLE event ADD COLUMN place TEXT NOT NULL DEFAULT ''; CREATE TABLE later (x INTEGER) STRICT;", "CREATE INDEX later_x ON later (x);")
	for range 2 { // the second time there is nothing to do
		s, notice, err := open(path, next)
		if err != nil || notice != nil {
			t.Fatalf("%v, %v", notice, err)
		}
		holds(t, s, "Ada", entry(beam, 0, "a", "right"))
		s.Close()
	}
	refuses(t, path, "the record was written by a newer version of this program. Try: that version")

	first := File(t.TempDir())
	if s, _, err := open(first, migrations[:1]); err != nil {
		t.Fatal(err)
	} else if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	exec(t, first, "INSERT INTO person (name) VALUES ('Ada'); INSERT INTO event VALUES (1, 1, 0, '', 'lamp', 'shown', '', '', '', '', 0, 0, 0)")
	s := opened(t, first)
	holds(t, s, "Ada", Event{At: time.UnixMicro(0), Problem: Problem{"", "lamp"}, What: Shown})
	seeded(t, s, "Ada", "Ada")
	enrolled(t, s, "k", "Ben", "Ben")

	half := File(t.TempDir())
	if _, _, err := open(half, append(slices.Clone(migrations), "CREATE TABLE later (x INTEGER); nonsense;")); err == nil {
		t.Error("a step that fails is taken")
	}
	add(t, opened(t, half), "Ada", entry(beam, 0, "a", "right")) // nothing of it is left

	other := File(t.TempDir())
	exec(t, other, "CREATE TABLE songs (name TEXT)")
	refuses(t, other, "the file is a database of another program. Try: another folder for the record")
	exec(t, other, "PRAGMA application_id = 7; DROP TABLE songs")
	refuses(t, other, "the file is a database of another program. Try: another folder for the record")
}

func refuses(t *testing.T, path, want string) {
	t.Helper()
	before, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	s, notice, err := Open(path)
	if err == nil {
		s.Close()
		t.Fatal("it is opened")
	}
	if after, _ := os.ReadFile(path); notice != nil || err.Error() != want || !bytes.Equal(before, after) {
		t.Errorf("%v, %v, want\n%s; changed: %v", notice, err, want, !bytes.Equal(before, after))
	}
}

// What can be wrong with the place, in words.
func TestCannotOpen(t *testing.T) {
	folder := t.TempDir()
	file := filepath.Join(folder, "file")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if _, _, err := Open(File(file)); err == nil || diag.Of(err).Text() != "part of the path is a file, not a folder. Try: save it under another name" {
		t.Errorf("%v", err)
	}
	if _, _, err := Open(folder); err == nil || !strings.HasPrefix(err.Error(), "the file cannot be written: ") {
		t.Errorf("%v", err)
	}
	locked := File(t.TempDir())
	if err := os.WriteFile(locked, nil, 0o400); err != nil {
		t.Fatal(err)
	}
	if _, _, err := Open(locked); os.Geteuid() != 0 && !errors.Is(err, fs.ErrPermission) {
		t.Errorf("%v", err)
	}
}

// A disk that fills up is said, and the entries before stay.
func TestFull(t *testing.T) {
	path := File(t.TempDir())
	s := opened(t, path)
	add(t, s, "Ada", entry(beam, 0, "a", "right"))
	if _, err := s.(*database).db.Exec("PRAGMA max_page_count = 1"); err != nil { // which is raised to what the file has
		t.Fatal(err)
	}
	err := s.Add("Ada", entry(beam, 0, strings.Repeat("x", 1<<16), "right"))
	if err == nil || err.Error() != "the disk is full, so the record cannot be written. Try: make room" {
		t.Errorf("%v", err)
	}
	holds(t, s, "Ada", entry(beam, 0, "a", "right"))
}

func TestDesk(t *testing.T) {
	if got, err := Desk([]string{"HOME=/home/a"}); got != filepath.FromSlash("/home/a/.local/share/trivet/record.db") || err != nil {
		t.Errorf("%s, %v", got, err)
	}
	if _, err := Desk(nil); err == nil {
		t.Error("there is a place in no home")
	}
	if Self([]string{"USER=ada"}) != "ada" || Self(nil) != "me" {
		t.Error("a person goes by another name")
	}
}
