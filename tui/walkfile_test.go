package tui

import (
	"fmt"
	"os"
	"strings"
	"testing"
)

// walk is a recorded sitting of one person, kept as a text that reads as a document
// of the program at work:
//
//	Title
//
//	size: 80x24
//	opens: beam.toml, a copy of the starting sheet beam-on-supports
//
//	Words on who it is and what is wanted.
//
//	> keys, as strokes reads them
//
//	    the whole screen after them, four blanks in front
//
//	cursor: what is reversed on it
//
//	= beam.toml
//
//	    the text of that file in the end
//
// Words, keys and screens follow each other as often as it takes.
type walk struct {
	name        string
	title       string
	w, h        int
	opens, from string // a sheet's name, and the starting sheet that it is a copy of; none: the start screen
	steps       []pace
	files       []leaving
}

// pace is one step of a walk: what is done and why, and what it leads to.
type pace struct {
	words, screen []string
	keys, cursor  string
}

// leaving is a file that a walk leaves.
type leaving struct {
	name string
	text []string
}

// indent stands before what is not words.
const indent = "    "

func readWalk(name string) (*walk, error) {
	text, err := os.ReadFile(walkFile(name))
	if err != nil {
		return nil, err
	}
	w := &walk{name: name}
	lines := strings.Split(strings.TrimRight(string(text), "\n"), "\n")
	w.title, lines = lines[0], lines[1:]
	var words []string
	var into *[]string
	blanks := 0
	for i, l := range lines {
		bad := func(why string) error { return fmt.Errorf("%s:%d: %s: %q", walkFile(name), i+2, why, l) }
		kind, rest, _ := strings.Cut(l, " ")
		switch {
		case l == "":
			blanks++
			continue
		case strings.HasPrefix(l, indent):
			if into == nil {
				return nil, bad("a screen without keys before it")
			}
			for ; blanks > 0 && len(*into) > 0; blanks-- {
				*into = append(*into, "")
			}
			*into = append(*into, l[len(indent):])
		case kind == "size:":
			if _, err := fmt.Sscanf(rest, "%dx%d", &w.w, &w.h); err != nil {
				return nil, bad(err.Error())
			}
		case kind == "opens:":
			w.opens, w.from, _ = strings.Cut(rest, copyOf)
		case kind == ">":
			if _, err := strokes(rest); err != nil {
				return nil, bad(err.Error())
			}
			w.steps = append(w.steps, pace{words: words, keys: rest})
			words, into = nil, &w.steps[len(w.steps)-1].screen
		case kind == "cursor:":
			if len(w.steps) == 0 {
				return nil, bad("a cursor without keys before it")
			}
			w.steps[len(w.steps)-1].cursor = rest
		case kind == "=":
			w.files = append(w.files, leaving{name: rest})
			into = &w.files[len(w.files)-1].text
		default:
			if len(words) > 0 && blanks > 0 {
				words = append(words, "")
			}
			words = append(words, l)
		}
		blanks = 0
	}
	if w.w == 0 || len(w.steps) == 0 || len(words) > 0 {
		return nil, fmt.Errorf("%s: a walk has a size, and steps, and ends with them or with the files that it leaves", walkFile(name))
	}
	return w, nil
}

// copyOf stands between a sheet's name and the starting sheet it is a copy of.
const copyOf = ", a copy of the starting sheet "

func walkFile(name string) string { return "testdata/walks/" + name + ".txt" }

// String is the walk as its file has it.
func (w *walk) String() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n\nsize: %dx%d\n", w.title, w.w, w.h)
	if w.opens != "" {
		b.WriteString("opens: " + w.opens + copyOf + w.from + "\n")
	}
	block := func(lines []string, before string) {
		for _, l := range lines {
			b.WriteString(strings.TrimRight(before+l, " ") + "\n")
		}
	}
	for _, s := range w.steps {
		if len(s.words) > 0 {
			b.WriteByte('\n')
			block(s.words, "")
		}
		b.WriteString("\n> " + s.keys + "\n\n")
		block(s.screen, indent)
		if s.cursor != "" {
			b.WriteString("\ncursor: " + s.cursor + "\n")
		}
	}
	for _, f := range w.files {
		b.WriteString("\n= " + f.name + "\n\n")
		block(f.text, indent)
	}
	return b.String()
}

func (w *walk) store(t *testing.T) {
	t.Helper()
	if err := os.WriteFile(walkFile(w.name), []byte(w.String()), 0o644); err != nil {
		t.Fatal(err)
	}
}
