package intake

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"firstboard/report/evidence"
	"firstboard/report/lists"
	"firstboard/report/record"
	"firstboard/report/record/alike"
)

// matcher settles where an export holds each column of a table.
type matcher struct {
	layout
	file  string
	heads []record.Column
	ties  []tie
}

// bind ties a table's columns to those of an export: first what was told, then
// the time, then what the names offer.
func (b *matcher) bind(in Intake) error {
	b.fixed("Area", in.Area)
	b.fixed("Instrument", in.Instrument)
	if err := cmp.Or(b.tell(in), b.fill(in)); err != nil {
		return err
	}
	if !b.tied("Read at") && !b.short {
		if err := b.guessTime(); err != nil {
			return err
		}
	}
	for i := range b.heads {
		if err := b.guess(i); err != nil {
			return err
		}
	}
	slices.SortFunc(b.ties, func(x, y tie) int { return cmp.Compare(x.head, y.head) })
	return b.lacking()
}

// fail is an error at a column of the file's header.
func (b *matcher) fail(at int, format string, args ...any) error {
	return fmt.Errorf("%s line %d column %s: %s", b.file, b.header, evidence.Quote(b.names[at]),
		fmt.Sprintf(format, args...))
}

func (b *matcher) tied(name string) bool {
	return slices.ContainsFunc(b.ties, func(t tie) bool { return t.Name == name })
}

// taken says whether a column of the file is in use.
func (b *matcher) taken(at int) bool {
	return slices.ContainsFunc(b.ties, func(t tie) bool { return t.at == at || t.clock == at })
}

func (b *matcher) fixed(name, value string) {
	at := slices.IndexFunc(b.heads, func(c record.Column) bool { return c.Name == name })
	if at >= 0 && value != "" {
		b.ties = append(b.ties, tie{Column: b.heads[at], head: at, at: -1, clock: -1, same: value})
	}
}

// keyed is the table's column that a key of --column or --fill means, and the
// text of a bracket behind it.
func (b *matcher) keyed(flag, key string) (head int, in string, err error) {
	base, in := unbracketed(key)
	short := alike.Joined(base)
	head = slices.IndexFunc(b.heads, func(c record.Column) bool {
		return short == alike.Joined(c.Name) || short == "time" && c.Name == "Read at" ||
			short == "temp" && c.Name == "Wood temp"
	})
	if head >= 0 {
		return head, in, nil
	}
	names := lists.Each(b.heads, func(c record.Column) string { return c.Name })
	return 0, "", fmt.Errorf("%s %s: the table has no such column; write time, date, %s", flag, evidence.Quote(key),
		evidence.Either(names))
}

// tell ties the columns that --column names.
func (b *matcher) tell(in Intake) error {
	told, err := pairs("--column", in.Columns)
	if err != nil {
		return err
	}
	date := ""
	for _, p := range told {
		if alike.Joined(p.key) == "date" {
			date = p.told
			continue
		}
		if err := b.tellOne(p); err != nil {
			return err
		}
	}
	if date != "" {
		return b.tellDate(date)
	}
	return nil
}

func (b *matcher) tellOne(p pair) error {
	head, _, err := b.keyed("--column", p.key)
	if err != nil {
		return err
	}
	at, unit, complaint := b.column(p.told)
	t := tie{Column: b.heads[head], head: head, at: at, clock: -1}
	switch {
	case complaint != "":
		return fmt.Errorf("--column %s: %s line %d: %s", evidence.Quote(p.key+"="+p.told), b.file, b.header, complaint)
	case b.tied(t.Name):
		return fmt.Errorf("--column %s: %s is told twice; keep one of the two", evidence.Quote(p.key+"="+p.told),
			t.Name)
	case unit != "":
		var ok bool
		if t.unit, ok = t.measured(unit); !ok && len(t.Units) > 0 {
			return fmt.Errorf("--column %s: its unit is not known here; write %s", evidence.Quote(p.key+"="+p.told),
				evidence.Either(t.Titles()))
		}
		t.how = "as told"
	}
	b.ties = append(b.ties, t)
	return nil
}

// measured is the unit that the text of a bracket stands for; a column without
// units has none.
func (t tie) measured(in string) (evidence.Unit, bool) {
	if u, ok := evidence.UnitMeant(in, t.Units); ok {
		return u, true
	}
	return t.Carries(in)
}

// tellDate puts a column of days beside that of the times of day.
func (b *matcher) tellDate(told string) error {
	at, _, complaint := b.column(told)
	i := slices.IndexFunc(b.ties, func(t tie) bool { return t.Name == "Read at" })
	switch {
	case complaint != "":
		return fmt.Errorf("--column %s: %s line %d: %s", evidence.Quote("date="+told), b.file, b.header, complaint)
	case i < 0:
		return fmt.Errorf("--column %s: the times of day are not told; add time= and their column",
			evidence.Quote("date="+told))
	}
	b.ties[i].at, b.ties[i].clock = at, b.ties[i].at
	return nil
}

// fill ties the columns that hold the same in every row.
func (b *matcher) fill(in Intake) error {
	told, err := pairs("--fill", in.Fill)
	if err != nil {
		return err
	}
	for _, p := range told {
		head, unit, err := b.keyed("--fill", p.key)
		if err != nil {
			return err
		}
		t := tie{Column: b.heads[head], head: head, at: -1, clock: -1, same: p.told, how: "as told"}
		whole := evidence.Quote(p.key + "=" + p.told)
		switch u, ok := t.measured(unit); {
		case b.tied(t.Name):
			return fmt.Errorf("--fill %s: %s is told already; keep one of the two", whole, t.Name)
		case p.told == "":
			return fmt.Errorf("--fill %s: nothing is to be filled in; write it, or leave the column out", whole)
		case len(t.Units) > 0 && !ok:
			return fmt.Errorf("--fill %s: the unit is not told; write %s", whole, evidence.Either(t.Titles()))
		default:
			t.unit = u
		}
		b.ties = append(b.ties, t)
	}
	return nil
}

// guess ties a column of the table to the one of the file whose name fits.
func (b *matcher) guess(head int) error {
	c := b.heads[head]
	if b.tied(c.Name) || b.short {
		return nil
	}
	found := b.where(func(at int, name string) bool { return !b.taken(at) && fits(c, name) })
	switch {
	case len(found) > 1:
		return b.several(c, found)
	case len(found) == 1:
		b.ties = append(b.ties, tie{Column: c, head: head, at: found[0], clock: -1})
	}
	return nil
}

// several refuses to choose among columns.
func (b *matcher) several(c record.Column, found []int) error {
	names := lists.Each(found, func(at int) string { return evidence.Quote(b.names[at]) })
	ways := lists.Each(found, func(at int) string {
		return evidence.Quote(strings.ToLower(c.Name) + "=" + b.tellable(at))
	})
	return fmt.Errorf("%s line %d: the columns %s could each be %s; add --column %s",
		b.file, b.header, evidence.List(names), c.Name, evidence.Either(ways))
}

// lacking refuses a table that the record could not hold, and a file in which
// no column offers a reading that the table needs.
func (b *matcher) lacking() error {
	for _, c := range b.heads {
		if !c.Key || b.tied(c.Name) {
			continue
		}
		if c.Name == "Area" {
			return fmt.Errorf("%s line %d: no column offers Area, which every row needs; add --area", b.file, b.header)
		}
		key := strings.ToLower(c.Name)
		return fmt.Errorf(`%s line %d: no column offers %s, which every row needs; add --column "%s=..." with the file's column, or --fill "%s=..." where all rows have the same`,
			b.file, b.header, c.Name, key, key)
	}
	lacks := func(c record.Column) bool { return isReading(c) && c.Star && !b.tied(c.Name) }
	if c, found := lists.First(b.heads, lacks); found {
		return b.unplaced(c)
	}
	return nil
}

// unplaced refuses a file in which no column offers a reading, and names the
// one that may be it.
func (b *matcher) unplaced(c record.Column) error {
	key := strings.ToLower(c.Name)
	for at, name := range b.names {
		if name != "" && !b.taken(at) && resembles(c, name) {
			return b.fail(at, "may be %s, which every row needs, and its name does not say so; add --column %s if it is", c.Name,
				evidence.Quote(key+"="+b.tellable(at)))
		}
	}
	return fmt.Errorf("%s line %d: no column offers %s, which every row needs; it has %s; add --column %s",
		b.file, b.header, c.Name, evidence.List(lists.Each(b.named(), evidence.Quote)), evidence.Quote(key+"=..."))
}
