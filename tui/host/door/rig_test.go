package door

import (
	"crypto/ed25519"
	"crypto/rand"
	"os"
	"testing"
	"time"

	gossh "golang.org/x/crypto/ssh"
)

// patience is how long a loaded machine may take; it is not a measure.
const patience = time.Minute

// key makes a key of one's own.
func key(t testing.TB) gossh.Signer {
	t.Helper()
	_, k, err := ed25519.GenerateKey(rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	s, err := gossh.NewSignerFromKey(k)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func write(t testing.TB, file, text string) string {
	t.Helper()
	if err := os.WriteFile(file, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return file
}

func says(err error) string {
	if err == nil {
		return ""
	}
	return err.Error()
}
