package names

import (
	"cmp"
	"fmt"
	"strings"
	"unicode"
	"unicode/utf16"

	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/lists"
	"firstboard/report/workbook/formula"
)

// Titles are the names of the sheets. The record's tables choose first, so
// that none of them ever loses its own name to a sheet about it.
type Titles struct {
	Tables   []string // in the order given
	Areas    []string // likewise
	Copies   []string // of the tables
	Signed   int      // index of the record's sign-offs, -1 where there is none
	Decision string
	Limits   string
	Checks   string
	Cautions string
	Plotted  string
	SignOff  string
	Judged   string // the guard's
	Figures  string

	rows map[string]string // sheet of a table by the key of the table's name
}

// New names the sheets of a record's tables, of its areas, and all others.
func New(tables []grid.Table, areas []string) Titles {
	taken := map[string]bool{}
	t := Titles{Signed: -1, rows: map[string]string{}}
	for i, table := range tables {
		name := take(taken, table.Name)
		t.Tables = append(t.Tables, name)
		t.rows[Squash(table.Name)] = name
		if Squash(table.Name) == Squash(SignOff) {
			t.Signed, t.SignOff = i, name
		}
	}
	if t.Signed < 0 {
		t.SignOff = take(taken, SignOff)
	}
	t.Decision, t.Limits = take(taken, "Decision"), take(taken, "Limits")
	t.Checks, t.Cautions, t.Plotted = take(taken, "Checks"), take(taken, "Cautions"), take(taken, "Plotted")
	t.Areas = lists.Each(areas, func(area string) string { return take(taken, "Area "+area) })
	t.Judged, t.Figures = take(taken, judgedName), take(taken, "Figures")
	t.Copies = lists.Each(tables, func(table grid.Table) string { return take(taken, judgedName+" "+table.Name) })
	return t
}

// Sheet is the sheet that a table of the record stands on.
func (t Titles) Sheet(table string) (name string, known bool) {
	name, known = t.rows[Squash(table)]
	return name, known
}

// take makes a sheet name of what is wanted and keeps it from being given
// again: a second one of that name carries a number.
func take(taken map[string]bool, want string) string {
	const most = 31
	name := Cut(allowed(want), most)
	for n := 2; taken[Squash(name)]; n++ {
		mark := fmt.Sprintf(" (%d)", n)
		name = Cut(allowed(want), most-len(mark)) + mark
	}
	taken[Squash(name)] = true
	return name
}

// allowed replaces what a sheet name may not hold.
func allowed(s string) string {
	s = strings.Map(func(r rune) rune {
		return lists.If(strings.ContainsRune(`:\/?*[]`, r) || !unicode.IsPrint(r), '-', r)
	}, s)
	return cmp.Or(strings.Trim(s, " '"), "Table")
}

// Cut keeps the first n UTF-16 units of a name, as spreadsheets count them.
func Cut(s string, n int) string {
	units := utf16.Encode([]rune(s))
	if len(units) <= n {
		return s
	}
	if utf16.IsSurrogate(rune(units[n-1])) && units[n-1] < 0xdc00 {
		n--
	}
	return strings.TrimRight(string(utf16.Decode(units[:n])), " '")
}

// Squash is a name as a reader may compare it: letters and digits alone,
// without case. Two sheets never share it, so a reader never takes a sheet of
// the report for a table of the record.
func Squash(s string) string {
	return strings.Map(func(r rune) rune {
		return lists.If(unicode.IsLetter(r) || unicode.IsDigit(r), unicode.ToLower(r), -1)
	}, s)
}

// judgedName is the guard's sheet, and begins the names of the copies.
const judgedName = "As judged"

// SignOff is the table that signatures stand in.
const SignOff = "Sign-off"

// celled is a place that can tell its cell: the table, and the numbers of row
// and column there, the column 0 for a whole row.
type celled interface {
	Cell() (table string, row, column int)
}

// Cell is a place as a cell of this workbook. One whose table is on no sheet is
// unknown, and goes by the name of the table; one that is no cell is empty.
func (t Titles) Cell(p evidence.Place) (c formula.Cell, known bool) {
	at, ok := p.(celled)
	if !ok {
		return c, false
	}
	table, row, column := at.Cell()
	sheet, known := t.Sheet(table)
	return formula.Cell{Sheet: cmp.Or(sheet, table), Column: column, Row: row}, known
}

// Place is a place as this workbook names it: Slab RH!J9.
func (t Titles) Place(p evidence.Place) string { return Words(t.Runs([]evidence.Place{p})) }

// Run is cells of one column that follow one another, or a place of another
// kind by its words alone.
type Run struct {
	sheet       string
	column      int
	first, last int // 0 for a place that is no cell
}

func (t Titles) runOf(p evidence.Place) Run {
	c, _ := t.Cell(p)
	if c == (formula.Cell{}) {
		return Run{sheet: p.String()}
	}
	return Run{c.Sheet, c.Column, c.Row, c.Row}
}

// Runs gathers places in their order.
func (t Titles) Runs(places []evidence.Place) []Run {
	var all []Run
	for _, p := range places {
		r := t.runOf(p)
		if n := len(all); n > 0 && r.first > 0 && all[n-1].sheet == r.sheet && all[n-1].column == r.column &&
			all[n-1].last+1 == r.first {
			all[n-1].last = r.last
			continue
		}
		all = append(all, r)
	}
	return all
}

// Words are runs in words, each sheet named once for those that stand together.
func Words(all []Run) string {
	var b strings.Builder
	for i, r := range all {
		switch {
		case i == 0:
			b.WriteString(r.sheet)
		case r.sheet != all[i-1].sheet:
			b.WriteString("; " + r.sheet)
		default:
			b.WriteString(", ")
		}
		if r.first > 0 {
			b.WriteString(r.cells(i == 0 || r.sheet != all[i-1].sheet))
		}
	}
	return b.String()
}

// cells are the cells of a run: !J7 or !J7:J12 behind the name of their sheet,
// or rows in words.
func (r Run) cells(first bool) string {
	before, s := "!", formula.Name(r.column, r.first)
	switch {
	case r.column == 0 && r.first == r.last:
		before, s = " row ", fmt.Sprint(r.first)
	case r.column == 0:
		before, s = " rows ", fmt.Sprintf("%d to %d", r.first, r.last)
	case r.last > r.first:
		s += ":" + formula.Name(r.column, r.last)
	}
	return lists.If(first, before, "") + s
}
