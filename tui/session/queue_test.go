package session

import "testing"

// Of what is asked for while one runs only the newest is worked out, once.
func TestTheNewestWaits(t *testing.T) {
	var q Queue[int, int]
	ask := func(n int) func() Reply[int, int] {
		cmd := q.Ask(n, func() int { return n * n })
		if cmd == nil {
			return nil
		}
		return func() Reply[int, int] { return cmd().(Reply[int, int]) }
	}
	first := ask(1)
	for n := 2; n <= 4; n++ {
		if ask(n) != nil {
			t.Fatalf("%d is worked out beside the first", n)
		}
	}
	if q.Take(first(), 4) {
		t.Error("an overtaken reply counts")
	}
	last := ask(4)
	if last == nil || !q.Running() {
		t.Fatal("the newest is forgotten")
	}
	if r := last(); !q.Take(r, 4) || r.Value != 16 || q.Running() {
		t.Errorf("%+v, running %v", r, q.Running())
	}
}

// What came before the queue was begun again frees nothing that runs now.
func TestAReplyFromBeforeFreesNothing(t *testing.T) {
	var q Queue[int, int]
	q.Ask(2, func() int { return 0 })
	if q.Take(Reply[int, int]{Of: 1}, 2) || !q.Running() {
		t.Error("a reply of another time counts")
	}
}

func TestAFaultIsCaughtAndSaid(t *testing.T) {
	var q Queue[int, int]
	r := q.Ask(1, func() int { panic("ink") })().(Reply[int, int])
	if r.Fault != "ink" || !q.Take(r, 1) || q.Running() {
		t.Errorf("%+v, running %v", r, q.Running())
	}
}
