package sheet

import (
	"bytes"
	"crypto/sha256"
	"encoding/csv"
	"encoding/hex"
	"errors"
	"fmt"
	"hash"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"unicode/utf8"

	"firstboard/report/grid"
	"firstboard/report/untrusted"
)

// openFolder reads the known tables of a folder. Its sum runs over them in
// the order of their file names: name, NUL, length, NUL, bytes.
func (o *Source) openFolder(path string) error {
	entries, err := os.ReadDir(path) // sorted by name
	if err != nil {
		return fmt.Errorf("%s: cannot be read (%w); check that you may read it", o.Name, untrusted.Cause(err))
	}
	sum := sha256.New()
	var marks []untrusted.Mark // of the tables: they are read one after another, and are to be of one time
	for _, e := range entries {
		if !regular(path, e) {
			o.odd(e.Name())
			continue
		}
		if o.ofFile(e.Name()) != "" {
			mark, _ := untrusted.MarkOf(filepath.Join(path, e.Name())) // what cannot be marked cannot be read
			marks = append(marks, mark)
		}
		if err := o.addFile(e.Name(), path, sum); err != nil {
			return err
		}
	}
	for _, mark := range marks {
		if err := mark.Held(); err != nil {
			return err
		}
	}
	o.Sum = hex.EncodeToString(sum.Sum(nil))
	return nil
}

// regular says whether an entry is a file that counts; a link counts as what
// it leads to.
func regular(folder string, e os.DirEntry) bool {
	if strings.HasPrefix(e.Name(), ".") {
		return false
	}
	info, err := os.Stat(filepath.Join(folder, e.Name()))
	return err != nil || info.Mode().IsRegular()
}

func (o *Source) addFile(file, folder string, sum hash.Hash) error {
	table := o.ofFile(file)
	if table == "" {
		o.NotRead = append(o.NotRead, file)
		o.Others = append(o.Others, Other{Name: file, First: firstLine(filepath.Join(folder, file))})
		return nil
	}
	if was := o.Tables[table]; was != nil {
		return fmt.Errorf("%s: %s and %s are both the table %s; keep one of them", o.Name, was.File, file, table)
	}
	data, err := load(filepath.Join(folder, file))
	if err != nil {
		return err
	}
	src := o.table(table, file, "")
	o.Tables[table] = src
	if err := src.readCSV(data); err != nil {
		return err
	}
	fmt.Fprintf(sum, "%s\x00%d\x00", file, len(data))
	sum.Write(data)
	return nil
}

// odd notes what is no regular file and has a table's name, or nearly.
func (o *Source) odd(name string) {
	if isCSV(name) && !strings.HasPrefix(name, ".") {
		o.Others = append(o.Others, Other{Name: name, Odd: true})
	}
}

// firstLine are the names in the first line of a file, as far as it is a table's.
func firstLine(path string) []string {
	f, err := os.Open(path)
	if err != nil {
		return nil
	}
	defer f.Close()
	data := make([]byte, 4096)
	n, _ := io.ReadFull(f, data)
	data = bytes.TrimPrefix(data[:n], []byte(ByteOrderMark))
	r := csv.NewReader(bytes.NewReader(data))
	r.Comma, r.FieldsPerRecord, r.LazyQuotes = separator(data), -1, true
	fields, _ := r.Read()
	return fields
}

// ByteOrderMark may begin a text in UTF-8 and is no part of it.
const ByteOrderMark = "\ufeff"

// readCSV fills a table from its CSV file. Its header is its first line that
// is not blank; its rows are numbered by their lines.
func (s *Table) readCSV(data []byte) error {
	data = bytes.TrimPrefix(data, []byte(ByteOrderMark))
	if !utf8.Valid(data) || bytes.IndexByte(data, 0) >= 0 {
		return fmt.Errorf("%s: is not UTF-8 text; save it as CSV UTF-8", s.File)
	}
	if row, quoted := overlong(data); quoted {
		return broken(s.File, &csv.ParseError{StartLine: row, Err: csv.ErrQuote})
	} else if row > 0 {
		return fmt.Errorf("%s row %d: is longer than %d MB; write a row of the table on each line", s.File, row,
			longestRow>>20)
	}
	sep := separator(data)
	s.Comma = sep == ';'
	if bytes.IndexByte(data, '"') < 0 {
		return s.readLines(string(data), string(sep))
	}
	r := csv.NewReader(bytes.NewReader(data))
	r.Comma = sep
	r.FieldsPerRecord = -1
	r.ReuseRecord = true
	for first := true; ; first = false {
		fields, err := r.Read()
		if err == io.EOF {
			return nil
		}
		if err != nil {
			return broken(s.File, err)
		}
		line, _ := r.FieldPos(0)
		if err := s.line(first, line, fields); err != nil {
			return err
		}
	}
}

// longestRow is the most bytes of a row: its fields hold what cells can.
const longestRow = 2 << 20

// overlong is the number of the first row that is too long, or 0, and whether a
// quote is open in it: a field in quotes goes on over the ends of lines.
func overlong(data []byte) (row int, quoted bool) {
	line, from := 1, 0
	row = line
	for i, b := range data {
		switch {
		case b == '"':
			quoted = !quoted
		case b == '\n':
			if line++; !quoted {
				row, from = line, i+1
			}
		}
		if i-from > longestRow {
			return row, quoted
		}
	}
	return 0, false
}

// readLines is readCSV for a text without quotes, in which each line is a row.
// Its cells are parts of it, and nothing is copied.
func (s *Table) readLines(text, sep string) error {
	s.Rows = make([]grid.Row, 0, min(strings.Count(text, "\n"), MostRows))
	var fields []string
	first := true
	for number := 1; text != ""; number++ {
		var line string
		line, text, _ = strings.Cut(text, "\n")
		if line = strings.TrimSuffix(line, "\r"); line == "" {
			continue
		}
		fields = fields[:0]
		for more := true; more; {
			var field string
			field, line, more = strings.Cut(line, sep)
			fields = append(fields, field)
		}
		if err := s.line(first, number, fields); err != nil {
			return err
		}
		first = false
	}
	return nil
}

func (s *Table) line(header bool, number int, fields []string) error {
	for i, f := range fields {
		var err error
		if header {
			err = s.head(number, i, f)
		} else {
			err = s.put(number, i, grid.Cell{Kind: grid.TextCell, Text: fromCSV(f)})
		}
		if strings.Contains(f, "\n") || strings.Contains(f, "\r") {
			s.Broken = append(s.Broken, Stray{number, i, f})
		}
		if err != nil {
			return fmt.Errorf("%s: %w", s.File, err)
		}
	}
	return nil
}

// broken says what a CSV file's quotes are up to.
func broken(file string, err error) error {
	var at *csv.ParseError
	if !errors.As(err, &at) {
		return fmt.Errorf("%s: cannot be read (%w)", file, err)
	}
	return fmt.Errorf("%s row %d: a quote is out of place (%w); put an entry that holds a quote in quotes and double the quotes inside it",
		file, at.StartLine, at.Err)
}

// separator is the comma, semicolon or tab that parts the header line most.
func separator(data []byte) rune {
	line, _, _ := bytes.Cut(bytes.TrimLeft(data, "\r\n"), []byte("\n"))
	counts := map[byte]int{}
	quoted := false
	for _, b := range line {
		if b == '"' {
			quoted = !quoted
		}
		if !quoted {
			counts[b]++
		}
	}
	best := byte(',')
	for _, sep := range []byte(";\t") {
		if counts[sep] > counts[best] {
			best = sep
		}
	}
	return rune(best)
}

// isCSV says whether a file's name ends as a table's does.
func isCSV(file string) bool { return strings.EqualFold(filepath.Ext(file), ".csv") }

// IsText says whether a file may hold a table as text, by the end of its name.
func IsText(file string) bool {
	lower := strings.ToLower(strings.TrimRight(file, "~"))
	for _, kept := range []string{".bak", ".old"} {
		lower = strings.TrimSuffix(lower, kept)
	}
	return slices.Contains([]string{".csv", ".tsv", ".txt", ".tab"}, filepath.Ext(lower))
}
