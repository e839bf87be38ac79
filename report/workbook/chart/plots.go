package chart

import (
	"slices"

	"firstboard/report/lists"
	"firstboard/report/pictures"
	"firstboard/report/workbook/style"
	"firstboard/report/workbook/writer"
)

// Plots are the pictures of all areas and the sheet of the numbers behind them.
type Plots struct {
	sheet  string
	find   Find
	areas  [][]*block
	names  []string
	widest int
	last   int // row of the sheet
}

// Area is an area with its pictures.
type Area struct {
	Name     string
	Pictures []pictures.Picture
}

// mostRows is where no further picture is drawn: the sheet is full.
const mostRows = 1_000_000

// Lay lays out what is plotted on a sheet of that name: the areas one below the
// other, the pictures of an area side by side.
func Lay(sheet string, areas []Area, find Find) *Plots {
	p := &Plots{sheet: sheet, find: find, last: 1}
	for _, a := range areas {
		var blocks []*block
		column, tall := 1, 0
		for _, picture := range a.Pictures {
			if p.last > mostRows {
				break
			}
			next := p.block(picture, column, p.last+3, blocks)
			blocks = append(blocks, next)
			column += next.wide() + 1
			tall = max(tall, len(next.rows))
		}
		if len(blocks) > 0 {
			p.last += tall + 2
		}
		p.widest = max(p.widest, column-2)
		p.areas, p.names = append(p.areas, blocks), append(p.names, a.Name)
	}
	return p
}

// Widest is how many columns the sheet of numbers takes, 0 without a picture.
func (p *Plots) Widest() int { return p.widest }

// Pictures are an area's pictures, by the number of the area from 0.
func (p *Plots) Pictures(area int) []pictures.Picture {
	return lists.Each(p.areas[area], func(b *block) pictures.Picture { return b.picture })
}

// Notes are what an area's pictures leave out and cannot tell, each once.
func (p *Plots) Notes(area int) []string {
	var all []string
	for _, b := range p.areas[area] {
		for _, note := range b.picture.Notes {
			if !slices.Contains(all, note) {
				all = append(all, note)
			}
		}
	}
	return all
}

// Rows are the sheet of numbers.
func (p *Plots) Rows() []writer.Row {
	rows := []writer.Row{writer.Line(
		"The numbers behind the pictures of the areas' sheets. A number that was typed is a formula that refers to its cell of the record.",
		style.Look{Bold: true}, max(p.widest, 1))}
	for i, blocks := range p.areas {
		if len(blocks) > 0 {
			rows = append(append(rows, writer.Row{}), areaRows(p.names[i], blocks)...)
		}
	}
	return rows
}

// areaRows are the pictures of one area side by side, under the names of area
// and picture.
func areaRows(name string, blocks []*block) []writer.Row {
	var rows []writer.Row
	put := func(n int, cells []writer.Cell, column int) {
		for n >= len(rows) {
			rows = append(rows, writer.Row{})
		}
		r := &rows[n]
		for filled(r.Cells) < column-1 {
			r.Cells = append(r.Cells, writer.Cell{})
		}
		r.Cells = append(r.Cells, cells...)
	}
	for _, b := range blocks {
		put(0, writer.Line(name+": "+b.picture.Title, style.Look{Bold: true}, b.wide()).Cells, b.column)
		for i, r := range b.rows {
			put(i+1, r, b.column)
		}
	}
	return rows
}

// filled is how many columns cells take.
func filled(cells []writer.Cell) int {
	n := 0
	for _, c := range cells {
		n += max(c.Across, 1)
	}
	return n
}
