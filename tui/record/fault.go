package record

import (
	"errors"
	"time"

	sqlite "modernc.org/sqlite"
	sqlite3 "modernc.org/sqlite/lib"

	"trivet/mechanics/diag"
)

// errDamaged says that the file is no whole database.
var errDamaged = errors.New("the record is damaged")

// damaged tells that a file is to be set aside.
func damaged(err error) bool { return errors.Is(err, errDamaged) }

// resultCodes are SQLite's primary result codes that a person can do something about.
var resultCodes = map[int]diag.Error{
	sqlite3.SQLITE_BUSY:     {Msg: "another program has been writing to the record for too long", Hint: "again in a moment"},
	sqlite3.SQLITE_FULL:     {Msg: "the disk is full, so the record cannot be written", Hint: "make room"},
	sqlite3.SQLITE_READONLY: {Msg: "the record is read-only", Hint: "ask its owner for permission to write it"},
	sqlite3.SQLITE_CANTOPEN: {Msg: "the record cannot be opened", Hint: "check that its folder may be written"},
	sqlite3.SQLITE_IOERR:    {Msg: "the record cannot be read or written", Hint: "check the disk"},
	sqlite3.SQLITE_CORRUPT:  {Msg: errDamaged.Error(), Err: errDamaged, Hint: "open it anew, which sets it aside"},
	sqlite3.SQLITE_NOTADB:   {Msg: errDamaged.Error(), Err: errDamaged, Hint: "open it anew, which sets it aside"},
}

// patiently does something again while another keeps it from being done. SQLite waits by
// itself but where two hold a file and each would wait for the other, as when both change the
// kind of its journal.
func patiently(do func() error) error {
	const pause = 5 * time.Millisecond
	for until := time.Now().Add(patience); ; time.Sleep(pause) {
		if err := do(); primary(err) != sqlite3.SQLITE_BUSY || time.Now().After(until) {
			return err
		}
	}
}

// primary is the primary code of an error of SQLite, 0 of any other and of none.
func primary(err error) int {
	var own *sqlite.Error
	if !errors.As(err, &own) {
		return 0
	}
	const mask = 0xff // the rest says more of the same
	return own.Code() & mask
}

// inWords is an error of the database in words; nil for none.
func inWords(err error) error {
	var own *sqlite.Error
	if err == nil || errors.As(err, new(*diag.Error)) || !errors.As(err, &own) {
		return err
	}
	if e, known := resultCodes[primary(err)]; known {
		if e.Err == nil {
			e.Err = err
		}
		return &e
	}
	return &diag.Error{Msg: "the record cannot be used: " + own.Error(), Err: err}
}
