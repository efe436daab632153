package host

import (
	"crypto/rand"
	"crypto/sha256"
	"crypto/subtle"
	"math/big"
	"net/netip"
	"strings"
)

// codeDigits is how long a join code is. With codeTriesInAll wrong ones a minute,
// from however many addresses, a tenth of all codes take a week; a class takes hours.
const codeDigits = 8

// newCode makes a code that can be read out: digits in groups of four.
func newCode() (string, error) {
	var b strings.Builder
	for i := range codeDigits {
		n, err := rand.Int(rand.Reader, big.NewInt(10))
		if err != nil {
			return "", err
		}
		if i > 0 && i%4 == 0 {
			b.WriteByte(' ')
		}
		b.WriteByte('0' + byte(n.Int64()))
	}
	return b.String(), nil
}

// sameCode compares in a time that does not depend on the codes; blanks and
// strokes between the digits do not count.
func sameCode(typed, code string) bool {
	digits := func(s string) [sha256.Size]byte {
		return sha256.Sum256([]byte(strings.Map(func(r rune) rune {
			if r == ' ' || r == '-' || r == '\t' {
				return -1
			}
			return r
		}, s)))
	}
	a, b := digits(typed), digits(code)
	return subtle.ConstantTimeCompare(a[:], b[:]) == 1
}

// place is what counts as one address: a whole network of one in IPv6, where
// anybody has many.
func place(a netip.Addr) netip.Prefix {
	a = a.Unmap()
	bits := 32
	if a.Is6() {
		bits = 64
	}
	p, _ := a.Prefix(bits)
	return p
}
