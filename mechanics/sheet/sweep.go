package sheet

import (
	"crypto/rand"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"time"
)

// A file that is being written has a name of this beginning and of this many
// random characters behind it, in RFC 4648's base 32, until it is whole.
const (
	besideBegin = ".trivet-"
	besideRest  = 12
)

// abandoned is the age at which a file that was to be renamed is nobody's any
// more: writing one takes seconds even on a slow disk.
const abandoned = 10 * time.Minute

// besidePath names a new file in the folder of path.
func besidePath(path string) string {
	return filepath.Join(filepath.Dir(path), Beside())
}

// Beside is a new name for a file that is renamed once it is whole, such as Sweep
// knows where that never comes.
func Beside() string { return besideBegin + rand.Text()[:besideRest] }

// Sweep removes what saves that were killed left in the folder of path. Files
// that another session may still be writing stay, and what cannot be removed.
func Sweep(path string) {
	if target, err := follow(path); err == nil {
		path = target
	}
	folder := filepath.Dir(path)
	entries, err := os.ReadDir(folder)
	if err != nil {
		return
	}
	for _, e := range entries {
		if isBeside(e.Name()) && e.Type().IsRegular() && old(e) {
			os.Remove(filepath.Join(folder, e.Name()))
		}
	}
}

func isBeside(name string) bool {
	rest, ok := strings.CutPrefix(name, besideBegin)
	return ok && len(rest) == besideRest && strings.Trim(rest, "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567") == ""
}

func old(e fs.DirEntry) bool {
	info, err := e.Info()
	return err == nil && time.Since(info.ModTime()) > abandoned
}
