package report

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"

	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
)

// FileFault gives an error of reading or writing a sheet its place, where it
// has one, and what would do on a command line.
func FileFault(name string, err error) Fault {
	var text *sheet.Error
	var file *sheet.FileError
	var changed *sheet.ChangedError
	switch {
	case errors.As(err, &text):
		return Fault{Line: text.Line, Column: text.Column, Msg: text.Msg, Hint: text.Hint, Source: text.Source}
	case errors.As(err, &changed):
		return Fault{Msg: changed.Error(), Hint: "name another, or open it with `trivet " + name + "`"}
	case errors.As(err, &file):
		f := Fault{Msg: file.Msg, Hint: file.Hint}
		if errors.Is(err, fs.ErrNotExist) && there(name+".toml") {
			f.Hint = "did you mean " + name + ".toml"
		} else if errors.Is(err, fs.ErrNotExist) && there(filepath.Dir(name)) {
			f.Hint = "check the name, or try `trivet new " + name + "`"
		}
		return f
	}
	return Fault{Msg: err.Error()}
}

// WritePage writes a page to a file, whole or not at all. Where it does not, it
// says why, and what was there is as it was.
func WritePage(file, format string, s *statics.Solution, opt PageOptions, force bool) (f Fault, ok bool) {
	data, err := Page(format, s, opt)
	if err == nil {
		err = sheet.Write(file, data, force)
	}
	if err != nil {
		return WriteFault(err), false
	}
	return Fault{}, true
}

// WriteFault says why a file that is no sheet was not written.
func WriteFault(err error) Fault {
	var file *sheet.FileError
	var changed *sheet.ChangedError
	switch {
	case errors.As(err, &changed):
		return Fault{Msg: changed.Error(), Hint: "name another, or write over it with --force"}
	case errors.As(err, &file):
		f := Fault{Msg: file.Msg, Hint: file.Hint}
		if f.Hint == "name a sheet in it" {
			f.Hint = "name a file in it"
		}
		return f
	}
	return Fault{Msg: err.Error()}
}

func there(file string) bool {
	_, err := os.Stat(file)
	return err == nil
}
