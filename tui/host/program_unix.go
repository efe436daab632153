//go:build unix

package host

import (
	"os/exec"
	"syscall"
)

// apart gives a process a group of its own: an interrupt of the host's terminal
// is not meant for it.
func apart(cmd *exec.Cmd) { cmd.SysProcAttr = &syscall.SysProcAttr{Setpgid: true} }

// giveWay lowers a group's claim to computing time, which on Linux is that of each
// thread; where it is not allowed it has its core all the same.
func giveWay(pid int) { _ = syscall.Setpriority(syscall.PRIO_PGRP, pid, programNice) }
