package call

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"trivet/mechanics/diag"
	"trivet/mechanics/report"
	"trivet/mechanics/sheet"
)

// classSet is the files that go to a folder together.
type classSet struct {
	folder string
	force  bool
	files  []setFile
}

type setFile struct {
	name   string
	make   func() ([]byte, error) // its content, made when it is written: the pages of a class are many
	says   string
	before string // what is said on standard error before it is made, "" for nothing
}

func (f setFile) path(folder string) string { return filepath.Join(folder, f.name) }

func (s *classSet) add(name string, data []byte, says string) {
	s.addMade(name, func() ([]byte, error) { return data, nil }, says)
}

func (s *classSet) addMade(name string, make func() ([]byte, error), says string) {
	s.files = append(s.files, setFile{name: name, make: make, says: says})
}

// writeSet writes the files, each whole or not at all. Where one is there already,
// and may not go, none is written.
func (c *Call) writeSet(s classSet) bool {
	if err := os.MkdirAll(s.folder, 0o777); err != nil { // less what the umask takes
		c.refuse(s.folder, report.FileFault(s.folder, sheet.WriteError(err)))
		return false
	}
	names := map[string]bool{} // in small letters, which on some systems are the same files
	for _, f := range s.files {
		name := strings.ToLower(f.name)
		if names[name] {
			c.refuse(f.path(s.folder), diag.New("two files of the set would have this name", "rename one of its problems"))
			return false
		}
		names[name] = true
		if _, err := os.Lstat(f.path(s.folder)); err == nil && !s.force {
			c.refuse(f.path(s.folder), diag.New("a file of this name exists already", "another folder, or --force to overwrite it"))
			return false
		}
	}
	for i, f := range s.files {
		if f.before != "" {
			fmt.Fprintln(c.Stderr, f.before)
		}
		data, err := f.make()
		if err == nil {
			err = sheet.Write(f.path(s.folder), data, s.force)
		}
		if err != nil {
			fault := report.WriteFault(err)
			if i > 0 {
				fault.Msg += fmt.Sprintf("; %d of %d files are written", i, len(s.files))
			}
			c.refuse(f.path(s.folder), fault)
			return false
		}
	}
	return true
}

// strangers says which variants in the folder are none of this set: they were
// left by a greater one, and are not in its key.
func (c *Call) strangers(s classSet, stem string) {
	entries, err := os.ReadDir(s.folder)
	if err != nil {
		return
	}
	var old []string
	for _, e := range entries {
		if numbered(e.Name(), stem) && !slices.ContainsFunc(s.files, func(f setFile) bool { return f.name == e.Name() }) {
			old = append(old, e.Name())
		}
	}
	switch len(old) {
	case 0:
	case 1:
		fmt.Fprintf(c.Stderr, "%s: this variant is of an earlier set and is not in the key\n", filepath.Join(s.folder, old[0]))
	default:
		fmt.Fprintf(c.Stderr, "%s: %d variants, %s to %s, are of an earlier set and are not in the key\n", s.folder, len(old), old[0], old[len(old)-1])
	}
}

// numbered tells the names that variants of a sheet have: NAME-01.toml, NAME-123.toml.
func numbered(file, stem string) bool {
	number, begins := strings.CutPrefix(file, stem+"-")
	number, ends := strings.CutSuffix(number, ".toml")
	return begins && ends && (len(number) == 2 || len(number) == 3) && strings.Trim(number, "0123456789") == ""
}
