package forms

import (
	"encoding/csv"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/record"
)

// headers are the headers of a table in a system of units.
func headers(t *testing.T, table string, s System) []string {
	t.Helper()
	for _, f := range Empty(s) {
		if f.Name == table {
			return names(f.Fields)
		}
	}
	t.Fatalf("there is no form %s", table)
	return nil
}

func names(fields []grid.Field) []string {
	var all []string
	for _, f := range fields {
		all = append(all, f.Header)
	}
	return all
}

// The headers are those of the design, section 3, each with its unit.
func TestLayoutInBothSystems(t *testing.T) {
	for _, c := range []struct {
		table  string
		system System
		want   string
	}{
		{"Slab RH", Imperial, "Area,Hole,X (ft),Y (ft),To exterior wall (ft),Wall,Thickness (in),Depth (in),Sealed at,Read at,RH (%),Temp (F),Instrument,Discarded,By,Note"},
		{"Slab RH", Metric, "Area,Hole,X (m),Y (m),To exterior wall (m),Wall,Thickness (mm),Depth (mm),Sealed at,Read at,RH (%),Temp (C),Instrument,Discarded,By,Note"},
		{"Slab MVER", Imperial, "Area,Dish,X (ft),Y (ft),Set at,Retrieved at,Start mass (g),End mass (g),Test area (ft2),Instrument,By,Note"},
		{"Slab MVER", Metric, "Area,Dish,X (m),Y (m),Set at,Retrieved at,Start mass (g),End mass (g),Test area (cm2),Instrument,By,Note"},
		{"Job", Metric, "Item,Entry"},
		{"Instruments", Metric, "Instrument,Kind,Make and model,Serial,Calibrated on,Due on,Certificate,Uncertainty,Uncertainty temp (C)"},
	} {
		if got := strings.Join(headers(t, c.table, c.system), ","); got != c.want {
			t.Errorf("%s: got\n%s\nwant\n%s", c.table, got, c.want)
		}
	}
}

func TestJobItemsInBothSystems(t *testing.T) {
	imperial, metric := names(Empty(Imperial)[0].Rows), names(Empty(Metric)[0].Rows)
	for _, item := range []string{"Elevation (ft)", "Dew margin (F)"} {
		if !slices.Contains(imperial, item) || slices.Contains(metric, item) {
			t.Errorf("%s is an imperial item alone:\n%q\n%q", item, imperial, metric)
		}
	}
	for _, item := range []string{"Elevation (m)", "Dew margin (C)"} {
		if slices.Contains(imperial, item) || !slices.Contains(metric, item) {
			t.Errorf("%s is a metric item alone:\n%q\n%q", item, imperial, metric)
		}
	}
}

// Every field says what goes there, and no note is about a field that is not
// there.
func TestEveryFieldHasItsNote(t *testing.T) {
	used := noteBook{}
	for _, s := range []System{Imperial, Metric} {
		for _, f := range Empty(s) {
			for _, field := range slices.Concat(f.Fields, f.Rows) {
				if field.Says == "" {
					t.Errorf("%s, %s: nothing says what goes there", f.Name, field.Header)
				}
				name, _ := evidence.Parted(field.Header)
				table := f.Name
				if _, own := notes()[table][name]; !own {
					table = ""
				}
				if used[table] == nil {
					used[table] = map[string]note{}
				}
				used[table][name] = note{}
			}
		}
	}
	for table, all := range notes() {
		for name := range all {
			if _, ok := used[table][name]; !ok {
				t.Errorf("%q, %q: a note about no field", table, name)
			}
		}
	}
}

// folderOf writes tables into a folder.
func folderOf(t *testing.T, tables map[string]string) string {
	t.Helper()
	folder := filepath.Join(t.TempDir(), "mill")
	if err := os.Mkdir(folder, 0o755); err != nil {
		t.Fatal(err)
	}
	for name, text := range tables {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return folder
}

// exampleFiles are a record made of every field's example.
func exampleFiles(t *testing.T, s System) map[string]string {
	t.Helper()
	files := map[string]string{}
	for _, f := range Empty(s) {
		rows := [][]string{names(f.Fields)}
		for _, item := range f.Rows {
			rows = append(rows, []string{item.Header, item.Example})
		}
		if f.Rows == nil {
			var entries []string
			for _, field := range f.Fields {
				entries = append(entries, field.Example)
			}
			rows = append(rows, entries)
		}
		if f.Name == "Instruments" { // the meters that the other examples name
			for id, kind := range map[string]string{
				"BL1": "balance", "PH1": "pH", "CM1": "CM", "AL1": "air", "IR1": "surface",
				"PM1": "pin",
			} {
				rows = append(rows, []string{id, kind})
			}
		}
		if f.Name == "Products" { // the adhesive and the membrane that the area's example names
			rows = append(rows, []string{"GLUE", "adhesive"}, []string{"SHEET", "membrane"})
		}
		var b strings.Builder
		if err := csv.NewWriter(&b).WriteAll(rows); err != nil {
			t.Fatal(err)
		}
		files[f.File] = b.String()
	}
	return files
}

// The examples, put together, are a record without a fault.
func TestExamplesAreReadAsTheyStand(t *testing.T) {
	for _, s := range []System{Imperial, Metric} {
		rec, err := record.Read(folderOf(t, exampleFiles(t, s)))
		if err != nil {
			t.Fatalf("system %d:\n%v", s, err)
		}
		if len(rec.Tables) != len(record.TableNames()) || len(rec.NotRead) > 0 {
			t.Errorf("system %d: %d tables, not read %q", s, len(rec.Tables), rec.NotRead)
		}
		if changed := rec.Job.Settings.Changed(); len(changed) > 0 {
			t.Errorf("system %d: the settings' examples are not their defaults: %v", s, changed)
		}
	}
}

// The words of the forms are the reader's: each is taken, another is a fault.
func TestWordsOfTheFormsAreTheReaders(t *testing.T) {
	for _, f := range Empty(Imperial) {
		for at, field := range f.Fields {
			if field.Takes.Words == nil {
				continue
			}
			for _, word := range append(slices.Clone(field.Takes.Words), "no such word") {
				files := exampleFiles(t, Imperial)
				files[f.File] = replaced(t, files[f.File], at, word)
				_, err := record.Read(folderOf(t, files))
				refused := err != nil && strings.Contains(err.Error(), "is not a word for this column")
				if refused != (word == "no such word") {
					t.Errorf("%s, %s, %q: %v", f.Name, field.Header, word, err)
				}
			}
		}
	}
}

// replaced is a CSV text with one cell of its second line set.
func replaced(t *testing.T, text string, column int, entry string) string {
	t.Helper()
	r := csv.NewReader(strings.NewReader(text))
	r.FieldsPerRecord = -1
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	rows[1][column] = entry
	var b strings.Builder
	if err := csv.NewWriter(&b).WriteAll(rows); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// An empty form is no record yet, and what is missing is one plain sentence.
func TestUntouchedFormsAreNoFault(t *testing.T) {
	for _, s := range []System{Imperial, Metric} {
		files := map[string]string{}
		for _, f := range Empty(s) {
			files[f.File] = strings.Join(names(f.Fields), ",") + "\n"
		}
		for _, item := range Empty(s)[0].Rows {
			files["job.csv"] += item.Header + ",\n"
		}
		want := "mill: no area is listed; fill Areas, a row for each part of the floor that is accepted as a whole; Products, Climates and Instruments are empty too"
		if _, err := record.Read(folderOf(t, files)); err == nil || err.Error() != want {
			t.Errorf("system %d: %v, want %s", s, err, want)
		}
	}
}
