package ink

import (
	"bytes"
	"fmt"
	"image/color"
	"math"

	"git.sr.ht/~sbinet/gg"
	"golang.org/x/image/font"
	"golang.org/x/image/font/opentype"
)

const (
	pointsPerInch = 72
	maxPixels     = 12000 // of an edge: what a picture viewer still opens
)

// PNG rasterises a drawing on white paper at so many dots per inch.
func PNG(d Drawing, dpi float64) ([]byte, error) {
	k := dpi / pointsPerInch
	w, h := int(math.Ceil(d.Width*k)), int(math.Ceil(d.Height*k))
	if w < 1 || h < 1 || w > maxPixels || h > maxPixels {
		return nil, fmt.Errorf("a picture of %d × %d pixels is beyond reason", w, h)
	}
	c := gg.NewContext(w, h)
	c.SetColor(tone(Paper))
	c.Clear()
	c.SetLineCap(gg.LineCapRound)
	c.SetLineJoin(gg.LineJoinRound)
	for _, s := range d.Shapes {
		s.png(c, k)
	}
	held := map[Run]font.Face{}
	for _, t := range d.Texts {
		if err := t.png(c, k, held); err != nil {
			return nil, err
		}
	}
	var out bytes.Buffer
	err := c.EncodePNG(&out)
	return out.Bytes(), err
}

func tone(t Tone) color.Color {
	r, g, b := rgb(t)
	return color.RGBA{uint8(r), uint8(g), uint8(b), 255}
}

func (s Shape) png(c *gg.Context, k float64) {
	if len(s.Pts) == 0 {
		return
	}
	c.NewSubPath()
	for i, q := range s.Pts {
		if i == 0 {
			c.MoveTo(q.X*k, q.Y*k)
		} else {
			c.LineTo(q.X*k, q.Y*k)
		}
	}
	if s.Closed {
		c.ClosePath()
	}
	if s.Fill != None {
		c.SetColor(tone(s.Fill))
		c.FillPreserve()
	}
	if s.Line != None && s.Width > 0 {
		c.SetColor(tone(s.Line))
		c.SetLineWidth(s.Width * k)
		if s.Dashed {
			c.SetDash(4*k, 3*k)
		} else {
			c.SetDash()
		}
		c.StrokePreserve()
	}
	c.ClearPath()
}

func (t Text) png(c *gg.Context, k float64, held map[Run]font.Face) error {
	c.SetColor(tone(t.Tone))
	x := t.At.X
	for _, r := range t.Runs {
		size, down := r.place(t.Size)
		key := Run{Style: r.Style, Text: num(size)}
		face, ok := held[key]
		if !ok {
			var err error
			face, err = opentype.NewFace(fonts()[r.Style], &opentype.FaceOptions{Size: size * k, DPI: pointsPerInch, Hinting: font.HintingNone})
			if err != nil {
				return err
			}
			held[key] = face
		}
		c.SetFontFace(face)
		c.DrawString(stands(r.Text), x*k, (t.At.Y+down)*k)
		x += Advance(r.Text, r.Style, size)
	}
	return nil
}
