package record

import (
	"archive/zip"
	"bytes"
	"errors"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/xuri/excelize/v2"

	"firstboard/report"
	"firstboard/report/evidence"
	out "firstboard/report/workbook"
)

const tool = "firstboard test"

// sealedBook is the decision workbook of a record.
func sealedBook(t testing.TB, path string) []byte {
	t.Helper()
	rec, err := Read(path)
	if err != nil {
		t.Fatal(err)
	}
	decisions := report.Judge(rec.Job)
	var book bytes.Buffer
	err = out.Write(&book, out.Book{
		Job: rec.Job, Record: rec.Name, SHA256: rec.SHA256, Tool: tool,
		Seal:   report.SealOf(tool, report.Rules(), rec.Tables, report.Answers(rec.Job, decisions, nil)),
		Tables: rec.Tables, Decisions: decisions, Catalog: report.Rules(),
	})
	if err != nil {
		t.Fatal(err)
	}
	return book.Bytes()
}

func readSealed(t testing.TB, book []byte) report.Sealed {
	t.Helper()
	s, err := ReadSealed(saved(t, book))
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func verified(t testing.TB, s report.Sealed) report.Verification {
	t.Helper()
	v, err := report.Verify(s, "", tool, report.Rules())
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// unpacked are the parts of a workbook.
func unpacked(t testing.TB, book []byte) parts {
	t.Helper()
	z, err := zip.NewReader(bytes.NewReader(book), int64(len(book)))
	if err != nil {
		t.Fatal(err)
	}
	p := parts{}
	for _, f := range z.File {
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		data, err := io.ReadAll(r)
		if err != nil {
			t.Fatal(err)
		}
		p[f.Name] = string(data)
	}
	return p
}

// partOfSheet is the part that holds a sheet, by the order of the sheets.
func partOfSheet(t testing.TB, p parts, sheet string) string {
	t.Helper()
	names := regexp.MustCompile(`<sheet name="([^"]*)"`).FindAllStringSubmatch(p["xl/workbook.xml"], -1)
	for i, m := range names {
		if m[1] == sheet {
			return fmt.Sprintf("xl/worksheets/sheet%d.xml", i+1)
		}
	}
	t.Fatalf("no sheet %q", sheet)
	return ""
}

const demonstration = "../../testdata/jobs/millrace"

func TestADecisionWorkbookHolds(t *testing.T) {
	for _, path := range []string{demonstration, demonstration + ".xlsx", folderOf(t, files()), folderOf(t, full())} {
		v := verified(t, readSealed(t, sealedBook(t, path)))
		if len(v.Broken) > 0 || len(v.Notes) != 1 {
			t.Errorf("%s: %q, %q", path, v.Broken, v.Notes)
		}
	}
}

// Folder, workbook and decision workbook are one record, and have one seal.
func TestOneRecordHasOneSeal(t *testing.T) {
	seals := map[string]bool{}
	book := sealedBook(t, demonstration)
	for _, path := range []string{demonstration, demonstration + ".xlsx", saved(t, book)} {
		rec, err := Read(path)
		if err != nil {
			t.Fatal(err)
		}
		answers := report.Answers(rec.Job, report.Judge(rec.Job), nil)
		seals[report.SealOf(tool, report.Rules(), rec.Tables, answers).String()] = true
	}
	if s := readSealed(t, book); len(seals) != 1 || !seals[s.Written] || s.Shown != s.Written {
		t.Errorf("the seals are %v; the workbook carries %s and shows %s", seals, s.Written, s.Shown)
	}
}

// Every number, day and time of the record's tables is sealed: another one in
// its place is told with its cell. As many as are told are changed at a time.
func TestEveryReadingIsSealed(t *testing.T) {
	const most, least = 20, 1000
	s := readSealed(t, sealedBook(t, demonstration))
	job, err := s.Now.Job()
	if err != nil {
		t.Fatal(err)
	}
	s.Areas = nil // for speed: none is judged again
	s.Parts = report.SealOf(tool, report.Rules(), s.Now.Tables, report.Answers(job, nil, nil))
	s.Written, s.Shown = s.Parts.String(), s.Parts.String()
	cells := 0
	for _, table := range s.Now.Tables {
		if table.Name == "Sign-off" {
			continue
		}
		for x, header := range table.Header {
			for rows := range slices.Chunk(table.Rows, most) {
				cells += changeColumn(t, s, table.Name, header, x, rows)
			}
		}
	}
	if cells < least {
		t.Errorf("only %d cells were changed", cells)
	}
}

// changeColumn changes a column of some rows, and gives the number of cells
// that changed.
func changeColumn(t *testing.T, s report.Sealed, table, header string, x int, rows []report.TableRow) int {
	var want []string
	for _, r := range rows {
		was := r.Cells[x]
		defer func() { r.Cells[x] = was }()
		if another(&r.Cells[x]) {
			want = append(want, fmt.Sprintf("changed since: %s row %d %q: from ", table, r.Number, header))
		}
	}
	if len(want) == 0 {
		return 0
	}
	v := verified(t, s)
	if !slices.EqualFunc(v.Broken, want, strings.HasPrefix) {
		t.Errorf("%s, %s: %q, want %q", table, header, v.Broken, want)
	}
	return len(want)
}

// another puts another number, day or time into a cell that holds one.
func another(c *report.Cell) bool {
	switch c.Kind {
	case report.NumberCell:
		c.Text = decimal.RequireFromString(c.Text).Add(decimal.New(1, int32(-c.Places))).String()
	case report.DayCell:
		c.Text = c.Clock.AddDate(0, 0, 1).Format("2006-01-02")
	case report.TimeCell:
		c.Text = evidence.ClockText(c.Clock.Add(1e9))
	default:
		return false
	}
	return true
}

// In the file too: one stored number of each column of each table.
func TestAChangedCellOfTheFileIsTold(t *testing.T) {
	book := sealedBook(t, demonstration)
	p := unpacked(t, book)
	for _, table := range readSealed(t, book).Now.Tables {
		if table.Name == "Sign-off" {
			continue
		}
		part := partOfSheet(t, p, table.Name)
		was, want := p[part], []string(nil)
		p[part], want = raised(t, was, table)
		if len(want) == 0 {
			continue
		}
		v := verified(t, readSealed(t, p.bytes(t)))
		for _, cell := range want {
			told := func(s string) bool { return strings.HasPrefix(s, "changed since: "+cell+": from ") }
			if !slices.ContainsFunc(v.Broken, told) {
				t.Errorf("%s: %q", cell, v.Broken)
			}
		}
		p[part] = was
	}
}

// raised is a sheet with the first stored number of each column raised, and
// the cells it changed.
func raised(t *testing.T, sheet string, table report.Table) (changed string, cells []string) {
	t.Helper()
	stored := regexp.MustCompile(`<c r="([A-Z]+)([0-9]+)"[^>]*><v>([0-9.]+)</v>`)
	seen := map[string]bool{}
	changed = stored.ReplaceAllStringFunc(sheet, func(c string) string {
		m := stored.FindStringSubmatch(c)
		if seen[m[1]] || strings.Contains(c, ` t="`) {
			return c
		}
		seen[m[1]] = true
		x, _ := excelize.ColumnNameToNumber(m[1])
		cells = append(cells, fmt.Sprintf("%s row %s %q", table.Name, m[2], table.Header[x-1]))
		n := decimal.RequireFromString(m[3]).Add(decimal.NewFromInt(2))
		return strings.Replace(c, "<v>"+m[3], "<v>"+n.String(), 1)
	})
	return changed, cells
}

// Both the tables and their copy, then the seal too: only the seal known from
// elsewhere is left to tell.
func TestTheSealCoversItsCopy(t *testing.T) {
	s := readSealed(t, sealedBook(t, demonstration))
	known := s.Written
	change := func(tables []report.Table) {
		for i := range tables {
			if tables[i].Name == "Slab RH" {
				at := slices.Index(tables[i].Header, "RH (%)")
				tables[i].Rows[0].Cells[at].Text = "61.5"
			}
		}
	}
	change(s.Was.Tables)
	if v := verified(t, s); !strings.HasPrefix(v.Broken[0], "sealed copy altered: ") || len(v.Broken) != 2 {
		t.Errorf("the copy alone: %q", v.Broken)
	}
	change(s.Now.Tables)
	if v := verified(t, s); !strings.HasPrefix(v.Broken[0], "changed since: neither ") {
		t.Errorf("tables and copy: %q", v.Broken)
	}
	s.Parts = report.SealOf(tool, report.Rules(), s.Now.Tables, answersOf(t, s))
	if v := verified(t, s); !strings.HasPrefix(v.Broken[0], "seal altered: the sheet Sealed carries ") {
		t.Errorf("tables, copy and parts: %q", v.Broken)
	}
	s.Written, s.Shown = s.Parts.String(), s.Parts.String()
	if v := verified(t, s); len(v.Broken) > 0 {
		t.Errorf("everything: %q", v.Broken)
	}
	v, err := report.Verify(s, known, tool, report.Rules())
	if err != nil || len(v.Broken) != 1 || !strings.HasPrefix(v.Broken[0], "another seal: ") {
		t.Errorf("the seal known from elsewhere: %q (%v)", v.Broken, err)
	}
}

func answersOf(t *testing.T, s report.Sealed) report.Answer {
	t.Helper()
	job, err := s.Now.Job()
	if err != nil {
		t.Fatal(err)
	}
	return report.Answers(job, report.Judge(job), nil)
}

func TestWhatIsNoDecisionWorkbookIsRefused(t *testing.T) {
	book := sealedBook(t, demonstration)
	for path, want := range map[string]string{
		demonstration:           "it is no sealed decision workbook",
		demonstration + ".xlsx": "it is no sealed decision workbook",
	} {
		if _, err := ReadSealed(path); !errors.Is(err, ErrNotSealed) || !strings.Contains(err.Error(), "check judges a record") {
			t.Errorf("%s: %v, want %s", path, err, want)
		}
	}
	for name, data := range map[string][]byte{
		"cut short":     book[:len(book)/2],
		"no workbook":   []byte("a letter"),
		"a bad copy":    unpacked(t, book).swapSealed(t, "2|", "two|"),
		"a bad table":   unpacked(t, book).swapSealed(t, "Slab RH", "Slab RV"),
		"an area twice": unpacked(t, book).swapSealed(t, ">Area A2<", ">Area A1<"),
		"a torn copy":   unpacked(t, book).swapSealed(t, "</worksheet>", ""),
	} {
		if s, err := ReadSealed(saved(t, data)); err == nil {
			t.Errorf("%s was read: %d tables", name, len(s.Now.Tables))
		}
	}
}

// swapSealed is the workbook with a text of its sheet Sealed replaced.
func (p parts) swapSealed(t testing.TB, old, with string) []byte {
	t.Helper()
	return p.swap(t, partOfSheet(t, p, sealedSheet), old, with).bytes(t)
}

// A cell of a row may be longer than the cell that its copy stands in.
func TestLongEntriesAreSealedWhole(t *testing.T) {
	const most = 32767
	for _, entry := range []string{strings.Repeat("a|", most/2), strings.Repeat("\U0001F600", most/2), "ends with |", `\`, "two lines  and\ttabs", "_x0041_ \x01"} {
		note := `"` + strings.ReplaceAll(entry, `"`, `""`) + `"`
		folder := folderOf(t, changed(map[string]string{"air.csv": airHead + "2026-03-01 08:00,70.0,040.50,," + note + "\n"}))
		if v := verified(t, readSealed(t, sealedBook(t, folder))); len(v.Broken) > 0 {
			t.Errorf("%.20q: %q", entry, v.Broken)
		}
	}
}
