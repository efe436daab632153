package host

import (
	gossh "golang.org/x/crypto/ssh"
)

// role is what a visitor may do. It follows from the key that was proved, and
// from nothing that was only said.
type role int

const (
	watcher role = iota
	presenter
)

func (r role) String() string { return [...]string{"watcher", "presenter"}[r] }

// person is who came in.
type person struct {
	role   role
	print  string // the key's fingerprint; empty without a key
	folder string // where its sheets are kept, from the whole key
	note   string // the comment in the list of keys
	listed bool   // the key is in one of the lists
	local  bool   // at the host's own terminal
}

// name is how a person is shown and logged.
func (p person) name() string {
	switch {
	case p.local:
		return "this terminal"
	case p.print == "":
		return "without a key"
	case p.note != "":
		return p.print + " (" + p.note + ")"
	}
	return p.print
}

// roster is a list of keys, as in an authorized_keys file: the comment of each by
// the key's own bytes.
type roster map[string]string

func (r roster) has(key gossh.PublicKey) bool {
	_, ok := r[string(key.Marshal())]
	return ok
}
