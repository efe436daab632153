package keys

import "slices"

// Now is a moment of a session, as far as it decides which keys do something.
type Now struct {
	Mode Mode

	Watches bool // by one who changes nothing
	Linear  bool // in words
	Flat    bool // the problem lies in a plane
	Hosted  bool // the session has one sheet
	Starts  bool // the start screen is open
	Hides   bool // the board hides answers
	Large   bool // one pane has the whole screen
	Unsaved bool
	Solved  bool

	Practises bool // practice has the screen
	Keeps     bool // and what is done there goes into a record

	Asked, More, Seen bool // a question is asked, there is more to see of it, and it shows
}

// looking are the intents that only look. Whatever is not named here a reader
// cannot do: a new intent has to be added by one who knows that it changes
// nothing.
var looking = []Intent{
	Help, NextTopic, PrevTopic, NextPane, PrevPane,
	GoGiven, GoPoints, GoLines, GoSupports, GoUnknowns, GoSheet, GoSystem, GoPicture, ListPanes,
	GoChecks, GoWorking, GoHandSolution, GoRanges, GoLimits, NextResult, PrevResult,
	SwitchSide, Enlarge, NextCell, PrevCell,
	Up, Down, Left, Right, PageUp, PageDown, First, Last,
	ViewFront, ViewSide, ViewTop, ViewSpace, Nearer, Farther, Fit, Characters,
	PickNext, PickPrev, ArrowLengths, Dimensions, ForcePolygon,
	ToBoard, NextStep, PrevStep, Steps, ShowPart,
}

// forWatchers are the scopes in which one who watches may be.
var forWatchers = []Scope{Always, Workbench, Cells, Reading, Result, Picture, Board, Jumping, Helping, Panes}

// keeping are the intents that keep a cell being typed first, and then go on.
var keeping = []Intent{
	NewRow, ListPanes, GoPoints, GoUnknowns, GoSheet, GoSystem, GoPicture, GoHandSolution, GoLimits, NextResult,
	ToBoard, SwitchSide, Enlarge, Commands, OpenSettings, Search, MoveUp, MoveDown, Duplicate,
}

// Typing tells that a cell is being typed in.
func (m Mode) Typing() bool { return m == InCell || m == InWords || m == InList }

// Keeps gives the key of a pane of cells that does the same from within a cell, once that is kept.
func (m Mode) Keeps(key string) (i Intent, ok bool) {
	b, ok := Find(OnCells, key)
	return b.Intent, ok && m.Typing() && slices.Contains(keeping, b.Intent)
}

// Cannot says why an intent has no effect; empty where it has.
func (n Now) Cannot(i Intent) string {
	switch i {
	case See:
		if n.Asked && !n.More {
			return "there is nothing more to show"
		}
	case PageUp, PageDown, First, Last:
		return n.cannotScroll()
	case Save:
		if n.Practises && n.Keeps {
			return "your work is in your record as soon as it is judged"
		}
		if n.Practises {
			return "there is no record here: your work ends with this session"
		}
		if n.Starts {
			return "no sheet is open yet: enter opens one"
		}
	case ViewFront, ViewSide, ViewTop, ViewSpace:
		if n.Flat {
			return "a problem in a plane has one view"
		}
	case Left, Right, Up, Down:
		if n.Flat && !n.Linear && (n.Mode == OnPicture || n.Mode == OnBoard && i != Up && i != Down) {
			return "a picture in a plane does not turn"
		}
		return n.cannotScroll()
	case NewSheet, OpenSheet:
		if n.Hosted {
			return "a hosted session has one sheet. Try: start trivet on the other one"
		}
	case Reveal:
		if !n.Hides && n.Mode == OnBoard {
			return "answers are shown already: h hides them"
		}
	case PickNext, PickPrev, Dimensions, ForcePolygon:
		if n.Practises {
			return "in practice the picture shows what was found"
		}
	case SwitchSide:
		if n.Large {
			return "one pane has the whole screen: ctrl+e brings the others back"
		}
	}
	return ""
}

// cannotScroll says why a question does not scroll.
func (n Now) cannotScroll() string {
	switch {
	case !n.Asked || n.Seen:
		return ""
	case !n.More:
		return "y, n or esc answers"
	}
	return "s shows what differs"
}

// Has tells whether a key is one of the session's: for one who watches there are
// those alone that only look, in the last line and in the help.
func (n Now) Has(b Binding) bool {
	if n.Watches && !slices.Contains(forWatchers, b.Scope) {
		return false
	}
	looks := b.Intent == Cancel || b.Intent == Commit && b.Scope == Jumping || slices.Contains(looking, b.Intent)
	return (looks || !n.Watches) && n.Cannot(b.Intent) == ""
}

// Looks tells whether a key only looks, as things are; text is its character.
func (n Now) Looks(key, text string) bool {
	b, ok := Find(n.Mode, key)
	if !ok {
		return n.Mode == OnBoard && len(text) == 1 && text >= "0" && text <= "9"
	}
	looks := slices.Contains(looking, b.Intent)
	switch n.Mode {
	case OnHelp:
		return b.Intent != Save && b.Intent != Quit && b.Intent != Search
	case OnSteps:
		return looks || b.Intent == Commit || b.Intent == Cancel
	case OnResult, OnPicture, OnBoard, OnPanes:
		return looks || b.Intent == Cancel
	case OnCells:
		return looks
	}
	return false
}

// How many things to do the last line names, and how many of those that the place alone
// has: more are not read.
const maxHints, ownHints = 5, 3

// Hint is a thing to do, and its key.
type Hint struct{ Key, Does string }

// Hints are the things to do: behind those of the cell what is special to the place, then saving
// where something is unsaved, last where help is.
func (n Now) Hints(cell []Hint) []Hint {
	list := append(make([]Hint, 0, 4*maxHints), cell...)
	var rest, more, help []Hint
	for k, scope := range n.Mode.Scopes() {
		own := 0
		for i := range table {
			b := &table[i]
			if b.Scope != scope || b.Hint == "" || !n.Has(*b) {
				continue
			}
			h := Hint{b.Short(), b.Hint}
			switch {
			case b.Intent == Help: // of its two keys one is enough
				help = []Hint{h}
			case b.Intent == Save && n.Mode == OnCells && n.Unsaved:
				rest = append([]Hint{h}, rest...)
			case b.Intent == Save || b.Intent == ToBoard && !n.Solved:
			case k > 0:
				rest = append(rest, h)
			case own < ownHints:
				list = append(list, h)
				own++
			default:
				more = append(more, h)
			}
		}
	}
	list = append(append(list, rest...), more...)
	return append(list[:min(len(list), maxHints-len(help))], help...)
}
