package report

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"time"

	"trivet/mechanics/diag"
	"trivet/mechanics/doc"
	"trivet/mechanics/drawing"
	"trivet/mechanics/figure"
	"trivet/mechanics/paper"
	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/mechanics/scene"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/mechanics/uncertainty"
	"trivet/mechanics/working"
)

// PageOptions say what a page holds beside the solution.
type PageOptions struct {
	Field       bool                // one page for the file of a job, in place of the working
	Task        bool                // a page to hand out: the task without any result
	Own         *Own                // with Task: a student's own work, to hand in; else nil
	Sheet       *sheet.Sheet        // the inputs as typed, for a field page or a task
	File        string              // the sheet's name, for a field page
	By          string              // who prepared it, if given
	Checked     string              // who checked it, if given
	Version     string              // of the program, for a field page
	Uncertainty *uncertainty.Effect // what the ± of the inputs does; nil where none has one
	Date        string              // and when, if given: as typed; a PDF's own date where it is one

	unfigured bool // without figures
}

// pageFormats are the formats of a page, named as their files end.
var pageFormats = []string{"md", "tex", "html", "pdf", "svg", "png"}

// PageHelp is the help of `trivet page`.
const PageHelp = "Writes a sheet as a page: title, statement, figure, working, results, checks and cautions.\n" +
	"The ending of the file gives the format: .md .tex .html .pdf, or .svg .png for the figure with its free bodies.\n" +
	"With --task it is a page to hand out: what is given and asked, room for the answers, and no result.\n" +
	"The same sheet gives the same bytes. A file that is there is kept, unless --force is given."

// endings lists the endings of files that pages are written to.
func endings() string {
	return "." + strings.Join(pageFormats[:len(pageFormats)-1], ", .") + " or ." + pageFormats[len(pageFormats)-1]
}

// PageFormat tells a page's format from its file's name; it refuses a page of
// several sheets.
func PageFormat(file string, sheets int) (string, error) {
	ext := strings.ToLower(strings.TrimPrefix(filepath.Ext(file), "."))
	if full, other := map[string]string{"htm": "html", "markdown": "md"}[ext]; other {
		ext = full
	}
	switch {
	case sheets > 1:
		return "", diag.New(fmt.Sprintf("a page contains one sheet, but %d are named", sheets), "one of them")
	case file == "":
		return "", diag.New("a page needs a file", "-o page.pdf")
	case file == "-":
		return "", diag.New("a page needs a file here", "page.pdf")
	case ext == "":
		return "", diag.New(fmt.Sprintf("%q has no ending that gives the format", file), "a name that ends with "+endings())
	case !slices.Contains(pageFormats, ext):
		return "", diag.New("unknown format ."+ext+" of a page", "a name that ends with "+endings())
	}
	return ext, nil
}

// PageOut is PageFormat where - stands for standard output, which has no ending:
// as says the format then, and only then.
func PageOut(file, as string, sheets int) (string, error) {
	switch {
	case file != "-" && as != "":
		return "", diag.New("the ending of the file gives the format, so --as is not used", "without --as, or with -o -")
	case file != "-":
		return PageFormat(file, sheets)
	case as == "":
		return "", diag.New("standard output has no ending that gives the format", "--as with "+say.Or(pageFormats...))
	}
	return PageFormat("page."+as, sheets)
}

// Page writes a solved sheet as a page. As SVG and PNG it is the figure with its free
// bodies, of a task the figure alone, or, of a field page, the page itself. The same sheet
// and options give the same bytes.
func Page(format string, s *statics.Solution, opt PageOptions) ([]byte, error) {
	if print, ok := printers[format]; ok {
		return []byte(print(pageOf(s, opt))), nil
	}
	switch format {
	case "pdf":
		return drawing.PDF(paper.Pages(pageOf(s, opt)), drawing.About{Title: s.Problem.Title, Author: opt.By, Date: dateOf(opt.Date)})
	case "svg":
		return drawing.SVG(picture(s, opt)), nil
	case "png":
		const dpi = 200 // a line of a point is three dots wide
		return drawing.PNG(picture(s, opt), dpi)
	}
	return nil, diag.New(fmt.Sprintf("unknown format %q of a page", format), say.Or(pageFormats...))
}

// printers are what writes a document as text, by the names of the formats.
var printers = map[string]func(*doc.Doc) string{"text": doc.Text, "markdown": doc.Markdown, "md": doc.Markdown, "latex": doc.LaTeX, "tex": doc.LaTeX, "html": doc.HTML}

// dateOf reads a date as people write it to a machine; none where it is not one.
func dateOf(text string) time.Time {
	for _, layout := range []string{time.DateOnly, time.RFC3339, time.DateTime, "2006-01-02 15:04"} {
		if t, err := time.Parse(layout, strings.TrimSpace(text)); err == nil && t.Year() > 0 && t.Year() < 10000 {
			return t.UTC()
		}
	}
	return time.Time{}
}

// pageOf is the document of a page.
func pageOf(s *statics.Solution, opt PageOptions) *doc.Doc {
	p := s.Problem
	d := &doc.Doc{Title: cmp.Or(oneLine(p.Title), "Equilibrium of a free body"), Foot: sourceLine(p), OnePage: opt.Field}
	if who := signed(opt); who != "" && !opt.Field && opt.Own == nil {
		d.Under = append(d.Under, doc.Plain(who))
	}
	switch {
	case opt.Task:
		d.Under = append(d.Under, nameLines(opt)...)
		addTask(d, p, opt)
		if opt.Own != nil {
			addOwn(d, opt.Own)
		}
	case opt.Field:
		d.Under = provenance(opt)
		addField(d, s, opt)
	default:
		addWorked(d, s, opt)
	}
	d.Add(part(doc.Caution, "Caution", doc.Say(say.Capital(Caution)+".")))
	return d
}

// provenance says of which sheet a page for a job is, by its name and a hash of its text,
// by which version of the program, and who answers for it; there is room for what is not
// given.
func provenance(opt PageOptions) [][]doc.Inline {
	source := "field page: " + filepath.Base(opt.File)
	if opt.Sheet != nil {
		sum := sha256.Sum256([]byte(opt.Sheet.Text()))
		source += ", sha256 " + hex.EncodeToString(sum[:])[:hashDigits]
	}
	if opt.Version != "" {
		source += ", trivet " + opt.Version
	}
	var who []doc.Inline
	for _, x := range [][2]string{{"prepared by ", opt.By}, {"checked by ", opt.Checked}, {"date and time ", opt.Date}} {
		if len(who) > 0 {
			who = append(who, words(", "))
		}
		if who = append(who, words(x[0]+x[1])); x[1] == "" {
			who = append(who, doc.Inline{Blank: signatureWidth})
		}
	}
	return [][]doc.Inline{doc.Plain(source), who}
}

const (
	hashDigits     = 12 // of the hash: enough to tell any two versions of a sheet apart
	signatureWidth = 20 // room to write what is not given, in characters
)

// signed says who prepared a page, and when.
func signed(opt PageOptions) string {
	said := func(word, text string) string {
		if text == "" {
			return ""
		}
		return word + text + " "
	}
	return strings.TrimSpace(said("by ", opt.By) + said("on ", opt.Date))
}

// oneLine is a user's text on one line.
func oneLine(text string) string { return strings.Join(strings.Fields(text), " ") }

// sourceLine names the source of the problem and its answers.
func sourceLine(p *problem.Problem) string {
	if source := oneLine(p.Source); source != "" {
		return "Source: " + strings.TrimRight(source, ".") + "."
	}
	return ""
}

// part is a section of the first level.
func part(role doc.Role, title string, blocks ...doc.Block) doc.Section {
	return doc.Section{Role: role, Level: 1, Title: title, Blocks: blocks}
}

// addWorked adds the page of a worked solution.
func addWorked(d *doc.Doc, s *statics.Solution, opt PageOptions) {
	p := s.Problem
	w := working.Build(s)
	d.Add(riskSection(opt.Uncertainty))
	d.Add(problemSection(p))
	if !opt.unfigured {
		d.Add(figureSection(p, scene.Options{Dimensions: true, Sections: w.Sections()}))
		if free := freeBodies(s, nil); len(free) > 0 {
			if len(s.X) > 0 {
				free = append([]doc.Block{doc.Note("Arrows of unknown forces have hollow heads and point in the positive sense.")}, free...)
			}
			d.Add(part(doc.Other, "Free-body diagrams", free...))
		}
	}
	addWorking(d, w)
	results := resultSection(s, opt.Uncertainty)
	if last := &d.Sections[len(d.Sections)-1]; last.Role == doc.Answers && opt.Uncertainty == nil && !opt.unfigured { // they are the results
		isTable := func(b doc.Block) bool { _, table := b.(*doc.Table); return table }
		says := slices.DeleteFunc(results.Blocks, isTable)
		if slices.ContainsFunc(w.Steps, func(s working.Step) bool { return s.Kind == working.Verdict }) {
			says = says[:1] // the reasons stand in the working
		}
		last.Blocks = append(says, last.Blocks...)
	} else {
		d.Add(results)
	}
	d.Add(uncertaintySection(opt.Uncertainty))
	d.Add(lessonSection(p))
}

// addWorking adds the steps of a working, numbered, and its checks and answers.
func addWorking(d *doc.Doc, w *working.Working) {
	head := part(doc.Other, "Working")
	head.Blocks = []doc.Block{doc.Note(working.Rounding)}
	d.Sections = append(d.Sections, head)
	number := 0 // checks and answers have none
	for _, step := range w.Steps {
		switch step.Kind {
		case working.Checks:
			d.Add(part(doc.Checks, step.Title, step.Body...))
		case working.Answers:
			d.Add(part(doc.Answers, step.Title, step.Body...))
		default:
			number++
			d.Add(doc.Section{Level: 2, Number: number, Title: step.Title, Blocks: step.Body})
		}
	}
}

func problemSection(p *problem.Problem) doc.Section {
	return part(doc.Other, "Problem", Paragraphs(p.Statement)...)
}

// lessonSection is what a sheet teaches, for after its solution.
func lessonSection(p *problem.Problem) doc.Section {
	return part(doc.Other, "Lesson", Paragraphs(p.Lesson)...)
}

// Paragraphs are a block for each paragraph of a user's text.
func Paragraphs(text string) (out []doc.Block) {
	for _, paragraph := range blankLines().Split(text, -1) {
		if paragraph = oneLine(paragraph); paragraph != "" {
			out = append(out, doc.Say(paragraph))
		}
	}
	return out
}

// blankLines part paragraphs.
var blankLines = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`\n[\s\pZ]*\n`) })

// figureSection is the figure of what is given.
func figureSection(p *problem.Problem, opt scene.Options) doc.Section {
	if len(p.Points) == 0 {
		return doc.Section{}
	}
	return part(doc.Drawing, "Figure", &doc.Figure{Drawing: systemFigure(p, opt)})
}

// systemFigure is the figure of the whole problem on paper.
func systemFigure(p *problem.Problem, opt scene.Options) drawing.Drawing {
	whole := scene.System(p, nil, opt)
	return figure.System(&whole)
}

// mostFree is up to how many free bodies are drawn: a page of pictures, beyond
// which a large truss would print hundreds.
const mostFree = 24

// freeBodies are the free-body diagrams, set in rows: with the values of a solution, or,
// without, with the names and senses that the equations have.
func freeBodies(s, with *statics.Solution) (blocks []doc.Block) {
	const gap = 14
	var rows [][]drawing.Drawing
	used := 0.0
	bodies := slices.Collect(s.Problem.CutFree())
	for _, i := range bodies[:min(len(bodies), mostFree)] {
		free := scene.Free(s.Problem, with, i)
		d := figure.Free(&free, s.Problem.Bodies[i].Name, len(bodies) > 1)
		if len(rows) == 0 || used+d.Width > paper.ColumnWidth {
			rows, used = append(rows, nil), 0
		}
		last := &rows[len(rows)-1]
		*last, used = append(*last, d), used+d.Width+gap
	}
	for _, row := range rows {
		d := figure.Row(row, gap)
		d.Title = row[0].Title
		if len(row) > 1 {
			d.Title = "free-body diagrams"
		}
		blocks = append(blocks, &doc.Figure{Drawing: d})
	}
	if more := len(bodies) - mostFree; more > 0 {
		blocks = append(blocks, doc.Say("The other "+say.Count(more, "free body")+" "+say.Plural(more, "is")+" not drawn."))
	}
	return blocks
}

// picture is a page as one drawing: the figure with its free bodies below it,
// the first page of a field page, or all pages of a student's own work.
func picture(s *statics.Solution, opt PageOptions) drawing.Drawing {
	if opt.Own != nil {
		return stacked(paper.Pages(pageOf(s, opt)), 0)
	}
	if opt.Task {
		return systemFigure(s.Problem, taskFigure(s.Problem, opt.Sheet))
	}
	if opt.Field {
		return paper.Pages(pageOf(s, opt))[0]
	}
	stack := []drawing.Drawing{systemFigure(s.Problem, scene.Options{Dimensions: true})}
	for _, b := range freeBodies(s, s) {
		if f, ok := b.(*doc.Figure); ok {
			stack = append(stack, f.Drawing)
		}
	}
	return stacked(stack, figureGap)
}

// figureGap is between figures that stand below each other, in points.
const figureGap = 10

// stacked are drawings below each other as one.
func stacked(of []drawing.Drawing, gap float64) drawing.Drawing {
	d := drawing.Drawing{Title: of[0].Title, Height: -gap}
	for _, one := range of {
		d.Width = max(d.Width, one.Width)
	}
	for _, one := range of {
		d.Put(one, drawing.Vec{X: (d.Width - one.Width) / 2, Y: d.Height + gap}, 1)
		d.Height += gap + one.Height
	}
	return d
}
