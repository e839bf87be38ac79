package sheet

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/untrusted"
)

// ErrNoTable says that a workbook holds no table of a record.
var ErrNoTable = errors.New("no sheet is a table of a record")

// Source is a record before it is decoded: its tables by name.
type Source struct {
	Name    string // base name of the folder or file, never a path
	Sum     string // SHA-256 in hex; of a folder, over its known tables
	Says    string // the description that a workbook gives of itself
	NotRead []string
	Others  []Other
	Tables  map[string]*Table

	known []string // the tables of a record
	copy  string   // what the names of the sheets begin with, of copies
	first string   // the name of the record that was copied
	left  *Room
}

// Other is a sheet or a file that is no table of a record.
type Other struct {
	Name  string
	Sheet bool
	First []string // its first row
	Odd   bool     // no regular file
}

// Open reads the tables of the record at path: a folder of CSV files or a
// workbook. Known are the names of the tables a record may have. Where it has
// none, there is one that like says is meant for a table, or it is an error.
func Open(path string, known []string, like func(Other) bool) (*Source, error) {
	return opened(path, &Source{known: known}, like)
}

// OpenCopies reads the copies of a record's tables that a decision workbook
// carries: sheets whose names begin with prefix. Places are named as in the
// record of that name, a workbook or a folder.
func OpenCopies(path string, known []string, prefix, record string) (*Source, error) {
	return opened(path, &Source{known: known, copy: prefix, first: record}, func(Other) bool { return false })
}

func opened(path string, s *Source, like func(Other) bool) (*Source, error) {
	abs, err := filepath.Abs(path)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", path, err)
	}
	name := filepath.Base(abs)
	s.Name, s.Tables, s.left = name, map[string]*Table{}, NewRoom()
	info, err := os.Stat(abs)
	switch {
	case errors.Is(err, os.ErrNotExist):
		return nil, fmt.Errorf("%s: there is no such file or folder; check the name", name)
	case err != nil:
		return nil, fmt.Errorf("%s: cannot be opened (%w); check that you may read it", name, untrusted.Cause(err))
	case info.IsDir():
		err = s.openFolder(abs)
	case s.ofFile(name) != "":
		err = fmt.Errorf("%s: is one table of a record; give the folder that it lies in", name)
	default:
		err = s.openWorkbook(abs)
	}
	if err == nil && len(s.Tables) == 0 && !slices.ContainsFunc(s.Others, like) {
		err = s.empty(info.IsDir())
	}
	return s, err
}

// empty says that nothing is a table of a record.
func (s *Source) empty(folder bool) error {
	if folder {
		return fmt.Errorf("%s: no table of a record is in this folder; name its files as the tables are, such as areas.csv and slab-rh.csv",
			s.Name)
	}
	return fmt.Errorf("%s: %w; name its sheets as the tables are, such as Areas and Slab RH", s.Name, ErrNoTable)
}

// Table is the table of that name, or a new one that the record lacks, as it
// would stand there.
func (s *Source) Table(name string) *Table {
	if t := s.Tables[name]; t != nil {
		return t
	}
	t := s.table(name, FileName(name), "")
	for _, other := range s.Tables {
		if other.Sheet != "" {
			t = s.table(name, s.Name, name)
		}
	}
	s.Tables[name] = t
	return t
}

// table is a table to come, from a file or from a sheet of it.
func (s *Source) table(name, file, sheet string) *Table {
	return &Table{Table: grid.Table{Name: name}, File: file, Sheet: sheet, left: s.left}
}

// named is the known table that a name stands for, or empty.
func (s *Source) named(same func(table string) bool) string {
	for _, table := range s.known {
		if same(table) {
			return table
		}
	}
	return ""
}

// place is the table to come from a sheet, in the words of its places.
func (s *Source) place(table, sheet string) *Table {
	switch {
	case s.copy == "":
		return s.table(table, s.Name, sheet)
	case strings.EqualFold(filepath.Ext(s.first), ".xlsx"):
		return s.table(table, s.first, table)
	}
	return s.table(table, FileName(table), "")
}

func (s *Source) ofSheet(name string) string {
	name, copied := strings.CutPrefix(name, s.copy)
	if !copied {
		return ""
	}
	return s.named(func(table string) bool { return evidence.Same(name, table) })
}

func (s *Source) ofFile(name string) string {
	return s.named(func(table string) bool { return strings.EqualFold(name, FileName(table)) })
}

// FileName is the file name of a table: slab-rh.csv.
func FileName(table string) string {
	return strings.ToLower(strings.ReplaceAll(table, " ", "-")) + ".csv"
}

// load is the whole of a file of a size that can be read.
func load(path string) ([]byte, error) {
	return untrusted.Read(path, untrusted.Wanted{
		Give: "a workbook or a folder of CSV files", Most: untrusted.MostBytes,
		Smaller: "split the record or thin its logger rows",
	})
}
