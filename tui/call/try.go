package call

import (
	"bufio"
	"encoding/json"
	"fmt"
	"path/filepath"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"trivet/mechanics/diag"
	"trivet/mechanics/printable"
	"trivet/mechanics/say"
	"trivet/mechanics/tutor"
	"trivet/tui/record"
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
	var keep bool
	cmd := &cobra.Command{
		Use:   "try SHEET",
		Short: "judge a student's work, line by line",
		Long: "Reads entries from standard input, one a line, and judges each: free bodies, vectors, moments, equations, values. " +
			"No line shows what was not entered. The word hint asks for the next hint; # begins a comment. " +
			"With --record each entry is in your record before its judgement is printed.",
		Annotations:       map[string]string{exitNote: "something that is asked was not answered rightly", topicNote: "practice"},
		Example:           "trivet try mast.toml\ntrivet try mast.toml --format json < entries.txt",
		Args:              oneSheet("entries are judged against one sheet"),
		ValidArgsFunction: SheetFiles,
		RunE: func(_ *cobra.Command, args []string) error {
			if format != tryFormats[0] && format != tryFormats[1] {
				return diag.New(fmt.Sprintf("--format %q is not a form of judgements", format), say.Or(tryFormats...))
			}
			var to keeper
			if keep {
				opened, err := c.keeper(args[0])
				if err != nil {
					return err
				}
				defer opened.store.Close()
				to = opened
			}
			c.try(args[0], format == "json", to)
			return nil
		},
	}
	cmd.Flags().BoolVar(&keep, "record", false, "keep entries, judgements and hints in your record")
	cmd.Flags().StringVar(&format, "format", tryFormats[0], "`FORM` of the judgements: "+say.Or(tryFormats...))
	_ = cmd.RegisterFlagCompletionFunc("format", cobra.FixedCompletions(tryFormats, cobra.ShellCompDirectiveNoFileComp))
	return cmd
}

// keeper adds what a person does on one problem to a record; the zero value keeps nothing.
type keeper struct {
	store   record.Store
	person  string
	problem record.Problem
}

// keeper opens the record of this desk for a sheet.
func (c *Call) keeper(sheet string) (keeper, error) {
	file, err := record.Desk(c.Env)
	if err != nil {
		return keeper{}, diag.New("there is no home folder for the record: "+err.Error(), "leave --record out")
	}
	store, notice, err := record.Open(file)
	if notice != nil {
		fmt.Fprintln(c.Stderr, notice.Warning(file))
	}
	if err != nil {
		return keeper{}, err
	}
	name := strings.TrimSuffix(filepath.Base(sheet), filepath.Ext(sheet))
	return keeper{store, record.Self(c.Env), record.Problem{Name: name}}, nil
}

// add keeps an event, and says where it can't be.
func (k keeper) add(c *Call, e record.Event) bool {
	if k.store == nil {
		return true
	}
	e.At, e.Problem = time.Now(), k.problem
	if err := k.store.Add(k.person, e); err != nil {
		c.refuse("record", err)
		return false
	}
	return true
}

func (c *Call) try(name string, asJSON bool, to keeper) {
	if name == "-" {
		c.refuse(Program, diag.New("standard input is for the entries", "the name of a sheet's file"))
		return
	}
	r := c.read(name)
	if r.solution == nil {
		return
	}
	t, done := tutor.New(r.solution), false
	lines := bufio.NewScanner(c.Stdin)
	lines.Buffer(nil, longestEntry)
	for lines.Scan() {
		line, _, _ := strings.Cut(lines.Text(), "#")
		if line = strings.TrimSpace(line); line == "" {
			continue
		}
		if line == "hint" {
			h := t.Hint()
			if !to.add(c, record.Event{What: record.Hint, Stage: h.Stage}) {
				return
			}
			c.say(asJSON, hinted{"hint", h.Stage, h.Says}, fmt.Sprintf("hint %d: %s", h.Stage, h.Says))
			continue
		}
		j := t.Enter(line)
		if !to.add(c, entered(j)) {
			return
		}
		if t.Done() && !done {
			done = true
			to.add(c, record.Event{What: record.Done})
		}
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

// entered is a judged entry as it is kept.
func entered(j tutor.Judgement) record.Event {
	e := record.Event{What: record.Entry, Text: j.Entry, Kind: string(j.Kind), Verdict: string(j.Verdict)}
	if j.Mistake != nil {
		e.Mistake = string(j.Mistake.Kind)
	}
	return e
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
