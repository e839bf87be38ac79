package writer

import (
	"fmt"
	"iter"
	"strings"
	"unicode/utf16"

	"github.com/xuri/excelize/v2"

	"firstboard/report/workbook/style"
)

// Page is one sheet: its columns, its rows by number in rising order, and how
// it is printed.
type Page struct {
	Name   string
	Widths []float64
	Rows   iter.Seq2[int, Row]
	Last   int  // number of the last row
	Head   int  // row repeated on every printed page, 0 for none
	Frozen bool // the rows down to head stay in sight
	Grid   bool
	Single bool // all on one printed page
	Hidden bool

	Filtered bool // its rows can be picked by their entries
	Printed  int  // how many of its columns are told to be printed, 0 where nothing is told

	Tight     bool // rows of one line are no higher than print asks
	Small     bool // its letters are of 8 points
	Unprinted bool
	Breaks    []int // numbers of the rows that begin a printed page; then nothing is fitted to the paper
	Tints     []Tint
	Charts    []Chart

	Columns []style.Look               // of whole columns, below the rows too
	Checks  []*excelize.DataValidation // of what is typed
}

// Tint is the ground that cells take while a condition holds: what a formula
// gives may change.
type Tint struct {
	Cells, Condition string
	Tone             style.Tone
}

// Row is one row of a page.
type Row struct {
	Cells []Cell
	Least float64 // height in points it is never under
}

// Cell holds a string, a float64, a time or nothing; with a formula, that is
// what the formula gives. It may reach across several columns and lead to
// another place of the workbook.
type Cell struct {
	Value   any
	Formula string
	Look    style.Look
	Across  int
	link    string
}

// Numbered are rows from the first row on.
func Numbered(rows []Row) iter.Seq2[int, Row] {
	return func(yield func(int, Row) bool) {
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
	foot   string
	bare   bool
}

func (b *binder) add(p Page) error {
	s, err := b.open(p)
	if err != nil {
		return fmt.Errorf("sheet %q: %w", p.Name, err)
	}
	for number, r := range p.Rows {
		if err := s.write(number, r); err != nil {
			return fmt.Errorf("sheet %q row %d: %w", p.Name, number, err)
		}
	}
	if err := s.close(); err != nil {
		return fmt.Errorf("sheet %q: %w", p.Name, err)
	}
	if p.Hidden {
		b.hide(p.Name)
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
func (b *binder) open(p Page) (*sheet, error) {
	if err := b.insert(p.Name); err != nil {
		return nil, err
	}
	if err := b.frame(p); err != nil {
		return nil, err
	}
	sw, err := b.file.NewStreamWriter(p.Name)
	if err != nil {
		return nil, err
	}
	for i, w := range p.Widths {
		if err := sw.SetColWidth(i+1, i+1, w); err != nil {
			return nil, err
		}
	}
	for i, l := range p.Columns {
		id, err := b.style(l)
		if err != nil {
			return nil, err
		}
		if err := sw.SetColStyle(i+1, i+1, id); err != nil {
			return nil, err
		}
	}
	if p.Frozen {
		err = sw.SetPanes(&excelize.Panes{
			Freeze: true, YSplit: p.Head,
			TopLeftCell: fmt.Sprintf("A%d", p.Head+1), ActivePane: "bottomLeft",
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

// TooLong says whether a text is longer than a cell holds.
func TooLong(s string) bool {
	return len(s) > excelize.TotalCellChars && len(utf16.Encode([]rune(s))) > excelize.TotalCellChars
}

// footed is a text for the foot of a page, where & gives orders.
func footed(s string) string {
	const most = 80
	r := []rune(strings.Join(strings.Fields(s), " "))
	return strings.ReplaceAll(string(r[:min(len(r), most)]), "&", "&&")
}
