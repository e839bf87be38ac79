package workbook

import (
	"bytes"
	"strings"
	"testing"

	"firstboard/report"
)

// A workbook that no reader would take is refused while it is written.
func TestRecordTooBig(t *testing.T) {
	tables := []report.Table{{Name: "Air", Header: []string{"Note"}, Rows: []report.TableRow{{Number: 2, Cells: []report.Cell{{Kind: report.TextCell, Text: "calm"}}}}}}
	var out bytes.Buffer
	if err := WriteRecord(&out, report.Job{}, "firstboard", tables, 1<<20); err != nil {
		t.Error(err)
	}
	err := WriteRecord(&out, report.Job{}, "firstboard", tables, 1<<10)
	if err == nil || !strings.Contains(err.Error(), "more than a record may; write a folder, or split the record") {
		t.Errorf("got %v", err)
	}
}
