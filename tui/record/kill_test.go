package record

import (
	"bufio"
	"fmt"
	"math/rand/v2"
	"os"
	osexec "os/exec"
	"strconv"
	"strings"
	"sync"
	"testing"

	"trivet/fixtures/long"
)

// childPath is the variable by which the test's own binary is the program that is killed;
// childPerson is who enters, childCount how often, 0 without end.
const (
	childPath   = "TRIVET_RECORD_CHILD"
	childPerson = "TRIVET_RECORD_PERSON"
	childCount  = "TRIVET_RECORD_COUNT"
)

func TestMain(m *testing.M) {
	if path := os.Getenv(childPath); path != "" {
		child(path, os.Getenv(childPerson), os.Getenv(childCount))
		return
	}
	os.Exit(m.Run())
}

// child enters lines, and says of each that it is judged once it is kept.
func child(path, person, count string) {
	s, notice, err := Open(path)
	if err != nil || notice != nil {
		panic(fmt.Sprint(notice, err))
	}
	until, _ := strconv.Atoi(count)
	for k := 0; until == 0 || k < until; k++ {
		if err := s.Add(person, entry(beam, 0, line(k), "right")); err != nil {
			panic(err)
		}
		fmt.Println(k)
	}
	if err := s.Close(); err != nil {
		panic(err)
	}
}

// line is the k-th line that a child enters: some take more than a page of the file.
func line(k int) string { return fmt.Sprint(k, " ", strings.Repeat("x", k%5*1500)) }

func program(t *testing.T, path, person, count string) *osexec.Cmd {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	cmd := osexec.Command(self)
	cmd.Env = append(os.Environ(), childPath+"="+path, childPerson+"="+person, childCount+"="+count)
	return cmd
}

// TestKilled kills a program that enters lines, at random moments, again and again on the
// same record: the record opens without a word, and every line that was told to be judged
// is there, in order, and at most one more.
func TestKilled(t *testing.T) {
	path := File(t.TempDir())
	rng := rand.New(rand.NewPCG(1, 2))
	for run := range long.Of(6, 500) {
		person := fmt.Sprint("person ", run)
		told := killed(t, program(t, path, person, "0"), rng.IntN(30))
		s, notice, err := Open(path)
		if err != nil || notice != nil {
			t.Fatalf("run %d: %v, %v", run, notice, err)
		}
		got, err := s.Events(person)
		if err != nil || len(got) < told || len(got) > told+1 {
			t.Fatalf("run %d: %d entries, told were %d (%v)", run, len(got), told, err)
		}
		for k, e := range got {
			if e.Text != line(k) {
				t.Fatalf("run %d: entry %d is %.20q", run, k, e.Text)
			}
		}
		if err := s.Close(); err != nil {
			t.Fatal(err)
		}
	}
}

// killed runs a program and kills it once it has told of so many lines and one more; it
// goes on meanwhile. It gives how many were told in all.
func killed(t *testing.T, cmd *osexec.Cmd, after int) (told int) {
	t.Helper()
	var says strings.Builder
	cmd.Stderr = &says
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	for lines := bufio.NewScanner(out); lines.Scan(); told++ {
		if told == after {
			if err := cmd.Process.Kill(); err != nil {
				t.Fatal(err)
			}
		}
	}
	_ = cmd.Wait() // it was killed
	if told <= after {
		t.Fatalf("the program ended by itself: %s", &says)
	}
	return told
}

// Two programs that write to one record at once wait for each other.
func TestTwoPrograms(t *testing.T) {
	path := File(t.TempDir())
	var wait sync.WaitGroup
	const each = 60
	for _, person := range []string{"Ada", "Ben"} {
		cmd := program(t, path, person, strconv.Itoa(each))
		wait.Go(func() {
			if out, err := cmd.CombinedOutput(); err != nil {
				t.Errorf("%v: %.500s", err, out)
			}
		})
	}
	wait.Wait()
	s := opened(t, path)
	for _, person := range []string{"Ada", "Ben"} {
		if got, err := s.Events(person); len(got) != each || err != nil {
			t.Errorf("%d entries of %s, %v", len(got), person, err)
		}
	}
}
