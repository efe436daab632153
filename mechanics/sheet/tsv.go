package sheet

import (
	"fmt"
	"regexp"
	"strings"
	"sync"
	"unicode/utf8"

	"trivet/mechanics/diag"
	"trivet/mechanics/say"
)

// TSV writes a block of cells as spreadsheets put it on the clipboard: a line
// a row, a tab between cells. A cell that holds a tab or a line end, or begins
// with a quote, stands in quotes, its own quotes doubled. A row without cells
// reads back as one empty cell.
func TSV(cells [][]string) string {
	quoted := func(c string) string {
		if strings.ContainsAny(c, "\t\r\n") || strings.HasPrefix(c, `"`) {
			return `"` + strings.ReplaceAll(c, `"`, `""`) + `"`
		}
		return c
	}
	line := func(row []string) string { return strings.Join(say.Each(row, quoted), "\t") + "\n" }
	return strings.Join(say.Each(cells, line), "")
}

// ParseTSV reads a block of cells as spreadsheets write it, with LF, CR LF or CR
// after a row; the last row may lack it. A cell is quoted only where the
// closing quote ends the cell, so that 5'-6 1/2" and a lone " stay as they
// are. What is larger than a sheet, or no text, is refused with an *diag.Error.
func ParseTSV(text string) ([][]string, error) {
	switch {
	case len(text) > MaxBytes:
		return nil, diag.New("the block is larger than 1 MiB", "copy fewer cells")
	case !utf8.ValidString(text):
		return nil, diag.New("this is not text in UTF-8", "copy it as UTF-8")
	}
	text = strings.TrimPrefix(text, bom)
	var out [][]string
	var row []string
	for tab := false; text != "" || tab; {
		m := tsvCell().FindStringSubmatch(text)
		row = append(row, strings.ReplaceAll(m[1], `""`, `"`)+m[2])
		if len(row) > maxCells {
			return nil, diag.New(fmt.Sprintf("row %d of the block has more than %d cells", len(out)+1, maxCells), "copy fewer columns")
		}
		text, tab = text[len(m[0]):], m[3] == "\t"
		if tab {
			continue
		}
		if len(out) == maxRows {
			return nil, diag.New(fmt.Sprintf("the block has more than %d rows", maxRows), "copy fewer rows")
		}
		out, row = append(out, row), nil
	}
	return out, nil
}

// tsvCell is a cell in quotes or without, and what ends it.
var tsvCell = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^(?:"((?:[^"]|"")*)"|([^\t\r\n]*))(\t|\r?\n|\r|$)`) })
