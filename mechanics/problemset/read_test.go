package problemset

import (
	"fmt"
	"reflect"
	"strings"
	"testing"
	"time"

	"trivet/mechanics/sheet"
)

// here is a zone that is not UTC, so that a time of the host differs from one of the world.
var here = time.FixedZone("here", 2*60*60)

const week = `title = "Week 4: bodies in the plane"
opens = "2026-12-01 08:00"
closes = "2026-12-08 23:59+01:00"

[rules]
hints = 2
show = "answered"
late = "half"

[problems]
beam = { sheet = "beam.toml", points = 4 }
ladder = { sheet = "more/ladder.toml", points = 6.5, variant = true, needs = "values cut, equations" }
`

func parse(t testing.TB, text string) *sheet.Sheet {
	t.Helper()
	s, err := sheet.Parse([]byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func read(t testing.TB, text string) *Set {
	t.Helper()
	set, errs := Read(parse(t, text), "sets/week4.toml", here)
	for _, e := range errs {
		t.Fatal(e.In("week4.toml"))
	}
	return set
}

func TestRead(t *testing.T) {
	got := read(t, week)
	want := &Set{
		Path: "sets/week4.toml", Title: "Week 4: bodies in the plane",
		Opens:  time.Date(2026, 12, 1, 8, 0, 0, 0, here),
		Closes: time.Date(2026, 12, 8, 22, 59, 0, 0, time.UTC),
		Rules:  Rules{Hints: 2, Show: ShowAnswered, Late: LateHalf},
		Problems: []Problem{
			{Name: "beam", Sheet: "beam.toml", Points: 4, Needs: []Need{NeedValues}},
			{Name: "ladder", Sheet: "more/ladder.toml", Points: 6.5, Variant: true, Needs: []Need{NeedCut, NeedEquations, NeedValues}},
		},
	}
	if !got.Opens.Equal(want.Opens) || !got.Closes.Equal(want.Closes) {
		t.Errorf("open from %v to %v, want %v to %v", got.Opens, got.Closes, want.Opens, want.Closes)
	}
	got.Opens, got.Closes = want.Opens, want.Closes
	if !reflect.DeepEqual(got, want) {
		t.Errorf("%+v, want\n%+v", got, want)
	}
	if got.Name() != "week4" {
		t.Errorf("the set goes by %q", got.Name())
	}
}

// What may be left out has a usual value; worked solutions open at once where there is no
// closing time to wait for.
func TestUsual(t *testing.T) {
	open := read(t, "[rules]\nlate = \"no\"\n[problems]\na = { sheet = \"a.toml\" }\n")
	if want := (Rules{Hints: usualHints, Show: ShowAnswered, Late: LateNo}); open.Rules != want {
		t.Errorf("%+v, want %+v", open.Rules, want)
	}
	if p := open.Problems[0]; p.Points != 1 || p.Variant || !reflect.DeepEqual(p.Needs, []Need{NeedValues}) {
		t.Errorf("%+v", p)
	}
	closing := read(t, "closes = 2026-12-08T23:59:00\n[problems.a]\nsheet = \"a.toml\"\n")
	if closing.Rules.Show != ShowClosed {
		t.Errorf("%+v", closing.Rules)
	}
}

func TestMoments(t *testing.T) {
	utc := time.Date(2026, 12, 1, 8, 0, 0, 0, time.UTC)
	for _, c := range []struct {
		text string
		want time.Time
	}{
		{"2026-12-01 08:00", utc.Add(-2 * time.Hour)},
		{"2026-12-01T08:00", utc.Add(-2 * time.Hour)},
		{"2026-12-01 08:00:30", utc.Add(-2*time.Hour + 30*time.Second)},
		{"2026-12-01 08:00Z", utc},
		{"2026-12-01t08:00:00z", utc},
		{"2026-12-01 08:00 -05:00", utc.Add(5 * time.Hour)},
		{"2026-12-01 08:00+05:30", utc.Add(-330 * time.Minute)},
	} {
		if got, err := moment(c.text, exampleOpens, here); err != nil || !got.Equal(c.want) {
			t.Errorf("%s is %v (%v), want %v", c.text, got, err, c.want)
		}
	}
}

// A sheet and a set are told apart by what is in them.
func TestIs(t *testing.T) {
	for text, want := range map[string]bool{
		week: true, "[problems]\n": true, "[[problems]]\n": true, "problems = {}\n": true, "problems.a = 1\n": true,
		"": false, "problems = 3\n": false, "title = \"problems\"\n[points]\nA = \"0, 0\"\n": false, "[given]\nproblems = 1\n": false,
	} {
		if got := Is(parse(t, text)); got != want {
			t.Errorf("%q is a set: %v, want %v", text, got, want)
		}
	}
}

// Each thing that a person can type wrongly, and what is said of it.
func TestFaults(t *testing.T) {
	const whole = "[problems]\na = { sheet = \"a.toml\" }\n"
	const closes = "closes = \"2026-12-08 23:59\"\n"
	problem := func(cells string) string { return "[problems]\na = { sheet = \"a.toml\", " + cells + " }\n" }
	rule := func(line string) string { return closes + "[rules]\n" + line + "\n" + whole }
	for _, c := range []struct{ text, want string }{
		{"titel = \"a\"\n" + whole, `1:1: unknown key "titel" of a set. Try: title`},
		{"statement = \"a\"\n" + whole, `1:1: unknown key "statement" of a set. Try: title, opens or closes`},
		{"title = [1]\n" + whole, `1:9: title is a single value. Try: title = "Week 4: bodies in the plane"`},
		{"title = { a = 1 }\n" + whole, `1:1: unknown table "title" of a set. Try: rules or problems`},
		{"opens = \"1 December\"\n" + whole, `1:10: "1 December" is not a date and a time of day. Try: 2026-12-01 08:00`},
		{"opens = \"2026-02-30 08:00\"\n" + whole, `1:10: "2026-02-30 08:00" is not a date and a time of day. Try: 2026-12-01 08:00`},
		{"opens = \"\"\n" + whole, `1:10: "" is not a date and a time of day. Try: 2026-12-01 08:00`},
		{"opens = 2026-12-03\n" + whole, `1:9: "2026-12-03" has no time of day. Try: 2026-12-03 08:00`},
		{"closes = \"2026-12-03\"\n" + whole, `1:11: "2026-12-03" has no time of day. Try: 2026-12-03 23:59`},
		{"closes = [2026-12-03]\n" + whole, `1:10: closes is a single value. Try: closes = "2026-12-08 23:59"`},
		{"opens = \"2026-12-08 23:59\"\n" + closes + whole, `2:11: the set closes before it opens. Try: a later time, or the day as 2026-12-08`},

		{rule("hint = 3"), `3:1: unknown key "hint" in [rules]. Try: hints`},
		{rule("colour = 3"), `3:1: unknown key "colour" in [rules]. Try: hints, show or late`},
		{rule("hints = \"three\""), `3:10: hints is a whole number from 0 to 99, not "three". Try: 3`},
		{rule("hints = 2.5"), `3:9: hints is a whole number from 0 to 99, not "2.5". Try: 3`},
		{rule("hints = -1"), `3:9: hints is a whole number from 0 to 99, not "-1". Try: 3`},
		{rule("hints = 100"), `3:9: hints is a whole number from 0 to 99, not "100". Try: 3`},
		{rule("hints = { beam = 3 }"), `3:1: hints is a single value. Try: hints = 3`},
		{rule("show = \"always\""), `3:9: show cannot be "always". Try: answered, closed or never`},
		{rule("late = \"third\""), `3:9: late cannot be "third". Try: no, half or full`},
		{rule("late = true"), `3:8: late cannot be "true". Try: no, half or full`},
		{"[rules]\nshow = \"closed\"\n" + whole, `2:9: the worked solutions open when the set closes, but it has no closing time. Try: closes = "2026-12-08 23:59"`},
		{"[[rules]]\nhints = 3\n" + whole, `1:3: "rules" is a table, not a list of tables. Try: [rules]`},
		{"[rule]\n" + whole, `1:2: unknown table "rule" of a set. Try: rules`},
		{"[points]\nA = \"0, 0\"\n" + whole, `1:2: unknown table "points" of a set. Try: rules or problems`},

		{"[problems]\n", `1:2: the set has no problem. Try: beam = { sheet = "beam.toml", points = 4 }`},
		{"[[problems]]\nsheet = \"a.toml\"\n", `1:3: each problem of a set has a name. Try: [problems] and below it beam = { sheet = "beam.toml" }`},
		{"[problems]\na = \"a.toml\"\n", `2:6: the problem "a" is a row of cells. Try: a = { sheet = "a.toml" }`},
		{"[problems]\na = [\"a.toml\"]\n", `2:5: the problem "a" is a row of cells. Try: a = { sheet = "beam.toml", points = 4 }`},
		{"[problems]\na = {}\n", `2:1: the problem "a" names no sheet. Try: sheet = "a.toml"`},
		{"[problems]\na = { points = 4 }\n", `2:1: the problem "a" names no sheet. Try: sheet = "a.toml"`},
		{"[problems]\na = { sheet = \"\" }\n", `2:16: the name of the sheet is missing. Try: beam.toml`},
		{"[problems]\na = { sheet = \"../a.toml\" }\n", `2:16: the sheet "../a.toml" is outside the folder of the set. Try: a sheet beside the set, or in a folder there`},
		{"[problems]\na = { sheet = \"/etc/passwd\" }\n", `2:16: the sheet "/etc/passwd" is outside the folder of the set. Try: a sheet beside the set, or in a folder there`},
		{"[problems]\na = { sheet = \".\" }\n", `2:16: the sheet "." is outside the folder of the set. Try: a sheet beside the set, or in a folder there`},
		{"[problems]\n\"a b\" = { sheet = \"a.toml\" }\n", `2:1: the problem's name "a b" is not made of letters, digits, - and _ alone. Try: a name such as beam-2`},
		{"[problems]\n-a = { sheet = \"a.toml\" }\n", `2:1: the problem's name "-a" is not made of letters, digits, - and _ alone. Try: a name such as beam-2`},
		{"[problems]\na = { sheet = \"a.toml\" }\nA = { sheet = \"a.toml\" }\n", `3:1: the names "a" and "A" differ only in capital letters. Try: rename one of them`},
		{problem("point = 4"), `2:25: unknown key "point" of a problem. Try: points`},
		{problem("weight = 4"), `2:25: unknown key "weight" of a problem. Try: sheet, points, variant or needs`},
		{problem("points = 0"), `2:34: points is a number greater than zero and at most 1000, not "0". Try: 4`},
		{problem("points = nan"), `2:34: points is a number greater than zero and at most 1000, not "nan". Try: 4`},
		{problem("points = \"4 N\""), `2:35: points is a number greater than zero and at most 1000, not "4 N". Try: 4`},
		{problem("points = 1e9"), `2:34: points is a number greater than zero and at most 1000, not "1e9". Try: 4`},
		{problem("points = [4]"), `2:34: points is a single value. Try: points = 4`},
		{problem("variant = \"yes\""), `2:36: variant cannot be "yes". Try: true or false`},
		{problem("needs = \"\""), `2:34: needs names nothing. Try: cut, vectors, equations or values`},
		{problem("needs = \"value\""), `2:34: needs cannot contain "value". Try: values`},
		{problem("needs = \"all\""), `2:34: needs cannot contain "all". Try: cut, vectors, equations or values`},
		{problem("needs = \"cut cut\""), `2:34: needs contains "cut" twice. Try: remove one of them`},
		{"[rules]\nhints = x9\n", `2:9: this value is not in quotes. Try: "..."`},

		{"[problems]\na = { sheet = \"\", points = 0 }\n[rule]\n", `2:16: the name of the sheet is missing. Try: beam.toml` + "\n" +
			`2:28: points is a number greater than zero and at most 1000, not "0". Try: 4` + "\n" + `3:2: unknown table "rule" of a set. Try: rules`},
	} {
		var got []string
		if s, err := sheet.Parse([]byte(c.text)); err != nil {
			got = append(got, err.Error())
		} else {
			_, errs := Read(s, "a.toml", here)
			for _, e := range errs {
				got = append(got, e.Error())
			}
		}
		if all := strings.Join(got, "\n"); all != c.want {
			t.Errorf("%s\nsays\n%s\nwant\n%s", c.text, all, c.want)
		}
	}
}

// Whatever a text holds, reading it ends in a set that may be used or in errors that
// stand in the text.
func FuzzRead(f *testing.F) {
	for _, text := range []string{week, "[problems]\n", "[[problems]]\n", "problems = {}", "opens = 2026-12-01T08:00:00Z\n[problems]\na.sheet = 'x'\n", "closes = \"\xc3\xbc\"\n"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		s, err := sheet.Parse([]byte(text))
		if err != nil {
			return
		}
		set, errs := Read(s, "week4.toml", here)
		for _, e := range errs {
			if e.Line < 1 || e.Line > strings.Count(text, "\n")+1 || e.Msg == "" || e.Hint == "" {
				t.Fatalf("%+v", e)
			}
		}
		if len(errs) > 0 || !Is(s) {
			return
		}
		if len(set.Problems) == 0 || set.Rules.Show == "" || set.Rules.Late == "" || !set.Closes.IsZero() && !set.Closes.After(set.Opens) {
			t.Fatalf("%+v", set)
		}
		for _, p := range set.Problems {
			if p.Sheet == "" || p.Name == "" || !(p.Points > 0) || len(p.Needs) == 0 {
				t.Fatalf("%+v", p)
			}
			if got := set.Points(p, Result{Done: time.Now(), Hints: 1}); !(got >= 0 && got <= p.Points) {
				t.Fatalf("%g of %g points", got, p.Points)
			}
		}
	})
}

func Example() {
	s, _ := sheet.Parse([]byte(week))
	set, _ := Read(s, "sets/week4.toml", time.UTC)
	fmt.Println(set.Name(), len(set.Problems), set.File(set.Problems[0]))
	// Output: week4 2 sets/beam.toml
}
