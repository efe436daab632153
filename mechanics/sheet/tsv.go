package sheet

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"trivet/mechanics/diag"
)

// TSV writes a block of cells as spreadsheets put it on the clipboard: a line
// a row, a tab between cells. A cell that holds a tab or a line end, or begins
// with a quote, stands in quotes, its own quotes doubled. A row without cells
// reads back as one empty cell.
func TSV(cells [][]string) string {
	var sb strings.Builder
	for _, row := range cells {
		for i, c := range row {
			if i > 0 {
				sb.WriteByte('\t')
			}
			if strings.ContainsAny(c, "\t\r\n") || strings.HasPrefix(c, `"`) {
				c = `"` + strings.ReplaceAll(c, `"`, `""`) + `"`
			}
			sb.WriteString(c)
		}
		sb.WriteByte('\n')
	}
	return sb.String()
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
	unclosed := false // a quote that nothing closes: none after it is either
	for i := 0; i < len(text); {
		cell, end := "", -1
		if text[i] == '"' && !unclosed {
			cell, end, unclosed = quotedCell(text, i)
		}
		if end < 0 {
			end = len(text)
			if n := strings.IndexAny(text[i:], "\t\r\n"); n >= 0 {
				end = i + n
			}
			cell = text[i:end]
		}
		tab := end < len(text) && text[end] == '\t'
		if row = append(row, cell); tab && end+1 == len(text) {
			row = append(row, "") // the tab that ends the text stands before an empty cell
			tab, end = false, len(text)
		}
		if len(row) > maxCells {
			return nil, diag.New(fmt.Sprintf("row %d of the block has more than %d cells", len(out)+1, maxCells), "copy fewer columns")
		}
		if tab {
			i = end + 1
			continue
		}
		if len(out) == maxRows {
			return nil, diag.New(fmt.Sprintf("the block has more than %d rows", maxRows), "copy fewer rows")
		}
		out, row = append(out, row), nil
		i = afterLineEnd(text, end)
	}
	return out, nil
}

// quotedCell reads the quoted cell that opens at i and gives where it ends, -1
// where this is none. unclosed tells that no quote closes it.
func quotedCell(text string, i int) (cell string, end int, unclosed bool) {
	for j := i + 1; ; {
		n := strings.IndexByte(text[j:], '"')
		if n < 0 {
			return "", -1, true
		}
		j += n + 1
		if j < len(text) && text[j] == '"' {
			j++
			continue
		}
		if j == len(text) || strings.IndexByte("\t\r\n", text[j]) >= 0 {
			return strings.ReplaceAll(text[i+1:j-1], `""`, `"`), j, false
		}
		return "", -1, false
	}
}

func afterLineEnd(text string, i int) int {
	if strings.HasPrefix(text[i:], "\r\n") {
		return i + 2
	}
	return min(len(text), i+1)
}
