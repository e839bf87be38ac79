package workbook_test

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"firstboard/report/workbook"
)

// What is signed and filed is one file without the record, as values.
func TestWhatIsFiledHoldsNoFormulaAndNoTable(t *testing.T) {
	var out bytes.Buffer
	b := demonstration(t)
	if err := workbook.WritePrint(&out, b); err != nil {
		t.Fatal(err)
	}
	f, err := excelize.OpenReader(bytes.NewReader(out.Bytes()))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	want := []string{"Decision", "Area A1", "Area A2", "Limits", "Cautions", "Sign-off", "Plotted"}
	if sheets := f.GetSheetList(); !slices.Equal(sheets, want) {
		t.Errorf("the sheets are %q, want %q", sheets, want)
	}
	all := parts(t, out.Bytes())
	for name, part := range all {
		if strings.HasPrefix(name, "xl/worksheets/sheet") && strings.Contains(part, "<f>") {
			t.Errorf("%s holds a formula", name)
		}
	}
	if charts := chartsOf(all, 2); len(charts) < 4 {
		t.Errorf("area A1 has %d pictures", len(charts))
	}
	if _, says := found(t, f, "Area A2", "NO-GO"); says != "NO-GO, over a limit" {
		t.Errorf("area A2 says %q", says)
	}
}
