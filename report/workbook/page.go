package workbook

import (
	"firstboard/report/workbook/style"
	"fmt"
	"iter"
	"strings"
	"unicode/utf16"

	"github.com/xuri/excelize/v2"
)

// page is one sheet: its columns, its rows by number in rising order, and how
// it is printed.
type page struct {
	name   string
	job    string // for the foot of the page
	widths []float64
	rows   iter.Seq2[int, row]
	last   int  // number of the last row
	head   int  // row repeated on every printed page, 0 for none
	frozen bool // the rows down to head stay in sight
	grid   bool
	single bool // all on one printed page
	hidden bool

	filtered bool // its rows can be picked by their entries
	printed  int  // how many of its columns are printed, 0 for all

	tight     bool // rows of one line are no higher than print asks
	small     bool // its letters are of 8 points
	unprinted bool
	values    bool  // formulas are left out
	shown     int   // number of the last row that is printed, 0 for all
	breaks    []int // numbers of the rows that begin a printed page; then nothing is fitted to the paper
	tints     []tint
	charts    []placedChart

	columns []style.Look               // of whole columns, below the rows too
	checks  []*excelize.DataValidation // of what is typed
}

// tint is the ground that cells take while a condition holds: what a formula
// gives may change.
type tint struct {
	cells, condition string
	look             style.Look
}

// row is one row of a page.
type row struct {
	cells []cell
	least float64 // height in points it is never under
}

// cell holds a string, a float64, a time or nothing; with a formula, that is
// what the formula gives. It may reach across several columns and lead to
// another place of the workbook.
type cell struct {
	value   any
	formula string
	look    style.Look
	across  int
	link    string
}

// numbered are rows from the first row on.
func numbered(rows []row) iter.Seq2[int, row] {
	return func(yield func(int, row) bool) {
		for i, r := range rows {
			if !yield(i+1, r) {
				return
			}
		}
	}
}

// binder adds pages to a file.
type binder struct {
	file   *excelize.File
	styles map[style.Look]int
	pages  int
	charts int
}

func (b *binder) add(p page) error {
	s, err := b.open(p)
	if err != nil {
		return fmt.Errorf("sheet %q: %w", p.name, err)
	}
	for number, r := range p.rows {
		if err := s.write(number, r); err != nil {
			return fmt.Errorf("sheet %q row %d: %w", p.name, number, err)
		}
	}
	if err := s.close(); err != nil {
		return fmt.Errorf("sheet %q: %w", p.name, err)
	}
	if p.hidden {
		b.hide(p.name)
	}
	return nil
}

// hide hides a sheet. The library's own way reads every sheet of the file anew.
func (b *binder) hide(name string) {
	sheets := b.file.WorkBook.Sheets.Sheet
	for i := range sheets {
		if sheets[i].Name == name {
			sheets[i].State = "hidden"
		}
	}
}

// style is the number of a look in the file.
func (b *binder) style(l style.Look) (int, error) {
	if id, known := b.styles[l]; known {
		return id, nil
	}
	id, err := b.file.NewStyle(l.Style())
	if err == nil {
		b.styles[l] = id
	}
	return id, err
}

// open makes the sheet and sets all that stands before its rows.
func (b *binder) open(p page) (*sheet, error) {
	if err := b.insert(p.name); err != nil {
		return nil, err
	}
	if err := b.frame(p); err != nil {
		return nil, err
	}
	sw, err := b.file.NewStreamWriter(p.name)
	if err != nil {
		return nil, err
	}
	for i, w := range p.widths {
		if err := sw.SetColWidth(i+1, i+1, w); err != nil {
			return nil, err
		}
	}
	for i, l := range p.columns {
		id, err := b.style(l)
		if err != nil {
			return nil, err
		}
		if err := sw.SetColStyle(i+1, i+1, id); err != nil {
			return nil, err
		}
	}
	if p.frozen {
		err = sw.SetPanes(&excelize.Panes{
			Freeze: true, YSplit: p.head,
			TopLeftCell: fmt.Sprintf("A%d", p.head+1), ActivePane: "bottomLeft",
		})
	}
	return &sheet{binder: b, page: p, sw: sw}, err
}

// insert adds an empty sheet; a new file comes with one to rename.
func (b *binder) insert(name string) error {
	b.pages++
	if b.pages == 1 {
		return b.file.SetSheetName(b.file.GetSheetName(0), name)
	}
	_, err := b.file.NewSheet(name)
	return err
}

// tooLong says whether a text is longer than a cell holds.
func tooLong(s string) bool {
	return len(s) > excelize.TotalCellChars && len(utf16.Encode([]rune(s))) > excelize.TotalCellChars
}

// footed is a text for the foot of a page, where & gives orders.
func footed(s string) string {
	const most = 80
	r := []rune(strings.Join(strings.Fields(s), " "))
	return strings.ReplaceAll(string(r[:min(len(r), most)]), "&", "&&")
}
