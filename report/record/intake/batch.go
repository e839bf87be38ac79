package intake

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/lists"
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

// say puts into words how the file was read and what is left to do.
func (x *arrival) say() {
	x.guess("text: %s", x.says)
	x.guess("separator: %s", separatorName(x.sep))
	x.guess("header: line %d", x.header)
	for _, t := range x.ties {
		if t.at >= 0 {
			x.guess("%s: %s", t.Name, x.sayTie(t))
		}
	}
	if x.look.comma.line > 0 {
		x.guess("numbers: decimal comma, as in %s", x.look.comma)
	}
	if unused := x.where(func(at int, _ string) bool { return !x.taken(at) }); len(unused) > 0 {
		quoted := lists.Each(unused, func(at int) string { return evidence.Quote(x.names[at]) })
		x.guess("not used: %s", strings.Join(quoted, ", "))
	}
	x.sayConverted()
	x.sayToFill()
}

func (x *arrival) guess(format string, args ...any) {
	x.out.Guesses = append(x.out.Guesses, fmt.Sprintf(format, args...))
}

func (x *arrival) sayTie(t tie) string {
	if isTime(t.Column) {
		return x.sayTime(t)
	}
	return "column " + evidence.Quote(x.names[t.at]) +
		lists.If(len(t.Units) > 0, fmt.Sprintf(", in %s (%s)", t.unit.Short(), t.how), "")
}

// sayTime is how a column of times is read.
func (x *arrival) sayTime(t tie) string {
	says := "column " + evidence.Quote(x.names[t.at])
	if t.clock >= 0 {
		says = "columns " + evidence.Quote(x.names[t.at]) + " and " + evidence.Quote(x.names[t.clock])
	}
	k := x.look
	says += lists.If(k.style.counted, ", counted from 1970 in UTC", ", dates "+x.order.String())
	says += lists.If(k.style.half, ", with AM and PM", "")
	zoned := t.zone != nil || k.style.zoned || k.style.counted
	return says + lists.If(zoned, ", brought to "+x.job.ZoneName, "") + ", such as " + k.telling().String()
}

// sayConverted tells what is not as it was written.
func (x *arrival) sayConverted() {
	for _, t := range x.ties {
		if to := x.goal.units[t.head]; t.unit != to {
			x.guess("converted: %s from %s to %s, the unit of the record's table", t.Name, t.unit.Short(), to.Short())
		}
	}
	if x.rounded > 0 {
		x.guess("rounded: %s, to 6 places, where the converted number does not end",
			evidence.Count(x.rounded, "number", "numbers"))
	}
	if x.cut > 0 {
		x.guess("left out: parts of a second in %s", evidence.Count(x.cut, "time", "times"))
	}
}

// sayToFill tells which starred cells are blank.
func (x *arrival) sayToFill() {
	for i, n := range x.blanks {
		switch {
		case n == 0:
		case n == x.out.Added:
			x.out.ToFill = append(x.out.ToFill, x.goal.table.Header[x.goal.at[i]])
		default:
			x.out.ToFill = append(x.out.ToFill,
				fmt.Sprintf("%s in %s", x.goal.table.Header[x.goal.at[i]], evidence.Count(n, "row", "rows")))
		}
	}
}
