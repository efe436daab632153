package diag

import "strings"

// mark stands around the keys of a message until an Error is made of it. A text that a person
// typed has it at most as an escape, and reads without it then.
const mark = "\x1a"

// Key is a key of a row of a table in a message or a hint. The Error that is made of them says it
// as the file does, and knows where, so that a pane can call it by the head of its column.
func Key(table, name string) string { return mark + table + "." + name + mark }

// Named is where a message, or a hint, says a key of a row.
type Named struct {
	Span
	InHint     bool
	Table, Key string
}

// told takes the marks out of a message and notes the keys.
func (e *Error) told(text string, inHint bool) string {
	var out strings.Builder
	pieces := strings.Split(text, mark)
	for k, piece := range pieces {
		if table, key, ok := strings.Cut(piece, "."); ok && k%2 == 1 && k < len(pieces)-1 {
			piece = key
			e.Keys = append(e.Keys, Named{Span{out.Len(), out.Len() + len(piece)}, inHint, table, key})
		}
		out.WriteString(piece)
	}
	return out.String()
}

// Called is the error with the keys as others call them.
func (e *Error) Called(by func(table, key string) string) *Error {
	out := *e
	out.Keys = nil
	msg, hint := 0, 0 // up to where they are told
	var msgs, hints strings.Builder
	for _, k := range e.Keys {
		text, to, at := e.Msg, &msgs, &msg
		if k.InHint {
			text, to, at = e.Hint, &hints, &hint
		}
		to.WriteString(text[*at:k.Start] + by(k.Table, k.Key))
		*at = k.End
	}
	out.Msg, out.Hint = msgs.String()+e.Msg[msg:], hints.String()+e.Hint[hint:]
	return &out
}
