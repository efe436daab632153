package call

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"trivet/fixtures"
)

func TestNewRefuses(t *testing.T) {
	const one = "trivet: a new sheet needs the name of one file. Try: `trivet new my.toml`\n"
	allRefused(t, []refused{
		{"new", one},
		{"new a.toml b.toml", one},
		{"new none/x.toml", "none/x.toml: there is no such folder. Try: make the folder, or save it under another name\n"},
		{"new --from mastop x.toml", "trivet: there is no starting sheet \"mastop\". Try: mast-top\n"},
		{"new --from gallows x.toml", "trivet: there is no starting sheet \"gallows\". Try: one of those that `trivet new --help` lists\n"},
		{"new --from= x.toml", "trivet: there is no starting sheet \"\". Try: one of those that `trivet new --help` lists\n"},
	})
	allRefused(t, []refused{
		{"new lamp.toml", "lamp.toml: a file of this name exists already. Try: another name, or open it with `trivet lamp.toml`\n"},
	})
	if text, err := os.ReadFile("lamp.toml"); err != nil || string(text) != lamp {
		t.Errorf("what was there is written over: %v\n%s", err, text)
	}
}

func TestNew(t *testing.T) {
	for _, c := range []struct{ line, from, out string }{
		{"new x.toml", defaultFrom, "x.toml: Load hung from three cables\n"},
		{"new --from mast-top x.toml", "mast-top", "x.toml: Mast top stayed by three guys\n"},
	} {
		if got := calls(t, strings.Fields(c.line)...); got != (said{c.out, "", 0}) {
			t.Errorf("trivet %s: %+v, want %q", c.line, got, c.out)
		}
		start, _ := fixtures.Get(c.from)
		if text, err := os.ReadFile("x.toml"); err != nil || string(text) != start.Text {
			t.Errorf("trivet %s: %v\n%s", c.line, err, text)
		}
	}
}

// A blank sheet takes the units of the settings that the call's environment
// names, and of no other.
func TestNewBlankTakesTheSettings(t *testing.T) {
	config := t.TempDir()
	file := filepath.Join(config, "trivet", "settings.toml")
	if err := os.MkdirAll(filepath.Dir(file), 0o700); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file, []byte("[units]\nforce = \"lbf\"\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	for env, want := range map[string]bool{"XDG_CONFIG_HOME=" + config: true, "XDG_CONFIG_HOME=" + t.TempDir(): false} {
		t.Chdir(t.TempDir())
		var out, says strings.Builder
		c := &Call{Stdout: &out, Stderr: &says, Env: []string{env}}
		if code := run(c, "new", "--from", "blank", "x.toml"); code != 0 || out.String() != "x.toml: Blank sheet in space\n" || says.Len() > 0 {
			t.Errorf("exit code %d: %s%s", code, &out, &says)
		}
		text, err := os.ReadFile("x.toml")
		if err != nil || strings.Contains(string(text), `"lbf"`) != want {
			t.Errorf("with %s: %v\n%s", env, err, text)
		}
	}
}
