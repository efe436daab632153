package units

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
