package report

import (
	"bytes"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// Every page compiles with pdflatex and stock packages, all in one document to
// spare time, and no line is much wider than the page.
func TestLaTeXCompiles(t *testing.T) {
	pdflatex, err := exec.LookPath("pdflatex")
	if err != nil {
		t.Skip("pdflatex is not here: the pages in LaTeX are not compiled")
	}
	folder := t.TempDir()
	texts := everySheet(t)
	var all strings.Builder
	all.WriteString(latexHead)
	for _, name := range slices.Sorted(maps.Keys(texts)) {
		page := LaTeX(worked(t, texts[name]), Parts{})
		body, isWhole := strings.CutPrefix(page, latexHead)
		body, hasEnd := strings.CutSuffix(body, latexEnd)
		if !isWhole || !hasEnd {
			t.Fatalf("%s is no whole document", name)
		}
		all.WriteString("\\typeout{sheet " + name + "}\n" + body + "\\clearpage\n")
	}
	all.WriteString(latexEnd)
	if err := os.WriteFile(filepath.Join(folder, "all.tex"), []byte(all.String()), 0o644); err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(pdflatex, "-interaction=nonstopmode", "-halt-on-error", "-no-shell-escape", "all.tex")
	cmd.Dir = folder
	out, err := cmd.CombinedOutput()
	name := ""
	for line := range strings.Lines(string(out)) {
		if sheet, begins := strings.CutPrefix(line, "sheet "); begins {
			name = strings.TrimSpace(sheet)
		}
		if wide := overfull.FindStringSubmatch(line); wide != nil {
			t.Errorf("%s: a line is %s pt too wide", name, wide[1])
		}
	}
	if err != nil {
		t.Errorf("%s: %v\n%s", name, err, bytes.TrimSpace(out[max(0, len(out)-1500):]))
	}
}

// overfull finds lines that stick out by 20 pt or more, which a reader sees.
var overfull = regexp.MustCompile(`Overfull \\hbox \(((?:[2-9]\d|\d{3,})\.\d+)pt too wide\)`)

// What a user types stands in LaTeX as it was typed.
func TestLaTeXText(t *testing.T) {
	for text, want := range map[string]string{
		`50 % of $5 & #1_a {b} \c`: `50 \% of \$5 \& \#1\_a \{b\} \textbackslash{}c`,
		"a < b > c | d ^ e ~ f":    `a \textless{} b \textgreater{} c \textbar{} d \textasciicircum{} e \textasciitilde{} f`,
		`"quoted" 'so' ` + "`it`":  `''quoted'' 'so' \textasciigrave{}it\textasciigrave{}`,
		"café, Straße, Łódź, ñ":    `caf\'{e}, Stra\ss{}e, \L{}\'{o}d\'{z}, \~{n}`,
		"µ = 0.3, ΣF, 30°, x²":     `$\mu$ = 0.3, $\Sigma$F, 30$^\circ$, x$^2$`,
		"-400 N, along -x, 2-3":    `$-$400 N, along -x, 2-3`,
		"力":                        `[U+529B]`,
		"a\x1b[31m\tb\u200bc":      `a$\cdot$[31m b$\cdot$c`,
	} {
		if got := latexText(text); got != want {
			t.Errorf("%q is %q, want %q", text, got, want)
		}
	}
}

// And in Markdown.
func TestMarkdownText(t *testing.T) {
	for text, want := range map[string]string{
		"a_b *c* `d` [e](f) #g": "a\\_b \\*c\\* \\`d\\` \\[e\\](f) \\#g",
		"$5 < 6 & 7 > 2 | \\":   `\$5 &lt; 6 &amp; 7 &gt; 2 \| \\`,
		"T1 = 5 kN, µ, 力":       "T1 = 5 kN, µ, 力",
	} {
		if got := markdownText(text); got != want {
			t.Errorf("%q is %q, want %q", text, got, want)
		}
	}
	for text, want := range map[string]string{"1. a": `1\. a`, "12) b": `12\) b`, "- c": `\- c`, "+ d": `\+ d`, "12 e": "12 e", "f": "f"} {
		if got := lineStart(text); got != want {
			t.Errorf("%q begins a line as %q, want %q", text, got, want)
		}
	}
}

// A figure stands where it is given, in its own language.
func TestFigureIsPlaced(t *testing.T) {
	w := worked(t, workedSheets(t)["beam"])
	figure := `\setlength{\unitlength}{1mm}\begin{picture}(40,20)\put(0,0){\line(1,0){40}}\end{picture}`
	if page := LaTeX(w, Parts{Figure: figure}); !strings.Contains(page, "\\begin{center}\n"+figure+"\n\\end{center}") || strings.Index(page, figure) > strings.Index(page, "Working") {
		t.Error("no figure before the working in LaTeX")
	}
	if page := Markdown(w, Parts{Figure: "![beam](beam.svg)"}); !strings.Contains(page, "\n![beam](beam.svg)\n\n## Working\n") {
		t.Error("no figure before the working in Markdown")
	}
}
