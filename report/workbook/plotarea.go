package workbook

import (
	"fmt"

	"github.com/xuri/excelize/v2"
)

// placedChart is a picture at its place on a sheet: it covers one row from a
// little below its top, and some columns. It is never cut by the end of a page,
// because a row is not.
type placedChart struct {
	row, column, columns int
	below                int // the top of the row, in the library's dots
	title, part          string
}

// pictureTall is the height of a picture in points.
const pictureTall = 290

// pictured gives the rows of an area's pictures, two side by side, to stand
// below so many rows of its sheet, and the pictures in them.
type pictured func(above int, widths []float64) ([]row, []placedChart)

func (p *plots) of(nth int) pictured {
	return func(above int, widths []float64) ([]row, []placedChart) {
		return p.pictures(p.areas[nth], above, widths)
	}
}

func (p *plots) pictures(blocks []*block, above int, widths []float64) ([]row, []placedChart) {
	if len(blocks) == 0 {
		return nil, nil
	}
	left := halfOf(widths)
	rows := []row{{}}
	var charts []placedChart
	for i, b := range blocks {
		column, columns := 1, left
		if i%2 == 1 {
			column, columns = left+1, len(widths)-left
		} else {
			rows = append(rows, row{least: pictureTall, cells: p.heading(i, len(widths))}, row{least: 6})
		}
		wide := page{widths: widths[column-1 : column-1+columns]}.wide()
		charts = append(charts, placedChart{
			row: above + len(rows) - 1, column: column, columns: columns, below: below(i),
			title: b.picture.Title, part: p.chartPart(b, wide, pictureTall),
		})
	}
	return rows, charts
}

// heading stands in the row of the first pictures, so that no page ends between
// them.
func (p *plots) heading(nth, across int) []cell {
	if nth > 0 {
		return nil
	}
	return []cell{{
		value: "Pictures (the numbers behind them stand on sheet " + p.sheet + ")",
		look:  look{bold: true, top: true}, across: across,
	}}
}

func below(nth int) int {
	if nth < 2 {
		return rowDots - 1
	}
	return 3
}

// rowDots is a row of the usual height in the library's dots.
const rowDots = 18

// halfOf is how many columns make about half the width.
func halfOf(widths []float64) int {
	whole, half := page{widths: widths}.wide(), 0.0
	for i, w := range widths {
		if half += w * unitPoints; half*2 >= whole {
			if before := half - w*unitPoints; i > 0 && whole-2*before < 2*half-whole {
				return i
			}
			return i + 1
		}
	}
	return len(widths)
}

// place puts a picture on the sheet. The library knows the widths of a sheet
// that is being streamed, but takes every row to be of the usual height: one
// such row comes out as the whole row there is.
func (s *sheet) place(c placedChart) error {
	const dots, gap = 8, 8 // of a unit of width, and between two
	wide := -gap
	for _, w := range s.page.widths[c.column-1 : c.column-1+c.columns] {
		wide += int(w*dots + 0.5)
	}
	s.charts++
	err := s.file.AddChart(s.page.name, cellName(c.column, c.row), &excelize.Chart{
		Type: excelize.Scatter, Series: []excelize.ChartSeries{{}},
		Dimension: excelize.ChartDimension{Width: uint(wide), Height: uint(rowDots - c.below)},
		Format:    excelize.GraphicOptions{OffsetY: c.below, Name: fmt.Sprintf("Picture %d", s.charts), AltText: c.title},
	})
	if err != nil {
		return err
	}
	s.file.Pkg.Store(fmt.Sprintf("xl/charts/chart%d.xml", s.charts), []byte(c.part))
	return nil
}
