package tui

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"trivet/mechanics/report"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/mechanics/working"
)

// pageEndings are the formats of a page.
const pageEndings = ".md .tex"

// WritePage writes a page to the file of that name.
func WritePage(file string, s *statics.Solution, _ *sheet.Sheet, force bool) error {
	var text string
	switch ext := strings.ToLower(filepath.Ext(file)); ext {
	case ".md":
		text = report.Markdown(working.Build(s), report.Parts{})
	case ".tex":
		text = report.LaTeX(working.Build(s), report.Parts{})
	default:
		return fmt.Errorf("a page is not written as %q: end the name with .md or .tex", strings.TrimPrefix(ext, "."))
	}
	how := os.O_WRONLY | os.O_CREATE | os.O_TRUNC
	if !force {
		how |= os.O_EXCL
	}
	f, err := os.OpenFile(file, how, 0o644)
	switch {
	case errors.Is(err, fs.ErrExist):
		return &sheet.ChangedError{Appeared: true}
	case err != nil:
		return err
	}
	_, err = f.WriteString(text)
	return errors.Join(err, f.Close())
}
