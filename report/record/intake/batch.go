package intake

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/record/faults"
	"firstboard/report/record/sheet"
)

// settleBatch decodes the batch, keeps its sound rows and lists the others.
func (x *arrival) settleBatch() error {
	for _, f := range x.settler.Settle(x.batch) {
		x.faults = append(x.faults, faults.Fault{Place: f.Place, Column: x.fileColumn(f), Text: f.Text})
	}
	slices.SortStableFunc(x.faults, func(a, b faults.Fault) int {
		return cmp.Or(int(a.Place.Number-b.Place.Number), int(a.Place.Column-b.Place.Column))
	})
	unsound := map[int]bool{}
	for _, f := range x.faults {
		if line := int(f.Place.Number); !unsound[line] {
			unsound[line] = true
			x.unread(f)
		}
	}
	for _, row := range x.batch.Rows {
		if unsound[row.Number] {
			continue
		}
		if err := x.keep(row); err != nil {
			return fmt.Errorf("%s: with these rows the record %w", x.name, err)
		}
	}
	x.batch.Rows, x.faults = x.batch.Rows[:0], x.faults[:0]
	return nil
}

// fileColumn is the file's name of the column that a fault of the decoder
// lies in; where the file has none, the flag that told it, or the record's name.
func (x *arrival) fileColumn(f faults.Fault) string {
	i := int(f.Place.Column) - 1
	switch {
	case i >= len(x.ties):
		return f.Column
	case x.ties[i].at >= 0:
		return x.names[x.ties[i].at]
	case x.ties[i].same != "":
		return x.ties[i].flag()
	}
	return f.Column
}

// flag is what told an entry that all rows share.
func (t tie) flag() string {
	if t.Name == "Area" || t.Name == "Instrument" {
		return "--" + strings.ToLower(t.Name)
	}
	return "--fill " + strings.ToLower(t.Name)
}

func (x *arrival) unread(f faults.Fault) {
	if x.out.Unread++; x.out.Unread > mostUnread {
		return
	}
	at := fmt.Sprintf("%s line %d", x.name, f.Place.Number)
	switch {
	case slices.ContainsFunc(x.ties, func(t tie) bool { return f.Column == t.flag() }): // the same in every row
		at = f.Column
	case f.Column != "":
		at += " column " + evidence.Quote(f.Column)
	}
	if line := at + ": " + f.Text; at != f.Column || !slices.Contains(x.out.Faults, line) {
		x.out.Faults = append(x.out.Faults, line)
	}
}

// keep adds a row to the table, unless it stands there already.
func (x *arrival) keep(row grid.Row) error {
	cells := x.goal.cells()
	for i, t := range x.ties {
		c := row.Cells[i]
		if x.goal.convert(&c, t) {
			x.rounded++
		}
		cells[x.goal.at[t.head]] = c
	}
	repeats, doubles := x.seen.add(cells)
	if repeats {
		x.out.Repeated++
		return nil
	}
	if err := x.left.Take(len(cells)); err != nil {
		return err
	}
	if doubles {
		x.out.Doubled++
	}
	for i, at := range x.goal.at {
		if at >= 0 && x.heads[i].Star && cells[at].Kind == grid.BlankCell {
			x.blanks[i]++
		}
	}
	t := &x.out.Table
	last := t.Last()
	if last == sheet.MostRows {
		return sheet.TooBig("has more rows in one table than a spreadsheet can hold; split the record or thin its logger rows")
	}
	t.Rows = append(t.Rows, grid.Row{Number: last + 1, Cells: cells})
	x.out.Added++
	return nil
}
