package report

import (
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"testing"

	"trivet/mechanics/doc"
	"trivet/mechanics/working"
)

// MathML of every formula is well-formed, of elements that MathML Core has.
func TestMathMLIsWellFormed(t *testing.T) {
	core := map[string]bool{"math": true, "mrow": true, "mi": true, "mn": true, "mo": true, "mtext": true, "mspace": true,
		"msub": true, "msup": true, "mfrac": true, "msqrt": true, "mtable": true, "mtr": true, "mtd": true}
	n := 0
	check := func(name, text string) {
		n++
		for d := xml.NewDecoder(strings.NewReader(text)); ; {
			token, err := d.Token()
			if errors.Is(err, io.EOF) {
				return
			}
			if err != nil {
				t.Errorf("%s: %v in %s", name, err, text)
				return
			}
			if e, ok := token.(xml.StartElement); ok && !core[e.Name.Local] {
				t.Errorf("%s: an element %s", name, e.Name.Local)
			}
		}
	}
	for name, text := range everySheet(t) {
		for _, step := range worked(t, text).Steps {
			for _, b := range step.Body {
				for _, m := range doc.Formulas(b) {
					check(name, doc.MathML(*m))
				}
			}
		}
	}
	if n < 1000 {
		t.Errorf("%d formulas", n)
	}
	if got := doc.MathML(doc.Math{Op: doc.Symbol, Text: `<b>&"`}); got != `<math><mi>&lt;b&gt;&amp;&#34;</mi></math>` {
		t.Errorf("a name in MathML is %s", got)
	}
}

// Names of any length and sheets of many lines keep to the width.
func TestLongNamesKeepToTheWidth(t *testing.T) {
	long := strings.Repeat("Verankerung", 9)
	sheet := "[points]\n" + long + " = { at = \"0, 0, 0\", on = \"particle\" }\nA = \"1, 2, 3\"\n[lines]\n" + long + "1 = { kind = \"link\", path = \"" + long + " A\" }\n" +
		"W = { kind = \"force\", at = \"" + long + "\", along = \"(1, 2, 3)\", magnitude = \"5 N\" }\n"
	for _, line := range strings.Split(textWorking(worked(t, sheet)), "\n") {
		if n := len([]rune(line)); n > doc.TextWidth {
			t.Errorf("%d cells: %s", n, line)
		}
	}
}

// textWorking is a working alone, as text.
func textWorking(w *working.Working) string {
	d := &doc.Doc{}
	addWorking(d, w)
	return doc.Text(d)
}
