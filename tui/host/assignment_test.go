package host

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	gossh "golang.org/x/crypto/ssh"

	"trivet/tui/host/door"
	"trivet/tui/record"
)

// ranged is the lamp with a load that differs from person to person.
var ranged = strings.Replace(lamp, `W = "60 N"`, `W = { value = "60 N", range = "41 N .. 99 N", step = "1 N" }`, 1)

// week writes a set of the lamp for everyone, and of one of one's own, with lines of its own
// at its head.
func week(t testing.TB, head string) (file string) {
	t.Helper()
	folder := t.TempDir()
	write(t, filepath.Join(folder, "lamp.toml"), lamp)
	write(t, filepath.Join(folder, "own.toml"), ranged)
	return write(t, filepath.Join(folder, "week.toml"), "title = \"Week 4\"\n"+head+`
[problems]
lamp = { sheet = "lamp.toml", points = 4 }
own = { sheet = "own.toml", points = 6, variant = true }
`)
}

// A visitor of a set sees its problems and practises them; the work is kept by the key,
// under whatever name, and goes on at the next visit.
func TestVisitorsPractiseASet(t *testing.T) {
	state, file := t.TempDir(), week(t, "")
	a, b := key(t), key(t)
	list := keys(t, a)
	r := start(t, Settings{Set: file, State: state, Watchers: list}, nil)
	g := r.visit(a, 80, 24)
	g.sees("Week 4", "Lamp on two cables", "4 points", "your own work, kept with the host; ctrl+q: leave")
	g.keys("\r")
	g.sees("practice: 0 of 2 independent equations")
	g.keys("ΣFx: 0.6 T2 - 0.6 T1 = 0\r")
	g.sees("1 of 2", "This is ΣFx on D.")
	g.keys("T1 = 36 N\r")
	g.sees("!  T1 = 36 N")
	if screen := g.screen(); strings.Contains(screen, "37.5") {
		t.Errorf("the answer shows:\n%s", screen)
	}
	store, _, err := record.Open(record.File(state))
	if err != nil {
		t.Fatal(err)
	}
	defer store.Close()
	if err := store.Rename("key1", "A. Student"); err != nil { // while it is worked on
		t.Fatal(err)
	}
	g.keys("T1 = 37.5 N\rT2 = 37.5 N\r")
	g.sees("done")
	g.keys(quit)
	g.leaves()
	g.sees("trivet: good-bye; your work is kept")
	events, err := store.Events("A. Student")
	if err != nil || len(events) != 5 || events[4].What != record.Done || events[4].Points != 4 {
		t.Errorf("the record has %+v, %v", events, err)
	}
	if known, err := store.Persons(); err != nil || !slices.Equal(known, []string{"A. Student"}) {
		t.Errorf("%q, %v", known, err)
	}
	r.end()

	again := start(t, Settings{Set: file, State: state}, nil)
	ga, gb := again.visit(a, 80, 24), again.visit(b, 80, 24)
	ga.sees("done, 4 of 4 points")
	gb.sees("4 points")
	// Each has values of its own.
	weight := func(g *guest) string {
		g.keys("\x1b[B\r")
		g.sees("practice: 0 of 2")
		for line := range strings.Lines(g.screen()) {
			if _, w, ok := strings.Cut(line, "W: "); ok {
				return strings.Fields(w)[0]
			}
		}
		return ""
	}
	if wa, wb := weight(ga), weight(gb); wa == "" || wa == wb {
		t.Errorf("both have %q N", wa)
	}
	// A cut line loses nothing.
	gb.keys("ΣFx: 0.6 T2 - 0.6 T1 = 0\r")
	gb.sees("1 of 2")
	_ = gb.client.Close()
	gb = again.visit(b, 80, 24)
	gb.sees("1 entry")
}

// ranWith is a host on a set, whose commands say what they would do.
func ranWith(t *testing.T, head string) (r *running, client *gossh.Client, says func(command string) string) {
	t.Helper()
	state, file := t.TempDir(), week(t, head)
	r = start(t, Settings{Set: file, State: state}, func(_ context.Context, args []string, in io.Reader, out, _ io.Writer) int {
		text, _ := io.ReadAll(in)
		fmt.Fprint(out, strings.NewReplacer(state, "STATE", file, "SET").Replace(strings.Join(args, " ")), " of ", len(text))
		return 0
	})
	k := key(t)
	client, err := r.dial(k, "")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { client.Close() })
	print := gossh.FingerprintSHA256(k.PublicKey())
	return r, client, func(command string) string {
		t.Helper()
		got := r.runs(client, command, bytes.NewReader([]byte(lamp)))
		return strings.ReplaceAll(got.out+strings.TrimSuffix(strings.TrimPrefix(got.errs, "trivet: "), "\n"), print, "KEY")
	}
}

// moments of a set: one that is open, one that is still to come, and one that is over.
const (
	opened  = "opens = \"2020-01-01 08:00\"\ncloses = \"2999-12-08 23:59\"\n"
	to      = "opens = \"2999-12-01 08:00\"\n"
	over    = "closes = \"2020-12-08 23:59\"\n"
	allowed = ". Try: `page lamp --mine --as pdf`, the same with --task, `page - --task --as pdf`, record, new or schema"
)

// While a set is open, none of its visitors' commands gives an answer, and each that is off
// says why and what there is.
func TestCommandsOfASet(t *testing.T) {
	off := func(verb string) string {
		return verb + ` is off while the set "Week 4" is open, since it gives answers` + allowed
	}
	const solved = "solve - of 313"
	for head, commands := range map[string]map[string]string{
		opened: {
			"solve -": off("solve"), "solve - --ask T1": off("solve"), "check -": off("check"), "sweep - W": off("sweep"),
			"page - --as md": off("page"), "page - --as md --field": off("page"), "page - --as md --by --task": off("page"), "solve": off("solve"),
			"page - --task --as md":                 "page - --task --as=md --output=- of 313",
			"page lamp --mine --as md":              "page SET --problem=lamp --person=KEY --state=STATE --mine --as=md --output=- of 0",
			"page own --task --as pdf --by 'A. B.'": "page SET --problem=own --person=KEY --state=STATE --task --as=pdf --by=A. B. --output=- of 0",
			"page lamp --as md":                     "the worked solution opens when the set closes, on 8 December 2999 at 23:59. Try: `page lamp --mine --as pdf`, or --task",
			"page lump --mine --as md":              "the set has no problem lump. Try: lamp, own",
			"page --mine":                           "the name of a problem is missing. Try: `page NAME --mine --as pdf > my.pdf`",
			"page lamp own --mine":                  "page takes no argument own. Try: `page NAME --mine --as pdf > my.pdf`",
			"page lamp --person Ada":                "unknown option --person. Try: --as, --by, --date, --mine or --task",
			"page - --task --person Ada":            "unknown option --person. Try: --as, --by, --date, --field or --task",
			"record":                                "record --state=STATE -- KEY of 0",
			"record --format csv":                   "record --state=STATE --format=csv -- KEY of 0",
			"record Ada":                            "record takes no argument Ada. Try: `record --format csv > my.csv`",
			"record --forget Ada":                   "unknown option --forget. Try: --format",
			"record --state=/":                      "unknown option --state=/. Try: --format",
			"new - --from blank":                    "new - --from=blank of 0",
			"schema":                                "schema of 0",
			"try lamp":                              "the verbs here are page, record, new and schema. Try: `page NAME --mine --as pdf > my.pdf`",
			"page - --task --as 'pdf":               "a quote in the command is not closed",
		},
		to: {
			"solve -": solved, "page own --task --as md": `the set "Week 4" opens on 1 December 2999 at 08:00`,
			"page - --as md": "page - --as=md --output=- of 313",
		},
		over: {
			"solve -": solved, "page lamp --as md": "page SET --problem=lamp --person=KEY --state=STATE --as=md --output=- of 0",
		},
		"[rules]\nshow = \"never\"\n":    {"page lamp --as md": "this set does not show its worked solutions. Try: `page lamp --mine --as pdf`, or --task", "check -": off("check")},
		"[rules]\nshow = \"answered\"\n": {"page lamp --as md": "the worked solution opens once you have answered the problem. Try: `page lamp --mine --as pdf`, or --task"},
	} {
		_, _, says := ranWith(t, head)
		for command, want := range commands {
			if got := says(command); got != want {
				t.Errorf("%s%s: %s\nwant %s", head, command, got, want)
			}
		}
	}
}

// Who has answered has the worked solution where the rules show it then.
func TestTheWorkedSolutionOpens(t *testing.T) {
	r, client, says := ranWith(t, "[rules]\nshow = \"answered\"\n")
	g := r.sit(client, 80, 24)
	g.sees("Week 4")
	g.keys("\r")
	g.sees("practice: 0 of 2")
	g.keys("T1 = 37.5 N\rT2 = 37.5 N\r")
	g.sees("done")
	if got := says("page lamp --as md"); !strings.HasPrefix(got, "page SET --problem=lamp") {
		t.Error(got)
	}
	if got := says("page own --as md"); !strings.HasPrefix(got, "the worked solution opens once") {
		t.Error(got)
	}
}

func TestHelpOfASet(t *testing.T) {
	_, _, says := ranWith(t, opened)
	_, _, later := ranWith(t, over)
	got, after := says(""), later("")
	for _, want := range []string{"without a terminal there are page, record, new and schema", "ssh HOST page NAME --mine --as pdf > my.pdf", "ssh HOST page - --task --as pdf < sheet.toml > sheet.pdf", "ssh HOST record --format csv > my.csv"} {
		if !strings.Contains(got, want) {
			t.Errorf("no %q in\n%s", want, got)
		}
	}
	if strings.Contains(got, "solve") || !strings.Contains(after, "ssh HOST solve - < sheet.toml") {
		t.Errorf("%s\n%s", got, after)
	}
}

// A set that could not be practised is refused at the start, with a reason.
func TestSetsThatAreRefused(t *testing.T) {
	folder := t.TempDir()
	write(t, filepath.Join(folder, "lamp.toml"), lamp)
	set := func(text string) string { return write(t, filepath.Join(folder, "week.toml"), text) }
	for _, c := range []struct{ text, want string }{
		{lamp, "this is a sheet, not a set of problems. Try: --private with the folder of the sheet"},
		{"[problems]\n", `:1:2: the set has no problem. Try: beam = { sheet = "beam.toml", points = 4 }`},
		{"[problems]\na = { sheet = \"none.toml\" }\n", `the problem "a" cannot be practised: none.toml: there is no such file`},
		{"[problems]\na = { sheet = \"lamp.toml\", variant = true }\n", `the problem "a" cannot be practised: `},
		{"= 3", ":1:1: "},
	} {
		_, err := New(Settings{Set: set(c.text), State: t.TempDir(), Listen: defaultListen, Most: 1, ByPlace: 1}, nil, io.Discard)
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q: %v, want %s", c.text, err, c.want)
		}
	}
	for _, o := range []Settings{{Set: "a", Private: "b"}, {Set: "a", Sheet: "b"}, {Private: "a", Sheet: "b"}} {
		if err := o.check(); says(err) != "a host presents a sheet, or offers a folder with --private, or a set with --set. Try: one of them" {
			t.Errorf("%+v: %v", o, err)
		}
	}
}

// Only so many keys have a record, and one that has may always come again.
func TestPersonsAreBounded(t *testing.T) {
	a, _, err := newAssignment(week(t, ""), t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	defer a.store.Close()
	if name, err := a.person(door.Person{Print: "k0", Note: "Ada"}); name != "Ada" || err != nil {
		t.Fatal(name, err)
	}
	a.most = 1
	if _, err := a.person(door.Person{Print: "k1"}); says(err) != "the host has no room for the work of more visitors" {
		t.Error(err)
	}
	if name, err := a.person(door.Person{Print: "k0"}); name != "Ada" || err != nil {
		t.Error(name, err)
	}
	opt, err := a.options(door.Person{Print: "k0"})
	if err != nil {
		t.Fatal(err)
	}
	long := record.Event{At: time.Now(), What: record.Entry, Text: strings.Repeat("x", maxEntry+1)}
	if err := opt.Store.Add("", long); says(err) != "an entry may have 4 kB here. Try: a shorter one" {
		t.Error(err)
	}
}
