package tui

import (
	"fmt"
	"strings"
)

// terminalKeys are the bytes of keys as xterm and those after it send them, and
// as they come through SSH and tmux.
var terminalKeys = map[string]string{
	"enter": "\r", "tab": "\t", "space": " ", "backspace": "\x7f",
	// Escape alone would be taken together with what comes next within some
	// milliseconds; this is how a terminal sends it that tells the two apart.
	"esc": "\x1b[27u",
	"up":  "\x1b[A", "down": "\x1b[B", "right": "\x1b[C", "left": "\x1b[D", "home": "\x1b[H", "end": "\x1b[F",
	"insert": "\x1b[2~", "delete": "\x1b[3~", "pgup": "\x1b[5~", "pgdown": "\x1b[6~",
	"f1": "\x1bOP", "f2": "\x1bOQ", "f3": "\x1bOR", "f4": "\x1bOS", "f5": "\x1b[15~", "f6": "\x1b[17~", "f7": "\x1b[18~", "f8": "\x1b[19~", "f9": "\x1b[20~",
	"shift+tab": "\x1b[Z", "shift+f6": "\x1b[17;2~",
	// What a terminal tells besides keys.
	"focus": "\x1b[I",
}

// modifiers are the numbers of modified arrows.
var modifiers = map[string]int{"shift": 2, "alt": 3, "ctrl": 5}

// keyBytes gives the bytes of a key by its name in the table.
func keyBytes(name string) (string, bool) {
	if b, ok := terminalKeys[name]; ok {
		return b, true
	}
	if len([]rune(name)) == 1 {
		return name, true
	}
	mod, base, _ := strings.Cut(name, "+")
	arrow, ok := terminalKeys[base]
	switch {
	case ok && modifiers[mod] > 0 && len(arrow) == 3 && arrow[1] == '[':
		return fmt.Sprintf("\x1b[1;%d%s", modifiers[mod], arrow[2:]), true
	case len(base) != 1:
	case mod == "alt":
		return "\x1b" + base, true
	case mod == "ctrl" && base[0] >= 'a' && base[0] <= 'z':
		return string(rune(base[0] - 'a' + 1)), true
	}
	return "", false
}

// sgr is a mouse event at a place on screen, as terminals report it in mode 1006.
func sgr(button, x, y int, down bool) string {
	end := map[bool]string{true: "M", false: "m"}[down]
	return fmt.Sprintf("\x1b[<%d;%d;%d%s", button, x+1, y+1, end)
}

// Buttons of the mouse in that mode.
const (
	mouseLeft      = 0
	mouseDragged   = 32
	mouseWheelUp   = 64
	mouseWheelDown = 65
)
