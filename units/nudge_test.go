package units

import (
	"strings"
	"testing"
	"unicode"

	"trivet/mechanics/diag"
)

// The cursor stands at the | of the text before and after.
func TestNudge(t *testing.T) {
	for _, c := range []struct {
		text  string
		steps int
		want  string // "" where nothing is to be nudged
	}{
		{"3.40|", 1, "3.41|"},
		{"3.4|0 m", 1, "3.4|1 m"},
		{"3.49|", 1, "3.50|"},
		{"9.9|", 1, "10.0|"},
		{"10.0|", -1, "9.9|"},
		{"1e3|", 1, "2e3|"},
		{"9|e-3 m", 1, "10|e-3 m"},
		{"1.5E+2|", -1, "1.4E+2|"},
		{"|6 m", 1, "|7 m"},
		{"6 m|", 1, "7 m|"},
		{"2 kN/m|", -1, "1 kN/m|"},
		{"600cm|", 5, "605cm|"},
		{".5|", 5, "1.0|"},
		{".5|", -1, ".4|"},
		{"6.|", 1, "7.|"},
		{"0.00|", -1, "-0.01|"},
		{"-0.01|", 1, "0.00|"},
		{"-3|", 1, "-2|"},
		{"-|3", -1, "-|4"},
		{"− 3|", 1, "− 2|"},
		{"-3|", 5, "2|"},
		{"+1|", 1, "+2|"},
		{"+1|", -3, "-2|"},
		{"(3, 0|, -4) N", -1, "(3, -1|, -4) N"},
		{"(3, 0, -4|) N", -1, "(3, 0, -5|) N"},
		{"5 - 3|", 1, "5 - 4|"},
		{"5 - 3|", -4, ""},
		{"2*|3", 1, "2*|4"},
		{"2*0|", -1, "2*-1|"},
		{"12 300| N", 100, "12 400| N"},
		{"1,999| lb", 1, "2,000| lb"},
		{"999,999 |lb", 1, "1,000,000 |lb"},
		{"6 m ± 5| %", 1, "6 m ± 6| %"},
		{"slope 3|:4", 1, "slope 4|:4"},
		{"999| N", 1, "1000| N"},
		{"9 999|", 1, "10 000|"},
		{"1 000|", -1, "999|"},
		{"6 cos 30|°", 1, "6 cos 31|°"},
		{"6| m ± 2 cm", 1, "7| m ± 2 cm"},
		{"6 m ± 2 cm|", 1, "6 m ± 3 cm|"},
		{"300 lbf .. 500| lbf", 1, "300 lbf .. 501| lbf"},
		{"5'-6\"|", 1, "5'-7\"|"},
		{"5|'-6 1/2\"", 1, "6|'-6 1/2\""},
		{"99999999999999999999|", 1, "100000000000000000000|"},
		{"3-4|", 1, "3-5|"},
		{"3|-4", 1, "4|-4"},

		{"1/2| in", 1, ""},
		{"|1/2 in", 1, ""},
		{"3 1/2| in", 1, ""},
		{"3| 1/2 in", 1, ""},
		{"5'-6 |1/2\"", 1, ""},
		{"m^2|", 1, ""},
		{"10^-3|", 1, ""},
		{"T1|", 1, ""},
		{"2*h|", 1, ""},
		{"h|", 1, ""},
		{"|", 1, ""},
		{"?|", 1, ""},
		{"3 = 4|", 1, ""},
		{"6|", 0, ""},
		{"h.5|", 5, ""},
		{"+/0|", -1, ""},
		{"8/0|", -1, ""},
	} {
		cursor := strings.IndexByte(c.text, '|')
		text := strings.Replace(c.text, "|", "", 1)
		out, at, ok := Nudge(text, cursor, c.steps)
		if !ok {
			if out != text || at != cursor {
				t.Errorf("%q: changed to %q, %d though it is refused", c.text, out, at)
			}
			out, at = "", -1
		} else {
			out = out[:at] + "|" + out[at:]
		}
		if out != c.want {
			t.Errorf("%q by %d gives %q, want %q", c.text, c.steps, out, c.want)
		}
	}
}

// Nudged there and back a text is the same again, but for the sign of nothing
// and a space between thousands that has gone; what read before reads after.
func FuzzNudge(f *testing.F) {
	for _, s := range []string{"3.40", "-0.01 m", "1e3 N", "(3, 0, -4) N", "5'-6 1/2\"", "12 300", "6 m ± 2 cm", "2*T1 + .5", "1/2 in", "0..5", "h.5"} {
		f.Add(s, len(s)-1, 1)
		f.Add(s, 1, -7)
	}
	f.Fuzz(func(t *testing.T, text string, cursor, steps int) {
		out, at, ok := Nudge(text, cursor, steps)
		if !ok {
			if out != text || at != cursor {
				t.Fatalf("%q changed to %q though it is refused", text, out)
			}
			return
		}
		if at < 0 || at > len(out) || out == text {
			t.Fatalf("%q at %d gives %q at %d", text, cursor, out, at)
		}
		_, before := Parse(text)
		_, after := Parse(out)
		if before == nil && after != nil && !outgrown(after) {
			t.Fatalf("%q reads, and %q does not: %v", text, out, after)
		}
		back, _, ok := Nudge(out, at, -steps)
		if ok && plain(back) != plain(text) {
			t.Fatalf("%q by %d is %q, and back %q", text, steps, out, back)
		}
	})
}

// outgrown tells errors about the size of a number, which the next figure may
// always meet.
func outgrown(err *diag.Error) bool {
	return strings.Contains(err.Msg, "larger than any number") || strings.Contains(err.Msg, "too small to tell from 0") || strings.Contains(err.Msg, "longer than")
}

// plain leaves out what a nudge there and back may lose.
func plain(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsSpace(r) || strings.ContainsRune("+-−–0", r) {
			return -1
		}
		return r
	}, s)
}

func TestMentions(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"6 m", ""},
		{"2*T1 + h", "T1 h"},
		{"0.3*N", "N"},
		{"0.3 N", ""},
		{"2 T1", "T1"},
		{"(A + B)/2", "A B"},
		{"( (A) )", "A"},
		{"Q + 2 m * dir(T, A)", "Q T! A!"},
		{"T1*exp(0.3*180 deg) + length(A, B + C)", "T1 A! B C"},
		{"bearing(a, b)", "a b"},
		{"hypot(a, b, c)", "a b c"},
		{"6 cos 30°", ""},
		{"W cos a", "W a"},
		{"(0, h, -W) N", "h W"},
		{"+x", "x"},
		{"2 kN/m .. q", "q"},
		{"2 kN/m .. q kN/m", "q kN m"},
		{"pi/6 rad", ""},
		{"20 kg * g", "g"},
		{"T1.x", "T1"},
		{"6 m ± d", "d"},
		{"?", ""},
		{"", ""},
		{"W = 3", ""}, // the text has no tokens
		{"2*T1 +", "T1"},
		{"dir(A, ", "A!"},
		{"2 kN m + (T1", "T1"},
		{"3 deg h", "h"},
		{"sqrt(h", "h"},
	} {
		var words []string
		for _, m := range Mentions(c.text) {
			if got := c.text[m.Start:m.End]; got != m.Name {
				t.Errorf("%q: %s stands at %q", c.text, m.Name, got)
			}
			if m.Place {
				m.Name += "!"
			}
			words = append(words, m.Name)
		}
		if got := strings.Join(words, " "); got != c.want {
			t.Errorf("%q mentions %q, want %q", c.text, got, c.want)
		}
	}
}

func TestWord(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"|", ""}, {"T|", "T"}, {"|T1", "T1"}, {"T|1", "T1"}, {"2*T1|", "T1"}, {"6m|", "m"}, {"6 |m", "m"}, {"6|m", "m"}, {"6|", ""},
		{"T1.x|", "x"}, {"T1|.x", "T1"}, {"T1.|", ""}, {"angle(T1, T|2)", "T2"}, {"30°|", ""}, {"α|β", "αβ"}, {"12| 3", ""}, {"h_1| ", "h_1"},
	} {
		cursor := strings.IndexByte(c.text, '|')
		text := strings.Replace(c.text, "|", "", 1)
		if s := Word(text, cursor); text[s.Start:s.End] != c.want || c.want == "" && s.Start != cursor {
			t.Errorf("%q: word %q at %d, want %q", c.text, text[s.Start:s.End], s.Start, c.want)
		}
	}
}

func FuzzMentions(f *testing.F) {
	for _, s := range []string{"2*T1 + h", "dir(A, ", "(A", "T1.x y", "3 1/2 in", "\"'°", "ab.cd.ef(", ")("} {
		f.Add(s, 2)
	}
	f.Fuzz(func(t *testing.T, text string, cursor int) {
		end := 0
		for _, m := range Mentions(text) {
			if m.Start < end || m.End <= m.Start || text[m.Start:m.End] != m.Name {
				t.Fatalf("%q: %q at %v", text, m.Name, m.Span)
			}
			end = m.End
		}
		if w := Word(text, cursor); w.Start < 0 || w.End < w.Start || w.End > len(text) {
			t.Fatalf("%q: word %v", text, w)
		}
	})
}
