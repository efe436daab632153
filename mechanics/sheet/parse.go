package sheet

import (
	"errors"
	"fmt"

	"github.com/pelletier/go-toml/v2"
	"github.com/pelletier/go-toml/v2/unstable"
)

// Parse reads the text of a sheet. An error is an *Error.
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
		if deep < 0 || err.at < deep-1 {
			return nil, errorAt(text, err.at, err.msg, err.hint)
		}
	}
	if deep >= 0 {
		return nil, errorAt(text, deep, fmt.Sprintf("arrays and tables stand more than %d deep here", MaxDepth), "a problem needs 2; take some away")
	}
	var all map[string]any
	if err := toml.Unmarshal(body, &all); err != nil {
		var d *toml.DecodeError
		if !errors.As(err, &d) {
			return nil, &Error{Line: 1, Column: 1, Msg: err.Error()}
		}
		line, column := d.Position()
		at := offsetOf(text, line, column)
		f := inWords(text, at, d.Error())
		return nil, errorAt(text, f.at, f.msg, f.hint)
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
	if i == 0 && len(text) >= len(bom) && text[:len(bom)] == bom {
		i = len(bom)
	}
	return min(len(text), i+column-1)
}

// fault is an error whose place is still a byte offset.
type fault struct {
	at        int
	msg, hint string
}

// read walks the expressions of the text without its byte order mark.
func (b *builder) read(body []byte) *fault {
	var p unstable.Parser
	p.Reset(body)
	for p.NextExpression() {
		var err *fault
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
		return &fault{b.base, err.Error(), ""}
	}
	return inWords(b.s.text, b.base+int(p.Range(pe.Highlight).Offset), pe.Message)
}
