package record

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"firstboard/report/grid"
)

// Values come from the stored cell: percentages, dates and floats as they are
// meant.
func TestStoredValues(t *testing.T) {
	for _, c := range []struct{ name, cells, at, temp, rh string }{
		{"texts", inlines("2026-03-04 08:30", "70", "40.10"), "2026-03-04 08:30", "70", "40.10"},
		{
			"floats", `<c s="4"><v>46085.354166666664</v></c><c><v>70.299999999999997</v></c><c s="6"><v>40.100000000000001</v></c>`,
			"2026-03-04 08:30", "70.3", "40.1",
		},
		{
			"percent", `<c s="4"><v>46085.354166666664</v></c><c><v>70</v></c><c s="1"><v>0.84699999999999998</v></c>`, "2026-03-04 08:30",
			"70", "84.7",
		},
		{
			"own percent", `<c s="4"><v>46085.354166666664</v></c><c><v>-1.5E1</v></c><c s="2"><v>1.7000000000000001E-2</v></c>`,
			"2026-03-04 08:30", "-15", "1.7",
		},
		{
			"percent below one", `<c s="4"><v>46085.35417</v></c><c><v>70</v></c><c s="2"><v>5.0000000000000001E-3</v></c>`,
			"2026-03-04 08:30", "70", "0.5",
		},
		{"a day with hours", `<c s="3"><v>46085.354178240741</v></c><c><v>70</v></c><c><v>40</v></c>`, "2026-03-04 08:30:01", "70", "40"},
		{
			"typed zeros", `<c s="4"><v>46085.354166666664</v></c><c s="6"><v>70</v></c><c s="6"><v>40.25</v></c>`, "2026-03-04 08:30",
			"70.0",
			"40.25",
		},
		{"midnight", `<c s="4"><v>46085</v></c><c><v>70</v></c><c><v>40</v></c>`, "2026-03-04 00:00", "70", "40"},
		{"ISO", `<c t="d" s="4"><v>2026-03-04T08:30:00</v></c><c><v>70</v></c><c><v>40</v></c>`, "2026-03-04 08:30", "70", "40"},
		{"ISO, minutes", `<c t="d"><v>2026-03-04T08:30</v></c><c><v>70</v></c><c><v>40</v></c>`, "2026-03-04 08:30", "70", "40"},
		{
			"ISO, parts of a second", `<c t="d"><v>2026-03-04T08:29:59.999Z</v></c><c><v>70</v></c><c><v>40</v></c>`, "2026-03-04 08:30",
			"70",
			"40",
		},
		{"formulas", `<c s="4"><f t="shared" si="0"/><v>46085.354166666664</v></c><c><f>35*2</f><v>70</v></c><c><f t="shared" ref="C2:C9" si="1">C1</f><v>40</v></c>`, "2026-03-04 08:30", "70", "40"},
	} {
		t.Run(c.name, func(t *testing.T) {
			rec := readBook(t, airBook(t, "<row>"+c.cells+inline("T1")+"</row>").share("", styled))
			got := rec.Job.Air[0]
			if diff := cmp.Diff([]string{c.at, c.temp, c.rh}, []string{got.ReadAt.Written, got.Temp.Written, got.RH.Written}); diff != "" {
				t.Error(diff)
			}
		})
	}
}

func TestDaysSince1904(t *testing.T) {
	p := airBook(t, `<row><c s="4"><v>44623.354166666664</v></c>`+inlines("70", "40", "T1")+"</row>").share("", styled)
	p.swap(t, "xl/workbook.xml", "<sheets>", `<workbookPr date1904="1"/><sheets>`)
	if got := readBook(t, p).Job.Air[0].ReadAt.Written; got != "2026-03-04 08:30" {
		t.Errorf("got %s", got)
	}
}

// What a spreadsheet calls a number stays the text that its column asks for,
// and what XML cannot hold comes back from its escape.
func TestTextColumns(t *testing.T) {
	p := airBook(t, "<row>"+inlines("2026-03-04 08:30", "70", "40", "T1")+inline("two_x000D_\nlines_x005F_x0041_ _xZZZZ_")+`</row>`+
		"<row>"+inlines("2026-03-04 08:40", "70", "40")+`<c><v>7</v></c><c s="2"><v>0.25</v></c></row>`)
	p.swap(t, "xl/worksheets/instruments.csv", inline("CM"), inline("air")).swap(t, "xl/worksheets/instruments.csv", inline("007"),
		`<c><v>7.0</v></c>`).swap(t, airSheet, "<c><v>7</v></c>", `<c><v>7.0</v></c>`)
	rec := readBook(t, p.share("", styled))
	if got, want := rec.Job.Air[0].Note, "two\r\nlines_x0041_ _xZZZZ_"; got != want {
		t.Errorf("got %q, not %q", got, want)
	}
	if got := rec.Job.Air[1].Note; got != "25%" {
		t.Errorf("got %q", got)
	}
	cell := rec.Tables[len(rec.Tables)-1].Rows[1].Cells[3]
	if diff := cmp.Diff(grid.Cell{Kind: grid.TextCell, Text: "7"}, cell); diff != "" {
		t.Error(diff)
	}
}

// One hole is one hole, however its cells show its number, and the kind of an
// instrument is known by it in any order of columns.
func TestNumbersAsNames(t *testing.T) {
	const shown = `<c s="6"><v>7</v></c>`
	p := handWritten(t, map[string]string{
		"slab-rh.csv":           holeHead + "A1,H1,,,,,80,70,RP1\nA1,H2,,,,,80,70,RP1\n",
		"instrument-checks.csv": "Checked at,Expected,Read,Instrument\n2026-03-01 08:00,0.75,75,T1\n",
	}).share("", styled)
	p.swap(t, slabSheet, inline("H1"), shown).swap(t, slabSheet, inline("H2"), `<c><v>7.0</v></c>`)
	p.swap(t, "xl/worksheets/instruments.csv", inline("T1"), `<c><v>7</v></c>`).swap(t, "xl/worksheets/instrument-checks.csv", inline("T1"),
		shown)
	const at = `Instrument checks!B2 "Expected": `
	wants(t, faulty(t, p.save(t)), at+`"0.75" looks like a fraction of one; write 75`)
	rec := readBook(t, p.swap(t, "xl/worksheets/instrument-checks.csv", "0.75", "75"))
	for _, hole := range rec.Job.Holes {
		if hole.Hole != "7" {
			t.Errorf("hole 7 is %q", hole.Hole)
		}
	}
}

// Runs in runs are refused, and however many there are do not exhaust the stack.
func TestDeepRuns(t *testing.T) {
	deep := strings.Repeat("<r>", 1_000_000) + "<t>x</t>" + strings.Repeat("</r>", 1_000_000)
	p := airBook(t, "<row>"+inlines("2026-03-04 08:30", "70", "40",
		"T1")+`<c t="s"><v>0</v></c></row>`).share("<sst><si>"+deep+"</si></sst>", "")
	if got := faulty(t, p.save(t)); !strings.Contains(got, "xl/sharedStrings.xml: its elements are nested over 1000 deep") {
		t.Errorf("got %q", got)
	}
	p["xl/sharedStrings.xml"] = "<sst><si><r><r><t>x</t></r></r></si></sst>"
	if got := faulty(t, p.save(t)); !strings.Contains(got, `it has an element "r" where only a text may stand`) {
		t.Errorf("got %q", got)
	}
}

func TestWorkbookFaults(t *testing.T) {
	for _, c := range []struct{ name, cells, want string }{
		{"a decimal comma", inlines("2026-03-04 08:30", "70", "84,7"), `Air!C2 "RH (%)": "84,7" is not a plain number; write 84.7`},
		{
			"a truth value", inlines("2026-03-04 08:30", "70") + `<c t="b"><v>1</v></c>`,
			`Air!C2 "RH (%)": TRUE is a truth value; write yes, no, a number or words`,
		},
		{
			"an error value", inlines("2026-03-04 08:30", "70") + `<c t="e"><f>1/0</f><v>#DIV/0!</v></c>`,
			`Air!C2 "RH (%)": "#DIV/0!" is an error value; write what was observed, or clear the cell`,
		},
		{
			"no result", inlines("2026-03-04 08:30", "70") + `<c><f>SUM(A1:A2)</f></c>`,
			`Air!C2 "RH (%)": is a formula without a stored result; open the workbook in a spreadsheet program, let it calculate and save it, or write the value`,
		},
		{
			"an empty result", inlines("2026-03-04 08:30", "70") + `<c><f>SUM(A1:A2)</f><v></v></c>`,
			`Air!C2 "RH (%)": is a formula without a stored result; open the workbook in a spreadsheet program, let it calculate and save it, or write the value`,
		},
		{
			"a plain number for a time", `<c><v>46085.5</v></c>` + inlines("70", "40"),
			`Air!A2 "Read at": "46085.5" is a number, not a time; write the day and the time, such as 2026-03-04 08:30`,
		},
		{
			"a day for a time", `<c s="3"><v>46085</v></c>` + inlines("70", "40"),
			`Air!A2 "Read at": "2026-03-04" is a date, and a time is asked for; write the day and the time, such as 2026-03-04 08:30`,
		},
		{
			"an ISO day for a time", `<c t="d" s="3"><v>2026-03-04T00:00:00</v></c>` + inlines("70", "40"),
			`Air!A2 "Read at": "2026-03-04" is a date, and a time is asked for; write the day and the time, such as 2026-03-04 08:30`,
		},
		{
			"a clock time alone", `<c s="4"><v>0.35416666666666669</v></c>` + inlines("70", "40"),
			`Air!A2 "Read at": "0.354166666666667" is a number, not a time; write the day and the time, such as 2026-03-04 08:30`,
		},
		{
			"a date for a number", inline("2026-03-04 08:30") + `<c s="3"><v>46085</v></c>` + inline("40"),
			`Air!B2 "Temp (F)": "2026-03-04" is a date, not a number; write the number, and format the cell as one`,
		},
		{
			"a percentage that is none", inlines("2026-03-04 08:30", "70") + `<c s="1"><v>84.7</v></c>`,
			`Air!C2 "RH (%)": "8470" is outside 0 to 100; write the number in the unit of its column, or leave the cell blank`,
		},
		{
			"a fraction", inlines("2026-03-04 08:30", "70") + `<c><v>0.84699999999999998</v></c>`,
			`Air!C2 "RH (%)": "0.847" looks like a fraction of one; write 84.7`,
		},
		{
			"a huge number", inlines("2026-03-04 08:30", "70") + `<c><v>1E+300</v></c>`,
			`Air!C2 "RH (%)": "100000000000000000000000000000000000000000000000000000000000..." has more digits than any reading; write the number as read`,
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := airBook(t, "<row>"+c.cells+inline("T1")+"</row>").share("", styled)
			wants(t, faulty(t, p.save(t)), c.want)
		})
	}
	p := airBook(t, `<row r="3"><c r="G3"><v>5</v></c></row>`)
	wants(t, faulty(t, p.save(t)), `Air!G3: "5" stands in column 7, which has no header; name the column or clear the cell`)
	p = airBook(t, `<row r="9">`+inlines("2026-03-04 08:30", "70", "x", "T1")+`</row>`)
	wants(t, faulty(t, p.save(t)), `Air!C9 "RH (%)": "x" is not a plain number; write digits with a point, such as 84.7`)
}

// A whole day is a date even where its format shows a time.
func TestDayCells(t *testing.T) {
	p := handWritten(t, nil).share("", styled)
	p.swap(t, "xl/worksheets/areas.csv", inline("2026-03-12"), `<c s="4"><v>46093</v></c>`)
	if got := readBook(t, p).Job.Areas[0].InstallOn.Written; got != "2026-03-12" {
		t.Errorf("got %s", got)
	}
	p.swap(t, "xl/worksheets/areas.csv", "46093", "46093.25")
	wants(t, faulty(t, p.save(t)), `Areas!G2 "Install on": "2026-03-12 06:00" has a time in it, and a date is asked for; write 2026-03-12`)
}

// Only the first cell of a merged block is seen, so each row needs its own
// entry: no block may reach into the table.
func TestMergedCells(t *testing.T) {
	row := "<row>" + inlines("2026-03-04 08:30", "70", "40", "T1", "dry") + "</row>"
	merge := func(refs string) parts {
		return airBook(t, row+row+"<row>"+inlines("2026-03-04 08:30", "70", "40", "T1")+"</row>").
			swap(t, airSheet, "</sheetData>", "</sheetData><mergeCells>"+refs+"<extLst/></mergeCells>")
	}
	for refs, want := range map[string]string{
		`<mergeCell ref="B2:C3"/>`:                         `Air!B2 "Temp (F)": the cells B2:C3 are merged; split them, and write an entry into each row`,
		`<mergeCell ref="D2:D3"/><mergeCell ref="D4:D9"/>`: `Air!D2 "Instrument" rows 2 and 4: the cells D2:D3 are merged; split them, and write an entry into each row`,
		`<mergeCell ref="E4:XFD5"/>`:                       `Air!E4 "Note": the cells E4:XFD5 are merged; split them, and write an entry into each row`,
		`<mergeCell ref="A1:B1"/>`:                         `Air!A1 "Read at": the cells A1:B1 are merged; split them, and write an entry into each row`,
	} {
		wants(t, faulty(t, merge(refs).save(t)), want)
	}
	readBook(t, merge(`<mergeCell ref="F3:XFD4"/><mergeCell ref="A1"/><mergeCell ref="A9:A1048576"/>`))
	const damage = `mill.xlsx: the workbook is damaged: the sheet "Air" does not read to its end: ` + airSheet + ": "
	for refs, want := range map[string]string{
		`<mergeCell ref="B3:A2"/>`: `the merged cells "B3:A2" are no block of cells`,
		`<mergeCell/>`:             `the merged cells "" are no block of cells`,
		strings.Repeat(`<mergeCell ref="F1:XFD1048576"/>`, 100_001): "it has more merged cells than a table has rows",
	} {
		wants(t, faulty(t, merge(refs).save(t)), damage+want+again)
	}
}
