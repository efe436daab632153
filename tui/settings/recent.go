package settings

import (
	"bytes"
	"crypto/rand"
	"encoding/json"
	"io"
	"os"
	"path/filepath"
	"slices"

	"trivet/tui/xdg"
)

// maxRecent is how many sheets are remembered: what a screen shows without
// scrolling.
const maxRecent = 20

// maxRecentFile bounds what is read: twenty of the longest paths there are.
const maxRecentFile = maxRecent * 8192

// Recent lists the sheets opened last, the latest first, by absolute path. Those
// that are gone are left out. It never fails: what does not read is no list.
func Recent(env []string) []string {
	var out []string
	for _, path := range remembered(env) {
		if info, err := os.Stat(path); err == nil && info.Mode().IsRegular() {
			out = append(out, path)
		}
	}
	return out
}

// Opened puts a sheet at the head of those opened last. An error is the system's;
// nothing but the list depends on it.
func Opened(env []string, path string) error {
	abs, err := filepath.Abs(path)
	if err != nil {
		return err
	}
	list := slices.DeleteFunc(Recent(env), func(p string) bool { return p == abs })
	list = append([]string{abs}, list...)
	return remember(env, list[:min(len(list), maxRecent)])
}

func recentFile(env []string) (string, error) {
	folder, err := xdg.State(env)
	return filepath.Join(folder, "recent.json"), err
}

func remembered(env []string) (list []string) {
	name, err := recentFile(env)
	if err != nil {
		return nil
	}
	f, err := os.Open(name)
	if err != nil {
		return nil
	}
	defer f.Close()
	text, err := io.ReadAll(io.LimitReader(f, maxRecentFile))
	if err != nil || json.Unmarshal(text, &list) != nil {
		return nil
	}
	list = slices.DeleteFunc(list, func(p string) bool { return !filepath.IsAbs(p) })
	return list[:min(len(list), maxRecent)]
}

// remember replaces the file whole, so that a session that reads it meanwhile
// finds one list or the other.
func remember(env []string, list []string) error {
	name, err := recentFile(env)
	if err != nil {
		return err
	}
	if err := os.MkdirAll(filepath.Dir(name), 0o700); err != nil {
		return err
	}
	var text bytes.Buffer
	e := json.NewEncoder(&text)
	e.SetEscapeHTML(false)
	e.SetIndent("", " ")
	if err := e.Encode(list); err != nil {
		return err
	}
	temp := name + "." + rand.Text()[:10]
	if err := os.WriteFile(temp, text.Bytes(), 0o600); err != nil {
		os.Remove(temp)
		return err
	}
	if err := os.Rename(temp, name); err != nil {
		os.Remove(temp)
		return err
	}
	return nil
}
