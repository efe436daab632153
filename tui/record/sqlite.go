package record

import (
	"database/sql"
	"errors"
	"fmt"
	"io/fs"
	"net/url"
	"os"
	"path/filepath"
	"time"

	_ "modernc.org/sqlite" // the driver

	"trivet/mechanics/diag"
	"trivet/mechanics/sheet"
)

// patience is how long another that writes is waited for.
const patience = 10 * time.Second

// pragmas hold for each connection. With full synchronisation a transaction is on the disk
// when it returns, not only out of the process. Others that write are waited for, and what
// is deleted is written over.
var pragmas = []string{fmt.Sprintf("busy_timeout(%d)", patience.Milliseconds()), "synchronous(extra)", "foreign_keys(1)", "secure_delete(1)"}

// database is the Store in SQLite.
type database struct {
	db   *sql.DB
	path string
}

// Open opens the record in a file, made where it is missing with the folders above it.
// A file that is damaged is set aside under another name and a new one begun: the notice
// says so, and is nil otherwise.
func Open(path string) (s Store, notice *diag.Error, err error) {
	return open(path, migrations)
}

func open(path string, steps []string) (Store, *diag.Error, error) {
	d, err := connect(path, steps)
	if !damaged(err) {
		return store(d, nil, err)
	}
	aside, err := setAside(path, time.Now())
	if err != nil {
		return nil, nil, diag.New("the record is damaged and cannot be set aside: "+err.Error(), "move "+path+" to another place")
	}
	d, err = connect(path, steps)
	return store(d, diag.New("the record was damaged, so a new one is begun; the damaged file is kept as "+aside, "a copy of the record from a backup"), err)
}

// store keeps a nil *database from being a Store.
func store(d *database, notice *diag.Error, err error) (Store, *diag.Error, error) {
	if err != nil {
		return nil, notice, err
	}
	return d, notice, nil
}

// connect opens a file, looks whether it is whole, and brings it to the present schema.
// It is the reader's and writer's own: the mode keeps others from it.
func connect(path string, steps []string) (*database, error) {
	path, err := filepath.Abs(path)
	if err != nil {
		return nil, sheet.WriteError(err)
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return nil, sheet.WriteError(err)
	}
	f, err := os.OpenFile(path, os.O_CREATE|os.O_RDWR, 0o600)
	if err != nil {
		return nil, sheet.WriteError(err)
	}
	f.Close()
	at := url.URL{Scheme: "file", OmitHost: true, Path: filepath.ToSlash(path), RawQuery: url.Values{"_pragma": pragmas, "_txlock": {"immediate"}}.Encode()}
	db, err := sql.Open("sqlite", at.String())
	if err != nil {
		return nil, inWords(err)
	}
	db.SetMaxOpenConns(1) // writers take turns anyway, and here they need not fail for it
	d := &database{db, path}
	if err = d.whole(); err == nil {
		err = migrate(db, steps)
	}
	if err != nil {
		db.Close()
		return nil, inWords(err)
	}
	return d, nil
}

// whole is errDamaged where the file's structure does not hold.
func (d *database) whole() error {
	var says string
	if err := d.db.QueryRow("PRAGMA quick_check(1)").Scan(&says); err != nil {
		return err
	}
	if says != "ok" {
		return fmt.Errorf("%w: %s", errDamaged, says)
	}
	return nil
}

// setAside renames a damaged file, with what SQLite keeps beside it, and gives its new
// name.
func setAside(path string, now time.Time) (string, error) {
	stem := path + now.Format("-damaged-20060102-150405")
	for i := 1; ; i++ {
		aside := stem
		if i > 1 {
			aside = fmt.Sprintf("%s-%d", stem, i)
		}
		if _, err := os.Lstat(aside); err == nil {
			continue
		}
		for _, part := range []string{"-wal", "-shm", ""} { // the file last: until then it is damaged for others too
			if err := os.Rename(path+part, aside+part); err != nil && !errors.Is(err, fs.ErrNotExist) {
				return "", err
			}
		}
		return aside, nil
	}
}

func (d *database) Close() error { return d.db.Close() }

func (d *database) Add(person string, events ...Event) error {
	if person == "" {
		return diag.New("an entry of the record needs the name of a person", "")
	}
	return inWords(d.within(func(tx *sql.Tx) error {
		if err := newPerson(tx, person); err != nil {
			return err
		}
		for _, e := range events {
			_, err := tx.Exec(`INSERT INTO event (person, at, collection, problem, what, entry, kind, verdict, mistake, stage, points, of, sheet)
				VALUES ((SELECT id FROM person WHERE name = ?), ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
				person, e.At.UnixMicro(), e.Problem.Set, e.Problem.Name, string(e.What), e.Text, e.Kind, e.Verdict, e.Mistake, e.Stage, e.Points, e.Of, e.Sheet)
			if err != nil {
				return err
			}
		}
		return nil
	}))
}

// newPerson adds a person who is not known yet.
func newPerson(tx *sql.Tx, name string) error {
	_, err := tx.Exec("INSERT INTO person (name, seed) VALUES (?, ?) ON CONFLICT DO NOTHING", name, name)
	return err
}

// within does all of something or nothing.
func (d *database) within(do func(*sql.Tx) error) error {
	tx, err := d.db.Begin()
	if err != nil {
		return err
	}
	if err := do(tx); err != nil {
		return errors.Join(err, tx.Rollback())
	}
	return tx.Commit()
}

func (d *database) Persons() ([]string, error) {
	rows, err := d.db.Query("SELECT name FROM person ORDER BY name")
	return gather(rows, err, func(name *string) []any { return []any{name} })
}

// querier is a database or a transaction.
type querier interface {
	Query(query string, args ...any) (*sql.Rows, error)
}

func (d *database) Events(person string) ([]Event, error) { return events(d.db, person) }

func events(q querier, person string) ([]Event, error) {
	type row struct {
		Event
		at int64
	}
	rows, err := q.Query(`SELECT at, collection, problem, what, entry, kind, verdict, mistake, stage, points, of, sheet
		FROM event WHERE person = (SELECT id FROM person WHERE name = ?) ORDER BY id`, person)
	found, err := gather(rows, err, func(r *row) []any {
		return []any{&r.at, &r.Problem.Set, &r.Problem.Name, &r.What, &r.Text, &r.Kind, &r.Verdict, &r.Mistake, &r.Stage, &r.Points, &r.Of, &r.Sheet}
	})
	var out []Event
	for _, r := range found {
		r.At = time.UnixMicro(r.at)
		out = append(out, r.Event)
	}
	return out, err
}

// gather reads all rows, each into the places of a T.
func gather[T any](rows *sql.Rows, err error, places func(*T) []any) ([]T, error) {
	if err != nil {
		return nil, inWords(err)
	}
	defer rows.Close()
	var out []T
	for rows.Next() {
		var one T
		if err := rows.Scan(places(&one)...); err != nil {
			return nil, inWords(err)
		}
		out = append(out, one)
	}
	return out, inWords(rows.Err())
}

func (d *database) Forget(person string) (gone []Event, err error) {
	err = d.within(func(tx *sql.Tx) error {
		id, err := idOf(tx, person)
		if err != nil {
			return err
		}
		if gone, err = events(tx, person); err != nil {
			return err
		}
		_, err = tx.Exec("DELETE FROM person WHERE id = ?", id) // and events and keys with it
		return err
	})
	if err != nil {
		return nil, inWords(err)
	}
	// the log still has what was deleted, until it is written into the file and emptied;
	// where another process reads just now it does so later
	_, err = d.db.Exec("PRAGMA wal_checkpoint(TRUNCATE)")
	return gone, inWords(err)
}
