package tutor

import (
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"

	"trivet/mechanics/diag"
	"trivet/mechanics/problem"
)

// plain writes characters as the readers know them: people paste others. The longest that
// fits is taken.
var plain = [][2]string{{"−", "-"}, {"–", "-"}, {"·", "*"}, {"⋅", "*"}, {"×", " x "}, {"sum ", "Σ"}, {"∑ ", "Σ"}, {"∑", "Σ"}, {"Σ ", "Σ"}, {"\t", " "}, {"\u00a0", " "}}

// cleaned is an entry in plain characters, and where each of its bytes, and its end, stands
// in what was typed.
func cleaned(text string) (string, []int) {
	out, at := make([]byte, 0, len(text)), make([]int, 0, len(text)+1)
	for i := 0; i < len(text); {
		from, to := text[i:i+1], text[i:i+1]
		for _, p := range plain {
			if strings.HasPrefix(text[i:], p[0]) && !(p[0] == "sum " && i > 0 && letter(text[i-1])) {
				from, to = p[0], p[1]
				break
			}
		}
		for k := range len(to) {
			out, at = append(out, to[k]), append(at, i+min(k, len(from)-1))
		}
		i += len(from)
	}
	return string(out), append(at, len(text))
}

var (
	cutHead    = regexp.MustCompile(`^cut\s+(.+?)\s*:(.*)$`)
	vectorHead = regexp.MustCompile(`^([ruF])\s+("[^"]+"|[^\s=(+*/-][^\s=(]*)\s*=(.*)$`)
	momentHead = regexp.MustCompile(`^M\s+("[^"]+"|[^\s=(+*/-][^\s=(]*)\s+("[^"]+"|[^\s=(+*/-][^\s=(]*)\s*=(.*)$`)
	lengthHead = regexp.MustCompile(`^\|\s*r\s+("[^"]+"|[^\s|]+)\s*\|\s*=(.*)$`)
	ownHead    = regexp.MustCompile(`^(\w+)\s*=\s*u\s+(\S+)\s+x\s+u\s+(\S+)\s*=(.*)$`)
)

// judge reads an entry by its form and judges it. The form decides before any name does: a
// word alone before = is a name of the sheet, so that a line called r reads as itself.
func (t *Practice) judge(text string) Judgement {
	s, at := cleaned(text)
	in := len(s) - len(strings.TrimLeft(s, " "))
	j := t.form(strings.TrimRight(s[in:], " "))
	if j.Error != nil {
		e := *j.Error
		place := func(i int) int { return at[min(max(i+in, 0), len(s))] }
		e.Span = diag.Between(place(e.Span.Start), place(e.Span.End))
		j.Error = &e
	}
	return j
}

// maxLength and maxCut bound an entry in characters, maxTerms an equation in terms, so that
// each is judged at once: far more than a sum on one body, or its forces, takes on paper.
const maxLength, maxCut, maxTerms = 400, 4000, 60

func (t *Practice) form(s string) Judgement {
	switch n := utf8.RuneCountInString(s); {
	case n > maxLength && !strings.HasPrefix(s, "cut "), n > maxCut:
		return unread(NoKind, diag.New("the line has "+strconv.Itoa(n)+" characters, which is too long to be judged", "one sum at a time, such as "+t.claimExample()))
	case s == "":
		return unread(NoKind, diag.New("the line is empty", "an equation, such as "+t.claimExample()))
	case cutHead.MatchString(s):
		return t.freeBody(cutHead.FindStringSubmatch(s))
	case strings.HasPrefix(s, "cut ") || s == "cut":
		return unread(FreeBody, diag.At(diag.Whole(s), "the forces on the free body are missing", "cut "+t.bodyName()+": and the names of all forces on it"))
	}
	if head, rest, ok := strings.Cut(s, ":"); ok {
		c, err := t.claim(head)
		if err != nil {
			return unread(Equation, err)
		}
		return t.written(rest, len(head)+1, c)
	}
	if m := ownHead.FindStringSubmatch(s); m != nil {
		return t.ownVector(m[1], m[2], m[3], m[4])
	}
	if m := vectorHead.FindStringSubmatch(s); m != nil {
		return t.about(unquoted(m[2]), t.vectorOf(m[1], unquoted(m[2]), m[3], len(s)-len(m[3])))
	}
	if m := momentHead.FindStringSubmatch(s); m != nil {
		return t.about(unquoted(m[2]), t.momentOf(unquoted(m[1]), unquoted(m[2]), m[3], len(s)-len(m[3])))
	}
	if m := lengthHead.FindStringSubmatch(s); m != nil {
		return t.lengthOf(unquoted(m[1]), m[2], len(s)-len(m[2]))
	}
	if !strings.Contains(s, "=") {
		return t.verdict(s)
	}
	left, right, _ := strings.Cut(s, "=")
	if q, err := problem.ParseQuery(t.Problem, unquoted(strings.TrimSpace(left))); err == nil && !strings.Contains(right, "=") && t.constant(q, right) {
		if texts, _ := t.readings(right); len(texts) > 1 { // F = 0.3 N of a contact N
			for _, text := range texts[1:] {
				if w, err := t.read(left+"="+text, anySum); err == nil && t.holds(t.claims(w, nil)) {
					return t.equationOf(t.claims(w, nil))
				}
			}
		}
		return t.valueOf(q, right, len(left)+1)
	}
	return t.written(s, 0, nil)
}

// about says which bodies an entry about a line concerns.
func (t *Practice) about(line string, j Judgement) Judgement {
	if of, ok := t.Problem.Find(line, problem.ALine); ok {
		j.on = t.concerned(of)
	}
	return j
}

func unquoted(s string) string { return strings.Trim(s, `"`) }

func unread(k Kind, err *diag.Error) Judgement {
	return Judgement{Kind: k, Verdict: Unreadable, Says: err.Text(), Error: err}
}

func (t *Practice) bodyName() string {
	if len(t.Problem.Bodies) > 0 {
		return t.Problem.Bodies[0].Name
	}
	return "beam"
}

// written reads an equation behind its claim, if it has one, and judges it.
func (t *Practice) written(text string, at int, claim *sum) Judgement {
	sort := anySum
	if claim != nil {
		sort = forceSum
		if claim.moment {
			sort = momentSum
		}
	}
	texts, double := t.readings(text)
	var typed written
	for i, text := range texts {
		read, err := t.read(text, sort)
		switch {
		case err != nil && i == 0:
			return unread(Equation, moved(err, at))
		case err != nil:
			continue
		}
		w := t.claims(read, claim)
		if len(texts) == 1 || t.holds(w) {
			return t.equationOf(w)
		}
		if i == 0 {
			typed = w
		}
	}
	entered := len(t.equation)
	if j := t.equationOf(typed); j.Mistake != nil {
		return j
	}
	t.equation = t.equation[:entered]
	return unread(Equation, moved(diag.At(double, strconv.Quote(text[double.Start:double.End])+" can be read two ways", "a * before the name of the force, and no unit behind a number in "+t.Problem.Units.Force.Symbol), at))
}

// claims is an equation with the sum that it is said to be.
func (t *Practice) claims(w written, claim *sum) written {
	if claim != nil {
		w.sums = []sum{*claim}
		return w
	}
	w.named = t.relation(w)
	if other, err := t.read(w.text, momentSum); err == nil && !w.moment {
		w.other = &other
	}
	return w
}

// holds tells whether an equation is right.
func (t *Practice) holds(w written) bool {
	if len(w.sums) > 0 {
		return w.fits(w.sums[0].exact(t.forces, len(t.Problem.Unknowns)))
	}
	return t.identity(w) || t.followsAsRead(w)
}

var relationForm = regexp.MustCompile(`^\s*(?:[0-9.]+\s*\*?\s*)?[\p{L}_]\w*\s*=\s*(?:-?[0-9.]+\s*\*?\s*)?(?:[\p{L}_]\w*|-?[0-9.]+(?:\s*[\p{L}*/^ ]+)?)\s*$`)

// relation tells that an equation only says what an unknown is: 2*T1 = 5 kN, T1 = T2.
func (t *Practice) relation(w written) bool {
	n, used := len(t.Problem.Unknowns), 0
	for _, c := range w.c[:n] {
		if c != 0 {
			used++
		}
	}
	return (used == 1 || used == 2 && w.c[n] == 0) && relationForm.MatchString(w.text)
}

var factor = regexp.MustCompile(`\*\s*([\pL_][\pL\pN_]*)`)

// constant tells whether a text holds a value and no name: what stands behind the name of a
// result is a value then.
func (t *Practice) constant(q problem.Query, text string) bool {
	for _, m := range factor.FindAllStringSubmatch(text, -1) {
		if t.isName(m[1]) {
			return false
		}
	}
	if _, err := t.Problem.ReadWritten(q, text, t.Problem.Units.For(q.Dim), false); err == nil {
		return true
	}
	if strings.Contains(text, `"`) {
		return false // a line's name
	}
	for _, w := range wordsOf(strings.NewReplacer("*", " ", "+", " ", "-", " ", "/", " ", "(", " ", ")", " ").Replace(text)) {
		if t.isName(w.text) {
			return false
		}
	}
	return true
}
