package problem

import "slices"

// Sort is what a note is about, so that many alike are told as one.
type Sort int8

// The sorts of notes.
const (
	NoSort         Sort = iota // an error, or a note that is like no other
	UnknownName                // a table or a key that is not known
	UnusedCell                 // a cell that its row leaves unread
	NoKeys                     // a row whose value is not read
	NotItsBody                 // a body that a line does not touch
	BodyOfOnePoint             // a name that makes a body of its own
	LikeAName                  // a name that is most likely another one
	LikeAUnit                  // a unit that is most likely a line
	LikeDegrees                // a number that is most likely in degrees
	DigitsGrouped              // a value whose commas group its digits
)

// Notes gives what does no harm to the reading, and is to be said: what is read by
// nothing, then what was most likely meant otherwise.
func (p *Problem) Notes() []Error { return slices.Concat(p.Unread, p.Doubts) }

// Gather puts notes of one sort together that stand under the same key of a table's
// rows, in the order of the first of each.
func Gather(notes []Error) [][]Error {
	type alike struct {
		sort       Sort
		table, key string
		alone      int // counts those that are like no other
	}
	var out [][]Error
	at := map[alike]int{}
	for _, e := range notes {
		like := alike{e.Sort, e.Ref.Table, e.Ref.Key, 0}
		if e.Sort == NoSort || e.InName && e.Ref.Key == "" {
			like.alone = len(out) + 1
		}
		if !has(at, like) {
			at[like], out = len(out), append(out, nil)
		}
		out[at[like]] = append(out[at[like]], e)
	}
	return out
}
