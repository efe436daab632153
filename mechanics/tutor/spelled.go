package tutor

import (
	"strings"

	"trivet/mechanics/diag"
	"trivet/units"
)

// spelled is an equation in the characters that cells are read in: a name in quotes is an
// identifier of the same length, and a name before a parenthesis is a factor.
type spelled struct {
	text   string
	quoted map[string]string // identifier to name
	stars  []int             // where a * was put in
}

func (t *Practice) spell(text string) spelled {
	s := spelled{quoted: map[string]string{}}
	var b strings.Builder
	for i := 0; i < len(text); i++ {
		switch end := strings.IndexByte(text[i+1:], '"'); {
		case text[i] == '"' && end > 0 && t.isName(text[i+1:i+1+end]):
			name := text[i+1 : i+1+end]
			id := identifier(name)
			s.quoted[id] = name
			b.WriteString(id)
			i += end + 1
		case text[i] == '(' && t.isFactor(b.String()):
			if before := b.String(); strings.HasSuffix(before, " ") {
				b.Reset()
				b.WriteString(before[:len(before)-1] + "*(")
			} else {
				s.stars = append(s.stars, b.Len())
				b.WriteString("*(")
			}
		default:
			b.WriteByte(text[i])
		}
	}
	s.text = b.String()
	return s
}

func (t *Practice) isName(name string) bool { _, ok, _ := names{t: t}.Lookup(name); return ok }

// isFactor tells whether a text ends in a name that is no function.
func (t *Practice) isFactor(text string) bool {
	text = strings.TrimRight(text, " ")
	from := len(text)
	for from > 0 && (letter(text[from-1]) || text[from-1] >= 0x80) {
		from--
	}
	name := text[from:]
	for _, f := range units.Functions() {
		if f.Name == name {
			return false
		}
	}
	return name != "" && t.isName(name)
}

// identifier has the length of a name with its quotes, so that places in a text stay.
func identifier(name string) string {
	b := []byte("q" + name + "_")
	for i, c := range b {
		if !letter(c) {
			b[i] = '_'
		}
	}
	return string(b)
}

// back sets an error to its place in what was typed.
func (s *spelled) back(err *diag.Error) *diag.Error {
	e := *err
	for i := len(s.stars) - 1; i >= 0; i-- {
		for _, at := range []*int{&e.Span.Start, &e.Span.End} {
			if *at > s.stars[i] {
				*at--
			}
		}
	}
	return &e
}
