package record

import (
	"errors"
	"fmt"

	"firstboard/report/record/sheet"
)

// CopyPrefix begins the name of a hidden sheet that holds a table as it was
// judged.
const CopyPrefix = "As judged "

// ReadJudged reads the record that a decision workbook was judged by, from the
// copies of its tables, its places named as in the record of that name. A file
// that carries none is an error.
func ReadJudged(path, name string) (Record, error) {
	from, err := sheet.OpenCopies(path, TableNames(), CopyPrefix, name)
	if errors.Is(err, sheet.ErrNoTable) {
		return Record{}, fmt.Errorf("%s: it is no decision workbook; verify takes what check RECORD -o FILE.xlsx writes, and check judges a record", from.Name)
	}
	if err != nil {
		return Record{}, err
	}
	return decoded(from)
}
