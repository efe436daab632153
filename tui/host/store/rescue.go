package store

import (
	"cmp"
	"errors"
	"log/slog"
	"path"
	"strings"
	"time"

	"trivet/mechanics/diag"
	"trivet/mechanics/sheet"
)

// RescuedFolder, below the host's own folder, takes what a presented sheet's
// folder does not.
const RescuedFolder = "rescued"

// Rescue saves what a session that ends has not saved: to its file, or where
// another has written that meanwhile, beside it, or where that fails, elsewhere.
// Where none of it is safe it is in the journal alone.
func (st *Store) Rescue(log *slog.Logger, name string, s *sheet.Sheet, was sheet.Stamp) (says string, safe bool) {
	own := *st
	own.rescues = true // a quota is no reason to lose work
	name = path.Base(cmp.Or(name, "untitled"+Ending))
	_, err := own.Save(name, s, was, false)
	var changed *sheet.ChangedError
	if errors.As(err, &changed) {
		name = dated(name)
		_, err = own.Save(name, s, sheet.Stamp{}, false)
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
		_, err = writeSheet(folder, name, []byte(s.Text()), SheetMode)
	}
	if err != nil {
		log.Error("nor could it be kept elsewhere", "sheet", name, "why", err)
		return says, false
	}
	log.Info("a sheet is kept in the host's own folder", "sheet", path.Join(RescuedFolder, name))
	return says + "; it is kept in the host's own folder, " + path.Join(RescuedFolder, name), true
}

// dated is a name that nothing has yet.
func dated(name string) string {
	return strings.TrimSuffix(name, Ending) + time.Now().Format("-20060102-150405.000") + Ending
}
