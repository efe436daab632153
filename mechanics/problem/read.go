package problem

import (
	"cmp"
	"errors"
	"slices"
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
// parsed, so that after a keystroke only the changed cell is parsed again, and a box
// of uncertain inputs is looked through in half the time. It serves one goroutine at a
// time; the problem it gives is the same as Read's.
type Reader struct{ parsed map[typed]parsed }

// typed is the text of a cell; one tells that it is to be one value, in which commas may
// group digits and k is no axis.
type typed struct {
	text string
	one  bool
}

type parsed struct {
	expr *units.Expr
	err  *diag.Error
}

// maxRemembered bounds the memory of a reader: beyond it the texts typed so far
// are forgotten and parsed anew. A large sheet holds some 2,000 cells.
const maxRemembered = 8192

// NewReader makes a reader with an empty memory.
func NewReader() *Reader { return &Reader{parsed: map[typed]parsed{}} }

// Parse parses the text of a cell, or remembers how it parsed.
func (rd *Reader) Parse(text string) (*units.Expr, *diag.Error) {
	return rd.remember(typed{text, false}, units.Parse)
}

func (rd *Reader) parseOne(text string) (*units.Expr, *diag.Error) {
	return rd.remember(typed{text, true}, units.ParseOne)
}

func (rd *Reader) remember(key typed, parse func(string) (*units.Expr, *diag.Error)) (*units.Expr, *diag.Error) {
	got, known := rd.parsed[key]
	if !known {
		if len(rd.parsed) >= maxRemembered {
			clear(rd.parsed)
		}
		got.expr, got.err = parse(key.text)
		rd.parsed[key] = got
	}
	return got.expr, got.err
}

// Read reads one sheet.
func (rd *Reader) Read(s *sheet.Sheet) (*Problem, []Error) { return rd.Moved(s, nil) }

// Moved reads a sheet with measured values a ± b taken at a + share·b in place of
// a, wherever they are used: cells that name the same given move together.
func (rd *Reader) Moved(s *sheet.Sheet, shares map[Place]float64) (*Problem, []Error) {
	r := &reading{
		Reader: rd, s: s, p: &Problem{index: map[Named]int{}}, moved: shares, at: map[sheet.Ref]progress{}, rows: map[sheet.Ref]row{},
	}
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
	r.sortErrors()
	return r.p, r.errs
}

// reading is one pass over one sheet.
type reading struct {
	*Reader
	s    *sheet.Sheet
	p    *Problem
	errs []Error

	rows    map[sheet.Ref]row
	at      map[sheet.Ref]progress
	chain   []string          // names being read, for naming a circle
	notText sheet.Ref         // the last row that has a cell that is no text
	moved   map[Place]float64 // the measured values that are taken elsewhere, and by how much of their ±
}

// progress of something that is read when first asked for.
type progress int8

const (
	unasked progress = iota
	underway
	done
	failed
)

// once reads something of a table when first asked for, and tells whether it reads. What
// asks for itself while it is being read, by way of others, goes round a loop.
func (r *reading) once(ref sheet.Ref, name string, read func() bool, things, hint string) bool {
	this := sheet.Ref{Table: ref.Table, Row: name}
	switch r.at[this] {
	case unasked:
		r.at[this] = underway
		r.chain = append(r.chain, name)
		ok := read()
		r.chain = r.chain[:len(r.chain)-1]
		if ok && r.at[this] == underway {
			r.at[this] = done
		} else {
			r.at[this] = failed
		}
	case underway:
		r.at[this] = failed
		circle := append(slices.Clone(r.chain[max(slices.Index(r.chain, name), 0):]), name)
		r.fail(ref, diag.Span{}, "the "+things+" refer to each other in a loop, "+strings.Join(circle, " → "), hint)
	}
	return r.at[this] == done
}

// magnitudeOnce is once for the magnitude of a line or a couple.
func (r *reading) magnitudeOnce(ref sheet.Ref, name string, read func() bool) bool {
	ref.Key = "magnitude"
	return r.once(ref, name, read, "magnitudes", "leave one of them blank, so that it is an unknown")
}

// fail reports what does not read, and is false for its reader to return.
func (r *reading) fail(ref sheet.Ref, span diag.Span, msg, hint string) bool {
	return r.failed(ref, diag.At(span, msg, hint))
}

func (r *reading) failed(ref sheet.Ref, err *diag.Error) bool {
	if ref != r.notText { // else what seems missing in this row is there, and has been reported
		r.errs = append(r.errs, Error{Ref: ref, Error: *err})
	}
	return false
}

// doubt notes what reads and is most likely not what was meant.
func (r *reading) doubt(ref sheet.Ref, sort Sort, at diag.Span, msg, hint string) {
	r.p.Doubts = append(r.p.Doubts, Note(ref, sort, diag.At(at, msg, hint)))
}

// failCell reports an error of a cell's expression, unless it only repeats one
// that has been reported where it arose.
func (r *reading) failCell(ref sheet.Ref, err *diag.Error) bool {
	return !errors.Is(err, errElsewhere) && r.failed(ref, err)
}

// sortErrors puts the errors in the order in which the sheet's cells stand.
func (r *reading) sortErrors() {
	if len(r.errs) < 2 {
		return
	}
	order := map[sheet.Ref]int{}
	for ref := range r.s.Cells() {
		for _, at := range []sheet.Ref{{Table: ref.Table, Row: ref.Row}, ref} {
			if order[at] == 0 {
				order[at] = len(order) + 1
			}
		}
	}
	place := func(ref sheet.Ref) int {
		return cmp.Or(order[ref], order[sheet.Ref{Table: ref.Table, Row: ref.Row}], len(order)+1)
	}
	slices.SortStableFunc(r.errs, func(a, b Error) int { return cmp.Compare(place(a.Ref), place(b.Ref)) })
}
