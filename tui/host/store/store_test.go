package store

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"trivet/mechanics/sheet"
)

func TestTheStoreRefuses(t *testing.T) {
	folder := t.TempDir()
	secret := filepath.Join(t.TempDir(), "secret.toml")
	lamp := "[points]\nD = \"0, 0\"\n"
	for file, text := range map[string]string{secret: "title = \"secret\"\n", filepath.Join(folder, "lamp.toml"): lamp, filepath.Join(folder, "other.toml"): lamp} {
		if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Symlink(secret, filepath.Join(folder, "link.toml")); err != nil {
		t.Fatal(err)
	}
	root, err := os.OpenRoot(folder)
	if err != nil {
		t.Fatal(err)
	}
	defer root.Close()
	st := &Store{folder: fixed(root), limit: 3, bytes: 4096}
	s, err := sheet.Parse([]byte(lamp))
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"link.toml", "../secret.toml", secret, "", ".toml"} {
		if _, _, err := st.Load(name); err == nil {
			t.Errorf("%q is read", name)
		}
		if _, err := st.Save(name, s, sheet.Stamp{}, true); err == nil {
			t.Errorf("%q is written", name)
		}
	}
	for _, c := range []struct {
		name  string
		force bool
		want  string
	}{
		{"lamp.toml", false, "a file of this name exists already"},
		{"lamp.toml", true, ""},
		{"third.toml", false, ""},
		{"fourth.toml", false, "a visitor may keep 3 sheets, and there are so many already. Try: save over one of them"},
	} {
		_, err := st.Save(c.name, s, sheet.Stamp{}, c.force)
		if got := says(err); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
	large, err := sheet.Parse([]byte("# " + strings.Repeat("x", 5200) + "\n" + lamp))
	if err != nil {
		t.Fatal(err)
	}
	if _, err := st.Save("lamp.toml", large, sheet.Stamp{}, true); says(err) != "the sheet has 5 kB, but a visitor's sheet may have 4. Try: remove rows" {
		t.Errorf("%v", err)
	}
	stamp, err := st.Save("lamp.toml", s, sheet.Stamp{}, true)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := st.Save("lamp.toml", s, stamp, false); err != nil {
		t.Errorf("what was written last is not known again: %v", err)
	}
	if err := os.WriteFile(filepath.Join(folder, "lamp.toml"), []byte("# by another\n"+lamp), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := st.Save("lamp.toml", s, stamp, false); !strings.HasPrefix(says(err), "the file was changed by someone else") {
		t.Errorf("%v", err)
	}
	if text, _ := os.ReadFile(secret); string(text) != "title = \"secret\"\n" {
		t.Error("the link was followed")
	}
}

func says(err error) string {
	if err == nil {
		return ""
	}
	return err.Error()
}
