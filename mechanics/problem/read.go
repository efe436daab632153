package problem

import (
	"sort"
	"strings"

	"trivet/mechanics/diag"
	"trivet/mechanics/sheet"
	"trivet/units"
)

// Read turns a sheet's raw cells into a problem. What does not read is left out
// (OK is false) and reported; what does not depend on it still stands. The
// errors are in the order of the sheet.
func Read(s *sheet.Sheet) (*Problem, []Error) { return NewReader().Read(s) }

// Reader reads sheets one after the other and remembers how each cell's text
// parsed, so that after a keystroke only the changed cell is parsed again. It
// serves one goroutine at a time; the problem it gives is the same as Read's.
type Reader struct {
	parsed map[string]parsed
	ones   map[string]parsed // of cells of one value, where that makes a difference
}

type parsed struct {
	expr *units.Expr
	err  *diag.Error
}

// maxRemembered bounds the memory of a reader: beyond it the texts typed so far
// are forgotten and parsed anew. A large sheet holds some 2,000 cells.
const maxRemembered = 8192

// NewReader makes a reader with an empty memory.
func NewReader() *Reader { return &Reader{parsed: map[string]parsed{}, ones: map[string]parsed{}} }

func (rd *Reader) parse(text string) (*units.Expr, *diag.Error) {
	return remember(rd.parsed, text, units.Parse)
}

// parseOne parses a cell of one value; only a comma makes a difference there, and k, which
// is an axis elsewhere.
func (rd *Reader) parseOne(text string) (*units.Expr, *diag.Error) {
	if !strings.ContainsAny(text, ",k") {
		return rd.parse(text)
	}
	return remember(rd.ones, text, units.ParseOne)
}

func remember(known map[string]parsed, text string, parse func(string) (*units.Expr, *diag.Error)) (*units.Expr, *diag.Error) {
	if got, ok := known[text]; ok {
		return got.expr, got.err
	}
	if len(known) >= maxRemembered {
		clear(known)
	}
	e, err := parse(text)
	known[text] = parsed{e, err}
	return e, err
}

// Read reads one sheet.
func (rd *Reader) Read(s *sheet.Sheet) (*Problem, []Error) { return rd.Moved(s, nil) }

// Moved reads a sheet with measured values a ± b taken at a + share·b in place of
// a, wherever they are used: cells that name the same given move together.
func (rd *Reader) Moved(s *sheet.Sheet, shares map[Place]float64) (*Problem, []Error) {
	r := &reading{Reader: rd, s: s, p: &Problem{}, moved: shares}
	r.header()
	r.indexNames()
	for i := range r.p.Givens {
		r.given(i)
	}
	r.readPoints()
	r.readBodies()
	for i := range r.p.Lines {
		r.lineGeometry(i)
	}
	r.readJoints()
	r.indexCouples()
	r.readMagnitudes()
	for i := range r.p.Joints {
		r.jointUnknowns(i)
	}
	for i := range r.p.Couples {
		r.coupleOf(i)
	}
	r.readDistributed()
	r.finishBodies()
	r.readQueries()
	r.readAnswers()
	r.doubtBodies()
	r.wholeProblem()
	r.noteUnread()
	r.doubtNames()
	r.doubtValues()
	r.sortErrors()
	return r.p, r.errs
}

// reading is one pass over one sheet.
type reading struct {
	*Reader
	s    *sheet.Sheet
	p    *Problem
	errs []Error

	givens, points, lines map[string]int // indices by name
	unknowns              map[string]int
	coined                []coined // unknowns that only a magnitude names, where it does first
	bodies                map[string]int
	jointOf               map[string]int // the joint that an unknown's name belongs to
	jointDone             []bool
	couples               map[string]int
	coupleRows            []sheet.Row
	coupleAt              []progress
	pointRows, lineRows   []sheet.Row
	givenRows             []sheet.Row
	givenAt, pointAt      []progress
	usedGivens            []bool // by a cell that was evaluated
	magnitudeAt           []progress
	chain                 []string  // names being read, for naming a circle
	notText               sheet.Ref // the last row that has a cell that is no text
	blocked               bool      // the last evaluation failed for a cell reported elsewhere
	east, north           [3]float64
	moved                 map[Place]float64 // the measured values that are taken elsewhere, and by how much of their ±
	measured              map[Place]bool
}

// progress of something that is read when first asked for.
type progress int8

const (
	unread progress = iota
	underway
	done
	failed
)

// loop is what refers to each other in a loop, and what breaks it.
type loop struct{ what, hint string }

// The loops there can be.
var (
	loopOfGivens     = loop{"givens", "give one of them a number"}
	loopOfPoints     = loop{"points", "give one of them coordinates"}
	loopOfMagnitudes = loop{"magnitudes", "leave one of them blank, so that it is an unknown"}
)

// once reads something when first asked for, and tells whether it reads. What asks for
// itself while it is being read, by way of others, goes round a loop.
func (r *reading) once(at *progress, ref sheet.Ref, name string, read func() bool, loop loop) bool {
	switch *at {
	case unread:
		*at = underway
		r.chain = append(r.chain, name)
		ok := read()
		r.chain = r.chain[:len(r.chain)-1]
		if ok && *at == underway {
			*at = done
		} else {
			*at = failed
		}
	case underway:
		*at = failed
		r.fail(ref, diag.Span{}, "the "+loop.what+" refer to each other in a loop, "+circle(r.chain, name), loop.hint)
	}
	return *at == done
}

// fail reports what does not read, and is false for its reader to return.
func (r *reading) fail(ref sheet.Ref, span diag.Span, msg, hint string) bool {
	if ref != r.notText { // else what seems missing in this row is there, and has been reported
		r.errs = append(r.errs, Error{Ref: ref, Error: *diag.At(span, msg, hint)})
	}
	return false
}

// doubt notes what reads at a place of a cell's text, or without one the name of what ref
// names, and is most likely not what was meant.
func (r *reading) doubt(ref sheet.Ref, sort Sort, at diag.Span, msg, hint string) {
	r.p.Doubts = append(r.p.Doubts, Error{Ref: ref, InName: at == diag.Span{}, Sort: sort, Error: *diag.At(at, msg, hint)})
}

// failCell reports an error of a cell's expression, unless it only repeats one
// that has been reported where it arose.
func (r *reading) failCell(ref sheet.Ref, err *diag.Error) bool {
	if r.blocked {
		r.blocked = false
		return false
	}
	return r.fail(ref, err.Span, err.Msg, err.Hint)
}

func whole(text string) diag.Span { return diag.Between(0, len(text)) }

// sortErrors puts the errors in the order in which the sheet's cells stand.
func (r *reading) sortErrors() {
	if len(r.errs) < 2 {
		return
	}
	order := map[sheet.Ref]int{}
	for ref := range r.s.Cells() {
		if row := (sheet.Ref{Table: ref.Table, Row: ref.Row}); order[row] == 0 {
			order[row] = len(order) + 1
		}
		if ref.Key != "" {
			order[ref] = len(order) + 1
		}
	}
	place := func(e Error) int {
		if i, ok := order[e.Ref]; ok {
			return i
		}
		if i, ok := order[sheet.Ref{Table: e.Ref.Table, Row: e.Ref.Row}]; ok {
			return i
		}
		return len(order) + 1
	}
	sort.SliceStable(r.errs, func(i, j int) bool { return place(r.errs[i]) < place(r.errs[j]) })
}
