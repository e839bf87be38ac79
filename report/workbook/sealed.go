package workbook

import (
	"strings"
	"unicode/utf16"

	"firstboard/report"
)

// sealedPage carries the seal and a second copy of the tables, by which
// verify tells what was changed since. The copy is not printed: the tables are.
func sealedPage(b Book, t titles) page {
	widths := []float64{16, 100, 32}
	rows := sealedHead(b, t)
	head := len(rows)
	rows = append(rows, header("Table", "As judged: a line a row, its number first"))
	for _, table := range b.Tables {
		rows = append(rows, copyRows(table)...)
	}
	return page{name: t.sealed, widths: widths, rows: numbered(rows), last: len(rows), shown: head}
}

func sealedHead(b Book, t titles) []row {
	rows := []row{
		{cells: []cell{{value: "What was judged, for firstboard verify: please leave this sheet as it is", look: look{bold: true}, across: 3}}},
		{cells: []cell{{value: "The seal speaks for the tables of the record, sign-offs aside, and for verdicts and findings. Whoever wrote it down elsewhere can tell whether any of them was changed since.", across: 3}}},
		{},
	}
	for _, e := range [][3]string{
		{"Seal", b.Seal.String()},
		{"Made with", b.Seal.Tool},
		{"Catalog", b.Seal.Catalog},
		{"Tables", b.Seal.Tables},
		{"Findings", b.Seal.Findings},
	} {
		rows = append(rows, sealedEntry(e[0], e[1], ""))
	}
	for i, d := range b.Decisions {
		rows = append(rows, sealedEntry("Area", d.Area.ID, t.areas[i]))
	}
	return append(rows, row{})
}

func sealedEntry(label, entry, sheet string) row {
	return row{cells: []cell{{value: label, look: look{gray: true}}, copiedText(entry), copiedText(sheet)}}
}

// copyRows are the lines of a table, several to a cell. What is too long for
// one cell goes on in those below it, which name no table.
func copyRows(t report.Table) []row {
	const enough = 1000
	if len(t.Rows) == 0 {
		return nil
	}
	var rows []row
	var lines []string
	size := 0
	flush := func() {
		rows = append(rows, pieces(t.Name, strings.Join(lines, "\n"))...)
		lines, size = lines[:0], 0
	}
	for line := range t.Lines() {
		if size > 0 && size+len(line) > enough {
			flush()
		}
		lines, size = append(lines, line), size+len(line)
	}
	flush()
	return rows
}

// pieces are a text in as many cells as it takes.
func pieces(table, text string) []row {
	const most = 16000
	var rows []row
	units := utf16.Encode([]rune(text))
	for {
		n := min(len(units), most)
		if n < len(units) && utf16.IsSurrogate(rune(units[n])) && units[n] >= 0xdc00 {
			n--
		}
		rows = append(rows, row{cells: []cell{{value: table}, {value: string(utf16.Decode(units[:n]))}}})
		if units, table = units[n:], ""; len(units) == 0 {
			return rows
		}
	}
}
