package host

import (
	"log/slog"

	"trivet/tui"
	"trivet/tui/host/store"
)

// rescue saves what a session that ends has not saved.
func rescue(log *slog.Logger, to *store.Store, m tui.Model) (says string, safe bool) {
	name, s, was, lost := m.Unsaved()
	if !lost {
		return "", true
	}
	return to.Rescue(log, name, s, was)
}

// endJournal ends a session's journal behind that.
func endJournal(m tui.Model, safe bool) {
	if safe {
		m.Done()
	} else {
		m.Leave()
	}
}
