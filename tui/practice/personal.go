package practice

import (
	"trivet/mechanics/problem"
	"trivet/mechanics/problemset"
	"trivet/mechanics/report"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/mechanics/variant"
)

// Personal is the sheet of a problem of the set with the person's own values, solved, or
// what kept it from being so.
func (o Options) Personal(p problemset.Problem) (s *sheet.Sheet, sol *statics.Solution, fault string) {
	s, err := o.read(p)
	if err != nil {
		return nil, nil, report.FileFault(p.Sheet, err).Short(p.Sheet)
	}
	if sol, fault = solved(s); fault == "" && p.Variant {
		s, sol, fault = o.personal(p, s, sol)
	}
	return s, sol, fault
}

// personal is the person's own variant of a sheet.
func (o Options) personal(p problemset.Problem, s *sheet.Sheet, sol *statics.Solution) (*sheet.Sheet, *statics.Solution, string) {
	src, err := variant.NewSource(s, sol)
	if err != nil {
		return nil, nil, err.Error()
	}
	seed := o.Person
	if o.Store != nil { // another name later changes no values
		if seed, err = o.Store.Seed(o.Person); err != nil {
			return nil, nil, "the record cannot be read: " + err.Error()
		}
	}
	own, err := o.Set.Personal(p, seed, src)
	if err != nil {
		return nil, nil, err.Error()
	}
	return own.Sheet, own.Solution, ""
}

// solved reads and solves a sheet.
func solved(s *sheet.Sheet) (*statics.Solution, string) {
	p, errs := problem.Read(s)
	for _, e := range errs {
		if e.Blocks() {
			return nil, "this sheet does not read yet: " + e.Text()
		}
	}
	sol := statics.Solve(p)
	if sol.Verdict == statics.Unreadable {
		return nil, "this sheet does not read yet"
	}
	return sol, ""
}
