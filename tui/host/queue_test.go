package host

import (
	"sync/atomic"
	"testing"
	"time"

	"golang.org/x/time/rate"
)

func TestWhoHasUsedUpTheAccountWaitsInTheQueue(t *testing.T) {
	var slow queue
	heavy, light := newAccount(&slow), newAccount(&slow)
	heavy.spend(creditBurst + time.Second)
	slow.mu.Lock() // somebody is in the queue
	var done atomic.Bool
	over := make(chan struct{})
	go func() {
		heavy.do(func() { done.Store(true) })
		close(over)
	}()
	for range 1000 {
		light.do(func() {}) // does not come back before it has been done
	}
	if done.Load() {
		t.Error("the one in debt did not wait")
	}
	slow.mu.Unlock()
	<-over
	if !done.Load() {
		t.Error("the one in debt was never served")
	}
}

func TestAFaultLeavesTheQueueFree(t *testing.T) {
	var slow queue
	func() {
		defer func() { _ = recover() }()
		slow.do(func() { panic("drawn badly") })
	}()
	served := false
	slow.do(func() { served = true })
	if !served {
		t.Error("the queue is blocked")
	}
}

func TestAnAccountHasBothItsBounds(t *testing.T) {
	a := newAccount(&queue{})
	a.credit.SetLimit(rate.Every(time.Hour)) // so that no time of the test makes up for the work
	a.spend(time.Hour)
	if left := a.left(); left > -creditBurst+2*creditUnit {
		t.Errorf("an hour of work leaves %v", left)
	}
	a.credit.SetLimit(rate.Limit(1e18)) // an hour in no time
	waitFor(t, "all is there again", a.full)
	if a.left() != creditBurst {
		t.Errorf("an hour of rest leaves %v", a.left())
	}
}

// Coming again does not fill what a key has taken, and keys that owe nothing are
// not kept.
func TestAKeysVisitsShareOneAccount(t *testing.T) {
	l := &library{}
	h := &Host{service: l}
	one, other := person{folder: "one"}, person{folder: "other"}
	limiter := h.typing(one)
	for range keyComesBurst {
		again := h.typing(one)
		if again.keys != limiter.keys || again.bytes != limiter.bytes {
			t.Fatal("a visit types under another limiter")
		}
		if !again.comes.Allow() {
			t.Fatal("a visit waits")
		}
	}
	if h.typing(one).comes.Allow() {
		t.Error("a key that comes again and again never waits")
	}
	if !h.typing(other).comes.Allow() {
		t.Error("another key waits for it")
	}
	limiter.comes.SetLimit(1e18) // time enough to owe nothing
	waitFor(t, "nothing is owed", l.accounts.all["one"].full)
	l.accounts.of("third")
	if l.accounts.all["one"] != nil || l.accounts.all["other"] == nil {
		t.Errorf("kept are %v", l.accounts.all)
	}
}

// Who comes and goes is told to the presenter alone: a class draws nothing for it,
// and its next frame is not put off.
func TestComingAndGoingIsNothingToTheClass(t *testing.T) {
	class := newScreen(nil, 80, 24, terminal{}, withClass, nil)
	own := newScreen(nil, 80, 24, terminal{}, atOnce, nil)
	holder := &visitor{who: person{role: presenter}}
	s := &classroom{
		holder: holder, clients: map[*visitor]*client{holder: {own: own}, {}: {}},
		screens: map[shape]*shared{{}: {screen: class}},
	}
	s.status.Store(&status{})
	s.report("")
	if len(class.dirty) != 0 || len(own.dirty) != 1 {
		t.Errorf("%d of the class and %d of the presenter are to be drawn", len(class.dirty), len(own.dirty))
	}
	s.holder = nil
	s.report("")
	if len(class.dirty) != 1 {
		t.Error("the class is not told that nobody presents")
	}
}
