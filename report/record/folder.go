package record

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
	"strings"
	"unicode/utf8"

	"firstboard/report"
)

// openFolder reads the known tables of a folder. Its sum runs over them in
// the order of their file names: name, NUL, length, NUL, bytes.
func openFolder(name, path string) (origin, error) {
	entries, err := os.ReadDir(path) // sorted by name
	if err != nil {
		return origin{}, fmt.Errorf("%s: cannot be read (%w); check that you may read it", name, cause(err))
	}
	o := newOrigin(name)
	sum := sha256.New()
	for _, e := range entries {
		if !regular(path, e) {
			o.odd(e.Name())
			continue
		}
		if err := o.addFile(e.Name(), path, sum); err != nil {
			return origin{}, err
		}
	}
	if len(o.tables) == 0 && !o.resembles() {
		return origin{}, fmt.Errorf("%s: no table of a record is in this folder; name its files as the tables are, such as areas.csv and slab-rh.csv", name)
	}
	o.sum = hex.EncodeToString(sum.Sum(nil))
	return o, nil
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

func (o *origin) addFile(file, folder string, sum hash.Hash) error {
	table := tableOfFile(file)
	if table == "" {
		o.notRead = append(o.notRead, file)
		o.others = append(o.others, other{name: file, first: firstLine(filepath.Join(folder, file))})
		return nil
	}
	if was := o.tables[table]; was != nil {
		return fmt.Errorf("%s: %s and %s are both the table %s; keep one of them", o.name, was.file, file, table)
	}
	data, err := load(file, filepath.Join(folder, file))
	if err != nil {
		return err
	}
	fmt.Fprintf(sum, "%s\x00%d\x00", file, len(data))
	sum.Write(data)
	src := o.source(table, file, "")
	o.tables[table] = src
	return src.readCSV(data)
}

// odd notes what is no regular file and has a table's name, or nearly.
func (o *origin) odd(name string) {
	if isCSV(name) && !strings.HasPrefix(name, ".") {
		o.others = append(o.others, other{name: name, odd: true})
	}
}

// firstLine are the names in the first line of a file that holds a table as
// text, or nothing.
func firstLine(path string) []string {
	if !isText(path) {
		return nil
	}
	f, err := os.Open(path)
	if err != nil {
		return nil
	}
	defer f.Close()
	data := make([]byte, 4096)
	n, _ := io.ReadFull(f, data)
	data = bytes.TrimPrefix(data[:n], []byte(byteOrderMark))
	r := csv.NewReader(bytes.NewReader(data))
	r.Comma, r.FieldsPerRecord, r.LazyQuotes = separator(data), -1, true
	fields, _ := r.Read()
	return fields
}

// tableOfFile is the table a file name stands for, or empty.
func tableOfFile(file string) string {
	for _, s := range schemas() {
		if strings.EqualFold(file, fileOf(s.title())) {
			return s.title()
		}
	}
	return ""
}

// fileOf is the file name of a table: slab-rh.csv.
func fileOf(table string) string {
	return strings.ToLower(strings.ReplaceAll(table, " ", "-")) + ".csv"
}

// byteOrderMark may begin a text in UTF-8 and is no part of it.
const byteOrderMark = "\ufeff"

// readCSV fills a table from its CSV file. Its header is its first line that
// is not blank; its rows are numbered by their lines.
func (s *source) readCSV(data []byte) error {
	data = bytes.TrimPrefix(data, []byte(byteOrderMark))
	if !utf8.Valid(data) || bytes.IndexByte(data, 0) >= 0 {
		return fmt.Errorf("%s: is not UTF-8 text; save it as CSV UTF-8", s.file)
	}
	r := csv.NewReader(bytes.NewReader(data))
	r.Comma = separator(data)
	r.FieldsPerRecord = -1
	r.ReuseRecord = true
	s.comma = r.Comma == ';'
	for first := true; ; first = false {
		fields, err := r.Read()
		if err == io.EOF {
			return nil
		}
		if err != nil {
			return broken(s.file, err)
		}
		line, _ := r.FieldPos(0)
		if err := s.line(first, line, fields); err != nil {
			return err
		}
	}
}

func (s *source) line(header bool, number int, fields []string) error {
	for i, f := range fields {
		var err error
		if header {
			err = s.head(number, i, f)
		} else {
			err = s.put(number, i, report.Cell{Kind: report.TextCell, Text: f})
		}
		if strings.ContainsAny(f, "\r\n") {
			s.broken = append(s.broken, stray{number, i, f})
		}
		if err != nil {
			return fmt.Errorf("%s: %w", s.file, err)
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
	return fmt.Errorf("%s row %d: a quote is out of place (%w); put an entry that holds a quote in quotes and double the quotes inside it", file, at.StartLine, at.Err)
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
