// Package doc holds what is said as data: a document of sections, whose blocks are
// sentences, formulas, tables, checks and figures, and whose numbers know where they
// come from. It prints a document as text, Markdown, LaTeX, HTML, lines for a screen
// reader and spans for a pane; package paper sets it on paper. None of them computes.
package doc

import (
	"trivet/mechanics/drawing"
)

// Doc is a document.
type Doc struct {
	Title    string
	Under    [][]Inline // lines below the title: who, when
	Sections []Section
	Foot     string // closes it in small type: the source
	OnePage  bool   // set on one sheet of paper, small
}

// Add puts a section at the end, unless it is empty.
func (d *Doc) Add(s Section) {
	if len(s.Blocks) > 0 {
		d.Sections = append(d.Sections, s)
	}
}

// Section is a heading with what stands under it.
type Section struct {
	Role   Role
	Level  int    // 1 for a part of the document, 2 for a step in a part
	Number int    // counts the steps; 0 for none
	Title  string // empty where the blocks stand by themselves
	Blocks []Block
}

// Role says what a section is for. Printers place and mark it by its role, never by
// its title.
type Role int

// The roles of sections.
const (
	Other   Role = iota
	Risk         // whether a field page is accepted, and what is at risk: they stand at its head
	Drawing      // the figure of the problem
	Checks
	Answers
	Results
	Inputs
	Caution
)

// Block is what stands by itself in a section. Each kind is a pointer to a type of this
// package; a printer is one switch over them.
type Block interface {
	sentences() [][]Inline // what it says, its formulas among the words
}

// Paragraph is a sentence, or several.
type Paragraph struct {
	Text []Inline
	Note bool // set small
}

// Formula is one equation or several, aligned at their first relation.
type Formula struct {
	Of []Math
	// Found says that values found before stand in it: a board that hides the
	// answers hides it, and the paragraph that announces it.
	Found bool
}

// Boxed is an answer.
type Boxed struct{ Math Math }

// Check is a sentence that holds or does not.
type Check struct {
	State State
	Text  []Inline
	From  Origin // where its numbers come from
}

// State is whether a check holds.
type State int

// The states of a check.
const (
	OK State = iota
	AtRisk
	Fails
)

// String is the word that stands before a check.
func (s State) String() string { return [...]string{"ok", "at risk", "FAILS"}[s] }

// Held is the state of a check: it holds, only as typed where it is at risk, or not.
func Held(ok, risk bool) State {
	switch {
	case !ok:
		return Fails
	case risk:
		return AtRisk
	}
	return OK
}

// Figure is a drawing.
type Figure struct{ Drawing drawing.Drawing }

// List is items with a mark before each.
type List struct{ Items [][]Inline }

// Code is text as it is typed, such as lines of a file.
type Code struct{ Text string }

func (b *Paragraph) sentences() [][]Inline { return [][]Inline{b.Text} }
func (b *Check) sentences() [][]Inline     { return [][]Inline{b.Text} }
func (b *List) sentences() [][]Inline      { return b.Items }
func (b *Boxed) sentences() [][]Inline     { return [][]Inline{{{Math: &b.Math}}} }
func (b *Figure) sentences() [][]Inline    { return nil }

func (b *Formula) sentences() (of [][]Inline) {
	for i := range b.Of {
		of = append(of, []Inline{{Math: &b.Of[i]}})
	}
	return of
}

func (b *Table) sentences() (of [][]Inline) {
	for _, r := range b.Rows {
		of = append(of, rowSentence(b, r))
	}
	return of
}

func (b *Code) sentences() (of [][]Inline) {
	for _, line := range CodeLines(b.Text) {
		of = append(of, Plain(line))
	}
	return of
}

// Inline is a piece of a sentence: words, a formula among them, or room for an answer.
type Inline struct {
	Words string
	Math  *Math
	Typed bool // the words are as they are typed, such as a command
	Blank int  // the width in characters of room to fill in
}

// Plain is a sentence of words alone.
func Plain(text string) []Inline { return []Inline{{Words: text}} }

// Say makes a sentence of words.
func Say(text string) *Paragraph { return &Paragraph{Text: Plain(text)} }

// Note is a sentence set small.
func Note(text string) *Paragraph { return &Paragraph{Text: Plain(text), Note: true} }

// Origin says where a number comes from: the points, cells and lines that it was
// made of, with their numbers put in. It is made where the number is, and read
// when somebody asks.
type Origin interface {
	Says() string
}
