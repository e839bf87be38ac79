package workbook

import (
	"fmt"
	"math"

	"github.com/xuri/excelize/v2"

	"firstboard/report/workbook/formula"
)

// What a page printed lying offers within its margins, in points: the less of
// the two usual papers, each way.
const (
	paperWide   = 756
	paperTall   = 533
	paperNarrow = 559
	paperHigh   = 730
)

// frame sets what a sheet must know before its first row: its extent, how it
// fits the paper, and whether its grid is drawn.
func (b *binder) frame(p page) error {
	fit := !p.tall() && p.breaks == nil
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

// Letters of 10 points are printed at 8: in percent.
const tableScale = 80

// copied says that a page is a table of the record, which may be several pages
// wide.
func (p page) copied() bool { return p.grid && p.columns == nil }

// tall says that a table has more rows than one page holds: it is printed at a
// scale of its own, however wide.
func (p page) tall() bool {
	const most = 40
	return p.copied() && p.last > most
}

// sheets is how many pages of paper a table takes at its own scale.
func (p page) sheets(wide, tall float64) float64 {
	const scale, head, broken = tableScale / 100.0, 3, 10 // rows: of each page's header, and of texts in several lines
	rows := math.Floor(tall/(tightLine*scale)) - head
	return math.Ceil(p.wide()*scale/wide) * math.Ceil(float64(p.last+broken)/rows)
}

// upright says that a page takes less paper standing.
func (p page) upright() bool {
	return p.tall() && p.sheets(paperNarrow, paperHigh) < p.sheets(paperWide, paperTall)
}

// print sets the page up for any paper, its name and number at the foot, its
// header on every page.
func (b *binder) print(p page) error {
	way, wide, tall, scale := "landscape", p.across(), 0, uint(tableScale)
	if p.single {
		tall = 1
	}
	if p.upright() {
		way = "portrait"
	}
	layout := &excelize.PageLayoutOptions{Orientation: &way, FitToWidth: &wide, FitToHeight: &tall}
	switch {
	case p.breaks != nil:
		layout = &excelize.PageLayoutOptions{Orientation: &way}
	case p.tall():
		layout = &excelize.PageLayoutOptions{Orientation: &way, AdjustTo: &scale}
	}
	if err := b.file.SetPageLayout(p.name, layout); err != nil {
		return err
	}
	if err := b.file.SetPageMargins(p.name, margins()); err != nil {
		return err
	}
	err := b.file.SetHeaderFooter(p.name, &excelize.HeaderFooterOptions{
		OddFooter: "&L&8&A&C&8" + foot(p.job) + "&R&8&P / &N",
	})
	if err != nil {
		return err
	}
	if err := b.confine(p); err != nil {
		return err
	}
	return b.repeat(p)
}

// confine prints the first rows alone, or nothing.
func (b *binder) confine(p page) error {
	from, corner := "$A$1", "$A$1"
	switch {
	case p.unprinted: // a cell that holds nothing
		from = formula.Fixed(excelize.MaxColumns, 1)
		corner = from
	case p.printed > 0:
		corner = formula.Fixed(p.printed, max(p.last, 1))
	case p.shown == 0:
		return nil
	default:
		corner = formula.Fixed(len(p.widths), p.shown)
	}
	return b.file.SetDefinedName(&excelize.DefinedName{
		Name: "_xlnm.Print_Area", Scope: p.name, RefersTo: quoted(p.name) + "!" + from + ":" + corner,
	})
}

// repeat prints the header on every page, and the first column too where the
// sheet is several pages wide.
func (b *binder) repeat(p page) error {
	if p.head == 0 {
		return nil
	}
	rows := fmt.Sprintf("%s!$%d:$%d", quoted(p.name), p.head, p.head)
	if p.across() > 1 || p.tall() {
		rows = quoted(p.name) + "!$A:$A," + rows
	}
	return b.file.SetDefinedName(&excelize.DefinedName{
		Name: "_xlnm.Print_Titles", Scope: p.name, RefersTo: rows,
	})
}

// across is how many printed pages lie side by side: one, unless a table of
// the record would be too small to read on one.
func (p page) across() int {
	const forms = 0.7
	switch {
	case !p.grid:
		return 1
	case p.copied():
		return int(math.Ceil(p.wide() * tableScale / 100 / paperWide))
	}
	return int(math.Ceil(p.wide() * forms / paperWide))
}

// wide is the width of the sheet in points.
func (p page) wide() float64 {
	total := 0.0
	for _, w := range p.widths {
		total += w
	}
	return max(total, 1) * unitPoints
}

// margins are in inches.
func margins() *excelize.PageLayoutMarginsOptions {
	side, top, bottom, edge := 0.25, 0.35, 0.5, 0.25
	return &excelize.PageLayoutMarginsOptions{
		Left: &side, Right: &side, Top: &top, Bottom: &bottom, Header: &edge, Footer: &edge,
	}
}
