package writer

import (
	"fmt"

	"github.com/xuri/excelize/v2"

	"firstboard/report/workbook/formula"
)

// Chart is a picture at its place on a sheet: it covers one row, from so
// far into the sheet and so wide, in units of width. It is never cut by the end
// of a page, because a row is not.
type Chart struct {
	Row         int
	From, Wide  float64
	Title, Part string
}

// rowDots is a row of the usual height in the library's dots.
const rowDots = 18

// place puts a picture on the sheet. The library knows the widths of a sheet
// that is being streamed, but takes every row to be of the usual height: one
// such row comes out as the whole row there is.
func (s *sheet) place(c Chart) error {
	const dots = 8 // of a unit of width
	column, into := 1, c.From
	for _, w := range s.page.Widths {
		if into < w {
			break
		}
		column, into = column+1, into-w
	}
	s.charts++
	err := s.file.AddChart(s.page.Name, formula.Name(column, c.Row), &excelize.Chart{
		Type: excelize.Scatter, Series: []excelize.ChartSeries{{}},
		Dimension: excelize.ChartDimension{Width: uint(c.Wide * dots), Height: rowDots - 1},
		Format: excelize.GraphicOptions{
			OffsetX: int(into * dots), OffsetY: 1,
			Name: fmt.Sprintf("Picture %d", s.charts), AltText: c.Title,
		},
	})
	if err != nil {
		return err
	}
	s.file.Pkg.Store(fmt.Sprintf("xl/charts/chart%d.xml", s.charts), []byte(c.Part))
	return nil
}
