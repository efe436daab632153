//go:build unix

package sheet

import (
	"os"
	"syscall"
)

// keepOwner gives f the owner and group of the file at path. Only root can do
// all of it; others keep what the system lets them.
func keepOwner(f *os.File, path string) {
	info, err := os.Stat(path)
	if err != nil {
		return
	}
	if st, ok := info.Sys().(*syscall.Stat_t); ok {
		f.Chown(int(st.Uid), int(st.Gid))
	}
}
