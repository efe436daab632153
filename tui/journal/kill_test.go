package journal

import (
	"bufio"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"trivet/fixtures/long"
	"trivet/mechanics/sheet"
)

const childSeed = "TRIVET_JOURNAL_CHILD"

// The test binary is also the session that is killed.
func TestMain(m *testing.M) {
	if seed, err := strconv.ParseUint(os.Getenv(childSeed), 10, 64); err == nil {
		child(seed, os.Args[1])
		return
	}
	os.Exit(m.Run())
}

const begun = "[points]\nA = { at = \"1\", on = \"particle\" }\n"

// editor is a session that types, keeps, undoes and saves by chance, the same for
// the same seed. Its doings are followed without effect where do is nil.
type editor struct {
	rng   *rand.Rand
	h     *sheet.History
	typed *Typed
	disk  string
}

func newEditor(seed uint64) *editor {
	s, err := sheet.Parse([]byte(begun))
	if err != nil {
		panic(err)
	}
	return &editor{rng: rand.New(rand.NewPCG(seed, 1)), h: sheet.NewHistory(s), disk: begun}
}

type doer interface {
	commit(text string)
	typing(t Typed)
	cancelled()
	save(s *sheet.Sheet)
}

func (d *editor) step(do doer) {
	cell := sheet.Ref{Table: "points", Row: "A", Key: "at"}
	now := d.h.Current()
	switch n := d.rng.IntN(20); {
	case n < 13:
		c, _ := now.Cell(cell)
		t := Typed{cell, c.Text}
		if d.typed != nil {
			t = *d.typed
		}
		t.Text += string(rune('0' + d.rng.IntN(10)))
		if len(t.Text) > 40 {
			t.Text = "\"±\n"
		}
		d.typed = &t
		do.typing(t)
	case n < 16 && d.typed != nil:
		if err := d.h.Do(sheet.SetCell{Ref: cell, Text: d.typed.Text}); err != nil {
			panic(err)
		}
		d.typed = nil
		do.commit(d.h.Current().Text())
	case n < 17:
		d.typed = nil
		do.cancelled()
	case n < 18:
		d.h.Undo()
		d.typed = nil
		do.commit(d.h.Current().Text())
	default:
		d.disk = now.Text()
		do.save(now)
	}
}

// whole is what a person sees: the text with the cell being typed.
func (d *editor) whole() string {
	s := d.h.Current()
	if d.typed != nil {
		next, err := s.Apply(sheet.SetCell{Ref: d.typed.Ref, Text: d.typed.Text})
		if err != nil {
			panic(err)
		}
		s = next
	}
	return s.Text()
}

type followed struct{}

func (followed) commit(string)     {}
func (followed) typing(Typed)      {}
func (followed) cancelled()        {}
func (followed) save(*sheet.Sheet) {}

type journaled struct {
	*Journal
	path  string
	stamp sheet.Stamp
}

func (j *journaled) commit(text string) { j.Commit(text) }
func (j *journaled) typing(t Typed)     { j.Typing(t.Ref, t.Text) }
func (j *journaled) cancelled()         { j.Cancelled() }
func (j *journaled) save(s *sheet.Sheet) {
	stamp, err := sheet.Save(j.path, s, j.stamp, false)
	if err != nil {
		panic(err)
	}
	j.stamp = stamp
	j.Saved(j.path, s.Text())
}

func child(seed uint64, path string) {
	s, stamp, err := sheet.Load(path)
	if err != nil {
		panic(err)
	}
	j := &journaled{Open(os.Environ(), path, s.Text()), path, stamp}
	d := newEditor(seed)
	for k := 0; ; k++ {
		fmt.Println(k) // step k is done
		d.step(j)
	}
}

// TestKilled kills a session at random moments: what is found afterwards is what
// its last keystroke but one left, or its last, and the sheet is whole.
func TestKilled(t *testing.T) {
	runs := long.Of(50, 500)
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	offered := 0
	for run := range runs {
		seed := uint64(run)
		dir := t.TempDir()
		path := filepath.Join(dir, "a.toml")
		if err := os.WriteFile(path, []byte(begun), 0o600); err != nil {
			t.Fatal(err)
		}
		env := append(os.Environ(), "XDG_STATE_HOME="+dir, childSeed+"="+strconv.Itoa(run))
		steps := killAfter(t, exec.Command(self, path), env, rand.New(rand.NewPCG(seed, 2)).IntN(40))
		d := newEditor(seed)
		for range steps {
			d.step(followed{})
		}
		wants, disks := []string{d.whole()}, []string{d.disk}
		d.step(followed{})
		wants, disks = append(wants, d.whole()), append(disks, d.disk)

		disk, err := os.ReadFile(path)
		if err != nil || string(disk) != disks[0] && string(disk) != disks[1] {
			t.Fatalf("run %d: the sheet is\n%s(%v), saved was\n%s", run, disk, err, disks[0])
		}
		got := string(disk)
		found := Find(env, path, got)
		if len(found.Offers) > 1 || len(found.Others) > 0 {
			t.Fatalf("run %d: %d offers, %d others", run, len(found.Offers), len(found.Others))
		}
		for _, o := range found.Offers {
			got = o.Text
			if len(o.Changes) == 0 {
				t.Errorf("run %d: an offer that changes nothing", run)
			}
			offered++
			o.Discard()
		}
		if got != wants[0] && got != wants[1] {
			t.Fatalf("run %d, after %d steps: recovered\n%swanted\n%s", run, steps, got, wants[0])
		}
		Find(env, path, string(disk))
		if left, _ := filepath.Glob(filepath.Join(dir, "trivet", "journal", "*")); len(left) > 0 {
			t.Fatalf("run %d: left over: %v", run, left)
		}
	}
	if offered < runs/4 {
		t.Errorf("only %d of %d had anything to recover: the runs are too short", offered, runs)
	}
}

// killAfter runs a session and kills it once it has told of so many steps; it
// goes on meanwhile. It gives the number of the last step told.
func killAfter(t *testing.T, cmd *exec.Cmd, env []string, steps int) int {
	t.Helper()
	cmd.Env = env
	var says strings.Builder
	cmd.Stderr = &says
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	last := -1
	for lines := bufio.NewScanner(out); lines.Scan(); {
		k, err := strconv.Atoi(lines.Text())
		if err != nil {
			continue
		}
		if last = k; k == steps {
			if err := cmd.Process.Kill(); err != nil {
				t.Fatal(err)
			}
		}
	}
	_ = cmd.Wait() // it was killed
	if last < steps {
		t.Fatalf("the session ended by itself: %s", &says)
	}
	return last
}
