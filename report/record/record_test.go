package record

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"firstboard/report/record/sheet"
)

// A table that is written and read again is the same, down to the lines that
// its rows stand on.
func TestWriteCSV(t *testing.T) {
	rec := sound(t, map[string]string{
		"air.csv": "Read at;Temp (°F);RH (%);Instrument;Note\n2026-03-14 08:00;70,50;45;T1;\"a, \"\"b\"\"\"\n\n\n2026-03-14 08:10;;;T1;two  lines\n",
	})
	tables := map[string]string{}
	for _, table := range rec.Tables {
		var text strings.Builder
		if err := sheet.WriteCSV(&text, table); err != nil {
			t.Fatal(err)
		}
		tables[sheet.FileName(table.Name)] = text.String()
	}
	again, err := Read(folderOf(t, tables))
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(rec.Job, again.Job, placesAside()); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff(rec.Tables, again.Tables, placesAside()); diff != "" {
		t.Error(diff)
	}
}
