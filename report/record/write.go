package record

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"firstboard/report"
)

// WriteFolder writes the tables of a record into a new folder, one CSV file a
// table, each row on the line that its number names where texts of several
// lines leave room for that. The folder appears whole or not at all; one that
// exists is an error, and so is any other failure to write.
func WriteFolder(dir string, tables []report.Table) (err error) {
	if _, err := os.Lstat(dir); err == nil {
		return fmt.Errorf("%w: name a folder that is not there yet", os.ErrExist)
	}
	made, err := os.MkdirTemp(filepath.Dir(filepath.Clean(dir)), ".firstboard-*")
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			os.RemoveAll(made)
		}
	}()
	for _, t := range tables {
		var b bytes.Buffer
		if err := writeCSV(&b, t); err != nil {
			return err
		}
		if err := os.WriteFile(filepath.Join(made, fileOf(t.Name)), b.Bytes(), 0o644); err != nil {
			return err
		}
	}
	if err := os.Chmod(made, 0o755); err != nil {
		return err
	}
	return os.Rename(made, dir)
}

// writeCSV writes one table: plain UTF-8, commas, the header on line 1.
func writeCSV(to io.Writer, t report.Table) error {
	if len(t.Header) == 0 {
		return nil
	}
	lines := &lineCount{to: to}
	w := csv.NewWriter(lines)
	entries := append([]string{}, t.Header...)
	if err := w.Write(entries); err != nil {
		return err
	}
	for _, r := range t.Rows {
		w.Flush()
		for lines.n < r.Number-1 {
			if _, err := io.WriteString(lines, "\n"); err != nil {
				return err
			}
		}
		entries = entries[:0]
		for _, c := range r.Cells {
			entries = append(entries, c.Text)
		}
		if err := w.Write(entries); err != nil {
			return err
		}
	}
	w.Flush()
	return w.Error()
}

// lineCount counts the lines that are written through it.
type lineCount struct {
	to io.Writer
	n  int
}

func (l *lineCount) Write(b []byte) (int, error) {
	l.n += bytes.Count(b, []byte("\n"))
	return l.to.Write(b)
}
