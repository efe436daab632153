package sheet

import (
	"strings"
	"unicode/utf8"

	"trivet/mechanics/diag"
)

// eol is how the lines of the sheet end.
func (s *Sheet) eol() string {
	if i := strings.IndexByte(s.text, '\n'); i > 0 && s.text[i-1] == '\r' {
		return "\r\n"
	}
	return "\n"
}

// lineAfter puts a line after the one in which an entry ends.
func (s *Sheet) lineAfter(end int, line string) splice {
	i := lineEnd(s.text, end)
	if i == len(s.text) {
		return splice{diag.Between(i, i), s.eol() + line}
	}
	return splice{diag.Between(i+1, i+1), line + s.eol()}
}

// blank tells whether nothing stands from a place to the end of its line.
func (s *Sheet) blank(i int) bool { return strings.TrimSpace(s.text[i:lineEnd(s.text, i)]) == "" }

// afterBlank moves over one blank line.
func (s *Sheet) afterBlank(i int) int {
	if s.blank(i) {
		return min(len(s.text), lineEnd(s.text, i)+1)
	}
	return i
}

// lines is the span of the whole lines that a span stands on.
func (s *Sheet) lines(at diag.Span) diag.Span {
	return diag.Between(lineStart(s.text, at.Start), min(len(s.text), lineEnd(s.text, at.End)+1))
}

// assign writes "key = value", with the blanks before the key and the column
// of the equals sign taken from the entry like, where there is one.
func (s *Sheet) assign(key, value string, like diag.Span) string {
	if like.End == 0 {
		return key + " = " + value
	}
	start := lineStart(s.text, like.Start)
	before := s.text[start:like.Start]
	if strings.TrimLeft(before, " \t") != "" {
		before = ""
	}
	width := 0
	if i := equals(s.text[like.Start:like.End]); i >= 0 {
		width = utf8.RuneCountInString(s.text[like.Start : like.Start+i])
	}
	pad := max(1, width-utf8.RuneCountInString(key))
	return before + key + strings.Repeat(" ", pad) + "= " + value
}

// equals is the offset of the equals sign of an entry.
func equals(entry string) int {
	for i := 0; i < len(entry); {
		switch entry[i] {
		case '"', '\'':
			i = stringEnd(entry, i)
		case '=':
			return i
		default:
			i++
		}
	}
	return -1
}

// putInner adds an entry to an inline table, after the entry that ends at
// after, or as the last one where after is 0.
func (s *Sheet) putInner(br *braces, after int, entry string) splice {
	if len(br.inner) == 0 {
		if strings.TrimLeft(s.text[br.at.Start+1:br.at.End-1], " \t") != "" { // a comment or a line end
			i := br.at.Start + 1
			return splice{diag.Between(i, i), " " + entry}
		}
		return splice{br.at, "{ " + entry + " }"}
	}
	if after == 0 {
		after = br.inner[len(br.inner)-1].End
	}
	return splice{diag.Between(after, after), ", " + entry}
}

// cutInner takes entries out of an inline table, with their commas.
func (s *Sheet) cutInner(br *braces, gone func(diag.Span) bool) []splice {
	last := -1
	for i, at := range br.inner {
		if !gone(at) {
			last = i
		}
	}
	if last < 0 {
		return []splice{{br.at, "{}"}}
	}
	var out []splice
	for i, at := range br.inner {
		if i < last && gone(at) {
			out = append(out, splice{diag.Between(at.Start, s.afterComma(at.End)), ""})
		}
	}
	if last < len(br.inner)-1 {
		out = append(out, splice{diag.Between(br.inner[last].End, br.inner[len(br.inner)-1].End), ""})
	}
	return out
}

func (s *Sheet) afterComma(i int) int {
	i = skipBlank(s.text, i)
	if i < len(s.text) && s.text[i] == ',' {
		i++
	}
	return skip(s.text, i, " \t")
}

// cutLines takes out the lines a span stands on. Where that would leave two
// blank lines together, one goes too, and none is left to begin the file.
func (s *Sheet) cutLines(at diag.Span) splice {
	at = s.lines(at)
	switch {
	case strings.TrimPrefix(s.text[:at.Start], bom) == "": // the file begins with what comes next
		for at.End < len(s.text) && s.blank(at.End) {
			at.End = s.afterBlank(at.End)
		}
	case s.blank(at.End):
		if before := lineStart(s.text, at.Start-1); before < at.Start && s.blank(before) {
			at.Start = before
		}
	}
	return splice{at, ""}
}
