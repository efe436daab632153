package pace

import (
	"sync"
	"time"

	"golang.org/x/time/rate"
)

// Turns is when a visitor's work is done: it does f, and tells how long f took.
type Turns interface{ Do(f func()) time.Duration }

// AtOnce is for those who wait for nobody: a presenter, and a class.
type AtOnce struct{}

// Do does f now.
func (AtOnce) Do(f func()) time.Duration {
	from := time.Now()
	f()
	return time.Since(from)
}

// queueRests is how many times the time of a piece of work the queue is left alone
// after it: all work there takes half a core at most, however many ask for it.
const queueRests = 1

// Queue is for what no class waits for, one piece of work at a time, in the order
// in which it came.
type Queue struct{ mu sync.Mutex }

// Do does not wait for the rest, which is the next one's.
func (l *Queue) Do(f func()) time.Duration {
	l.mu.Lock()
	from := time.Now()
	defer func() { time.AfterFunc(queueRests*time.Since(from), l.mu.Unlock) }()
	f()
	return time.Since(from)
}

// What a private visitor may have computed at once, and a second after that
// without going into the slow queue: typing and looking around take a hundredth
// of a core, a held key on a large sheet a tenth.
const (
	creditBurst     = 400 * time.Millisecond
	creditPerSecond = 100 * time.Millisecond
	creditUnit      = time.Microsecond // as it is counted
)

// Account is what one key's visits may take in all, so that coming again does not
// fill it. Who has used up the computing time, as nobody does for long who types, waits in
// the queue with all the others who have.
type Account struct {
	slow   *Queue
	Typing Typing
	credit *rate.Limiter // of computing time, twice the burst: the lower half is debt
}

func newAccount(slow *Queue) *Account {
	a := &Account{slow: slow, Typing: Worker(), credit: rate.NewLimiter(rate.Limit(creditPerSecond/creditUnit), int(2*creditBurst/creditUnit))}
	a.Typing.Comes = rate.NewLimiter(keyComesPerSecond, keyComesBurst)
	return a
}

// Do does f now, or in its turn where the computing time is used up.
func (a *Account) Do(f func()) time.Duration {
	var by Turns = AtOnce{}
	if a.left() <= 0 {
		by = a.slow
	}
	took := by.Do(f)
	a.spend(took)
	return took
}

// left is the computing time that is not used up, negative where it is owed.
func (a *Account) left() time.Duration {
	return time.Duration(a.credit.Tokens())*creditUnit - creditBurst
}

// spend takes from the account, at most into as much debt as it may hold.
func (a *Account) spend(d time.Duration) {
	a.credit.ReserveN(time.Now(), int(min(d, a.left()+creditBurst)/creditUnit))
}

// full tells whether nothing is owed any more.
func (a *Account) full() bool {
	return Full(a.credit) && Full(a.Typing.Comes) && Full(a.Typing.Keys) && Full(a.Typing.Bytes)
}

// Accounts are kept by key until nothing is owed any more.
type Accounts struct {
	slow Queue
	mu   sync.Mutex
	all  map[string]*Account
}

// Of gives a key its account.
func (a *Accounts) Of(key string) *Account {
	a.mu.Lock()
	defer a.mu.Unlock()
	if a.all == nil {
		a.all = map[string]*Account{}
	}
	for k, v := range a.all {
		if k != key && v.full() {
			delete(a.all, k)
		}
	}
	if a.all[key] == nil {
		a.all[key] = newAccount(&a.slow)
	}
	return a.all[key]
}
