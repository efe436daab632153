package report

import (
	"encoding/json"
	"fmt"
	"strings"

	"trivet/mechanics/printable"
	"trivet/mechanics/tutor"
)

// JudgementFormats are the forms of judgements.
var JudgementFormats = []string{"text", "json"}

// judgement is a judgement as JSON.
type judgement struct {
	Entry       string         `json:"entry"`
	Kind        *string        `json:"kind"`
	Verdict     tutor.Verdict  `json:"verdict"`
	Is          *string        `json:"is"`
	Mistake     *tutor.Mistake `json:"mistake"`
	Says        string         `json:"says"`
	Independent int            `json:"independent"`
	Needed      int            `json:"needed"`
}

// hint is a hint as JSON.
type hint struct {
	Kind  string `json:"kind"`
	Stage int    `json:"stage"`
	Says  string `json:"says"`
}

// Judgement is a judgement as a line, one of JudgementFormats.
func Judgement(format string, j tutor.Judgement) string {
	if format == "json" {
		out := judgement{Entry: j.Entry, Verdict: j.Verdict, Mistake: j.Mistake, Says: j.Says, Independent: j.Independent, Needed: j.Needed}
		if j.Kind != tutor.NoKind {
			kind := string(j.Kind)
			out.Kind = &kind
		}
		if j.Is != "" {
			out.Is = &j.Is
		}
		return jsonLine(out)
	}
	line := fmt.Sprintf("%-15s  %s", j.Verdict, j.Says)
	if j.Kind == tutor.Equation && j.Verdict != tutor.Unreadable && j.Needed > 0 {
		line += fmt.Sprintf(" (%d of %d independent equations)", min(j.Independent, j.Needed), j.Needed)
	}
	return printable.Line(line) + "\n"
}

// Hint is a hint as a line, in the same forms.
func Hint(format string, h tutor.Hint) string {
	if format == "json" {
		return jsonLine(hint{"hint", h.Stage, h.Says})
	}
	return printable.Line(fmt.Sprintf("hint %d: %s", h.Stage, h.Says)) + "\n"
}

func jsonLine(object any) string {
	var b strings.Builder
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	_ = enc.Encode(object) // plain data: it cannot fail
	return b.String()
}
