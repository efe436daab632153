//go:build darwin || dragonfly || freebsd || linux || netbsd || openbsd

package journal

import (
	"errors"
	"os"
	"syscall"
)

// lock holds a file for as long as it is open; the system lets go of it when
// the process ends, however it ends.
func lock(f *os.File) { _ = syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB) }

// isLocked tells whether someone holds a file; known is false on a file system
// without locks. It asks for a shared lock, so that two who ask do not take each
// other for the owner.
func isLocked(f *os.File) (locked, known bool) {
	err := syscall.Flock(int(f.Fd()), syscall.LOCK_SH|syscall.LOCK_NB)
	switch {
	case err == nil:
		_ = syscall.Flock(int(f.Fd()), syscall.LOCK_UN)
		return false, true
	case errors.Is(err, syscall.EWOULDBLOCK):
		return true, true
	}
	return false, false
}

// running tells whether there is a process of this number.
func running(pid int) (exists, known bool) {
	err := syscall.Kill(pid, 0)
	return err == nil || errors.Is(err, syscall.EPERM), pid > 0
}
