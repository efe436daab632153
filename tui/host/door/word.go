package door

import (
	"crypto/rand"
	"crypto/sha256"
	"crypto/subtle"
	"strings"
)

// wordParts is how many words of the list a class word has: 128 to the fourth power,
// or 270 million. With wordTriesInAll wrong ones a minute, from however many addresses, a
// tenth of all take two weeks; a class takes hours.
const wordParts = 4

// parts are short, and none sounds like another. Their number is a power of two, so
// that a byte gives each of them equally often.
const parts = `
arch bar base beam bell belt boat body bolt boom bowl box brace brick cable cart chain chair clamp clay coin
cone cord cork crane crate cube cup deck drill dune dome door drum duct edge farm field fish flag floor fork
frame gate gear glass globe grid grip hand hinge hook hoop horn house iron jack joint kite lamp latch lens
lever lift line link loop mast mill moon nail node park path pedal pine pipe plank plate plug pole pond pump
rack raft ramp ring river rod roof root rope ruler scale screw shaft shed shelf ship slab slope snow span
spool stem step stone strut swing table tank tent tile tower track tree truck truss tube vault wall wedge
wheel winch wing wire yard yoke`

// NewWord makes a class word that can be read out.
func NewWord() string {
	var at [wordParts]byte
	_, _ = rand.Read(at[:]) // which never fails
	list := strings.Fields(parts)
	var all []string
	for _, i := range at {
		all = append(all, list[int(i)%len(list)])
	}
	return strings.Join(all, " ")
}

// sameWord compares in a time that does not depend on the words; blanks, strokes and
// capitals do not count.
func sameWord(typed, word string) bool {
	letters := func(s string) [sha256.Size]byte {
		return sha256.Sum256([]byte(strings.NewReplacer(" ", "", "-", "", "\t", "").Replace(strings.ToLower(s))))
	}
	a, b := letters(typed), letters(word)
	return subtle.ConstantTimeCompare(a[:], b[:]) == 1
}
