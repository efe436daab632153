package call

import (
	"cmp"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"trivet/mechanics/doc"
	"trivet/mechanics/report"
	"trivet/mechanics/say"
	"trivet/tui/topic"
)

// pageWidth is the width of the help, at most: it fits 80 columns.
const pageWidth = 78

// document prints a document as lines.
func (c *Call) document(d *doc.Doc) {
	width := pageWidth
	if c.width > 0 {
		width = min(width, c.width)
	}
	var b strings.Builder
	for _, l := range topic.Lines(d, width) {
		for _, s := range l {
			b.WriteString(s.Text)
		}
		b.WriteString("\n")
	}
	c.print(b.String())
}

// usage is the program's help: the verbs first, on one screen of 24 lines.
func usage(root *cobra.Command, commands []*cobra.Command) *doc.Doc {
	verbs := &doc.Table{Columns: make([]doc.Col, 2)}
	for _, cmd := range append([]*cobra.Command{root}, commands...) {
		verbs.Rows = append(verbs.Rows, []doc.Inline{{Words: useLine(cmd)}, {Words: cmd.Short}})
	}
	return &doc.Doc{
		Title: root.Long,
		Sections: []doc.Section{{Blocks: []doc.Block{
			verbs,
			doc.Say("Topics: " + strings.Join(topic.Names(), ", ") + "."),
			doc.Say("Exit codes: 0 all well; 1 a check fails, or no single solution; 2 unreadable. Caution: " + report.Caution + "."),
		}}},
	}
}

// useLine is how a command is called; its flags have a table.
func useLine(cmd *cobra.Command) string {
	cmd.DisableFlagsInUseLine = true
	return cmd.UseLine()
}

// The annotations of a command, for its page.
const (
	exitNote  = "exit"   // when it exits with 1
	topicNote = "topics" // where to read on, apart by blanks
)

// page is the help of a command.
func page(cmd *cobra.Command) *doc.Doc {
	body := topic.Read(cmp.Or(cmd.Long, say.Capital(cmd.Short)+".")).Sections[0].Blocks
	if exit := cmd.Annotations[exitNote]; exit != "" {
		body = append(body, doc.Say("Exit code 1: "+exit+"."))
	}
	d := &doc.Doc{Title: useLine(cmd), Sections: []doc.Section{{Blocks: body}}}
	if flags := flagTable(cmd); len(flags.Rows) > 0 {
		d.Sections = append(d.Sections, doc.Section{Title: "Flags", Blocks: []doc.Block{flags}})
	}
	if cmd.Example != "" {
		d.Sections = append(d.Sections, doc.Section{Title: "Examples", Blocks: []doc.Block{&doc.Code{Text: cmd.Example}}})
	}
	if topics := strings.Fields(cmd.Annotations[topicNote]); len(topics) > 0 {
		for i, name := range topics {
			topics[i] = "`" + Program + " help " + name + "`"
		}
		d.Sections = append(d.Sections, doc.Section{Title: "More", Blocks: []doc.Block{doc.Say(say.And(topics...))}})
	}
	return d
}

// flagTable lists the flags of a command, but for --help.
func flagTable(cmd *cobra.Command) *doc.Table {
	t := &doc.Table{Columns: make([]doc.Col, 2)}
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
		t.Rows = append(t.Rows, []doc.Inline{{Words: name}, {Words: says}})
	})
	return t
}
