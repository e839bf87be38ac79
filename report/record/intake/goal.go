package intake

import (
	"crypto/sha256"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/lists"
	"firstboard/report/record"
	"firstboard/report/record/sheet"
)

// goal is the record's table that the rows go into.
type goal struct {
	table grid.Table
	at    []int           // the column of each of the schema's heads, or -1
	units []evidence.Unit // of those columns
	spare []grid.Cell
}

// goalOf is the record's own table with the columns that it lacks behind its
// own. Where it has no rows, its columns take over the units of the file.
func goalOf(rec record.Record, title string, b matcher) goal {
	g := goal{
		table: grid.Named(rec.Tables, title), at: slices.Repeat([]int{-1}, len(b.heads)),
		units: make([]evidence.Unit, len(b.heads)),
	}
	g.table.Header, g.table.Rows = slices.Clone(g.table.Header), slices.Clone(g.table.Rows)
	for i, header := range g.table.Header {
		if head, unit := record.ColumnOf(title, header); head >= 0 {
			g.at[head], g.units[head] = i, unit
		}
	}
	for head, c := range b.heads {
		tied := slices.IndexFunc(b.ties, func(t tie) bool { return t.head == head })
		switch {
		case tied >= 0:
			g.place(head, c, b.ties[tied].unit)
		case c.Star && g.at[head] < 0 && len(c.Units) > 0:
			g.place(head, c, c.Units[0])
		case c.Star && g.at[head] < 0:
			g.place(head, c, evidence.None)
		}
	}
	for i := range g.table.Rows {
		row := &g.table.Rows[i]
		row.Cells = slices.Concat(row.Cells, make([]grid.Cell, len(g.table.Header)-len(row.Cells)))
	}
	return g
}

// place gives a head its column, in this unit where no rows decide it.
func (g *goal) place(head int, c record.Column, u evidence.Unit) {
	at := g.at[head]
	switch {
	case at < 0:
		g.at[head], g.units[head] = len(g.table.Header), u
		g.table.Header = append(g.table.Header, evidence.Heading(c.Name, u))
	case len(g.table.Rows) == 0 && g.units[head] != u:
		g.units[head], g.table.Header[at] = u, evidence.Heading(c.Name, u)
	}
}

// cells is room for a row of the table.
func (g *goal) cells() []grid.Cell {
	n := len(g.table.Header)
	if len(g.spare) < n {
		g.spare = make([]grid.Cell, n*batchRows)
	}
	row := g.spare[:n:n]
	g.spare = g.spare[n:]
	return row
}

// convert takes a number to the unit of its column in the table, and says
// whether it had to be rounded: to 6 places, where it does not end.
func (g *goal) convert(c *grid.Cell, t tie) (rounded bool) {
	to := g.units[t.head]
	if c.Kind != grid.NumberCell || t.unit == to {
		return false
	}
	const most = 6
	x := evidence.Convert(evidence.Of(decimal.RequireFromString(c.Text)), t.unit, to)
	short := x.Round(most)
	c.Text = short.Text()
	c.Places = uint8(record.Decimals(c.Text))
	return short.Cmp(x) != 0
}

// seen is what the table's rows say, to find rows that come again.
type seen struct {
	rows, things map[[16]byte]struct{}
	whole        []int // columns that make a row the same
	thing        []int // columns that make it of the same thing and time
	buffer       []byte
}

func newSeen(g goal, b matcher) seen {
	s := seen{rows: map[[16]byte]struct{}{}, things: map[[16]byte]struct{}{}}
	for head, c := range b.heads {
		at := g.at[head]
		isThing := c.Key || slices.Contains([]string{"Area", "Read at", "Instrument", "Lot"}, c.Name)
		if at >= 0 && isThing {
			s.thing = append(s.thing, at)
		}
		if at >= 0 && (isThing || b.tied(c.Name)) {
			s.whole = append(s.whole, at)
		}
	}
	for _, row := range g.table.Rows {
		s.add(row.Cells)
	}
	return s
}

// add notes a row, and says whether it is one that came before, or one of the
// same thing and time with other readings.
func (s *seen) add(cells []grid.Cell) (repeats, doubles bool) {
	row, thing := s.sum(cells, s.whole), s.sum(cells, s.thing)
	_, repeats = s.rows[row]
	_, doubles = s.things[thing]
	s.rows[row], s.things[thing] = struct{}{}, struct{}{}
	return repeats, doubles && !repeats
}

// sum is a digest of some of a row's cells, as they are compared.
func (s *seen) sum(cells []grid.Cell, of []int) [16]byte {
	s.buffer = s.buffer[:0]
	for _, at := range of {
		c := cells[at]
		switch c.Kind {
		case grid.NumberCell:
			s.buffer = append(s.buffer, leanNumber(c.Text)...)
		case grid.TextCell:
			s.buffer = append(s.buffer, evidence.Key(c.Text)...)
		default:
			s.buffer = append(s.buffer, c.Text...)
		}
		s.buffer = append(s.buffer, 0)
	}
	whole := sha256.Sum256(s.buffer)
	return [16]byte(whole[:])
}

// leanNumber is a plain decimal without the zeros that say nothing.
func leanNumber(s string) string {
	s, minus := strings.CutPrefix(sheet.WithoutZeros(s), "-")
	if s = strings.TrimLeft(s, "0"); s == "" || s[0] == '.' {
		s = "0" + s
	}
	return lists.If(minus && s != "0", "-", "") + s
}
