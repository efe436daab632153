package doc

// Lines writes blocks in whole sentences, each on a line of its own however long, for who
// has them read aloud: nothing in them is drawn or set in columns.
func Lines(blocks []Block) (out []string) {
	for _, b := range blocks {
		head := ""
		switch b := b.(type) {
		case *Boxed:
			head = "answer: "
		case *Check:
			head = b.State.String() + ": "
		}
		for _, sentence := range b.sentences() {
			line := head
			for _, in := range sentence {
				line += in.read()
			}
			out = append(out, line)
		}
	}
	return out
}

// read is a piece of a sentence as it is read aloud.
func (in Inline) read() string {
	switch {
	case in.Math != nil:
		return LineMath(*in.Math)
	case in.Blank > 0:
		return "blank"
	}
	return Printed(in.Words)
}
