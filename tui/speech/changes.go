package speech

import (
	"fmt"
	"strings"

	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/tui/cells"
)

// maxChanges is how many changes are said one by one.
const maxChanges = 4

// changed says what differs between two sheets, a row at a time.
func changed(was, now *sheet.Sheet) (lines []string) {
	if was == now || was == nil || was.Text() == now.Text() {
		return nil
	}
	changes := sheet.Diff(was, now)
	for len(changes) > 0 {
		c := changes[0]
		n := 1
		_, before := was.Table(c.Table).Row(c.Row)
		_, after := now.Table(c.Table).Row(c.Row)
		thing := problem.ThingOf(c.Table)
		if len(lines) == maxChanges {
			return append(lines, "and "+say.Count(len(changes), "more cell")+" changed")
		}
		if thing == problem.NoThing || before && after {
			lines = append(lines, changedCell(c))
			changes = changes[1:]
			continue
		}
		for n < len(changes) && changes[n].Table == c.Table && changes[n].Row == c.Row {
			n++
		}
		var cells []string
		for _, cell := range changes[:n] {
			if text := strings.TrimSpace(cell.New + cell.Old); text != "" {
				cells = append(cells, strings.TrimSpace(cell.Key+" "+text))
			}
		}
		word := "added"
		if before {
			word = "deleted"
		}
		line := word + " " + thing.String() + " " + c.Row
		if len(cells) > 0 && !before {
			line += ": " + strings.Join(cells, ", ")
		}
		lines = append(lines, line)
		changes = changes[n:]
	}
	if len(lines) == 0 {
		lines = []string{"the order changed"}
	}
	return lines
}

func changedCell(c sheet.Change) string {
	name := cells.LabelOf(c.Ref)
	switch {
	case !c.Is || strings.TrimSpace(c.New) == "":
		return name + " is cleared; was " + c.Old
	case !c.Was || strings.TrimSpace(c.Old) == "":
		return name + " is " + c.New
	}
	return fmt.Sprintf("%s is %s; was %s", name, c.New, c.Old)
}
