package journal

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"trivet/mechanics/sheet"
)

// place is a state folder and a sheet of its own.
func place(t testing.TB) (env []string, path string) {
	t.Helper()
	dir := t.TempDir()
	path = filepath.Join(dir, "a.toml")
	if err := os.WriteFile(path, []byte(begun), 0o600); err != nil {
		t.Fatal(err)
	}
	return []string{"XDG_STATE_HOME=" + dir}, path
}

// crash ends a session as a crash does: its file stays, and nobody holds it.
func crash(j *Journal) {
	j.mu.Lock()
	j.file.Close()
	j.file = nil
	j.mu.Unlock()
	j.Close()
}

var cellA = sheet.Ref{Table: "points", Row: "A", Key: "at"}

func TestRecovery(t *testing.T) {
	const changed = "[points]\nA = { at = \"2\", on = \"particle\" }\nB = \"3\"\n"
	for _, c := range []struct {
		name string
		do   func(j *Journal, path string)
		want string // what differs; "" for no offer
	}{
		{"nothing done", func(*Journal, string) {}, ""},
		{"typing", func(j *Journal, _ string) { j.Typing(cellA, "1"); j.Typing(cellA, "12") }, `points.A.at: "1" -> "12"`},
		{"typed and given up", func(j *Journal, _ string) { j.Typing(cellA, "12"); j.Cancelled() }, ""},
		{"typed back", func(j *Journal, _ string) { j.Typing(cellA, "12"); j.Typing(cellA, "1") }, ""},
		{"kept", func(j *Journal, _ string) { j.Typing(cellA, "2"); j.Commit(changed) }, `points.A.at: "1" -> "2"; points.B: "" -> "3"`},
		{"undone", func(j *Journal, _ string) { j.Commit(changed); j.Commit(begun) }, ""},
		{"kept, then typing", func(j *Journal, _ string) { j.Commit(changed); j.Typing(cellA, "7") }, `points.A.at: "1" -> "7"; points.B: "" -> "3"`},
		{"a new row's name", func(j *Journal, _ string) { j.Typing(sheet.Ref{Table: "points"}, "Q") }, `typed "Q"`},
		{"a saved sheet", func(j *Journal, path string) { j.Commit(changed); j.Saved(path, changed) }, ""},
		{"typed since the save", func(j *Journal, path string) { j.Typing(cellA, "9"); j.Saved(path, begun) }, `points.A.at: "1" -> "9"`},
		{"kept while it was saved", func(j *Journal, path string) { j.Commit(changed); j.Saved(path, begun) }, `points.A.at: "1" -> "2"; points.B: "" -> "3"`},
		{"closed", func(j *Journal, _ string) { j.Commit(changed); j.Close() }, ""},
		{"closed twice", func(j *Journal, _ string) { j.Close(); j.Commit(changed); j.Close() }, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			env, path := place(t)
			j := Open(env, path, begun)
			c.do(j, path)
			if says := j.Trouble(); says != "" {
				t.Fatal(says)
			}
			if j.file != nil {
				if got := Find(env, path, begun); len(got.Offers) > 0 || len(got.Others) != 1 {
					t.Fatalf("a living session is not one: %+v", got)
				}
				crash(j)
			}
			var got []string
			for _, o := range Find(env, path, begun).Offers {
				for _, d := range o.Changes {
					got = append(got, fmt.Sprintf("%s: %q -> %q", strings.Trim(d.Table+"."+d.Row+"."+d.Key, "."), d.Old, d.New))
				}
				if len(o.Changes) == 0 && o.Typed != nil {
					got = append(got, "typed \""+o.Typed.Text+"\"")
				}
				if o.When.IsZero() || o.Path != absolute(path) {
					t.Errorf("offer of %q at %v", o.Path, o.When)
				}
				o.Discard()
			}
			if strings.Join(got, "; ") != c.want {
				t.Errorf("offered %s, want %s", got, c.want)
			}
			if left, _ := os.ReadDir(filepath.Join(filepath.Dir(path), "trivet", "journal")); len(left) > 0 {
				t.Errorf("left over: %v", left)
			}
		})
	}
}

// Where the sheet was changed elsewhere meanwhile, saved work is no offer, and
// unsaved work is one against the text as it is now.
func TestChangedElsewhere(t *testing.T) {
	const elsewhere = "[points]\nA = { at = \"5\", on = \"particle\" }\n"
	env, path := place(t)
	j := Open(env, path, begun)
	j.Commit(elsewhere + "B = 1\n")
	j.Saved(path, elsewhere+"B = 1\n")
	crash(j)
	if got := Find(env, path, elsewhere); len(got.Offers) > 0 {
		t.Errorf("%+v", got.Offers)
	}
	j = Open(env, path, begun)
	j.Typing(cellA, "12")
	crash(j)
	if got := Find(env, path, elsewhere).Offers; len(got) != 1 || len(got[0].Changes) != 1 || got[0].Changes[0] != (sheet.Change{Ref: sheet.Ref{Table: "points", Row: "A", Key: "at"}, Old: "5", New: "12", Was: true, Is: true}) {
		t.Errorf("%+v", got)
	}
	if got := Find(env, path, "no sheet").Offers; len(got) != 1 || got[0].Changes != nil {
		t.Errorf("%+v", got)
	}
}

func TestOthers(t *testing.T) {
	env, path := place(t)
	link := filepath.Join(filepath.Dir(path), "link.toml")
	if err := os.Symlink(path, link); err != nil {
		t.Skip(err)
	}
	one, two := Open(env, path, begun), Open(env, link, begun)
	defer one.Close()
	for _, j := range []*Journal{one, two} {
		if got := j.Others(); len(got) != 1 || got[0].Pid != os.Getpid() || !got[0].Here || !strings.HasPrefix(got[0].String(), "process ") {
			t.Fatalf("%+v", got)
		}
	}
	two.Saved(filepath.Join(filepath.Dir(path), "b.toml"), begun)
	if got := append(one.Others(), two.Others()...); len(got) > 0 {
		t.Errorf("a sheet saved elsewhere still counts: %+v", got)
	}
	two.Saved(path, begun)
	one.Beat()
	if got := one.Others(); len(got) != 1 {
		t.Errorf("%+v", got)
	}
	two.Close()
	if got := one.Others(); len(got) > 0 {
		t.Errorf("a closed session still counts: %+v", got)
	}
	untitled := Open(env, "", begun)
	defer untitled.Close()
	also := Open(env, "", begun)
	also.Commit(begun + "B = 1\n")
	if got := untitled.Others(); len(got) > 0 {
		t.Errorf("sheets without a file are one: %+v", got)
	}
	crash(also)
	if got := Find(env, "", begun); len(got.Offers) != 1 || len(got.Others) != 0 {
		t.Errorf("%+v", got)
	}
}

func TestLiving(t *testing.T) {
	self := session()
	if exists, known := running(self.Pid); !known || !exists {
		t.Skip("processes can't be asked for here")
	}
	for _, c := range []struct {
		name string
		e    func(e *entry)
		last time.Duration // since the last sign of life
		want bool
	}{
		{"this process", func(*entry) {}, time.Hour, true},
		{"a number used again", func(e *entry) { e.Start = "another boot 1" }, 0, false},
		{"no such process", func(e *entry) { e.Pid = 1 << 30 }, 0, false},
		{"no process", func(e *entry) { e.Pid = 0 }, time.Hour, false},
		{"elsewhere, just now", func(e *entry) { e.Host = "elsewhere.example" }, time.Second, true},
		{"elsewhere, long ago", func(e *entry) { e.Host = "elsewhere.example" }, time.Hour, false},
	} {
		e := self
		c.e(&e)
		if got := living(e, time.Now().Add(-c.last)); got != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}

// A journal cut short anywhere gives the state after its last whole record.
func TestTornRecords(t *testing.T) {
	states := []string{begun, begun + "B = 1\n", begun + "B = \"±12\"\n", begun + "B = \"±1\"\n", begun}
	head := session()
	head.Text = begun
	whole, ends := record(head), []int{}
	for i := range states {
		if i > 0 {
			e := entry{Kind: kindCommit}
			e.At, e.Gone, e.New = between(states[i-1], states[i])
			whole = append(whole, record(e)...)
		}
		ends = append(ends, len(whole))
	}
	for n := range len(whole) + 1 {
		k, ok := read(bytes.NewReader(whole[:n]))
		last := -1
		for i, end := range ends {
			if end <= n {
				last = i
			}
		}
		if ok != (last >= 0) || ok && k.text != states[last] {
			t.Fatalf("cut at %d: %v %q, want state %d", n, ok, k.text, last)
		}
	}
	for n := range whole {
		spoilt := bytes.Clone(whole)
		spoilt[n] ^= 0x10
		if k, ok := read(bytes.NewReader(spoilt)); ok && !contains(states, k.text) {
			t.Fatalf("spoilt at %d: %q", n, k.text)
		}
	}
}

func contains(all []string, one string) bool {
	for _, s := range all {
		if s == one {
			return true
		}
	}
	return false
}

// A long session's file stays small.
func TestBounded(t *testing.T) {
	env, path := place(t)
	j := Open(env, path, begun)
	long := strings.Repeat("x", 4000)
	for i := range 2000 {
		j.Typing(cellA, long[:3000+i%1000])
	}
	info, err := os.Stat(j.name)
	if err != nil || info.Size() > maxJournal+2*int64(len(begun))+8000 {
		t.Errorf("%d bytes, %v", info.Size(), err)
	}
	crash(j)
	if got := Find(env, path, begun).Offers; len(got) != 1 || got[0].Typed == nil || len(got[0].Typed.Text) != 3999 {
		t.Errorf("%d offers", len(got))
	}
}

// Without a place to write, a session works on and says so once.
func TestNowhereToWrite(t *testing.T) {
	_, path := place(t)
	for name, c := range map[string]struct {
		env  []string
		want string
	}{
		"no home":           {nil, "no journal is kept, so a crash would cost what is not saved: neither HOME nor an XDG folder is set"},
		"a file in the way": {[]string{"XDG_STATE_HOME=" + path}, "no journal is kept, so a crash would cost what is not saved: mkdir: not a directory"},
	} {
		t.Run(name, func(t *testing.T) {
			j := Open(c.env, path, begun)
			j.Typing(cellA, "2")
			j.Commit("x = 1\n")
			j.Saved(path, "x = 1\n")
			j.Beat()
			if got := j.Trouble(); got != c.want {
				t.Errorf("%s, want %s", got, c.want)
			}
			if got := j.Trouble(); got != "" {
				t.Errorf("said twice: %s", got)
			}
			if got := Find(c.env, path, begun); len(got.Offers)+len(got.Others)+len(j.Others()) > 0 {
				t.Errorf("%+v", got)
			}
			j.Close()
		})
	}
}

func TestFailingMidway(t *testing.T) {
	env, path := place(t)
	j := Open(env, path, begun)
	j.Commit(begun + "B = 1\n")
	j.file.Close() // as a disk that has gone would
	j.Typing(cellA, "2")
	j.Typing(cellA, "3")
	if got := j.Trouble(); !strings.HasPrefix(got, "no journal is kept, so a crash would cost what is not saved: write: ") || j.Trouble() != "" {
		t.Errorf("%q", got)
	}
	j.Close()
	if got := Find(env, path, begun).Offers; len(got) != 1 || got[0].Text != begun+"B = 1\n" {
		t.Errorf("what was written before is lost: %+v", got)
	}
}

// FuzzRead: whatever stands in a journal gives a text or nothing.
func FuzzRead(f *testing.F) {
	head := session()
	head.Text = begun
	whole := append(record(head), record(entry{Kind: kindCommit, At: 3, Gone: 2, New: "±"})...)
	f.Add(append(whole, record(entry{Kind: kindTyping, Typed: &Typed{cellA, "2"}})...))
	f.Add(whole[:len(whole)-3])
	f.Add(append(record(head), record(entry{Kind: kindCommit, At: 1 << 40, Gone: -1})...))
	f.Fuzz(func(t *testing.T, data []byte) {
		if k, ok := read(bytes.NewReader(data)); ok {
			k.offer(begun)
		}
	})
}

func FuzzBetween(f *testing.F) {
	f.Add("a±b", "a²b")
	f.Add("", "x")
	f.Add("αβ", "αγβ")
	f.Fuzz(func(t *testing.T, old, now string) {
		old, now = strings.ToValidUTF8(old, "?"), strings.ToValidUTF8(now, "?")
		at, gone, text := between(old, now)
		if got := old[:at] + text + old[at+gone:]; got != now || strings.ToValidUTF8(text, "!") != text {
			t.Fatalf("%q to %q: %d %d %q", old, now, at, gone, text)
		}
	})
}

// BenchmarkTyping is what a keystroke waits for, BenchmarkFlush what the disk
// takes in the background.
func BenchmarkTyping(b *testing.B) {
	env, path := place(b)
	j := Open(env, path, begun)
	defer j.Close()
	texts := [2]string{"12.25 m", "12.2"}
	for i := 0; b.Loop(); i++ {
		j.Typing(cellA, texts[i%2])
	}
}

func BenchmarkFlush(b *testing.B) {
	env, path := place(b)
	j := Open(env, path, begun)
	defer j.Close()
	for i := 0; b.Loop(); i++ {
		j.Commit(begun + strings.Repeat(" ", i%2))
		if err := j.file.Sync(); err != nil {
			b.Fatal(err)
		}
	}
}
