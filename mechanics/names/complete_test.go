package names_test

import (
	"fmt"
	"strings"
	"testing"
	"unicode/utf8"

	"trivet/fixtures"
	"trivet/mechanics/names"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
)

// texts are the first few completions at the | of a text.
func texts(s *sheet.Sheet, ref sheet.Ref, text string, most int) string {
	cursor := strings.IndexByte(text, '|')
	text = strings.Replace(text, "|", "", 1)
	var out []string
	for _, c := range names.Complete(s, ref, text, cursor) {
		if len(out) == most {
			out = append(out, "…")
			break
		}
		out = append(out, text[:c.From]+c.Text+text[c.To:])
	}
	return strings.Join(out, " | ")
}

func TestComplete(t *testing.T) {
	s := parse(t, rig)
	for _, c := range []struct {
		table, row, key, text string
		want                  string // the cell with each completion in it
	}{
		{"lines", "X", "kind", "|", "cable | strut | link | spring | force | weight | contact | belt"},
		{"lines", "X", "kind", "c|", "cable | contact"},
		{"lines", "X", "kind", "C|a", "cable | contact"},
		{"joints", "X", "kind", "sock|", "ball-and-socket"},
		{"joints", "X", "kind", "ro|", "roller | rocker | rough-surface"},
		{"joints", "X", "moments", "|", "none"},
		{"", "plane", "", "|", "xy"},
		{"", "expect", "", "no|", "no-equilibrium"},
		{"", "title", "", "T|", ""},
		{"units", "force", "", "k|", "kN | kip | kgf"},
		{"lines", "X", "path", "|", "O | B | A | P | C | D | N"},
		{"lines", "X", "path", "O |", "O B | O A | O P | O C | O D | O N"},
		{"lines", "X", "at", "p|", "P"},
		{"points", "X", "on", "|", "boom | particle"},
		{"joints", "X", "on", "|", "boom | P | ground"},
		{"couples", "X", "on", "bo|", "boom"},
		{"points", "X", "at", "4, 0, |", "4, 0, h | 4, 0, W | 4, 0, w | 4, 0, O…"},
		{"points", "X", "at", "4 k|", "4 km"},
		{"points", "X", "at", "Q + dir(|", "Q + dir(O | Q + dir(B | Q + dir(A | Q + dir(P…"},
		{"points", "B", "at", "2*(O + |", "2*(O + h | 2*(O + W | 2*(O + w | 2*(O + O…"},
		{"lines", "X", "magnitude", "2*T|", "2*T1 | 2*T2 | 2*T3 | 2*tan("},
		{"lines", "T1", "magnitude", "0.3*T|", "0.3*T2 | 0.3*T3 | 0.3*tan("},
		{"lines", "X", "magnitude", "O|", "Ox | Oy"},
		{"lines", "X", "magnitude", "S|", "S | sqrt( | sin("},
		{"lines", "X", "magnitude", "400 |", "400 N | 400 daN | 400 kN | 400 MN…"},
		{"lines", "X", "magnitude", "400 l|b", "400 lbf"},
		{"lines", "X", "along", "|", "+x | -x | +y | -y…"},
		{"lines", "X", "along", "-|", "-x | -y…"},
		{"lines", "X", "along", "po|", "polar("},
		{"lines", "X", "along", "dir(O, |", "dir(O, O | dir(O, B | dir(O, A | dir(O, P…"},
		{"distributed", "X", "magnitude", "2 kN/|", "2 kN/m"},
		{"distributed", "X", "magnitude", "2 |", "2 N/m | 2 kN/m | 2 N/mm | 2 lbf/ft…"},
		{"distributed", "X", "magnitude", "w*s|", "w*s | w*sqrt( | w*sin("},
		{"given", "w", "", "|", "h | W | sqrt( | sin(…"},
		{"given", "w", "value", "6 m|", "6 m | 6 mm | 6 mi | 6 MN…"},
		{"answers", "T1", "", "76 kN |", "76 kN T | 76 kN C | 76 kN tension | 76 kN compression"},
		{"answers", "T1", "", "76 kN co|", "76 kN compression"},
		{"answers", "Ox", "", "76 kN co|", ""},
		{"lines", "X", "along", "sl|", "slope "},
		{"", "asked", "", "ab|", "abs("},
		{"", "asked", "", "abs(O|", "abs(Ox | abs(Oy | abs(O."},
		{"answers", "T1", "", "76 k|", "76 km | 76 kN | 76 kip | 76 kgf…"},
		{"", "asked", "", "T1 T|", "T1 T1 | T1 T2 | T1 T3"},
		{"", "asked", "", "T1.|", "T1.x | T1.y | T1.size | T1.alpha…"},
		{"", "asked", "", "O.|", "O.x | O.y | O.size | O.alpha…"},
		{"", "asked", "", "boom.|", "boom.loads."},
		{"", "asked", "", "boom.loads.m|", "boom.loads.mz"},
		{"", "asked", "", "P.loads.m|", ""},
		{"", "asked", "", "q.a|", "q.alpha | q.angle | q.at"},
		{"", "asked", "", "angle(T1, |", "angle(T1, T1 | angle(T1, T2 | angle(T1, T3 | angle(T1, N…"},
		{"", "asked", "", "co|", "component("},
		{"views", "X", "a", "|", ""},
		{"lines", "X", "colour", "|", ""},
	} {
		most := 100
		want := strings.TrimSuffix(c.want, "…")
		if want != c.want {
			most = strings.Count(want, " | ") + 1
			want += " | …"
		}
		if got := texts(s, sheet.Ref{Table: c.table, Row: c.row, Key: c.key}, c.text, most); got != want {
			t.Errorf("[%s] %s %q:\n  %s, want\n  %s", c.table, c.key, c.text, got, want)
		}
	}
}

func TestCompleteSays(t *testing.T) {
	s := parse(t, rig)
	for _, c := range []struct{ table, key, text, says string }{
		{"lines", "kind", "cab", "a rope or cable: can pull, not push"},
		{"lines", "path", "B", "point at 4 m, h, on boom"},
		{"points", "on", "boom", "body, weight W"},
		{"lines", "magnitude", "T1", "cable B A"},
		{"lines", "magnitude", "Ox", "force of the joint O"},
		{"lines", "magnitude", "S", "an unknown that several lines share"},
		{"lines", "magnitude", "w", "given, 10 N"},
		{"lines", "magnitude", "4 kip", "kip (1000 lbf)"},
		{"lines", "along", "pol", "polar(angle): unit vector in a plane, angle from +x counter-clockwise"},
		{"couples", "magnitude", "M0", "couple on boom"},
	} {
		all := names.Complete(s, sheet.Ref{Table: c.table, Row: "X", Key: c.key}, c.text, len(c.text))
		if len(all) == 0 || all[0].Says != c.says {
			t.Errorf("%q: %v, want %s", c.text, all, c.says)
		}
	}
}

func TestDefinition(t *testing.T) {
	s := parse(t, rig)
	for _, c := range []struct {
		ref  sheet.Ref
		text string
		want string
	}{
		{sheet.Ref{Table: "lines", Row: "T1", Key: "path"}, "|B A", "[points] B at"},
		{sheet.Ref{Table: "lines", Row: "T1", Key: "path"}, "B A|", "[points] A"},
		{sheet.Ref{Table: "lines", Row: "T3", Key: "magnitude"}, "0.5 T|2 + 0*S", "[lines] T2 kind"},
		{sheet.Ref{Table: "lines", Row: "N", Key: "magnitude"}, "S|", "[lines] T3 magnitude"},
		{sheet.Ref{Table: "lines", Row: "F", Key: "along"}, "dir(B|, A)", "[points] B at"},
		{sheet.Ref{Table: "points", Row: "O", Key: "on"}, "b|oom", "[bodies] boom weight"},
		{sheet.Ref{Table: "given", Row: "W", Key: "value"}, "2*w|", "[given] w"},
		{sheet.Ref{Row: "asked"}, "T1 Ox|", "[joints] O kind"},
		{sheet.Ref{Row: "asked"}, "angle(T1, T|2)", "[lines] T2 kind"},
		{sheet.Ref{Row: "asked"}, "q|.size", "[distributed] q on"},
		{sheet.Ref{Row: "asked"}, "P|.loads.x", "[points] P at"},
		{sheet.Ref{Row: "asked"}, "M|0", "[couples] M0 on"},
		{sheet.Ref{Table: "lines", Row: "X", Key: "magnitude"}, "2 N|", ""},
		{sheet.Ref{Table: "lines", Row: "X", Key: "magnitude"}, "2*T1 + |", ""},
		{sheet.Ref{Table: "lines", Row: "X", Key: "magnitude"}, "2*T1| +", "[lines] T1 kind"},
		{sheet.Ref{Table: "lines", Row: "T1", Key: "kind"}, "cab|le", ""},
	} {
		cursor := strings.IndexByte(c.text, '|')
		ref, ok := names.Definition(s, c.ref, strings.Replace(c.text, "|", "", 1), cursor)
		got := ""
		if ok {
			got = strings.TrimSpace(fmt.Sprintf("[%s] %s %s", ref.Table, ref.Row, ref.Key))
		}
		if got != c.want {
			t.Errorf("%v %q: %s, want %s", c.ref, c.text, got, c.want)
		}
	}
}

// FuzzComplete: whatever is typed, wherever the cursor stands, completions
// replace a piece of the text around the cursor, none twice.
func FuzzComplete(f *testing.F) {
	var refs []sheet.Ref
	for _, t := range problem.Tables() {
		for _, k := range t.Keys {
			ref := sheet.Ref{Table: t.Name, Row: "T1", Key: k.Name}
			if t.Fixed {
				ref = sheet.Ref{Table: t.Name, Row: k.Name}
			}
			refs = append(refs, ref)
		}
	}
	for i, text := range []string{"", "2*T1", "dir(A, ", "4 kN/", "boom.loads.", "-", "angle(T1, ", "°'\"±", "1e400", "(((("} {
		for k := range refs {
			f.Add(text, len(text)-i%3, k)
		}
	}
	s := parse(f, rig)
	f.Fuzz(func(t *testing.T, text string, cursor, which int) {
		ref := refs[uint(which)%uint(len(refs))]
		seen := map[string]bool{}
		at := max(0, min(cursor, len(text)))
		for _, c := range names.Complete(s, ref, text, cursor) {
			if c.From < 0 || c.From > at || c.To < at || c.To > len(text) || c.Text == "" || c.Says == "" || seen[c.Text] {
				t.Fatalf("%q at %d: %+v", text, cursor, c)
			}
			if utf8.ValidString(text) && !utf8.ValidString(text[:c.From]+c.Text+text[c.To:]) && utf8.RuneStart((text + "x")[at]) {
				t.Fatalf("%q at %d: %+v cuts a character", text, cursor, c)
			}
			seen[c.Text] = true
		}
		names.Definition(s, ref, text, cursor)
	})
}

// BenchmarkComplete is one keystroke's completions in a truss.
func BenchmarkComplete(b *testing.B) {
	start, _ := fixtures.Get("planar-truss")
	s := parse(b, start.Answered())
	for b.Loop() {
		names.Complete(s, sheet.Ref{Table: "lines", Row: "X", Key: "magnitude"}, "2*", 2)
	}
}
