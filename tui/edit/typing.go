package edit

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"trivet/mechanics/names"
	"trivet/mechanics/sheet"
	"trivet/tui/cells"
	"trivet/tui/keys"
	"trivet/tui/layout"
	"trivet/tui/session"
	"trivet/tui/text"
	"trivet/units"
)

// Type puts characters into the text that is looked for or the cell being typed in, or in place of the one under the cursor; a
// pane of points or lines that has no row yet begins one with them.
func (e *Editor) Type(w Where, chars string) Outcome {
	switch {
	case e.Search.On:
		e.Search.Insert(chars)
		return e.seek(w, 0)
	case e.Cell != nil:
		c := *e.Cell
		if c.Replaces() {
			c.Line = text.Line{}
		}
		e.Cell = &c
	case (w.Pane == layout.Points || w.Pane == layout.Lines) && len(e.Tables[w.Pane].Records) == 0:
		e.newRow(w.Pane)
		e.Cell.Insert(chars)
		return Outcome{}
	default:
		if refused := e.open(w); refused != "" {
			return Outcome{Says: refused}
		}
		e.Cell.Line = text.Line{}
	}
	e.Cell.Insert(chars)
	e.Cell.Pick, e.Cell.Over = cells.Unpicked, false
	e.complete(w.Sheet)
	return e.preview(w)
}

// preview is the sheet with the cell as it is being typed.
func (e *Editor) preview(w Where) Outcome {
	c := e.Cell
	if c.Slot.Does == cells.SetName || c.Slot.Does == cells.SetReaction || e.Fresh != nil {
		return Outcome{} // these change nothing until they are kept
	}
	ref, all := CellOf(w.Sheet, c.Slot, c.Value())
	return Outcome{Draft: w.Sheet.With(ref, all), Typed: draft(c)}
}

// draft tells a half-typed number, 560 on the way to 560 kg, from a cell that reads as it would
// once it is kept. A number without a unit is meant where the cell had one before.
func draft(c *cells.Edit) session.Draft {
	bare := func(s string) bool {
		s = strings.TrimSpace(s)
		return s != "" && !strings.ContainsFunc(s, unicode.IsLetter) && strings.ContainsRune("0123456789.", rune(s[len(s)-1]))
	}
	if bare(c.Text) && !bare(c.Was) {
		return session.HalfCell
	}
	return session.TypedCell
}

// ways are where the cursor goes from a cell that is kept.
var ways = map[keys.Intent]Way{keys.Commit: Onward, keys.CommitDown: Down, keys.CommitUp: Up, keys.CommitNext: Next, keys.CommitPrev: Prev}

// InCell does the intents of a cell being typed in; ok tells that it was one.
func (e *Editor) InCell(w Where, i keys.Intent) (o Outcome, ok bool) {
	if o, ok := e.inWords(w, i); ok {
		return o, true
	}
	if way, ok := ways[i]; ok {
		return e.Keep(w, way), true
	}
	c := *e.Cell
	switch i {
	case keys.Cancel:
		e.Drop()
		return Outcome{Sheet: w.Sheet}, true
	case keys.ToDefinition:
		return e.define(w), true
	case keys.NudgeUp, keys.NudgeDown:
		text, at, ok := units.Nudge(c.Text, c.At, steps(i))
		if !ok || c.Slot.Does == cells.SetName {
			return saying("there is no number here to change. Try: put the cursor on one"), true
		}
		c.Text, c.At = text, at
		e.Cell = &c
		return e.preview(w), true
	}
	if !c.Choose(i) && !c.Handle(i) {
		return Outcome{}, false
	}
	typed := c.Text != e.Cell.Text
	if typed {
		c.Pick = cells.Unpicked
	}
	changed := typed || c.Value() != e.Cell.Value()
	e.Cell = &c
	if c.Words != nil || changed {
		e.complete(w.Sheet)
	}
	if changed {
		o = e.preview(w)
	}
	return o, true
}

// Keep writes the cell into the sheet and tells where to go on. Where the sheet refuses the text,
// it stays as it is being typed.
func (e *Editor) Keep(w Where, way Way) Outcome {
	c, f := e.Cell, e.Fresh
	if f != nil && strings.TrimSpace(c.Text) == "" {
		e.Drop()
		e.Newest = sheet.Ref{}
		return Outcome{Sheet: w.Sheet}
	}
	o := e.write(w)
	if o.Sheet == nil {
		return o
	}
	e.Drop()
	o.Kept, o.Go = c.Slot.Ref, way
	if f != nil && f.Table != "" {
		o.Row, o.Go = sheet.Ref{Table: f.Table, Row: strings.TrimSpace(c.Text)}, ToFirst
		e.Newest = o.Row
	}
	return o
}

// write makes the edit of the cell that is kept.
func (e *Editor) write(w Where) Outcome {
	c, text := e.Cell, e.Cell.Value()
	switch {
	case e.Fresh != nil && e.Fresh.Table != "":
		return e.addRow(w, strings.TrimSpace(text))
	case e.Fresh == nil && text == c.Was:
		return Outcome{Sheet: w.Sheet}
	case c.Slot.Does == cells.SetReaction:
		return e.writeReaction(w, text)
	case c.Slot.Does == cells.SetName:
		return rename(w, c.Slot.Ref, strings.TrimSpace(text))
	}
	ref, all := CellOf(w.Sheet, c.Slot, text)
	edits := []sheet.Edit{change(w.Sheet, ref, all)}
	unit := ""
	if c.Slot.Does == cells.SetCell {
		unit = firstForce(w.Sheet, ref, all)
	}
	if unit != "" {
		edits = append(edits, change(w.Sheet, sheet.Ref{Table: "units", Row: "force"}, unit))
	}
	o := w.do(edits...)
	if unit != "" && o.Sheet != nil {
		o.Says = "forces are in " + unit + " from now on, as in this cell; \"force in\" among the givens changes it"
	}
	return o
}

// maxWords is how many completions are kept: more than anybody reads.
const maxWords = 50

// complete looks for what the word at the cursor may become. A word that is whole
// as it stands asks for nothing, and neither does a blank: plain typing is never
// in the way of a list.
func (e *Editor) complete(s *sheet.Sheet) {
	c := *e.Cell
	c.Words, c.Word = nil, cells.Unpicked
	e.Cell = &c
	ref := c.Slot.Ref
	switch {
	case c.List != nil || c.Closed || c.Text == c.Was || !lettered(c.Text[:c.At]):
		return
	case c.Slot.Does == cells.SetAsked:
		ref = askedFor
	case c.Slot.Does != cells.SetCell:
		return
	}
	for _, word := range names.Complete(s, ref, c.Text, c.At) {
		if word.From >= c.At || word.To > len(c.Text) || word.From > word.To {
			continue
		}
		if word.Text == c.Text[word.From:word.To] {
			c.Words, c.Word = nil, cells.Unpicked
			return
		}
		if len(c.Words) < maxWords {
			c.Words = append(c.Words, word)
			if strings.HasPrefix(word.Text, c.Text[word.From:c.At]) && !isUnit(c.Text, word.From, c.At) {
				c.Word = 0 // the likeliest, which enter takes; one in another case, MN for m, is to be chosen
			}
		}
	}
}

// isUnit tells that the word of a text is a unit as it stands: 50 lb is not made 50 lbf.
func isUnit(text string, from, to int) bool {
	_, known := units.Find(text[from:to])
	return known && units.SettingAt(text, from).Unit
}

// lettered tells whether a text ends in a word rather than in a number, a blank or
// a sign: numbers, the most of what is typed, need not be looked up.
func lettered(text string) bool {
	number := strings.TrimRight(text, "0123456789.")
	last, _ := utf8.DecodeLastRuneInString(number)
	return unicode.IsLetter(last) || last == '_' || len(number) == len(text) && (last == '+' || last == '-')
}

// inWords does the intents of the list of completions; ok tells that it was one.
func (e *Editor) inWords(w Where, i keys.Intent) (o Outcome, ok bool) {
	c := *e.Cell
	if len(c.Words) == 0 {
		return o, false
	}
	switch {
	case i == keys.PickUp:
		c.Word = max(c.Word-1, cells.Unpicked)
	case i == keys.PickDown:
		c.Word = min(c.Word+1, len(c.Words)-1)
	case i == keys.CloseList:
		c.Words, c.Closed = nil, true
	case i == keys.TakeWord, i == keys.Commit && c.Word != cells.Unpicked:
		word := c.Words[max(c.Word, 0)]
		c.Text, c.At = c.Text[:word.From]+word.Text+c.Text[word.To:], word.From+len(word.Text)
		c.Words, c.Word = nil, cells.Unpicked
		e.Cell = &c
		if i == keys.Commit && c.At == len(c.Text) && !strings.ContainsRune("(. ", rune(word.Text[len(word.Text)-1])) {
			return e.Keep(w, Onward), true // nothing is to follow
		}
		return e.preview(w), true
	default:
		return o, false
	}
	e.Cell = &c
	return o, true
}
