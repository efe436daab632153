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
	added   int
	persons map[string]*remembered
	keys    map[string]*remembered
}

type remembered struct {
	seed   string
	events map[int]Event // by when they were added
}

func (r *remembered) inOrder() (all []Event) {
	for _, at := range slices.Sorted(maps.Keys(r.events)) {
		all = append(all, r.events[at])
	}
	return all
}

func (m *memory) known(name string) *remembered {
	if m.persons[name] == nil {
		m.persons[name] = &remembered{seed: name, events: map[int]Event{}}
	}
	return m.persons[name]
}

func (m *memory) Add(person string, events ...Event) error {
	if person == "" {
		return errors.New("no name")
	}
	m.Lock()
	defer m.Unlock()
	for _, e := range events {
		e.At = time.UnixMicro(e.At.UnixMicro())
		m.added++
		m.known(person).events[m.added] = e
	}
	return nil
}

func (m *memory) Persons() ([]string, error) {
	m.Lock()
	defer m.Unlock()
	return slices.Sorted(maps.Keys(m.persons)), nil
}

func (m *memory) Events(person string) ([]Event, error) {
	m.Lock()
	defer m.Unlock()
	if r := m.persons[person]; r != nil {
		return r.inOrder(), nil
	}
	return nil, nil
}

func (m *memory) Forget(person string) ([]Event, error) {
	m.Lock()
	defer m.Unlock()
	r := m.persons[person]
	if r == nil {
		return nil, ErrUnknown
	}
	delete(m.persons, person)
	maps.DeleteFunc(m.keys, func(_ string, of *remembered) bool { return of == r })
	return r.inOrder(), nil
}

func (m *memory) Rename(was, name string) error {
	m.Lock()
	defer m.Unlock()
	r := m.persons[was]
	switch {
	case name == "":
		return errors.New("no name")
	case r == nil:
		return ErrUnknown
	case was != name && m.persons[name] != nil:
		return ErrTaken
	}
	delete(m.persons, was)
	m.persons[name] = r
	return nil
}

func (m *memory) Merge(from, into string) error {
	m.Lock()
	defer m.Unlock()
	a, b := m.persons[from], m.persons[into]
	switch {
	case a == nil || b == nil:
		return ErrUnknown
	case a == b:
		return ErrTaken
	}
	maps.Copy(b.events, a.events)
	for key, of := range m.keys {
		if of == a {
			m.keys[key] = b
		}
	}
	delete(m.persons, from)
	return nil
}

func (m *memory) Enrol(key, name string) (string, error) {
	if key == "" {
		return "", errors.New("no key")
	}
	m.Lock()
	defer m.Unlock()
	if of := m.keys[key]; of != nil {
		for name, r := range m.persons {
			if r == of {
				return name, nil
			}
		}
	}
	if name == "" {
		return "", ErrUnknown
	}
	if m.persons[name] != nil {
		name += " " + key
	}
	m.keys[key] = m.known(name)
	return name, nil
}

func (m *memory) Seed(person string) (string, error) {
	m.Lock()
	defer m.Unlock()
	if r := m.persons[person]; r != nil {
		return r.seed, nil
	}
	return person, nil
}

func (m *memory) Close() error { return nil }

// A store of any kind passes these tests.
func TestStores(t *testing.T) {
	for name, empty := range map[string]func(*testing.T) Store{
		"memory": func(*testing.T) Store {
			return &memory{persons: map[string]*remembered{}, keys: map[string]*remembered{}}
		},
		"sqlite": func(t *testing.T) Store { return opened(t, File(t.TempDir())) },
	} {
		for what, suite := range map[string]func(*testing.T, Store){
			"empty": suiteEmpty, "kept": suiteKept, "persons": suitePersons, "forgotten": suiteForget, "at once": suiteAtOnce,
			"renamed": suiteRename, "merged": suiteMerge, "by key": suiteKeys, "keys at once": suiteKeysAtOnce,
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
	if err := s.Add("Ben", all...); err != nil { // at once
		t.Fatal(err)
	}
	holds(t, s, "Ben", all...)
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

// one is an event by a text of its own.
func one(text string) Event { return entry(beam, 0, text, "right") }

// seeded checks what a person's values are drawn by.
func seeded(t *testing.T, s Store, person, want string) {
	t.Helper()
	if got, err := s.Seed(person); got != want || err != nil {
		t.Errorf("the values of %s are drawn by %q (%v), want %q", person, got, err, want)
	}
}

// enrolled checks to whom a key belongs.
func enrolled(t *testing.T, s Store, key, name, want string) {
	t.Helper()
	if got, err := s.Enrol(key, name); got != want || err != nil {
		t.Errorf("%s is the key of %q (%v), want %q", key, got, err, want)
	}
}

func suiteRename(t *testing.T, s Store) {
	add(t, s, "Ada", one("a"))
	add(t, s, "Ben", one("b"))
	for _, c := range []struct {
		was, name string
		want      error
	}{{"Cleo", "Dan", ErrUnknown}, {"Ada", "Ben", ErrTaken}, {"Ada", "Ada", nil}, {"Ada", "Ada L.", nil}} {
		if err := s.Rename(c.was, c.name); !errors.Is(err, c.want) {
			t.Errorf("%s to %s: %v, want %v", c.was, c.name, err, c.want)
		}
	}
	if err := s.Rename("Ada L.", ""); err == nil {
		t.Error("a person has no name")
	}
	holds(t, s, "Ada L.", one("a"))
	holds(t, s, "Ada")
	holds(t, s, "Ben", one("b"))
	seeded(t, s, "Ada L.", "Ada") // whose values stay as they are
	seeded(t, s, "nobody", "nobody")
}

func suiteMerge(t *testing.T, s Store) {
	enrolled(t, s, "k1", "Ada", "Ada")
	enrolled(t, s, "k2", "ada at home", "ada at home")
	add(t, s, "Ada", one("a"))
	add(t, s, "ada at home", one("b"))
	add(t, s, "Ada", one("c"))
	add(t, s, "Ben", one("d"))
	for _, c := range [][2]string{{"Cleo", "Ada"}, {"Ada", "Cleo"}} {
		if err := s.Merge(c[0], c[1]); !errors.Is(err, ErrUnknown) {
			t.Errorf("%v: %v", c, err)
		}
	}
	if err := s.Merge("Ada", "Ada"); !errors.Is(err, ErrTaken) {
		t.Errorf("one person is merged: %v", err)
	}
	holds(t, s, "Ada", one("a"), one("c"))
	if err := s.Merge("ada at home", "Ada"); err != nil {
		t.Fatal(err)
	}
	holds(t, s, "Ada", one("a"), one("b"), one("c"))
	holds(t, s, "ada at home")
	holds(t, s, "Ben", one("d"))
	enrolled(t, s, "k2", "another", "Ada")
	seeded(t, s, "Ada", "Ada")
	if got, _ := s.Persons(); !reflect.DeepEqual(got, []string{"Ada", "Ben"}) {
		t.Errorf("%q", got)
	}
}

func suiteKeys(t *testing.T, s Store) {
	enrolled(t, s, "k1", "Ada", "Ada")
	enrolled(t, s, "k1", "Somebody", "Ada")
	enrolled(t, s, "k1", "", "Ada")
	enrolled(t, s, "k2", "Ada", "Ada k2")
	if _, err := s.Enrol("k3", ""); !errors.Is(err, ErrUnknown) {
		t.Errorf("a key without a name: %v", err)
	}
	if _, err := s.Enrol("", "Ada"); err == nil {
		t.Error("no key is enrolled")
	}
	k1, k2 := ByKey(s, "k1", "x"), ByKey(s, "k2", "y")
	add(t, k1, "", one("a"))
	add(t, k2, "anything", one("b"))
	if err := s.Rename("Ada", "Ada L."); err != nil {
		t.Fatal(err)
	}
	add(t, k1, "Ada", one("c")) // who is renamed meanwhile goes on
	holds(t, s, "Ada L.", one("a"), one("c"))
	holds(t, k1, "", one("a"), one("c"))
	holds(t, k2, "Ada L.", one("b"))
	holds(t, s, "Ada")
	if _, err := s.Forget("Ada L."); err != nil {
		t.Fatal(err)
	}
	enrolled(t, s, "k1", "Ada again", "Ada again") // the key was forgotten too
	holds(t, k1, "")
}

// A class comes at once, some with the same name and some with the same key.
func suiteKeysAtOnce(t *testing.T, s Store) {
	var wait sync.WaitGroup
	for k := range 16 {
		wait.Go(func() {
			key := fmt.Sprint("key ", k/2)
			if err := ByKey(s, key, "student").Add("", one(key)); err != nil {
				t.Error(err)
			}
		})
	}
	wait.Wait()
	for k := range 8 {
		key := fmt.Sprint("key ", k)
		holds(t, ByKey(s, key, "student"), "", one(key), one(key))
	}
	if got, err := s.Persons(); err != nil || len(got) != 8 {
		t.Errorf("%q, %v", got, err)
	}
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
