package host

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

// short is a name that leaves room for others on a line.
func (p person) short() string {
	switch {
	case p.local || p.print == "":
		return p.name()
	case p.note != "":
		return p.note
	}
	return p.print[:min(len(p.print), 16)]
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
