package call

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/spf13/cobra"
)

// lamp is well: the cable carries 10 N.
const lamp = `title = "Lamp on a cable"
plane = "xy"
up = "+y"
[points]
P = { at = "0, 0", on = "particle" }
A = "0, 3"
[lines]
T = { kind = "cable", path = "P A" }
W = { kind = "weight", at = "P", magnitude = "10 N" }
`

// ranged has a load that may be one of five.
const ranged = `[given]
W = { value = "12 N", range = "12 N .. 20 N", step = "2 N" }
[points]
P = { at = "0, 0, 0", on = "particle" }
A = "0, 0, 3"
[lines]
T = { kind = "cable", path = "P A" }
F = { kind = "force", at = "P", along = "-z", magnitude = "W" }
`

// sheets are the files that every call of these tests finds.
func sheets() map[string]string {
	return map[string]string{
		"lamp.toml":     lamp,
		"misprint.toml": lamp + "[answers]\nsource = \"own\"\nT = \"11 N\"\n",
		"push.toml":     strings.Replace(lamp, "0, 3", "0, -3", 1),
		"doubt.toml":    strings.Replace(lamp, `"particle"`, `"pa"`, 1),
		"ranged.toml":   ranged,
		"limited.toml":  strings.Replace(ranged, `"P A"`, `"P A", limit = "19 N"`, 1),
		"two.toml":      strings.Replace(lamp, "A = ", "E = { at = \"1, 0\", on = \"particle\" }\nA = ", 1),
		"loads.toml": strings.Replace(strings.Replace(lamp, `[lines]`, "[loads]\nF = { kind = \"force\", at = \"P\", along = \"-y\", magnitude = \"5 N\" }\n[lines]", 1),
			`path = "P A"`, `path = "P A", rope = "9 mm", x-rope = "9 mm"`, 1),
		"half.toml":   "title = \"Half a lamp\"\n[points]\nP = \"0, 0, 3 kN\"\n",
		"broken.toml": "title \"a\"\n",
		"chek":        lamp,
		"there.svg":   "as it was\n",
	}
}

// What is wrong with the sheets that do not read, as it is shown.
const (
	halfSays    = "half.toml:3:12: expected a length, but 3 kN is a force. Try: a value in m\nP = \"0, 0, 3 kN\"\n           ^~~~\n"
	brokenSays  = "broken.toml:1:7: an = is missing after the name. Try: name = \"value\"\ntitle \"a\"\n      ^\n"
	missingSays = "missing.toml: there is no such file. Try: another name, or make the sheet with `trivet new missing.toml`\n"
)

// said is what a call of the program prints, and its exit code.
type said struct {
	out, err string
	code     int
}

// calls makes one call in a folder of its own that holds the sheets; nobody has
// settings there, and standard input is the lamp.
func calls(t *testing.T, args ...string) said {
	t.Helper()
	t.Chdir(t.TempDir())
	for name, text := range sheets() {
		if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	var out, says strings.Builder
	c := New(strings.NewReader(lamp), &out, &says, []string{"XDG_CONFIG_HOME=" + filepath.Join(t.TempDir(), "none")})
	code := run(c, args...)
	return said{out.String(), says.String(), code}
}

// run runs the commands of this package below a program's that opens nothing.
func run(c *Call, args ...string) int {
	root := &cobra.Command{Use: Program + " [SHEET]", Args: OneSheetOrNone, RunE: func(*cobra.Command, []string) error { return nil }}
	root.Flags().Int("most", 16, "so `MANY`")
	root.SetOut(c.Stdout)
	root.SetErr(c.Stderr)
	c.OwnWords(root, c.Solve(), c.Check(), c.Page(), c.Sweep(), c.Vary(), c.Mark(), c.Try(), c.Record(), c.New(), c.Schema())
	root.SetArgs(args)
	return c.End(root.Execute())
}

// refused is a call of which nothing comes but what is wrong with it.
type refused struct{ line, says string }

// allRefused holds calls, their words apart by blanks, to the exact message, exit
// code CantDo, and nothing printed.
func allRefused(t *testing.T, cases []refused) {
	t.Helper()
	for _, c := range cases {
		if got, want := calls(t, strings.Fields(c.line)...), (said{"", c.says, CantDo}); got != want {
			t.Errorf("trivet %s:\n%+v, want\n%+v", c.line, got, want)
		}
	}
}
