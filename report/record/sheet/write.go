package sheet

import (
	"encoding/csv"
	"fmt"
	"io"
	"strings"

	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/untrusted"
)

// WriteCSV writes a table as the file of a record that is a folder, each row on
// the line that its number names, so that evidence is found there; where texts
// of several lines leave no room for that, on the next. Over untrusted.MostBytes,
// which no reader would take, it is an error.
func WriteCSV(w io.Writer, t grid.Table) error {
	out := csv.NewWriter(&bounded{w, untrusted.MostBytes})
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
			entries[i] = toCSV(c.Text)
		}
		if err := out.Write(entries); err != nil {
			return err
		}
		line += breaks(entries)
	}
	out.Flush()
	return out.Error()
}

// toCSV is a text as a CSV file holds it: what a spreadsheet would take for a
// formula has the apostrophe before it that marks a text there.
func toCSV(text string) string {
	if formulaLike(strings.TrimLeft(text, "'")) && !evidence.Plain(text) {
		return "'" + text
	}
	return text
}

// fromCSV is the text of an entry of a CSV file: toCSV the other way.
func fromCSV(entry string) string {
	if text, marked := strings.CutPrefix(entry, "'"); marked && formulaLike(strings.TrimLeft(text, "'")) {
		return text
	}
	return entry
}

// formulaLike says whether a text begins as formulas do, in one spreadsheet or
// another.
func formulaLike(text string) bool {
	return text != "" && strings.ContainsRune("=+-@\t\r", rune(text[0]))
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
		return 0, TooBig(fmt.Sprintf("its rows come to over %d MB, more than a record may; split the record or thin its logger rows",
			untrusted.MostBytes>>20))
	}
	return b.Writer.Write(data)
}
