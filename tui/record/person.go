package record

import (
	"database/sql"
	"errors"

	"trivet/mechanics/diag"
)

// idOf is the row of a person, or ErrUnknown.
func idOf(tx *sql.Tx, name string) (id int64, err error) {
	err = tx.QueryRow("SELECT id FROM person WHERE name = ?", name).Scan(&id)
	if errors.Is(err, sql.ErrNoRows) {
		err = ErrUnknown
	}
	return id, err
}

func (d *database) Rename(was, name string) error {
	if name == "" {
		return diag.New("the new name is missing", "")
	}
	return inWords(d.within(func(tx *sql.Tx) error {
		id, err := idOf(tx, was)
		if err != nil {
			return err
		}
		if other, err := idOf(tx, name); err == nil && other != id {
			return ErrTaken
		} else if err != nil && !errors.Is(err, ErrUnknown) {
			return err
		}
		_, err = tx.Exec("UPDATE person SET name = ? WHERE id = ?", name, id)
		return err
	}))
}

func (d *database) Merge(from, into string) error {
	return inWords(d.within(func(tx *sql.Tx) error {
		a, err := idOf(tx, from)
		if err != nil {
			return err
		}
		b, err := idOf(tx, into)
		switch {
		case err != nil:
			return err
		case a == b:
			return ErrTaken
		}
		for _, step := range []string{"UPDATE event SET person = ?2 WHERE person = ?1", "UPDATE key SET person = ?2 WHERE person = ?1", "DELETE FROM person WHERE id = ?1 AND ?2"} {
			if _, err := tx.Exec(step, a, b); err != nil {
				return err
			}
		}
		return nil
	}))
}

// ownerOf is the person to whom a key belongs, sql.ErrNoRows where it is nobody's.
const ownerOf = "SELECT name FROM person WHERE id = (SELECT person FROM key WHERE print = ?)"

func (d *database) Enrol(key, name string) (person string, err error) {
	if key == "" {
		return "", diag.New("a person of the record needs a key", "")
	}
	if err = d.db.QueryRow(ownerOf, key).Scan(&person); !errors.Is(err, sql.ErrNoRows) { // without waiting for one who writes
		return person, inWords(err)
	}
	if name == "" {
		return "", ErrUnknown
	}
	return person, inWords(d.within(func(tx *sql.Tx) error {
		if err := tx.QueryRow(ownerOf, key).Scan(&person); !errors.Is(err, sql.ErrNoRows) {
			return err
		}
		person = name
		if _, err := idOf(tx, name); err == nil {
			person = name + " " + key
		} else if !errors.Is(err, ErrUnknown) {
			return err
		}
		if err := newPerson(tx, person); err != nil {
			return err
		}
		_, err := tx.Exec("INSERT INTO key (print, person) VALUES (?, (SELECT id FROM person WHERE name = ?))", key, person)
		return err
	}))
}

func (d *database) Seed(person string) (seed string, err error) {
	err = d.db.QueryRow("SELECT seed FROM person WHERE name = ?", person).Scan(&seed)
	if errors.Is(err, sql.ErrNoRows) {
		return person, nil
	}
	return seed, inWords(err)
}
