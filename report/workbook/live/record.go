package live

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/workbook/formula"
)

// Record is the record's tables and the sheets they stand on.
type Record struct {
	Tables []report.Table
	Sheets []string // of each table

	index map[string]int         // of a table by its name
	rows  map[string]map[int]int // of a row in its table by its number
}

// Tables makes a record of tables and their sheets.
func Tables(tables []report.Table, sheets []string) *Record {
	r := &Record{Tables: tables, Sheets: sheets, index: map[string]int{}, rows: map[string]map[int]int{}}
	for i, t := range tables {
		r.index[t.Name] = i
		r.rows[t.Name] = map[int]int{}
		for k, row := range t.Rows {
			r.rows[t.Name][row.Number] = k
		}
	}
	return r
}

// located is a place that can tell its table and row.
type located interface {
	Row() (table string, number int)
}

// place is a row of a table.
type place struct {
	table  string
	number int
}

func (p place) String() string { return p.table + " row " + strconv.Itoa(p.number) }

func placeOf(p evidence.Place) place {
	if l, ok := p.(located); ok {
		table, number := l.Row()
		return place{table, number}
	}
	return place{}
}

// cell is a reference to a cell of the record, by the name of its column
// without unit. A column that is not there gives the empty text.
func (r *Record) cell(p place, column string) formula.Expr {
	i, known := r.index[p.table]
	if !known {
		return formula.Text("")
	}
	t := r.Tables[i]
	at := slices.IndexFunc(t.Header, func(h string) bool { return evidence.Same(bare(h), column) })
	k, listed := r.rows[p.table][p.number]
	if at < 0 || !listed {
		return formula.Text("")
	}
	var value any
	if cells := t.Rows[k].Cells; at < len(cells) {
		value = held(cells[at])
	}
	return formula.Cell(quoted(r.Sheets[i])+"!"+columnName(at)+strconv.Itoa(p.number), value)
}

// figure is a cell where it holds a number, else the empty text.
func (r *Record) figure(p place, column string) formula.Expr { return r.cell(p, column).Figure() }

// unit is the unit in the header of a column.
func (r *Record) unit(table, column string) evidence.Unit {
	i, known := r.index[table]
	if !known {
		return ""
	}
	for _, h := range r.Tables[i].Header {
		if name, bracket, found := strings.Cut(h, "("); found && evidence.Same(name, column) {
			return unitWord(strings.TrimRight(strings.TrimSpace(bracket), ") "))
		}
	}
	return ""
}

// header is the header of a column as the record writes it.
func (r *Record) header(table, column string) string {
	if i, known := r.index[table]; known {
		for _, h := range r.Tables[i].Header {
			if evidence.Same(bare(h), column) {
				return h
			}
		}
	}
	return column
}

func unitWord(s string) evidence.Unit {
	s = strings.NewReplacer("°", "", "sq ", "", "²", "2").Replace(s)
	switch key := evidence.Key(s); key {
	case "f", "c":
		return evidence.Unit(strings.ToUpper(key))
	case "ft", "m", "in", "cm", "mm", "ft2", "m2", "in2", "cm2", "g", "lb":
		return evidence.Unit(key)
	}
	return evidence.Unit(s)
}

func bare(header string) string {
	name, _, _ := strings.Cut(header, "(")
	return name
}

// held is what a cell holds in the workbook.
func held(c report.Cell) any {
	switch c.Kind {
	case report.NumberCell:
		const exact = 15 // digits that a spreadsheet keeps
		digits := strings.TrimLeft(strings.ReplaceAll(c.Text, ".", ""), "+-0")
		if x, err := strconv.ParseFloat(c.Text, 64); err == nil && len(digits) <= exact {
			return x
		}
	case report.DayCell, report.TimeCell:
		if y := c.Clock.Year(); y > 1900 && y < 10000 {
			return serial(c.Clock)
		}
	case report.BlankCell:
		return nil
	}
	return c.Text
}

// serial is a clock time as spreadsheets count it: days since the last but one
// of 1899.
func serial(t time.Time) float64 {
	_, shift := t.Zone()
	return rounded(float64(t.Unix()+int64(shift))/86400 + epoch)
}

// rounded is a time to ten places, as a workbook holds it: cut instead, it
// would show as the minute before.
func rounded(days float64) float64 { return math.Round(days*1e10) / 1e10 }

func quoted(sheet string) string { return "'" + strings.ReplaceAll(sheet, "'", "''") + "'" }

// in takes a number from one unit to another of its quantity.
func in(e formula.Expr, from, to evidence.Unit) formula.Expr {
	if from == to || from == "" || to == "" {
		return e
	}
	at0 := evidence.Convert(evidence.Whole(0), from, to).Float()
	factor := evidence.Convert(evidence.Whole(1), from, to).Sub(evidence.Convert(evidence.Whole(0), from, to)).Float()
	out := e.Times(formula.Number(factor))
	if at0 != 0 {
		out = out.Plus(formula.Number(at0))
	}
	return formula.If(e.Shown(), out.Round(12), formula.Text(""))
}

// entries counts the entries of a column, however long the sheet grows.
func (r *Record) entries(table, column string) (n formula.Expr, ok bool) {
	i, known := r.index[table]
	if !known {
		return n, false
	}
	t := r.Tables[i]
	at := slices.IndexFunc(t.Header, func(h string) bool { return evidence.Same(bare(h), column) })
	if at < 0 {
		return n, false
	}
	var cells []formula.Expr
	for _, row := range t.Rows {
		if at < len(row.Cells) {
			cells = append(cells, formula.Cell("", held(row.Cells[at])))
		}
	}
	name := columnName(at)
	return formula.Range(quoted(r.Sheets[i])+"!$"+name+"$2:$"+name+"$1048576", cells).Entries(), true
}

// columns counts the headers of a table.
func (r *Record) columns(table string) formula.Expr {
	i := r.index[table]
	var cells []formula.Expr
	for _, h := range r.Tables[i].Header {
		cells = append(cells, formula.Cell("", h))
	}
	return formula.Range(quoted(r.Sheets[i])+"!$A$1:$XFD$1", cells).Entries()
}
