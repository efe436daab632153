package report

import (
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"trivet/mechanics/doc"
	"trivet/mechanics/say"
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
		rows = append(rows, slices.Insert(say.Each(r, ungrouped), 1, strconv.FormatUint(k.Seed, 10)))
	}
	return []byte(CSV(rows))
}

// CSV writes rows as RFC 4180 has them, for spreadsheets. What a spreadsheet would
// run as a formula gets an apostrophe before it, unless it is a number. A text beyond
// ASCII begins with the mark by which spreadsheets know UTF-8.
func CSV(rows [][]string) string {
	var b strings.Builder
	for _, r := range rows {
		for i, text := range r {
			r[i] = doc.Printed(text)
			if strings.IndexAny(strings.TrimLeft(r[i], " "), "=+-@") == 0 && !isNumber(r[i]) {
				r[i] = "'" + r[i]
			}
		}
	}
	_ = csv.NewWriter(&b).WriteAll(rows) // a strings.Builder takes everything
	if strings.ContainsFunc(b.String(), func(r rune) bool { return r > '~' }) {
		return "\ufeff" + b.String()
	}
	return b.String()
}

func isNumber(text string) bool {
	_, err := strconv.ParseFloat(text, 64)
	return err == nil && strings.Trim(text, "+-0123456789.eE") == ""
}

// ungrouped is a cell with a number without the blanks between its thousands.
func ungrouped(c variant.KeyCell) string {
	if c.Number {
		return strings.ReplaceAll(c.Text, " ", "")
	}
	return c.Text
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
		table.Add(say.Each(r, func(c variant.KeyCell) doc.Inline { return words(c.Text) })...)
	}
	d.Add(doc.Section{Blocks: []doc.Block{doc.Say(fmt.Sprintf("For the instructor. Seed %d.", k.Seed)), table}})
	return d
}
