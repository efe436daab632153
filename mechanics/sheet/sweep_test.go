package sheet

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"
)

func TestSweepTakesOnlyWhatKilledSavesLeft(t *testing.T) {
	s, err := Parse([]byte("[points]\nA = \"1, 2\"\n"))
	if err != nil {
		t.Fatal(err)
	}
	name := Beside()
	for _, save := range []bool{false, true} {
		folder := t.TempDir()
		path := filepath.Join(folder, "a.toml")
		long := time.Now().Add(-2 * abandoned)
		for file, changed := range map[string]time.Time{
			name: long, ".trivet-ABCDEFGHIJK2": time.Now(), ".trivet-abcdefghijkl": long, ".trivet-ABC": long,
			".trivet-ABCDEFGHIJKLM": long, "trivet-ABCDEFGHIJKL": long, "b.toml": long,
		} {
			file = filepath.Join(folder, file)
			if err := os.WriteFile(file, nil, 0o600); err != nil {
				t.Fatal(err)
			}
			if err := os.Chtimes(file, changed, changed); err != nil {
				t.Fatal(err)
			}
		}
		if err := os.Mkdir(filepath.Join(folder, ".trivet-ABCDEFGHIJKL"), 0o700); err != nil {
			t.Fatal(err)
		}
		if err := os.Chtimes(filepath.Join(folder, ".trivet-ABCDEFGHIJKL"), long, long); err != nil {
			t.Fatal(err)
		}
		want := []string{".trivet-ABC", ".trivet-ABCDEFGHIJK2", ".trivet-ABCDEFGHIJKL", ".trivet-ABCDEFGHIJKLM", ".trivet-abcdefghijkl", "b.toml", "trivet-ABCDEFGHIJKL"}
		if save {
			if _, err := Save(path, s, Stamp{}, false); err != nil {
				t.Fatal(err)
			}
			want = append(want, "a.toml")
			slices.Sort(want)
		} else {
			Sweep(path)
		}
		entries, err := os.ReadDir(folder)
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, e := range entries {
			got = append(got, e.Name())
		}
		if !slices.Equal(got, want) {
			t.Errorf("saved %t: left are\n%s\nwant\n%s", save, strings.Join(got, "\n"), strings.Join(want, "\n"))
		}
	}
}

// Where a sheet is reached by a link, its file's folder is swept.
func TestSweepFollowsLinks(t *testing.T) {
	there, here := t.TempDir(), t.TempDir()
	file := filepath.Join(there, ".trivet-ABCDEFGHIJKL")
	long := time.Now().Add(-2 * abandoned)
	for _, f := range []string{file, filepath.Join(there, "a.toml")} {
		if err := os.WriteFile(f, nil, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Chtimes(file, long, long); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(filepath.Join(there, "a.toml"), filepath.Join(here, "b.toml")); err != nil {
		t.Skip(err)
	}
	Sweep(filepath.Join(here, "b.toml"))
	if _, err := os.Stat(file); !os.IsNotExist(err) {
		t.Errorf("the file is left: %v", err)
	}
}
