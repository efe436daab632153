package tui

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/tui/session"
)

func TestAPageIsWrittenAndNothingOverwrittenUnasked(t *testing.T) {
	r, path := onDisk(t, hanging)
	page := strings.TrimSuffix(path, ".toml") + ".md"
	r.keys("ctrl+p")
	r.sees("page as", "lamp.")
	r.text("md")
	r.keys("enter")
	r.sees("page written to")
	text, err := os.ReadFile(page)
	if err != nil || !strings.Contains(string(text), "37.5") {
		t.Fatalf("the page holds %q, %v", text, err)
	}
	if err := os.WriteFile(page, []byte("mine"), 0o644); err != nil {
		t.Fatal(err)
	}
	// From the board too; n keeps what is there, y does not.
	r.keys("f5", "ctrl+p")
	r.text("md")
	r.keys("enter")
	r.sees("is there already. Overwrite it?", "y: yes")
	r.keys("n")
	fileIs(t, page, "mine")
	r.keys("ctrl+p")
	r.text("md")
	r.keys("enter", "y")
	r.sees("page written to", "step 1 of")
	if again, _ := os.ReadFile(page); string(again) != string(text) {
		t.Error("the page written anew is another")
	}
	fileIs(t, path, hanging)
}

func TestEveryFormatOfAPage(t *testing.T) {
	for ending, begins := range map[string]string{"md": "#", "tex": "\\documentclass", "html": "<!", "pdf": "%PDF", "svg": "<", "png": "\x89PNG"} {
		r, path := onDisk(t, hanging)
		r.keys("ctrl+p")
		r.text(ending)
		r.keys("enter")
		r.sees("page written to")
		page, err := os.ReadFile(strings.TrimSuffix(path, "toml") + ending)
		if err != nil || !strings.Contains(string(page[:min(len(page), 40)]), begins) {
			t.Errorf("the page in %s begins with %q, %v", ending, page[:min(len(page), 40)], err)
		}
		if !strings.Contains(session.WorkingPage.Prompt(true), "."+ending) {
			t.Errorf("%s is not offered", ending)
		}
	}
}

func TestAPageThatCannotBeWritten(t *testing.T) {
	r, path := onDisk(t, hanging)
	for typed, want := range map[string]string{"exe": "not written: ", "": "not written: "} {
		r.keys("ctrl+p")
		r.text(typed)
		r.keys("enter")
		r.sees(want)
	}
	r.keys("ctrl+p", "ctrl+u")
	r.text(filepath.Join(filepath.Dir(path), "no", "such.md"))
	r.keys("enter")
	r.sees("not written: ")
	r.keys("ctrl+p", "esc")
	if r.m.naming != nil {
		t.Error("esc does not go back")
	}
	// What does not read has no page.
	r.keys("down", "right")
	r.text("zz")
	r.keys("enter", "ctrl+p")
	r.sees("no result to write yet")
}

func TestAHostWritesItsOwnPages(t *testing.T) {
	s, err := sheet.Parse([]byte(hanging))
	if err != nil {
		t.Fatal(err)
	}
	r := rigOf(t, Options{Sheet: s, Width: 120, Height: 36, Page: func(_ session.Page, file, _ string, s *statics.Solution, _ *sheet.Sheet, _ bool) error {
		return errors.New("pages are not written here, " + file + " neither")
	}})
	r.keys("ctrl+p")
	r.text("md")
	r.keys("enter")
	r.sees("not written: pages are not written here, page.md neither")
	// A fault in laying it out costs the page alone.
	r = rigOf(t, Options{Sheet: s, Width: 120, Height: 36, Page: func(session.Page, string, string, *statics.Solution, *sheet.Sheet, bool) error { panic("ink") }})
	r.keys("ctrl+p")
	r.text("pdf")
	r.keys("enter")
	r.sees("not written: this page could not be laid out (fault: ink)")
	// A session that is given none writes none.
	for _, key := range []string{"ctrl+p", "alt+f", "alt+o"} {
		r = rigOf(t, Options{Sheet: s, Width: 120, Height: 36})
		r.keys(key)
		r.sees("pages are not written from this session")
		if r.m.naming != nil {
			t.Errorf("%s asks for a name all the same", key)
		}
	}
}

// The other pages are asked for by their own names, and are what the command line
// writes: the one to hand out holds no result.
func TestTheFieldPageAndThePageToHandOut(t *testing.T) {
	for _, c := range []struct {
		key, asks, behind string
		holds, not        string
	}{
		{"alt+f", "field page as (.md", "-field", "field page: lamp.toml", "free-body"},
		{"alt+o", "page to hand out as (.md", "-task", "Asked", "37.5"},
	} {
		r, path := onDisk(t, hanging)
		r.keys(c.key)
		r.sees(c.asks, "lamp"+c.behind+".")
		r.text("md")
		r.keys("enter")
		r.sees("page written to", "lamp"+c.behind+".md")
		page, err := os.ReadFile(strings.TrimSuffix(path, ".toml") + c.behind + ".md")
		if err != nil || !strings.Contains(string(page), c.holds) || strings.Contains(string(page), c.not) {
			t.Errorf("%s: %v\n%s", c.key, err, page)
		}
		// Written over only where that is said.
		r.keys(c.key)
		r.text("md")
		r.keys("enter")
		r.sees("is there already. Overwrite it?")
		r.keys("y")
		r.sees("page written to")
		again, _ := os.ReadFile(strings.TrimSuffix(path, ".toml") + c.behind + ".md")
		if string(again) != string(page) {
			t.Errorf("%s: written over it is another", c.key)
		}
	}
}

// A page whose words state another value than a given has is written, and it is said.
func TestAPageWhoseWordsContradictItsNumbers(t *testing.T) {
	r, _ := onDisk(t, strings.NewReplacer(`"Wall crane"`, "\"Wall crane\"\nstatement = \"A load of 300 N.\"", `value = "300 N"`, `value = "400 N"`).Replace(crane))
	r.keys("alt+o")
	r.text("md")
	r.keys("enter")
	r.sees("page written to", "the statement states 300 N, but load is 400 N")
}
