package report

import (
	"math"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"

	"trivet/fixtures/long"
	"trivet/mechanics/doc"
	"trivet/mechanics/drawing"
	"trivet/mechanics/paper"
	"trivet/units"
)

// inNumbers are the ends of lines behind which the next line may not go on as is said
// beside them.
var inNumbers = sync.OnceValue(func() map[string][2]*regexp.Regexp {
	var symbols []string
	for _, u := range units.Table() {
		symbols = append(symbols, regexp.QuoteMeta(u.Symbol))
	}
	slices.SortFunc(symbols, func(a, b string) int { return len(b) - len(a) })
	unit := `(` + strings.Join(symbols, "|") + `)`
	const number = `[-+(]*[0-9.]+(e[-+][0-9]+)?`
	re := regexp.MustCompile
	return map[string][2]*regexp.Regexp{
		"a number and its unit":        {re(`(^| )` + number + `$`), re(`^` + unit + `([ /*^²³⁴·,;:.)]|$)`)},
		"a vector and its unit":        {re(`(^| )\(` + number + `(, ` + number + `)+\)$`), re(`^` + unit + `([ /*^²³⁴·,;:.)]|$)`)},
		"a vector and its rest":        {re(`\(` + number + `(, ` + number + `)*,$`), re(`^` + number)},
		"an equals sign and its right": {re(`[=≈]$`), re(``)},
		"a ± and its number":           {re(`±$`), re(`^` + number)},
		"a sign and its number":        {re(` [-+]$`), re(`^` + number)},
	}
})

// parted says what of a number two lines part, if anything.
func parted(before, after string) string {
	for what, of := range inNumbers() {
		if of[0].MatchString(before) && of[1].MatchString(after) {
			return what
		}
	}
	return ""
}

// sentences are what a page of a sheet says in sentences: its statement, what its working
// announces, its checks, its answers.
func sentences(d *doc.Doc) (of []doc.Block) {
	for _, section := range d.Sections {
		for _, b := range section.Blocks {
			switch b.(type) {
			case *doc.Paragraph, *doc.Check, *doc.List:
				of = append(of, b)
			}
		}
	}
	return of
}

// No line of a screen, of a text or of a pane parts a number from its unit, its signs or
// the rest of its vector, and none on paper does.
func TestNumbersStayWhole(t *testing.T) {
	const narrow, wide = 40, 100 // cells, as panes are
	var widths []int
	for w := narrow; w <= wide; w++ {
		widths = append(widths, w)
	}
	for name, text := range everySheet(t) {
		of := sentences(pageOf(solution(t, text), PageOptions{unfigured: true}))
		for _, w := range long.Share(widths) {
			lines := doc.Layout{Width: w}.Lines(of)
			for i, b := range lines[1:] {
				a := lines[i]
				if what := parted(said(a), said(b)); what != "" && a.Block == b.Block {
					t.Errorf("%s in %d cells parts %s:\n%s\n%s", name, w, what, said(a), said(b))
				}
			}
		}
		lines := onPaper(of)
		for i, b := range lines[1:] {
			if what := parted(lines[i], b); what != "" {
				t.Errorf("%s on paper parts %s:\n%s\n%s", name, what, lines[i], b)
			}
		}
	}
}

func said(l doc.LaidLine) (text string) {
	for _, x := range l.Spans {
		text += x.Text
	}
	return strings.TrimSpace(text)
}

// onPaper is what stands in each line of sheets of paper: a line ends where the next text
// stands further to the left.
func onPaper(of []doc.Block) (lines []string) {
	at := math.Inf(1)
	for _, page := range paper.Pages(&doc.Doc{Sections: []doc.Section{{Blocks: of}}}) {
		for _, x := range page.Texts {
			if x.At.X < at {
				lines = append(lines, "")
			}
			at = x.At.X
			lines[len(lines)-1] += drawing.Plain(x.Runs) + " "
		}
	}
	for i := range lines {
		lines[i] = strings.TrimSpace(lines[i])
	}
	return lines
}
