package record

import (
	"errors"
	"os"
	"path/filepath"
	"testing"

	"firstboard/report/record/faults"
)

// either a job or an error that names its place: never a panic, never half.
func settled(t *testing.T, path string) {
	rec, err := Read(path)
	if err != nil {
		if faults := (faults.List{}); errors.As(err, &faults) && len(faults) == 0 {
			t.Error("faults without a fault")
		}
		if rec.Job.Name != "" || rec.Tables != nil {
			t.Error("an error and a record")
		}
		return
	}
	if len(rec.Job.Areas) == 0 || rec.SHA256 == "" {
		t.Error("a record without an area or a sum")
	}
}

func FuzzCSV(f *testing.F) {
	f.Add("slab-rh.csv", holeHead+"A1,H1,,1.6,2026-03-01 08:00,2026-03-03 08:00,84.7,70,RP1\n")
	for name, text := range full() {
		f.Add(name, text)
	}
	base := folderOf(f, files())
	names := full()
	f.Fuzz(func(t *testing.T, name, text string) {
		if _, ok := names[name]; !ok {
			name = "slab-rh.csv"
		}
		path := filepath.Join(base, name)
		was, _ := os.ReadFile(path)
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		settled(t, base)
		if was == nil {
			os.Remove(path)
		} else if err := os.WriteFile(path, was, 0o644); err != nil {
			t.Fatal(err)
		}
	})
}

// The fuzzer changes one part of a workbook, so that it need not learn to
// write archives.
func FuzzWorkbook(f *testing.F) {
	p := airBook(f, `<row r="2"><c r="A2" s="4"><v>46085.354166666664</v></c><c t="s"><v>0</v></c></row>`).share("<sst><si><t>70</t></si></sst>", styled)
	for name, text := range p {
		f.Add(name, text)
	}
	dir := f.TempDir()
	f.Fuzz(func(t *testing.T, name, text string) {
		if _, ok := p[name]; !ok {
			name = airSheet
		}
		was := p[name]
		p[name] = text
		path := filepath.Join(dir, "mill.xlsx")
		if err := os.WriteFile(path, p.bytes(t), 0o644); err != nil {
			t.Fatal(err)
		}
		p[name] = was
		settled(t, path)
	})
}
