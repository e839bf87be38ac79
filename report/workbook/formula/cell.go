package formula

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"firstboard/report/evidence"
	"firstboard/report/grid"
)

// Cell is a cell of the workbook: its sheet, its column and its row, counted
// from 1. It holds a number, or the text of one: a fraction of the trade where
// it is one, such as 2 1/4.
type Cell struct {
	Sheet       string
	Column, Row int
	Number      bool
	Fraction    bool
}

// Ref is the cell as a formula of another sheet names it.
func (c Cell) Ref() string { return Quoted(c.Sheet) + "!" + Name(c.Column, c.Row) }

// Quoted is the name of a sheet within a formula.
func Quoted(sheet string) string { return "'" + strings.ReplaceAll(sheet, "'", "''") + "'" }

// Name is a cell by its column and row: B7.
func Name(column, row int) string { return grid.Letters(column) + strconv.Itoa(row) }

// Fixed is the same for a reference that stays where it is: $B$7.
func Fixed(column, row int) string { return "$" + grid.Letters(column) + "$" + strconv.Itoa(row) }

// Text is a text within a formula.
func Text(s string) string { return `"` + strings.ReplaceAll(s, `"`, `""`) + `"` }

// expr is a formula, or a part of one; Cell is set where it is one cell alone.
type expr struct {
	text string
	cell *Cell
}

func reference(c Cell) expr { return expr{c.Ref(), &c} }

// grouped are formulas with cells that lie one below another as ranges. Their
// order does not matter; where once is enough, each cell stands there once.
func grouped(all []expr, once bool) []string {
	var cells []Cell
	var parts []string
	for _, e := range all {
		if e.cell == nil {
			parts = append(parts, e.text)
		} else {
			cells = append(cells, *e.cell)
		}
	}
	slices.SortFunc(cells, func(a, b Cell) int {
		return cmp.Or(strings.Compare(a.Sheet, b.Sheet), a.Column-b.Column, a.Row-b.Row)
	})
	if once {
		cells, parts = slices.Compact(cells), slices.Compact(parts)
	}
	return append(ranges(cells), parts...)
}

func ranges(cells []Cell) []string {
	var parts []string
	for from := 0; from < len(cells); {
		to := from + 1
		for to < len(cells) && cells[to].under(cells[to-1]) {
			to++
		}
		part := cells[from].Ref()
		if last := cells[to-1]; to-from > 1 {
			part += ":" + Name(last.Column, last.Row)
		}
		parts, from = append(parts, part), to
	}
	return parts
}

func (c Cell) under(other Cell) bool {
	return c.Sheet == other.Sheet && c.Column == other.Column && c.Row == other.Row+1
}

// literal is a number within a formula, to the 15 digits that a spreadsheet
// holds.
func literal(x evidence.Exact) string {
	const digits = 15
	f, _ := strconv.ParseFloat(strconv.FormatFloat(x.Float(), 'g', digits, 64), 64)
	return number(f).text
}

// Figures are the steps that have a cell of their own, row by row on one sheet.
// Each formula stands there once.
type Figures struct {
	Sheet string
	First int // number of the first row
	Rows  []Row
	known map[string]Cell
}

// Columns of the figures: what a figure is, and one or two of them.
const (
	WhatColumn = 1 + iota
	FigureColumn
	SecondColumn
)

// Row is a figure, and where it belongs to one the room it leaves to a limit.
type Row struct {
	What    string
	Figures []Figure
}

// Figure is a formula and what it gives.
type Figure struct {
	Formula string
	Value   float64
}

// NewFigures are no figures yet, on a sheet from a row on.
func NewFigures(sheet string, first int) *Figures {
	return &Figures{Sheet: sheet, First: first, known: map[string]Cell{}}
}

// find is the cell that gives a formula already.
func (f *Figures) find(text string) (expr, bool) {
	c, known := f.known[text]
	return expr{c.Ref(), &c}, known
}

// know says that a cell gives a formula. A number of a rule is never looked up.
func (f *Figures) know(text string, c Cell) {
	if _, known := f.known[text]; !known && strings.Contains(text, "!") {
		f.known[text] = c
	}
}

// add gives figures a row.
func (f *Figures) add(what string, figures ...Figure) []expr {
	row := f.First + len(f.Rows)
	f.Rows = append(f.Rows, Row{what, figures})
	var cells []expr
	for i, one := range figures {
		c := Cell{Sheet: f.Sheet, Column: FigureColumn + i, Row: row, Number: true}
		f.know(one.Formula, c)
		cells = append(cells, reference(c))
	}
	return cells
}

// beside adds a second figure to the row of a first.
func (f *Figures) beside(first expr, second Figure) expr {
	c := *first.cell
	c.Column = SecondColumn
	row := &f.Rows[c.Row-f.First]
	row.Figures = append(row.Figures, second)
	f.know(second.Formula, c)
	return reference(c)
}

// undo leaves the first rows alone: what turned out to have no form leaves
// nothing behind.
func (f *Figures) undo(first int) {
	if len(f.Rows) == first {
		return
	}
	f.Rows = f.Rows[:first]
	for text, c := range f.known {
		if c.Sheet == f.Sheet && c.Row >= f.First+first {
			delete(f.known, text)
		}
	}
}
