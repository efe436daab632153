package tui

import (
	"slices"

	tea "charm.land/bubbletea/v2"

	"trivet/tui/keys"
)

// looking are the intents that only look. Whatever is not named here a reader
// cannot do: a new intent has to be added by one who knows that it changes
// nothing.
var looking = []keys.Intent{
	keys.Help, keys.NextTopic, keys.PrevTopic, keys.NextPane, keys.PrevPane,
	keys.GoGiven, keys.GoPoints, keys.GoLines, keys.GoSupports, keys.GoUnknowns, keys.GoSheet, keys.GoSystem, keys.GoPicture, keys.ListPanes,
	keys.GoChecks, keys.GoWorking, keys.GoHandSolution, keys.GoRanges, keys.GoLimits, keys.NextResult, keys.PrevResult,
	keys.SwitchSide, keys.Enlarge, keys.NextCell, keys.PrevCell,
	keys.Up, keys.Down, keys.Left, keys.Right, keys.PageUp, keys.PageDown, keys.First, keys.Last,
	keys.ViewFront, keys.ViewSide, keys.ViewTop, keys.ViewSpace, keys.Nearer, keys.Farther, keys.Fit, keys.Characters,
	keys.PickNext, keys.PickPrev, keys.ArrowLengths, keys.Dimensions, keys.ForcePolygon,
	keys.ToBoard, keys.NextStep, keys.PrevStep, keys.Steps, keys.ShowPart,
}

// forWatchers are the scopes in which one who watches may be.
var forWatchers = []keys.Scope{
	keys.Always, keys.Workbench, keys.Cells, keys.Reading, keys.Result, keys.Picture, keys.Board, keys.Jumping, keys.Helping, keys.Panes,
}

// has tells whether a key is one of the session's: for one who watches there are
// those alone that only look, in the last line and in the help.
func (m Model) has(b keys.Binding) bool {
	if m.watches && !slices.Contains(forWatchers, b.Scope) {
		return false
	}
	looks := b.Intent == keys.Cancel || b.Intent == keys.Commit && b.Scope == keys.Jumping || slices.Contains(looking, b.Intent)
	return (looks || !m.watches) && m.cannot(b.Intent) == ""
}

// reads tells whether a key only looks, as things are.
func (m Model) reads(msg tea.KeyPressMsg) bool {
	b, ok := keys.Find(m.mode(), msg.String())
	text := msg.Key().Text
	if !ok {
		return m.mode() == keys.OnBoard && len(text) == 1 && text >= "0" && text <= "9"
	}
	switch m.mode() {
	case keys.OnHelp:
		return b.Intent != keys.Save && b.Intent != keys.Quit
	case keys.OnSteps:
		return b.Intent == keys.Commit || b.Intent == keys.Cancel || slices.Contains(looking, b.Intent)
	case keys.OnResult, keys.OnPicture, keys.OnBoard, keys.OnPanes:
		return b.Intent == keys.Cancel || slices.Contains(looking, b.Intent)
	case keys.OnCells:
		return slices.Contains(looking, b.Intent)
	}
	return false
}
