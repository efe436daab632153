// Package door admits visitors: who they are by their keys or the class word, and how many may come
// from where. It knows nothing of what they come to.
package door

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
	"sync"
	"time"

	gossh "golang.org/x/crypto/ssh"
)

// Admission is who may come in as what.
type Admission struct {
	Presenters, Watchers Roster
	Word                 string // the class word of this run; empty without
	Open                 bool   // anybody, said explicitly or on the loopback address
	Private              bool   // everybody needs a key, to find the sheets again

	Wait func(d time.Duration, over <-chan struct{}) error // until a class word is checked

	mu   sync.Mutex
	came map[string]bool // keys that were in by the class word
}

// keyText is where the permissions of a connection hold the key that was proved.
const keyText = "trivet-key"

// Why one was not admitted, as it is logged.
var (
	errUnfit   = errors.New("a key of a kind that is not accepted")
	errNoList  = errors.New("a key that is not listed")
	errWord    = errors.New("a wrong class word")
	errKeyless = errors.New("no key where one is needed")
)

// Reasons puts in words why one was not admitted, and how often.
func Reasons(err error) string {
	var all *gossh.ServerAuthError
	if !errors.As(err, &all) {
		return err.Error()
	}
	var words []string
	for _, e := range []error{errUnfit, errNoList, errWord, errKeyless} {
		n := 0
		for _, tried := range all.Errors {
			if errors.Is(tried, e) {
				n++
			}
		}
		switch {
		case n == 1:
			words = append(words, e.Error())
		case n > 1:
			words = append(words, e.Error()+" "+strconv.Itoa(n)+" times")
		}
	}
	if len(words) == 0 {
		return "it showed nothing by which to come in"
	}
	return strings.Join(words, ", ")
}

// Config is the protocol's side of admission: current algorithms, few tries,
// keys that are proved, and the class word. Each connection has its own.
func (a *Admission) Config(from *Connection) *gossh.ServerConfig {
	q := &question{Admission: a, from: from}
	c := &gossh.ServerConfig{
		MaxAuthTries:  authTries,
		ServerVersion: "SSH-2.0-trivet",
		Config: gossh.Config{
			KeyExchanges: []string{gossh.KeyExchangeMLKEM768X25519, gossh.KeyExchangeCurve25519},
			Ciphers:      []string{gossh.CipherAES128GCM, gossh.CipherAES256GCM, gossh.CipherChaCha20Poly1305},
			MACs:         []string{gossh.HMACSHA256ETM, gossh.HMACSHA512ETM}, // named, though these ciphers need none
		},
		PublicKeyAuthAlgorithms: []string{
			gossh.KeyAlgoED25519, gossh.KeyAlgoSKED25519, gossh.KeyAlgoSKECDSA256,
			gossh.KeyAlgoECDSA256, gossh.KeyAlgoECDSA384, gossh.KeyAlgoECDSA521, gossh.KeyAlgoRSASHA256, gossh.KeyAlgoRSASHA512,
		},
		PublicKeyCallback:         q.offered,
		VerifiedPublicKeyCallback: q.proved,
	}
	c.KeyboardInteractiveCallback = func(_ gossh.ConnMetadata, ask gossh.KeyboardInteractiveChallenge) (*gossh.Permissions, error) {
		switch {
		case !a.Private && a.Open:
			return &gossh.Permissions{}, nil
		case !a.Private && a.Word != "":
			return q.asked(ask, nil)
		}
		return nil, q.refused(ask)
	}
	return c
}

// offered tells whether a key is worth proving. Nothing follows from an offer.
// Where there is a class word a key of no list is too: who has proved one is known again
// when a line is cut while the door is closed to late-comers.
func (q *question) offered(_ gossh.ConnMetadata, key gossh.PublicKey) (*gossh.Permissions, error) {
	switch {
	case unfit(key) != "":
		q.shown = errUnfit
		return nil, errUnfit
	case q.Open || q.known(key) || q.Word != "":
		return nil, nil
	}
	q.shown = errNoList
	return nil, errNoList
}

// another tells whether a key is worth proving behind one that needs the class word: an
// agent may hold a presenter's besides.
func (a *Admission) another(_ gossh.ConnMetadata, key gossh.PublicKey) (*gossh.Permissions, error) {
	if unfit(key) == "" && a.known(key) {
		return nil, nil
	}
	return nil, errNoList
}

func (a *Admission) listed(key gossh.PublicKey) bool {
	return a.Presenters.has(key) || a.Watchers.has(key)
}

// known tells whether a key needs no class word: it is in a list, or was in before.
func (a *Admission) known(key gossh.PublicKey) bool {
	a.mu.Lock()
	defer a.mu.Unlock()
	return a.listed(key) || a.came[string(key.Marshal())]
}

// remember notes a key whose owner knew the class word.
func (a *Admission) remember(key gossh.PublicKey) {
	a.mu.Lock()
	defer a.mu.Unlock()
	if a.came == nil {
		a.came = map[string]bool{}
	}
	if len(a.came) < KeysKept {
		a.came[string(key.Marshal())] = true
	}
}

// proved takes a key whose owner has signed with it.
func (q *question) proved(_ gossh.ConnMetadata, key gossh.PublicKey, _ *gossh.Permissions, _ string) (*gossh.Permissions, error) {
	if q.Open || q.known(key) {
		return permit(key), nil
	}
	return nil, &gossh.PartialSuccessError{Next: gossh.ServerAuthCallbacks{
		PublicKeyCallback: q.another,
		KeyboardInteractiveCallback: func(_ gossh.ConnMetadata, ask gossh.KeyboardInteractiveChallenge) (*gossh.Permissions, error) {
			return q.asked(ask, key)
		},
	}}
}

// permit notes the key that was proved, if any.
func permit(key gossh.PublicKey) *gossh.Permissions {
	p := &gossh.Permissions{}
	if key != nil {
		p.Extensions = map[string]string{keyText: string(key.Marshal())}
	}
	return p
}

// question is what is asked of one connection, and said to it.
type question struct {
	*Admission
	from     *Connection
	missed   bool  // a class word was wrong
	shown    error // why the last key that was shown is not taken; nil where none was
	reported bool  // that a key is needed
}

// asked asks for the class word, and checks it after a while where many were wrong.
func (q *question) asked(ask gossh.KeyboardInteractiveChallenge, key gossh.PublicKey) (*gossh.Permissions, error) {
	says := ""
	if q.missed {
		says = "That is not the class word; each start of the host has a new one."
	}
	answers, err := ask("", says, []string{"Class word: "}, []bool{true})
	if err != nil {
		return nil, err
	}
	if d := q.from.attempt(); d > 0 {
		_, err := ask("", delayed(d), nil, nil)
		if err = errors.Join(err, q.Wait(d, q.from.ctx.Done())); err != nil {
			q.from.forgive() // it was not checked
			return nil, err
		}
	}
	if len(answers) != 1 || !sameWord(answers[0], q.Word) {
		q.missed = true
		return nil, errWord
	}
	q.from.forgive()
	if key != nil {
		q.remember(key)
	}
	return permit(key), nil
}

// delayed says how long a class word waits.
func delayed(d time.Duration) string {
	seconds := "1 second"
	if n := math.Ceil(d.Seconds()); n > 1 {
		seconds = fmt.Sprintf("%.0f seconds", n)
	}
	return "Many wrong class words were typed, so yours is checked in " + seconds + ".\nTry: wait here; the right one still lets you in."
}

// refused says, once to a connection, that a key is needed.
func (q *question) refused(ask gossh.KeyboardInteractiveChallenge) error {
	why := q.shown
	if why == nil {
		why = errKeyless
	}
	if q.reported {
		return why
	}
	q.reported = true
	if _, err := ask("", q.needsKey(), nil, nil); err != nil {
		return err
	}
	return why
}

// needsKey says what is wrong with the keys that ssh showed, and what to try, in
// lines of a small terminal.
func (q *question) needsKey() string {
	then := "come again."
	if !q.Open && q.Word == "" {
		then = "give the .pub file to whoever runs this host."
	}
	switch {
	case q.shown == errNoList:
		return "The key that your ssh showed is not in this host's list.\nTry: " + then
	case q.shown == errUnfit:
		return "The key that your ssh showed is of a kind that is not accepted here.\nTry: `ssh-keygen -t ed25519`, then " + then
	case q.Private:
		return "A private workbench needs an SSH key, and your ssh showed none.\nTry: `ssh-keygen -t ed25519`, then " + then
	}
	return "This host needs an SSH key, and your ssh showed none.\nTry: `ssh-keygen -t ed25519`, then " + then
}

// person tells who a connection belongs to, by the key that was proved.
func (a *Admission) person(p *gossh.Permissions) Person {
	if p == nil || p.Extensions[keyText] == "" {
		return Person{}
	}
	wire := p.Extensions[keyText]
	key, err := gossh.ParsePublicKey([]byte(wire))
	if err != nil {
		return Person{}
	}
	who := Person{Print: gossh.FingerprintSHA256(key), Folder: folderOf([]byte(wire)), Listed: a.listed(key)}
	if note, ok := a.Watchers[wire]; ok {
		who.Note = note
	}
	if note, ok := a.Presenters[wire]; ok {
		who.Role, who.Note = Presenter, note
	}
	return who
}
