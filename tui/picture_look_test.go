package tui

import "testing"

func TestWhatThePictureShows(t *testing.T) {
	r := newRig(t, crane, 120, 36)
	r.keys("alt+i", "d")
	r.sees("3.00 m") // |DA|
	r.keys("d", "x")
	r.sees("arrows: to scale")
	r.keys("x")
	r.sees("arrows: all alike")
	r.keys("x", "g")
	r.sees("Force polygon of D, in space")
	golden(t, "120x36-polygon", r.screen())
	r.keys("g")
	r.sees("Picture in space")
	r = newRig(t, beam, 120, 36)
	r.keys("alt+i", "g")
	r.sees("this sheet has none", "Picture in its plane")
}
