package printable

import (
	"encoding/json"
	"errors"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"
)

// acting are the characters that act on a terminal: C0 and C1 as ECMA-48 has them, DEL,
// the characters with the property Bidi_Control in the Unicode Character Database
// (PropList.txt), the separators of lines and paragraphs (general categories Zl and Zp),
// and what is taken to show nothing wherever it stands: zero width space, word joiner,
// the invisible operators and the byte order mark.
func acting() (all []rune) {
	for r := rune(0); r < ' '; r++ {
		all = append(all, r)
	}
	for r := rune(0x7f); r < 0xa0; r++ {
		all = append(all, r)
	}
	return append(all, 0x061c, 0x200e, 0x200f, 0x202a, 0x202b, 0x202c, 0x202d, 0x202e, 0x2066, 0x2067, 0x2068, 0x2069,
		0x2028, 0x2029, 0x200b, 0x2060, 0x2061, 0x2062, 0x2063, 0x2064, 0xfeff)
}

func TestActs(t *testing.T) {
	want := append(acting(), utf8.RuneError)
	for r := rune(0); r <= utf8.MaxRune; r++ {
		if utf8.ValidRune(r) && Acts(r) != slices.Contains(want, r) {
			t.Errorf("Acts(%U) is %v", r, Acts(r))
		}
	}
}

func TestText(t *testing.T) {
	for _, c := range []struct{ in, text, line string }{
		{"", "", ""},
		{"a beam, 4 m long: Σ 30° ± é 日本 👷\u200d", "a beam, 4 m long: Σ 30° ± é 日本 👷\u200d", "a beam, 4 m long: Σ 30° ± é 日本 👷\u200d"},
		{"a\n\tb\r\nc\r", "a\n\tb\r\nc·", "a··b··c·"},
		{"over\rwritten", "over·written", "over·written"},
		{"\r\r\n", "·\r\n", "···"},
		{"\x1b]0;mine\x07\x1b[2J", "·]0;mine··[2J", "·]0;mine··[2J"},
		{"\u009b2J", "·2J", "·2J"},
		{"\x9b2J", "·2J", "·2J"},                                     // a C1 byte that is no UTF-8
		{"a\xe2\x80", "a··", "a··"},                                  // a character that ends too soon
		{"\xed\xa0\x80 \xc0\x9b \xf4\x90", "··· ·· ··", "··· ·· ··"}, // a surrogate, a long form, beyond Unicode
		{"5 k\u202eN\u2066", "5 k·N·", "5 k·N·"},
		{"5 kN\u2028limit\u2029 4 kN", "5 kN·limit· 4 kN", "5 kN·limit· 4 kN"},
		{"\ufeffT\u200b1, T\u20601, T\ufeff1", "·T·1, T·1, T·1", "·T·1, T·1, T·1"},
		{"می\u200cخواهم", "می\u200cخواهم", "می\u200cخواهم"}, // a joiner that its script needs
	} {
		if got := Text(c.in); got != c.text {
			t.Errorf("Text(%q) is %q, want %q", c.in, got, c.text)
		}
		if got := Line(c.in); got != c.line {
			t.Errorf("Line(%q) is %q, want %q", c.in, got, c.line)
		}
	}
}

// The text of JSON is the same for who reads it, and shows no character that acts.
func TestJSON(t *testing.T) {
	var b strings.Builder
	for _, r := range acting() {
		b.WriteString("a" + string(r))
	}
	want := map[string]string{"title": b.String() + "\ufffd 日 𝄞 \"quoted\\"}
	plain, err := json.MarshalIndent(want, "", "\t")
	if err != nil {
		t.Fatal(err)
	}
	clean := JSON(plain)
	if got := strings.Trim(Text(string(clean)), ""); got != string(clean) {
		t.Errorf("%q shows as %q", clean, got)
	}
	var back map[string]string
	if err := json.Unmarshal(clean, &back); err != nil || back["title"] != want["title"] {
		t.Errorf("%v: %q, want %q", err, back["title"], want["title"])
	}
}

// A byte order mark passes where a text begins, however it is cut, and nowhere else.
func TestWriterPassesTheMarkOfAFile(t *testing.T) {
	const text, want = "\ufeffθ (deg)\n\ufeff1\n", "\ufeffθ (deg)\n·1\n"
	for cut := range len(text) {
		var b strings.Builder
		w := NewWriter(&b)
		for _, p := range []string{text[:cut], text[cut:]} {
			if _, err := w.Write([]byte(p)); err != nil {
				t.Fatal(err)
			}
		}
		if err := w.Close(); err != nil || b.String() != want {
			t.Errorf("cut at %d: %q, %v", cut, &b, err)
		}
	}
}

type broken struct{}

func (broken) Write([]byte) (int, error) { return 0, errors.New("gone") }

func TestWriterTellsTheError(t *testing.T) {
	w := NewWriter(broken{})
	if n, err := w.Write([]byte("a")); n != 0 || err == nil {
		t.Errorf("%d, %v", n, err)
	}
	if n, err := w.Write([]byte{0xe2}); n != 1 || err != nil { // it is held back
		t.Errorf("%d, %v", n, err)
	}
	if err := w.Close(); err == nil {
		t.Error("the end of a character is lost without a word")
	}
}

// Whatever the bytes, and wherever they are cut, nothing that acts comes out, what does
// not act comes out as it was, and the cuts change nothing.
func FuzzWriter(f *testing.F) {
	for _, s := range []string{"", "a\r\nb\r", "\x1b[2J", "\u202e日本\u009b", "\xe2\x80\xae", "\xe2\x80", "\x9b", "👷\u200d🔧\r"} {
		f.Add([]byte(s), uint8(1), uint8(2))
	}
	f.Fuzz(func(t *testing.T, text []byte, first, second uint8) {
		i := min(int(first), len(text))
		j := min(i+int(second), len(text))
		var b strings.Builder
		w := &Writer{to: &b, begun: true}
		for _, p := range [][]byte{text[:i], text[i:j], text[j:]} {
			if n, err := w.Write(p); n != len(p) || err != nil {
				t.Fatalf("%d of %d written: %v", n, len(p), err)
			}
		}
		if err := w.Close(); err != nil {
			t.Fatal(err)
		}
		out := b.String()
		if whole := Text(string(text)); out != whole {
			t.Errorf("%q in pieces is %q, in one %q", text, out, whole)
		}
		if !utf8.ValidString(out) {
			t.Errorf("%q becomes %q", text, out)
		}
		rest := []rune(strings.ReplaceAll(string(text), "\r\n", "\n"))
		got := []rune(strings.ReplaceAll(out, "\r\n", "\n"))
		if len(rest) != len(got) {
			t.Fatalf("%q becomes %q", text, out)
		}
		for k, r := range rest {
			switch {
			case r == '\n' || r == '\t' || !Acts(r):
				if got[k] != r {
					t.Errorf("%q becomes %q", text, out)
				}
			case got[k] != Stand:
				t.Errorf("%q becomes %q", text, out)
			}
		}
	})
}
