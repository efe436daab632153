package pace

import (
	"runtime"
	"sync/atomic"
	"testing"
	"time"

	"golang.org/x/time/rate"
)

func TestWhoHasUsedUpTheAccountWaitsInTheQueue(t *testing.T) {
	var slow Queue
	heavy, light := newAccount(&slow), newAccount(&slow)
	heavy.spend(creditBurst + time.Second)
	slow.mu.Lock() // somebody is in the queue
	var done atomic.Bool
	over := make(chan struct{})
	go func() {
		heavy.Do(func() { done.Store(true) })
		close(over)
	}()
	for range 1000 {
		light.Do(func() {}) // does not come back before it has been done
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
	var slow Queue
	func() {
		defer func() { _ = recover() }()
		slow.Do(func() { panic("drawn badly") })
	}()
	served := false
	slow.Do(func() { served = true })
	if !served {
		t.Error("the queue is blocked")
	}
}

func TestAnAccountHasBothItsBounds(t *testing.T) {
	a := newAccount(&Queue{})
	a.credit.SetLimit(rate.Every(time.Hour)) // so that no time of the test makes up for the work
	a.spend(time.Hour)
	if left := a.left(); left > -creditBurst+2*creditUnit {
		t.Errorf("an hour of work leaves %v", left)
	}
	a.credit.SetLimit(rate.Limit(1e18)) // an hour in no time
	rested(t, a)
	if a.left() != creditBurst {
		t.Errorf("an hour of rest leaves %v", a.left())
	}
}

// Coming again does not fill what a key has taken, and keys that owe nothing are
// not kept.
func TestAKeysVisitsShareOneAccount(t *testing.T) {
	var all Accounts
	types := all.Of("one").Typing
	for range keyComesBurst {
		again := all.Of("one").Typing
		if again.Keys != types.Keys || again.Bytes != types.Bytes {
			t.Fatal("a visit types under another limiter")
		}
		if !again.Comes.Allow() {
			t.Fatal("a visit waits")
		}
	}
	if all.Of("one").Typing.Comes.Allow() {
		t.Error("a key that comes again and again never waits")
	}
	if !all.Of("other").Typing.Comes.Allow() {
		t.Error("another key waits for it")
	}
	types.Comes.SetLimit(1e18) // time enough to owe nothing
	rested(t, all.all["one"])
	all.Of("third")
	if all.all["one"] != nil || all.all["other"] == nil {
		t.Errorf("kept are %v", all.all)
	}
}

// rested waits until nothing is owed.
func rested(t *testing.T, a *Account) {
	t.Helper()
	for deadline := time.Now().Add(time.Minute); !a.full(); runtime.Gosched() {
		if time.Now().After(deadline) {
			t.Fatal("what is owed never becomes less")
		}
	}
}
