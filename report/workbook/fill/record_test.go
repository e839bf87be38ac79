package fill

import (
	"bytes"
	"strings"
	"testing"

	"firstboard/report/grid"
)

// A workbook that no reader would take is refused while it is written.
func TestRecordTooBig(t *testing.T) {
	tables := []grid.Table{{
		Name: "Air", Header: []string{"Note"},
		Rows: []grid.Row{{Number: 2, Cells: []grid.Cell{{Kind: grid.TextCell, Text: "calm"}}}},
	}}
	f := Record{Tool: "firstboard", Tables: tables, Forms: []grid.Form{{Name: "Air", Fields: make([]grid.Field, 1)}}, Most: 1 << 20}
	var out bytes.Buffer
	if err := f.Write(&out); err != nil {
		t.Error(err)
	}
	f.Most = 1 << 10
	err := f.Write(&out)
	if err == nil || !strings.Contains(err.Error(), "more than a record may; write a folder, or split the record") {
		t.Errorf("got %v", err)
	}
}
