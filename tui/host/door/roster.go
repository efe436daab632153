package door

import (
	"crypto/rsa"
	"errors"
	"fmt"
	"os"
	"strings"

	gossh "golang.org/x/crypto/ssh"

	"trivet/mechanics/diag"
)

// Roster is a list of keys, as in an authorized_keys file: the comment of each by
// the key's own bytes.
type Roster map[string]string

func (r Roster) has(key gossh.PublicKey) bool {
	_, ok := r[string(key.Marshal())]
	return ok
}

// rsaLeast is the shortest RSA key taken: NIST SP 800-131A, 2048 bit.
const rsaLeast = 2048

// unfit says why a key is not taken, whoever holds it.
func unfit(key gossh.PublicKey) string {
	switch k := key.(type) {
	case *gossh.Certificate:
		return "certificates are not accepted. Try: the key itself"
	case gossh.CryptoPublicKey:
		if r, ok := k.CryptoPublicKey().(*rsa.PublicKey); ok && r.N.BitLen() < rsaLeast {
			return fmt.Sprintf("an RSA key has at least %d bits, and this has %d: make one by `ssh-keygen -t ed25519`", rsaLeast, r.N.BitLen())
		}
	}
	if key.Type() == "ssh-dss" {
		return "DSA keys are not accepted. Try: `ssh-keygen -t ed25519`"
	}
	return ""
}

// inLine is what is wrong with a line of a list, counted from 0.
func inLine(file string, i int, msg, hint string) error {
	e := &diag.Error{Place: diag.Place{Line: i + 1}, Msg: msg, Hint: hint}
	return errors.New(e.Short(file))
}

// ReadRoster reads a list of keys.
func ReadRoster(file string) (Roster, error) {
	text, err := os.ReadFile(file)
	if err != nil {
		return nil, fmt.Errorf("the list of keys cannot be read: %w", err)
	}
	keys := Roster{}
	for i, l := range strings.Split(strings.TrimPrefix(string(text), "\ufeff"), "\n") {
		l = strings.TrimSpace(l)
		if l == "" || l[0] == '#' {
			continue
		}
		key, comment, options, _, err := gossh.ParseAuthorizedKey([]byte(l))
		switch {
		case strings.Contains(l, "PRIVATE KEY"):
			return nil, inLine(file, i, "this is a private key", "the public one, as in id_ed25519.pub; keep this file secret")
		case err != nil:
			return nil, inLine(file, i, "this is not a public key", "one key a line, as in id_ed25519.pub")
		case len(options) > 0:
			return nil, inLine(file, i, "options before a key are not used here", "the key alone")
		}
		if why := unfit(key); why != "" {
			return nil, inLine(file, i, why, "")
		}
		keys[string(key.Marshal())] = Echo(comment)
	}
	if len(keys) == 0 {
		return nil, diag.New(file+": the file has no keys", "one key a line, as in id_ed25519.pub")
	}
	return keys, nil
}
