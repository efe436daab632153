package session

import (
	"fmt"
	"sync"

	tea "charm.land/bubbletea/v2"
)

// Queue works something out away from the screen, one at a time. What is asked for
// while one runs is not begun: whoever asks again at the reply gets the newest, and
// those between are never worked out.
type Queue[K comparable, V any] struct {
	asked   K
	running bool
}

// Reply is what was worked out of something, or the fault of ours that came between.
type Reply[K comparable, V any] struct {
	Of    K
	Value V
	Fault string
}

// Work works something out at once. A fault of ours in there is caught: it must not
// cost what was typed and not saved.
func Work[K comparable, V any](of K, work func() V) (out Reply[K, V]) {
	defer func() {
		if r := recover(); r != nil {
			out = Reply[K, V]{Of: of, Fault: fmt.Sprint(r)}
		}
	}()
	return Reply[K, V]{Of: of, Value: work()}
}

// Ask gives the command that works something out and replies with a Reply; nil while
// another runs.
func (q *Queue[K, V]) Ask(of K, work func() V) tea.Cmd {
	if q.running {
		return nil
	}
	q.asked, q.running = of, true
	return func() tea.Msg { return Work(of, work) }
}

// Asked tells that something is the one being worked out.
func (q *Queue[K, V]) Asked(of K) bool { return q.running && of == q.asked }

// Running tells that something is being worked out.
func (q *Queue[K, V]) Running() bool { return q.running }

// Take receives a reply, and tells whether it is of the newest; one that was overtaken is
// to be dropped.
func (q *Queue[K, V]) Take(r Reply[K, V], newest K) bool {
	if q.running && r.Of == q.asked {
		q.running = false
	}
	return r.Of == newest
}

// Once is what was worked out last for several who ask at the same time.
type Once[K comparable, V any] struct {
	mu   sync.Mutex
	last Reply[K, V]
}

// Get gives it for something, worked out where the last was of something else.
func (o *Once[K, V]) Get(of K, work func() V) Reply[K, V] {
	o.mu.Lock()
	defer o.mu.Unlock()
	if o.last.Of != of {
		o.last = Work(of, work)
	}
	return o.last
}
