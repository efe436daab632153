package problem_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"trivet/fixtures/long"
	"trivet/mechanics/problem"
	"trivet/units"
)

// meant is a quantity as somebody wrote it, and the value that was meant, in SI.
type meant struct {
	text  string
	value float64
	dim   units.Dim
}

// A foot, a pound and an inch as NIST SP 811, Appendix B, defines them.
const (
	inch  = 0.0254
	foot  = 12 * inch
	pound = 0.45359237 * 9.80665
)

// writtenUnits are units as they are printed and typed, rightly and wrongly.
var writtenUnits = []struct {
	text   string
	factor float64
	dim    units.Dim
}{
	{"N", 1, units.Force}, {"newtons", 1, units.Force}, {"kN", 1e3, units.Force}, {"KN", 1e3, units.Force}, {"Kn", 1e3, units.Force},
	{"kn", 1e3, units.Force}, {"kilonewtons", 1e3, units.Force}, {"MN", 1e6, units.Force}, {"mN", 1e-3, units.Force}, {"dN", 0.1, units.Force},
	{"daN", 10, units.Force}, {"hN", 100, units.Force}, {"lb", pound, units.Force}, {"lbs", pound, units.Force}, {"lb.", pound, units.Force},
	{"Lb", pound, units.Force}, {"LBS", pound, units.Force}, {"pounds", pound, units.Force}, {"lbz", pound, units.Force}, {"klb", 1e3 * pound, units.Force},
	{"kip", 1e3 * pound, units.Force}, {"kips", 1e3 * pound, units.Force}, {"Kips", 1e3 * pound, units.Force}, {"kipp", 1e3 * pound, units.Force}, {"k", 1e3 * pound, units.Force}, {"K", 1e3 * pound, units.Force},
	{"k-ft", 1e3 * pound * foot, units.Moment}, {"k/ft", 1e3 * pound / foot, units.LineLoad},
	{"m", 1, units.Length}, {"M", 1, units.Length}, {"metres", 1, units.Length}, {"meters", 1, units.Length}, {"mm", 1e-3, units.Length},
	{"cm", 1e-2, units.Length}, {"dm", 0.1, units.Length}, {"hm", 100, units.Length}, {"km", 1e3, units.Length}, {"Km", 1e3, units.Length},
	{"um", 1e-6, units.Length}, {"in", inch, units.Length}, {"in.", inch, units.Length}, {"inches", inch, units.Length}, {"inch", inch, units.Length},
	{"ins", inch, units.Length}, {"mil", inch / 1000, units.Length}, {`"`, inch, units.Length}, {"ft", foot, units.Length}, {"ft.", foot, units.Length},
	{"feet", foot, units.Length}, {"Ft", foot, units.Length}, {"'", foot, units.Length},
	{"N m", 1, units.Moment}, {"Nm", 1, units.Moment}, {"N-m", 1, units.Moment}, {"N.m", 1, units.Moment}, {"N·m", 1, units.Moment},
	{"kN-m", 1e3, units.Moment}, {"kNm", 1e3, units.Moment}, {"N-mm", 1e-3, units.Moment}, {"Nmm", 1e-3, units.Moment},
	{"lb-ft", pound * foot, units.Moment}, {"lb.-ft", pound * foot, units.Moment}, {"lb ft", pound * foot, units.Moment}, {"ft-lb", pound * foot, units.Moment},
	{"ft·lb", pound * foot, units.Moment}, {"lbft", pound * foot, units.Moment}, {"ftlb", pound * foot, units.Moment}, {"in-lb", pound * inch, units.Moment},
	{"in.-lb", pound * inch, units.Moment}, {"kip-ft", 1e3 * pound * foot, units.Moment}, {"ft-kips", 1e3 * pound * foot, units.Moment},
	{"lb/ft", pound / foot, units.LineLoad}, {"plf", pound / foot, units.LineLoad}, {"klf", 1e3 * pound / foot, units.LineLoad}, {"pli", pound / inch, units.LineLoad},
	{"kip/ft", 1e3 * pound / foot, units.LineLoad}, {"kN/m", 1e3, units.LineLoad}, {"KN/m", 1e3, units.LineLoad}, {"N/mm", 1e3, units.LineLoad},
	{"kPa", 1e3, units.Pressure}, {"KPa", 1e3, units.Pressure}, {"mpa", 1e6, units.Pressure}, {"kN/m2", 1e3, units.Pressure}, {"kN/m²", 1e3, units.Pressure},
	{"N/mm2", 1e6, units.Pressure}, {"lb/ft2", pound / foot / foot, units.Pressure}, {"psf", pound / foot / foot, units.Pressure},
	{"ksf", 1e3 * pound / foot / foot, units.Pressure}, {"kpsi", 1e3 * pound / inch / inch, units.Pressure},
	{"deg", math.Pi / 180, units.Angle}, {"°", math.Pi / 180, units.Angle}, {"degrees", math.Pi / 180, units.Angle}, {"degs", math.Pi / 180, units.Angle},
	{"kg", 1, units.Mass}, {"Kg", 1, units.Mass}, {"kgs", 1, units.Mass}, {"mg", 1e-6, units.Mass}, {"kilograms", 1, units.Mass},
}

// writtenNumber is a number as somebody writes it. Three digits behind one comma are
// thousands here, as behind a unit they are read and noted; decimal commas stand
// before other numbers of digits, or behind a 0.
func writtenNumber(rnd *rand.Rand) (string, float64) {
	n := rnd.IntN(99999) + 1
	group := func(n int, mark string) string {
		s := strconv.Itoa(n)
		for i := len(s) - 3; i > 0; i -= 3 {
			s = s[:i] + mark + s[i:]
		}
		return s
	}
	d := rnd.IntN(9) + 1
	tenth := float64(d) / 10
	switch rnd.IntN(20) {
	case 0:
		return strconv.Itoa(n), float64(n)
	case 1:
		return fmt.Sprintf("%d.%d", n, d), float64(n) + tenth
	case 2, 3:
		n += 1000
		return group(n, ","), float64(n)
	case 4:
		n = n*1000 + rnd.IntN(1000)
		return group(n, ","), float64(n)
	case 5:
		n += 1000
		return fmt.Sprintf("%s.%d", group(n, ","), d), float64(n) + tenth
	case 6:
		return fmt.Sprintf("%d,%d", n%1000, d), float64(n%1000) + tenth
	case 7:
		return fmt.Sprintf("0,%03d", n%1000), float64(n%1000) / 1000
	case 8:
		n += 1000
		return fmt.Sprintf("%s,%d", group(n, "."), d), float64(n) + tenth
	case 9:
		n += 1000
		return fmt.Sprintf("%s,%d", group(n, " "), d), float64(n) + tenth
	case 10:
		n += 1000
		return group(n, " "), float64(n)
	case 11:
		n += 1000
		return group(n, "_"), float64(n)
	case 12:
		n = n*1000 + 1_000_000
		return group(n, "."), float64(n)
	case 13:
		return fmt.Sprintf("%d 1/2", n%100+1), float64(n%100+1) + 0.5
	case 14:
		return fmt.Sprintf("%d-3/4", n%100+1), float64(n%100+1) + 0.75
	case 15:
		return fmt.Sprintf("%d½", n%100+1), float64(n%100+1) + 0.5
	case 16:
		return fmt.Sprintf("%d,%02d", n%1000, n%100), float64(n%1000) + float64(n%100)/100
	case 17: // a group with a digit too few
		return fmt.Sprintf("%d,%02d", n%999+1, n%100), float64((n%999+1)*100 + n%100)
	case 18:
		return fmt.Sprintf("%d x 10^%d", n%1000, d), float64(n%1000) * math.Pow(10, float64(d))
	}
	return fmt.Sprintf("%d.%de3", n%10+1, d), (float64(n%10+1) + tenth) * 1e3
}

// writtenFeet is a length in feet and inches as somebody writes it.
func writtenFeet(rnd *rand.Rand) meant {
	feet, in := rnd.IntN(30)+1, rnd.IntN(11)+1
	inches, plus := strconv.Itoa(in), 0.0
	if rnd.IntN(2) == 0 {
		inches, plus = inches+[]string{" 1/2", "-1/2", "½", " ½"}[rnd.IntN(4)], 0.5
	}
	forms := []string{`%d'-%s"`, `%d' %s"`, `%d'%s"`, "%d'-%s", "%d' %s", "%d ft %s in", "%d ft %s", "%d ft-%s in", "%d ft-%s", "%d ft. %s in.", "%d ft.%s in.", "%d ft %s inches", "%d'-%s in", "%d feet %s inches"}
	return meant{fmt.Sprintf(forms[rnd.IntN(len(forms))], feet, inches), float64(feet)*foot + (float64(in)+plus)*inch, units.Length}
}

func writtenQuantity(rnd *rand.Rand) meant {
	var q meant
	if rnd.IntN(6) == 0 {
		q = writtenFeet(rnd)
	} else {
		number, x := writtenNumber(rnd)
		u := writtenUnits[rnd.IntN(len(writtenUnits))]
		between := []string{" ", "", "-"}[min(rnd.IntN(6), 2)]
		if between == "-" && (strings.ContainsAny(u.text, `"'°`) || rnd.IntN(2) == 0) {
			between = " "
		}
		if between == "" && strings.HasPrefix(u.text, "e") {
			between = " "
		}
		q = meant{number + between + u.text, x * u.factor, u.dim}
	}
	if rnd.IntN(4) == 0 {
		q.text, q.value = "-"+q.text, -q.value
	}
	return q
}

// suggestions are the texts that a hint offers in place of what the error points at.
func suggestions(hint string) []string {
	if hint == "" {
		return nil
	}
	return strings.Split(hint, " or ")
}

// Whatever a person writes is read as it was meant, or refused; and what is offered
// in its place, put where the error points, is what was meant. Where a text can be
// read two ways, one of the two is.
func TestSuggestionsKeepTheValue(t *testing.T) {
	rnd := rand.New(rand.NewPCG(15, 16))
	heads := []string{"", "[units]\nlength = \"ft\"\nforce = \"lb\"\n", "[units]\nlength = \"mm\"\nforce = \"kN\"\n", "[units]\nlength = \"in\"\nforce = \"kip\"\n"}
	const given, magnitude, coordinate = 0, 1, 2
	// read gives the value of a text in a cell, and its error.
	read := func(head, text string, cell int) (float64, units.Dim, *problem.Error) {
		cells := [...]string{"1 m", "1 N", "1"}
		cells[cell] = text
		p, errs := problem.Read(parse(t, fmt.Sprintf("plane = \"xy\"\n%s[given]\nq = %q\n[points]\nP = { at = \"0, 0\", on = \"particle\" }\nA = \"0, 3\"\nB = %q\n"+
			"[lines]\nT = { kind = \"cable\", path = \"P A\" }\nW = { kind = \"weight\", at = \"P\", magnitude = %q }\n", head, cells[given], cells[coordinate]+", 0", cells[magnitude])))
		if len(errs) > 0 {
			return 0, units.Dim{}, &errs[0]
		}
		switch cell {
		case magnitude:
			return p.Lines[1].Magnitude.Const, units.Force, nil
		case coordinate:
			return p.Points[2].At.X, units.Length, nil
		}
		return p.Givens[0].Value.V[0], p.Givens[0].Value.Dim, nil
	}
	same := func(a float64, d units.Dim, q meant) bool {
		return d == q.dim && math.Abs(a-q.value) <= 1e-12*math.Abs(q.value)
	}
	well, offered := 0, 0
	total := long.Of(2_000, 10_000)
	for range total {
		q := writtenQuantity(rnd)
		head, cell := heads[rnd.IntN(len(heads))], given
		switch {
		case q.dim == units.Force && rnd.IntN(2) == 0:
			cell = magnitude
		case q.dim == units.Length && rnd.IntN(2) == 0 && !strings.Contains(q.text, ","): // where it always parts components
			cell = coordinate
		}
		v, d, err := read(head, q.text, cell)
		if err == nil {
			if !same(v, d, q) {
				t.Errorf("%s is read as %v %v, and %v %v was meant", q.text, v, d, q.value, q.dim)
			}
			well++
			continue
		}
		read2, right := 0, 0
		for _, s := range suggestions(err.Hint) {
			text := q.text[:err.Span.Start] + s + q.text[min(err.Span.End, len(q.text)):]
			if v, d, again := read(head, text, cell); again == nil {
				read2++
				if same(v, d, q) {
					right++
				} else if !strings.Contains(err.Msg, "two ways") {
					t.Errorf("%s: %s: %s is %v %v, and %v %v was meant", q.text, err.Text(), text, v, d, q.value, q.dim)
				}
			} else if s := suggestions(again.Hint); len(s) == 1 && !strings.Contains(err.Msg, "two ways") { // two slips, one after the other
				text = text[:again.Span.Start] + s[0] + text[again.Span.End:]
				if v, d, last := read(head, text, cell); last == nil && !same(v, d, q) {
					t.Errorf("%s: %s: then %s: %s is %v %v, and %v %v was meant", q.text, err.Text(), again.Text(), text, v, d, q.value, q.dim)
				}
			}
		}
		if read2 > 0 {
			offered++
			if right == 0 {
				t.Errorf("%s: %s: none of it was meant: %v %v", q.text, err.Text(), q.value, q.dim)
			}
		}
		if t.Failed() && total < 10_000 {
			return
		}
	}
	if well < total*15/100 || offered < total*35/100 {
		t.Errorf("%d read and %d are offered something that does: the test tests little", well, offered)
	}
	t.Logf("of %d, %d read as meant, %d are offered what was meant", total, well, offered)
}
