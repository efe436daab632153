package names

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
)

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
	for _, k := range problem.Kinds() {
		cells := `at = "B", along = "-y"`
		if k.Path {
			cells = `path = "A B"`
		}
		if k.Kind == problem.BeltKind {
			cells = `path = "A B A", friction = "0.3"`
		}
		rows = append(rows, row{"lines", k.Name, cells})
	}
	for _, k := range problem.Joints() {
		cells := `at = "O"`
		for _, key := range []string{"normal", "axis"} {
			if k.Plane.Needs == key || k.Space.Needs == key {
				cells += ", " + key + ` = "+y"`
			}
		}
		rows = append(rows, row{"joints", k.Name, cells})
	}
	for _, row := range rows {
		info, _ := problem.TableNamed(row.table)
		for _, key := range info.Keys {
			if key.Kinds == nil || strings.Contains(row.cells, key.Name+" =") {
				continue
			}
			text := func(more string) string {
				return "[points]\nO = { at = \"0, 0, 0\", on = \"beam\" }\nB = { at = \"4, 0, 0\", on = \"beam\" }\nA = \"4, 3, 0\"\n[" + row.table + "]\nR = { kind = \"" + row.kind + "\", " + row.cells + more + " }\n"
			}
			read := func(text string) (*problem.Problem, []problem.Error) {
				s, err := sheet.Parse([]byte(text))
				if err != nil {
					t.Fatal(err)
				}
				return Read(problem.NewReader(), s)
			}
			plain, errs := read(text(""))
			if len(errs) > 0 || len(plain.Unread) > 0 {
				t.Fatalf("%s: %v %v", text(""), errs, plain.Unread)
			}
			p, errs := read(text(", " + key.Name + " = \"" + key.Example + "\""))
			noted := slices.ContainsFunc(p.Unread, func(e problem.Error) bool { return e.Ref.Key == key.Name })
			refused := slices.ContainsFunc(errs, func(e problem.Error) bool { return e.Ref.Key == key.Name })
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
