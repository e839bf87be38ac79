package record

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
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
		if err := WriteCSV(&text, table); err != nil {
			t.Fatal(err)
		}
		tables[FileName(table)] = text.String()
	}
	again, err := Read(folderOf(t, tables))
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(rec.Job, again.Job, alike()); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff(rec.Tables, again.Tables, alike()); diff != "" {
		t.Error(diff)
	}
}

// With puts a table that was not there in its place.
func TestWith(t *testing.T) {
	rec := sound(t, nil)
	l := logged(t, rec, "Time,Temp (F),RH\n2026-03-14 08:00,70,45\n", airLog())
	var names []string
	for _, table := range rec.With(l.Table) {
		names = append(names, table.Name)
	}
	if diff := cmp.Diff([]string{"Job", "Areas", "Products", "Climates", "Instruments", "Air"}, names); diff != "" {
		t.Error(diff)
	}
	if len(rec.Tables) != 5 {
		t.Errorf("the record has %d tables now", len(rec.Tables))
	}
}

func TestTooManyBytes(t *testing.T) {
	var text strings.Builder
	b := bounded{&text, 5}
	if _, err := b.Write([]byte("12345")); err != nil {
		t.Error(err)
	}
	if _, err := b.Write([]byte("6")); err == nil || text.String() != "12345" {
		t.Errorf("%v, %q", err, text.String())
	}
}
