package workbook

import (
	"bytes"
	"strings"
	"testing"

	"firstboard/report"
)

// A workbook that no reader would take is refused while it is written.
func TestRecordTooBig(t *testing.T) {
	tables := []report.Table{{
		Name: "Air", Header: []string{"Note"},
		Rows: []report.TableRow{{Number: 2, Cells: []report.Cell{{Kind: report.TextCell, Text: "calm"}}}},
	}}
	f := Filling{Tool: "firstboard", Tables: tables, Forms: []report.Form{{Name: "Air", Fields: make([]report.Field, 1)}}, Most: 1 << 20}
	var out bytes.Buffer
	if err := WriteRecord(&out, f); err != nil {
		t.Error(err)
	}
	f.Most = 1 << 10
	err := WriteRecord(&out, f)
	if err == nil || !strings.Contains(err.Error(), "more than a record may; write a folder, or split the record") {
		t.Errorf("got %v", err)
	}
}
