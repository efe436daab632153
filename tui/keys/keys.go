// Package keys is the one table of what each key means where. Keys become
// intents here; the help is made from the same table.
package keys

import "strings"

// Scope is where a binding holds.
type Scope int

// The scopes, in the order of the help.
const (
	Always    Scope = iota
	Workbench       // any pane, no cell being typed in
	Cells           // a pane of cells has the keys
	Typing          // a cell is being typed in
	Text            // any line of text being typed
	Reading         // a result or the picture has the keys
	Result
	Picture
	Choosing // which kind of row to make
	Free     // a cell being typed in that takes any text
	Picking  // one that takes one of a list
	Board    // the working a step at a time
	Jumping  // the list of its steps
	Naming   // the question for a file name
	Asking   // a question of yes or no
	Helping
	Starting   // the start screen
	Finding    // a text looked for
	Palette    // the list of all commands
	Writing    // any cell being typed in
	Completing // words are offered for what is typed
	Setting    // the list of settings
	Valuing    // a setting being typed
	Panes      // the list of panes
	Entering   // a line of one's own work
	Practising // a problem is practised
	Shelving   // the problems of a set
	Scopes
)

var scopeNames = [...]string{
	"Anywhere", "On the workbench", "On a cell", "Typing in a cell", "In a line of text",
	"In a result or the picture", "In a result", "Picture", "Which row to make", "Typing any text in a cell", "Typing one of a list in a cell",
	"On the board", "In the list of steps", "File name", "Question", "In this help", "On the start screen",
	"Looking for a text", "In the list of commands", "In any cell being typed in", "While words are offered",
	"In the settings", "Typing a setting", "In the list of panes", "Writing in practice", "In practice", "In the problems of a set",
}

func (s Scope) String() string { return scopeNames[s] }

// Intent is what a key asks for.
type Intent int

// The intents.
const (
	None Intent = iota
	Help
	Save
	SaveAs
	WritePage
	WriteField
	WriteTask
	Quit
	Undo
	Redo
	NewNumbers
	Retell
	NextPane
	PrevPane
	GoGiven
	GoPoints
	GoLines
	GoSupports
	GoUnknowns
	GoSheet
	GoSystem
	GoPicture
	GoChecks
	GoWorking
	GoHandSolution
	GoRanges
	GoLimits
	ListPanes
	NextResult
	PrevResult
	SwitchSide
	Enlarge
	NextCell
	PrevCell
	Up
	Down
	Left
	Right
	PageUp
	PageDown
	First
	Last
	Edit
	NewRow
	DeleteRow
	ClearCell
	Commit
	CommitNext
	CommitPrev
	CommitUp
	CommitDown
	Cancel
	CharLeft
	CharRight
	LineStart
	LineEnd
	Rubout
	Delete
	ClearLine
	ViewFront
	ViewSide
	ViewTop
	ViewSpace
	Nearer
	Farther
	Fit
	Characters
	NewJoint
	NewBody
	NewCouple
	NewLoad
	PickUp
	PickDown
	ToBoard
	NextStep
	PrevStep
	HideAnswers
	Reveal
	Steps
	ShowPart
	Yes
	No
	See
	Blank
	PickNext
	PickPrev
	ArrowLengths
	Dimensions
	ForcePolygon
	MoveUp
	MoveDown
	Duplicate
	NudgeUp
	NudgeDown
	ToDefinition
	GoBack
	Copy
	Cut
	Paste
	MarkUp
	MarkDown
	MarkLeft
	MarkRight
	TakeWord
	CloseList
	Search
	SearchNext
	Commands
	OpenSettings
	NextTopic
	PrevTopic
	NewSheet
	OpenSheet
	Practise
	AskHint
	ShowMe
)

// Binding gives keys a meaning in a scope. Hint is the word for the bottom
// line, empty where the help alone names it.
type Binding struct {
	Scope  Scope
	Keys   []string
	Intent Intent
	Help   string
	Hint   string
}

// Short is the first key of a binding as the bottom line has it: written out, and one
// name for a key and the one that goes the other way.
func (b Binding) Short() string {
	switch b.Intent {
	case Up, Down, PickUp, PickDown:
		return "up/down"
	case Left, Right, NextTopic:
		return "left/right"
	}
	if held, key, ok := strings.Cut(b.Keys[0], "+"); ok && held != "" {
		return held + " " + key
	}
	return b.Keys[0]
}

// Mode is what has the keys at a moment.
type Mode int

// The modes.
const (
	OnCells Mode = iota
	InCell
	InList
	OnResult
	OnPicture
	OnBoard
	OnSteps
	OnChoice
	OnName
	OnQuestion
	OnHelp
	OnStart
	OnSearch
	OnPalette
	InWords
	OnSettings
	InSetting
	OnPanes
	OnPractice
	OnTask     // the task or the solution of a problem that is practised
	OnDepicted // its picture
	OnShelf
	OnHelpSearch
	Modes
)

var scopes = [...][]Scope{
	{Cells, Workbench, Always},
	{Typing, Writing, Free, Text, Always},
	{Typing, Writing, Picking, Text, Always},
	{Result, Reading, Workbench, Always},
	{Picture, Reading, Workbench, Always},
	{Board, Always},
	{Jumping, Always},
	{Choosing},
	{Naming, Text},
	{Asking},
	{Helping, Always},
	{Starting, Always},
	{Finding, Text},
	{Palette, Text},
	{Completing, Writing, Text, Always},
	{Setting, Always},
	{Valuing, Text},
	{Panes},
	{Entering, Practising, Text, Always},
	{Entering, Practising, Text, Always},
	{Picture, Practising, Always},
	{Shelving, Always},
	{Finding, Text},
}

// Scopes are where a mode looks a key up, nearest first.
func (m Mode) Scopes() []Scope { return scopes[m] }

// Find gives the binding of a key in a mode.
func Find(m Mode, key string) (Binding, bool) {
	for _, s := range m.Scopes() {
		for _, b := range table {
			if b.Scope != s {
				continue
			}
			for _, k := range b.Keys {
				if k == key {
					return b, true
				}
			}
		}
	}
	return Binding{}, false
}

// Leaves tells the keys that end the program, wherever they are pressed.
func Leaves(key string) bool {
	b, ok := Find(OnCells, key)
	return ok && b.Intent == Quit
}

// Table gives every binding.
func Table() []Binding { return table }
