package problemset

import (
	"crypto/sha256"
	"encoding/binary"

	"trivet/mechanics/variant"
)

// Seed is what a person's values of a problem are drawn by: the same on every machine
// for the same set, problem and person.
func (s *Set) Seed(p Problem, person string) uint64 {
	h := sha256.New()
	for _, part := range []string{s.Name(), p.Name, person} {
		_ = binary.Write(h, binary.BigEndian, uint64(len(part))) // a hash takes everything
		h.Write([]byte(part))
	}
	return binary.BigEndian.Uint64(h.Sum(nil))
}

// Personal is a person's own variant of a problem's sheet, with its title as it is. Two
// persons may have the same values where the ranges give few. The error, a
// *variant.TooFew, says why no variant keeps the verdict.
func (s *Set) Personal(p Problem, person string, src *variant.Source) (variant.Variant, error) {
	drawn, err := src.Draw(variant.Seeded(s.Seed(p, person)), 1)
	if err != nil {
		return variant.Variant{}, err
	}
	return src.Finish(drawn[0], "")
}
