// Package problem reads a sheet's raw cells into the things of a free-body
// problem: points, bodies, lines of action, known and unknown forces, all in SI.
package problem

import (
	"iter"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"trivet/mechanics/diag"
	"trivet/mechanics/sheet"
	"trivet/units"
)

// Problem is what a sheet describes. It is plain data; nothing in it refers
// back to the text but the Refs, which say which cell to point at.
type Problem struct {
	Title, Statement, Lesson, Source string
	Expect                           string // the verdict that a teaching sheet is about; "" for determinate

	Planar  bool
	Up      r3.Vec // unit vector against gravity
	G       float64
	Figures int // significant figures shown
	Units   units.Set

	Givens   []Given
	Points   []Point
	Bodies   []Body
	Lines    []Line
	Joints   []Joint
	Couples  []Couple
	Loads    []Distributed
	Unknowns []Unknown // in order of first use
	Asked    []Query   // results the statement asks for
	Answers  []Answer
	Doubts   []Error // what reads, and is most likely not what was meant
	Unread   []Error // what is typed and read by nothing, in the order of the sheet, where names.Read read it
	belts    []*Belt
	index    map[Named]int // the place of each thing in its list
	Measured []Measured    // the values typed with an uncertainty behind ±, in the order they are read
}

// Acts gives every force and couple on a body, of lines, joints, couples,
// distributed loads and weights.
func (p *Problem) Acts() iter.Seq[*Act] {
	return func(yield func(*Act) bool) {
		p.Exerted()(func(_ Source, act *Act) bool { return yield(act) })
	}
}

// Source is what exerts an act: a line, joint, couple or load by its index, or a body's weight.
type Source struct {
	Thing
	Index int
}

// Exerted is Acts, each with what exerts it.
func (p *Problem) Exerted() iter.Seq2[Source, *Act] {
	return func(yield func(Source, *Act) bool) {
		for _, what := range []Thing{ALine, AJoint, ACouple, ALoad, ABody} {
			for i, of := range p.Entries(what) {
				for k := range of.Acts {
					if !yield(Source{what, i}, &of.Acts[k]) {
						return
					}
				}
			}
		}
	}
}

// ByPlace gathers the forces on a body by where they act; none where a couple acts on it too, known or
// unknown. A body with forces at two places is a two-force member.
func ByPlace[T any](on []T, act func(T) *Act) (places [][]T) {
	for _, x := range on {
		a := act(x)
		switch {
		case !a.Couple.IsZero():
			return nil
		case a.Force.IsZero():
			continue
		}
		i := slices.IndexFunc(places, func(at []T) bool { return act(at[0]).At == a.At })
		if i < 0 {
			i, places = len(places), append(places, nil)
		}
		places[i] = append(places[i], x)
	}
	return places
}

// NameOf names what exerts an act.
func (p *Problem) NameOf(from Source) string {
	name := p.Entry(from).Name
	if from.Thing == ABody {
		return "weight of " + name
	}
	return name
}

// ResultantOnly tells that the sheet is a resultant exercise: the known forces are
// added up, and need not be in equilibrium.
func (p *Problem) ResultantOnly() bool { return p.Expect == ExpectResultant }

// Entry is what the things of a sheet have in common.
type Entry struct {
	Name string
	Ref  sheet.Ref
	OK   bool  // false where a cell does not read: the numbers mean nothing
	Acts []Act // what it exerts on bodies
}

func (e *Entry) entry() *Entry { return e }

// Notes gives what does no harm to the reading, and is to be said: what is read by
// nothing, then what was most likely meant otherwise.
func (p *Problem) Notes() []Error { return slices.Concat(p.Unread, p.Doubts) }

// Given is a named value, with the range and step a variant may take.
type Given struct {
	Entry
	Value           units.Value
	HasRange        bool
	Low, High, Step float64 // SI; Step is 0 where none is given
}

// GivenNamed finds a given by its name, nil where there is none.
func (p *Problem) GivenNamed(name string) *Given {
	if g, ok := p.Find(name, AGiven); ok {
		return &p.Givens[g.Index]
	}
	return nil
}

// Ground is the body of a point that belongs to none: it is fixed.
const Ground = -1

// Point is a named place.
type Point struct {
	Entry         // OK is false where its cell does not read: At means nothing
	At     r3.Vec // m
	Plus   r3.Vec // the uncertainty typed behind ±, m
	Body   int    // index in Bodies of the first body it is on, or Ground
	Bodies []int  // all bodies it is on; two where they are joined
}

// Body is something cut free: a particle, which bears the name of its point and
// has equations of forces only, or a rigid body with moments taken about About.
type Body struct {
	Entry     // its act is its weight
	Particle  bool
	Points    []int
	About     r3.Vec
	AboutName string
	Reach     float64 // the largest coordinate of what acts on it, m: what is small beside it may be rounding
	Weight    float64 // N, 0 where none is given
	Mass      float64 // kg, where the weight was typed as a mass; else 0
	Centre    r3.Vec
	Outline   []int // points round which a figure draws it; none where it follows from its points
	Bare      bool  // no force acts on it yet: it has no equations
}

// CutFree gives the bodies that equations are written for: all but the bare ones.
func (p *Problem) CutFree() iter.Seq[int] {
	return func(yield func(int) bool) {
		for b := range p.Bodies {
			if !p.Bodies[b].Bare && !yield(b) {
				return
			}
		}
	}
}

// Unknown is a magnitude or a component to be found, in newtons or newton metres.
type Unknown struct {
	Entry // Ref is the cell of a magnitude that alone names it, where it does first
	Dim   units.Dim
	Line  int    // the first line that uses it, or -1
	Joint int    // the joint it belongs to, or -1
	Part  string // what its name has behind that of the joint, or of the force by components: the x of Ax, MAx and Fx
	Own   bool   // the unknown is the magnitude of the line of the same name
}

// Line is a force with a line of action.
type Line struct {
	Entry
	Kind Kind

	Path      []int   // points it runs through; one point where it has a direction instead
	Legs      []Leg   // one a stretch of the path, or one for a direction
	Magnitude Affine  // positive as the kind says: tension, compression, along the direction
	Mass      float64 // kg, where the magnitude of a weight was typed as a mass; else 0
	Plus      float64 // the uncertainty typed behind the magnitude's ±, N
	Limit     float64 // capacity, N; 0 where none
	Spring    *Spring
	Belt      *Belt // of the two parts of a belt; else nil

	Components *Vector // of a force that is given by them, not by a magnitude along a direction; else nil
}

// Leg is a stretch of a line: r = B - A, its length |r| and the unit vector
// u = r/|r|. Where the line was given by a direction, To is -1, Length is 0 and R = U.
type Leg struct {
	From, To int
	R        r3.Vec
	Length   float64
	U        r3.Vec
	Typed    TypedDirection
}

// Spring is a spring's data: tension = Stiffness·(length - Natural). Where Free,
// the natural length is not known, and the stretch follows from the tension.
type Spring struct {
	Stiffness, Natural, Stretch float64
	Free                        bool
}

// Act is a force on a body at a place, and a couple with it. Point is the index of
// the place where it has a name, else -1.
type Act struct {
	Body, Point   int
	At            r3.Vec
	Force, Couple Vector
}

// Answer is what a source prints for a result. Half is half a unit of the last
// place printed, or the tolerance the sheet gives for it, in SI.
type Answer struct {
	Query   Query
	Printed string
	Value   float64
	Half    float64
	Why     string // why the tolerance is wider than the print, as the sheet says it
	Ref     sheet.Ref
}

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

// Error is a cell that does not read. Its span is in the cell's decoded text; a Ref
// without a key points at the whole row. InName tells that it is the name of what Ref
// names (a key, a row, a table) that is meant. Sort is that of a note.
type Error struct {
	diag.Error
	Ref    sheet.Ref
	InName bool
	Sort   Sort
}

// Note is a note at a place of a cell's text, or without one of the name of what ref names.
func Note(ref sheet.Ref, sort Sort, e *diag.Error) Error {
	return Error{Ref: ref, InName: e.Span == diag.Span{}, Sort: sort, Error: *e}
}

// Placed is the error with its place in the file.
func (e Error) Placed(s *sheet.Sheet) *diag.Error {
	e.Place = s.Place(e.Ref, e.Span)
	if e.InName {
		e.Place = s.NamePlace(e.Ref)
	}
	return &e.Error
}
