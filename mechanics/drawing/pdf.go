package drawing

import (
	"bytes"
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
	var embedded [len(pdfStyles)]bool
	for _, d := range pages {
		f.AddPageFormat("P", fpdf.SizeType{Wd: d.Width, Ht: d.Height})
		for _, s := range d.drawn() {
			s.pdf(f)
		}
		for _, t := range d.Texts {
			t.pdf(f, &embedded)
		}
	}
	var out bytes.Buffer
	err := f.Output(&out)
	return out.Bytes(), err
}

func rgb(t Tone) (r, g, b int) {
	n := int(tones[t].rgb)
	return n >> 16, n >> 8 & 0xff, n & 0xff
}

func (s Shape) pdf(f *fpdf.Fpdf) {
	draw := ""
	if s.Fill != None {
		f.SetFillColor(rgb(s.Fill))
		draw = "F"
	}
	if s.Line != None {
		f.SetDrawColor(rgb(s.Line))
		f.SetLineWidth(s.Width)
		draw += "D"
	}
	if s.Dashed {
		f.SetDashPattern([]float64{4, 3}, 0)
	} else {
		f.SetDashPattern(nil, 0)
	}
	f.MoveTo(s.Pts[0].X, s.Pts[0].Y)
	for _, q := range s.Pts[1:] {
		f.LineTo(q.X, q.Y)
	}
	if s.Closed {
		f.ClosePath()
	}
	f.DrawPath(draw)
}

func (t Text) pdf(f *fpdf.Fpdf, embedded *[len(pdfStyles)]bool) {
	f.SetTextColor(rgb(t.Tone))
	for _, r := range t.pieces() {
		if r.Text == "" {
			continue
		}
		if !embedded[r.Style] {
			f.AddUTF8FontFromBytes(fontName, pdfStyles[r.Style], bytes.Clone(faces()[r.Style]))
			embedded[r.Style] = true
		}
		f.SetFont(fontName, pdfStyles[r.Style], r.size)
		f.Text(r.at.X, r.at.Y, stands(r.Text))
	}
}
