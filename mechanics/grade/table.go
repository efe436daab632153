package grade

import (
	"bytes"
	"cmp"
	"encoding/csv"
	"errors"
	"io"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"
	"golang.org/x/text/transform"

	"trivet/mechanics/diag"
)

// MaxBytes is the length of a table of answers beyond which it is no such table: a
// thousand students with a hundred answers each are a tenth of it.
const MaxBytes = 8 << 20

// Table is a table of cells as a spreadsheet writes it. Its rows are those that are
// not blank, and may be shorter or longer than the head.
type Table struct {
	Head  []string
	Rows  []Row
	Comma bool // a comma is a decimal point in it
	Name  int  // the column of who wrote a row, -1 where there is none
	Sheet int  // and that of the file of each student's sheet, which a key of variants calls variant
}

// Row is a row of a table, the line of the file that it begins in, who wrote it (its line
// where no name is given), and the sheet that it names.
type Row struct {
	Line        int
	Name, Sheet string
	Cells       []string
}

func (r Row) cell(column int) string {
	if column < 0 || column >= len(r.Cells) {
		return ""
	}
	return r.Cells[column]
}

// ReadTable reads comma separated values (RFC 4180) as spreadsheets write them: with
// commas, semicolons or tabs, with or without a byte order mark, in UTF-8, UTF-16 or Windows-1252.
// Semicolons are written where the comma is the decimal sign, so there it is.
func ReadTable(text []byte) (*Table, *diag.Error) {
	switch {
	case len(text) > MaxBytes:
		return nil, diag.New("the table is larger than 8 MiB", "check that this is the intended file")
	case bytes.HasPrefix(text, []byte("PK\x03\x04")):
		return nil, diag.New("this is a spreadsheet file, not a table as text", "save it as CSV")
	}
	old := charmap.Windows1252.NewDecoder() // which Latin-1 is a part of
	if utf8.Valid(text) {
		old = encoding.Nop.NewDecoder()
	}
	text, _, err := transform.Bytes(unicode.BOMOverride(old), text)
	if err != nil || bytes.IndexByte(text, 0) >= 0 {
		return nil, diag.New("this is not text", "save it as CSV")
	}
	text = bytes.ReplaceAll(bytes.ReplaceAll(text, []byte("\r\n"), []byte("\n")), []byte("\r"), []byte("\n"))
	skipped := 0
	separator := separatorOf(text)
	if first, rest, found := bytes.Cut(text, []byte("\n")); found && len(first) == 5 && bytes.HasPrefix(first, []byte("sep=")) {
		separator, text, skipped = rune(first[4]), rest, 1 // a line that some spreadsheets put first
	}
	t := &Table{Comma: separator == ';'}
	for r := reader(text, separator); ; {
		cells, err := r.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, csvFault(err, skipped)
		}
		line, _ := r.FieldPos(0)
		t.put(cells, line+skipped)
	}
	if t.Head == nil {
		return nil, diag.New("the table is empty", "a head row, such as name,T1,T2, and a row for each student")
	}
	t.Name = slices.IndexFunc(t.Head, func(h string) bool { return strings.EqualFold(h, "name") })
	t.Sheet = slices.IndexFunc(t.Head, func(h string) bool { return strings.EqualFold(h, "sheet") || strings.EqualFold(h, "variant") })
	for i := range t.Rows {
		r := &t.Rows[i]
		r.Name, r.Sheet = cmp.Or(r.cell(t.Name), "line "+strconv.Itoa(r.Line)), r.cell(t.Sheet)
	}
	return t, nil
}

func reader(text []byte, separator rune) *csv.Reader {
	r := csv.NewReader(bytes.NewReader(text))
	r.Comma, r.FieldsPerRecord, r.TrimLeadingSpace = separator, -1, separator != '\t'
	return r
}

// put adds a row that is not blank; the first is the head.
func (t *Table) put(cells []string, line int) {
	for i, c := range cells {
		cells[i] = strings.TrimSpace(c)
	}
	for len(cells) > 0 && cells[len(cells)-1] == "" {
		cells = cells[:len(cells)-1]
	}
	switch {
	case len(cells) == 0:
	case t.Head == nil:
		t.Head = cells
	default:
		t.Rows = append(t.Rows, Row{Line: line, Cells: cells})
	}
}

// separatorOf takes the one that parts the first row into the most cells.
func separatorOf(text []byte) rune {
	best, parts := ',', 1
	for _, c := range ",;\t" {
		r := reader(text, c)
		r.LazyQuotes = true
		if head, _ := r.Read(); len(head) > parts {
			best, parts = c, len(head)
		}
	}
	return best
}

// csvFault puts an error of the reader in our words.
func csvFault(err error, skipped int) *diag.Error {
	var at *csv.ParseError
	if !errors.As(err, &at) {
		return diag.New(err.Error(), "")
	}
	f := &diag.Error{Place: diag.Place{Line: at.Line + skipped, Column: at.Column}, Msg: at.Err.Error()}
	switch {
	case errors.Is(at.Err, csv.ErrBareQuote):
		f.Msg, f.Hint = "there is a quote in the middle of a cell", `the cell in quotes, with "" for each quote inside`
	case errors.Is(at.Err, csv.ErrQuote):
		f.Msg, f.Hint = "the closing quote of a cell is missing", `"" for a quote inside, and one at the end`
		if at.StartLine != at.Line {
			f.Place = diag.Place{Line: at.StartLine + skipped}
		}
	}
	return f
}
