package topic

import (
	"strings"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	extast "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"
)

// read reads Markdown with tables. It is the only place that knows the Markdown library.
func read(markdown string) Doc {
	tables := util.Prioritized(extension.NewTableParagraphTransformer(), 200)
	p := parser.NewParser(
		parser.WithBlockParsers(parser.DefaultBlockParsers()...),
		parser.WithInlineParsers(parser.DefaultInlineParsers()...),
		parser.WithParagraphTransformers(append(parser.DefaultParagraphTransformers(), tables)...),
		parser.WithASTTransformers(util.Prioritized(extension.NewTableASTTransformer(), 0)),
	)
	r := reader{source: []byte(markdown)}
	var d Doc
	d.Sections = []Section{{}}
	root := p.Parse(text.NewReader(r.source))
	for n := root.FirstChild(); n != nil; n = n.NextSibling() {
		heading, ok := n.(*ast.Heading)
		switch {
		case ok && heading.Level == 1:
			d.Title = words(r.inlines(n))
		case ok:
			d.Sections = append(d.Sections, Section{Title: words(r.inlines(n))})
		default:
			last := &d.Sections[len(d.Sections)-1]
			last.Blocks = append(last.Blocks, r.block(n))
		}
	}
	return d
}

type reader struct{ source []byte }

func (r reader) block(n ast.Node) Block {
	switch n := n.(type) {
	case *ast.List:
		list := &List{}
		for item := n.FirstChild(); item != nil; item = item.NextSibling() {
			list.Items = append(list.Items, r.inlines(item))
		}
		return list
	case *ast.FencedCodeBlock:
		return &Code{Text: r.lines(n)}
	case *extast.Table:
		table := &Table{}
		for row := n.FirstChild(); row != nil; row = row.NextSibling() {
			var cells []Inline
			for cell := row.FirstChild(); cell != nil; cell = cell.NextSibling() {
				cells = append(cells, one(r.inlines(cell)))
			}
			if row.Kind() != extast.KindTableHeader {
				table.Rows = append(table.Rows, cells)
				continue
			}
			for _, c := range cells {
				table.Columns = append(table.Columns, Col{Head: c.Words})
			}
		}
		return table
	case *ast.Paragraph:
		return &Paragraph{Text: r.inlines(n)}
	}
	return &Paragraph{Text: []Inline{{Words: r.lines(n)}}} // as it is typed
}

func (r reader) lines(n ast.Node) string {
	var b strings.Builder
	for _, l := range n.Lines().Sliced(0, n.Lines().Len()) {
		b.Write(l.Value(r.source))
	}
	return strings.TrimRight(b.String(), "\n")
}

// inlines are the pieces of a sentence, of however many nodes it is made.
func (r reader) inlines(n ast.Node) (out []Inline) {
	add := func(text string, style Style) {
		if k := len(out) - 1; k >= 0 && out[k].Style == style {
			out[k].Words += text
		} else {
			out = append(out, Inline{text, style})
		}
	}
	var walk func(n ast.Node, style Style)
	walk = func(n ast.Node, style Style) {
		switch n := n.(type) {
		case *ast.Text:
			value := n.Segment.Value(r.source)
			if style != Mono {
				value = util.UnescapePunctuations(value)
			}
			add(string(value), style)
			if n.SoftLineBreak() || n.HardLineBreak() {
				add(" ", style)
			}
			return
		case *ast.String:
			add(string(n.Value), style)
			return
		case *ast.CodeSpan:
			style = Mono
		case *ast.Emphasis:
			style = Emphasis
		}
		for c := n.FirstChild(); c != nil; c = c.NextSibling() {
			walk(c, style)
		}
	}
	walk(n, Upright)
	return out
}

// words is a sentence without its styles.
func words(text []Inline) string {
	var b strings.Builder
	for _, i := range text {
		b.WriteString(i.Words)
	}
	return b.String()
}

// one is a table's cell: code where all of it is.
func one(text []Inline) Inline {
	if len(text) == 1 {
		return text[0]
	}
	return Inline{Words: words(text)}
}
