package problem

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"trivet/mechanics/sheet"
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
	up, _ := cellKey("", "up", "")
	for _, w := range up.Words {
		if _, ok := axes[w.Text]; w.Text != "" && !ok {
			t.Errorf("%q is no axis", w.Text)
		}
	}
	if k, ok := cellKey("answers", "source", ""); !ok || k.Reads != ReadsText {
		t.Errorf("source is read as %v", k)
	}
	if _, ok := cellKey("lines", "T", ""); ok {
		t.Error("a line is no plain value")
	}
	for _, table := range Tables() {
		if what := ThingOf(table.Name); (what == NoThing) == (!table.Fixed && table.Name != "answers") {
			t.Errorf("[%s] holds a %v", table.Name, what)
		}
	}
}

// Uses are in the order of the text and lie where they say.
func TestUsesLieWhereTheySay(t *testing.T) {
	for name, text := range bases() {
		s, err := sheet.Parse([]byte(text))
		if err != nil {
			t.Fatal(err)
		}
		for _, u := range symbolsOf(s).uses {
			text := u.Ref.Row
			if !u.InName {
				c, _ := s.Cell(u.Ref)
				text = c.Text
			}
			if u.Span.End > len(text) || text[u.Span.Start:u.Span.End] != u.Name {
				t.Errorf("%s: %+v lies at %q", name, u, text)
			}
		}
	}
}

// A key that the table says a kind does not use changes nothing of what is read, and is
// noted or refused; one that it uses is neither noted nor an error of its name.
func TestKeysAreUsedByTheirKinds(t *testing.T) {
	type row struct{ table, kind, cells string }
	var rows []row
	for _, k := range kinds {
		cells := `at = "B", along = "-y"`
		if k.Path {
			cells = `path = "A B"`
		}
		if k.Kind == BeltKind {
			cells = `path = "A B A", friction = "0.3"`
		}
		rows = append(rows, row{"lines", k.Name, cells})
	}
	for _, k := range joints {
		cells := `at = "O"`
		for _, key := range []string{"normal", "axis"} {
			if k.Plane.Needs == key || k.Space.Needs == key {
				cells += ", " + key + ` = "+y"`
			}
		}
		rows = append(rows, row{"joints", k.Name, cells})
	}
	for _, row := range rows {
		info, _ := tableNamed(row.table)
		for _, key := range info.Keys {
			if key.Kinds == nil || strings.Contains(row.cells, key.Name+" =") {
				continue
			}
			text := func(more string) string {
				return "[points]\nO = { at = \"0, 0, 0\", on = \"beam\" }\nB = { at = \"4, 0, 0\", on = \"beam\" }\nA = \"4, 3, 0\"\n[" + row.table + "]\nR = { kind = \"" + row.kind + "\", " + row.cells + more + " }\n"
			}
			read := func(text string) (*Problem, []Error) {
				s, err := sheet.Parse([]byte(text))
				if err != nil {
					t.Fatal(err)
				}
				return Read(s)
			}
			plain, errs := read(text(""))
			if len(errs) > 0 || len(plain.Unread) > 0 {
				t.Fatalf("%s: %v %v", text(""), errs, plain.Unread)
			}
			p, errs := read(text(", " + key.Name + " = \"" + key.Example + "\""))
			noted := slices.ContainsFunc(p.Unread, func(e Error) bool { return e.Ref.Key == key.Name })
			refused := slices.ContainsFunc(errs, func(e Error) bool { return e.Ref.Key == key.Name })
			switch {
			case key.UsedBy(row.kind):
				if noted {
					t.Errorf("a %s uses %s, and %v", row.kind, key.Name, p.Unread)
				}
			case !noted && !refused:
				t.Errorf("a %s does not use %s, and nothing is said", row.kind, key.Name)
			case noted && !reflect.DeepEqual(p.Unknowns, plain.Unknowns):
				t.Errorf("a %s does not use %s, and with it has the unknowns %v", row.kind, key.Name, p.Unknowns)
			}
		}
	}
}
