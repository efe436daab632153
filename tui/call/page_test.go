package call

import (
	"os"
	"strings"
	"testing"
)

func TestPageRefuses(t *testing.T) {
	allRefused(t, []refused{
		{"page lamp.toml", "trivet: a page needs a file. Try: -o page.pdf\n"},
		{"page lamp.toml -o x.doc", "trivet: unknown format .doc of a page. Try: a name that ends with .md, .tex, .html, .pdf, .svg or .png\n"},
		{"page lamp.toml push.toml -o x.svg", "trivet: a page contains one sheet, but 2 are named. Try: one of them\n"},
		{"page lamp.toml --task --field -o x.md", "trivet: a page is either a task to hand out or a field page. Try: leave out --task or --field\n"},
		{"page lamp.toml -o none/x.svg", "none/x.svg: there is no such folder. Try: make the folder, or save it under another name\n"},
		{"page half.toml -o x.svg", halfSays},
		{"page missing.toml -o x.svg", missingSays},
		{"page lamp.toml -o there.svg", "there.svg: a file of this name exists already. Try: another name, or write over it with --force\n"},
	})
}

// A page is written of a sheet that is not well too, and only over what may go.
func TestPage(t *testing.T) {
	for _, c := range []struct {
		line, file string
		written    bool
		code       int
	}{
		{"page lamp.toml -o x.svg", "x.svg", true, 0},
		{"page - -o x.svg", "x.svg", true, 0},
		{"page misprint.toml -o x.svg", "x.svg", true, Failed},
		{"page lamp.toml --force -o there.svg", "there.svg", true, 0},
		{"page lamp.toml -o there.svg", "there.svg", false, CantDo},
		{"page half.toml --force -o there.svg", "there.svg", false, CantDo},
	} {
		got := calls(t, strings.Fields(c.line)...)
		text, err := os.ReadFile(c.file)
		if err != nil {
			t.Errorf("trivet %s: %v", c.line, err)
		}
		if got.out != "" || got.code != c.code || strings.Contains(string(text), "<svg") != c.written || (string(text) == sheets()["there.svg"]) == c.written {
			t.Errorf("trivet %s: %+v, and the file holds %.60q", c.line, got, text)
		}
	}
}
