package host

import (
	"errors"
	"net/netip"
	"strconv"
	"strings"
	"time"

	gossh "golang.org/x/crypto/ssh"
)

// admission is who may come in as what.
type admission struct {
	presenters, watchers roster
	code                 string // of this run; empty without
	open                 bool   // anybody, said explicitly or on the loopback address
	private              bool   // everybody needs a key, to find the sheets again

	guesses guesses
}

// keyText is where the permissions of a connection hold the key that was proved.
const keyText = "trivet-key"

// Why one was not admitted, as it is logged.
var (
	errUnfit   = errors.New("a key of a kind that is not taken")
	errNoList  = errors.New("a key in no list")
	errCode    = errors.New("a wrong join code")
	errGuesses = errors.New("a join code after too many wrong ones")
)

// reasons puts in words why one was not admitted, and how often.
func reasons(err error) string {
	var all *gossh.ServerAuthError
	if !errors.As(err, &all) {
		return err.Error()
	}
	var words []string
	for _, e := range []error{errUnfit, errNoList, errCode, errGuesses} {
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

// config is the protocol's side of admission: current algorithms, few tries,
// keys that are proved, and the code. Each connection has its own.
func (a *admission) config() *gossh.ServerConfig {
	q := &question{admission: a}
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
		PublicKeyCallback:         a.offered,
		VerifiedPublicKeyCallback: q.proved,
	}
	if !a.private && (a.open || a.code != "") {
		c.KeyboardInteractiveCallback = func(conn gossh.ConnMetadata, ask gossh.KeyboardInteractiveChallenge) (*gossh.Permissions, error) {
			if a.open {
				return &gossh.Permissions{}, nil
			}
			return q.asked(conn, ask, nil)
		}
	}
	return c
}

// offered tells whether a key is worth proving. Nothing follows from an offer.
// Where there is a code a key of no list is too: who has proved one is known again
// when a line is cut while the door is closed to late-comers.
func (a *admission) offered(_ gossh.ConnMetadata, key gossh.PublicKey) (*gossh.Permissions, error) {
	switch {
	case unfit(key) != "":
		return nil, errUnfit
	case a.open || a.listed(key) || a.code != "":
		return nil, nil
	}
	return nil, errNoList
}

// another tells whether a key is worth proving behind one of no list: an agent may
// hold a presenter's besides.
func (a *admission) another(_ gossh.ConnMetadata, key gossh.PublicKey) (*gossh.Permissions, error) {
	if unfit(key) == "" && a.listed(key) {
		return nil, nil
	}
	return nil, errNoList
}

func (a *admission) listed(key gossh.PublicKey) bool {
	return a.presenters.has(key) || a.watchers.has(key)
}

// proved takes a key whose owner has signed with it.
func (q *question) proved(_ gossh.ConnMetadata, key gossh.PublicKey, _ *gossh.Permissions, _ string) (*gossh.Permissions, error) {
	if q.open || q.listed(key) {
		return permit(key), nil
	}
	return nil, &gossh.PartialSuccessError{Next: gossh.ServerAuthCallbacks{
		PublicKeyCallback: q.another,
		KeyboardInteractiveCallback: func(conn gossh.ConnMetadata, ask gossh.KeyboardInteractiveChallenge) (*gossh.Permissions, error) {
			return q.asked(conn, ask, key)
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

// question is the join code asked of one connection, again where it was wrong.
type question struct {
	*admission
	missed bool
}

// asked asks for the join code.
func (q *question) asked(conn gossh.ConnMetadata, ask gossh.KeyboardInteractiveChallenge, key gossh.PublicKey) (*gossh.Permissions, error) {
	from, err := netip.ParseAddrPort(conn.RemoteAddr().String())
	if err != nil || !q.guesses.may(from.Addr(), time.Now()) {
		return nil, errGuesses
	}
	says := ""
	if q.missed {
		says = "That is not the join code; each start of the host has a new one."
	}
	answers, err := ask("", says, []string{"Join code: "}, []bool{true})
	if err != nil {
		return nil, err
	}
	right := len(answers) == 1 && sameCode(answers[0], q.code)
	if !q.guesses.judge(from.Addr(), right, time.Now()) {
		q.missed = true
		return nil, errCode
	}
	return permit(key), nil
}

// person tells who a connection belongs to, by the key that was proved.
func (a *admission) person(p *gossh.Permissions) person {
	if p == nil || p.Extensions[keyText] == "" {
		return person{}
	}
	wire := p.Extensions[keyText]
	key, err := gossh.ParsePublicKey([]byte(wire))
	if err != nil {
		return person{}
	}
	who := person{print: gossh.FingerprintSHA256(key), folder: folderOf([]byte(wire)), listed: a.listed(key)}
	if note, ok := a.watchers[wire]; ok {
		who.note = note
	}
	if note, ok := a.presenters[wire]; ok {
		who.role, who.note = presenter, note
	}
	return who
}
