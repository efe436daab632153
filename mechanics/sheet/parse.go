package sheet

import (
	"errors"
	"fmt"
	"strings"

	"github.com/pelletier/go-toml/v2"
	"github.com/pelletier/go-toml/v2/unstable"

	"trivet/mechanics/diag"
)

// Parse reads the text of a sheet. An error is an *diag.Error.
func Parse(text []byte) (*Sheet, error) { return parse(string(text)) }

func parse(text string) (*Sheet, error) {
	if err := checkText(text); err != nil {
		return nil, err
	}
	b := newBuilder(text)
	deep := tooDeep(text)
	body := []byte(text[b.base:])
	if deep >= 0 {
		body = body[:deep-b.base]
	}
	if err := b.read(body); err != nil {
		// a line before the deep place may be wrong in a plainer way
		if deep < 0 || err.Span.Start < deep-1 {
			return nil, placed(text, err)
		}
	}
	if deep >= 0 {
		return nil, placed(text, errorIn(deep, fmt.Sprintf("arrays and tables are nested more than %d deep", maxDepth), "fewer levels; a problem needs two"))
	}
	var all map[string]any
	if err := toml.Unmarshal(body, &all); err != nil {
		var d *toml.DecodeError
		if !errors.As(err, &d) {
			return nil, placed(text, errorIn(0, err.Error(), ""))
		}
		line, column := d.Position()
		at := offsetOf(text, line, column)
		return nil, placed(text, inWords(text, at, d.Error()))
	}
	return b.finish(), nil
}

// offsetOf is the offset of a line and a byte column, both from 1, with the
// byte order mark not counted.
func offsetOf(text string, line, column int) int {
	i := 0
	for ; line > 1 && i < len(text); line-- {
		i = min(len(text), lineEnd(text, i)+1)
	}
	if i == 0 && strings.HasPrefix(text, bom) {
		i = len(bom)
	}
	return min(len(text), i+column-1)
}

// read walks the expressions of the text without its byte order mark.
func (b *builder) read(body []byte) *diag.Error {
	var p unstable.Parser
	p.Reset(body)
	for p.NextExpression() {
		var err *diag.Error
		switch e := p.Expression(); e.Kind {
		case unstable.Table, unstable.ArrayTable:
			err = b.header(e)
		case unstable.KeyValue:
			err = b.line(e)
		}
		if err != nil {
			return err
		}
	}
	err := p.Error()
	if err == nil {
		return nil
	}
	var pe *unstable.ParserError
	if !errors.As(err, &pe) {
		return errorIn(b.base, err.Error(), "")
	}
	return inWords(b.s.text, b.base+int(p.Range(pe.Highlight).Offset), pe.Message)
}
