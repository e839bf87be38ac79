package names

import (
	"cmp"
	"fmt"
	"strings"
	"unicode"
	"unicode/utf16"

	"firstboard/report/grid"
	"firstboard/report/lists"
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
