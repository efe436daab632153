package sheet

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
)

// Write writes a file that is no sheet, such as a page, in the manner of Save:
// whole or not at all, a link followed. A file that is there is refused with a
// *ChangedError unless forced; any other error is a *diag.Error. After an error
// what was there is as it was.
func Write(path string, data []byte, force bool) error {
	target, err := follow(path)
	if err != nil {
		return err
	}
	mode, err := writable(target)
	if err != nil {
		return err
	}
	if mode != 0 && !force {
		return &ChangedError{Appeared: true}
	}
	temp, err := writeBeside(target, string(data), mode)
	if err != nil {
		return inFileWords("written", err)
	}
	defer os.Remove(temp) // gone already once it is renamed
	if _, err := os.Lstat(target); !force && !errors.Is(err, fs.ErrNotExist) {
		return &ChangedError{Appeared: true}
	}
	if err := os.Rename(temp, target); err != nil {
		return inFileWords("written", err)
	}
	syncFolder(filepath.Dir(target))
	return nil
}
