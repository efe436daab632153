package host

import (
	"errors"
	"net/netip"
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

var errNotAdmitted = errors.New("not admitted")

// config is the protocol's side of admission: current algorithms, few tries,
// keys that are proved, and the code.
func (a *admission) config() *gossh.ServerConfig {
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
		VerifiedPublicKeyCallback: a.proved,
	}
	if !a.private && (a.open || a.code != "") {
		c.KeyboardInteractiveCallback = func(conn gossh.ConnMetadata, ask gossh.KeyboardInteractiveChallenge) (*gossh.Permissions, error) {
			if a.open {
				return &gossh.Permissions{}, nil
			}
			return a.asked(conn, ask, nil)
		}
	}
	return c
}

// offered tells whether a key is worth proving. Nothing follows from an offer.
// Where there is a code a key of no list is too: who has proved one is known again
// when a line is cut while the door is closed to late-comers.
func (a *admission) offered(_ gossh.ConnMetadata, key gossh.PublicKey) (*gossh.Permissions, error) {
	if unfit(key) == "" && (a.open || a.listed(key) || a.code != "") {
		return nil, nil
	}
	return nil, errNotAdmitted
}

// another tells whether a key is worth proving behind one of no list: an agent may
// hold a presenter's besides.
func (a *admission) another(_ gossh.ConnMetadata, key gossh.PublicKey) (*gossh.Permissions, error) {
	if unfit(key) == "" && a.listed(key) {
		return nil, nil
	}
	return nil, errNotAdmitted
}

func (a *admission) listed(key gossh.PublicKey) bool {
	return a.presenters.has(key) || a.watchers.has(key)
}

// proved takes a key whose owner has signed with it.
func (a *admission) proved(_ gossh.ConnMetadata, key gossh.PublicKey, _ *gossh.Permissions, _ string) (*gossh.Permissions, error) {
	if a.open || a.listed(key) {
		return permit(key), nil
	}
	return nil, &gossh.PartialSuccessError{Next: gossh.ServerAuthCallbacks{
		PublicKeyCallback: a.another,
		KeyboardInteractiveCallback: func(conn gossh.ConnMetadata, ask gossh.KeyboardInteractiveChallenge) (*gossh.Permissions, error) {
			return a.asked(conn, ask, key)
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

// asked asks for the join code.
func (a *admission) asked(conn gossh.ConnMetadata, ask gossh.KeyboardInteractiveChallenge, key gossh.PublicKey) (*gossh.Permissions, error) {
	from, err := netip.ParseAddrPort(conn.RemoteAddr().String())
	if err != nil || !a.guesses.may(from.Addr(), time.Now()) {
		return nil, errNotAdmitted
	}
	answers, err := ask("", "", []string{"Join code: "}, []bool{true})
	if err != nil {
		return nil, err
	}
	right := len(answers) == 1 && sameCode(answers[0], a.code)
	if !a.guesses.judge(from.Addr(), right, time.Now()) {
		return nil, errNotAdmitted
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
