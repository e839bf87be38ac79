package workbook

import (
	"fmt"
	"slices"
	"strings"

	"firstboard/report/grid"
	"firstboard/report/lists"
	"firstboard/report/workbook/formula"
	"firstboard/report/workbook/names"
	"firstboard/report/workbook/style"
	"firstboard/report/workbook/writer"
)

// guard tells whether the tables of the record still stand as they were judged.
// A hidden copy of each lies in the workbook, and one hidden sheet holds a
// formula a table that is 0 only while table and copy are equal. Ranges are
// named in text: a reference would move along with what was moved.
type guard struct {
	sheet   string
	tables  []guarded
	sheets  int      // of the whole workbook
	lacking []string // tables that the record does not have
}

// guarded is a table under guard.
type guarded struct {
	table grid.Table
	name  string // of its sheet
	copy  string // of the sheet of its copy
	row   int    // on the guard's sheet
	parts []comparison
}

// comparison is what is compared of a table, by a formula that gives 0 for equal.
type comparison struct{ says, formula string }

// Rows of the guard's sheet.
const (
	guardTotal = 2
	guardHead  = 4
)

// Columns of the guard's sheet.
const guardColumn = 3

func guardOf(b Book, t names.Titles) guard {
	g := guard{sheet: t.Judged}
	for i, table := range b.Tables {
		one := guarded{table: table, name: t.Tables[i], copy: t.Copies[i], row: guardHead + 1 + len(g.tables)}
		one.parts = one.compared(i == t.Signed)
		g.tables = append(g.tables, one)
	}
	g.lacking = lists.Where(b.Known, func(name string) bool {
		_, held := t.Sheet(name)
		return !held && names.Squash(name) != names.Squash(names.SignOff)
	})
	return g
}

// wholeTable is up to how many rows a table is compared cell by cell.
const wholeTable = 50_000

// compared are the parts of a table that are compared. Later signatures change
// no verdict, so of the sign-offs it is the header alone.
func (g guarded) compared(signed bool) []comparison {
	wide, tall := extentOf(g.table)
	if signed {
		return []comparison{{"header", differ(g.stretch(1, 1, wide, 1))}}
	}
	if tall <= wholeTable {
		return []comparison{{"every cell", differ(g.stretch(1, 1, wide, tall)) + "+" + g.beyond()}}
	}
	parts := []comparison{{"header", differ(g.stretch(1, 1, wide, 1))}, {"cells beyond", g.beyond()}}
	for column := 1; column <= wide; column++ {
		a, b := g.stretch(column, 2, column, tall)
		parts = append(parts, comparison{"column " + grid.Letters(column), sums(a, b, hasText(g.table, column))})
	}
	return parts
}

// stretch is a part of the table and the same part of its copy.
func (g guarded) stretch(left, top, right, bottom int) (a, b string) {
	cells := formula.Name(left, top) + ":" + formula.Name(right, bottom)
	return indirect(g.name, cells), indirect(g.copy, cells)
}

// beyond compares how much stands on the whole sheets.
func (g guarded) beyond() string {
	const rows = "1:1048576"
	return fmt.Sprintf("ABS(COUNTA(%s)-COUNTA(%s))", indirect(g.name, rows), indirect(g.copy, rows))
}

func indirect(sheet, cells string) string {
	return "INDIRECT(" + formula.Text(formula.Quoted(sheet)+"!"+cells) + ")"
}

// differ is how much two ranges differ, cell by cell and kind by kind: an equal
// number and text are told apart, and so are letters of another case.
func differ(a, b string) string {
	return fmt.Sprintf(`SUMPRODUCT((ISNUMBER(%[1]s)<>ISNUMBER(%[2]s))+(ISTEXT(%[1]s)<>ISTEXT(%[2]s))+(ISBLANK(%[1]s)<>ISBLANK(%[2]s))`+
		`+(%[1]s<>%[2]s)+(1-EXACT(%[1]s&"",%[2]s&"")))`, a, b)
}

// sums is how much two long columns differ, by sums over each: none makes up
// for another. Texts are compared one by one, where there are any.
func sums(a, b string, texts bool) string {
	return fmt.Sprintf("ABS(COUNT(%[1]s)-COUNT(%[2]s))+ABS(COUNTA(%[1]s)-COUNTA(%[2]s))+ABS(SUM(%[1]s)-SUM(%[2]s))+ABS(SUMSQ(%[1]s)-SUMSQ(%[2]s))"+
		"+ABS(SUMPRODUCT(ROW(%[1]s),%[1]s)-SUMPRODUCT(ROW(%[2]s),%[2]s))"+
		lists.If(texts, "+SUMPRODUCT((ISTEXT(%[1]s)<>ISTEXT(%[2]s))+(%[1]s<>%[2]s))", ""), a, b)
}

// page is the guard's sheet.
func (g guard) page() writer.Page {
	rows := []writer.Row{
		writer.Line("Whether the tables of the record stand as they were judged: 0 is unchanged. An exact copy of each lies on a hidden sheet.",
			style.Look{Bold: true}, 4),
		{Cells: []writer.Cell{{Value: "All together"}, {}, g.count("")}},
		{},
		writer.Header("Table", "Compared with", "Differs by", "Compared"),
	}
	parts := []writer.Row{}
	first := guardHead + 1 + len(g.tables) + 2
	for _, one := range g.tables {
		from := first + len(parts)
		for _, p := range one.parts {
			parts = append(parts, writer.Row{Cells: []writer.Cell{
				{Value: one.name},
				{Value: one.copy},
				g.count("IFERROR(" + p.formula + ",1)"),
				{Value: p.says},
			}})
		}
		total := g.count(fmt.Sprintf("SUM(C%d:C%d)", from, first+len(parts)-1))
		rows = append(rows, writer.Row{Cells: []writer.Cell{{Value: one.name}, {Value: one.copy}, total}})
	}
	rows = append(rows, writer.Row{Cells: []writer.Cell{
		{Value: "Sheets added or removed, and tables that the record lacks"},
		{},
		g.count(g.others()),
	}}, writer.Row{})
	rows[guardTotal-1].Cells[2].Formula = fmt.Sprintf("IFERROR(SUM(C%d:C%d),1)", guardHead+1, guardHead+1+len(g.tables))
	rows = append(rows, parts...)
	return writer.Page{
		Name: g.sheet, Widths: []float64{50, 30, 12, 20}, Rows: writer.Numbered(rows), Last: len(rows), Grid: true,
		Hidden: true,
	}
}

func (g guard) count(text string) writer.Cell {
	return writer.Cell{Value: 0.0, Formula: text, Look: style.Look{Form: style.Number}}
}

// others counts sheets that are more or fewer, and tables that were not there.
func (g guard) others() string {
	s := fmt.Sprintf("ABS(_xlfn.SHEETS()-%d)", g.sheets)
	for _, name := range g.lacking {
		s += "+ISREF(" + indirect(name, "A1") + ")"
	}
	return "IFERROR(" + s + ",1)"
}

// same is a condition on a sheet that holds while no table differs.
func (g guard) same() string {
	return formula.Quoted(g.sheet) + "!" + formula.Fixed(guardColumn, guardTotal) + "=0"
}

const (
	unchanged = "Every table of the record stands as it was judged."
	changed   = "CHANGED, judge again"
)

// told names the tables that differ, as a formula, and what it gives of a
// workbook that nobody touched.
func (g guard) told() (text, value string) {
	var parts strings.Builder
	for _, one := range g.tables {
		fmt.Fprintf(&parts, "&IF(%s!%s=0,\"\",%s)", formula.Quoted(g.sheet), formula.Fixed(guardColumn, one.row),
			formula.Text("; "+one.name))
	}
	at := formula.Quoted(g.sheet) + "!" + formula.Fixed(guardColumn, guardHead+1+len(g.tables))
	fmt.Fprintf(&parts, "&IF(%s=0,\"\",%s)", at, formula.Text("; sheets were added or removed"))
	return fmt.Sprintf("IF(%s,%s,%s%s)", g.same(), formula.Text(unchanged), formula.Text(changed), parts.String()),
		unchanged
}

// marks color the cells of a table that differ from their copy, and those next
// to it.
func (g guarded) marks() writer.Tint {
	const more = 40
	wide, tall := extentOf(g.table)
	other := formula.Quoted(g.copy) + "!A1"
	return writer.Tint{
		Cells: "A1:" + formula.Name(wide+2, tall+more), Tone: style.Orange,
		Condition: fmt.Sprintf("IFERROR(OR(ISTEXT(A1)<>ISTEXT(%[1]s),ISBLANK(A1)<>ISBLANK(%[1]s),A1<>%[1]s),1)", other),
	}
}

// extentOf is how many columns and rows a table takes on its sheet.
func extentOf(t grid.Table) (wide, tall int) {
	wide = max(len(t.Header), 1)
	for _, r := range t.Rows {
		wide = max(wide, len(r.Cells))
	}
	return wide, t.Last()
}

// hasText says whether a column holds a text.
func hasText(t grid.Table, column int) bool {
	return slices.ContainsFunc(t.Rows, func(r grid.Row) bool {
		if column > len(r.Cells) {
			return false
		}
		_, text := writer.Copied(r.Cells[column-1]).Value.(string)
		return text
	})
}
