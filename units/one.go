package units

import (
	"fmt"
	"strings"

	"trivet/mechanics/diag"
	"trivet/mechanics/say"
)

// ParseOne reads a cell of one value. There digits may be grouped in threes by
// commas where a unit stands behind them, 1,200 lb; without one a comma may be a
// decimal comma, and that is asked.
func ParseOne(text string) (*Expr, *diag.Error) {
	if !strings.Contains(text, ",") {
		e, err := Parse(text)
		if err == nil {
			e.one = true
		}
		return e, err
	}
	p, root, err := parse(text, true)
	if err != nil {
		return nil, err
	}
	e := newExpr(text, root)
	if root.kind == nTuple {
		return nil, severalValues(text, root.span, len(root.args))
	}
	e.one = true
	e.grouped = p.ungrouped()
	return e, nil
}

// GroupedPair gives the first two of three components where they look like one number
// grouped by a comma, as the 1,200 of (1,200, 0) N: the text as it would be with one
// number there, and as it is read without the third, which is 0.
func (e *Expr) GroupedPair() (one, two string, ok bool) {
	n := e.root
	if n.kind == nUnit {
		n = n.args[0]
	}
	if n.kind != nTuple || len(n.args) != 3 {
		return "", "", false
	}
	first, second := n.args[0].unsigned(), n.args[1]
	if second.kind == nUnit {
		second = second.args[0]
	}
	a, b := e.text[first.span.Start:first.span.End], e.text[second.span.Start:second.span.End]
	if first.kind != nNumber || second.kind != nNumber || first.span.End+1 != second.span.Start || len(b) != 3 || len(a) > 3 || !allDigits(a) || !allDigits(b) || a[0] == '0' {
		return "", "", false
	}
	one = strings.TrimSpace(e.text[:first.span.End] + e.text[second.span.Start:])
	two = strings.TrimSpace(e.text[:first.span.End] + ", " + e.text[second.span.Start:n.args[1].span.End] + strings.TrimLeft(e.text[n.args[2].span.End:], " "))
	return one, two, true
}

// Percent reads a share of a value, 5 % or 0.5%.
func Percent(text string) (share float64, ok bool) {
	number, ok := strings.CutSuffix(strings.TrimSpace(text), "%")
	if !ok {
		return 0, false
	}
	e, err := Parse(number)
	if err != nil {
		return 0, false
	}
	x, d, ok := e.Literal()
	return x / 100, ok && d == Number
}

// groupsHaveUnits refuses digits in groups without a unit behind them: 1,200 is 1200
// to one reader and 1.2 to another.
func (p *parser) groupsHaveUnits() *diag.Error {
	for i, t := range p.toks {
		if next := p.at(i + 1).kind; next == tRange || next == tPlusMinus { // 2,000 .. 4,000 lb: of one unit
			i += 2
		}
		if p.at(i+1).kind == tMinus && p.tight(i+1) && p.unitAt(i+2, true) { // 1,200-lb, which says so itself
			i++
		}
		if !t.grouped || p.at(i+1).mark || p.unitAt(i+1, true) {
			continue
		}
		if next := p.at(i + 1); next.kind == tName { // a unit that is spelt in another way
			if e := unknownUnit(diag.Between(next.start, next.end), p.text[next.start:next.end], nil); e.Hint != "" {
				return e
			}
		}
		text := strings.TrimSpace(p.text)
		at := strings.Index(p.text, text)
		if more := p.at(i + 2); p.at(i+1).kind == tComma && more.whole && more.start == t.end+1 { // 1,234,56
			t.end = more.end
		}
		number := p.text[t.start:t.end]
		with := func(mark string) string {
			k := strings.LastIndex(number, ",")
			return p.text[at:t.start] + strings.ReplaceAll(number[:k], ",", "") + mark + number[k+1:] + p.text[t.end:at+len(text)]
		}
		e := diag.At(diag.Between(at, at+len(text)), text+" can be read two ways", fmt.Sprintf("%s or %s", with(""), with(".")))
		if _, grouped := ungroup(number, ','); grouped && strings.Count(number, ",") > 1 || strings.Contains(number, ".") { // no decimal comma
			e.Msg, e.Hint = text+" has commas between its digits and no unit", with("")
		}
		return e
	}
	return nil
}

// ungrouped is the text without the commas between digits, "" where there are none.
func (p *parser) ungrouped() string {
	var out strings.Builder
	from := 0
	for _, t := range p.toks {
		if t.grouped {
			out.WriteString(p.text[from:t.start] + strings.ReplaceAll(p.text[t.start:t.end], ",", ""))
			from = t.end
		}
	}
	if from == 0 {
		return ""
	}
	return strings.TrimSpace(out.String() + p.text[from:])
}

// severalValues says that commas make several values of what is to be one.
func severalValues(text string, at diag.Span, n int) *diag.Error {
	text = strings.TrimSpace(text)
	before, after, _ := strings.Cut(text, ",")
	number := strings.TrimLeft(before, "+-−")
	sign := before[:len(before)-len(number)]
	end := digits(after, 0)
	leading := len(number) > 1 && number[0] == '0'
	// 12,00 and 1,20 may be a slip of a group, or have a decimal comma; so has 01,200.
	if allDigits(number) && number != "0" && len(number) <= 3 && (end == 2 || end == 3 && leading) && !strings.ContainsAny(after[end:], ",.") {
		number = strings.TrimLeft(number, "0")
		if number == "" {
			number = "0"
		}
		return diag.At(at, text+" can be read two ways", fmt.Sprintf("%[1]s%[2]s%[3]s or %[1]s%[2]s.%[3]s", sign, number, after))
	}
	return diag.At(at, fmt.Sprintf("expected one value, but %s is %s", text, say.Number(n)), oneComma(text))
}

// oneComma is what to try where a comma makes two values of one, most likely a
// decimal comma: 6.0 for 6,0, and 1234.5 N for 1.234,5 N. Only where nothing else
// can be meant is it given.
func oneComma(text string) string {
	before, after, _ := strings.Cut(strings.TrimSpace(text), ",")
	number := strings.TrimLeft(before, "+-−")
	sign := before[:len(before)-len(number)]
	whole, grouped := ungroup(number, '.')
	if !grouped {
		whole, grouped = ungroup(strings.NewReplacer("\u00a0", " ", "\u2009", " ", "\u202f", " ").Replace(number), ' ')
	}
	end := digits(after, 0)
	// 1,200 may be either, and 1,2000 a slip.
	either := !grouped && end >= 3 && len(number) <= 3 && !strings.HasPrefix(number, "0")
	if !grouped && !allDigits(number) || either || end == 0 || strings.ContainsAny(after[end:], ",.") {
		return ""
	}
	return sign + whole + "." + after
}
