package call

import (
	"os"
	"strings"
	"testing"
)

func TestOpen(t *testing.T) {
	t.Chdir(t.TempDir())
	for name, text := range sheets() {
		if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	for _, c := range []struct{ name, says string }{
		{"lamp.toml", ""},
		{"half.toml", ""}, // for the workbench to mend
		{"broken.toml", brokenSays},
		{"missing.toml", missingSays},
		{"lamp", "lamp: there is no such file. Try: lamp.toml\n"},
		{"mast-top", "mast-top: there is no such file. Try: `trivet new --from mast-top my.toml`\n"},
	} {
		var says strings.Builder
		call := &Call{Stderr: &says}
		s, stamp, ok := call.Open(c.name)
		code := call.End(nil)
		if says.String() != c.says || ok != (c.says == "") || ok != (s != nil) || ok == stamp.IsZero() || (code == 0) != ok || !ok && code != CantDo {
			t.Errorf("%s: sheet %v, stamp %v, ok %v, exit code %d, says %q, want %q", c.name, s != nil, stamp, ok, code, &says, c.says)
		}
	}
}
