package report

import (
	"fmt"
	"math"
	"strings"

	"trivet/mechanics/uncertainty"
)

// TrustTitle heads what the ± of the inputs does to the results.
const TrustTitle = "effect of measurement tolerance"

var trustHead = []string{"", "value", "independent", "worst case", "mostly from"}

// trustRows are the results that the ± of the inputs changes: value, independent ±,
// the ends of the worst case, and the input that does the most.
func trustRows(t *uncertainty.Effect) [][]string {
	var rows [][]string
	for i := range t.Spreads {
		s := &t.Spreads[i]
		if !s.Changed {
			continue
		}
		low, high := t.Ends(s)
		ends := low + " to " + high
		if !s.Bounded() {
			ends = low
		}
		rows = append(rows, []string{s.Label(), t.ValueText(s), t.PlusText(s), ends, t.Mostly(s)})
	}
	return rows
}

// trustSays are sentences: what was typed with a ±, what it leaves alone, and what the
// numbers mean.
func trustSays(t *uncertainty.Effect) []string {
	if t.TooMany {
		return nil
	}
	inputs := make([]string, len(t.Measured))
	for i := range inputs {
		inputs[i] = t.From(i)
	}
	out := []string{"inputs with ±: " + strings.Join(inputs, ", ")}
	var alone []string
	for i := range t.Spreads {
		if s := &t.Spreads[i]; !s.Changed {
			alone = append(alone, s.Label())
		}
	}
	if len(alone) > 0 {
		says := "not changed by them: "
		if !t.Search.All {
			says = "not seen to change: "
		}
		out = append(out, says+strings.Join(alone, ", "))
	}
	return append(out, t.Meaning()...)
}

// AtRisk heads what holds as typed and may not within the ±.
const AtRisk = "at risk"

// atRisk are the sentences of it; t may be nil.
func atRisk(t *uncertainty.Effect) []string {
	if t == nil {
		return nil
	}
	return t.AtRisk()
}

// riskBlocks are the same on a page, where they stand before the results.
func riskBlocks(t *uncertainty.Effect) []block {
	var out []block
	for _, says := range atRisk(t) {
		b := held(true, says+".")
		b.Risk = true
		out = append(out, b)
	}
	return out
}

// trustText is the section of the text.
func trustText(b *strings.Builder, t *uncertainty.Effect) {
	if t == nil {
		return
	}
	fmt.Fprintf(b, "\n%s\n", TrustTitle)
	if rows := trustRows(t); len(rows) > 0 {
		b.WriteString(columns(append([][]string{trustHead}, rows...), 2, 3, 4))
	}
	for _, w := range t.Notes() {
		b.WriteString(hung("  !  ", w))
	}
	for _, says := range trustSays(t) {
		b.WriteString(hung("  ", says+"."))
	}
}

// addTrust is the part of a page.
func (pg *page) addTrust(t *uncertainty.Effect) {
	if t == nil {
		return
	}
	var blocks []block
	if rows := trustRows(t); len(rows) > 0 {
		head := append([]string{"Result"}, trustHead[1:]...)
		for k := 1; k < len(head); k++ {
			head[k] = capital(head[k])
		}
		blocks = append(blocks, tableOf(head, rows...))
	}
	for _, w := range t.Notes() {
		blocks = append(blocks, words(w+"."))
	}
	for _, says := range trustSays(t) {
		note := words(says + ".")
		note.quiet = true
		blocks = append(blocks, note)
	}
	pg.add(capital(TrustTitle), blocks...)
}

// markdownTrust and latexTrust are the same in Markdown and LaTeX.
func markdownTrust(t *uncertainty.Effect) string {
	if t == nil {
		return ""
	}
	var b strings.Builder
	b.WriteString("\n## " + capital(TrustTitle) + "\n")
	var rows [][]string
	for _, r := range trustRows(t) {
		cells := make([]string, len(r))
		for k := range r {
			cells[k] = markdownText(r[k])
		}
		rows = append(rows, cells)
	}
	if len(rows) > 0 {
		b.WriteString("\n" + markdownTable([]string{"Result", "Value", "Independent", "Worst case", "Mostly from"}, rows))
	}
	for _, w := range append(t.Notes(), trustSays(t)...) {
		b.WriteString("\n" + lineStart(markdownText(w+".")) + "\n")
	}
	return b.String()
}

func latexTrust(t *uncertainty.Effect) string {
	if t == nil {
		return ""
	}
	var b strings.Builder
	b.WriteString("\n\\subsection*{" + latexText(capital(TrustTitle)) + "}\n")
	var rows [][]string
	for _, r := range trustRows(t) {
		cells := make([]string, len(r))
		for k := range r {
			cells[k] = latexText(r[k])
		}
		rows = append(rows, cells)
	}
	b.WriteString(latexTable([]string{"", "Value", "Independent", "Worst case", "Mostly from"}, rows))
	for _, w := range append(t.Notes(), trustSays(t)...) {
		b.WriteString(latexText(w+".") + "\n\n")
	}
	return b.String()
}

type (
	jsonInput struct {
		Name string `json:"name"`
		Plus string `json:"plus"`
	}
	jsonSpread struct {
		Name        string   `json:"name"`
		End         string   `json:"end,omitempty"` // of a range: "least" or "greatest"
		Value       *float64 `json:"value"`
		Unit        string   `json:"unit"`
		Independent *float64 `json:"independent"`
		Worst       *float64 `json:"worst"`
		Low         *float64 `json:"low"`
		High        *float64 `json:"high"`
		By          []jsonBy `json:"by"`
	}
	jsonBy struct {
		Input int      `json:"input"`
		Moves *float64 `json:"moves"`
	}
	jsonTrust struct {
		Inputs  []jsonInput  `json:"inputs"`
		Results []jsonSpread `json:"results"`
		AtRisk  bool         `json:"at_risk"`
		Search  jsonSearch   `json:"searched"`
		Says    []string     `json:"says"`
	}
	// jsonSearch says where worst, low and high were looked for: at so many combinations
	// of the ends of the ±, which are all or some, and in between.
	jsonSearch struct {
		Combinations int  `json:"combinations"`
		All          bool `json:"all"`
		Between      bool `json:"between"`
	}
)

// trustJSON is the object "trust", which a sheet without ± has not. A number is null
// where a result has no single value within the ± of the inputs; by says what
// each input does that does anything: half of what the result differs by between
// its ends, positive where both grow together.
func trustJSON(t *uncertainty.Effect) *jsonTrust {
	if t == nil {
		return nil
	}
	out := &jsonTrust{Inputs: []jsonInput{}, Results: []jsonSpread{}, AtRisk: len(t.AtRisk()) > 0,
		Search: jsonSearch{t.Search.Corners, t.Search.All, t.Search.Inside}, Says: append([]string{}, t.Words()...)}
	for _, m := range t.Measured {
		out.Inputs = append(out.Inputs, jsonInput{m.Name, m.Half})
	}
	for i := range t.Spreads {
		s := &t.Spreads[i]
		f := t.Solution.Problem.Units.For(s.Dim)
		in := func(v float64) *float64 { return number(v / f.Factor) }
		one := jsonSpread{Name: s.Name, End: s.End.String(), Unit: f.Symbol, Value: in(s.Value), Independent: in(s.Independent), Worst: in(s.Worst),
			Low: in(s.Low), High: in(s.High), By: []jsonBy{}}
		for k, by := range s.By {
			if math.Abs(by) > 0 {
				one.By = append(one.By, jsonBy{k, in(by)})
			}
		}
		out.Results = append(out.Results, one)
	}
	return out
}
