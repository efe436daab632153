package settings

import (
	"slices"
	"strconv"
	"strings"

	"trivet/mechanics/diag"
	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/units"
)

// key is a setting: where it stands, what it means, and how it is read and
// written. set gives what is wrong with a text; words are the texts that it may
// have, where they can be listed.
type key struct {
	table, name, says, example string
	get                        func(*Settings) string
	set                        func(*Settings, string) *diag.Error
	words                      func() []string
}

// Help describes a setting for a help page.
type Help struct{ Name, Says, Example string }

// Keys lists the settings in the order of the help: theme, units.length.
func Keys() []Help {
	out := make([]Help, len(keys))
	for i, k := range keys {
		out[i] = Help{k.full(), k.says, k.example}
	}
	return out
}

// full is the name with its table: units.length.
func (k key) full() string {
	if k.table == "" {
		return k.name
	}
	return k.table + "." + k.name
}

// keys is never written to.
var keys = []key{
	word("theme", "colours; auto follows the terminal", func(s *Settings) *string { return &s.Theme }, "auto", "light", "dark", "plain"),
	{"", "ascii", "plain characters only, whatever the terminal supports", "false",
		func(s *Settings) string { return strconv.FormatBool(s.ASCII) },
		func(s *Settings, text string) *diag.Error {
			if text != "true" && text != "false" {
				return diag.New("ascii cannot be "+strconv.Quote(text), "true or false")
			}
			s.ASCII = text == "true"
			return nil
		}, func() []string { return []string{"false", "true"} }},
	word("screen", "linear writes lines of text for a screen reader", func(s *Settings) *string { return &s.Screen }, "full", "linear"),
	{"", "figures", "significant figures of new sheets, 1 to 12", "3",
		func(s *Settings) string { return strconv.Itoa(s.Figures) },
		func(s *Settings, text string) *diag.Error {
			n, err := strconv.Atoi(text)
			if err != nil || n < 1 || n > maxFigures {
				return diag.New("figures is a whole number from 1 to 12, not "+strconv.Quote(text), "3")
			}
			s.Figures = n
			return nil
		}, func() (out []string) {
			for n := range maxFigures {
				out = append(out, strconv.Itoa(n+1))
			}
			return out
		}},
	word("up", "the way up in new sheets in space", func(s *Settings) *string { return &s.Up }, "+z", "+y", "+x", "-x", "-y", "-z"),
	unit("length", units.Length, "m", func(s *Settings) *string { return &s.Length }),
	unit("force", units.Force, "N", func(s *Settings) *string { return &s.Force }),
	unit("angle", units.Angle, "deg", func(s *Settings) *string { return &s.Angle }),
	unit("mass", units.Mass, "kg", func(s *Settings) *string { return &s.Mass }),
}

// maxFigures is that of a sheet.
const maxFigures = 12

func word(name, says string, field func(*Settings) *string, words ...string) key {
	return key{"", name, says, strconv.Quote(words[0]),
		func(s *Settings) string { return *field(s) },
		func(s *Settings, text string) *diag.Error {
			if !slices.Contains(words, text) {
				return diag.New(name+" cannot be "+strconv.Quote(text), say.Or(words...))
			}
			*field(s) = text
			return nil
		}, func() []string { return words }}
}

func unit(name string, d units.Dim, example string, field func(*Settings) *string) key {
	return key{"units", name, "the unit of " + name + " in new sheets", strconv.Quote(example),
		func(s *Settings) string { return *field(s) },
		func(s *Settings, text string) *diag.Error {
			u, err := units.ParseUnit(text)
			switch {
			case text == "":
				*field(s) = ""
			case err != nil:
				return diag.New(err.Msg, err.Hint)
			case u.Dim != d:
				return diag.New("expected a unit of "+name+", but "+strconv.Quote(text)+" is a unit of "+u.Dim.String(), example)
			default:
				*field(s) = u.Symbol
			}
			return nil
		}, func() []string {
			out := []string{""}
			for _, u := range units.Table() {
				if u.Dim == d {
					out = append(out, u.Symbol)
				}
			}
			return out
		}}
}

// add is the edit that writes a setting which the file lacks.
func (k *key) add(text string) sheet.Edit {
	return sheet.AddRow{Table: k.table, Name: k.name, Cells: []sheet.KeyText{{Text: text}}}
}

func find(ref sheet.Ref) *key {
	for i := range keys {
		if keys[i].table == ref.Table && keys[i].name == ref.Row {
			return &keys[i]
		}
	}
	return nil
}

func known(table string) bool { return table == "" || slices.Contains(tableNames(), table) }

func tableNames() []string {
	var out []string
	for _, k := range keys {
		if k.table != "" && !slices.Contains(out, k.table) {
			out = append(out, k.table)
		}
	}
	return out
}

func keyNames(table string) []string {
	var out []string
	for _, k := range keys {
		if k.table == table {
			out = append(out, k.name)
		}
	}
	return out
}

// NewSheet gives a sheet with the settings for new ones in it, from the text of
// a sheet to start from: its own units stay where the settings name none.
func (s Settings) NewSheet(from *sheet.Sheet) (*sheet.Sheet, error) {
	edits := []sheet.Edit{sheet.SetCell{Ref: sheet.Ref{Row: "figures"}, Text: strconv.Itoa(s.Figures)}}
	if plane, _ := from.Cell(sheet.Ref{Row: "plane"}); strings.TrimSpace(plane.Text) == "" {
		edits = append(edits, sheet.SetCell{Ref: sheet.Ref{Row: "up"}, Text: s.Up})
	}
	for _, name := range keyNames("units") {
		k := find(sheet.Ref{Table: "units", Row: name})
		text := k.get(&s)
		if text == "" {
			continue
		}
		if _, there := from.Table("units").Row(name); there {
			edits = append(edits, sheet.SetCell{Ref: sheet.Ref{Table: "units", Row: name}, Text: text})
		} else {
			edits = append(edits, sheet.AddRow{Table: "units", Name: name, Cells: []sheet.KeyText{{Text: text}}})
		}
	}
	next, err := from.Apply(edits...)
	return next, err
}
