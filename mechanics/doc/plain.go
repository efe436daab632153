package doc

// Lines writes blocks in whole sentences, each on a line of its own however long, for who
// has them read aloud: nothing in them is drawn or set in columns.
func Lines(blocks []Block) (out []string) {
	for _, b := range blocks {
		switch b := b.(type) {
		case *Paragraph:
			out = append(out, lineSentence(b.Text))
		case *Formula:
			for _, m := range b.Of {
				out = append(out, LineMath(m))
			}
		case *Boxed:
			out = append(out, "answer: "+LineMath(b.Math))
		case *Table:
			for _, r := range b.Rows {
				out = append(out, lineSentence(rowSentence(b, r)))
			}
		case *Check:
			out = append(out, b.State.String()+": "+lineSentence(b.Text))
		case *List:
			for _, item := range b.Items {
				out = append(out, lineSentence(item))
			}
		case *Code:
			out = append(out, CodeLines(b)...)
		case *Figure:
		default:
			Stray(b)
		}
	}
	return out
}

// LineMath writes a formula in one line that can be read aloud: a column is a
// tuple (a, b, c), a matrix its rows one after the other.
func LineMath(m Math) string { return TextMath(tuples(m)) }

// tuples turns what stands over several lines into tuples.
func tuples(m Math) Math {
	of := make([]Math, len(m.Of))
	for i := range m.Of {
		of[i] = tuples(m.Of[i])
	}
	m.Of = of
	switch m.Op {
	case Column:
		return Math{Op: Paren, Of: of}
	case Grid, Det:
		rows := make([]Math, len(of))
		for i, r := range of {
			rows[i] = Math{Op: Paren, Of: r.Of}
		}
		word := "matrix"
		if m.Op == Det {
			word = "determinant of"
		}
		return Math{Op: Row, Of: []Math{{Op: Words, Text: word}, {Op: Paren, Of: rows}}}
	}
	return m
}

// lineSentence is prose with its formulas in one line each.
func lineSentence(text []Inline) string {
	out := ""
	for _, in := range text {
		switch {
		case in.Math != nil:
			out += LineMath(*in.Math)
		case in.Blank > 0:
			out += "blank"
		default:
			out += Printed(in.Words)
		}
	}
	return out
}
