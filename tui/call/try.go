package call

import (
	"bufio"
	"encoding/json"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"trivet/mechanics/diag"
	"trivet/mechanics/printable"
	"trivet/mechanics/say"
	"trivet/mechanics/tutor"
)

// tried is a judgement as JSON.
type tried struct {
	Entry       string         `json:"entry"`
	Kind        *string        `json:"kind"`
	Verdict     tutor.Verdict  `json:"verdict"`
	Is          *string        `json:"is"`
	Mistake     *tutor.Mistake `json:"mistake"`
	Says        string         `json:"says"`
	Independent int            `json:"independent"`
	Needed      int            `json:"needed"`
}

// hinted is a hint as JSON.
type hinted struct {
	Kind  string `json:"kind"`
	Stage int    `json:"stage"`
	Says  string `json:"says"`
}

var tryFormats = []string{"text", "json"}

// Try is "trivet try". It exits with 0 where everything that the sheet asks for was
// answered rightly, Failed where something was not, CantDo where the sheet does not read.
func (c *Call) Try() *cobra.Command {
	var format string
	cmd := &cobra.Command{
		Use:   "try SHEET",
		Short: "judge a student's work, line by line",
		Long: "Reads entries from standard input, one a line, and judges each: free bodies, vectors, moments, equations, values. " +
			"No line shows what was not entered. The word hint asks for the next hint; # begins a comment.",
		Annotations:       map[string]string{exitNote: "something that is asked was not answered rightly", topicNote: "practice"},
		Example:           "trivet try mast.toml\ntrivet try mast.toml --format json < entries.txt",
		Args:              oneSheet("entries are judged against one sheet"),
		ValidArgsFunction: SheetFiles,
		RunE: func(_ *cobra.Command, args []string) error {
			if format != tryFormats[0] && format != tryFormats[1] {
				return diag.New(fmt.Sprintf("--format %q is not a form of judgements", format), say.Or(tryFormats...))
			}
			c.try(args[0], format == "json")
			return nil
		},
	}
	cmd.Flags().StringVar(&format, "format", tryFormats[0], "`FORM` of the judgements: "+say.Or(tryFormats...))
	_ = cmd.RegisterFlagCompletionFunc("format", cobra.FixedCompletions(tryFormats, cobra.ShellCompDirectiveNoFileComp))
	return cmd
}

func (c *Call) try(name string, asJSON bool) {
	if name == "-" {
		c.refuse(Program, diag.New("standard input is for the entries", "the name of a sheet's file"))
		return
	}
	r := c.read(name)
	if r.solution == nil {
		return
	}
	t := tutor.New(r.solution)
	lines := bufio.NewScanner(c.Stdin)
	lines.Buffer(nil, longestEntry)
	for lines.Scan() {
		line, _, _ := strings.Cut(lines.Text(), "#")
		if line = strings.TrimSpace(line); line == "" {
			continue
		}
		if line == "hint" {
			h := t.Hint()
			c.say(asJSON, hinted{"hint", h.Stage, h.Says}, fmt.Sprintf("hint %d: %s", h.Stage, h.Says))
			continue
		}
		j := t.Enter(line)
		c.say(asJSON, triedOf(j), judged(j))
	}
	if err := lines.Err(); err != nil {
		c.refuse(Program, diag.New("an entry cannot be read: "+err.Error(), "shorter lines"))
		return
	}
	if !t.Done() {
		c.Fail(Failed)
	}
}

// longestEntry is more than anybody writes in one line.
const longestEntry = 64 << 10

// say prints a judgement as one line.
func (c *Call) say(asJSON bool, object any, text string) {
	if !asJSON {
		c.print(printable.Line(text) + "\n")
		return
	}
	var b strings.Builder
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	_ = enc.Encode(object) // plain data: it cannot fail
	c.print(b.String())
}

func triedOf(j tutor.Judgement) tried {
	out := tried{Entry: j.Entry, Verdict: j.Verdict, Mistake: j.Mistake, Says: j.Says, Independent: j.Independent, Needed: j.Needed}
	if j.Kind != tutor.NoKind {
		kind := string(j.Kind)
		out.Kind = &kind
	}
	if j.Is != "" {
		out.Is = &j.Is
	}
	return out
}

// judged is a judgement as a line of text.
func judged(j tutor.Judgement) string {
	line := fmt.Sprintf("%-15s  %s", j.Verdict, j.Says)
	if j.Kind == tutor.Equation && j.Verdict != tutor.Unreadable && j.Needed > 0 {
		line += fmt.Sprintf(" (%d of %d independent equations)", min(j.Independent, j.Needed), j.Needed)
	}
	return line
}
