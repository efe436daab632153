package report

import (
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"trivet/mechanics/doc"
	"trivet/mechanics/ink"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/mechanics/uncertainty"
	"trivet/mechanics/working"
)

// PageOptions say what a page holds beside the solution.
type PageOptions struct {
	Field bool                // one page for the file of a job, in place of the working
	Task  bool                // a page to hand out: the task without any result
	Sheet *sheet.Sheet        // the inputs as typed, for a field page
	File  string              // the sheet's name, for a field page
	By    string              // who entered it, if given
	Trust *uncertainty.Effect // what the ± of the inputs does; nil where none has one
	Date  string              // and when, if given: as typed; a PDF's own date where it is one

	Working *working.Working // as built, with its hand route; nil to have it built
}

func (o PageOptions) working(s *statics.Solution) *working.Working {
	if o.Working != nil {
		return o.Working
	}
	return working.Build(s)
}

// pageFormats are the formats of a page, named as their files end.
var pageFormats = []string{"md", "tex", "html", "pdf", "svg", "png"}

// PageHelp is the help of `trivet page`.
const PageHelp = "Writes a sheet as a page: title, statement, figure, working, results, checks and cautions.\n" +
	"The ending of the file says how: .md .tex .html .pdf, or .svg .png for the figure with its free bodies.\n" +
	"With --task it is a page to hand out: what is given and asked, room for the answers, and no result.\n" +
	"The same sheet gives the same bytes. A file that is there is kept, unless --force is given."

// PageFormat tells a page's format from its file's name; it refuses a page of
// several sheets.
func PageFormat(file string, sheets int) (string, error) {
	if sheets > 1 {
		return "", fmt.Errorf("a page holds one sheet, and here are %d: name one", sheets)
	}
	switch file {
	case "":
		return "", errors.New("the page has no file to go to: write for example -o page.pdf")
	case "-":
		return "", errors.New("a page goes to a file here: name one, for example page.pdf")
	}
	ext := strings.ToLower(strings.TrimPrefix(filepath.Ext(file), "."))
	switch ext {
	case "htm":
		return "html", nil
	case "markdown":
		return "md", nil
	case "":
		return "", fmt.Errorf("%q does not say what to write: end it with .%s", file, strings.Join(pageFormats, ", ."))
	}
	if !slices.Contains(pageFormats, ext) {
		return "", fmt.Errorf("a page is not written as .%s: end the name with .%s", ext, strings.Join(pageFormats, ", ."))
	}
	return ext, nil
}

// PageOut is PageFormat where - stands for standard output, which has no ending:
// as says the format then, and only then.
func PageOut(file, as string, sheets int) (string, error) {
	switch {
	case file != "-" && as != "":
		return "", errors.New("the ending of the file says how a page is written: leave out --as, or write -o - besides")
	case file != "-":
		return PageFormat(file, sheets)
	case as == "":
		return "", fmt.Errorf("standard output does not say how the page is to be written: add --as with one of %s", strings.Join(pageFormats, ", "))
	}
	return PageFormat("page."+as, sheets)
}

// Page writes a solved sheet as a page: title, statement, figure, working,
// results, checks, cautions and source. As SVG and PNG it is the figure with its free
// bodies, of a task the figure alone, or, of a field page, the page itself. The same sheet and options
// give the same bytes.
func Page(format string, s *statics.Solution, opt PageOptions) ([]byte, error) {
	switch format {
	case "md":
		return markdownPage(s, opt), nil
	case "tex":
		return texPage(s, opt), nil
	case "html":
		return htmlPage(pageOf(s, opt)), nil
	case "pdf":
		return ink.PDF(typeset(pageOf(s, opt)), ink.About{Title: s.Problem.Title, Author: opt.By, Date: dateOf(opt.Date)})
	case "svg":
		return ink.SVG(picture(s, opt)), nil
	case "png":
		const dpi = 200 // a line of a point is three dots wide
		return ink.PNG(picture(s, opt), dpi)
	}
	return nil, fmt.Errorf("there is no format %q of a page: write one of %s", format, strings.Join(pageFormats, ", "))
}

// dateOf reads a date as people write it to a machine; none where it is not one.
func dateOf(text string) time.Time {
	for _, layout := range []string{time.DateOnly, time.RFC3339, time.DateTime} {
		if t, err := time.Parse(layout, strings.TrimSpace(text)); err == nil && t.Year() > 0 && t.Year() < 10000 {
			return t.UTC()
		}
	}
	return time.Time{}
}

// page is what a page says, for every format alike.
type page struct {
	title  string
	under  []string // below the title
	parts  []part
	source string // closes the page in small type; empty where none is named
	field  bool
}

// The parts that a field page sets beside each other.
const (
	partRisk    = "At risk within the ± of the inputs"
	partFigure  = "Figure"
	partInputs  = "Inputs as typed"
	partResults = "Results"
	partChecks  = "Checks"
)

// part is a heading with what stands under it.
type part struct {
	title  string
	minor  bool // a step of the working
	blocks []block
}

// block is a block of a working, or a figure.
type block struct {
	oldBlock
	figure *ink.Drawing
	quiet  bool // a note, set small
}

func words(text string) block {
	return block{oldBlock: oldBlock{Text: []doc.Inline{{Words: text}}}}
}

func held(ok bool, text string) block {
	b := words(text)
	b.OK = &ok
	return b
}

func tableOf(head []string, rows ...[]string) block {
	t := &oldTable{Head: head}
	for _, r := range rows {
		var cells []doc.Inline
		for _, c := range r {
			cells = append(cells, doc.Inline{Words: c})
		}
		t.Rows = append(t.Rows, cells)
	}
	return block{oldBlock: oldBlock{Table: t}}
}

// pageOf gathers what a page says.
func pageOf(s *statics.Solution, opt PageOptions) page {
	p := s.Problem
	pg := page{title: strings.TrimSpace(p.Title), source: sourceLine(p), field: opt.Field}
	if pg.title == "" {
		pg.title = "Equilibrium of a free body"
	}
	by := ""
	if opt.By != "" {
		by = "by " + opt.By
	}
	if opt.Date != "" {
		by = strings.TrimSpace(by + " on " + opt.Date)
	}
	if opt.Field {
		pg.under = append(pg.under, "field page: "+filepath.Base(opt.File))
		if by != "" {
			by = "entered " + by
		}
	}
	if by != "" {
		pg.under = append(pg.under, by)
	}
	switch {
	case opt.Task:
		pg.under = append(pg.under, "Name: "+strings.Repeat(".", 40))
		pg.taskParts(p, opt.Sheet)
	case opt.Field:
		pg.add(partRisk, riskBlocks(opt.Trust)...)
		pg.fieldParts(s, opt)
	default:
		pg.add(partRisk, riskBlocks(opt.Trust)...)
		pg.workedParts(s, opt)
	}
	pg.parts = append(pg.parts, part{title: "Caution", blocks: []block{words(sentence(Caution))}})
	return pg
}

// sourceLine names the source of the problem and its answers.
func sourceLine(p *problem.Problem) string {
	if source := strings.Join(strings.Fields(printed(p.Source)), " "); source != "" {
		return sentence("Source: " + source)
	}
	return ""
}

func sentence(text string) string {
	if text == "" {
		return text
	}
	return capital(strings.TrimSuffix(text, ".")) + "."
}
