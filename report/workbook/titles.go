package workbook

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf16"

	"firstboard/report/grid"
)

// titles are the names of the sheets. The record's tables choose first, so
// that none of them ever loses its own name to a sheet about it.
type titles struct {
	tables   []string // as Book.Tables
	areas    []string // as Book.Decisions
	copies   []string // of the tables, as Book.Tables
	signed   int      // index of the record's sign-offs, -1 where there is none
	decision string
	limits   string
	checks   string
	cautions string
	plotted  string
	signOff  string
	judged   string // the guard's
	figures  string

	record string            // its name
	rows   map[string]string // sheet of a table by the key of the table's name
}

func title(b Book) titles {
	taken := map[string]bool{}
	t := titles{signed: -1, record: b.Record, rows: map[string]string{}}
	for i, table := range b.Tables {
		name := take(taken, table.Name)
		t.tables = append(t.tables, name)
		t.rows[squash(table.Name)] = name
		if squash(table.Name) == squash(signOffName) {
			t.signed, t.signOff = i, name
		}
	}
	if t.signed < 0 {
		t.signOff = take(taken, signOffName)
	}
	t.decision, t.limits = take(taken, "Decision"), take(taken, "Limits")
	t.checks, t.cautions, t.plotted = take(taken, "Checks"), take(taken, "Cautions"), take(taken, "Plotted")
	for _, d := range b.Decisions {
		t.areas = append(t.areas, take(taken, "Area "+d.Area.ID))
	}
	t.judged, t.figures = take(taken, judgedName), take(taken, "Figures")
	for _, table := range b.Tables {
		t.copies = append(t.copies, take(taken, judgedName+" "+table.Name))
	}
	return t
}

// take makes a sheet name of what is wanted and keeps it from being given
// again: a second one of that name carries a number.
func take(taken map[string]bool, want string) string {
	const most = 31
	name := cut(allowed(want), most)
	for n := 2; taken[squash(name)]; n++ {
		mark := fmt.Sprintf(" (%d)", n)
		name = cut(allowed(want), most-len(mark)) + mark
	}
	taken[squash(name)] = true
	return name
}

// allowed replaces what a sheet name may not hold.
func allowed(s string) string {
	s = strings.Map(func(r rune) rune {
		if strings.ContainsRune(`:\/?*[]`, r) || !unicode.IsPrint(r) {
			return '-'
		}
		return r
	}, s)
	if s = strings.Trim(s, " '"); s == "" {
		return "Table"
	}
	return s
}

// cut keeps the first n UTF-16 units of a name, as spreadsheets count them.
func cut(s string, n int) string {
	units := utf16.Encode([]rune(s))
	if len(units) <= n {
		return s
	}
	if utf16.IsSurrogate(rune(units[n-1])) && units[n-1] < 0xdc00 {
		n--
	}
	return strings.TrimRight(string(utf16.Decode(units[:n])), " '")
}

// squash is a name as a reader may compare it: letters and digits alone,
// without case. Two sheets never share it, so a reader never takes a sheet of
// the report for a table of the record.
func squash(s string) string {
	return strings.Map(func(r rune) rune {
		if !unicode.IsLetter(r) && !unicode.IsDigit(r) {
			return -1
		}
		return unicode.ToLower(r)
	}, s)
}

func address(sheet string, row int) string {
	return fmt.Sprintf("%s!A%d", quoted(sheet), row)
}

func quoted(sheet string) string { return "'" + strings.ReplaceAll(sheet, "'", "''") + "'" }

// judgedName is the guard's sheet, and begins the names of the copies.
const judgedName = "As judged"

// signOffName is the table that signatures stand in.
const signOffName = "Sign-off"

// signOffHeader is its header where the record has none.
func signOffHeader() grid.Table {
	return grid.Table{
		Name:   signOffName,
		Header: []string{"Area", "Role", "Name", "At", "Decision", "Waives", "Document", "Remarks"},
	}
}
