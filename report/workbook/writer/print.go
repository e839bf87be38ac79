package writer

import (
	"errors"
	"fmt"
	"math"

	"github.com/xuri/excelize/v2"

	"firstboard/report/lists"
	"firstboard/report/workbook/formula"
)

// What a page printed lying offers within its margins, in points: the less of
// the two usual papers, each way.
const (
	paperWide   = 756
	PaperTall   = 544
	paperNarrow = 559
	paperHigh   = 741
)

// paperUnit is a unit of column width as the widest spreadsheet prints it.
const paperUnit = 6.125

// frame sets what a sheet must know before its first row: its extent, how it
// fits the paper, and whether its grid is drawn.
func (b *binder) frame(p Page) error {
	fit := p.scale() == 0
	return errors.Join(
		b.file.SetSheetProps(p.Name, &excelize.SheetPropsOptions{FitToPage: &fit}),
		b.file.SetSheetView(p.Name, 0, &excelize.ViewOptions{ShowGridLines: &p.Grid}),
		b.file.SetSheetDimension(p.Name, "A1:"+formula.Name(max(len(p.Widths), 1), max(p.Last, 1))),
	)
}

// tableScale prints letters of 10 points at 8: in percent.
const tableScale = 80

// scale is what a page is printed at, in percent; 0 where it is made as wide as
// the paper.
func (p Page) scale() uint {
	switch {
	case p.Breaks != nil, p.Small:
		return 100
	case p.Tight, p.copied():
		return tableScale
	}
	return 0
}

// copied says that a page is a table of the record, which may be several pages
// wide.
func (p Page) copied() bool { return p.Grid && p.Columns == nil }

// sheets is how many pages of paper a table takes at its own scale.
func (p Page) sheets(wide, tall float64) float64 {
	const scale, head, broken = tableScale / 100.0, 3, 10 // rows: of each page's header, and of texts in several lines
	rows := math.Floor(tall/(tightLine*scale)) - head
	return math.Ceil(p.wide()*scale/wide) * math.Ceil(float64(p.Last+broken)/rows)
}

// print sets the page up for any paper, its name and number at the foot, its
// header on every page.
func (b *binder) print(p Page) error {
	lessStanding := p.copied() && p.sheets(paperNarrow, paperHigh) < p.sheets(paperWide, PaperTall)
	way, wide := lists.If(lessStanding, "portrait", "landscape"), p.across()
	tall, scale := lists.If(p.Single, 1, 0), p.scale()
	layout := &excelize.PageLayoutOptions{Orientation: &way, AdjustTo: &scale}
	if scale == 0 {
		layout = &excelize.PageLayoutOptions{Orientation: &way, FitToWidth: &wide, FitToHeight: &tall}
	}
	return errors.Join(
		b.file.SetPageLayout(p.Name, layout),
		b.file.SetPageMargins(p.Name, margins()),
		b.file.SetHeaderFooter(p.Name, &excelize.HeaderFooterOptions{OddFooter: p.foot(b.foot)}),
		b.confine(p), b.repeat(p),
	)
}

// foot is what stands below each page, in letters that are scaled as its own.
func (p Page) foot(says string) string {
	size := lists.If(p.scale() == 100, "&8", "&10")
	return "&L" + size + "&A&C" + size + footed(says) + "&R" + size + "&P / &N"
}

// confine prints the first columns alone, or nothing.
func (b *binder) confine(p Page) error {
	from, corner := "$A$1", "$A$1"
	switch {
	case p.Unprinted: // a cell that holds nothing
		from = formula.Fixed(excelize.MaxColumns, 1)
		corner = from
	case p.Printed == 0:
		return nil
	default:
		corner = formula.Fixed(p.Printed, max(p.Last, 1))
	}
	return b.file.SetDefinedName(&excelize.DefinedName{
		Name: "_xlnm.Print_Area", Scope: p.Name, RefersTo: formula.Quoted(p.Name) + "!" + from + ":" + corner,
	})
}

// repeat prints the header on every page, and the first column too where the
// sheet is several pages wide.
func (b *binder) repeat(p Page) error {
	if p.Head == 0 {
		return nil
	}
	rows := fmt.Sprintf("%s!$%d:$%d", formula.Quoted(p.Name), p.Head, p.Head)
	if p.across() > 1 {
		rows = formula.Quoted(p.Name) + "!$A:$A," + rows
	}
	return b.file.SetDefinedName(&excelize.DefinedName{
		Name: "_xlnm.Print_Titles", Scope: p.Name, RefersTo: rows,
	})
}

// across is how many printed pages lie side by side: one, unless a table
// would be too small to read on one.
func (p Page) across() int {
	if !p.Grid {
		return 1
	}
	return int(math.Ceil(p.wide() * tableScale / 100 / paperWide))
}

// wide is the width of the sheet in points.
func (p Page) wide() float64 {
	return max(Total(p.Widths), 1) * paperUnit
}

// Ruled is how many empty rows of a height one printed page has room for below
// a header of two lines.
func (p Page) Ruled(tall float64) int {
	const headRows = 2
	scale := min(1, paperWide*float64(p.across())/p.wide())
	return int(PaperTall/scale/tall) - headRows
}

// margins are in inches.
func margins() *excelize.PageLayoutMarginsOptions {
	side, top, bottom, edge := 0.25, 0.3, 0.4, 0.2
	return &excelize.PageLayoutMarginsOptions{
		Left: &side, Right: &side, Top: &top, Bottom: &bottom, Header: &edge, Footer: &edge,
	}
}
