package problem

import (
	"slices"
	"testing"

	"trivet/units"
)

// Every example of the table of keys reads as what the table says.
func TestKeysHold(t *testing.T) {
	for _, table := range Tables() {
		if table.Says == "" || table.Row == "" {
			t.Errorf("[%s] says nothing", table.Name)
		}
		if _, ok := table.Key(table.Plain); table.Plain != "" && !ok {
			t.Errorf("[%s]: no key %s", table.Name, table.Plain)
		}
		seen := map[string]bool{}
		for _, k := range table.Keys {
			if seen[k.Name] || k.Says == "" || k.Example == "" {
				t.Errorf("[%s] %s: twice, or says nothing, or has no example", table.Name, k.Name)
			}
			seen[k.Name] = true
			switch k.Reads {
			case ReadsWord:
				if !slices.ContainsFunc(k.Words, func(w Word) bool { return w.Text == k.Example }) {
					t.Errorf("[%s] %s: %q is none of its words", table.Name, k.Name, k.Example)
				}
			case ReadsUnit:
				if u, err := units.ParseUnit(k.Example); err != nil || u.Dim != k.Dim {
					t.Errorf("[%s] %s: %q is no such unit", table.Name, k.Name, k.Example)
				}
			case ReadsQuantity, ReadsValue, ReadsDirection, ReadsMagnitude, ReadsPrinted, ReadsVector:
				if _, err := units.Parse(k.Example); err != nil {
					t.Errorf("[%s] %s: %q does not read: %v", table.Name, k.Name, k.Example, err)
				}
			case ReadsRange, ReadsIntensity:
				if _, _, err := units.ParseRange(k.Example); err != nil {
					t.Errorf("[%s] %s: %q does not read: %v", table.Name, k.Name, k.Example, err)
				}
			}
		}
	}
}

func TestWordsAreThoseRead(t *testing.T) {
	up, _ := CellKey("", "up", "")
	for _, w := range up.Words {
		if _, ok := axes[w.Text]; w.Text != "" && !ok {
			t.Errorf("%q is no axis", w.Text)
		}
	}
	if k, ok := CellKey("answers", "source", ""); !ok || k.Reads != ReadsText {
		t.Errorf("source is read as %v", k)
	}
	if _, ok := CellKey("lines", "T", ""); ok {
		t.Error("a line is no plain value")
	}
	for _, table := range Tables() {
		if what := ThingOf(table.Name); (what == NoThing) == (!table.Fixed && table.Name != "answers") {
			t.Errorf("[%s] holds a %v", table.Name, what)
		}
	}
}
