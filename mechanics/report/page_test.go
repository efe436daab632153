package report

import (
	"bytes"
	"encoding/xml"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"trivet/fixtures"
	"trivet/fixtures/long"
	"trivet/mechanics/drawing"
	"trivet/mechanics/paper"
	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
)

func pageSheet(t testing.TB, name string) (*statics.Solution, *sheet.Sheet) {
	t.Helper()
	f, ok := fixtures.Get(name)
	if !ok {
		t.Fatalf("no sheet %s", name)
	}
	sh, err := sheet.Parse([]byte(f.Answered()))
	if err != nil {
		t.Fatal(err)
	}
	return worked(t, f.Answered()).Solution, sh
}

func written(t testing.TB, format string, s *statics.Solution, opt PageOptions) []byte {
	t.Helper()
	data, err := Page(format, s, opt)
	if err != nil || len(data) == 0 {
		t.Fatalf("%s: %d bytes, %v", format, len(data), err)
	}
	return data
}

var (
	inlineSVG   = regexp.MustCompile(`(?s)<svg.*?</svg>`)
	tikzPicture = regexp.MustCompile(`(?s)\\begin\{tikzpicture\}.*?\\end\{tikzpicture\}`)
	images      = regexp.MustCompile(`(?m)^\[figure-\d+\]:.*$`)
)

// kept is a page without its figures, of which one is kept as SVG, and without the checks
// that say how large rounding is, which differs between machines.
func kept(page []byte) []byte {
	page = images.ReplaceAll(tikzPicture.ReplaceAll(inlineSVG.ReplaceAll(page, []byte("<svg/>")), nil), nil)
	var out [][]byte
	for _, line := range bytes.Split(page, []byte("\n")) {
		if !rounding.Match(line) {
			out = append(out, line)
		}
	}
	return bytes.Join(out, []byte("\n"))
}

// One page is kept in every format.
func TestPagesKept(t *testing.T) {
	const name = "boom-and-two-cables"
	s, sh := pageSheet(t, name)
	for _, format := range []string{"md", "tex", "html"} {
		compare(t, name+"."+format, kept(written(t, format, s, PageOptions{})))
	}
	compare(t, name+".svg", written(t, "svg", s, PageOptions{}))
	compare(t, name+".txt", kept([]byte(Results("text", name, s, nil, true, nil))))
	field := written(t, "html", s, PageOptions{Field: true, Sheet: sh, File: "jobs/boom.toml", By: "A. Example", Date: "2026-05-04"})
	compare(t, "boom-field.html", kept(field))
}

func compare(t *testing.T, name string, got []byte) {
	t.Helper()
	file := filepath.Join("testdata", "page", name)
	if *update {
		if err := os.WriteFile(file, got, 0o644); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		a, b := strings.Split(string(got), "\n"), strings.Split(string(want), "\n")
		for i := range min(len(a), len(b)) {
			if a[i] != b[i] {
				t.Errorf("%s, line %d is\n%s\nwas\n%s\nwhere that is right: go test ./mechanics/report -update", file, i+1, a[i], b[i])
				return
			}
		}
		t.Errorf("%s has %d lines, had %d", file, len(a), len(b))
	}
}

// A reader sees the figure before the working that speaks of it.
func TestTheFigureStandsBeforeTheWorking(t *testing.T) {
	for _, name := range []string{"beam-on-supports", "boom-and-two-cables", "camera-on-four-wires"} {
		s, _ := pageSheet(t, name)
		for format, of := range map[string][2]string{
			"html": {"<figure>\n<svg", "<h2>Working</h2>"},
			"md":   {"\n![Figure 1][figure-1]\n", "\n## Working\n"},
		} {
			page := string(written(t, format, s, PageOptions{}))
			figure, working := strings.Index(page, of[0]), strings.Index(page, of[1])
			if figure < 0 || working < 0 || figure > working {
				t.Errorf("%s as %s: the figure stands at %d, the working at %d", name, format, figure, working)
			}
		}
	}
}

func TestPagesAreTheSameTwice(t *testing.T) {
	for _, name := range long.Share([]string{"boom-and-two-cables", "pulley-and-knot", "crate-tips-or-slips"}) {
		for _, format := range pageFormats {
			for _, field := range []bool{false, true} {
				s, sh := pageSheet(t, name)
				first := written(t, format, s, PageOptions{Field: field, Sheet: sh})
				s, sh = pageSheet(t, name)
				if again := written(t, format, s, PageOptions{Field: field, Sheet: sh}); !bytes.Equal(first, again) {
					t.Errorf("%s as %s, field %v: not the same bytes twice", name, format, field)
				}
			}
		}
	}
}

// Every sheet that comes with the program gives a page, whatever its verdict.
func TestEverySheetHasAPage(t *testing.T) {
	for _, f := range long.OfEach(append(fixtures.Starts(), fixtures.Published()...), fixtures.Sheet.Group) {
		s, sh := pageSheet(t, f.Name)
		for _, field := range []bool{false, true} {
			opt := PageOptions{Field: field, Sheet: sh, File: f.Name}
			pages := paper.Pages(pageOf(s, opt))
			if field && len(pages) != 1 {
				t.Errorf("%s: the field page takes %d", f.Name, len(pages))
			}
			for i, d := range pages {
				const margin = 54.0
				b := d.Bounds()
				if b.High.X > d.Width-margin/2 || b.High.Y > d.Height-margin/2 || b.Low.X < margin-10 {
					t.Errorf("%s: page %d is set beyond its margins: %v", f.Name, i+1, b)
				}
			}
			html := string(written(t, "html", s, opt))
			dec := xml.NewDecoder(strings.NewReader(strings.ReplaceAll(strings.ReplaceAll(html, `<meta charset="utf-8">`, ""), `<meta name="viewport" content="width=device-width, initial-scale=1">`, "")))
			dec.Strict = true
			for {
				tok, err := dec.Token()
				if tok == nil {
					if err.Error() != "EOF" {
						t.Errorf("%s: %v", f.Name, err)
					}
					break
				}
			}
			for _, w := range s.Words() {
				if !strings.Contains(html, say.Capital(w)) && !strings.ContainsAny(w, `<>&"'`) {
					t.Errorf("%s: the page does not say %q", f.Name, w)
				}
			}
			if strings.Contains(html, "NaN") || strings.Contains(html, "http") {
				t.Errorf("%s: the page has NaN, or asks for something of the network", f.Name)
			}
		}
	}
}

// The source stands once on a page of any form: at its end, in small type, and
// not with the problem. A sheet that names none has no such line.
func TestTheSourceClosesAPage(t *testing.T) {
	const line = "Source: A. Author & Co., Statics, Example 1."
	bare := "title = \"A lamp\"\nstatement = \"Find T.\"\nplane = \"xy\"\nup = \"+y\"\n[points]\nP = { at = \"0, 0\", on = \"particle\" }\nA = \"0, 3\"\n" +
		"[lines]\nT = { kind = \"cable\", path = \"P A\" }\nW = { kind = \"weight\", at = \"P\", magnitude = \"10 N\" }\n"
	for _, sourced := range []bool{true, false} {
		text := bare
		if sourced {
			text += "[answers]\nsource = \" A. Author & Co.,  Statics, Example 1 \"\nT = \"10 N\"\n"
		}
		s := worked(t, text).Solution
		sh, _ := sheet.Parse([]byte(text))
		pages := map[string]string{
			"solve":           Results("text", "a.toml", s, nil, false, nil),
			"solve --working": Results("text", "a.toml", s, nil, true, nil),
			"solve markdown":  Results("markdown", "a.toml", s, nil, false, nil),
			"solve latex":     Results("latex", "a.toml", s, nil, false, nil),
			"solve html":      Results("html", "a.toml", s, nil, false, nil),
		}
		for kind, opt := range map[string]PageOptions{"page": {}, "task": {Task: true, Sheet: sh}, "field": {Field: true, Sheet: sh, File: "a.toml"}} {
			for _, format := range []string{"md", "tex", "html"} {
				pages[kind+" "+format] = string(written(t, format, s, opt))
			}
			drawn := ""
			for _, d := range paper.Pages(pageOf(s, opt)) {
				for _, text := range d.Texts {
					drawn += drawing.Plain(text.Runs)
				}
			}
			pages[kind+" pdf"] = strings.ReplaceAll(drawn, " ", "")
		}
		for name, page := range pages {
			want := strings.TrimSuffix(line, ".")
			switch {
			case strings.HasSuffix(name, "html"):
				want = `<p class="quiet source">` + strings.ReplaceAll(want, "&", "&amp;")
			case strings.HasSuffix(name, "md"), strings.HasSuffix(name, "markdown"):
				want = "<small>" + strings.ReplaceAll(want, "&", "&amp;")
			case strings.HasSuffix(name, "tex"), strings.HasSuffix(name, "latex"):
				want = `{\footnotesize ` + strings.ReplaceAll(want, "&", `\&`)
			case strings.HasSuffix(name, "pdf"):
				want = strings.ReplaceAll(want, " ", "")
			}
			at := strings.Index(page, want)
			if !sourced {
				if strings.Contains(page, "Source:") {
					t.Errorf("%s: a source where the sheet names none", name)
				}
				continue
			}
			if at < 0 || strings.Count(page, "Author") != 1 {
				t.Errorf("%s: %q stands there %d times", name, want, strings.Count(page, "Author"))
			}
			for _, earlier := range []string{"Caution", "Find T"} {
				if strings.LastIndex(page, earlier) > at {
					t.Errorf("%s: %q stands below the source", name, earlier)
				}
			}
		}
	}
}

// What a user types comes out as typed, and as nothing else.
func TestOddTextOnAPage(t *testing.T) {
	const odd = `A & B <script>alert("x")</script> 'q' Größe Σ α`
	text := "title = " + `'''` + odd + `'''` + "\nstatement = '''<img src=x> \\input{x} $ % # ~ ^ _ {'''\nplane = \"xy\"\n[points]\n\"Ä\" = { at = \"0, 0\", on = \"particle\" }\n" +
		"B = \"1, 1\"\nC = \"-1, 1\"\n[lines]\n\"α\" = { kind = \"cable\", path = \"Ä B\" }\nT2 = { kind = \"cable\", path = \"Ä C\" }\nW = { kind = \"weight\", at = \"Ä\", magnitude = \"10 N\" }\n"
	w := worked(t, text)
	sh, _ := sheet.Parse([]byte(text))
	for _, field := range []bool{false, true} {
		opt := PageOptions{Field: field, Sheet: sh, File: "<x>&.toml", By: "\"<i>\" & \x07", Date: "<today>"}
		html := string(written(t, "html", w.Solution, opt))
		if strings.Contains(html, "<script") || strings.Contains(html, "<img") || strings.Contains(html, "<i>") || strings.Contains(html, "<today") {
			t.Errorf("what was typed has become HTML:\n%s", html)
		}
		if !strings.Contains(html, `<h1>A &amp; B &lt;script&gt;alert(&quot;x&quot;)&lt;/script&gt; &#39;q&#39; Größe Σ α</h1>`) {
			t.Error("the title is not what was typed")
		}
		tex := string(written(t, "tex", w.Solution, opt))
		if strings.Contains(tex, `\input`) || !strings.Contains(tex, `\textless{}script\textgreater{}`) {
			t.Error("what was typed has become LaTeX")
		}
		for _, r := range tex {
			if r > 0x7e {
				t.Fatalf("%q in LaTeX, which is ASCII alone", r)
			}
		}
		for _, format := range []string{"md", "svg", "pdf", "png"} {
			written(t, format, w.Solution, opt)
		}
	}
}

func TestPDFHasItsText(t *testing.T) {
	program, err := exec.LookPath("pdftotext")
	if err != nil {
		t.Skip("pdftotext is not here (it comes with poppler): the text of a PDF is not looked at")
	}
	for _, c := range []struct {
		name string
		want []string
	}{
		{"beam-on-supports", []string{"Beam on a pin and a roller", "P = 500 N", "−300 N", "Equilibrium of the beam", "ΣF", "Caution", "1 / "}},
		{"boom-and-two-cables", []string{"from the front", "T1 = 2100 N", "partially constrained", "nothing prevents the boom from rotating"}},
		{"lamp-pushed-sideways", []string{"No equilibrium"}},
	} {
		s, _ := pageSheet(t, c.name)
		file := filepath.Join(t.TempDir(), "page.pdf")
		if err := os.WriteFile(file, written(t, "pdf", s, PageOptions{}), 0o600); err != nil {
			t.Fatal(err)
		}
		out, err := exec.Command(program, "-layout", file, "-").Output()
		if err != nil {
			t.Fatal(err)
		}
		text := strings.Join(strings.Fields(string(out)), " ")
		for _, want := range c.want {
			if !strings.Contains(strings.ReplaceAll(strings.ToLower(text), " ", ""), strings.ReplaceAll(strings.ToLower(want), " ", "")) {
				t.Errorf("%s: no %q in the text of the PDF:\n%s", c.name, want, text)
			}
		}
	}
}

func TestTeXFigureCompiles(t *testing.T) {
	for _, engine := range []string{"pdflatex", "lualatex"} {
		t.Run(engine, func(t *testing.T) { compiles(t, engine) })
	}
}

// compiles sets two sheets' pages, and their field pages, with a program of LaTeX.
func compiles(t *testing.T, engine string) {
	program, err := exec.LookPath(engine)
	if err != nil || exec.Command("kpsewhich", "tikz.sty").Run() != nil {
		t.Skip(engine + " or its package tikz is not here: pages of LaTeX are not compiled")
	}
	for _, name := range long.Share([]string{"boom-and-two-cables", "crate-tips-or-slips"}) {
		s, sh := pageSheet(t, name)
		for _, field := range []bool{false, true} {
			folder := t.TempDir()
			if err := os.WriteFile(filepath.Join(folder, "page.tex"), written(t, "tex", s, PageOptions{Field: field, Sheet: sh}), 0o600); err != nil {
				t.Fatal(err)
			}
			cmd := exec.Command(program, "-halt-on-error", "-interaction=nonstopmode", "page.tex")
			cmd.Dir = folder
			if out, err := cmd.CombinedOutput(); err != nil {
				t.Errorf("%s: %v\n%s", name, err, out)
			}
		}
	}
}

func TestPageFormat(t *testing.T) {
	for _, c := range []struct {
		file   string
		sheets int
		format string
		err    string
	}{
		{"a.pdf", 1, "pdf", ""},
		{"a.b.HTML", 1, "html", ""},
		{"x.htm", 1, "html", ""},
		{"x.markdown", 1, "md", ""},
		{"x.doc", 1, "", "unknown format .doc of a page. Try: a name that ends with .md, .tex, .html, .pdf, .svg or .png"},
		{"x", 1, "", `"x" has no ending that gives the format. Try: a name that ends with .md, .tex, .html, .pdf, .svg or .png`},
		{"", 1, "", "a page needs a file. Try: -o page.pdf"},
		{"-", 1, "", "a page needs a file here. Try: page.pdf"},
		{"x.pdf", 2, "", "a page contains one sheet, but 2 are named. Try: one of them"},
	} {
		format, err := PageFormat(c.file, c.sheets)
		if format != c.format || (err == nil) != (c.err == "") || err != nil && err.Error() != c.err {
			t.Errorf("%q: %q, %v; want %q, %s", c.file, format, err, c.format, c.err)
		}
	}
	if _, err := Page("doc", nil, PageOptions{}); err == nil || err.Error() != `unknown format "doc" of a page. Try: md, tex, html, pdf, svg or png` {
		t.Errorf("an unknown format: %v", err)
	}
}

func BenchmarkPDFPage(b *testing.B) {
	s, _ := pageSheet(b, "boom-and-two-cables")
	for b.Loop() {
		written(b, "pdf", s, PageOptions{})
	}
}
