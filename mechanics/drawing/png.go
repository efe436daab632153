package drawing

import (
	"bytes"
	"fmt"
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
	c.SetRGB255(rgb(Paper))
	c.Clear()
	c.SetLineCap(gg.LineCapRound)
	c.SetLineJoin(gg.LineJoinRound)
	var scaled Drawing
	scaled.Put(d, Vec{}, k)
	for _, s := range scaled.drawn() {
		s.png(c, k)
	}
	held := map[face]font.Face{}
	for _, t := range scaled.Texts {
		if err := t.png(c, held); err != nil {
			return nil, err
		}
	}
	var out bytes.Buffer
	err := c.EncodePNG(&out)
	return out.Bytes(), err
}

func (s Shape) png(c *gg.Context, k float64) {
	for _, q := range s.Pts { // the first moves there
		c.LineTo(q.X, q.Y)
	}
	if s.Closed {
		c.ClosePath()
	}
	if s.Fill != None {
		c.SetRGB255(rgb(s.Fill))
		c.FillPreserve()
	}
	if s.Line != None {
		c.SetRGB255(rgb(s.Line))
		c.SetLineWidth(s.Width)
		if s.Dashed {
			c.SetDash(4*k, 3*k)
		} else {
			c.SetDash()
		}
		c.StrokePreserve()
	}
	c.ClearPath()
}

// face is a font's face at a size.
type face struct {
	style Style
	size  float64
}

func (t Text) png(c *gg.Context, held map[face]font.Face) error {
	c.SetRGB255(rgb(t.Tone))
	for _, r := range t.pieces() {
		key := face{r.Style, r.size}
		if held[key] == nil {
			f, err := opentype.NewFace(fonts()[r.Style], &opentype.FaceOptions{Size: r.size, DPI: pointsPerInch, Hinting: font.HintingNone})
			if err != nil {
				return err
			}
			held[key] = f
		}
		c.SetFontFace(held[key])
		x := r.at.X
		for _, one := range stands(r.Text) { // as it was measured, without kerning
			c.DrawString(string(one), x, r.at.Y)
			x += Advance(string(one), r.Style, r.size)
		}
	}
	return nil
}
