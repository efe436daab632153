package host

import (
	"crypto/rand"
	"crypto/sha256"
	"crypto/subtle"
	"maps"
	"math/big"
	"net/netip"
	"slices"
	"strings"
	"sync"
	"time"
)

// codeDigits is how long a join code is. With codeTries wrong ones a minute and
// address, a thousand addresses would need days to meet it; a class takes hours.
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

// guesses counts wrong codes by address.
type guesses struct {
	mu    sync.Mutex
	wrong map[netip.Prefix]*guessed
}

type guessed struct {
	n    int
	from time.Time
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

// may tells whether an address may still try.
func (g *guesses) may(a netip.Addr, now time.Time) bool {
	g.mu.Lock()
	defer g.mu.Unlock()
	w := g.wrong[place(a)]
	return w == nil || now.Sub(w.from) > codeSpan || w.n < codeTries
}

// missed counts a wrong code. Where too many addresses have been wrong the
// oldest is forgotten, not the limit.
func (g *guesses) missed(a netip.Addr, now time.Time) {
	g.mu.Lock()
	defer g.mu.Unlock()
	if g.wrong == nil {
		g.wrong = map[netip.Prefix]*guessed{}
	}
	k := place(a)
	w := g.wrong[k]
	if w == nil || now.Sub(w.from) > codeSpan {
		if w == nil && len(g.wrong) >= addressesKept {
			g.forget(now)
		}
		w = &guessed{from: now}
		g.wrong[k] = w
	}
	w.n++
}

// forget makes room: for the limit to hold, those wrong most recently stay.
func (g *guesses) forget(now time.Time) {
	all := slices.SortedFunc(maps.Keys(g.wrong), func(a, b netip.Prefix) int { return g.wrong[a].from.Compare(g.wrong[b].from) })
	for i, k := range all {
		if i < len(all)/4 || now.Sub(g.wrong[k].from) > codeSpan {
			delete(g.wrong, k)
		}
	}
}
