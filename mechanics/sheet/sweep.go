package sheet

import (
	"crypto/rand"
	"os"
	"path/filepath"
	"regexp"
	"time"
)

// Beside is a new name for a file that is being written and renamed once it is whole,
// such as Sweep knows where that never comes: random characters in RFC 4648's base 32.
func Beside() string { return ".trivet-" + rand.Text()[:12] }

var beside = regexp.MustCompile(`^\.trivet-[A-Z2-7]{12}$`)

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
	entries, _ := os.ReadDir(folder)
	for _, e := range entries {
		if !e.Type().IsRegular() || !beside.MatchString(e.Name()) {
			continue
		}
		if info, err := e.Info(); err == nil && time.Since(info.ModTime()) > abandoned {
			os.Remove(filepath.Join(folder, e.Name()))
		}
	}
}
