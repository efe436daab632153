package call

import (
	"errors"
	"testing"

	"github.com/spf13/cobra"
)

func TestFlag(t *testing.T) {
	allRefused(t, []refused{
		{"--colour", "trivet: unknown flag --colour. Try: `trivet --help`\n"},
		{"new -q x.toml", "trivet: unknown flag -q. Try: `trivet new --help`\n"},
		{"solve --fromat json lamp.toml", "trivet: unknown flag --fromat. Try: --format\n"},
		{"page --fild lamp.toml", "trivet: unknown flag --fild. Try: --field\n"},
		{"solve lamp.toml --format", "trivet: --format needs a value. Try: --format FORM\n"},
		{"solve lamp.toml --ask", "trivet: --ask needs a value. Try: --ask RESULT\n"},
		{"page lamp.toml -o", "trivet: -o needs a value. Try: -o FILE\n"},
		{"page lamp.toml --field=maybe", "trivet: --field takes no value, but \"maybe\" is given. Try: --field alone\n"},
		{"--most many", "trivet: --most needs a whole number, not \"many\". Try: --most 16\n"},
		{"--most 1.5", "trivet: --most needs a whole number, not \"1.5\". Try: --most 16\n"},
		{"solve ---ask", "trivet: \"---ask\" is not a flag. Try: `trivet solve --help`\n"},
		{"solve --=x", "trivet: \"--=x\" is not a flag. Try: `trivet solve --help`\n"},
	})
}

// An error that has no words of ours keeps its own, and can still be told.
func TestFlagOfAnotherKind(t *testing.T) {
	odd := errors.New("odd")
	err := Flag(&cobra.Command{Use: "trivet"}, odd)
	if !errors.Is(err, odd) || err.Error() != "odd. Try: `trivet --help`" {
		t.Errorf("%v", err)
	}
}
