package gather

import (
	"fmt"
	"strings"

	"firstboard/report/grid"
	"firstboard/report/lists"
)

// SheetNames are the names of the sheets in their order.
func SheetNames() []string { return []string{"Verdicts", "Summary", "Falls due", "Not read"} }

// Sheets are the tables of all that was gathered.
func (g Gathered) Sheets() []grid.Listing {
	names := SheetNames()
	return []grid.Listing{
		sheetOf(names[0], verdictColumns(), printedOfVerdicts, g.Rows),
		sheetOf(names[1], summaryColumns(), 0, g.summary()),
		sheetOf(names[2], dueColumns(), 0, g.Due),
		sheetOf(names[3], unreadColumns(), 0, g.Unread),
	}
}

// column is one column of a sheet: its name, how wide it stands, and its cell
// of a thing.
type column[T any] struct {
	name  string
	width float64
	cell  func(T) grid.Cell
}

// sheetOf lists things, a row each.
func sheetOf[T any](name string, columns []column[T], printed int, things []T) grid.Listing {
	s := grid.Listing{Table: grid.Table{Name: name, Rows: make([]grid.Row, 0, len(things))}, Printed: printed}
	for _, c := range columns {
		s.Header, s.Widths = append(s.Header, c.name), append(s.Widths, c.width)
	}
	for i, thing := range things {
		cells := make([]grid.Cell, len(columns))
		for k, c := range columns {
			cells[k] = c.cell(thing)
		}
		s.Rows = append(s.Rows, grid.Row{Number: i + 2, Cells: cells})
	}
	return s
}

func textCell(s Text) grid.Cell { return cellOf(grid.TextCell, string(s)) }

func dayCell(s Text) grid.Cell { return cellOf(grid.DayCell, string(s)) }

func momentCell(m Moment) grid.Cell { return cellOf(grid.TimeCell, string(m)) }

func countCell(n int) grid.Cell { return cellOf(grid.NumberCell, fmt.Sprint(n)) }

// figureCell shows every digit.
func figureCell(f Figure) grid.Cell {
	c := cellOf(grid.NumberCell, string(f))
	_, part, _ := strings.Cut(c.Text, ".")
	c.Places = uint8(len(part))
	return c
}

func listCell(all []Text) grid.Cell {
	return cellOf(grid.TextCell, strings.Join(plain(all), ", "))
}

// cellOf is a cell of a kind, or a blank one.
func cellOf(kind grid.CellKind, text string) grid.Cell {
	return lists.If(text == "", grid.Cell{}, grid.Cell{Kind: kind, Text: text})
}
