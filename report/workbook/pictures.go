package workbook

import (
	"slices"

	"firstboard/report/lists"
	"firstboard/report/pictures"
	"firstboard/report/workbook/said"
	"firstboard/report/workbook/style"
	"firstboard/report/workbook/writer"
)

// Pictures stand so many side by side at most, each so high in points.
const (
	pictureTall  = 156
	pictureAbeam = 4
)

// pictures are the rows of an area's pictures, side by side, to stand below
// so many rows of its sheet, and the pictures in them.
func (d *desk) pictures(area, above int, widths []float64) ([]writer.Row, []writer.Chart) {
	shown := d.plots.Pictures(area)
	if len(shown) == 0 {
		return nil, nil
	}
	const gap = 1
	wide := lists.Each(shown, twiceWide)
	slots, lines, abeam := packed(wide)
	place := writer.Total(widths) / float64(abeam)
	var charts []writer.Chart
	for i, picture := range shown {
		across := place*float64(1+ones(wide[i])) - gap
		charts = append(charts, writer.Chart{
			Row: above + slots[i].line + 1, From: float64(slots[i].place) * place, Wide: across,
			Title: picture.Title, Part: d.plots.Part(area, i, across*style.UnitPoints, pictureTall-4),
		})
	}
	rows := slices.Repeat([]writer.Row{{Least: pictureTall}}, lines)
	return append(rows, entryRows(said.Labelled{Label: "Pictures", Lines: said.Joined(d.plots.Notes(area))}, 1)...), charts
}

// twiceWide says whether a picture asks for twice the width: it names many lines.
func twiceWide(p pictures.Picture) bool {
	const many = 6
	return p.Shows == pictures.WoodMoisture || len(p.Series) > many
}

// slot is where a picture stands: its line, and the first place it takes there.
type slot struct{ line, place int }

// packed lays pictures into lines of as many places: in each the first wide one
// that is left, which takes two places, then others.
func packed(wide []bool) (slots []slot, lines, abeam int) {
	places := len(wide)
	for _, w := range wide {
		places += ones(w)
	}
	lines = (places + pictureAbeam - 1) / pictureAbeam
	abeam = max((places+lines-1)/lines, 2)
	slots = make([]slot, len(wide))
	waiting := map[bool][]int{}
	for i, w := range wide {
		waiting[w] = append(waiting[w], i)
	}
	lines = 0
	for at := 0; len(waiting[true])+len(waiting[false]) > 0; {
		w := len(waiting[true]) > 0 && at+1 < abeam
		if at == abeam || !w && len(waiting[false]) == 0 {
			lines, at = lines+1, 0
			continue
		}
		slots[waiting[w][0]] = slot{lines, at}
		waiting[w], at = waiting[w][1:], at+1+ones(w)
	}
	return slots, lines + 1, abeam
}

func ones(yes bool) int { return lists.If(yes, 1, 0) }

// plottedPage is the hidden sheet of the numbers behind the pictures.
func (d *desk) plottedPage() writer.Page {
	rows := d.plots.Rows()
	p := writer.Page{Name: d.titles.Plotted, Rows: writer.Numbered(rows), Last: len(rows), Grid: true, Hidden: true}
	p.Widths = slices.Repeat([]float64{17}, max(d.plots.Widest(), 8))
	return p
}
