package workbook

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/lists"
	"firstboard/report/pictures"
	"firstboard/report/workbook/chart"
	"firstboard/report/workbook/formula"
	"firstboard/report/workbook/names"
	"firstboard/report/workbook/style"
	"firstboard/report/workbook/writer"
)

// desk is what the pages of a decision workbook are made with: the book, the
// names of its sheets, and the formulas that follow what was typed.
type desk struct {
	book    Book
	titles  names.Titles
	figures *formula.Figures
	guard   guard
	plots   *chart.Plots
	filed   bool // the record is not in the workbook
}

func deskOf(b Book) *desk {
	t := names.New(b.Tables, lists.Each(b.Decisions, func(d report.Decision) string { return d.Area.ID }))
	var areas []chart.Area
	for i, d := range b.Decisions {
		pictures := pictures.Of(d.Site)
		for n, p := range pictures {
			pictures[n] = p.WithMeans(d.Site).Expecting(b.advice(i).Outlook.Slab)
		}
		areas = append(areas, chart.Area{Name: t.Areas[i], Pictures: pictures})
	}
	d := &desk{book: b, titles: t, guard: guardOf(b, t), figures: formula.NewFigures(t.Figures, figuresHead+1)}
	d.plots = chart.Lay(t.Plotted, areas, d.typed)
	return d
}

// find is the cell that holds what a leaf of a working holds.
func (d *desk) find(w evidence.Working) (formula.Cell, bool) {
	c, _ := d.titles.Cell(w.Place)
	entry, known := d.typed(w.Place)
	switch value := entry.Value.(type) {
	case float64:
		c.Number = value == w.Value.Float()
		return c, known && c.Number && w.Op == evidence.OpTyped
	case time.Time:
		c.Number = true
		return c, known && w.Op == evidence.OpMoment
	case string:
		x, _, plain := writer.PlainNumber(value)
		c.Fraction = !plain && isFraction(value)
		return c, known && w.Op == evidence.OpTyped && (c.Fraction || plain && x == w.Value.Float())
	}
	return c, false
}

// figuresHead is the header's row on the sheet of figures.
const figuresHead = 2

// figuresPage is the hidden sheet of steps that are too long for the cell they
// belong to.
func (d *desk) figuresPage() writer.Page {
	rows := []writer.Row{
		writer.Line("Steps of the workings that stand on the sheets of the areas, each a formula over the record",
			style.Look{Bold: true}, 3),
		writer.Header("What", "Figure", "Room to its limit"),
	}
	for _, r := range d.figures.Rows {
		cells := []writer.Cell{{Value: r.What}}
		for _, f := range r.Figures {
			cells = append(cells, writer.Cell{
				Value: f.Value, Formula: f.Formula,
				Look: style.Look{Form: style.Number, Places: writer.Decimals(f.Value)},
			})
		}
		rows = append(rows, writer.Row{Cells: cells})
	}
	return writer.Page{
		Name: d.titles.Figures, Widths: []float64{44, 18, 18}, Rows: writer.Numbered(rows), Last: len(rows),
		Grid: true, Hidden: true,
	}
}

// isFraction says whether a text is a fraction of the trade: 5/8, 2 1/4, 2-1/4.
func isFraction(s string) bool {
	above, below, ok := strings.Cut(s, "/")
	above = strings.NewReplacer(" ", "", "-", "").Replace(strings.TrimSpace(above))
	return ok && evidence.Digits(below) && evidence.Digits(above)
}

// sources lists the places behind a finding, the worst reading's first, as many
// as a few lines of the column hold, and leads to that one.
func sources(places []evidence.Place, t names.Titles, width float64) writer.Cell {
	const most = 3
	all := t.Runs(places)
	c := writer.Text(names.Words(all))
	for n := len(all) - 1; n > 0 && c.Look.Lines(c.Value.(string), width) > most; n-- {
		c = writer.Text(fmt.Sprintf("%s, and more: %d in all", names.Words(all[:n]), len(places)))
	}
	if len(places) > 0 {
		c = leadingTo(c, places[0], t, width)
	}
	return c
}

// leadingTo is a cell that leads to a place, where that place is a row of the
// record.
func leadingTo(c writer.Cell, p evidence.Place, t names.Titles, width float64) writer.Cell {
	to, known := t.Cell(p)
	if !known {
		return c
	}
	to.Column = max(to.Column, 1)
	return c.Leading(to.Ref(), width)
}

// typed is a cell that gives what stands at a place of the record, by a formula;
// known is false where the workbook holds no such cell.
func (d *desk) typed(p evidence.Place) (c writer.Cell, known bool) {
	at, known := d.titles.Cell(p)
	if !known {
		return c, false
	}
	rows := d.book.Tables[slices.Index(d.titles.Tables, at.Sheet)].Rows
	i, found := slices.BinarySearchFunc(rows, at.Row, func(r grid.Row, n int) int { return r.Number - n })
	if !found || at.Column < 1 || at.Column > len(rows[i].Cells) {
		return c, false
	}
	c = writer.Copied(rows[i].Cells[at.Column-1])
	c.Formula = at.Ref()
	return c, true
}
