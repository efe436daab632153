package tui

import (
	"fmt"
	"sync"
	"testing"

	"trivet/tui/keys"
)

// deed is something done at the terminal. Its last key is the one that is tested:
// the effect was not there before it, and is there after it.
type deed struct {
	does   string
	effect effect
}

// script is a sitting of deeds that follow each other.
type script struct {
	name  string
	at    seating
	deeds []deed
	first func(s *seat) // what somebody else does meanwhile
}

// pressed are the bindings whose keys were pressed with an effect that was seen.
type pressed struct {
	mu   sync.Mutex
	keys map[string]bool
}

func scoped(s keys.Scope, key string) string { return fmt.Sprintf("%s: %s", s, key) }

func (p *pressed) add(mode keys.Mode, key string) {
	p.mu.Lock()
	defer p.mu.Unlock()
	if b, ok := keys.Find(mode, key); ok {
		p.keys[scoped(b.Scope, key)] = true
	}
}

// run plays a script, and tells of each key that it pressed.
func (c script) run(t *testing.T, done func(keys.Mode, string)) {
	t.Helper()
	s := sit(t, c.at)
	if c.first != nil {
		c.first(s)
	}
	for _, d := range c.deeds {
		list, err := strokes(d.does)
		if err != nil || len(list) == 0 {
			t.Fatalf("%q: %v", d.does, err)
		}
		s.plays(list[:len(list)-1])
		before, key := s.sees(), list[len(list)-1]
		mode, _ := s.watch.now()
		s.plays([]stroke{key})
		after := s.sees()
		if says := d.effect(before, after); says != "" {
			t.Errorf("%s: after %s: %s; before\n%s and after\n%s", c.name, d.does, says, before.text, after.text)
			continue
		}
		done(mode, key.name)
	}
}

// unseenKeys are keys whose effect no script can see, with the reason.
var unseenKeys = map[string]string{}

func TestEveryBoundKeyHasItsEffect(t *testing.T) {
	p := &pressed{keys: map[string]bool{}}
	t.Run("scripts", func(t *testing.T) {
		for _, c := range boundScripts() {
			t.Run(c.name, func(t *testing.T) {
				t.Parallel()
				c.run(t, p.add)
			})
		}
	})
	if t.Failed() {
		return // what was not seen there is not counted here once more
	}
	for _, b := range keys.Table() {
		for _, k := range b.Keys {
			name := scoped(b.Scope, k)
			if _, excused := unseenKeys[name]; excused == p.keys[name] {
				t.Errorf("%s (%s): pressed in a script with an effect: %v; excused: %v", name, b.Help, p.keys[name], excused)
			}
		}
	}
}
