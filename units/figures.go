package units

import (
	"math"
	"strconv"
)

// Numbers from bigPrint on, and below smallPrint, are printed with a power of
// ten: a longer row of digits is not taken in at a glance.
const (
	bigPrint   = 7  // 1e7
	smallPrint = -3 // 1e-3
	maxFigures = 30 // a float has 17; what is asked beyond is zeros
)

// decimal is a number's shortest decimal that reads back to it: the digits
// d.ddd… times 10^exp.
type decimal struct {
	neg    bool
	digits []byte
	exp    int
}

// room is what the digits of a decimal take.
type room [maxFigures + 2]byte

// shortest gives the digits of x into a room, all that tell it from others where
// precision is -1.
func shortest(x float64, precision int, digits *room) decimal {
	var buf [40]byte
	b := strconv.AppendFloat(buf[:0], math.Abs(x), 'e', precision, 64)
	d := decimal{neg: x < 0, digits: digits[:0]}
	i := 0
	for ; b[i] != 'e'; i++ {
		if b[i] != '.' {
			d.digits = append(d.digits, b[i])
		}
	}
	d.exp, _ = strconv.Atoi(string(b[i+1:]))
	return d
}

// round keeps n digits (none where n is 0), half away from zero, and pads
// with zeros. It works on the decimal that a reader sees, so 2.675 is 2.68 to
// three figures though the float lies below.
func (d decimal) round(n int) decimal {
	for len(d.digits) < n {
		d.digits = append(d.digits, '0')
	}
	if n >= len(d.digits) {
		return d
	}
	if n < 0 {
		d.digits, d.exp = append(d.digits[:0], '0'), 0
		return d
	}
	up := d.digits[n] >= '5'
	d.digits = d.digits[:n]
	for i := n - 1; up && i >= 0; i-- {
		if d.digits[i] == '9' {
			d.digits[i] = '0'
			continue
		}
		d.digits[i]++
		up = false
	}
	if up {
		d.digits = append(append([]byte{}, '1'), d.digits...)
		d.exp++
	} else if n == 0 {
		d.digits, d.exp = append(d.digits, '0'), 0
	}
	return d
}

func (d decimal) zero() bool {
	for _, c := range d.digits {
		if c != '0' {
			return false
		}
	}
	return true
}

// plain writes the digits with places decimals; the digits that are missing
// are zeros. Thousands are parted by a space from five digits on, as NIST SP
// 811, 10.5.3 has it (four digits are not parted).
func (d decimal) plain(places int, group bool) string {
	out := make([]byte, 0, 24)
	if d.neg && !d.zero() {
		out = append(out, '-')
	}
	at := func(i int) byte {
		if i < 0 || i >= len(d.digits) {
			return '0'
		}
		return d.digits[i]
	}
	whole := max(d.exp+1, 1)
	for i := range whole {
		if group && whole >= 5 && i > 0 && (whole-i)%3 == 0 {
			out = append(out, ' ')
		}
		out = append(out, at(i+d.exp+1-whole))
	}
	if places > 0 {
		out = append(out, '.')
		for i := range places {
			out = append(out, at(d.exp+1+i))
		}
	}
	return string(out)
}

// scientific writes d.ddde±x with all the digits there are.
func (d decimal) scientific() string {
	out := make([]byte, 0, 24)
	if d.neg {
		out = append(out, '-')
	}
	out = append(out, d.digits[0])
	if len(d.digits) > 1 {
		out = append(append(out, '.'), d.digits[1:]...)
	}
	return string(strconv.AppendInt(append(out, 'e'), int64(d.exp), 10))
}

const notANumber = "not a number"

// Figures prints x to so many significant figures, half away from zero on the
// shortest decimal that stands for x: 2.675 to 3 is "2.68". It never prints
// "-0". From 1e7 on and below 1e-3 it writes "1.89e-3".
func Figures(x float64, figures int) string {
	switch {
	case math.IsNaN(x) || math.IsInf(x, 0):
		return notANumber
	case x == 0:
		return "0"
	}
	var digits room
	return shortest(x, -1, &digits).figures(figures)
}

// figures writes the decimal to so many significant figures, as Figures does.
func (d decimal) figures(figures int) string {
	d = d.round(min(max(figures, 1), maxFigures))
	if len(d.digits) > max(figures, 1) { // 999.5 to 3 has become 1000
		d.digits = d.digits[:len(d.digits)-1]
	}
	if d.exp >= bigPrint || d.exp < smallPrint {
		return d.scientific()
	}
	return d.plain(max(len(d.digits)-1-d.exp, 0), true)
}

// Decimals prints x with so many decimals, rounded as Figures rounds. From 1e7
// on it writes the decimals to a power of ten.
func Decimals(x float64, places int) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return notANumber
	}
	places = min(max(places, 0), maxFigures)
	if s, ok := fewDecimals(x, places); ok {
		return s
	}
	var digits room
	d := shortest(x, -1, &digits)
	if d.exp >= bigPrint {
		d = d.round(places + 1)
		d.digits = d.digits[:places+1]
		return d.scientific()
	}
	d = d.round(max(d.exp+1+places, -1))
	return d.plain(places, true)
}

// fewDecimals is Decimals of a number so small, to so few places, that it is
// counted in units of the last place. It leaves what lies near the middle between
// two of them to the digits, and what is parted into thousands.
func fewDecimals(x float64, places int) (string, bool) {
	const most, maxPlaces, near = 1e4, 6, 1e-4
	size := math.Abs(x)
	if size >= most-1 || places < 1 || places > maxPlaces {
		return "", false
	}
	power := 1
	for range places {
		power *= 10
	}
	below, rest := math.Modf(size * float64(power))
	if math.Abs(rest-0.5) < near {
		return "", false
	}
	n := int(below)
	if rest > 0.5 {
		n++
	}
	var buf [24]byte
	out := buf[:0]
	if x < 0 && n > 0 {
		out = append(out, '-')
	}
	out = append(strconv.AppendInt(out, int64(n/power), 10), '.')
	for n %= power; power > 1; n %= power {
		power /= 10
		out = append(out, byte('0'+n/power))
	}
	return string(out), true
}

// Compact prints x in full: the shortest decimal that reads back to it.
func Compact(x float64) string {
	switch {
	case math.IsNaN(x) || math.IsInf(x, 0):
		return notANumber
	case x == 0:
		return "0"
	}
	var digits room
	d := shortest(x, -1, &digits)
	if d.exp >= bigPrint || d.exp < smallPrint {
		return d.scientific()
	}
	return d.plain(max(len(d.digits)-1-d.exp, 0), false)
}

// typedDigits is what is trusted of a number that went through a conversion:
// into SI and back costs some units of the 16th digit, and 0.045 deg must
// round as 0.045 does.
const typedDigits = 15

// In gives an SI value in the unit, cleaned of the rounding of the conversion.
func (u Unit) In(si float64) float64 {
	x := u.divided(si)
	y, err := strconv.ParseFloat(strconv.FormatFloat(x, 'e', typedDigits-1, 64), 64)
	if err != nil {
		return x
	}
	return y
}

func (u Unit) divided(si float64) float64 {
	if u.Factor != 0 {
		return si / u.Factor
	}
	return si
}

// A number between these has at least typedDigits digits, so that no two decimals
// of so many stand for the same one.
const fullLow, fullHigh = 1e-290, 1e290

// Number prints an SI value in the unit, without its symbol.
//
// It is Figures(u.In(si), figures): the decimal of typedDigits digits, without the
// zeros at its end, is the shortest of the number that it reads as.
func (u Unit) Number(si float64, figures int) string {
	x := u.divided(si)
	if size := math.Abs(x); !(size > fullLow && size < fullHigh) {
		return Figures(u.In(si), figures)
	}
	var digits room
	d := shortest(x, typedDigits-1, &digits)
	for len(d.digits) > 1 && d.digits[len(d.digits)-1] == '0' {
		d.digits = d.digits[:len(d.digits)-1]
	}
	return d.figures(figures)
}

// Format prints an SI value in the unit: "761 N", "22.6 deg".
func (u Unit) Format(si float64, figures int) string {
	s := u.Number(si, figures)
	if u.Symbol == "" {
		return s
	}
	return s + " " + u.Symbol
}

// ReliableFigures is what a float64 holds, less what a solve costs.
const ReliableFigures = 12

// FiguresApart is how many figures, from the given on, tell two SI values apart in the unit.
func (u Unit) FiguresApart(a, b float64, figures int) int {
	for figures < ReliableFigures && u.Number(a, figures) == u.Number(b, figures) {
		figures++
	}
	return figures
}

// Apart prints two SI values as Format does, to as many figures as tell them apart.
func (u Unit) Apart(a, b float64, figures int) (string, string) {
	n := u.FiguresApart(a, b, figures)
	return u.Format(a, n), u.Format(b, n)
}
