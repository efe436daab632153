package doc

import (
	"encoding/base64"
	"fmt"
	"strings"

	"trivet/mechanics/drawing"
)

// Markdown writes a document in GitHub's Markdown, formulas as LaTeX between dollars. Its
// figures are in the text too: as images by reference, whose data stand at its end, out
// of the way of whoever reads the source.
func Markdown(d *Doc) string {
	w := writer{markup: markdown}
	w.document(d)
	for i, f := range w.figures {
		w.put("[figure-%d]: data:image/svg+xml;base64,%s\n", i+1, base64.StdEncoding.EncodeToString(drawing.SVG(f)))
	}
	return w.b.String()
}

var markdown = &markup{
	notation: texNotation(`\thinspace `, mathWords, "$$\n\\begin{aligned}\n%s\n\\end{aligned}\n$$\n"),
	text:     markdownText,
	begin:    lineStart,

	between:   "\n",
	title:     "# %s\n",
	under:     "%s\n",
	foot:      "<small>%s</small>\n", // which GitHub's Markdown has from HTML
	headings:  [3]string{"# %s\n", "## %s\n", "### %s\n"},
	step:      "%d. ",
	paragraph: "%s\n",
	note:      "%s\n",
	boxed:     "$$\n\\boxed{%s}\n$$\n",
	list:      "%s",
	item:      "- %s\n",
	checks:    "%s",
	check:     "- %s: %s\n",
	states:    [3]string{"%s", "**%s**", "**%s**"},
	code:      "```\n%s\n```\n",
	source:    func(text string) string { return strings.TrimRight(text, "\n") },
	table: tableForm{
		form: "%[2]s|%[1]s\n%[3]s", columns: [2]string{" --- |", " ---: |"}, heads: "| %s |\n", row: "| %s |\n",
		head: "%s", cells: [2]string{"%s", "%s"}, between: " | ", alwaysHeads: true, bareNumbers: true,
	},
	figure: func(_ drawing.Drawing, n int) string { return fmt.Sprintf("![Figure %[1]d][figure-%[1]d]\n", n) },
}

// markdownText writes what a user typed as text: no character of it is taken for
// Markdown, HTML or mathematics.
func markdownText(text string) string { return markdownSigns.Replace(Printed(text)) }

var markdownSigns = strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `\`, `\\`, "`", "\\`", "*", `\*`, "_", `\_`, "{", `\{`, "}", `\}`,
	"[", `\[`, "]", `\]`, "#", `\#`, "|", `\|`, "$", `\$`, "~", `\~`, "!", `\!`, "^", `\^`)

// lineStart escapes what would begin a list at a line's start: "1." "-" "+".
func lineStart(text string) string {
	n, marks := len(text)-len(strings.TrimLeft(text, "0123456789")), ".)"
	if n == 0 {
		marks = "-+="
	}
	if n < len(text) && strings.IndexByte(marks, text[n]) >= 0 {
		return text[:n] + `\` + text[n:]
	}
	return text
}

// mathWords are words inside \text in Markdown's mathematics, which take Unicode
// as it is.
func mathWords(text string) string { return mathSigns.Replace(Printed(text)) }

var mathSigns = strings.NewReplacer(`\`, `\backslash `, "{", `\{`, "}", `\}`, "$", `\$`, "&", `\&`, "#", `\#`, "_", `\_`, "%", `\%`,
	"^", `\hat{}`, "~", `\sim `, "<", "&lt;", ">", "&gt;", "|", `\vert `, "`", " ", "*", " ")
