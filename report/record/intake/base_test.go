package intake

import (
	"maps"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"firstboard/report/record"
)

// sound is a small record, some of its tables replaced or added.
func sound(t testing.TB, with map[string]string) record.Record {
	t.Helper()
	files := map[string]string{
		"job.csv": "Item,Entry\nJob,Mill\nTime zone,America/Chicago\n",
		"areas.csv": "Area,Size (ft2),Substrate,Slab thickness (in),Flooring,Climate,Install on\n" +
			"A1,1240,slab,4,P1,C1,2026-03-12\n",
		"products.csv":    "Product,Kind\nP1,solid wood\nG1,adhesive\nM1,membrane\n",
		"climates.csv":    "Climate,Period,Temp (F),RH (%)\nC1,winter,70,30\n",
		"instruments.csv": "Instrument,Kind\nRP1,RH probe\nT1,air\nS1,surface\nW1,pin\n007,CM\n",
	}
	maps.Copy(files, with)
	folder := filepath.Join(t.TempDir(), "mill")
	if err := os.Mkdir(folder, 0o755); err != nil {
		t.Fatal(err)
	}
	for name, text := range files {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	rec, err := record.Read(folder)
	if err != nil {
		t.Fatal(err)
	}
	return rec
}

// wants compares an error's text.
func wants(t testing.TB, got, want string) {
	t.Helper()
	if got != want {
		t.Errorf("got\n%s\nwant\n%s", got, want)
	}
}

func lines(s ...string) string { return strings.Join(s, "\n") }
