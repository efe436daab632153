package diag

import (
	"errors"
	"fmt"
	"io/fs"
	"reflect"
	"strings"
	"testing"
)

func TestPrinted(t *testing.T) {
	at := func(line, column, width int, source string) Place { return Place{line, column, width, source} }
	for _, c := range []struct {
		e    Error
		want string
	}{
		{Error{Place: at(3, 8, 3, `A = "4, hh, 0"`), Msg: `there is no "hh"`, Hint: "h"},
			"a.toml:3:8: there is no \"hh\". Try: h\nA = \"4, hh, 0\"\n       ^~~"},
		{Error{Place: at(1, 6, 1, `A = "°x"`), Msg: "unknown unit"}, "a.toml:1:6: unknown unit\nA = \"°x\"\n     ^"},
		{Error{Place: at(1, 99, 9, "A"), Msg: "this is left over"}, "a.toml:1:99: this is left over\nA\n ^"},
		{Error{Place: at(2, 1, 0, "  "), Msg: "the sheet has no free body", Hint: "on"}, "a.toml:2:1: the sheet has no free body. Try: on"},
		{Error{Place: at(2, 0, 0, ""), Msg: "the row has 4 cells"}, "a.toml:2: the row has 4 cells"},
		{Error{Place: at(1, 1, 2, "a\x1b"), Msg: "not text\x1b"}, "a.toml:1:1: not text·"},
		{Error{Place: at(1, 300, 2, strings.Repeat("ü", 299)+"AB"+strings.Repeat("c", 300)), Msg: "left over"},
			"a.toml:1:300: left over\n... " + strings.Repeat("ü", 60) + "AB" + strings.Repeat("c", 60) + " ...\n" + strings.Repeat(" ", 64) + "^~"},
		{Error{Place: at(1, 1, 500, strings.Repeat("#", 500)), Msg: "no"},
			"a.toml:1:1: no\n" + strings.Repeat("#", 240) + " ...\n^" + strings.Repeat("~", 239)},
		{Error{Msg: "there is no such file", Hint: "another name"}, "a.toml: there is no such file. Try: another name"},
	} {
		if got := c.e.In("a.toml"); got != c.want {
			t.Errorf("got\n%s\nwant\n%s", got, c.want)
		}
	}
	e := Error{Place: at(2, 4, 0, "A"), Msg: "unknown key", Hint: "limit"}
	if got := e.Warning("a.toml"); got != "a.toml:2:4: warning: unknown key. Try: limit\nA\n ^" {
		t.Error(got)
	}
	if got := e.Error(); got != "2:4: unknown key. Try: limit" {
		t.Error(got)
	}
}

func TestCause(t *testing.T) {
	e := &Error{Msg: "there is no such file", Err: fs.ErrNotExist}
	wrapped := fmt.Errorf("the sheet: %w", e)
	if !errors.Is(wrapped, fs.ErrNotExist) {
		t.Error("the cause is lost")
	}
	if got := Of(wrapped); !reflect.DeepEqual(got, e) || got == e {
		t.Errorf("%+v is no copy of the error that is wrapped", got)
	}
	if got := Of(fs.ErrPermission); got.Msg != fs.ErrPermission.Error() || !errors.Is(got, fs.ErrPermission) {
		t.Errorf("%+v", got)
	}
}

// A key that a message names is said as the file does, or as others call it, and no other word of it changes.
func TestKeys(t *testing.T) {
	path, along := Key("lines", "path"), Key("lines", "along")
	head := func(table, key string) string { return map[string]string{"lines.path": "through"}[table+"."+key] }
	for _, c := range []struct{ msg, hint, file, other string }{
		{"the line path has no " + path, path + " A B, or " + path + " A C", "the line path has no path. Try: path A B, or path A C", "the line path has no through. Try: through A B, or through A C"},
		{"it has both " + along + " and " + path, "", "it has both along and path", "it has both  and through"},
		{path, "a path", "path. Try: a path", "through. Try: a path"},
		{"a path", "", "a path", "a path"},
		{"an end\x1a of a file", "", "an end of a file", "an end of a file"},
	} {
		e := New(c.msg, c.hint)
		if got := e.Text(); got != c.file {
			t.Errorf("%q, want %q", got, c.file)
		}
		if got := e.Called(head).Text(); got != c.other {
			t.Errorf("%q, want %q", got, c.other)
		}
	}
}

func TestCaret(t *testing.T) {
	for _, c := range []struct {
		text          string
		column, width int
		want          string
	}{
		{"3 m + 2 N", 7, 3, "3 m + 2 N\n      ^~~"},
		{"6 +", 4, 0, "6 +\n   ^"},
		{"θ + 1", 3, 1, "θ + 1\n  ^"},
		{"力 + 1", 1, 1, "力 + 1\n^~"},
		{"力 + 1", 5, 1, "力 + 1\n     ^"},
		{"e\u0301 + 1", 4, 1, "e\u0301 + 1\n  ^"},
		{"1\t+ 2", 5, 1, "1 + 2\n    ^"},
		{"\xff\xff1", 3, 1, "··1\n  ^"},
		{"ab", 1, 99, "ab\n^~"},
		{"θ", 2, 0, "θ\n ^"},
	} {
		e := Error{Place: Place{1, c.column, c.width, c.text}, Msg: "no"}
		if got := strings.TrimPrefix(e.In("a"), fmt.Sprintf("a:1:%d: no\n", c.column)); got != c.want {
			t.Errorf("%q, %d, %d wide:\n%q, want\n%q", c.text, c.column, c.width, got, c.want)
		}
	}
}
