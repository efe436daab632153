package report

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"unicode"

	"github.com/charmbracelet/x/ansi"

	"trivet/fixtures"
	"trivet/fixtures/long"
	"trivet/mechanics/doc"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/mechanics/working"
)

// worked takes a sheet's text the whole road to its working.
func worked(t testing.TB, text string) *working.Working {
	t.Helper()
	return working.Build(solution(t, text))
}

// workedSheets are the sheets with a page to compare with: those in
// testdata/working, and some of those that come with the program.
func workedSheets(t testing.TB) map[string]string {
	t.Helper()
	texts := map[string]string{}
	files, err := filepath.Glob("testdata/working/*.toml")
	if err != nil || len(files) < 7 {
		t.Fatalf("%d sheets, %v", len(files), err)
	}
	for _, file := range files {
		b, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		texts[strings.TrimSuffix(filepath.Base(file), ".toml")] = string(b)
	}
	for _, name := range []string{"boom-tip", "pulley-and-knot", "camera-on-four-wires", "cable-that-would-push", "lamp-pushed-sideways", "impending-slip", "two-cables-at-roof-corner"} {
		f, ok := fixtures.Get(name)
		if !ok {
			t.Fatalf("no sheet %s", name)
		}
		texts[name] = f.Answered()
	}
	return texts
}

func markdownOf(w *working.Working) string {
	return doc.Markdown(pageOf(w.Solution, PageOptions{unfigured: true}))
}

func latexOf(w *working.Working) string {
	return doc.LaTeX(pageOf(w.Solution, PageOptions{unfigured: true}))
}

var rounding = regexp.MustCompile(`exactly|e-1[0-9]|e\+00`)

// everySheet gives all sheets that come with the program besides.
func everySheet(t testing.TB) map[string]string {
	texts := workedSheets(t)
	for _, f := range long.OfEach(append(fixtures.Starts(), fixtures.Published()...), fixtures.Sheet.Group) {
		texts[f.Name] = f.Answered()
	}
	return texts
}

// A working in a terminal keeps to 78 cells, LaTeX is ASCII, and no page has a
// negative zero or what is not a number.
func TestPagesKeepToTheirForm(t *testing.T) {
	for name, text := range everySheet(t) {
		w := worked(t, text)
		for _, line := range strings.Split(textWorking(w), "\n") {
			if ansi.StringWidth(line) > doc.TextWidth {
				t.Errorf("%s: %d cells: %s", name, ansi.StringWidth(line), line)
			}
			if strings.TrimRight(line, " ") != line {
				t.Errorf("%s: blanks at the end of %q", name, line)
			}
		}
		if tex := latexOf(w); strings.ContainsFunc(tex, func(r rune) bool { return r > unicode.MaxASCII || r < ' ' && r != '\n' }) {
			t.Errorf("%s: LaTeX beyond ASCII", name)
		}
		for _, page := range []string{textWorking(w), markdownOf(w), latexOf(w)} {
			for _, bad := range []string{"NaN", "-0 ", "-0.0000", "--0"} {
				if strings.Contains(page, bad) {
					t.Errorf("%s: %q in\n%s", name, bad, page)
				}
			}
			if n := strings.Count(page, working.Rounding); n != 1 {
				t.Errorf("%s: the rounding is said %d times", name, n)
			}
		}
	}
}

// A page of a sheet that a person is in the middle of typing comes without a
// panic, in lines of the width.
func FuzzPages(f *testing.F) {
	for _, text := range everySheet(f) {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		sh, err := sheet.Parse([]byte(text))
		if err != nil {
			return
		}
		p, errs := problem.Read(sh)
		if len(errs) > 0 {
			return
		}
		w := working.Build(statics.Solve(p))
		for _, line := range strings.Split(textWorking(w), "\n") {
			if ansi.StringWidth(line) > doc.TextWidth {
				t.Errorf("%d cells: %q", ansi.StringWidth(line), line)
			}
		}
		if tex := latexOf(w); strings.ContainsFunc(tex, func(r rune) bool { return r > unicode.MaxASCII }) {
			t.Errorf("LaTeX beyond ASCII")
		}
		markdownOf(w)
		for _, step := range w.Steps {
			for _, b := range step.Body {
				for _, m := range doc.Formulas(b) {
					doc.MathML(*m)
				}
			}
		}
	})
}
