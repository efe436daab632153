package sheet

import "syscall"

// mountTiny mounts a disk of 64 KiB, where the system allows it.
func mountTiny(dir string) error { return syscall.Mount("tmpfs", dir, "tmpfs", 0, "size=64k") }

func unmount(dir string) { syscall.Unmount(dir, 0) }
