package problem

import "trivet/units"

// Format writes a value in SI in the sheet's unit of its dimension, to the sheet's figures.
func (p *Problem) Format(si float64, d units.Dim) string { return p.Units.For(d).Format(si, p.Figures) }

// Percent writes a share in per cent, to the sheet's figures.
func (p *Problem) Percent(share float64) string { return units.Figures(100*share, p.Figures) + " %" }
