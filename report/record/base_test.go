package record

import (
	"maps"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// files are the tables of a small sound record, by file name. Tests change one
// or two of them.
func files() map[string]string {
	return map[string]string{
		"job.csv": "Item,Entry\nJob,Mill\nTime zone,America/Chicago\n",
		"areas.csv": "Area,Size (ft2),Substrate,Slab thickness (in),Flooring,Climate,Install on\n" +
			"A1,1240,slab,4,P1,C1,2026-03-12\n",
		"products.csv":    "Product,Kind\nP1,solid wood\nG1,adhesive\nM1,membrane\n",
		"climates.csv":    "Climate,Period,Temp (F),RH (%)\nC1,winter,70,30\n",
		"instruments.csv": "Instrument,Kind\nRP1,RH probe\nT1,air\nS1,surface\nW1,pin\n007,CM\n",
	}
}

// changed are the small record's tables with some of them replaced.
func changed(with map[string]string) map[string]string {
	all := files()
	maps.Copy(all, with)
	return all
}

// folderOf writes tables into a folder.
func folderOf(t testing.TB, tables map[string]string) string {
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

// sound reads a folder that has nothing wrong with it.
func sound(t testing.TB, with map[string]string) Record {
	t.Helper()
	rec, err := Read(folderOf(t, changed(with)))
	if err != nil {
		t.Fatal(err)
	}
	return rec
}

// faulty is the text of all that is wrong with a record at a path.
func faulty(t testing.TB, path string) string {
	t.Helper()
	_, err := Read(path)
	if err == nil {
		t.Fatal("read without an error")
	}
	return err.Error()
}

func lines(s ...string) string { return strings.Join(s, "\n") }

// wants compares an error's text.
func wants(t testing.TB, got, want string) {
	t.Helper()
	if got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}
