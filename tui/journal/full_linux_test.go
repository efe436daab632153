package journal

import (
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// TestDiskFull runs out of room on a disk of 64 KiB, where one can be mounted.
func TestDiskFull(t *testing.T) {
	_, path := place(t)
	disk := t.TempDir()
	if err := syscall.Mount("tmpfs", disk, "tmpfs", 0, "size=64k"); err != nil {
		t.Skip("no disk can be mounted here: ", err)
	}
	defer syscall.Unmount(disk, 0)
	env := []string{"XDG_STATE_HOME=" + disk}
	j := Open(env, path, begun)
	defer j.Close()
	j.Commit(begun + "B = 1\n")
	if err := os.WriteFile(filepath.Join(disk, "fill"), make([]byte, 48<<10), 0o600); err != nil {
		t.Fatal(err)
	}
	for i := range 100 {
		j.Typing(cellA, strings.Repeat("9", 1000+i))
	}
	const want = "no journal is kept, so a crash would cost what is not saved: the disk of the state folder is full"
	if got := j.Trouble(); got != want {
		t.Errorf("%s, want %s", got, want)
	}
	if got := j.Trouble(); got != "" {
		t.Errorf("said twice: %s", got)
	}
	// What was written while there was room is still of use.
	if got := Find(env, path, begun).Offers; len(got) != 1 || !strings.Contains(got[0].Text, "B = 1") {
		t.Errorf("%+v", got)
	}
}

func TestReadOnly(t *testing.T) {
	_, path := place(t)
	disk := t.TempDir()
	if err := syscall.Mount("tmpfs", disk, "tmpfs", syscall.MS_RDONLY, "size=64k"); err != nil {
		t.Skip("no disk can be mounted here: ", err)
	}
	defer syscall.Unmount(disk, 0)
	j := Open([]string{"XDG_STATE_HOME=" + disk}, path, begun)
	defer j.Close()
	j.Typing(cellA, "2")
	const want = "no journal is kept, so a crash would cost what is not saved: nothing may be written in the state folder"
	if got := j.Trouble(); got != want || j.Trouble() != "" {
		t.Errorf("%s, want %s", got, want)
	}
}
