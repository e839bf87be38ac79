package workbook

import (
	"strings"
	"time"

	"firstboard/report"
	"firstboard/report/evidence"
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
