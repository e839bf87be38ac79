package record

import (
	"cmp"
	"errors"
	"fmt"
	"slices"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/lists"
	"firstboard/report/record/sheet"
)

// ErrNoArea says that a record lists no area, so there is nothing to judge.
var ErrNoArea = errors.New("no area is listed")

// Record is a job as it was recorded, with what its outputs need to say where
// it came from and to carry its tables along unchanged.
type Record struct {
	Name    string       // base name of the folder or file, never a path
	SHA256  string       // in hex; of a folder, over its known tables
	Origin  string       // of a decision workbook, the SHA256 of the record it was judged by
	NotRead []string     // sheets or files that are no table of a record
	Tables  []grid.Table // the known tables as they stand, in the design's order
	Job     report.Job
}

// Read reads the record at path: a folder of CSV files or a workbook. What a
// person has to mend in the tables comes as a list of faults, all together; a
// file that cannot be used at all is one plain error.
func Read(path string) (Record, error) {
	from, err := open(path)
	if err := cmp.Or(verdictsOnly(from), err); err != nil {
		return Record{}, err
	}
	return decoded(from)
}

// Standing are the tables of the workbook or folder at path as they stand,
// whatever is wrong with them, and what a workbook says of itself; none where it
// cannot be read.
func Standing(path string) (tables []grid.Table, says string) {
	from, err := open(path)
	if err != nil {
		return nil, ""
	}
	tables, _, _ = decode(from) // with all that is wrong, they are what stands there
	return tables, from.Says
}

// open reads the tables of the record at path.
func open(path string) (*sheet.Source, error) { return sheet.Open(path, TableNames(), isLookAlike) }

// decoded is the record, its tables settled by the schemas.
func decoded(from *sheet.Source) (rec Record, err error) {
	rec = Record{Name: from.Name, SHA256: from.Sum, NotRead: from.NotRead, Origin: judgedFrom(from.Says)}
	rec.Tables, rec.Job, err = decode(from)
	if err != nil {
		return Record{}, err
	}
	return rec, nil
}

// decode is what the tables hold, as they stand and as a job.
func decode(from *sheet.Source) ([]grid.Table, report.Job, error) {
	d := newDecoder()
	d.hidden(from.Others)
	for _, x := range d.indexes() {
		x.absent = from.Tables[x.table] == nil
	}
	for order, s := range schemas() {
		if src := from.Tables[s.title()]; src != nil {
			d.read(order, s, src)
			d.jobNamed(s.title(), src)
		}
	}
	d.lookAlikes(from)
	if filed(from) {
		return known(from.Tables), report.Job{},
			fmt.Errorf("%s: it is what is signed and filed, %w; check the record that it names", from.Name, ErrNoRecord)
	}
	if from.Tables["Areas"].Blank() && !d.areas.unread {
		return known(from.Tables), report.Job{},
			fmt.Errorf("%s: %w; fill Areas, a row for each part of the floor that is accepted as a whole%s", from.Name,
				ErrNoArea, emptyToo(from))
	}
	job, err := d.finish()
	return known(from.Tables), job, err
}

// filed says whether a workbook is what check RECORD --print writes: the lines
// to sign beside sheets that are no tables.
func filed(from *sheet.Source) bool {
	return len(from.Tables) == 1 && from.Tables["Sign-off"] != nil && slices.Contains(from.NotRead, "Decision")
}

// known are the tables in the design's order.
func known(from map[string]*sheet.Table) []grid.Table {
	var tables []grid.Table
	for _, s := range schemas() {
		if src := from[s.title()]; src != nil {
			tables = append(tables, src.Table)
		}
	}
	return tables
}

// emptyToo says which tables that an area leans on are empty forms.
func emptyToo(from *sheet.Source) string {
	empty := lists.Where([]string{"Products", "Climates", "Instruments"}, func(table string) bool {
		src := from.Tables[table]
		return src != nil && src.Blank()
	})
	switch len(empty) {
	case 0:
		return ""
	case 1:
		return "; " + empty[0] + " is empty too"
	}
	return "; " + evidence.List(empty) + " are empty too"
}

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
