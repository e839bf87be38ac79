package record

import (
	"fmt"
	"strings"

	"firstboard/report/evidence"
)

// exportLayout is where the rows of an export stand and what parts them.
type exportLayout struct {
	sep    byte
	header int      // the line of the header
	names  []string // of the columns
	units  []string // of a line of units below the header, or nil
	first  int      // the line of the first row
	sample [][]string
}

// The look of an export is taken from its first lines.
const (
	headLines   = 200
	sampleLines = 50
	sureLines   = 5 // rows below a header that settle it
)

// exportLine is one line of an export, parted.
type exportLine struct {
	number int
	cells  []string
}

// layout finds separator, header and first row.
func (t exportText) layout() (exportLayout, error) {
	var found []exportLayout
	for _, sep := range []byte(",;\t") {
		lines, err := t.head(sep)
		if err != nil {
			return exportLayout{}, err
		}
		if at, ok := headerOf(lines); ok {
			found = append(found, at.layout(sep, lines))
		}
	}
	switch len(found) {
	case 0:
		return exportLayout{}, fmt.Errorf("%s: no header was found in its first %d lines: a line of column names with rows below it that hold a time; "+
			"write the names of the columns into a line above the first row", t.name, headLines)
	case 1:
		return found[0], found[0].tooWide(t.name)
	}
	return exportLayout{}, fmt.Errorf("%s line %d: its columns may be parted by %s or by %s; export it with one of them alone, or with tabs",
		t.name, found[0].header, separatorName(found[0].sep), separatorName(found[1].sep))
}

// head is the first lines that are not blank, parted.
func (t exportText) head(sep byte) ([]exportLine, error) {
	from, err := t.lines()
	if err != nil {
		return nil, err
	}
	var lines []exportLine
	for len(lines) < headLines && from.next() {
		cells, ok := parted(from.text(), sep, nil)
		if ok && strings.Join(cells, "") != "" {
			lines = append(lines, exportLine{from.number, cells})
		}
	}
	return lines, from.err()
}

// headerAt is the place of a header among lines, and of its first row.
type headerAt struct{ header, first int }

// headerOf finds the line of names with the most rows right below it, up to
// as many as settle it; the first of equals.
func headerOf(lines []exportLine) (headerAt, bool) {
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

func (at headerAt) layout(sep byte, lines []exportLine) exportLayout {
	l := exportLayout{sep: sep, header: lines[at.header].number, names: lines[at.header].cells, first: lines[at.first].number}
	for l.names[len(l.names)-1] == "" {
		l.names = l.names[:len(l.names)-1]
	}
	if at.first > at.header+1 {
		l.units = lines[at.header+1].cells
	}
	for _, row := range lines[at.first:min(at.first+sampleLines, len(lines))] {
		l.sample = append(l.sample, row.cells)
	}
	return l
}

// isHeader says whether a line may name columns: words in two cells or more,
// and no time.
func (l exportLine) isHeader() bool {
	named := 0
	for _, c := range l.cells {
		if _, isTime := parseStamp(c); isTime {
			return false
		}
		if c != "" && !plain(c) {
			named++
		}
	}
	return named > 1
}

// isRow says whether a line may be a row of readings: a day and something
// else.
func (l exportLine) isRow() bool {
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
func (l exportLine) isUnits() bool {
	for _, c := range l.cells {
		if c != "" && unitWord(c) == "" {
			return false
		}
	}
	return true
}

// tooWide refuses rows that have more cells than the header has names: a comma
// that parts cells cannot be told from one that stands for the point.
func (l exportLayout) tooWide(file string) error {
	wide := 0
	for _, row := range l.sample {
		if l.beyond(row) > 0 {
			wide++
		}
	}
	switch {
	case 2*wide <= len(l.sample):
		return nil
	case l.sep == ',':
		return fmt.Errorf("%s line %d: the rows have more cells than the header has names, so a decimal comma may not be told from a comma between cells; "+
			"export with semicolons or tabs, with a decimal point, or name every column", file, l.header)
	}
	return fmt.Errorf("%s line %d: the rows have more cells than the header has names; name every column", file, l.header)
}

// beyond is the number of a row's first cell, from 1, that stands beyond the
// last name, or zero.
func (l exportLayout) beyond(row []string) int {
	for i := len(l.names); i < len(row); i++ {
		if row[i] != "" {
			return i + 1
		}
	}
	return 0
}

func separatorName(sep byte) string {
	switch sep {
	case ';':
		return "semicolons"
	case '\t':
		return "tabs"
	}
	return "commas"
}

// unitWord is the unit that a word of an export stands for, folded, or empty:
// °C, degF, celsius, %RH, mm.
func unitWord(word string) string {
	w := strings.Trim(folded(word), "()[]")
	if rest, ok := strings.CutPrefix(w, "deg"); ok {
		w = strings.TrimPrefix(rest, "rees")
		w = strings.TrimPrefix(w, "ree")
	}
	switch w {
	case "fahrenheit":
		return "f"
	case "celsius", "centigrade":
		return "c"
	case "%rh", "rh%", "percent", "pct", "%mc":
		return "%"
	}
	for _, u := range []evidence.Unit{
		evidence.Fahrenheit, evidence.Celsius, evidence.Percent, evidence.Inch, evidence.Foot,
		evidence.Millimeter, evidence.Centimeter, evidence.Meter,
	} {
		if w == folded(string(u)) {
			return w
		}
	}
	return ""
}
