package record

import (
	"errors"
	"fmt"
	"strings"

	"firstboard/report/grid"
	"firstboard/report/record/sheet"
)

// ErrNoRecord says that a workbook tells of records and carries none: a table of
// verdicts, or what is signed and filed.
var ErrNoRecord = errors.New("without the record")

// NoRecord says whether an error of Read means that a workbook is whole and no
// record.
func NoRecord(err error) bool {
	return errors.Is(err, ErrNoRecord) || errors.Is(err, sheet.ErrNoTable)
}

// Search finds what may be a record under a path, in a stable order: the path
// itself, or the records in a folder that is none.
func Search(path string) []string {
	return sheet.Search(path, TableNames(), isLookAlike)
}

// GatheredMark begins what a workbook of verdicts says of itself; the SHA-256 of
// its sheets follows.
const GatheredMark = "verdicts of many records, SHA-256 "

// Gathered are the sheets of those names of a workbook of verdicts as they
// stand, and what it says of itself; none where it cannot be read. Strays says
// that something stands beside a table.
func Gathered(path string, sheets []string) (tables []grid.Table, strays bool, says string) {
	from, err := sheet.Open(path, sheets, func(sheet.Other) bool { return false })
	if err != nil {
		return nil, false, ""
	}
	for _, name := range sheets {
		if t := from.Tables[name]; t != nil {
			tables = append(tables, t.Table)
			strays = strays || len(t.Strays) > 0
		}
	}
	return tables, strays || len(from.Others) > 0, from.Says
}

// verdictsOnly refuses a workbook that says of itself that it is a table of
// verdicts.
func verdictsOnly(from *sheet.Source) error {
	if from == nil || !strings.HasPrefix(from.Says, GatheredMark) {
		return nil
	}
	return fmt.Errorf("%s: it is a table of verdicts, %w; check or gather the records that it names",
		from.Name, ErrNoRecord)
}

// judgedFrom is the SHA-256 of the record that a decision workbook was judged
// by, as it says of itself; empty for any other file.
func judgedFrom(says string) string {
	_, sum, found := strings.Cut(says, "SHA-256 ")
	if !found || !strings.HasPrefix(says, "record ") {
		return ""
	}
	return sum
}
