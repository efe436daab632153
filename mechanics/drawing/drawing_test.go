package drawing

import (
	"bytes"
	"encoding/xml"
	"errors"
	"image/png"
	"io"
	"math"
	"strings"
	"testing"
	"time"
)

func sample() Drawing {
	d := Drawing{Width: 120, Height: 60, Title: `a "b" <c> & 'd'`}
	d.Line(Dark, 1, Vec{10, 10}, Vec{110, 50})
	d.Area(Fill, Load, 0.5, Vec{20, 20}, Vec{40, 20}, Vec{30, 40})
	d.Shapes = append(d.Shapes, Shape{Pts: []Vec{{0, 0}, {5, math.NaN()}}, Line: Found, Width: 1, Dashed: true})
	d.Write(Vec{50, 30}, 10, Found, Run{Text: "T", Style: Italic}, Run{Text: "1", Level: -1}, Run{Text: " < 5 & Σ∥漢\x01"})
	return d
}

func TestSVGIsWellFormed(t *testing.T) {
	text := string(SVG(sample()))
	dec := xml.NewDecoder(strings.NewReader(text))
	for {
		if _, err := dec.Token(); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			t.Fatalf("%v in\n%s", err, text)
		}
	}
	for _, want := range []string{"&lt; 5 &amp; Σ∥漢·", "<title>a &quot;b&quot; &lt;c&gt; &amp; &#39;d&#39;</title>", `font-style="italic"`, `stroke-dasharray`} {
		if !strings.Contains(text, want) {
			t.Errorf("no %s in\n%s", want, text)
		}
	}
	if strings.Contains(text, "NaN") {
		t.Errorf("NaN in\n%s", text)
	}
}

func TestPDFIsTheSameTwice(t *testing.T) {
	about := About{Title: "Größe Σ", Author: "A. Example"}
	first, err := PDF([]Drawing{sample(), sample()}, about)
	if err != nil {
		t.Fatal(err)
	}
	again, err := PDF([]Drawing{sample(), sample()}, about)
	if err != nil || !bytes.Equal(first, again) {
		t.Errorf("not the same bytes, %v", err)
	}
	about.Date = time.Date(2026, 5, 4, 0, 0, 0, 0, time.UTC)
	dated, err := PDF([]Drawing{sample()}, about)
	if err != nil || !bytes.Contains(dated, []byte("D:20260504")) || bytes.Contains(first, []byte("D:20260504")) {
		t.Errorf("the date given is not the file's, %v", err)
	}
}

func TestPNGHasTheSize(t *testing.T) {
	data, err := PNG(sample(), 144)
	if err != nil {
		t.Fatal(err)
	}
	img, err := png.Decode(bytes.NewReader(data))
	if err != nil || img.Bounds().Dx() != 240 || img.Bounds().Dy() != 120 {
		t.Errorf("%v, %v", img.Bounds(), err)
	}
	if _, err := PNG(Drawing{Width: 1e9, Height: 10}, 72); err == nil || err.Error() != "a picture of 1000000000 × 10 pixels is beyond reason" {
		t.Errorf("a huge picture: %v", err)
	}
	if _, err := PNG(Drawing{}, 72); err == nil {
		t.Error("a picture of nothing has bytes")
	}
}

func TestCharactersThatTheFontLacks(t *testing.T) {
	for in, want := range map[string]string{"Σ α μ ° × · − √ ≤ ½ é": "Σ α μ ° × · − √ ≤ ½ é", "∥": "‖", "漢": "□", "a\tb": "a b", "\x7f": "·", "\u202e": "·", "\u009b": "·", "\xff": "·"} {
		if got := stands(in); got != want {
			t.Errorf("%q stands as %q, want %q", in, got, want)
		}
	}
}

// A segment lies in a box between the places where it crosses its edges.
func TestClip(t *testing.T) {
	b := Box{Vec{0, 0}, Vec{10, 10}}
	for _, c := range []struct {
		p, q   Vec
		length float64
		meets  bool
	}{
		{Vec{-5, 5}, Vec{15, 5}, 10, true},
		{Vec{2, 2}, Vec{5, 6}, 5, true},
		{Vec{-5, 12}, Vec{15, 12}, 0, false},
		{Vec{-5, -5}, Vec{-1, -1}, 0, false},
		{Vec{5, 5}, Vec{5, 5}, 0, true},
		{Vec{50, 5}, Vec{50, 5}, 0, false},
	} {
		from, to, ok := b.Clip(c.p, c.q)
		if got := (to - from) * c.q.Sub(c.p).Len(); ok != c.meets || ok && math.Abs(got-c.length) > 1e-12 { // exact but for rounding
			t.Errorf("from %v to %v: %g, %v, want %g, %v", c.p, c.q, got, ok, c.length, c.meets)
		}
	}
}

func TestWidthsAreThoseOfTimes(t *testing.T) {
	// 0.5 em for a figure, 0.722 for D: the widths of Times, common practice.
	for text, want := range map[string]float64{"0": 5, "12": 10, "D": 7.22, " ": 2.5} {
		if got := Advance(text, Regular, 10); math.Abs(got-want) > 0.01 {
			t.Errorf("%q is %g wide at 10 points, want %g", text, got, want)
		}
	}
}

func FuzzSVG(f *testing.F) {
	f.Add("T1 & <b>")
	f.Add("\xff\x00]]>")
	f.Fuzz(func(t *testing.T, text string) {
		d := sample()
		d.Write(Vec{1, 1}, 9, Dark, Run{Text: text})
		d.Title = text
		dec := xml.NewDecoder(bytes.NewReader(SVG(d)))
		for {
			if _, err := dec.Token(); errors.Is(err, io.EOF) {
				return
			} else if err != nil {
				t.Fatalf("%q: %v", text, err)
			}
		}
	})
}

// A reader shows a PDF's title and author in its window.
func TestNothingInAPDFActs(t *testing.T) {
	const acting, dots = "a\x1b[2J\n\u009b\u202eb\x7f", "a·[2J···b·"
	got, err := PDF([]Drawing{sample()}, About{Title: acting, Author: acting})
	if err != nil {
		t.Fatal(err)
	}
	want, err := PDF([]Drawing{sample()}, About{Title: dots, Author: dots})
	if err != nil || !bytes.Equal(got, want) {
		t.Errorf("%v, %d bytes, want %d", err, len(got), len(want))
	}
}
