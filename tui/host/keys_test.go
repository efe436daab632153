package host

import (
	"testing"

	binding "trivet/tui/keys"
)

// The host takes its own key before the workbench sees it.
func TestTheHostsKeyIsNoneOfTheWorkbench(t *testing.T) {
	for m := range binding.Modes {
		if b, ok := binding.Find(m, liveKey); ok {
			t.Errorf("mode %d: %s is %q", m, liveKey, b.Help)
		}
	}
}
