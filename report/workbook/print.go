package workbook

import "github.com/xuri/excelize/v2"

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
// and number at the foot.
func (b *binder) print(p page) error {
	lying, wide, tall := "landscape", 1, 0
	if p.single {
		tall = 1
	}
	err := b.file.SetPageLayout(p.name, &excelize.PageLayoutOptions{
		Orientation: &lying, FitToWidth: &wide, FitToHeight: &tall})
	if err != nil {
		return err
	}
	if err := b.file.SetPageMargins(p.name, margins()); err != nil {
		return err
	}
	return b.file.SetHeaderFooter(p.name, &excelize.HeaderFooterOptions{
		OddFooter: "&L&A&C" + foot(p.job) + "&R&P / &N"})
}

// margins are in inches.
func margins() *excelize.PageLayoutMarginsOptions {
	side, top, bottom, edge := 0.4, 0.5, 0.7, 0.3
	return &excelize.PageLayoutMarginsOptions{
		Left: &side, Right: &side, Top: &top, Bottom: &bottom, Header: &edge, Footer: &edge}
}
