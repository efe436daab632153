package sheet

import (
	"slices"
	"strings"
	"unicode/utf8"

	"trivet/mechanics/diag"
)

// splice puts text in the place of a span.
type splice struct {
	at   diag.Span
	text string
}

// insert puts text at a place.
func insert(at int, text string) splice { return splice{diag.Between(at, at), text} }

// spliced is a text with splices made that do not overlap, or overlap in what they take out.
func spliced(text string, splices []splice) string {
	slices.SortStableFunc(splices, func(a, b splice) int { return a.at.Start - b.at.Start })
	var sb strings.Builder
	end := 0
	for _, sp := range splices {
		start := max(end, sp.at.Start)
		sb.WriteString(text[end:start])
		sb.WriteString(sp.text)
		end = max(start, sp.at.End)
	}
	return sb.String() + text[end:]
}

// eol is how the lines of the sheet end.
func (s *Sheet) eol() string {
	if i := strings.IndexByte(s.text, '\n'); i > 0 && s.text[i-1] == '\r' {
		return "\r\n"
	}
	return "\n"
}

// nextLine is the offset at which the line after that of offset i begins, or the end of the text.
func nextLine(text string, i int) int {
	if n := strings.IndexByte(text[i:], '\n'); n >= 0 {
		return i + n + 1
	}
	return len(text)
}

// lineStart is the offset at which the line of offset i begins.
func lineStart(text string, i int) int {
	start := strings.LastIndexByte(text[:i], '\n') + 1
	if start == 0 && strings.HasPrefix(text, bom) {
		return min(i, len(bom))
	}
	return start
}

// skip moves over the characters of a set.
func skip(text string, i int, set string) int {
	return len(text) - len(strings.TrimLeft(text[i:], set))
}

// blank tells whether nothing stands from a place to the end of its line.
func (s *Sheet) blank(i int) bool { return strings.TrimSpace(s.text[i:nextLine(s.text, i)]) == "" }

// lines is the span of the whole lines that a span stands on.
func (s *Sheet) lines(at diag.Span) diag.Span {
	return diag.Between(lineStart(s.text, at.Start), nextLine(s.text, at.End))
}

// lineAfter puts a line after the one in which an entry ends.
func (s *Sheet) lineAfter(end int, line string) splice {
	i := nextLine(s.text, end)
	if i == end || s.text[i-1] != '\n' {
		return insert(i, s.eol()+line)
	}
	return insert(i, line+s.eol())
}

// beside puts what is written like an entry behind it, or before it: in braces with a comma,
// with a header of its own as a paragraph, else as lines.
func (s *Sheet) beside(e entry, text string, before bool) splice {
	at, lines := e.span(), s.lines(e.span())
	switch {
	case e.in.braces && before:
		return insert(at.Start, text+", ")
	case e.in.braces:
		return insert(at.End, ", "+text)
	case e.header && before:
		return s.paragraph(lines.Start, text+s.eol())
	case e.header:
		return s.paragraph(lines.End, text+s.eol())
	case before:
		return insert(lines.Start, text+s.eol())
	}
	return s.lineAfter(at.End, text)
}

// assign writes "key = value", with the blanks before the key and the column
// of the equals sign taken from the entry like, where that is one.
func (s *Sheet) assign(key, value string, like entry) string {
	if like.header {
		return key + " = " + value
	}
	before := s.text[lineStart(s.text, like.whole.Start):like.whole.Start]
	typed := s.text[like.whole.Start:like.value.Start]
	width := utf8.RuneCountInString(typed[:strings.LastIndexByte(typed, '=')])
	return before + key + strings.Repeat(" ", max(1, width-utf8.RuneCountInString(key))) + "= " + value
}

// put adds a key and value behind an entry, written like it; the last one of a group
// stands for the group.
func (s *Sheet) put(after entry, key, value string) splice {
	entry := key + " = " + value
	switch g := after.in; {
	case !g.braces && after.header && g == s.sections[0]:
		return s.firstEntry(entry)
	case !g.braces:
		return s.lineAfter(after.whole.End, s.assign(key, value, after))
	case !after.header:
		return s.beside(after, entry, false)
	case strings.TrimLeft(s.text[g.at.Start+1:g.at.End-1], " \t") != "": // a comment or a line end
		return insert(g.at.Start+1, " "+entry)
	default:
		return splice{g.at, "{ " + entry + " }"}
	}
}

// firstEntry puts a line before the first header of a sheet that has none
// there: after a comment that opens the file and is set off by a blank line.
func (s *Sheet) firstEntry(line string) splice {
	begin, end := s.sections[0].at.End, len(s.text)
	if len(s.sections) > 1 {
		end = lineStart(s.text, s.sections[1].at.Start)
	}
	at := begin
	for i, opened := begin, false; i < end; i = nextLine(s.text, i) {
		if opened = opened || !s.blank(i); opened && s.blank(i) {
			at = nextLine(s.text, i)
		}
	}
	return s.paragraph(at, line+s.eol())
}

// paragraph puts lines at the beginning of a line, set off by blank ones.
func (s *Sheet) paragraph(at int, lines string) splice {
	if before := s.text[s.sections[0].at.End:at]; before != "" {
		if !s.blank(lineStart(s.text, at-1)) {
			lines = s.eol() + lines
		}
		if !strings.HasSuffix(before, "\n") {
			lines = s.eol() + lines
		}
	}
	if !s.blank(at) {
		lines += s.eol()
	}
	return insert(at, lines)
}

// cut takes entries out: those of inline tables with their commas, others with their lines.
func (s *Sheet) cut(gone ...entry) (out []splice) {
	done := map[*group]bool{}
	for _, e := range gone {
		if !e.in.braces {
			out = append(out, s.cutLines(e.span()))
		} else if !done[e.in] {
			done[e.in] = true
			out = append(out, s.cutInner(e.in, gone)...)
		}
	}
	return out
}

func (s *Sheet) cutInner(g *group, gone []entry) (out []splice) {
	last := -1 // of those that stay
	goes := make([]bool, len(g.entries))
	for i, e := range g.entries {
		goes[i] = slices.ContainsFunc(gone, func(o entry) bool { return o.whole == e.whole })
		if !goes[i] {
			last = i
		}
	}
	if last < 0 {
		return []splice{{g.at, "{}"}}
	}
	for i, e := range g.entries[:last] {
		if goes[i] {
			out = append(out, splice{diag.Between(e.whole.Start, s.afterComma(e.whole.End)), ""})
		}
	}
	return append(out, splice{diag.Between(g.entries[last].whole.End, g.last().whole.End), ""})
}

// afterComma moves over the comma behind an entry, with the comments before it and the
// blanks after it.
func (s *Sheet) afterComma(i int) int {
	for i = skip(s.text, i, " \t\r\n"); s.text[i] == '#'; i = skip(s.text, i, " \t\r\n") {
		i = nextLine(s.text, i)
	}
	return skip(s.text, i+1, " \t")
}

// cutLines takes out the lines a span stands on. Where that would leave two
// blank lines together, one goes too, and none is left to begin the file.
func (s *Sheet) cutLines(at diag.Span) splice {
	at = s.lines(at)
	switch {
	case strings.TrimPrefix(s.text[:at.Start], bom) == "": // the file begins with what comes next
		for at.End < len(s.text) && s.blank(at.End) {
			at.End = nextLine(s.text, at.End)
		}
	case s.blank(at.End):
		if before := lineStart(s.text, at.Start-1); before < at.Start && s.blank(before) {
			at.Start = before
		}
	}
	return splice{at, ""}
}
