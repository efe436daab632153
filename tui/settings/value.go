package settings

import (
	"slices"
	"strings"

	"trivet/mechanics/diag"
)

// Get gives a setting's text by its name among Keys; a unit that is left to the
// program is "".
func (s Settings) Get(name string) string {
	if k := named(name); k != nil {
		return k.get(&s)
	}
	return ""
}

// With gives the settings with one of them changed, or what is wrong with the text.
func (s Settings) With(name, text string) (Settings, *diag.Error) {
	k := named(name)
	if k == nil {
		return s, diag.New("unknown setting "+name, "")
	}
	next := s
	if err := k.set(&next, strings.TrimSpace(text)); err != nil {
		return s, err
	}
	return next, nil
}

// Beside gives the text that stands so many places behind a setting's own among
// those it may have, or before it; the list goes round.
func (s Settings) Beside(name string, by int) string {
	k := named(name)
	if k == nil {
		return ""
	}
	words := k.words()
	n := len(words)
	return words[((slices.Index(words, k.get(&s))+by)%n+n)%n]
}

func named(name string) *key {
	for i := range keys {
		if keys[i].full() == name {
			return &keys[i]
		}
	}
	return nil
}
