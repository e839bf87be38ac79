package formula

import "strings"

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
