package origin

import (
	"strings"

	"trivet/mechanics/doc"
	"trivet/mechanics/working"
)

// equals says what a number is set equal to, or what it is a part of.
func equals(of *working.Step, f found) string {
	if f.row != nil {
		return ofTable(of, f)
	}
	on := f.on()
	for k := len(on) - 1; k >= 0; k-- {
		m := on[k]
		if m.Op != doc.Relate || k >= len(f.way) {
			continue
		}
		text := func(n int) string { return strings.ReplaceAll(doc.TextMath(m.Of[n]), "\n", " ") }
		at, last := f.way[k], f.way[k] == len(m.Of)-1
		switch {
		case last && m.Of[0].Op == doc.BigSum && m.Text == "=" && k == len(on)-2:
			return text(0) + " = 0: the body is in equilibrium"
		case !last && m.Of[0].Op == doc.Size:
			return "a component of " + doc.TextMath(m.Of[0].Of[0]) + ", squared and added up"
		case at >= 2:
			return text(0) + " = " + text(at-1)
		case at == 1 && of.Kind == working.Moment && len(m.Of) > 2:
			return "in " + text(0) + ": the arm from the point of moments and the force, r × F"
		case at == 1 && of.Kind == working.Answers:
			return text(0) + ", worked out from the solution"
		case at == 1:
			return "in " + text(0) + behindSymbol(on[k:])
		}
	}
	return "in " + lower(of.Title)
}

// ofTable names the row and the column of a number.
func ofTable(of *working.Step, f found) string {
	name := f.row[0].Words
	if f.row[0].Math != nil {
		name = strings.TrimSpace(doc.TextMath(*f.row[0].Math))
	}
	switch of.Kind {
	case working.Forces:
		return name + ": its " + strings.ToLower(f.head) + ", as the sheet gives it"
	case working.Checks:
		if name == "Σ" {
			return "the sum of " + f.head + ": 0 where the body is in equilibrium"
		}
		return f.head + " of " + name + ", in the solution"
	}
	return f.head + " of " + name + " (" + lower(of.Title) + ")"
}

// behindSymbol names the symbol that a number is multiplied by.
func behindSymbol(on []*doc.Math) string {
	for k := len(on) - 1; k >= 0; k-- {
		if on[k].Op != doc.Product {
			continue
		}
		for _, x := range on[k].Of {
			if x.Op == doc.Symbol {
				return ": what stands before " + doc.TextMath(x)
			}
		}
	}
	return ""
}

// lower begins a title with a small letter, unless a name begins it.
func lower(title string) string {
	first, rest, _ := strings.Cut(title, " ")
	if rest == "" || strings.ToLower(first[1:]) != first[1:] || len(first) < 3 {
		return title
	}
	return strings.ToLower(first[:1]) + first[1:] + " " + rest
}
