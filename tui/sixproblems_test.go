package tui

import (
	"testing"

	tea "charm.land/bubbletea/v2"
)

func TestTry(t *testing.T) {
	r := startRig(t, 120, 36)
	r.keys("esc")

	for _, line := range []string{
		"joint\tx (mm)\ty\tz\nA\t0\t0\t0\nB\t1000\t0\t0\nC\t1\t2\t3\n\nbar\tfrom\tto\nAB\tA\tB\nAC\tA\tC\n",
		"name,value\nW,5 kN\nh,3\n", "Q, 1, 2, 3\nR, 4, 5, 6",
	} {
		r.send(tea.PasteMsg{Content: line})
		t.Log(r.screen())
	}
}
