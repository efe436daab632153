package report

import (
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"trivet/mechanics/doc"
	"trivet/mechanics/printable"
	"trivet/mechanics/variant"
)

// KeyEnding is the ending of a key's file.
func KeyEnding(format string) string {
	if format == "markdown" {
		return ".md"
	}
	return ".csv"
}

// Key writes the key of a class set.
func Key(format, title string, k variant.Key) []byte {
	if format == "markdown" {
		return []byte(doc.Markdown(keyDoc(title, k)))
	}
	rows := [][]string{slices.Insert(slices.Clone(k.Head), 1, "seed")}
	for _, r := range k.Rows {
		rows = append(rows, slices.Insert(slices.Clone(r), 1, strconv.FormatUint(k.Seed, 10)))
	}
	return csvOf(rows)
}

// csvOf writes rows as RFC 4180 has them, for spreadsheets. What a spreadsheet would
// run as a formula gets an apostrophe before it; numbers are written without the
// blanks between thousands. A text beyond ASCII begins with the mark by which
// spreadsheets know UTF-8.
func csvOf(rows [][]string) []byte {
	text := csvText(rows, csvCell)
	if strings.ContainsFunc(text, func(r rune) bool { return r > '~' }) {
		text = "\ufeff" + text
	}
	return []byte(text)
}

// csvText writes rows whose cells are first made safe.
func csvText(rows [][]string, safe func(string) string) string {
	var b strings.Builder
	for _, r := range rows {
		for i := range r {
			r[i] = safe(r[i])
		}
	}
	_ = csv.NewWriter(&b).WriteAll(rows) // a strings.Builder takes everything
	return b.String()
}

func csvCell(text string) string {
	text = printable.Text(text)
	plain := strings.ReplaceAll(text, " ", "")
	if _, err := strconv.ParseFloat(plain, 64); err == nil && strings.Trim(plain, "+-0123456789.eE") == "" {
		return plain
	}
	if text != "" && strings.ContainsAny(text[:1], "=+-@\t\r\n") {
		return "'" + text
	}
	return text
}

// keyDoc is a key as a document.
func keyDoc(title string, k variant.Key) *doc.Doc {
	d := &doc.Doc{}
	if title = oneLine(title); title != "" {
		d.Title = title + ": key"
	}
	table := doc.NewTable(k.Head...)
	for i := range k.Head[1:] {
		table.Columns[i+1].Align = doc.Right
	}
	for _, r := range k.Rows {
		table.Add(each(r, words)...)
	}
	d.Add(doc.Section{Blocks: []doc.Block{doc.Say(fmt.Sprintf("For the instructor. Seed %d.", k.Seed)), table}})
	return d
}
