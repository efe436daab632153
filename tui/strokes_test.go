package tui

import (
	"fmt"
	"strings"
	"testing"
)

// stroke is something that a person does at the terminal.
type stroke struct {
	name  string // of a key
	bytes string
	words []string // of the mouse: what, and where
}

// strokes reads what a person does: names of keys, text in quotes, a "paste" of
// text with \t and \n in it, and the mouse: click "text", drag "text" 6,3,
// wheelup "text", wheeldown "text". The mouse goes to where the text stands.
func strokes(line string) (list []stroke, err error) {
	words, err := splitQuoted(line)
	if err != nil {
		return nil, err
	}
	for i := 0; i < len(words); i++ {
		w := words[i]
		need := map[string]int{"click": 1, "clickby": 2, "wheelup": 1, "wheeldown": 1, "paste": 1, "drag": 2}[w]
		switch {
		case need > 0 && i+need >= len(words):
			return nil, fmt.Errorf("%s needs %d words behind it in %q", w, need, line)
		case w == "paste":
			text := strings.NewReplacer(`\t`, "\t", `\n`, "\n").Replace(words[i+1][1:])
			list = append(list, stroke{name: w, bytes: "\x1b[200~" + text + "\x1b[201~"})
		case w == "wait":
			list = append(list, stroke{name: w, words: []string{}})
		case need > 0:
			list = append(list, stroke{name: w, words: words[i+1 : i+1+need]})
		case w[0] == '"':
			for _, c := range w[1:] {
				list = append(list, stroke{name: strings.Replace(string(c), " ", "space", 1), bytes: string(c)})
			}
		default:
			b, ok := keyBytes(w)
			if !ok {
				return nil, fmt.Errorf("there is no key %q in %q", w, line)
			}
			list = append(list, stroke{name: w, bytes: b})
		}
		i += need
	}
	return list, nil
}

// splitQuoted splits at blanks outside quotes; what stood in quotes keeps the
// first of them. A quote in a text is written \".
func splitQuoted(line string) (words []string, err error) {
	rest := strings.TrimSpace(line)
	for rest != "" {
		end := strings.IndexByte(rest+" ", ' ')
		if rest[0] == '"' {
			end = 1
			for end < len(rest) && rest[end] != '"' {
				if rest[end] == '\\' && end+1 < len(rest) && rest[end+1] == '"' {
					end++
				}
				end++
			}
			if end >= len(rest) {
				return nil, fmt.Errorf("a quote is not closed in %q", line)
			}
			words = append(words, `"`+strings.ReplaceAll(rest[1:end], `\"`, `"`))
			end++
		} else {
			words = append(words, rest[:end])
		}
		rest = strings.TrimSpace(rest[min(end, len(rest)):])
	}
	return words, nil
}

// does plays a line of strokes.
func (s *seat) does(line string) {
	s.t.Helper()
	list, err := strokes(line)
	if err != nil {
		s.t.Fatal(err)
	}
	s.plays(list)
}

// plays plays strokes and waits until the screen has settled.
func (s *seat) plays(list []stroke) {
	s.t.Helper()
	if len(list) == 0 {
		return
	}
	for _, k := range list {
		if k.words == nil {
			s.send(k.bytes)
			continue
		}
		s.settle()
		if k.name == "wait" {
			continue
		}
		x, y := s.where(k.words[0][1:])
		var dx, dy int
		if len(k.words) > 1 {
			if _, err := fmt.Sscanf(k.words[1], "%d,%d", &dx, &dy); err != nil {
				s.t.Fatalf("%q is no way from a text: %v", k.words[1], err)
			}
		}
		switch k.name {
		case "click", "clickby":
			x, y = x+dx, y+dy
			s.send(sgr(mouseLeft, x, y, true) + sgr(mouseLeft, x, y, false))
		case "wheelup":
			s.send(sgr(mouseWheelUp, x, y, true))
		case "wheeldown":
			s.send(sgr(mouseWheelDown, x, y, true))
		case "drag":
			s.send(sgr(mouseLeft, x, y, true) + sgr(mouseLeft+mouseDragged, x+dx, y+dy, true) + sgr(mouseLeft, x+dx, y+dy, false))
		}
	}
	s.settle()
}

// where gives where a text stands on screen; behind "|", where it stands behind the
// last wall of its line. A text is followed by blanks that count, so that "D " is
// a name and not a beginning.
func (s *seat) where(text string) (x, y int) {
	s.t.Helper()
	want, behind := strings.CutPrefix(text, "|")
	for y, line := range strings.Split(s.term.screen(), "\n") {
		from := 0
		if behind {
			from = strings.LastIndexAny(line, "│|") + 1
			if from == 0 {
				continue
			}
		}
		if i := strings.Index(line[from:], want); i >= 0 {
			return len([]rune(line[:from+i])), y
		}
	}
	s.t.Fatalf("there is no %q on\n%s", text, s.term.screen())
	return 0, 0
}

func TestStrokesAreRead(t *testing.T) {
	list, err := strokes(`alt+p "a \"b" shift+up paste "1\t2\n" drag "|D" 6,3`)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, k := range list {
		got = append(got, fmt.Sprintf("%s %q %q", k.name, k.bytes, k.words))
	}
	want := []string{
		`alt+p "\x1bp" []`, `a "a" []`, `space " " []`, `" "\"" []`, `b "b" []`, `shift+up "\x1b[1;2A" []`,
		`paste "\x1b[200~1\t2\n\x1b[201~" []`, `drag "" ["\"|D" "6,3"]`,
	}
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("read\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
	for _, bad := range []string{`"a`, "ctrl+shift+q", "click", `drag "a"`, "hyper+x"} {
		if _, err := strokes(bad); err == nil {
			t.Errorf("%s is read", bad)
		}
	}
}
