package call

import (
	"errors"
	"strings"
	"testing"
)

// full is a disk that takes so many writes and no more.
type full struct{ takes int }

func (f *full) Write(p []byte) (int, error) {
	if f.takes--; f.takes < 0 {
		return 0, errors.New("the disk is full")
	}
	return len(p), nil
}

func TestEnd(t *testing.T) {
	const lost = "trivet: the results cannot be written: the disk is full\n"
	for _, c := range []struct {
		name   string
		takes  int
		prints int
		fails  []int
		err    error
		says   string
		code   int
	}{
		{"all well", 1, 1, nil, nil, "", 0},
		{"a check failed", 1, 1, []int{Failed}, nil, "", Failed},
		{"the worst stays", 1, 1, []int{CantDo, Failed}, nil, "", CantDo},
		{"a signal's", 0, 0, []int{128 + 15, Failed}, nil, "", 143},
		{"a call that can't be read", 0, 0, nil, errors.New("no such call"), "trivet: no such call\n", CantDo},
		{"lost at once", 0, 2, nil, nil, lost, CantDo},
		{"lost at the end", 1, 2, []int{Failed}, nil, lost, CantDo},
		{"both", 0, 1, nil, errors.New("no such call"), "trivet: no such call\n" + lost, CantDo},
	} {
		var says strings.Builder
		call := &Call{Stdout: &full{c.takes}, Stderr: &says}
		for range c.prints {
			call.print("a result\n")
		}
		for _, code := range c.fails {
			call.Fail(code)
		}
		if code := call.End(c.err); code != c.code || says.String() != c.says {
			t.Errorf("%s: exit code %d, want %d; says %q, want %q", c.name, code, c.code, &says, c.says)
		}
	}
}

// Every command that prints tells where its results are lost.
func TestLostResults(t *testing.T) {
	for _, line := range []string{"solve -", "check -", "schema", "solve - --format json"} {
		var says strings.Builder
		c := &Call{Stdin: strings.NewReader(lamp), Stdout: &full{}, Stderr: &says}
		if code, want := run(c, strings.Fields(line)...), "trivet: the results cannot be written: the disk is full\n"; code != CantDo || says.String() != want {
			t.Errorf("trivet %s: exit code %d, says %q, want %q", line, code, &says, want)
		}
	}
}
