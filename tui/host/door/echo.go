package door

import (
	"trivet/mechanics/printable"
)

// longestEcho is how many bytes of what a visitor typed go back.
const longestEcho = 80

// Echo is what a visitor typed, as it goes back to a terminal.
func Echo(s string) string {
	if len(s) > longestEcho {
		s = s[:longestEcho]
	}
	return printable.Line(s)
}
