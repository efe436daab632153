package topic

import (
	"strings"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"

	"trivet/mechanics/doc"
)

// Read reads Markdown with tables. It is the only place that knows the Markdown library,
// of which it takes the parser alone: the library's own tables would cost each start of
// the program a millisecond.
func Read(markdown string) *doc.Doc {
	r := reader{source: []byte(markdown)}
	d := &doc.Doc{Sections: []doc.Section{{}}}
	for n := r.parse(parser.DefaultBlockParsers()...).FirstChild(); n != nil; n = n.NextSibling() {
		heading, ok := n.(*ast.Heading)
		switch {
		case ok && heading.Level == 1:
			d.Title = words(r.inlines(n))
		case ok:
			d.Sections = append(d.Sections, doc.Section{Level: 1, Title: words(r.inlines(n))})
		default:
			last := &d.Sections[len(d.Sections)-1]
			last.Blocks = append(last.Blocks, r.block(n))
		}
	}
	return d
}

type reader struct{ source []byte }

func (r reader) parse(blocks ...util.PrioritizedValue) ast.Node {
	p := parser.NewParser(parser.WithBlockParsers(blocks...), parser.WithInlineParsers(parser.DefaultInlineParsers()...))
	return p.Parse(text.NewReader(r.source))
}

func (r reader) block(n ast.Node) doc.Block {
	switch n := n.(type) {
	case *ast.List:
		list := &doc.List{}
		for item := n.FirstChild(); item != nil; item = item.NextSibling() {
			list.Items = append(list.Items, r.inlines(item))
		}
		return list
	case *ast.FencedCodeBlock:
		return &doc.Code{Text: r.lines(n)}
	case *ast.Paragraph:
		if lines := r.lines(n); strings.HasPrefix(lines, "|") {
			return table(lines)
		}
		return &doc.Paragraph{Text: r.inlines(n)}
	}
	return &doc.Paragraph{Text: []doc.Inline{{Words: r.lines(n)}}} // as it is typed
}

func (r reader) lines(n ast.Node) string {
	var b strings.Builder
	for _, l := range n.Lines().Sliced(0, n.Lines().Len()) {
		b.Write(l.Value(r.source))
	}
	return strings.TrimRight(b.String(), "\n")
}

// inlines are the pieces of a sentence, of however many nodes it is made.
func (r reader) inlines(n ast.Node) (out []doc.Inline) {
	add := func(text string, typed bool) {
		if k := len(out) - 1; k >= 0 && out[k].Typed == typed {
			out[k].Words += text
		} else {
			out = append(out, doc.Inline{Words: text, Typed: typed})
		}
	}
	var walk func(n ast.Node, typed bool)
	walk = func(n ast.Node, typed bool) {
		switch n := n.(type) {
		case *ast.Text:
			value := n.Segment.Value(r.source)
			if !typed {
				value = util.UnescapePunctuations(value)
			}
			add(string(value), typed)
			if n.SoftLineBreak() || n.HardLineBreak() {
				add(" ", typed)
			}
			return
		case *ast.String:
			add(string(n.Value), typed)
			return
		case *ast.CodeSpan:
			typed = true
		}
		for c := n.FirstChild(); c != nil; c = c.NextSibling() {
			walk(c, typed)
		}
	}
	walk(n, false)
	return out
}

// table reads the lines of a table, the second of which rules off the head.
func table(lines string) *doc.Table {
	t := &doc.Table{}
	for i, line := range strings.Split(lines, "\n") {
		var cells []doc.Inline
		line = strings.TrimSuffix(strings.TrimPrefix(line, "|"), "|")
		for cell := range strings.SplitSeq(strings.ReplaceAll(line, `\|`, "\x00"), "|") {
			cells = append(cells, cellOf(strings.ReplaceAll(cell, "\x00", "|")))
		}
		switch i {
		case 0:
			for _, c := range cells {
				t.Columns = append(t.Columns, doc.Col{Head: c.Words})
			}
		case 1:
		default:
			t.Rows = append(t.Rows, cells)
		}
	}
	return t
}

// cellOf reads a cell: code where all of it is.
func cellOf(markdown string) doc.Inline {
	r := reader{source: []byte(strings.TrimSpace(markdown))}
	text := r.inlines(r.parse(util.Prioritized(parser.NewParagraphParser(), 0))) // no "-" begins a list
	if len(text) == 1 {
		return text[0]
	}
	return doc.Inline{Words: words(text)}
}

// words is a sentence without its marks.
func words(text []doc.Inline) string {
	var b strings.Builder
	for _, i := range text {
		b.WriteString(i.Words)
	}
	return b.String()
}
