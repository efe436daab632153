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

// guesses counts wrong codes by address, and in all.
type guesses struct {
	mu    sync.Mutex
	wrong map[netip.Prefix]*guessed
	all   guessed
}

// guessed is how many were wrong since a moment.
type guessed struct {
	n    int
	from time.Time
}

func (w *guessed) over(most int, now time.Time) bool {
	return w != nil && now.Sub(w.from) <= codeSpan && w.n >= most
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
	return g.allow(place(a), now)
}

func (g *guesses) allow(p netip.Prefix, now time.Time) bool {
	return !g.wrong[p].over(codeTries, now) && !g.all.over(codeTriesInAll, now)
}

// judge takes an answer, right or not. Of many at the same time no more count than
// of as many one after another.
func (g *guesses) judge(a netip.Addr, right bool, now time.Time) bool {
	g.mu.Lock()
	defer g.mu.Unlock()
	p := place(a)
	if !g.allow(p, now) {
		return false
	}
	if !right {
		g.missed(p, now)
	}
	return right
}

// missed counts a wrong code. Where too many addresses have been wrong the
// oldest is forgotten, not the limit.
func (g *guesses) missed(p netip.Prefix, now time.Time) {
	if g.wrong == nil {
		g.wrong = map[netip.Prefix]*guessed{}
	}
	if now.Sub(g.all.from) > codeSpan {
		g.all = guessed{from: now}
	}
	g.all.n++
	w := g.wrong[p]
	if w == nil || now.Sub(w.from) > codeSpan {
		if w == nil && len(g.wrong) >= addressesKept {
			g.forget(now)
		}
		w = &guessed{from: now}
		g.wrong[p] = w
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
