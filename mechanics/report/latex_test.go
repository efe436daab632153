package report

import (
	"bytes"
	"maps"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"trivet/fixtures/long"
	"trivet/mechanics/doc"
)

// Pages compile with pdflatex and stock packages, all in one document to spare time,
// and no line is much wider than the page; in the long run every sheet's.
func TestLaTeXCompiles(t *testing.T) {
	pdflatex, err := exec.LookPath("pdflatex")
	if err != nil || exec.Command("kpsewhich", "tikz.sty").Run() != nil {
		t.Skip("pdflatex or its package tikz is not here: the pages in LaTeX are not compiled")
	}
	folder := t.TempDir()
	texts := everySheet(t)
	var all strings.Builder
	end := "\\end{document}\n"
	head, _, _ := strings.Cut(doc.LaTeX(&doc.Doc{}), end)
	all.WriteString(head)
	names := slices.Sorted(maps.Keys(texts))
	rand.New(rand.NewPCG(4, 8)).Shuffle(len(names), func(i, k int) { names[i], names[k] = names[k], names[i] })
	for _, name := range names[:min(long.Of(40, len(names)), len(names))] {
		page := doc.LaTeX(pageOf(solution(t, texts[name]), PageOptions{}))
		body, isWhole := strings.CutPrefix(page, head)
		body, hasEnd := strings.CutSuffix(body, end)
		if !isWhole || !hasEnd {
			t.Fatalf("%s is no whole document", name)
		}
		all.WriteString("\\typeout{sheet " + name + "}\n" + body + "\\clearpage\n")
	}
	all.WriteString(end)
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
