package door

import (
	"crypto/ed25519"
	"crypto/rand"
	"encoding/pem"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"

	gossh "golang.org/x/crypto/ssh"

	"trivet/mechanics/diag"
)

// The host's key, in a folder of its own below the host's folder.
const (
	keyFolder = "key"
	keyFile   = "host_ed25519"
	keyMode   = 0o600
	ownMode   = 0o700 // of that folder
)

// HostKey reads the key by which visitors know the host again, and makes it on
// the first start.
func HostKey(state string) (gossh.Signer, error) {
	folder := filepath.Join(state, keyFolder)
	file := filepath.Join(folder, keyFile)
	text, err := os.ReadFile(file)
	if errors.Is(err, fs.ErrNotExist) {
		text, err = makeKey(folder, file)
	}
	if err != nil {
		return nil, fmt.Errorf("the host's key: %w", err)
	}
	if info, err := os.Stat(file); err == nil && info.Mode().Perm()&0o077 != 0 && runtime.GOOS != "windows" {
		return nil, diag.New("the host's key "+file+" can be read by others", "chmod 600, or remove it for a new one")
	}
	key, err := gossh.ParsePrivateKey(text)
	if err != nil {
		return nil, &diag.Error{Msg: fmt.Sprintf("the host's key %s cannot be read (%v)", file, err), Hint: "remove it for a new one, of which visitors are warned", Err: err}
	}
	if key.PublicKey().Type() != gossh.KeyAlgoED25519 {
		return nil, diag.New("the host's key "+file+" is not an ed25519 key", "remove it for a new one, of which visitors are warned")
	}
	return key, nil
}

func makeKey(folder, file string) ([]byte, error) {
	if err := os.MkdirAll(folder, ownMode); err != nil {
		return nil, err
	}
	_, key, err := ed25519.GenerateKey(rand.Reader)
	if err != nil {
		return nil, err
	}
	block, err := gossh.MarshalPrivateKey(key, "trivet host")
	if err != nil {
		return nil, err
	}
	text := pem.EncodeToMemory(block)
	f, err := os.OpenFile(file, os.O_WRONLY|os.O_CREATE|os.O_EXCL, keyMode)
	if err != nil {
		return nil, err
	}
	_, err = f.Write(text)
	return text, errors.Join(err, f.Sync(), f.Close())
}
