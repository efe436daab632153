package speech

import "testing"

// What acts on a terminal is a dot in lines as on every other screen; line ends of a text
// are blanks, and the joiners that some scripts need are for the eye alone.
func TestWhatActsIsADotInLines(t *testing.T) {
	for text, want := range map[string]string{
		"a beam\x1b[2J of\u202e 4 m":                "a beam·[2J of· 4 m",
		"\u009b2J\a\x7f":                            "·2J··",
		"T\u200b1\u2028T\u20602\ufeff \ufffd\u0085": "T·1·T·2· ··",
		"one\ntwo\tthree\r\nfour │ 5":               "one two three four 5",
		"می\u200cخواهم":                             "میخواهم",
	} {
		if got := spoken([]string{text}); len(got) != 1 || got[0] != want {
			t.Errorf("%q is said as %q, want %q", text, got, want)
		}
	}
}

func TestTheLastLineIsRetypedFromWhereItDiffers(t *testing.T) {
	for _, c := range []struct {
		was, now Line
		want     string
	}{
		{Line{"A: 1", 4}, Line{"A: 12", 5}, "2"},
		{Line{"A: 12", 5}, Line{"A: 1", 4}, "\b\x1b[K"},
		{Line{"A: 12", 5}, Line{"A: 12", 3}, "\b\b"},
		{Line{"A: 12", 3}, Line{"A: 12", 4}, "\x1b[C"},
		{Line{"A: 12", 3}, Line{"A: 312", 4}, "312\b\b"},
		{Line{"A: 1°", 5}, Line{"A: 1±", 5}, "\b±"},
		{Line{"", 0}, Line{"A: ", 3}, "A: "},
		{Line{"A", 1}, Line{"A", 1}, ""},
	} {
		if got := written(80, nil, c.was, c.now); got != c.want {
			t.Errorf("from %v to %v writes %q, want %q", c.was, c.now, got, c.want)
		}
	}
	if got, want := written(20, []string{"one two three four five", "six"}, Line{"x", 1}, Line{"y: z", 3}), "\r\x1b[Kone two three four\r\nfive\r\nsix\r\ny: z\b"; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got, want := written(12, []string{"it weighs 12 kN, and more"}, Line{}, Line{}), "\r\x1b[Kit weighs\r\n12 kN, and\r\nmore\r\n"; got != want {
		t.Errorf("a number is written as %q, want %q", got, want)
	}
}
