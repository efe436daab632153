package linear

import (
	"math"

	"gonum.org/v1/gonum/floats"
)

// Reduced brings rows to reduced echelon form, in place, by elimination over the columns
// in the order given, with the largest pivot of each; a column whose largest is below
// weak has none. It gives the rows that have a pivot.
func Reduced(rows [][]float64, columns []int, weak float64) [][]float64 {
	lead := 0
	for _, col := range columns {
		if lead == len(rows) {
			break
		}
		best := lead
		for i := lead; i < len(rows); i++ {
			if math.Abs(rows[i][col]) > math.Abs(rows[best][col]) {
				best = i
			}
		}
		if math.Abs(rows[best][col]) < weak {
			continue
		}
		rows[lead], rows[best] = rows[best], rows[lead]
		pivot := rows[lead][col]
		for j := range rows[lead] {
			rows[lead][j] /= pivot
		}
		for i, row := range rows {
			if f := row[col]; i != lead && f != 0 {
				floats.AddScaled(row, -f, rows[lead])
			}
		}
		lead++
	}
	return rows[:lead]
}
