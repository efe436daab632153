package door

import (
	"net/netip"
)

// place is what counts as one address: a whole network of one in IPv6, where
// anybody has many.
func place(a netip.Addr) netip.Prefix {
	a = a.Unmap()
	bits := 32
	if a.Is6() {
		bits = 64
	}
	p, _ := a.Prefix(bits)
	return p
}
