package sheet

import (
	"encoding/csv"
	"io"
	"strings"

	"firstboard/report"
)

// WriteCSV writes a table as the file of a record that is a folder, each row on
// the line that its number names, so that evidence is found there; where texts
// of several lines leave no room for that, on the next. Over MostBytes, which
// no reader would take, it is an error.
func WriteCSV(w io.Writer, t report.Table) error {
	out := csv.NewWriter(&bounded{w, MostBytes})
	if err := out.Write(t.Header); err != nil {
		return err
	}
	entries := make([]string, len(t.Header))
	line := 1 + breaks(t.Header)
	for _, row := range t.Rows {
		for line++; line < row.Number; line++ {
			if err := out.Write(nil); err != nil {
				return err
			}
		}
		clear(entries)
		for i, c := range row.Cells {
			entries[i] = c.Text
		}
		if err := out.Write(entries); err != nil {
			return err
		}
		line += breaks(entries)
	}
	out.Flush()
	return out.Error()
}

// breaks are the ends of lines inside texts.
func breaks(texts []string) int {
	n := 0
	for _, s := range texts {
		n += strings.Count(s, "\n")
	}
	return n
}

// bounded is a writer that takes so many bytes and no more.
type bounded struct {
	io.Writer
	left int
}

func (b *bounded) Write(data []byte) (int, error) {
	if b.left -= len(data); b.left < 0 {
		return 0, TooBig("its rows come to over 256 MB, more than a record may; split the record or thin its logger rows")
	}
	return b.Writer.Write(data)
}
