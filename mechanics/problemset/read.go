package problemset

import (
	"cmp"
	"fmt"
	"math"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode"

	"trivet/mechanics/diag"
	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/units"
)

const (
	rulesTable   = "rules"
	problemTable = "problems"
)

// What a set may say at most: far above any use, so that sums of points stay exact
// enough to print and a number of hints is one that a person asks for.
const (
	maxPoints = 1000
	maxHints  = 99
)

// usualHints are those that may be asked for where a set says nothing.
const usualHints = 3

// key is what may stand in a table: how its text is read, and an example.
type key[T any] struct {
	name, example string
	read          func(to *T, text string, loc *time.Location) *diag.Error
}

// The keys of a set, never written to.
var (
	topKeys = []key[Set]{
		{"title", `"Week 4: bodies in the plane"`, func(s *Set, text string, _ *time.Location) *diag.Error {
			s.Title = text
			return nil
		}},
		{"opens", exampleOpens, func(s *Set, text string, loc *time.Location) (err *diag.Error) {
			s.Opens, err = moment(text, exampleOpens, loc)
			return err
		}},
		{"closes", exampleCloses, func(s *Set, text string, loc *time.Location) (err *diag.Error) {
			s.Closes, err = moment(text, exampleCloses, loc)
			return err
		}},
	}
	ruleKeys = []key[Set]{
		{"hints", "3", func(s *Set, text string, _ *time.Location) *diag.Error {
			n, err := strconv.Atoi(text)
			if err != nil || n < 0 || n > maxHints {
				return diag.New(fmt.Sprintf("hints is a whole number from 0 to %d, not %q", maxHints, text), "3")
			}
			s.Rules.Hints = n
			return nil
		}},
		{"show", `"closed"`, func(s *Set, text string, _ *time.Location) *diag.Error {
			return word("show", text, &s.Rules.Show, ShowAnswered, ShowClosed, ShowNever)
		}},
		{"late", `"half"`, func(s *Set, text string, _ *time.Location) *diag.Error {
			return word("late", text, &s.Rules.Late, LateNo, LateHalf, LateFull)
		}},
	}
	problemKeys = []key[Problem]{
		{"sheet", `"beam.toml"`, func(p *Problem, text string, _ *time.Location) *diag.Error {
			switch {
			case text == "":
				return diag.New("the name of the sheet is missing", "beam.toml")
			case !filepath.IsLocal(filepath.FromSlash(text)) || path.Clean(text) == ".":
				return diag.New(fmt.Sprintf("the sheet %q is outside the folder of the set", text), "a sheet beside the set, or in a folder there")
			}
			p.Sheet = path.Clean(text)
			return nil
		}},
		{"points", "4", func(p *Problem, text string, _ *time.Location) *diag.Error {
			v, err := strconv.ParseFloat(text, 64)
			if err != nil || !(v > 0 && v <= maxPoints) || math.IsNaN(v) {
				return diag.New(fmt.Sprintf("points is a number greater than zero and at most %d, not %q", maxPoints, text), "4")
			}
			p.Points = v
			return nil
		}},
		{"variant", "true", func(p *Problem, text string, _ *time.Location) *diag.Error {
			if text != "true" && text != "false" {
				return diag.New(fmt.Sprintf("variant cannot be %q", text), "true or false")
			}
			p.Variant = text == "true"
			return nil
		}},
		{"needs", `"equations values"`, func(p *Problem, text string, _ *time.Location) (err *diag.Error) {
			p.Needs, err = needs(text)
			return err
		}},
	}
)

const (
	exampleOpens  = `"2026-12-01 08:00"`
	exampleCloses = `"2026-12-08 23:59"`
)

// reader gathers a set and what is wrong with its text.
type reader struct {
	s    *sheet.Sheet
	loc  *time.Location
	errs []*diag.Error
}

// Read reads a set; file is its path, by which it goes and beside which its sheets lie.
// Times without an offset are those of loc. The errors are in the order of the text; a
// set with any of them is not to be used.
func Read(s *sheet.Sheet, file string, loc *time.Location) (*Set, []*diag.Error) {
	r := &reader{s: s, loc: loc}
	set := &Set{Path: file, Rules: Rules{Hints: usualHints, Late: LateNo}}
	for _, t := range s.Tables {
		switch t.Name {
		case "":
			rows(r, t, topKeys, set)
		case rulesTable:
			rows(r, t, ruleKeys, set)
		case problemTable:
			r.problems(t, set)
		default:
			r.fail(s.NamePlace(sheet.Ref{Table: t.Name}), diag.New(fmt.Sprintf("unknown table %q of a set", t.Name), suggest(t.Name, []string{rulesTable, problemTable})))
		}
	}
	r.times(set)
	slices.SortStableFunc(r.errs, func(a, b *diag.Error) int { return cmp.Or(a.Line-b.Line, a.Column-b.Column) })
	return set, r.errs
}

func (r *reader) fail(at diag.Place, e *diag.Error) {
	e.Place = at
	r.errs = append(r.errs, e)
}

// rows reads a table whose rows are single values.
func rows[T any](r *reader, t sheet.Table, keys []key[T], to *T) {
	if t.Listed {
		r.fail(r.s.NamePlace(sheet.Ref{Table: t.Name}), diag.New(fmt.Sprintf("%q is a table, not a list of tables", t.Name), "["+t.Name+"]"))
	}
	for _, row := range t.Rows {
		ref := sheet.Ref{Table: t.Name, Row: row.Name}
		k := find(keys, row.Name)
		if k == nil {
			in := " of a set"
			if t.Name != "" {
				in = " in [" + t.Name + "]"
			}
			r.fail(r.s.NamePlace(ref), diag.New(fmt.Sprintf("unknown key %q%s", row.Name, in), suggest(row.Name, namesOf(keys))))
			continue
		}
		c, plain := row.Cell("")
		if !plain {
			r.fail(r.s.NamePlace(ref), single(k.name, k.example))
			continue
		}
		value(r, ref, c, k, to)
	}
}

// value reads the text of a cell. A date without quotes is no text for a sheet, and is
// one here.
func value[T any](r *reader, ref sheet.Ref, c sheet.Cell, k *key[T], to *T) {
	dated := k.example == exampleOpens || k.example == exampleCloses
	if !c.Readable && (!dated || strings.ContainsAny(c.Text, "[{")) {
		r.fail(r.s.Place(ref, diag.Span{}), single(k.name, k.example))
		return
	}
	if err := k.read(to, strings.TrimSpace(c.Text), r.loc); err != nil {
		r.fail(r.s.Place(ref, diag.Whole(c.Text)), err)
	}
}

func single(name, example string) *diag.Error {
	return diag.New(name+" is a single value", name+" = "+example)
}

// problems reads the table of problems.
func (r *reader) problems(t sheet.Table, set *Set) {
	if t.Listed {
		r.fail(r.s.NamePlace(sheet.Ref{Table: t.Name}), diag.New("each problem of a set has a name", `[problems] and below it beam = { sheet = "beam.toml" }`))
		return
	}
	if len(t.Rows) == 0 {
		r.fail(r.s.NamePlace(sheet.Ref{Table: t.Name}), diag.New("the set has no problem", `beam = { sheet = "beam.toml", points = 4 }`))
	}
	for _, row := range t.Rows {
		r.problem(row, set)
	}
}

func (r *reader) problem(row sheet.Row, set *Set) {
	ref := sheet.Ref{Table: problemTable, Row: row.Name}
	if err := named(row.Name, set.Problems); err != nil {
		r.fail(r.s.NamePlace(ref), err)
	}
	p := Problem{Name: row.Name, Points: 1, Needs: []Need{NeedValues}}
	set.Problems = append(set.Problems, p)
	to := &set.Problems[len(set.Problems)-1]
	if c, plain := row.Cell(""); plain {
		try := `{ sheet = "beam.toml", points = 4 }`
		if c.Readable {
			try = "{ sheet = " + strconv.Quote(c.Text) + " }"
		}
		r.fail(r.s.Place(ref, diag.Whole(c.Text)), diag.New(fmt.Sprintf("the problem %q is a row of cells", row.Name), row.Name+" = "+try))
		return
	}
	for _, c := range row.Cells {
		at := sheet.Ref{Table: problemTable, Row: row.Name, Key: c.Key}
		k := find(problemKeys, c.Key)
		if k == nil {
			r.fail(r.s.NamePlace(at), diag.New(fmt.Sprintf("unknown key %q of a problem", c.Key), suggest(c.Key, namesOf(problemKeys))))
			continue
		}
		value(r, at, c, k, to)
	}
	if _, there := row.Cell("sheet"); !there {
		r.fail(r.s.NamePlace(ref), diag.New(fmt.Sprintf("the problem %q names no sheet", row.Name), `sheet = "`+row.Name+`.toml"`))
	}
}

// named says what is wrong with the name of a problem. Files are made of it, and on some
// systems those that differ in case alone are the same.
func named(name string, before []Problem) *diag.Error {
	odd := func(c rune) bool { return !unicode.IsLetter(c) && !unicode.IsDigit(c) && c != '-' && c != '_' }
	if strings.ContainsFunc(name, odd) || strings.HasPrefix(name, "-") {
		return diag.New(fmt.Sprintf("the problem's name %q is not made of letters, digits, - and _ alone", name), "a name such as beam-2")
	}
	for _, p := range before {
		if strings.EqualFold(p.Name, name) {
			return diag.New(fmt.Sprintf("the names %q and %q differ only in capital letters", p.Name, name), "rename one of them")
		}
	}
	return nil
}

// times fills in what depends on whether a set closes, and refuses what cannot be.
func (r *reader) times(set *Set) {
	top, rules := r.s.Table(""), r.s.Table(rulesTable)
	closing, closes := top.Row("closes")
	at := sheet.Ref{Row: "closes"}
	if closes && !set.Closes.IsZero() && !set.Opens.IsZero() && !set.Closes.After(set.Opens) {
		r.fail(r.s.Place(at, diag.Whole(closing.Text(""))), diag.New("the set closes before it opens", "a later time, or the day as 2026-12-08"))
	}
	if show, there := rules.Row("show"); there && set.Rules.Show == ShowClosed && !closes {
		r.fail(r.s.Place(sheet.Ref{Table: rulesTable, Row: "show"}, diag.Whole(show.Text(""))),
			diag.New("the worked solutions open when the set closes, but it has no closing time", "closes = "+exampleCloses))
	}
	if set.Rules.Show == "" {
		if set.Rules.Show = ShowClosed; !closes {
			set.Rules.Show = ShowAnswered
		}
	}
}

// moment reads a date and a time of day, with an offset or in loc.
func moment(text, example string, loc *time.Location) (time.Time, *diag.Error) {
	const day = len(time.DateOnly)
	clean := text
	if len(clean) > day && strings.ContainsRune("Tt", rune(clean[day])) {
		clean = clean[:day] + " " + clean[day+1:]
	}
	if i := strings.LastIndexAny(clean, "+-Zz"); i > day { // "08:00 +01:00"
		clean = strings.TrimRight(clean[:i], " ") + strings.ToUpper(clean[i:])
	}
	for _, layout := range []string{"2006-01-02 15:04", time.DateTime} {
		if t, err := time.Parse(layout+"Z07:00", clean); err == nil {
			return t, nil
		}
		if t, err := time.ParseInLocation(layout, clean, loc); err == nil {
			return t, nil
		}
	}
	if _, err := time.Parse(time.DateOnly, text); err == nil {
		return time.Time{}, diag.New(fmt.Sprintf("%q has no time of day", text), text+example[1+day:len(example)-1])
	}
	return time.Time{}, diag.New(fmt.Sprintf("%q is not a date and a time of day", text), strings.Trim(example, `"`))
}

// needs reads names of needs, apart by blanks or commas.
func needs(text string) (out []Need, err *diag.Error) {
	typed := strings.FieldsFunc(text, func(c rune) bool { return c == ',' || unicode.IsSpace(c) })
	var known []string
	for _, n := range Needs {
		known = append(known, string(n))
	}
	if len(typed) == 0 {
		return nil, diag.New("needs names nothing", say.Or(known...))
	}
	for i, w := range typed {
		switch {
		case !slices.Contains(known, w):
			return nil, diag.New(fmt.Sprintf("needs cannot contain %q", w), suggest(w, known))
		case slices.Contains(typed[:i], w):
			return nil, diag.New(fmt.Sprintf("needs contains %q twice", w), "remove one of them")
		}
	}
	for _, n := range Needs {
		if slices.Contains(typed, string(n)) {
			out = append(out, n)
		}
	}
	return out, nil
}

// word takes one of some words.
func word[T ~string](name, text string, to *T, known ...T) *diag.Error {
	if !slices.Contains(known, T(text)) {
		names := make([]string, len(known))
		for i, k := range known {
			names[i] = string(k)
		}
		return diag.New(fmt.Sprintf("%s cannot be %q", name, text), say.Or(names...))
	}
	*to = T(text)
	return nil
}

func find[T any](keys []key[T], name string) *key[T] {
	if i := slices.IndexFunc(keys, func(k key[T]) bool { return k.name == name }); i >= 0 {
		return &keys[i]
	}
	return nil
}

func namesOf[T any](keys []key[T]) (out []string) {
	for _, k := range keys {
		out = append(out, k.name)
	}
	return out
}

// suggest is the known word that was most likely meant, or all of them.
func suggest(wrong string, known []string) string {
	return cmp.Or(units.Suggest(wrong, known), say.Or(known...))
}
