package workbook

import (
	"fmt"
	"math"

	"github.com/xuri/excelize/v2"
)

// What a page printed lying offers within its margins, in points: the less of
// the two usual papers, each way.
const (
	paperWide = 734
	paperTall = 505
)

// frame sets what a sheet must know before its first row: its extent, how it
// fits the paper, and whether its grid is drawn.
func (b *binder) frame(p page) error {
	fit := true
	if err := b.file.SetSheetProps(p.name, &excelize.SheetPropsOptions{FitToPage: &fit}); err != nil {
		return err
	}
	if err := b.file.SetSheetView(p.name, 0, &excelize.ViewOptions{ShowGridLines: &p.grid}); err != nil {
		return err
	}
	corner, err := excelize.CoordinatesToCellName(max(len(p.widths), 1), max(p.last, 1))
	if err != nil {
		return err
	}
	return b.file.SetSheetDimension(p.name, "A1:"+corner)
}

// print sets the page up for any paper: lying, as wide as the sheet, its name
// and number at the foot, its header on every page.
func (b *binder) print(p page) error {
	lying, wide, tall := "landscape", p.across(), 0
	if p.single {
		tall = 1
	}
	err := b.file.SetPageLayout(p.name, &excelize.PageLayoutOptions{
		Orientation: &lying, FitToWidth: &wide, FitToHeight: &tall,
	})
	if err != nil {
		return err
	}
	if err := b.file.SetPageMargins(p.name, margins()); err != nil {
		return err
	}
	err = b.file.SetHeaderFooter(p.name, &excelize.HeaderFooterOptions{
		OddFooter: "&L&A&C" + foot(p.job) + "&R&P / &N",
	})
	if err != nil {
		return err
	}
	if err := b.confine(p); err != nil {
		return err
	}
	return b.repeat(p)
}

// confine prints the first rows alone.
func (b *binder) confine(p page) error {
	if p.shown == 0 {
		return nil
	}
	corner, err := excelize.CoordinatesToCellName(len(p.widths), p.shown, true)
	if err != nil {
		return err
	}
	return b.file.SetDefinedName(&excelize.DefinedName{
		Name: "_xlnm.Print_Area", Scope: p.name, RefersTo: quoted(p.name) + "!$A$1:" + corner,
	})
}

// repeat prints the header on every page, and the first column too where the
// sheet is several pages wide.
func (b *binder) repeat(p page) error {
	if p.head == 0 {
		return nil
	}
	rows := fmt.Sprintf("%s!$%d:$%d", quoted(p.name), p.head, p.head)
	if p.across() > 1 {
		rows = quoted(p.name) + "!$A:$A," + rows
	}
	return b.file.SetDefinedName(&excelize.DefinedName{
		Name: "_xlnm.Print_Titles", Scope: p.name, RefersTo: rows,
	})
}

// across is how many printed pages lie side by side: one, unless a table of
// the record would be too small to read on one.
func (p page) across() int {
	smallest := 0.48 // of the letters' size
	if p.handwritten {
		smallest = 0.7
	}
	if !p.grid {
		return 1
	}
	return int(math.Ceil(p.wide() * smallest / paperWide))
}

// wide is the width of the sheet in points.
func (p page) wide() float64 {
	total := 0.0
	for _, w := range p.widths {
		total += w
	}
	return max(total, 1) * unitPoints
}

// scale is how large a sheet comes out when all of it is printed on one page.
func (p page) scale() float64 {
	tall := 0.0
	for _, r := range p.rows {
		tall += max(r.height(p.widths), oneLine)
	}
	return min(paperWide/p.wide(), paperTall/tall, 1)
}

// margins are in inches.
func margins() *excelize.PageLayoutMarginsOptions {
	side, top, bottom, edge := 0.4, 0.5, 0.7, 0.3
	return &excelize.PageLayoutMarginsOptions{
		Left: &side, Right: &side, Top: &top, Bottom: &bottom, Header: &edge, Footer: &edge,
	}
}
