package topic_test

import (
	"flag"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"trivet/mechanics/doc"
	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/mechanics/statics"
	"trivet/tui/keys"
	"trivet/tui/topic"
	"trivet/units"
)

var update = flag.Bool("update", false, "write the tables of the topics that follow from the program anew")

const folder = "../../fixtures/help"

// code is a text as it is typed, in a cell of a table; several stand two blanks apart.
func code(text string) string {
	if text == "" {
		return ""
	}
	var out []string
	for one := range strings.SplitSeq(text, "  ") {
		out = append(out, "`"+strings.ReplaceAll(one, "|", `\|`)+"`")
	}
	return strings.Join(out, " ")
}

// table is a table in Markdown; its first row is the head.
func table(rows ...[]string) string {
	var b strings.Builder
	for i, r := range rows {
		b.WriteString("|")
		for _, cell := range r {
			b.WriteString(strings.TrimRight(" "+cell, " ") + " |")
		}
		b.WriteString("\n")
		if i == 0 {
			b.WriteString("|" + strings.Repeat("---|", len(r)) + "\n")
		}
	}
	return b.String()
}

// under are the tables that follow from the program, by topic and by the heading that
// they stand under.
func under() map[string]map[string]string {
	kinds := [][]string{{"kind", "is", "positive"}}
	for _, k := range problem.Kinds() {
		kinds = append(kinds, []string{code(k.Name), k.Holds, k.Positive})
	}
	ofSheet := map[string]string{"Lines": table(kinds...)}
	expect := [][]string{{"expect", "is"}}
	for _, t := range problem.Tables() {
		rows := [][]string{{"key", "is", "example"}}
		for _, k := range t.Keys {
			rows = append(rows, []string{code(k.Name), k.Says, code(k.Example)})
			if k.Name != "expect" {
				continue
			}
			for _, w := range k.Words {
				if w.Text != "" {
					expect = append(expect, []string{code(w.Text), w.Says})
				}
			}
		}
		if t.Name == "" {
			ofSheet["Keys of the header"] = table(rows...)
		} else {
			ofSheet["Keys of ["+t.Name+"]"] = table(rows...)
		}
	}
	supports, does := [][]string{{"support", "in the plane", "in space"}}, [][]string{{"support", "in words"}}
	for _, j := range problem.Joints() {
		supports = append(supports, []string{code(j.Name), holds(j.Plane, 2), holds(j.Space, 3)})
		does = append(does, []string{code(j.Name), j.Says})
	}
	functions := [][]string{{"function", "is"}}
	for _, f := range units.Functions() {
		functions = append(functions, []string{code(f.Usage), f.Says})
	}
	unitRows := [][]string{{"unit", "is", "also"}}
	for _, u := range units.Table() {
		unitRows = append(unitRows, []string{code(u.Symbol), u.Name, code(strings.Join(u.Aliases, "  "))})
	}
	return map[string]map[string]string{
		"sheet":    ofSheet,
		"supports": {"Supports and connections": table(supports...), "What each does": table(does...)},
		"cells":    {"Functions": table(functions...), "Units": table(unitRows...)},
		"verdicts": {"A sheet that teaches what goes wrong": table(expect...)},
	}
}

// holds counts what a support exerts: "3 forces, 2 moments; normal".
func holds(h problem.Holds, dims int) string {
	if !h.Stands {
		return "-"
	}
	forces := map[problem.Hold]int{problem.HoldAll: dims, problem.HoldNormal: 1, problem.HoldAcross: dims - 1, problem.HoldRough: dims}[h.Forces]
	moments := map[problem.Hold]int{problem.HoldAll: 2*dims - 3, problem.HoldAcross: 2*dims - 4}[h.Moments]
	var parts []string
	if forces > 0 {
		parts = append(parts, say.Count(forces, "force"))
	}
	if moments > 0 {
		parts = append(parts, say.Count(moments, "moment"))
	}
	words := strings.Join(parts, ", ")
	if h.Needs != "" {
		words += "; " + h.Needs
	}
	return words
}

// keyTables is the whole topic of keys.
func keyTables() string {
	var b strings.Builder
	b.WriteString("# Keys\n\nNothing needs the mouse: each key is listed here, and in the workbench under `f1`.\n")
	for s := range keys.Scopes {
		rows := [][]string{{"key", "does"}}
		for _, k := range keys.Table() {
			if k.Scope == s {
				rows = append(rows, []string{code(strings.Join(k.Keys, "  ")), k.Help})
			}
		}
		b.WriteString("\n## " + s.String() + "\n\n" + table(rows...))
	}
	return b.String()
}

// placed is a topic with a table put in place of the one under a heading.
func placed(text, heading, table string) string {
	head, rest, ok := strings.Cut(text, "# "+heading+"\n")
	start := strings.Index(rest, "\n|") + 1
	if !ok || start == 0 {
		return text
	}
	end := len(rest)
	if i := strings.Index(rest[start:], "\n\n"); i >= 0 {
		end = start + i + 1
	}
	return head + "# " + heading + "\n" + rest[:start] + table + rest[end:]
}

// What the topics list is what the program has.
func TestTablesAreTheProgramsOwn(t *testing.T) {
	for _, name := range topic.Names() {
		text, _ := topic.Source(name)
		want := text
		for heading, table := range under()[name] {
			if want = placed(want, heading, table); !strings.Contains(want, "# "+heading+"\n") {
				t.Errorf("%s has no heading %q", name, heading)
			}
		}
		if name == "keys" {
			want = keyTables()
		}
		switch {
		case want == text:
		case *update:
			if err := os.WriteFile(filepath.Join(folder, name+".md"), []byte(want), 0o644); err != nil {
				t.Error(err)
			}
		default:
			t.Errorf("the tables of %s.md are not the program's: -update writes them anew", name)
		}
	}
}

// Each verdict of the program has its row.
func TestVerdictsAreExplained(t *testing.T) {
	text, _ := topic.Source("verdicts")
	for _, v := range []statics.Verdict{statics.Determinate, statics.Inadmissible, statics.Indeterminate, statics.NoEquilibrium, statics.Resultant} {
		if !strings.Contains(text, "\n| "+strings.ReplaceAll(v.String(), "-", " ")+" |") {
			t.Errorf("verdicts.md does not explain %q", v)
		}
	}
}

// typed are the cells of the first column of the table under a heading.
func typed(t *testing.T, name, heading string) (cells []string) {
	t.Helper()
	d, _ := topic.Of(name)
	if d.Title == heading {
		heading = ""
	}
	i := slices.IndexFunc(d.Sections, func(s doc.Section) bool { return s.Title == heading })
	for _, b := range d.Sections[i].Blocks {
		if table, ok := b.(*doc.Table); ok {
			for _, r := range table.Rows {
				cells = append(cells, r[0].Words)
			}
		}
	}
	if len(cells) == 0 {
		t.Fatalf("no table in %s under %q", name, heading)
	}
	return cells
}

// reads tells whether a sheet reads, in the plane or in space.
func reads(t *testing.T, text string) bool {
	t.Helper()
	for _, header := range []string{"", "plane = \"xy\"\n"} {
		s, err := sheet.Parse([]byte(header + text))
		if err != nil {
			t.Fatal(err)
		}
		if _, errs := problem.Read(s); len(errs) == 0 {
			return true
		}
	}
	return false
}

// Whatever the topic of cells shows as typed can be typed.
func TestExamplesRead(t *testing.T) {
	quoted := func(cell string) string { return "'''" + cell + "'''" }
	const points = "[points]\nP = { at = \"0, 0, 0\", on = \"particle\" }\nA = \"0, 3, 0\"\nB = \"1, 3, 0\"\n[lines]\nT1 = { kind = \"cable\", path = \"P A\" }\n"
	const given = "[given]\nW = \"10 N\"\n"
	for _, cell := range typed(t, "cells", "What a cell may hold") {
		if !reads(t, given+"x = "+quoted(cell)+"\n"+points) {
			t.Errorf("the cell %q does not read", cell)
		}
	}
	for _, cell := range typed(t, "cells", "Directions") {
		if !reads(t, points+"F = { kind = \"force\", at = \"P\", along = "+quoted(cell)+" }\n") {
			t.Errorf("the direction %q does not read", cell)
		}
	}
	for _, cell := range typed(t, "cells", "Magnitudes") {
		if !reads(t, given+points+"F = { kind = \"weight\", at = \"P\", magnitude = "+quoted(cell)+" }\n") {
			t.Errorf("the magnitude %q does not read", cell)
		}
	}
}

// The sheet that is shown is one.
func TestTheSheetShownReads(t *testing.T) {
	d, _ := topic.Of("sheet")
	for _, b := range d.Sections[0].Blocks {
		if c, ok := b.(*doc.Code); ok && reads(t, c.Text) {
			return
		}
	}
	t.Error("no sheet in sheet.md reads")
}
