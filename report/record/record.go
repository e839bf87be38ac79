package record

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"firstboard/report"
)

// ErrNoArea says that a record lists no area, so there is nothing to judge.
var ErrNoArea = errors.New("no area is listed")

// Record is a job as it was recorded, with what its outputs need to say where
// it came from and to carry its tables along unchanged.
type Record struct {
	Name    string         // base name of the folder or file, never a path
	SHA256  string         // in hex; of a folder, over its known tables
	NotRead []string       // sheets or files that are no table of a record
	Tables  []report.Table // the known tables as they stand, in the design's order
	Job     report.Job
}

// Read reads the record at path: a folder of CSV files or a workbook. What a
// person has to mend in the tables comes as Faults, all together; a file that
// cannot be used at all is one plain error.
func Read(path string) (Record, error) {
	from, err := open(path)
	if err != nil {
		return Record{}, err
	}
	return from.decoded()
}

// decoded is the record, its tables settled by the schemas.
func (o origin) decoded() (rec Record, err error) {
	rec = Record{Name: o.name, SHA256: o.sum, NotRead: o.notRead}
	rec.Tables, rec.Job, err = o.decode()
	if err != nil {
		return Record{}, err
	}
	return rec, nil
}

// decode is what the tables hold, as they stand and as a job.
func (o *origin) decode() ([]report.Table, report.Job, error) {
	d := newDecoder()
	d.hidden(o.others)
	for order, s := range schemas() {
		if src := o.tables[s.title()]; src != nil {
			d.read(order, s, src)
		}
	}
	d.lookAlikes(o.others)
	if o.tables["Areas"].blank() && !d.areas.unread {
		return o.known(), report.Job{}, fmt.Errorf("%s: %w; fill Areas, a row for each part of the floor that is accepted as a whole%s", o.name, ErrNoArea, o.emptyToo())
	}
	job, err := d.finish()
	return o.known(), job, err
}

// known are the tables in the design's order.
func (o *origin) known() []report.Table {
	var tables []report.Table
	for _, s := range schemas() {
		if src := o.tables[s.title()]; src != nil {
			tables = append(tables, src.Table)
		}
	}
	return tables
}

// origin is a record before it is decoded: its tables by name.
type origin struct {
	name, sum string
	notRead   []string
	others    []other
	tables    map[string]*source
	left      *room
}

// resembles says whether anything looks like a table of a record.
func (o *origin) resembles() bool {
	return slices.ContainsFunc(o.others, func(x other) bool {
		table, _ := resembled(x)
		return table != ""
	})
}

// emptyToo says which tables that an area leans on are empty forms.
func (o origin) emptyToo() string {
	var empty []string
	for _, table := range []string{"Products", "Climates", "Instruments"} {
		if src := o.tables[table]; src != nil && src.blank() {
			empty = append(empty, table)
		}
	}
	switch n := len(empty); n {
	case 0:
		return ""
	case 1:
		return "; " + empty[0] + " is empty too"
	default:
		return "; " + strings.Join(empty[:n-1], ", ") + " and " + empty[n-1] + " are empty too"
	}
}

func newOrigin(name string) origin {
	return origin{name: name, tables: map[string]*source{}, left: &room{mostRows, mostCells}}
}

// source is a table to come, from a file or from a sheet of it.
func (o *origin) source(table, file, sheet string) *source {
	return &source{Table: report.Table{Name: table}, file: file, sheet: sheet, left: o.left}
}

// most is the most bytes of a file, or of a workbook unpacked, that are read.
const most = 256 << 20

func open(path string) (origin, error) {
	abs, err := filepath.Abs(path)
	if err != nil {
		return origin{}, fmt.Errorf("%s: %w", path, err)
	}
	name := filepath.Base(abs)
	info, err := os.Stat(abs)
	switch {
	case errors.Is(err, os.ErrNotExist):
		return origin{}, fmt.Errorf("%s: there is no such file or folder; check the name", name)
	case err != nil:
		return origin{}, fmt.Errorf("%s: cannot be opened (%w); check that you may read it", name, cause(err))
	case info.IsDir():
		return openFolder(name, abs)
	}
	return openWorkbook(name, abs)
}

// load is the whole of a file of a size that can be read.
func load(name, path string) ([]byte, error) {
	info, err := os.Stat(path)
	switch {
	case err != nil:
		return nil, fmt.Errorf("%s: cannot be read (%w); check that you may read it", name, cause(err))
	case !info.Mode().IsRegular():
		return nil, fmt.Errorf("%s: is not a regular file; give a workbook or a folder of CSV files", name)
	case info.Size() > most:
		return nil, fmt.Errorf("%s: is over %d MB; split the record or thin its logger rows", name, most>>20)
	}
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, fmt.Errorf("%s: cannot be read (%w); check that you may read it", name, cause(err))
	}
	return data, nil
}

// cause is an error of the file system without its path.
func cause(err error) error {
	var at *os.PathError
	if errors.As(err, &at) {
		return at.Err
	}
	return err
}
