package record

import (
	"context"
	"database/sql"
	"errors"
	"fmt"

	"trivet/mechanics/diag"
)

// application marks the file as a record of this program, in the header of SQLite's file
// format: "trvr" in ASCII.
const application = 0x74727672

// migrations make the schema of one version out of that of the version before, the first
// out of an empty file. They are never changed, only followed by others.
var migrations = []string{
	`CREATE TABLE person (
		id   INTEGER PRIMARY KEY,
		name TEXT NOT NULL UNIQUE
	) STRICT;
	CREATE TABLE event (
		id         INTEGER PRIMARY KEY,
		person     INTEGER NOT NULL REFERENCES person (id) ON DELETE CASCADE,
		at         INTEGER NOT NULL, -- microseconds since 1970, UTC
		collection TEXT NOT NULL,    -- the set, '' for a sheet alone
		problem    TEXT NOT NULL,
		what       TEXT NOT NULL,
		entry      TEXT NOT NULL,
		kind       TEXT NOT NULL,
		verdict    TEXT NOT NULL,
		mistake    TEXT NOT NULL,
		stage      INTEGER NOT NULL,
		points     REAL NOT NULL,
		of         REAL NOT NULL
	) STRICT;
	CREATE INDEX event_of_person ON event (person, id);`,

	`ALTER TABLE person ADD COLUMN seed TEXT NOT NULL DEFAULT ''; -- the first name
	UPDATE person SET seed = name;
	CREATE TABLE key (
		print  TEXT PRIMARY KEY,
		person INTEGER NOT NULL REFERENCES person (id) ON DELETE CASCADE
	) STRICT;
	CREATE INDEX key_of_person ON key (person);`,

	`ALTER TABLE event ADD COLUMN sheet TEXT NOT NULL DEFAULT ''; -- tells problems of one name apart`,
}

// migrate brings a file to the newest of the steps, in one transaction. Two that do so at
// once wait for each other, and the second finds it done. What a newer program wrote, or
// another one, is refused and left as it is.
//
// The file keeps a write-ahead log, so that others read while one writes. Where a file
// system cannot share memory, SQLite stays with its rollback journal, which keeps the same
// promises.
func migrate(db *sql.DB, steps []string) error {
	ctx := context.Background()
	conn, err := db.Conn(ctx)
	if err != nil {
		return err
	}
	defer conn.Close()
	if _, done, err := versioned(ctx, conn, steps); done || err != nil { // without waiting for one who writes
		return err
	}
	if err := patiently(func() error {
		_, err := conn.ExecContext(ctx, "PRAGMA journal_mode = wal")
		return err
	}); err != nil {
		return err
	}
	tx, err := conn.BeginTx(ctx, nil)
	if err != nil {
		return err
	}
	if err := advance(ctx, tx, steps); err != nil {
		return errors.Join(err, tx.Rollback())
	}
	return tx.Commit()
}

// asker is a connection or a transaction.
type asker interface {
	QueryRowContext(ctx context.Context, query string, args ...any) *sql.Row
}

// versioned tells that a file is a record with the newest schema, and gives the version
// that it has. It is one statement, so that another's transaction lies before or behind it.
func versioned(ctx context.Context, q asker, steps []string) (version int, newest bool, err error) {
	var own, tables int
	err = q.QueryRowContext(ctx, `SELECT (SELECT application_id FROM pragma_application_id), (SELECT user_version FROM pragma_user_version),
		(SELECT count(*) FROM sqlite_schema)`).Scan(&own, &version, &tables)
	switch {
	case err != nil:
		return 0, false, err
	case own != application && (own != 0 || tables > 0):
		return 0, false, diag.New("the file is a database of another program", "another folder for the record")
	case version > len(steps):
		return 0, false, diag.New("the record was written by a newer version of this program", "that version")
	}
	return version, own == application && version == len(steps), nil
}

func advance(ctx context.Context, tx *sql.Tx, steps []string) error {
	version, done, err := versioned(ctx, tx, steps)
	if done || err != nil {
		return err
	}
	for _, step := range append(steps[version:len(steps):len(steps)],
		fmt.Sprintf("PRAGMA user_version = %d", len(steps)), fmt.Sprintf("PRAGMA application_id = %d", application)) {
		if _, err := tx.ExecContext(ctx, step); err != nil {
			return err
		}
	}
	return nil
}
