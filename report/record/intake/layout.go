package intake

import (
	"fmt"
	"slices"
	"strings"

	"firstboard/report/evidence"
	"firstboard/report/lists"
)

// layout is where the rows of an export stand and what parts them.
type layout struct {
	sep    byte
	header int      // the line of the header
	names  []string // of the columns
	units  []string // of a line of units below the header, or nil
	first  int      // the line of the first row
	sample [][]string
	short  bool // the header lacks names, and columns have numbers alone
}

// The look of an export is taken from its first lines.
const (
	headLines   = 200
	sampleLines = 50
	sureLines   = 5 // rows below a header that settle it
)

// headLine is one line of an export, parted.
type headLine struct {
	number int
	cells  []string
}

// layout finds separator, header and first row.
func (t export) layout() (layout, error) {
	var found []layout
	for _, sep := range []byte(",;\t") {
		lines, err := t.head(sep)
		if err != nil {
			return layout{}, err
		}
		if at, ok := headerOf(lines); ok {
			found = append(found, at.layout(sep, lines))
		}
	}
	switch len(found) {
	case 0:
		return layout{}, fmt.Errorf("%s: no header was found in its first %d lines: a line of column names with rows below it that hold a time; "+
			"write the names of the columns into a line above the first row", t.name, headLines)
	case 1:
		return found[0], nil
	}
	return layout{}, fmt.Errorf("%s line %d: its columns may be parted by %s or by %s; export it with one of them alone, or with tabs",
		t.name, found[0].header, separatorName(found[0].sep), separatorName(found[1].sep))
}

// head is the first lines that are not blank, parted.
func (t export) head(sep byte) ([]headLine, error) {
	from := t.lines()
	var lines []headLine
	for len(lines) < headLines && from.next() {
		cells, ok := parted(from.Text(), sep, nil)
		if ok && strings.Join(cells, "") != "" {
			lines = append(lines, headLine{from.number, cells})
		}
	}
	return lines, from.err()
}

// headerAt is the place of a header among lines, and of its first row.
type headerAt struct{ header, first int }

// headerOf finds the line of names with the most rows right below it, up to
// as many as settle it; the first of equals.
func headerOf(lines []headLine) (headerAt, bool) {
	var best headerAt
	most := 0
	for i, l := range lines {
		if !l.isHeader() {
			continue
		}
		first := i + 1
		if first < len(lines) && lines[first].isUnits() {
			first++
		}
		n := 0
		for first+n < len(lines) && n < sureLines && lines[first+n].isRow() {
			n++
		}
		if n > most {
			best, most = headerAt{i, first}, n
		}
	}
	return best, most > 0
}

func (at headerAt) layout(sep byte, lines []headLine) layout {
	// A line with a quote out of place is none of these lines, and is a row that cannot be read.
	l := layout{
		sep: sep, header: lines[at.header].number, names: lines[at.header].cells,
		first: lines[at.first-1].number + 1,
	}
	for l.names[len(l.names)-1] == "" {
		l.names = l.names[:len(l.names)-1]
	}
	if at.first > at.header+1 {
		l.units = lines[at.header+1].cells
	}
	sample := lines[at.first:min(at.first+sampleLines, len(lines))]
	l.sample = lists.Each(sample, func(row headLine) []string { return row.cells })
	return l
}

// isHeader says whether a line may name columns: words in two cells or more,
// and no time.
func (l headLine) isHeader() bool {
	named := 0
	for _, c := range l.cells {
		if _, isTime := parseStamp(c); isTime {
			return false
		}
		if c != "" && !evidence.Plain(c) {
			named++
		}
	}
	return named > 1
}

// isRow says whether a line may be a row of readings: a day and something
// else.
func (l headLine) isRow() bool {
	days, others := 0, 0
	for _, c := range l.cells {
		if st, ok := parseStamp(c); ok && st.dated {
			days++
		} else if c != "" {
			others++
		}
	}
	return days > 0 && others > 0
}

// isUnits says whether a line holds units and nothing else.
func (l headLine) isUnits() bool {
	return !slices.ContainsFunc(l.cells, func(c string) bool { return c != "" && !isUnit(c) })
}

// widened is the layout of rows that have more cells than the header has names.
// Which names belong to which cells is not known then, nor whether a comma
// parts cells or stands for the point; so the columns must be told by number.
func (l layout) widened(file, told string) (layout, error) {
	if err := l.tooWide(file); err == nil || !byNumber(told) {
		return l, err
	}
	width := len(l.names)
	for _, row := range l.sample {
		width = max(width, len(row))
	}
	l.names, l.units, l.short = nil, nil, true
	for i := range width {
		l.names = append(l.names, fmt.Sprintf("#%d", i+1))
	}
	return l, nil
}

// byNumber says whether columns are told, each by its number.
func byNumber(told string) bool {
	all, err := pairs("--column", told)
	return err == nil && len(all) > 0 &&
		!slices.ContainsFunc(all, func(p pair) bool { return !strings.HasPrefix(p.told, "#") })
}

// tooWide refuses rows that have more cells than the header has names.
func (l layout) tooWide(file string) error {
	wide := lists.Where(l.sample, func(row []string) bool { return l.beyond(row) > 0 })
	switch {
	case 2*len(wide) <= len(l.sample):
		return nil
	case l.sep == ',':
		return fmt.Errorf("%s line %d: the rows have more cells than the header has names, so a decimal comma may not be told from a comma between cells; "+
			"export with semicolons or tabs, with a decimal point, or tell every column by its number, such as --column \"time=#2\" --column \"temp=#3 (F)\"", file, l.header)
	}
	return fmt.Errorf("%s line %d: the rows have more cells than the header has names; tell every column by its number, such as --column \"time=#2\" --column \"temp=#3 (F)\"", file, l.header)
}

// beyond is the number of a row's first cell, from 1, that stands beyond the
// last name, or zero.
func (l layout) beyond(row []string) int {
	for i := len(l.names); i < len(row); i++ {
		if row[i] != "" {
			return i + 1
		}
	}
	return 0
}

func separatorName(sep byte) string {
	return map[byte]string{',': "commas", ';': "semicolons", '\t': "tabs"}[sep]
}

// isUnit says whether a cell holds a unit and nothing else.
func isUnit(cell string) bool {
	_, ok := evidence.UnitMeant(cell, []evidence.Unit{
		evidence.Fahrenheit, evidence.Celsius, evidence.Percent, evidence.Inch, evidence.Foot,
		evidence.Millimeter, evidence.Centimeter, evidence.Meter,
	})
	return ok
}
