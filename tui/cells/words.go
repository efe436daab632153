package cells

// word is one of the results asked for, and where it stands in the cell.
type word struct {
	Text       string
	Start, End int
}

// asked splits the cell at blanks and commas outside parentheses.
func (b Builder) asked() []word {
	row, _ := b.Typed.Table("").Row("asked")
	cell, _ := row.Cell("")
	return Words(cell.Text)
}

func Words(text string) (out []word) {
	start, depth := -1, 0
	for i := 0; i <= len(text); i++ {
		gap := i == len(text)
		if !gap {
			switch c := text[i]; c {
			case '(':
				depth++
			case ')':
				depth = max(depth-1, 0)
			case ' ', ',', '\t', '\n', '\r':
				gap = depth == 0
			}
		}
		switch {
		case gap && start >= 0:
			out = append(out, word{text[start:i], start, i})
			start = -1
		case !gap && start < 0:
			start = i
		}
	}
	return out
}
