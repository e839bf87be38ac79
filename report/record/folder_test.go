package record

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestFolder(t *testing.T) {
	path := folderOf(t, changed(map[string]string{
		"photo list.txt": "x", ".hidden.csv": "x", "Notes.csv": "y",
		"AIR.CSV": "Read at,Temp (F),RH (%),Instrument\n",
	}))
	if err := os.Mkdir(filepath.Join(path, "pictures"), 0o755); err != nil {
		t.Fatal(err)
	}
	rec, err := Read(path + "/")
	if err != nil {
		t.Fatal(err)
	}
	if rec.Name != "mill" {
		t.Errorf("named %q", rec.Name)
	}
	if diff := cmp.Diff([]string{"Notes.csv", "photo list.txt"}, rec.NotRead); diff != "" {
		t.Error(diff)
	}
	sum := sha256.New()
	for _, name := range []string{"AIR.CSV", "areas.csv", "climates.csv", "instruments.csv", "job.csv", "products.csv"} {
		data, err := os.ReadFile(filepath.Join(path, name))
		if err != nil {
			t.Fatal(err)
		}
		fmt.Fprintf(sum, "%s\x00%d\x00%s", name, len(data), data)
	}
	if want := hex.EncodeToString(sum.Sum(nil)); rec.SHA256 != want {
		t.Errorf("the sum is %s, not %s", rec.SHA256, want)
	}
	var names []string
	for _, table := range rec.Tables {
		names = append(names, table.Name)
	}
	if diff := cmp.Diff([]string{"Job", "Areas", "Products", "Climates", "Instruments", "Air"}, names); diff != "" {
		t.Error(diff)
	}
}

func TestUnusableFolders(t *testing.T) {
	for _, c := range []struct {
		name   string
		tables map[string]string
		want   string
	}{
		{
			"no table",
			map[string]string{"notes.txt": "x"},
			"mill: no table of a record is in this folder; name its files as the tables are, such as areas.csv and slab-rh.csv",
		},
		{
			"two files for a table", changed(map[string]string{"air.csv": "", "Air.csv": ""}),
			"mill: Air.csv and air.csv are both the table Air; keep one of them",
		},
		{
			"not UTF-8", changed(map[string]string{"air.csv": "Area,Note\nA1,20 \xb0C\n"}),
			"air.csv: is not UTF-8 text; save it as CSV UTF-8",
		},
		{
			"UTF-16", changed(map[string]string{"air.csv": "A\x00r\x00e\x00a\x00"}),
			"air.csv: is not UTF-8 text; save it as CSV UTF-8",
		},
		{
			"an open quote", changed(map[string]string{"air.csv": "Read at,Note\n\n\"2026-03-01,x\n"}),
			`air.csv row 3: a quote is out of place (extraneous or missing " in quoted-field); put an entry that holds a quote in quotes and double the quotes inside it`,
		},
		{
			"a stray quote", changed(map[string]string{"areas.csv": "Area,Name\nA1,12\" tile\n"}),
			`areas.csv row 2: a quote is out of place (bare " in non-quoted-field); put an entry that holds a quote in quotes and double the quotes inside it`,
		},
		{
			"no area", changed(map[string]string{"areas.csv": areaHead + "\n"}),
			"mill: no area is listed; fill Areas, a row for each part of the floor that is accepted as a whole",
		},
		{
			"no header", changed(map[string]string{"air.csv": " ,,\n,,3\n"}),
			"air.csv row 1: has no header; write the names of the columns in row 1",
		},
		{
			"a row no sheet has", changed(map[string]string{"air.csv": airHead + strings.Repeat("\n", 1048575) +
				"2026-03-01 08:00,70,40,T1,\n"}),
			"air.csv: has more rows than a spreadsheet can hold; split the record or thin its logger rows",
		},
		{
			"a header far out", changed(map[string]string{"air.csv": strings.Repeat(",", 256) + "Area\n"}),
			"air.csv: has a header beyond column 256; keep the table's own columns",
		},
	} {
		t.Run(c.name, func(t *testing.T) { wants(t, faulty(t, folderOf(t, c.tables)), c.want) })
	}
	if _, err := Read(folderOf(t, map[string]string{"job.csv": ""})); !errors.Is(err, ErrNoArea) {
		t.Errorf("got %v", err)
	}
	wants(t, faulty(t, filepath.Join(t.TempDir(), "nowhere")), "nowhere: there is no such file or folder; check the name")
}

// The header line tells the separator; a decimal comma is read where commas
// part nothing.
func TestSeparators(t *testing.T) {
	want := sound(t, map[string]string{"air.csv": "Area,Read at,Temp (F),RH (%),Instrument,Note\nA1,2026-03-01 08:00,70.5,40.0,T1,\"a, b\"\n"})
	for name, text := range map[string]string{
		"semicolon": "\ufeffArea;Read at;Temp (°F);RH ( % );Instrument;Note\r\nA1;2026-03-01 08:00;70,5;40,0;T1;a, b\r\n",
		"point":     "Area;Read at;Temp (F);RH (%);Instrument;Note\nA1;2026-03-01 08:00;70.5;40.0;T1;a, b\n",
		"tab":       " area\tREAD  AT\tTemp (F)\trh(%)\tInstrument\tNote\n a1\t2026-03-01 08:00\t70.5\t40.0\t t1 \ta, b\n",
	} {
		t.Run(name, func(t *testing.T) {
			got := sound(t, map[string]string{"air.csv": text})
			if name == "tab" {
				got.Job.Air[0].Area, got.Job.Air[0].Instrument = "A1", "T1"
			}
			if diff := cmp.Diff(want.Job, got.Job, placesAside()); diff != "" {
				t.Error(diff)
			}
		})
	}
	wants(t, faulty(t, folderOf(t, changed(map[string]string{"air.csv": "Read at;Temp (F);RH (%);Instrument\n2026-03-01 08:00;1.070,5;40;T1\n"}))),
		`air.csv row 2 "Temp (F)": "1.070,5" is not a plain number; write digits with a point, such as 84.7`)
}
