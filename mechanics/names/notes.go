package names

import (
	"trivet/mechanics/diag"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
)

// Read is the reader's, and puts on the problem what does no harm and is to be said: in
// Unread what is typed and read by nothing, in the order of the sheet, and behind its
// Doubts the names and numbers that were most likely meant otherwise.
func Read(rd *problem.Reader, s *sheet.Sheet) (*problem.Problem, []problem.Error) {
	p, errs := rd.Read(s)
	n := &notes{p, rd, s, errs}
	n.noteUnread()
	n.doubtNames()
	n.doubtValues()
	return p, errs
}

// notes is a problem that is looked through for what is to be noted.
type notes struct {
	*problem.Problem
	rd   *problem.Reader
	s    *sheet.Sheet
	errs []problem.Error
}

func (n *notes) doubt(ref sheet.Ref, sort problem.Sort, at diag.Span, msg, hint string) {
	n.Doubts = append(n.Doubts, problem.Note(ref, sort, diag.At(at, msg, hint)))
}

// Gather puts notes of one sort together that stand under the same key of a table's
// rows, in the order of the first of each.
func Gather(notes []problem.Error) [][]problem.Error {
	type alike struct {
		sort       problem.Sort
		table, key string
		alone      int // counts those that are like no other
	}
	var out [][]problem.Error
	at := map[alike]int{}
	for _, e := range notes {
		like := alike{e.Sort, e.Ref.Table, e.Ref.Key, 0}
		if e.Sort == problem.NoSort || e.InName && e.Ref.Key == "" {
			like.alone = len(out) + 1
		}
		if _, there := at[like]; !there {
			at[like], out = len(out), append(out, nil)
		}
		out[at[like]] = append(out[at[like]], e)
	}
	return out
}
