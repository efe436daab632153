package call

import (
	"errors"
	"testing"

	"github.com/spf13/cobra"
)

func TestFlag(t *testing.T) {
	allRefused(t, []refused{
		{"--colour", "trivet: there is no flag --colour: try `trivet --help`\n"},
		{"new -q x.toml", "trivet: there is no flag -q: try `trivet new --help`\n"},
		{"solve --fromat json lamp.toml", "trivet: there is no flag --fromat: did you mean --format\n"},
		{"page --fild lamp.toml", "trivet: there is no flag --fild: did you mean --field\n"},
		{"solve lamp.toml --format", "trivet: --format has no value: write --format FORM\n"},
		{"solve lamp.toml --ask", "trivet: --ask has no value: write --ask RESULT\n"},
		{"page lamp.toml -o", "trivet: -o has no value: write -o FILE\n"},
		{"page lamp.toml --field=maybe", "trivet: --field takes no value, and here is \"maybe\": write --field alone\n"},
		{"--most many", "trivet: --most takes a whole number, and here is \"many\": write for example --most 16\n"},
		{"--most 1.5", "trivet: --most takes a whole number, and here is \"1.5\": write for example --most 16\n"},
		{"solve ---ask", "trivet: \"---ask\" is no flag: try `trivet solve --help`\n"},
		{"solve --=x", "trivet: \"--=x\" is no flag: try `trivet solve --help`\n"},
	})
}

// An error that has no words of ours keeps its own, and can still be told.
func TestFlagOfAnotherKind(t *testing.T) {
	odd := errors.New("odd")
	err := Flag(&cobra.Command{Use: "trivet"}, odd)
	if !errors.Is(err, odd) || err.Error() != "odd: try `trivet --help`" {
		t.Errorf("%v", err)
	}
}
