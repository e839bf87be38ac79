package sheet

import (
	"strconv"

	"firstboard/report/evidence"
	"firstboard/report/grid"
)

// Place is a row or a cell of the record. Rows and columns count from 1; a
// CSV row is a line of the file. Column is 0 where the whole row is meant.
type Place struct {
	In             *Holder
	Number, Column int32
}

// Holder is the file, and the sheet of a workbook, that a table stands in.
type Holder struct {
	File  string // base name of the file
	Sheet string // of a workbook, as it is spelled there; empty for CSV
	Table string // as the design names it: "Slab RH"
}

// String is the place as evidence: Slab RH!J9 of a workbook, slab-rh.csv row 9
// of a folder.
func (p *Place) String() string {
	number := strconv.Itoa(int(p.Number))
	switch {
	case p.Number == 0 && p.In.Sheet == "":
		return p.In.File
	case p.Number == 0:
		return p.In.Sheet
	case p.In.Sheet == "":
		return p.In.File + " row " + number
	case p.Column > 0:
		return evidence.Tidy(p.In.Sheet) + "!" + grid.Letters(int(p.Column)) + number
	}
	return evidence.Tidy(p.In.Sheet) + " row " + number
}

// Row is the table the place lies in and the number of its row there.
func (p *Place) Row() (table string, number int) { return p.In.Table, int(p.Number) }

// Cell is the table the place lies in, and the numbers of its row and column
// there; column 0 for a whole row.
func (p *Place) Cell() (table string, row, column int) {
	return p.In.Table, int(p.Number), int(p.Column)
}
