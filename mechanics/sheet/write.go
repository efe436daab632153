package sheet

import (
	"errors"
	"io/fs"
	"os"
)

// Write writes a file that is no sheet, such as a page, in the manner of Save:
// whole or not at all, a link followed. A file that is there is refused with a
// *ChangedError unless forced; any other error is a *diag.Error. After an error
// what was there is as it was.
func Write(path string, data []byte, force bool) error {
	_, _, err := replace(path, string(data), func(target string) error {
		if _, err := os.Lstat(target); !force && !errors.Is(err, fs.ErrNotExist) {
			return &ChangedError{Appeared: true}
		}
		return nil
	})
	return err
}
