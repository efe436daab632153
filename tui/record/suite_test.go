package record

import (
	"errors"
	"fmt"
	"maps"
	"reflect"
	"slices"
	"sync"
	"testing"
	"time"

	"trivet/mechanics/problemset"
)

// memory is a second store, so that the suite is one of stores and not of SQLite.
type memory struct {
	sync.Mutex
	events map[string][]Event
}

func (m *memory) Add(person string, e Event) error {
	if person == "" {
		return errors.New("no name")
	}
	m.Lock()
	defer m.Unlock()
	e.At = time.UnixMicro(e.At.UnixMicro())
	m.events[person] = append(m.events[person], e)
	return nil
}

func (m *memory) Persons() ([]string, error) {
	m.Lock()
	defer m.Unlock()
	return slices.Sorted(maps.Keys(m.events)), nil
}

func (m *memory) Events(person string) ([]Event, error) {
	m.Lock()
	defer m.Unlock()
	return slices.Clone(m.events[person]), nil
}

func (m *memory) Forget(person string) ([]Event, error) {
	m.Lock()
	defer m.Unlock()
	gone, known := m.events[person]
	if !known {
		return nil, ErrUnknown
	}
	delete(m.events, person)
	return gone, nil
}

func (m *memory) Close() error { return nil }

// A store of any kind passes these tests.
func TestStores(t *testing.T) {
	for name, empty := range map[string]func(*testing.T) Store{
		"memory": func(*testing.T) Store { return &memory{events: map[string][]Event{}} },
		"sqlite": func(t *testing.T) Store { return opened(t, File(t.TempDir())) },
	} {
		for what, suite := range map[string]func(*testing.T, Store){
			"empty": suiteEmpty, "kept": suiteKept, "persons": suitePersons, "forgotten": suiteForget, "at once": suiteAtOnce,
		} {
			t.Run(name+"/"+what, func(t *testing.T) { suite(t, empty(t)) })
		}
	}
}

// opened is the record in a file, of which there is nothing to say.
func opened(t *testing.T, path string) Store {
	t.Helper()
	s, notice, err := Open(path)
	if err != nil || notice != nil {
		t.Fatalf("%v, %v", notice, err)
	}
	t.Cleanup(func() {
		if err := s.Close(); err != nil {
			t.Error(err)
		}
	})
	return s
}

func add(t *testing.T, s Store, person string, events ...Event) {
	t.Helper()
	for _, e := range events {
		if err := s.Add(person, e); err != nil {
			t.Fatal(err)
		}
	}
}

// holds checks what the store has of a person.
func holds(t *testing.T, s Store, person string, want ...Event) {
	t.Helper()
	got, err := s.Events(person)
	if err != nil {
		t.Fatal(err)
	}
	same := func(a, b Event) bool {
		at := a.At.Equal(b.At)
		a.At = b.At
		return at && a == b
	}
	if !slices.EqualFunc(got, want, same) {
		t.Errorf("%s has\n%+v, want\n%+v", person, got, want)
	}
}

var (
	monday = time.Date(2026, 12, 7, 10, 0, 0, 123_456_000, time.FixedZone("", 3600))
	beam   = Problem{"week4", "beam"}
	alone  = Problem{"", "lamp.toml"}
)

func entry(p Problem, after time.Duration, text, verdict string) Event {
	return Event{At: monday.Add(after), Problem: p, What: Entry, Text: text, Kind: "equation", Verdict: verdict}
}

func suiteEmpty(t *testing.T, s Store) {
	if persons, err := s.Persons(); len(persons) > 0 || err != nil {
		t.Errorf("%v, %v", persons, err)
	}
	holds(t, s, "Ada")
	if _, err := s.Forget("Ada"); !errors.Is(err, ErrUnknown) {
		t.Errorf("who is not there is forgotten: %v", err)
	}
	if err := s.Add("", entry(beam, 0, "T1 = 3 N", "right")); err == nil {
		t.Error("an entry of nobody is taken")
	}
}

func suiteKept(t *testing.T, s Store) {
	all := []Event{
		entry(beam, time.Hour, "ΣFx: 0.6 T1 = 0", "wrong"), // added first, whatever its time
		entry(alone, 0, "", "unreadable"),
		entry(alone, 0, "'); DROP TABLE event; -- \x00\x1b[31m\xff\u202e", "unreadable"),
		{At: monday, Problem: beam, What: Entry, Text: "T1 = 2.5 kN", Kind: "value", Verdict: "wrong", Mistake: "factor-1000"},
		{At: monday, Problem: beam, What: Hint, Stage: 2},
		{At: monday, Problem: beam, What: Shown},
		{At: monday, Problem: beam, What: Done, Points: 3.6, Of: 4},
		{At: time.UnixMicro(0), Problem: Problem{"", ""}, What: "undone"},
	}
	add(t, s, "Ada", all...)
	holds(t, s, "Ada", all...)
	holds(t, s, "ada")
}

func suitePersons(t *testing.T, s Store) {
	for _, name := range []string{"Özil O.", "ada", "Ada", "Ada ", "a\nb"} {
		add(t, s, name, entry(beam, 0, name, "right"))
		holds(t, s, name, entry(beam, 0, name, "right"))
	}
	if got, err := s.Persons(); err != nil || !reflect.DeepEqual(got, []string{"Ada", "Ada ", "a\nb", "ada", "Özil O."}) {
		t.Errorf("%q, %v", got, err)
	}
}

func suiteForget(t *testing.T, s Store) {
	ours, theirs := []Event{entry(beam, 0, "a", "right"), entry(alone, time.Second, "b", "wrong")}, entry(beam, 2*time.Second, "c", "right")
	add(t, s, "Ada", ours...)
	add(t, s, "Ben", theirs)
	gone, err := s.Forget("Ada")
	if err != nil || len(gone) != 2 || gone[0].Text != "a" || gone[1].Text != "b" {
		t.Errorf("%+v is gone, %v", gone, err)
	}
	holds(t, s, "Ada")
	holds(t, s, "Ben", theirs)
	if got, _ := s.Persons(); !reflect.DeepEqual(got, []string{"Ben"}) {
		t.Errorf("%q are left", got)
	}
	add(t, s, "Ada", theirs)
	holds(t, s, "Ada", theirs)
}

// A class enters at once: nothing is lost, and each person's entries stay in order.
func suiteAtOnce(t *testing.T, s Store) {
	const persons, each = 8, 12
	var wait sync.WaitGroup
	for p := range persons {
		wait.Go(func() {
			for i := range each {
				if err := s.Add(fmt.Sprint(p), entry(beam, 0, fmt.Sprint(i), "right")); err != nil {
					t.Error(err)
				}
				if _, err := s.Events("0"); err != nil {
					t.Error(err)
				}
			}
		})
	}
	wait.Wait()
	for p := range persons {
		var want []Event
		for i := range each {
			want = append(want, entry(beam, 0, fmt.Sprint(i), "right"))
		}
		holds(t, s, fmt.Sprint(p), want...)
	}
}

func TestSummary(t *testing.T) {
	at := func(minutes int) time.Time { return monday.Add(time.Duration(minutes) * time.Minute) }
	got := Summary([]Event{
		{At: at(0), Problem: beam, What: Entry},
		{At: at(1), Problem: beam, What: Hint, Stage: 1},
		{At: at(2), Problem: alone, What: Shown},
		{At: at(3), Problem: beam, What: Hint, Stage: 2},
		{At: at(4), Problem: beam, What: Entry},
		{At: at(5), Problem: beam, What: Done, Points: 3.2, Of: 4},
		{At: at(6), Problem: beam, What: Hint, Stage: 1},
		{At: at(7), Problem: beam, What: Shown},
		{At: at(8), Problem: beam, What: Entry},
		{At: at(9), Problem: beam, What: Done, Points: 1, Of: 4},
		{At: at(10), Problem: alone, What: "of a newer program"},
	})
	want := []Progress{
		{Problem: beam, Result: problemset.Result{Done: at(5), Hints: 2}, Entries: 3, First: at(0), Last: at(9), Points: 3.2, Of: 4},
		{Problem: alone, Result: problemset.Result{Shown: true}, First: at(2), Last: at(10)},
	}
	if !reflect.DeepEqual(got, want) {
		t.Errorf("%+v, want\n%+v", got, want)
	}
	if Summary(nil) != nil {
		t.Error("nothing comes to something")
	}
}
