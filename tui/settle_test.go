package tui

import (
	"reflect"
	"strings"
	"testing"

	"trivet/mechanics/sheet"
	"trivet/tui/start"
)

// TestEachPartIsMadeOnce counts what a key has made anew, its result included: a
// character divides no screen again and an arrow makes no scene.
func TestEachPartIsMadeOnce(t *testing.T) {
	typed := []string{"right", "2", ",", "0", ",", "1"}
	for _, c := range []struct {
		name   string
		before []string
		key    string
		want   counts
	}{
		{"a character", typed, "5", counts{tables: 1, texts: 1, scenes: 1}},
		{"a character that leaves no place, and the result of the cell as it was kept", typed, ",", counts{tables: 1, texts: 1, scenes: 1}},
		{"enter, which shows the cell kept and then its result", typed, "enter", counts{tables: 2, texts: 1, scenes: 1}},
		{"an arrow in the cells", nil, "down", counts{}},
		{"an arrow in a result", []string{"alt+y"}, "down", counts{}},
		{"a turn of the picture", []string{"alt+i"}, "left", counts{}},
		{"another result", nil, "alt+t", counts{layouts: 1, texts: 1}},
		{"one pane on the whole screen", nil, "ctrl+e", counts{layouts: 1}},
		{"undo", append(typed, "enter"), "ctrl+z", counts{tables: 2, texts: 1, scenes: 1}},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := newRig(t, crane, 120, 36)
			r.keys(c.before...)
			was := r.m.count
			r.keys(c.key)
			is := r.m.count
			got := counts{is.layouts - was.layouts, is.tables - was.tables, is.texts - was.texts, is.scenes - was.scenes}
			if got != c.want {
				t.Errorf("%+v, want %+v", got, c.want)
			}
		})
	}
}

// What is drawn follows from the sheet as it is, whatever was kept of the one before.
func TestNothingOfAnotherSheetIsKept(t *testing.T) {
	r := newRig(t, crane, 120, 36)
	fresh := newRig(t, hanging, 120, 36)
	s, err := sheet.Parse([]byte(hanging))
	if err != nil {
		t.Fatal(err)
	}
	r.do(r.m.open(start.Fetched{Of: start.Sheet{Path: "lamp.toml"}, Sheet: s}))
	if got, want := r.screen(), fresh.screen(); got != want {
		t.Errorf("after another sheet was opened:\n%s\nwant\n%s", got, want)
	}
}

// TestNoPartOfTheModelIsTooLarge: whoever reads one struct holds it in their head.
func TestNoPartOfTheModelIsTooLarge(t *testing.T) {
	const most = 25
	seen := map[reflect.Type]bool{}
	var check func(of reflect.Type)
	check = func(of reflect.Type) {
		if of.Kind() != reflect.Struct || seen[of] || !strings.HasPrefix(of.PkgPath(), "trivet/tui") {
			return
		}
		seen[of] = true
		if of.NumField() > most {
			t.Errorf("%v has %d fields, more than %d", of, of.NumField(), most)
		}
		for i := range of.NumField() {
			check(of.Field(i).Type)
		}
	}
	check(reflect.TypeFor[Model]())
}
