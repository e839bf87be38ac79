package record

import (
	"slices"
	"strings"

	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/limits"
	"firstboard/report/lists"
	"firstboard/report/record/cell"
	"firstboard/report/record/faults"
	"firstboard/report/record/sheet"
)

// words settles that a cell is text, and gives it without the space around it.
// A number is the one stored, however its cell shows it: hole 7 is one hole.
func words(c *grid.Cell) string {
	switch c.Kind {
	case grid.NumberCell:
		c.Text = sheet.WithoutZeros(c.Text)
	case sheet.Percent:
		c.Text += "%"
	}
	c.Kind, c.Places = grid.TextCell, 0
	return strings.TrimSpace(c.Text)
}

// text is a column of free words.
func text[T any](name string, field func(*T) *string) column[T] {
	return column[T]{Column{Name: name}, func(d *decoder, c *grid.Cell, row *T) {
		*field(row) = words(c)
	}}
}

// name is a column of identifiers, which often are those of the row before.
func name[T any](title string, field func(*T) *string) column[T] {
	var typed, tidy string
	return column[T]{Column{Name: title}, func(d *decoder, c *grid.Cell, row *T) {
		if text := words(c); text != typed {
			typed, tidy = text, evidence.Tidy(text)
		}
		*field(row) = tidy
	}}
}

// identifiers is a column of identifiers with commas between them.
func identifiers[T any](title string, field func(*T) *[]string) column[T] {
	return column[T]{Column{Name: title}, func(d *decoder, c *grid.Cell, row *T) {
		*field(row) = entries(words(c))
	}}
}

// entries are the parts of an entry that commas part, without blank ones.
func entries(s string) []string {
	parts := strings.FieldsFunc(s, func(r rune) bool { return r == ',' || r == ';' })
	return lists.Where(lists.Each(parts, evidence.Tidy), func(part string) bool { return part != "" })
}

// listed is a column of identifiers that each name a row of its own table.
func listed[T any](title string, in func(*decoder) *index, field func(*T) *string) column[T] {
	return name(title, field).then(func(d *decoder, c *grid.Cell, row *T) {
		if !in(d).add(*field(row), d.nth) {
			d.wrong(c.Text, "is listed twice; keep one row of it or rename one")
		}
	})
}

// area is a column that names an area.
func area[T any](field func(*T) *string) column[T] {
	return reference("Area", "Areas", func(d *decoder) *index { return &d.areas }, field)
}

// instrument is a column that names an instrument, of one of some kinds where
// no other can have taken the reading.
func instrument[T any](field func(*T) *string, kinds ...string) column[T] {
	col := reference("Instrument", "Instruments", func(d *decoder) *index { return &d.instruments }, field)
	took := "" // the row before
	return col.then(func(d *decoder, _ *grid.Cell, row *T) {
		if id := *field(row); id != took && d.taker(id, kinds) {
			took = id
		}
	})
}

// taker says whether an instrument is of one of some kinds, and faults it where
// it is listed as another.
func (d *decoder) taker(id string, kinds []string) bool {
	meter, listed := d.job.Instruments.Find(id)
	if !listed || len(kinds) == 0 || len(meter.Kinds) == 0 || slices.ContainsFunc(kinds, meter.Has) {
		return true
	}
	d.complain(faults.About(id, "is listed in Instruments as %s, which cannot have taken this; name an instrument of the kind %s, or correct its Kind",
		strings.Join(meter.Kinds, ", "), evidence.Either(kinds)))
	return false
}

func reference[T any](title, of string, to func(*decoder) *index, field func(*T) *string) column[T] {
	found := "" // in the row before
	return referring(title, of, field).then(func(d *decoder, c *grid.Cell, row *T) {
		switch id := *field(row); {
		case id == found && id != "":
		case to(d).lacks(id):
			d.complain(to(d).complaint(c.Text))
		default:
			found = id
		}
	})
}

// referring is a column that names a row of a table.
func referring[T any](title, of string, field func(*T) *string) column[T] {
	col := name(title, field)
	col.Takes.Of = of
	return col
}

// later is referring where that table is read after this one: what was typed is
// looked up when both are.
func later[T any](title, of string, field func(*T) *string, find func(d *decoder, typed string)) column[T] {
	return referring(title, of, field).then(func(d *decoder, c *grid.Cell, _ *T) {
		typed := c.Text
		d.later(func() { find(d, typed) })
	})
}

// word is a column of fixed words, stored in their own spelling.
func word[T any](title string, among []string, field func(*T) *string) column[T] {
	return column[T]{Column{Name: title, Takes: grid.Takes{Words: among}}, func(d *decoder, c *grid.Cell, row *T) {
		w, complaint := oneOf(words(c), among)
		d.complain(complaint)
		*field(row) = w
	}}
}

func yesNo[T any](title string, field func(*T) *string) column[T] {
	return word(title, []string{"yes", "no"}, field)
}

// number is a column of plain decimals under a rule. Its units are those the
// header may carry in its bracket.
func number[T any](title string, units []evidence.Unit, rule rule, field func(*T) *evidence.Reading) column[T] {
	takes := grid.Takes{Kind: grid.NumberField}
	return column[T]{
		Column{Name: title, Units: units, Takes: takes, Span: rule},
		func(d *decoder, c *grid.Cell, row *T) {
			*field(row) = d.number(c, rule)
		},
	}
}

// limit is a column of a product's limits: a number, none, or blank.
func limit[T any](title string, units []evidence.Unit, rule rule, field func(*T) *limits.Stated) column[T] {
	takes := grid.Takes{Kind: grid.NumberField, None: true}
	return column[T]{
		Column{Name: title, Units: units, Takes: takes, Span: rule},
		func(d *decoder, c *grid.Cell, row *T) {
			switch inWords := c.Kind == grid.TextCell && !strings.ContainsAny(c.Text, "0123456789"); {
			case inWords && evidence.Same(c.Text, "none"):
				field(row).None = true
			case inWords:
				d.wrong(c.Text, "is no limit; write the data sheet's number, none where it states none, or nothing where it was not looked up")
			default:
				field(row).Number = d.number(c, rule)
			}
		},
	}
}

// date is a column of calendar days.
func date[T any](title string, from cell.Era, field func(*T) *evidence.Date) column[T] {
	return column[T]{Column{Name: title, Takes: from.Takes(grid.DayField)}, func(d *decoder, c *grid.Cell, row *T) {
		*field(row) = d.date(c, from)
	}}
}

// clock is a column of times.
func clock[T any](title string, from cell.Era, field func(*T) *evidence.Time) column[T] {
	return column[T]{Column{Name: title, Takes: from.Takes(grid.ClockField)}, func(d *decoder, c *grid.Cell, row *T) {
		*field(row) = d.time(c, from)
	}}
}

// clockOrDay is a column of times in which a day alone means its end.
func clockOrDay[T any](title string, from cell.Era, field func(*T) *evidence.Time) column[T] {
	return column[T]{
		Column{Name: title, Takes: from.Takes(grid.ClockOrDayField)},
		func(d *decoder, c *grid.Cell, row *T) {
			if cell.IsDay(c) {
				*field(row) = d.endOf(d.date(c, from))
				return
			}
			*field(row) = d.time(c, from)
		},
	}
}

// flag is a column of two words, of which a blank is the other than yes.
func flag[T any](title string, among []string, yes string, field func(*T) *bool) column[T] {
	var said string
	return word(title, among, func(*T) *string { return &said }).then(func(_ *decoder, _ *grid.Cell, row *T) {
		*field(row) = said == yes
	})
}
