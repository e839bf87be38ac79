package seal

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"firstboard/report/lists"
)

// Change is one thing that differs between a workbook and what firstboard would
// write in its place: where, from what, to what.
type Change struct {
	Sheet, At string
	From, To  string
	Beside    bool // it is no cell and no whole sheet: what is hidden, drawn or written around them
}

// String is the change in words.
func (c Change) String() string {
	where := c.Sheet + lists.If(c.At != "", "!"+c.At, "")
	from, to := c.From, c.To
	if c.Beside {
		from, to = begun(from), begun(to)
	}
	switch {
	case c.From == "":
		return where + ": was added: " + to
	case c.To == "":
		return where + ": is gone: " + from
	}
	return where + ": from " + from + " to " + to
}

// begun is a text, or the beginning of a long one: a chart says all that it shows.
func begun(s string) string {
	const most = 160
	if letters := []rune(s); len(letters) > most {
		return string(letters[:most]) + " ..."
	}
	return s
}

// Differences are what differs from one workbook to another, sheet by sheet in
// the order of the first, and in the order of their sheets. Stored results of formulas are compared where asked.
// Sheets that only the second has are told apart.
func Differences(was, now Content, results bool) (changes []Change, strange []string) {
	byName := map[string]Sheet{}
	for _, s := range now.Sheets {
		byName[s.Name] = s
	}
	for _, s := range was.Sheets {
		other, there := byName[s.Name]
		delete(byName, s.Name)
		if !there {
			changes = append(changes, Change{Sheet: s.Name, From: "the sheet"})
			continue
		}
		changes = slices.Concat(changes, s.cells(other, results), s.around(other))
	}
	for _, s := range now.Sheets {
		if _, ours := byName[s.Name]; ours {
			strange = append(strange, s.Name)
		}
	}
	if c, moved := order(was, now); moved {
		changes = append(changes, c)
	}
	return append(changes, names(was, now)...), strange
}

// order tells whether the sheets that both have stand in another order.
func order(was, now Content) (Change, bool) {
	named := func(c Content) []string { return lists.Each(c.Sheets, func(s Sheet) string { return s.Name }) }
	shared := func(a, b []string) []string {
		return lists.Where(a, func(name string) bool { return slices.Contains(b, name) })
	}
	a, b := shared(named(was), named(now)), shared(named(now), named(was))
	c := Change{Sheet: "the order of sheets", From: strings.Join(a, ", "), To: strings.Join(b, ", ")}
	return c, !slices.Equal(a, b)
}

func names(was, now Content) []Change {
	var changes []Change
	for _, name := range slices.Sorted(maps.Keys(was.Names)) {
		if was.Names[name] != now.Names[name] {
			changes = append(changes, Change{Sheet: "the name " + name, From: was.Names[name], To: now.Names[name]})
		}
	}
	for _, name := range slices.Sorted(maps.Keys(now.Names)) {
		if _, known := was.Names[name]; !known {
			changes = append(changes, Change{Sheet: "the name " + name, To: now.Names[name]})
		}
	}
	return changes
}

// around is what differs between two sheets beside their cells.
func (s Sheet) around(now Sheet) []Change {
	var changes []Change
	if s.State != now.State {
		changes = append(changes, Change{Sheet: s.Name, From: s.State, To: now.State})
	}
	for _, part := range []struct {
		what     string
		was, now []string
	}{
		{"hidden row", s.Rows, now.Rows},
		{"hidden column", s.Columns, now.Columns},
		{"merged cells", s.Merges, now.Merges},
		{"", s.Marks, now.Marks},
		{"", s.Margins, now.Margins},
		{"", s.Drawn, now.Drawn},
	} {
		changes = append(changes, unpaired(s.Name, part.what, part.was, part.now)...)
	}
	for i := range changes {
		changes[i].Beside = true
	}
	return changes
}

// unpaired tells what only one of two lists has, each thing as often as it stands
// there.
func unpaired(sheet, what string, was, now []string) []Change {
	count := map[string]int{}
	for _, x := range was {
		count[x]++
	}
	for _, x := range now {
		count[x]--
	}
	var changes []Change
	for _, x := range slices.Sorted(maps.Keys(count)) {
		says := strings.TrimSpace(what + " " + x)
		switch n := count[x]; {
		case n > 0:
			changes = append(changes, Change{Sheet: sheet, From: says})
		case n < 0:
			changes = append(changes, Change{Sheet: sheet, To: says})
		}
	}
	return changes
}

// cells are the differences between the cells of two sheets, row by row.
func (s Sheet) cells(now Sheet, results bool) []Change {
	var changes []Change
	for was, is := s.Cells, now.Cells; len(was)+len(is) > 0; {
		var at Address
		if len(is) == 0 || len(was) > 0 && byPlace(was[0].At, is[0].At) <= 0 {
			at = was[0].At
		} else {
			at = is[0].At
		}
		var a, b Cell
		a, was = taken(was, at)
		b, is = taken(is, at)
		if c, differs := a.difference(b, results); differs {
			c.Sheet, c.At = s.Name, at.String()
			changes = append(changes, c)
		}
	}
	return changes
}

// taken is the first of the cells and those behind it, or nothing and all of them
// where it does not stand at an address.
func taken(cells []Cell, at Address) (Cell, []Cell) {
	if len(cells) == 0 || cells[0].At != at {
		return Cell{}, cells
	}
	return cells[0], cells[1:]
}

func (c Cell) difference(now Cell, results bool) (Change, bool) {
	switch {
	case c.Formula != now.Formula:
		return Change{From: c.quoted(), To: now.quoted()}, true
	case (results || c.Formula == "") && !c.same(now):
		c.Formula, now.Formula = "", ""
		return Change{From: c.quoted(), To: now.quoted()}, true
	case c.Format != now.Format:
		return Change{From: quote(c.Format), To: quote(now.Format)}, true
	}
	return Change{}, false
}

func quote(format string) string {
	return "shown as " + lists.If(format == "", "it is", strconv.Quote(format))
}

// quoted is what a cell holds, a text in quotes, a number as people write it.
func (c Cell) quoted() string {
	switch x, err := strconv.ParseFloat(c.Value, 64); {
	case c.Kind == "s" && c.Formula == "" && c.Value != "":
		return strconv.Quote(c.Value)
	case c.Kind == "n" && c.Formula == "" && err == nil && strings.Contains(c.Format, "yy"):
		return moment(x)
	case c.Kind == "n" && c.Formula == "" && err == nil:
		return strconv.FormatFloat(x, 'g', figuresKept, 64)
	}
	return c.says()
}

// figuresKept are the figures of a number that every program keeps.
const figuresKept = 15

// moment is the day and the time of day that a number of days since 1899-12-30 stands for.
func moment(days float64) string {
	at := time.Date(1899, 12, 30, 0, 0, 0, 0, time.UTC).Add(time.Duration(math.Round(days*24*60*60)) * time.Second)
	return strings.TrimSuffix(strings.TrimSuffix(at.Format(time.DateTime), ":00"), " 00:00")
}

func (c Cell) says() string {
	return lists.If(c.Formula == "", c.Value, "="+c.Formula)
}

// same says whether two cells hold the same: numbers to the 12 figures that
// every program keeps.
func (c Cell) same(now Cell) bool {
	if c.Kind != now.Kind || c.Value == now.Value {
		return c.Kind == now.Kind
	}
	a, err := strconv.ParseFloat(c.Value, 64)
	b, err2 := strconv.ParseFloat(now.Value, 64)
	return c.Kind == "n" && err == nil && err2 == nil && math.Abs(a-b) <= 1e-12*math.Max(math.Abs(a), math.Abs(b))
}

// Stored says whether the file stores the results of its formulas; a program
// that writes formulas alone leaves them out.
func (c Content) Stored() bool {
	formulas, stored := 0, 0
	for _, s := range c.Sheets {
		for _, cell := range s.Cells {
			if cell.Formula != "" {
				formulas++
				stored += lists.If(cell.Kind != "", 1, 0)
			}
		}
	}
	return formulas == 0 || stored*2 > formulas
}

// filled are the cells with what another workbook stores, where a formula has
// nothing stored.
func (c Content) filled(from Content) Content {
	full := c
	full.Sheets = slices.Clone(c.Sheets)
	for i, s := range full.Sheets {
		other, _ := from.sheet(s.Name)
		cells := slices.Clone(s.Cells)
		for k, cell := range cells {
			if cell.Formula != "" && cell.Kind == "" {
				stored := other.cell(cell.At)
				cells[k].Kind, cells[k].Value = stored.Kind, stored.Value
			}
		}
		full.Sheets[i].Cells = cells
	}
	return full
}

func (c Content) sheet(name string) (Sheet, bool) {
	return lists.First(c.Sheets, func(s Sheet) bool { return s.Name == name })
}

// Tell is a list of changes in words, the first of many.
func Tell(changes []Change, most int) []string {
	lines := lists.Each(changes[:min(len(changes), most)], Change.String)
	if n := len(changes) - most; n > 0 {
		lines = append(lines, fmt.Sprintf("and %d more", n))
	}
	return lines
}
