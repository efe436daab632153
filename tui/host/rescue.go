package host

import (
	"cmp"
	"errors"
	"log/slog"
	"path"
	"strings"
	"time"

	"trivet/mechanics/diag"
	"trivet/mechanics/sheet"
	"trivet/tui"
)

// rescuedFolder, below the host's own folder, takes what a presented sheet's
// folder does not.
const rescuedFolder = "rescued"

// rescue saves what a session that ends has not saved: to its file, or where
// another has written that meanwhile, beside it, or where that fails, elsewhere.
// Where none of it is safe it is in the journal alone.
func (st *store) rescue(log *slog.Logger, m tui.Model) (says string, safe bool) {
	name, s, was, lost := m.Unsaved()
	if !lost {
		return "", true
	}
	own := *st
	own.rescues = true // a quota is no reason to lose work
	name = path.Base(cmp.Or(name, "untitled"+sheetsEnding))
	_, err := own.save(name, s, was, false)
	var changed *sheet.ChangedError
	if errors.As(err, &changed) {
		name = dated(name)
		_, err = own.save(name, s, sheet.Stamp{}, false)
	}
	if err == nil {
		log.Info("a sheet is saved at the end", "sheet", name)
		return "; what was not saved is in " + name, true
	}
	log.Error("a sheet could not be saved", "sheet", name, "why", err)
	says = "; the sheet could not be saved: " + diag.Of(err).Msg
	if st.spare == nil {
		return says, false
	}
	name = dated(name)
	folder, err := st.spare()
	if err == nil {
		defer folder.Close()
		_, err = writeSheet(folder, name, []byte(s.Text()), sheetMode)
	}
	if err != nil {
		log.Error("nor could it be kept elsewhere", "sheet", name, "why", err)
		return says, false
	}
	log.Info("a sheet is kept in the host's own folder", "sheet", path.Join(rescuedFolder, name))
	return says + "; it is kept in the host's own folder, " + path.Join(rescuedFolder, name), true
}

// endJournal ends a session's journal behind that.
func endJournal(m tui.Model, safe bool) {
	if safe {
		m.Done()
	} else {
		m.Leave()
	}
}

// dated is a name that nothing has yet.
func dated(name string) string {
	return strings.TrimSuffix(name, sheetsEnding) + time.Now().Format("-20060102-150405.000") + sheetsEnding
}
