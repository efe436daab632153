package report

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"

	"trivet/mechanics/diag"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
)

// FileFault is an error of reading or writing a sheet, with what to try on a command
// line.
func FileFault(name string, err error) *diag.Error {
	f := diag.Of(err)
	var changed *sheet.ChangedError
	switch missing := errors.Is(err, fs.ErrNotExist); {
	case errors.As(err, &changed):
		f.Hint = "another name, or open it with `trivet " + name + "`"
	case missing && there(name+".toml"):
		f.Hint = name + ".toml"
	case missing && there(filepath.Dir(name)):
		f.Hint = "another name, or make the sheet with `trivet new " + name + "`"
	}
	return f
}

// WritePage writes a page to a file, whole or not at all. Where it does not, the error
// says why, and what was there is as it was.
func WritePage(file, format string, s *statics.Solution, opt PageOptions, force bool) error {
	data, err := Page(format, s, opt)
	if err != nil {
		return err
	}
	return sheet.Write(file, data, force)
}

// WriteFault says why a file that is no sheet was not written.
func WriteFault(err error) *diag.Error {
	f := diag.Of(err)
	if changed := (*sheet.ChangedError)(nil); errors.As(err, &changed) {
		f.Hint = "another name, or write over it with --force"
	}
	return f
}

func there(file string) bool {
	_, err := os.Stat(file)
	return err == nil
}
