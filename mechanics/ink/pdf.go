package ink

import (
	"bytes"
	"strconv"
	"time"

	"codeberg.org/go-pdf/fpdf"

	"trivet/mechanics/printable"
)

// About is what a PDF says of itself. Date is its date of making; the same
// pages with the same date are the same bytes.
type About struct {
	Title, Author string
	Date          time.Time
}

// undated is the date of a file that has none: a fixed one, since the library
// would write the clock's.
var undated = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)

const fontName = "LiberationSerif"

var pdfStyles = [4]string{"", "I", "B", "BI"}

// PDF writes drawings as the pages of a file. Text stays text: the font's used
// characters are embedded.
func PDF(pages []Drawing, about About) ([]byte, error) {
	if about.Date.IsZero() {
		about.Date = undated
	}
	first := fpdf.SizeType{Wd: 595, Ht: 842}
	if len(pages) > 0 {
		first = fpdf.SizeType{Wd: pages[0].Width, Ht: pages[0].Height}
	}
	f := fpdf.NewCustom(&fpdf.InitType{UnitStr: "pt", Size: first})
	f.SetCatalogSort(true)
	f.SetCreationDate(about.Date)
	f.SetModificationDate(about.Date)
	f.SetProducer("trivet", true)
	f.SetTitle(printable.Line(about.Title), true)
	f.SetAuthor(printable.Line(about.Author), true)
	f.SetAutoPageBreak(false, 0)
	f.SetMargins(0, 0, 0)
	f.SetLineCapStyle("round")
	f.SetLineJoinStyle("round")
	for style, ttf := range faces() {
		if used(pages, Style(style)) {
			f.AddUTF8FontFromBytes(fontName, pdfStyles[style], bytes.Clone(ttf))
		}
	}
	for _, d := range pages {
		f.AddPageFormat("P", fpdf.SizeType{Wd: d.Width, Ht: d.Height})
		for _, s := range d.Shapes {
			s.pdf(f)
		}
		for _, t := range d.Texts {
			t.pdf(f)
		}
	}
	var out bytes.Buffer
	err := f.Output(&out)
	return out.Bytes(), err
}

func used(pages []Drawing, style Style) bool {
	for _, d := range pages {
		for _, t := range d.Texts {
			for _, r := range t.Runs {
				if r.Style == style {
					return true
				}
			}
		}
	}
	return false
}

func rgb(t Tone) (r, g, b int) {
	n, err := strconv.ParseUint(colours[t][1:], 16, 32)
	if err != nil {
		panic("ink: a colour of our own does not read: " + err.Error())
	}
	return int(n >> 16), int(n >> 8 & 0xff), int(n & 0xff)
}

func (s Shape) pdf(f *fpdf.Fpdf) {
	if len(s.Pts) == 0 {
		return
	}
	draw := ""
	if s.Fill != None {
		f.SetFillColor(rgb(s.Fill))
		draw = "F"
	}
	if s.Line != None && s.Width > 0 {
		f.SetDrawColor(rgb(s.Line))
		f.SetLineWidth(s.Width)
		draw += "D"
	}
	if draw == "" {
		return
	}
	if s.Dashed {
		f.SetDashPattern([]float64{4, 3}, 0)
	} else {
		f.SetDashPattern(nil, 0)
	}
	for i, q := range s.Pts {
		if i == 0 {
			f.MoveTo(q.X, q.Y)
		} else {
			f.LineTo(q.X, q.Y)
		}
	}
	if s.Closed {
		f.ClosePath()
	}
	f.DrawPath(draw)
}

func (t Text) pdf(f *fpdf.Fpdf) {
	f.SetTextColor(rgb(t.Tone))
	x := t.At.X
	for _, r := range t.Runs {
		if r.Text == "" {
			continue
		}
		size, down := r.place(t.Size)
		f.SetFont(fontName, pdfStyles[r.Style], size)
		f.Text(x, t.At.Y+down, stands(r.Text))
		x += Advance(r.Text, r.Style, size)
	}
}
