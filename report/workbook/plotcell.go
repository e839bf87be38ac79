package workbook

import (
	"slices"
	"strconv"
	"time"

	"github.com/xuri/excelize/v2"

	"firstboard/report"
	"firstboard/report/evidence"
)

// typed finds the cells of the record's copied tables.
type typed struct {
	tables map[string]report.Table // by the key of their names
	titles titles
}

func typedIn(b Book, t titles) typed {
	all := typed{map[string]report.Table{}, t}
	for _, table := range b.Tables {
		all.tables[squash(table.Name)] = table
	}
	return all
}

// celled is a place that can tell its cell.
type celled interface {
	Cell() (table string, row, column int)
}

// at is a cell that gives what stands at a place of the record, by a formula;
// known is false where the workbook holds no such cell.
func (t typed) at(p evidence.Place) (c cell, known bool) {
	at, ok := p.(celled)
	if !ok {
		return c, false
	}
	name, number, column := at.Cell()
	table, sheet := t.tables[squash(name)], t.titles.rows[squash(name)]
	i, found := slices.BinarySearchFunc(table.Rows, number, func(r report.TableRow, n int) int { return r.Number - n })
	if !found || column < 1 || column > len(table.Rows[i].Cells) {
		return c, false
	}
	c = copied(table.Rows[i].Cells[column-1])
	c.formula = quoted(sheet) + "!" + cellName(column, number)
	return c, true
}

// figure is a number: the cell it was typed in, where that holds it.
func (t typed) figure(r evidence.Reading) cell {
	if !r.Shown() {
		return cell{}
	}
	x := r.Exact().Float()
	c, known := t.at(r.Place)
	if y, isNumber := c.value.(float64); !known || !isNumber || x != y {
		c = cell{value: x, look: look{form: number, places: decimals(x)}}
	}
	c.look.boxed = true
	return c
}

// moment is a clock time: the cell it was typed in, where that holds one.
func (t typed) moment(at evidence.Time) cell {
	c, known := t.at(at.Place)
	if _, isTime := c.value.(time.Time); !known || !isTime {
		c = cell{value: wallClock(at.First), look: look{form: minute}}
	}
	c.look.boxed = true
	return c
}

// wallClock is what the clock on the wall showed.
func wallClock(t time.Time) time.Time {
	y, m, d := t.Date()
	return time.Date(y, m, d, t.Hour(), t.Minute(), t.Second(), 0, time.UTC)
}

// serial is a clock time as spreadsheets count it, in days.
func serial(t time.Time) float64 {
	const epoch = 25569
	return float64(t.Unix())/86400 + epoch
}

// plotted is the number that a cell puts in a picture.
func (c cell) plotted() (x float64, ok bool) {
	switch v := c.value.(type) {
	case float64:
		return v, true
	case time.Time:
		return serial(v), true
	}
	return 0, false
}

// cellName is a cell by its column and row, from 1.
func cellName(column, row int) string { return columnName(column) + strconv.Itoa(row) }

// fixedName is the same for a reference that stays where it is.
func fixedName(column, row int) string { return "$" + columnName(column) + "$" + strconv.Itoa(row) }

func columnName(column int) string {
	name, err := excelize.ColumnNumberToName(column)
	if err != nil {
		return ""
	}
	return name
}
