package units

import "slices"

// DefaultSet is the SI set of a sheet that says nothing: m, N, deg, kg.
func DefaultSet() Set {
	return Set{Length: *bySymbol["m"], Force: *bySymbol["N"], Angle: *bySymbol["deg"], Mass: *bySymbol["kg"]}
}

// For gives the unit in which the set prints a quantity of dimension d, and in
// which it reads a bare number: its own units and the compounds of them ("N m",
// "lbf/ft", "kN/m^2"), and coherent SI for what the set has no part in. A
// number has the unit "" with factor 1.
func (s Set) For(d Dim) Unit {
	switch d {
	case Number:
		return Unit{Factor: 1, Exact: true, Name: "number"}
	case Length:
		return s.Length
	case Force:
		return s.Force
	case Angle:
		return s.Angle
	case Mass:
		return s.Mass
	case Moment:
		return join(d, part{&s.Force, 1, false}, part{&s.Length, 1, false})
	case LineLoad:
		return join(d, part{&s.Force, 1, false}, part{&s.Length, 1, true})
	case Pressure:
		return join(d, part{&s.Force, 1, false}, part{&s.Length, 2, true})
	case Dim{L: -2, M: 1, T: -2}:
		return join(d, part{&s.Force, 1, false}, part{&s.Length, 3, true})
	case Area:
		return join(d, part{&s.Length, 2, false})
	case Volume:
		return join(d, part{&s.Length, 3, false})
	case Acceleration:
		return join(d, part{&s.Length, 1, false}, part{bySymbol["s"], 2, true})
	}
	return Unit{Symbol: d.symbol(), Name: d.symbol(), Dim: d, Factor: 1, Exact: true, Source: srcSI}
}

// usual lists compounds as they are typed, for a choice of units; what has a
// symbol of its own is in the table. It is never written to.
var usual = []string{
	"N m", "kN m", "N mm", "lbf ft", "lbf in", "kip ft",
	"N/m", "kN/m", "N/mm", "lbf/ft", "lbf/in", "kip/ft",
	"m/s^2", "ft/s^2", "kg/m^3", "lbm/ft^3", "N m/rad", "N m/deg", "lbf in/rad",
	"m^2", "mm^2", "ft^2", "in^2",
}

// Choices lists the units in which a quantity of dimension d is commonly given,
// that of the set first. A number has none.
func (s Set) Choices(d Dim) []Unit {
	if d == Number {
		return nil
	}
	var out []Unit
	add := func(u Unit) {
		if u.Dim == d && !slices.ContainsFunc(out, func(o Unit) bool { return o.Symbol == u.Symbol }) {
			out = append(out, u)
		}
	}
	add(s.For(d))
	for _, u := range table {
		add(u)
	}
	for _, text := range usual {
		if u, err := ParseUnit(text); err == nil {
			add(u)
		}
	}
	return out
}
