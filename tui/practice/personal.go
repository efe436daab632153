package practice

import (
	"trivet/mechanics/problemset"
	"trivet/mechanics/report"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
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
