package call

import (
	"cmp"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"trivet/mechanics/report"
	"trivet/mechanics/say"
	"trivet/tui/topic"
)

// pageWidth is the width of the help, at most: it fits 80 columns.
const pageWidth = 78

// document prints a document as lines.
func (c *Call) document(d topic.Doc) {
	width := pageWidth
	if c.width > 0 {
		width = min(width, c.width)
	}
	for _, l := range topic.Lines(d, width) {
		for _, s := range l {
			c.print(s.Text)
		}
		c.print("\n")
	}
}

func plain(text string) []topic.Inline { return []topic.Inline{{Words: text}} }

func sentence(text string) *topic.Paragraph { return &topic.Paragraph{Text: plain(text)} }

// usage is the program's help: the verbs first, on one screen of 24 lines.
func usage(root *cobra.Command, commands []*cobra.Command) topic.Doc {
	verbs := &topic.Table{Columns: make([]topic.Col, 2)}
	for _, cmd := range append([]*cobra.Command{root}, commands...) {
		use := cmd.Use
		if cmd != root {
			use = root.Name() + " " + use
		}
		verbs.Rows = append(verbs.Rows, []topic.Inline{{Words: use}, {Words: cmd.Short}})
	}
	return topic.Doc{
		Title: root.Long,
		Sections: []topic.Section{{Blocks: []topic.Block{
			verbs,
			sentence("Topics: " + strings.Join(topic.Names(), ", ") + "."),
			sentence("Exit codes: 0 all well; 1 a check fails, or no single solution; 2 unreadable."),
			sentence("Caution: " + report.Caution + "."),
		}}},
	}
}

// The annotations of a command, for its page.
const (
	exitNote  = "exit"   // when it exits with 1
	topicNote = "topics" // where to read on, apart by blanks
)

// page is the help of a command.
func page(cmd *cobra.Command) topic.Doc {
	long := cmp.Or(cmd.Long, say.Capital(cmd.Short)+".")
	d := topic.Doc{Title: cmd.CommandPath() + strings.TrimPrefix(cmd.Use, cmd.Name())}
	var body []topic.Block
	for part := range strings.SplitSeq(strings.TrimSpace(long), "\n\n") {
		if strings.HasPrefix(part, "  ") {
			body = append(body, &topic.Code{Text: unindented(part)})
		} else {
			body = append(body, sentence(strings.Join(strings.Fields(part), " ")))
		}
	}
	if exit := cmd.Annotations[exitNote]; exit != "" {
		body = append(body, sentence("Exit code 1: "+exit+"."))
	}
	d.Sections = append(d.Sections, topic.Section{Blocks: body})
	if flags := flagTable(cmd); len(flags.Rows) > 0 {
		d.Sections = append(d.Sections, topic.Section{Title: "Flags", Blocks: []topic.Block{flags}})
	}
	if cmd.Example != "" {
		d.Sections = append(d.Sections, topic.Section{Title: "Examples", Blocks: []topic.Block{&topic.Code{Text: unindented(cmd.Example)}}})
	}
	if topics := strings.Fields(cmd.Annotations[topicNote]); len(topics) > 0 {
		for i, name := range topics {
			topics[i] = "`" + Program + " help " + name + "`"
		}
		d.Sections = append(d.Sections, topic.Section{Title: "More", Blocks: []topic.Block{sentence(say.And(topics...))}})
	}
	return d
}

// unindented are lines without the blanks before them.
func unindented(text string) string {
	var out []string
	for l := range strings.Lines(text) {
		out = append(out, strings.TrimSpace(l))
	}
	return strings.Join(out, "\n")
}

// flagTable lists the flags of a command, but for --help.
func flagTable(cmd *cobra.Command) *topic.Table {
	t := &topic.Table{Columns: make([]topic.Col, 2)}
	cmd.NonInheritedFlags().VisitAll(func(f *pflag.Flag) {
		if f.Name == "help" || f.Hidden {
			return
		}
		value, says := pflag.UnquoteUsage(f)
		name := "--" + f.Name
		if f.Shorthand != "" {
			name = "-" + f.Shorthand + ", " + name
		}
		if f.Value.Type() != "bool" {
			name += " " + value
		}
		switch f.DefValue {
		case "", "0", "false", "[]":
		default:
			says += " (default " + strings.Trim(f.DefValue, "[]") + ")"
		}
		t.Rows = append(t.Rows, []topic.Inline{{Words: name}, {Words: says}})
	})
	return t
}
