package keys

import (
	"slices"
	"testing"
)

func TestNoKeyMeansTwoThings(t *testing.T) {
	for m := range Modes {
		// A nearer scope may not hide a key of a farther one: the help would lie.
		seen := map[string]Binding{}
		for _, s := range m.Scopes() {
			for _, b := range Table() {
				if b.Scope != s {
					continue
				}
				for _, k := range b.Keys {
					if old, ok := seen[k]; ok {
						t.Errorf("mode %d: %s is %q and %q", m, k, old.Help, b.Help)
					}
					seen[k] = b
				}
			}
		}
	}
}

func TestEveryBindingIsFoundAndExplained(t *testing.T) {
	reached := map[Scope]bool{}
	for m := range Modes {
		for _, s := range m.Scopes() {
			reached[s] = true
		}
		for _, b := range Table() {
			for _, k := range b.Keys {
				if got, ok := Find(m, k); ok && got.Intent == None {
					t.Errorf("%s has no intent", k)
				}
			}
		}
	}
	for _, b := range Table() {
		if !reached[b.Scope] || b.Help == "" || len(b.Keys) == 0 || b.Scope.String() == "" {
			t.Errorf("%+v is never reached or not explained", b)
		}
	}
	if _, ok := Find(OnCells, "ctrl+b"); ok {
		t.Error("ctrl+b is tmux's")
	}
}

func TestACharacterIsNeverACommandOnACell(t *testing.T) {
	for _, m := range []Mode{OnCells, InCell, OnName} {
		for _, b := range Table() {
			for _, k := range b.Keys {
				if got, ok := Find(m, k); ok && len(k) == 1 && k != "?" {
					t.Errorf("mode %d: %s is taken by %q", m, k, got.Help)
				}
			}
		}
	}
	if _, ok := Find(InCell, "?"); ok {
		t.Error("? cannot be typed into a magnitude")
	}
}

// What a reader may do, and what keeps a cell first, are keys that there are.
func TestIntentsNamedHaveAKey(t *testing.T) {
	for _, i := range append(slices.Clone(looking), keeping...) {
		if !slices.ContainsFunc(Table(), func(b Binding) bool { return b.Intent == i }) {
			t.Errorf("intent %d has no key", i)
		}
	}
}
