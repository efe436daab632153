package session

import (
	"slices"

	tea "charm.land/bubbletea/v2"
)

// Ahead is what was typed for what is not there yet.
type Ahead []tea.KeyPressMsg

// MaxAhead is how many keys wait for a working that is being laid out, or for practice that is
// being opened: more than anybody types in that time.
const MaxAhead = 512

// Hold keeps one key more.
func (a *Ahead) Hold(msg tea.KeyPressMsg) {
	if len(*a) < MaxAhead {
		*a = append(slices.Clip(*a), msg) // a session before this one has the same
	}
}

// Take gives what waited, which waits no more.
func (a *Ahead) Take() (waiting Ahead) {
	waiting, *a = *a, nil
	return waiting
}
