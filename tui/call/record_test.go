package call

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"trivet/tui/record"
)

// recorded makes the record of a desk with two persons in it, and gives a way to call the
// program there.
func recorded(t *testing.T) func(args ...string) said {
	t.Helper()
	local := time.Local
	time.Local = time.FixedZone("there", 3600)
	t.Cleanup(func() { time.Local = local })
	env := []string{"XDG_DATA_HOME=" + t.TempDir()}
	file, err := record.Desk(env)
	if err != nil {
		t.Fatal(err)
	}
	s, _, err := record.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	beam, lamp := record.Problem{Set: "week4", Name: "beam"}, record.Problem{Name: "lamp.toml"}
	monday := time.Date(2026, 12, 7, 9, 0, 0, 0, time.UTC)
	for i, e := range []record.Event{
		{Problem: beam, What: record.Entry, Text: "ΣFx: T1 = 0", Kind: "equation", Verdict: "wrong", Mistake: "sign"},
		{Problem: beam, What: record.Hint, Stage: 1},
		{Problem: lamp, What: record.Entry, Text: "=1+\x1b[31m", Kind: "value", Verdict: "unreadable"},
		{Problem: beam, What: record.Entry, Text: "T1 = 3 N", Kind: "value", Verdict: "right"},
		{Problem: beam, What: record.Done, Points: 3.6, Of: 4},
		{Problem: lamp, What: record.Shown},
	} {
		e.At = monday.Add(time.Duration(i) * time.Minute)
		if err := s.Add("Ada", e); err != nil {
			t.Fatal(err)
		}
	}
	if err := s.Add("Ben", record.Event{At: monday, Problem: lamp, What: record.Entry, Text: "T = 1 N", Kind: "value", Verdict: "wrong"}); err != nil {
		t.Fatal(err)
	}
	return func(args ...string) said {
		var out, says strings.Builder
		c := New(strings.NewReader(""), &out, &says, env)
		code := run(c, append([]string{"record"}, args...)...)
		return said{strings.ReplaceAll(out.String(), file, "FILE"), strings.ReplaceAll(says.String(), file, "FILE"), code}
	}
}

const ofBen = `Ben

lamp.toml
1 entry and 0 hints; not done.
time                 entry    judgement
2026-12-07 10:00:00  T = 1 N  wrong
`

func TestRecord(t *testing.T) {
	call := recorded(t)
	const ofAda = `Ada

week4, beam
2 entries and 1 hint; done on 7 December 2026 at 10:04: 3.6 of 4 points.
time                 entry        judgement
2026-12-07 10:00:00  ΣFx: T1 = 0  wrong: sign
2026-12-07 10:01:00               hint, stage 1
2026-12-07 10:03:00  T1 = 3 N     right
2026-12-07 10:04:00               done

lamp.toml
1 entry and 0 hints; the solution was shown.
time                 entry     judgement
2026-12-07 10:02:00  =1+·[31m  unreadable
2026-12-07 10:05:00            the solution was shown
`
	if got := call("Ada"); got != (said{ofAda, "", 0}) {
		t.Errorf("%+v", got)
	}
	if got := call(); got != (said{ofAda + "\n" + ofBen, "", 0}) {
		t.Errorf("%+v", got)
	}
	const csv = "\ufeffperson,set,problem,time,event,entry,kind,verdict,mistake,stage,points,of\n" +
		"Ada,week4,beam,2026-12-07T09:00:00Z,entry,ΣFx: T1 = 0,equation,wrong,sign,,,\n" +
		"Ada,week4,beam,2026-12-07T09:01:00Z,hint,,,,,1,,\n" +
		"Ada,,lamp.toml,2026-12-07T09:02:00Z,entry,'=1+·[31m,value,unreadable,,,,\n" +
		"Ada,week4,beam,2026-12-07T09:03:00Z,entry,T1 = 3 N,value,right,,,,\n" +
		"Ada,week4,beam,2026-12-07T09:04:00Z,done,,,,,,3.6,4\n" +
		"Ada,,lamp.toml,2026-12-07T09:05:00Z,shown,,,,,,,\n"
	if got := call("Ada", "--format", "csv"); got != (said{csv, "", 0}) {
		t.Errorf("%+v", got)
	}
	const object = `{
  "person": "Ben",
  "problems": [
    {
      "set": "",
      "problem": "lamp.toml",
      "hints": 0,
      "shown": false,
      "done": null,
      "points": 0,
      "of": 0,
      "events": [
        {
          "time": "2026-12-07T09:00:00Z",
          "event": "entry",
          "entry": "T = 1 N",
          "kind": "value",
          "verdict": "wrong"
        }
      ]
    }
  ]
}
`
	if got := call("Ben", "--format", "json"); got != (said{object, "", 0}) {
		t.Errorf("%+v", got)
	}
}

func TestRecordForgets(t *testing.T) {
	call := recorded(t)
	if got := call("--forget", "Ada"); got != (said{"Ada is deleted: 3 entries and 1 hint on 2 problems\n", "", 0}) {
		t.Errorf("%+v", got)
	}
	if got := call(); got != (said{ofBen, "", 0}) {
		t.Errorf("%+v", got)
	}
	if got := call("--forget", "Ada"); got != (said{"", "FILE: the record has no person named \"Ada\". Try: Ben\n", CantDo}) {
		t.Errorf("%+v", got)
	}
}

// A person is renamed, and two that are one are merged.
func TestRecordRenames(t *testing.T) {
	call := recorded(t)
	for _, c := range []struct {
		line string
		want said
	}{
		{"--rename Ada Ben", said{"", "FILE: the record has a person named \"Ben\" already. Try: another name, or --merge where both are one person\n", CantDo}},
		{"--rename Adda Cleo", said{"", "FILE: the record has no person named \"Adda\". Try: Ada\n", CantDo}},
		{"--rename Ada Cleo", said{"Ada is now called Cleo\n", "", 0}},
		{"--merge Cleo Benn", said{"", "FILE: the record has no person named \"Benn\". Try: Ben\n", CantDo}},
		{"--merge Cleo Cleo", said{"", "FILE: both names are of the same person. Try: two names\n", CantDo}},
		{"--merge Cleo Ben", said{"Cleo is merged into Ben\n", "", 0}},
		{"--forget Ben", said{"Ben is deleted: 4 entries and 1 hint on 2 problems\n", "", 0}},
	} {
		if got := call(strings.Fields(c.line)...); got != c.want {
			t.Errorf("%s: %+v", c.line, got)
		}
	}
}

func TestRecordRefuses(t *testing.T) {
	call := recorded(t)
	for _, c := range []struct {
		args []string
		want string
	}{
		{[]string{"Bem"}, "FILE: the record has no person named \"Bem\". Try: Ben\n"},
		{[]string{"Somebody"}, "FILE: the record has no person named \"Somebody\". Try: Ada or Ben\n"},
		{[]string{"Ada", "Ben"}, "trivet: the record of one person is printed, but 2 are named. Try: name one, or none for everyone's\n"},
		{[]string{"--forget", ""}, "trivet: --forget needs the name of a person. Try: `trivet record --forget NAME`\n"},
		{[]string{"--rename", "Ada"}, "trivet: --rename needs two names. Try: `trivet record --rename OLD NEW`\n"},
		{[]string{"--merge", "Ada", "Ben", "--format", "csv"}, "trivet: --merge prints no record. Try: `trivet record --merge FROM INTO` alone\n"},
		{[]string{"--merge", "Ada", "Ben", "--forget", "Ada"}, "trivet: --forget and --merge are two changes. Try: one after the other\n"},
		{[]string{"--forget", "Ada", "Ben"}, "trivet: --forget deletes one person and prints no record. Try: `trivet record --forget NAME` alone\n"},
		{[]string{"--format", "xls"}, "trivet: unknown format \"xls\". Try: text, csv or json\n"},
		{[]string{"--forget"}, "trivet: --forget needs a value. Try: --forget NAME\n"},
	} {
		if got := call(c.args...); got != (said{"", c.want, CantDo}) {
			t.Errorf("%q: %+v, want %s", c.args, got, c.want)
		}
	}
	var says strings.Builder
	if code := run(&Call{Stdout: &says, Stderr: &says}, "record"); code != CantDo || says.String() != "trivet: there is no home folder for the record: neither HOME nor an XDG folder is set. Try: --state FOLDER\n" {
		t.Errorf("%d: %s", code, &says)
	}
}

// Where nothing was practised there is no record, and looking makes none; one that is
// damaged is set aside with a message.
func TestNoRecord(t *testing.T) {
	folder := t.TempDir()
	for line, want := range map[string]said{
		"record": {"The record is empty.\n", "", 0}, "record --format json": {"", "", 0},
		"record --format csv": {"person,set,problem,time,event,entry,kind,verdict,mistake,stage,points,of\n", "", 0},
		"record --forget Ada": {"", "FILE: the record has no person named \"Ada\"\n", CantDo},
	} {
		got := calls(t, append(strings.Fields(line), "--state", folder)...)
		got.err = strings.ReplaceAll(got.err, record.File(folder), "FILE")
		if got != want {
			t.Errorf("%s: %+v", line, got)
		}
	}
	if left, _ := os.ReadDir(folder); len(left) > 0 {
		t.Errorf("%v was made", left)
	}
	if err := os.WriteFile(record.File(folder), []byte("no database"), 0o600); err != nil {
		t.Fatal(err)
	}
	got := calls(t, "record", "--state", folder)
	aside, _ := filepath.Glob(record.File(folder) + "-damaged-*")
	if len(aside) != 1 || got != (said{"The record is empty.\n", record.File(folder) + ": warning: the record was damaged, so a new one is begun; the damaged file is kept as " + aside[0] + ". Try: a copy of the record from a backup\n", 0}) {
		t.Errorf("%+v, %v", got, aside)
	}
}
