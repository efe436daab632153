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
			out = append(out, CodeLines(b.Text)...)
		case *Figure:
		default:
			Stray(b)
		}
	}
	return out
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
