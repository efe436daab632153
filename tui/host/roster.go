package host

import (
	"crypto/rsa"
	"fmt"
	"os"
	"strings"

	gossh "golang.org/x/crypto/ssh"
)

// roster is a list of keys, as in an authorized_keys file: the comment of each by
// the key's own bytes.
type roster map[string]string

func (r roster) has(key gossh.PublicKey) bool {
	_, ok := r[string(key.Marshal())]
	return ok
}

// rsaLeast is the shortest RSA key taken: NIST SP 800-131A, 2048 bit.
const rsaLeast = 2048

// unfit says why a key is not taken, whoever holds it.
func unfit(key gossh.PublicKey) string {
	switch k := key.(type) {
	case *gossh.Certificate:
		return "certificates are not taken: write the key itself"
	case gossh.CryptoPublicKey:
		if r, ok := k.CryptoPublicKey().(*rsa.PublicKey); ok && r.N.BitLen() < rsaLeast {
			return fmt.Sprintf("an RSA key has at least %d bits, and this has %d: make one by `ssh-keygen -t ed25519`", rsaLeast, r.N.BitLen())
		}
	}
	if key.Type() == "ssh-dss" {
		return "DSA keys are not taken: make one by `ssh-keygen -t ed25519`"
	}
	return ""
}

// readRoster reads a list of keys.
func readRoster(file string) (roster, error) {
	text, err := os.ReadFile(file)
	if err != nil {
		return nil, fmt.Errorf("the list of keys cannot be read: %w", err)
	}
	keys := roster{}
	for i, l := range strings.Split(strings.TrimPrefix(string(text), "\ufeff"), "\n") {
		l = strings.TrimSpace(l)
		if l == "" || l[0] == '#' {
			continue
		}
		key, comment, options, _, err := gossh.ParseAuthorizedKey([]byte(l))
		switch {
		case strings.Contains(l, "PRIVATE KEY"):
			return nil, fmt.Errorf("%s:%d: this is a private key: write the public one, as in id_ed25519.pub, and let nobody see this file", file, i+1)
		case err != nil:
			return nil, fmt.Errorf("%s:%d: this is no public key: write one a line, as in id_ed25519.pub", file, i+1)
		case len(options) > 0:
			return nil, fmt.Errorf("%s:%d: options before a key mean nothing here: write the key alone", file, i+1)
		}
		if why := unfit(key); why != "" {
			return nil, fmt.Errorf("%s:%d: %s", file, i+1, why)
		}
		keys[string(key.Marshal())] = echo(comment)
	}
	if len(keys) == 0 {
		return nil, fmt.Errorf("%s: there is no key in it: write one a line, as in id_ed25519.pub", file)
	}
	return keys, nil
}
