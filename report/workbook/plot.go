package workbook

import (
	"fmt"
	"math"

	"firstboard/report"
)

// block is one picture's columns on the sheet of what is plotted, and the
// lines drawn over them.
type block struct {
	picture report.Picture
	rows    [][]cell // the first names the columns
	lines   []line
	column  int // of its upper left cell on the sheet, from 1
	row     int
}

// line is one series of a picture: where its name and its values stand.
type line struct {
	role   report.Role
	nth    int // of its role
	name   stretch
	x, y   stretch
	labels []string // at its points
}

// stretch is cells of one column of a block, counted from 0.
type stretch struct{ column, from, to int }

func one(column, row int) stretch { return stretch{column, row, row} }

// at is a stretch as a formula of the block's own sheet refers to it.
func (b *block) at(s stretch) string {
	from, to := fixedName(b.column+s.column, b.row+s.from), fixedName(b.column+s.column, b.row+s.to)
	if s.from == s.to {
		return from
	}
	return from + ":" + to
}

// wide is how many columns a block takes.
func (b *block) wide() int {
	n := 0
	for _, r := range b.rows {
		n = max(n, len(r))
	}
	return n
}

// plots are the pictures of all areas and the sheet behind them.
type plots struct {
	sheet  string
	typed  typed
	areas  [][]*block
	names  []string
	widest int
	last   int // row of the sheet
}

// mostRows is where no further picture is drawn: the sheet is full.
const mostRows = 1_000_000

// plot lays out what is plotted: the areas one below the other, the blocks of
// an area side by side.
func plot(b Book, t titles) *plots {
	p := &plots{sheet: t.plotted, typed: typedIn(b, t), last: 1}
	for _, d := range b.Decisions {
		var blocks []*block
		column, tall := 1, 0
		for _, picture := range report.Pictures(b.Job, d.Area) {
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
		p.areas, p.names = append(p.areas, blocks), append(p.names, "Area "+d.Area.ID)
	}
	return p
}

// block lays out one picture at a place of the sheet.
func (p *plots) block(picture report.Picture, column, row int, before []*block) *block {
	b := &block{picture: picture, column: column, row: row}
	switch picture.Shows {
	case report.HoleReadings, report.ServiceEMC:
		p.byName(b, before)
	case report.WoodMoisture:
		p.byClass(b)
	default:
		p.byPoint(b)
	}
	return b
}

// page is the sheet of what is plotted.
func (p *plots) page() page {
	rows := []row{{cells: []cell{{
		value: "The numbers behind the pictures of the areas' sheets. A number that was typed is a formula that refers to its cell of the record.",
		look:  look{bold: true}, across: max(p.widest, 1),
	}}}}
	for i, blocks := range p.areas {
		if len(blocks) > 0 {
			rows = append(rows, row{})
			rows = append(rows, area(p.names[i], blocks)...)
		}
	}
	out := page{name: p.sheet, rows: numbered(rows), last: len(rows), grid: true}
	for range max(p.widest, 8) {
		out.widths = append(out.widths, 17)
	}
	return out
}

// area is the blocks of one area side by side, under the names of area and
// picture.
func area(name string, blocks []*block) []row {
	var rows []row
	put := func(n int, cells []cell, column int) {
		for n >= len(rows) {
			rows = append(rows, row{})
		}
		for filled(rows[n].cells) < column-1 {
			rows[n].cells = append(rows[n].cells, cell{})
		}
		rows[n].cells = append(rows[n].cells, cells...)
	}
	for _, b := range blocks {
		title := cell{value: fmt.Sprintf("%s: %s", name, b.picture.Title), look: look{bold: true}, across: b.wide()}
		put(0, []cell{title}, b.column)
		for i, r := range b.rows {
			put(i+1, r, b.column)
		}
	}
	return rows
}

// filled is how many columns cells take.
func filled(cells []cell) int {
	n := 0
	for _, c := range cells {
		n += max(c.across, 1)
	}
	return n
}

// head names the columns of a block.
func head(names ...string) []cell { return header(names...).cells }

// naming is a cell that names a limit or a mean and tells its number, which may
// change.
func (b *block) naming(s report.Series, level stretch) cell {
	c := text(s.Name)
	value, number := b.rows[level.from][level.column], b.at(level)
	x, ok := value.plotted()
	if !ok {
		return c
	}
	if s.Role == report.LotMean {
		x, number = math.Round(x*100)/100, "ROUND("+number+",2)"
	}
	unit := " " + string(b.picture.Unit)
	c.value = s.Name + ": " + short(x) + unit
	c.formula = literalText(s.Name+": ") + "&" + number + "&" + literalText(unit)
	return c
}
