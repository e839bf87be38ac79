package record

import (
	"encoding/csv"
	"io"
	"slices"

	"firstboard/report"
)

// With is the record's tables with one of them in its new form, in the
// design's order. The record keeps its own.
func (r Record) With(t report.Table) []report.Table {
	var all []report.Table
	for _, s := range schemas() {
		at := slices.IndexFunc(r.Tables, func(was report.Table) bool { return was.Name == s.title() })
		switch {
		case s.title() == t.Name:
			all = append(all, t)
		case at >= 0:
			all = append(all, r.Tables[at])
		}
	}
	return all
}

// MostBytes is the most bytes of a table's file, or of a workbook unpacked,
// that a record may have.
const MostBytes = most

// WriteCSV writes a table as the file of a record that is a folder. Over
// MostBytes, which no reader would take, it is an error.
func WriteCSV(w io.Writer, t report.Table) error {
	out := csv.NewWriter(&bounded{w, most})
	if err := out.Write(t.Header); err != nil {
		return err
	}
	line := make([]string, len(t.Header))
	for _, row := range t.Rows {
		clear(line)
		for i, c := range row.Cells {
			line[i] = c.Text
		}
		if err := out.Write(line); err != nil {
			return err
		}
	}
	out.Flush()
	return out.Error()
}

// bounded is a writer that takes so many bytes and no more.
type bounded struct {
	io.Writer
	left int
}

func (b *bounded) Write(data []byte) (int, error) {
	if b.left -= len(data); b.left < 0 {
		return 0, tooBig("its rows come to over 256 MB, more than a record may; split the record or thin its logger rows")
	}
	return b.Writer.Write(data)
}

// FileName is the name of a table's file in a record that is a folder.
func FileName(t report.Table) string { return fileOf(t.Name) }
