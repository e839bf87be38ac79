package report

import (
	"fmt"
	"slices"
	"strings"
)

// grid is a table as its seal knows it.
type grid struct {
	name  string
	names []string // of its columns
	rows  []gridRow
}

type gridRow struct {
	number int
	cells  []string // as the names
}

func (t Table) grid() grid {
	names, at := t.columns()
	g := grid{name: t.Name, names: names}
	for _, r := range t.Rows {
		g.rows = append(g.rows, gridRow{r.Number, r.fields(make([]string, 0, len(at)), at)})
	}
	return g
}

// differences are what was changed in the tables, in words: cells first by
// table, row and column. Sign-offs are left aside.
func differences(was, now []Table) []string {
	var all []string
	for _, old := range was {
		if !old.sealed() {
			continue
		}
		all = append(all, old.grid().differences(named(now, old.Name).grid())...)
	}
	for _, t := range now {
		if t.sealed() && len(named(was, t.Name).Rows) == 0 {
			all = append(all, fmt.Sprintf("%s: the table was added, with %d rows", t.Name, len(t.Rows)))
		}
	}
	return all
}

// named is the table of a name, without rows where there is none.
func named(tables []Table, name string) Table {
	if at := slices.IndexFunc(tables, func(t Table) bool { return t.Name == name }); at >= 0 {
		return tables[at]
	}
	return Table{Name: name}
}

func (g grid) differences(now grid) []string {
	if len(now.rows) == 0 {
		return []string{fmt.Sprintf("%s: the table is gone, with %d rows", g.name, len(g.rows))}
	}
	var all []string
	for _, name := range g.names {
		if !slices.Contains(now.names, name) {
			all = append(all, fmt.Sprintf("%s: the column %q is gone", g.name, name))
		}
	}
	for _, name := range now.names {
		if !slices.Contains(g.names, name) {
			all = append(all, fmt.Sprintf("%s: the column %q was added", g.name, name))
		}
	}
	if len(all) == 0 && !slices.Equal(g.names, now.names) {
		all = append(all, g.name+": its columns stand in another order")
	}
	kept := slices.DeleteFunc(slices.Clone(g.names), func(name string) bool { return !slices.Contains(now.names, name) })
	return append(all, g.under(kept).rowDifferences(now.under(kept))...)
}

// under is the grid with the columns of these names alone, in their order.
func (g grid) under(names []string) grid {
	at := make([]int, len(names))
	for i, name := range names {
		at[i] = slices.Index(g.names, name)
	}
	part := grid{name: g.name, names: names}
	for _, r := range g.rows {
		cells := make([]string, len(names))
		for i, from := range at {
			cells[i] = r.cells[from]
		}
		part.rows = append(part.rows, gridRow{r.number, cells})
	}
	return part
}

// rowDifferences leaves aside the rows above and below a change. Where rows
// were put in or taken out between them, those below have moved and are the
// same still.
func (g grid) rowDifferences(now grid) []string {
	old, cur := g.rows, now.rows
	for len(old) > 0 && len(cur) > 0 && slices.Equal(old[0].cells, cur[0].cells) && old[0].number == cur[0].number {
		old, cur = old[1:], cur[1:]
	}
	for len(old) > 0 && len(cur) > 0 && slices.Equal(old[len(old)-1].cells, cur[len(cur)-1].cells) {
		old, cur = old[:len(old)-1], cur[:len(cur)-1]
	}
	if len(old)+len(cur) == 0 {
		return g.moved(now)
	}
	return g.paired(old, cur)
}

// moved tells of rows that are the same but stand under other numbers.
func (g grid) moved(now grid) []string {
	for i, r := range g.rows {
		if to := now.rows[i].number; to != r.number {
			return []string{fmt.Sprintf("%s row %d: stands in row %d now, and rows below it may have moved too", g.name, r.number, to)}
		}
	}
	return nil
}

// paired holds rows of one number against each other.
func (g grid) paired(old, cur []gridRow) []string {
	var all []string
	for len(old) > 0 || len(cur) > 0 {
		switch {
		case len(cur) == 0, len(old) > 0 && old[0].number < cur[0].number:
			all = append(all, fmt.Sprintf("%s row %d: is gone: %s", g.name, old[0].number, old[0]))
			old = old[1:]
		case len(old) == 0, cur[0].number < old[0].number:
			all = append(all, fmt.Sprintf("%s row %d: was added: %s", g.name, cur[0].number, cur[0]))
			cur = cur[1:]
		default:
			all = append(all, g.cellDifferences(old[0], cur[0])...)
			old, cur = old[1:], cur[1:]
		}
	}
	return all
}

func (g grid) cellDifferences(old, cur gridRow) []string {
	var all []string
	for i, name := range g.names {
		if was, now := old.cells[i], cur.cells[i]; was != now {
			all = append(all, fmt.Sprintf("%s row %d %q: from %s to %s", g.name, old.number, name, shortly(was), shortly(now)))
		}
	}
	return all
}

// String is what a row holds in words.
func (r gridRow) String() string {
	return shortly(strings.Join(slices.DeleteFunc(slices.Clone(r.cells), func(s string) bool { return s == "" }), ", "))
}

// shortly is an entry on one line and not too long of it.
func shortly(s string) string {
	const longest = 70
	if s = tidied(s); s == "" {
		return "nothing"
	}
	if r := []rune(s); len(r) > longest {
		return string(r[:longest]) + "..."
	}
	return s
}
