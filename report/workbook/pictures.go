package workbook

import (
	"fmt"

	"github.com/xuri/excelize/v2"

	"firstboard/report/evidence"
	"firstboard/report/workbook/chart"
	"firstboard/report/workbook/formula"
)

// placedChart is a picture at its place on a sheet: it covers one row from a
// little below its top, from so far into the sheet and so wide, in units of
// width. It is never cut by the end of a page, because a row is not.
type placedChart struct {
	row         int
	from, wide  float64
	below       int // the top of the row, in the library's dots
	title, part string
}

// Pictures stand so many side by side, each so high in points.
const (
	pictureTall  = 196
	pictureAbeam = 2
)

// pictures are the rows of an area's pictures, side by side, to stand below
// so many rows of its sheet, and the pictures in them.
func (d *desk) pictures(area, above int, widths []float64) ([]row, []placedChart) {
	titles := d.plots.Titles(area)
	if len(titles) == 0 {
		return nil, nil
	}
	const gap = 1
	whole := 0.0
	for _, w := range widths {
		whole += w
	}
	rows := []row{{}}
	var charts []placedChart
	for i, title := range titles {
		wide := (whole - gap*pictureAbeam) / pictureAbeam
		from := float64(i%pictureAbeam) * (wide + gap)
		if i%pictureAbeam == 0 {
			rows = append(rows, row{least: pictureTall, cells: d.picturesHeading(i, len(widths))}, row{least: 6})
		}
		charts = append(charts, placedChart{
			row: above + len(rows) - 1, from: from, wide: wide, below: below(i),
			title: title, part: d.plots.Part(area, i, wide*unitPoints, pictureTall),
		})
	}
	return rows, charts
}

// picturesHeading stands in the row of the first pictures, so that no page ends
// between them.
func (d *desk) picturesHeading(nth, across int) []cell {
	if nth > 0 {
		return nil
	}
	return []cell{{value: "Pictures", look: look{bold: true, top: true}, across: across}}
}

// plottedPage is the hidden sheet of the numbers behind the pictures.
func (d *desk) plottedPage() page {
	var rows []row
	for _, cells := range d.plots.Rows() {
		var r row
		for _, c := range cells {
			r.cells = append(r.cells, cell{value: c.Value, formula: c.Formula, across: c.Across, look: plottedLook(c)})
		}
		rows = append(rows, r)
	}
	p := page{name: d.titles.plotted, rows: numbered(rows), last: len(rows), grid: true, hidden: true}
	for range max(d.plots.Widest(), 8) {
		p.widths = append(p.widths, 17)
	}
	return p
}

func plottedLook(c chart.Cell) look {
	switch c.Form {
	case chart.Text:
		return look{boxed: true}
	case chart.Heading:
		return look{tone: heading}
	case chart.Title:
		return look{bold: true}
	case chart.Number:
		return look{boxed: true, form: number, places: c.Places}
	case chart.Day:
		return look{boxed: true, form: day}
	case chart.Minute:
		return look{boxed: true, form: minute}
	case chart.Second:
		return look{boxed: true, form: second}
	}
	return look{}
}

// plotted is a cell of the record as the pictures take it.
func (t typed) plotted(p evidence.Place) (chart.Cell, bool) {
	c, known := t.at(p)
	forms := map[form]chart.Form{number: chart.Number, day: chart.Day, minute: chart.Minute, second: chart.Second}
	return chart.Cell{Value: c.value, Formula: c.formula, Form: forms[c.look.form], Places: c.look.places}, known
}

func below(nth int) int {
	if nth < pictureAbeam {
		return rowDots - 1
	}
	return 3
}

// rowDots is a row of the usual height in the library's dots.
const rowDots = 18

// place puts a picture on the sheet. The library knows the widths of a sheet
// that is being streamed, but takes every row to be of the usual height: one
// such row comes out as the whole row there is.
func (s *sheet) place(c placedChart) error {
	const dots = 8 // of a unit of width
	column, into := 1, c.from
	for _, w := range s.page.widths {
		if into < w {
			break
		}
		column, into = column+1, into-w
	}
	s.charts++
	err := s.file.AddChart(s.page.name, formula.Name(column, c.row), &excelize.Chart{
		Type: excelize.Scatter, Series: []excelize.ChartSeries{{}},
		Dimension: excelize.ChartDimension{Width: uint(c.wide * dots), Height: uint(rowDots - c.below)},
		Format:    excelize.GraphicOptions{OffsetX: int(into * dots), OffsetY: c.below, Name: fmt.Sprintf("Picture %d", s.charts), AltText: c.title},
	})
	if err != nil {
		return err
	}
	s.file.Pkg.Store(fmt.Sprintf("xl/charts/chart%d.xml", s.charts), []byte(c.part))
	return nil
}
