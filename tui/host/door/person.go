package door

import (
	"crypto/sha256"
	"encoding/hex"
)

// Role is what a visitor may do. It follows from the key that was proved, and
// from nothing that was only said.
type Role int

const (
	Watcher Role = iota
	Presenter
)

func (r Role) String() string { return [...]string{"watcher", "presenter"}[r] }

// Person is who came in.
type Person struct {
	Role   Role
	Print  string // the key's fingerprint; empty without a key
	Folder string // where its sheets are kept, from the whole key
	Note   string // the comment in the list of keys
	Listed bool   // the key is in one of the lists
	Local  bool   // at the host's own terminal
}

// Short is a name that leaves room for others on a line.
func (p Person) Short() string {
	switch {
	case p.Local || p.Print == "":
		return p.Name()
	case p.Note != "":
		return p.Note
	}
	return p.Print[:min(len(p.Print), 16)]
}

// Name is how a person is shown and logged.
func (p Person) Name() string {
	switch {
	case p.Local:
		return "this terminal"
	case p.Print == "":
		return "without a key"
	case p.Note != "":
		return p.Print + " (" + p.Note + ")"
	}
	return p.Print
}

// folderOf names the folder of a key: of the key alone, so that it is found
// again, and without anything that the visitor could choose.
func folderOf(key []byte) string {
	sum := sha256.Sum256(key)
	return hex.EncodeToString(sum[:16])
}
