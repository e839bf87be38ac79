package intake

import (
	"cmp"
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/lists"
	"firstboard/report/record"
	"firstboard/report/record/sheet"
)

// Intake is what a person says of a logger's or meter's file.
type Intake struct {
	Table      string // air, surface, slab-rh or wood
	Area       string // one of the record's; blank where the file names them, or for the whole site
	Instrument string // one of the record's
	Columns    string // what --column says: "time=When,temp=Temp (F)"
	Fill       string // the same in every row: "hole=H1,depth (in)=1.6"
	Order      string // of the dates: day-first, month-first or year-first; blank to guess
}

// Logged is a table with the rows of a file added to it.
type Logged struct {
	Table    grid.Table // whole, the rows that were there first
	Guesses  []string   // how the file was read, a line each
	Added    int        // rows
	Repeated int        // rows that stood there already
	Doubled  int        // rows added beside one of the same thing and time that says something else
	Unread   int        // rows that cannot be read
	Faults   []string   // of the first rows that cannot be read
	ToFill   []string   // starred columns that stay blank, and where
}

// mostUnread is how many rows that cannot be read are listed.
const mostUnread = 20

// Log reads an export (CSV or TSV) that a logger or meter wrote, named name,
// into a table of a record. What cannot be told from the file is refused, with
// what to say of it. Values break no reading rule: a row with one that does is
// left out and counted. The record is not changed.
func Log(rec record.Record, name string, from io.ReadSeeker, in Intake) (Logged, error) {
	table, err := in.settle(rec)
	if err != nil {
		return Logged{}, err
	}
	text, err := openExport(name, from)
	if err != nil {
		return Logged{}, err
	}
	l, err := text.layout()
	if err != nil {
		return Logged{}, err
	}
	if l, err = l.widened(name, in.Columns); err != nil {
		return Logged{}, err
	}
	b := matcher{layout: l, file: name, heads: record.Columns(table)}
	if err := b.bind(in); err != nil {
		return Logged{}, err
	}
	look, err := text.survey(l, b.ties)
	if err != nil {
		return Logged{}, err
	}
	order, noOrder := look.order(name, in.Order)
	if err := cmp.Or(b.settle(look), noOrder, b.local(look, rec.Job)); err != nil {
		return Logged{}, err
	}
	x, err := newArrival(rec, table, text, b, look, order)
	if err != nil {
		return Logged{}, err
	}
	return x.read()
}

// settle finds the table, and area and instrument as the record spells them.
func (in *Intake) settle(rec record.Record) (string, error) {
	areas := lists.Each(rec.Job.Areas, func(a report.Area) string { return a.ID })
	meters := lists.Each(slices.Collect(maps.Values(rec.Job.Instruments)), func(m evidence.Instrument) string { return m.ID })
	slices.SortFunc(meters, func(a, b string) int { return cmp.Or(evidence.Order(a, b), cmp.Compare(a, b)) })
	names, tables := loggedTables()
	table := slices.Index(names, in.Table)
	switch {
	case table < 0:
		return "", fmt.Errorf("--table %s: a logger's or meter's file goes into %s", evidence.Quote(in.Table),
			evidence.Either(names))
	case in.Area != "" && !respelt(&in.Area, areas):
		return "", fmt.Errorf("--area %s: is not listed in Areas; write %s, or list it there first",
			evidence.Quote(in.Area), evidence.Either(areas))
	case len(meters) == 0:
		return "", fmt.Errorf("%s: lists no instrument; fill Instruments first", rec.Name)
	case !respelt(&in.Instrument, meters):
		return "", fmt.Errorf("--instrument %s: is not listed in Instruments; write %s, or list it there first",
			evidence.Quote(in.Instrument), evidence.Either(meters))
	}
	return tables[table], nil
}

// respelt writes a name as a list does, and says whether it is listed.
func respelt(name *string, among []string) bool {
	at := slices.IndexFunc(among, func(s string) bool { return evidence.Same(s, *name) })
	if at >= 0 {
		*name = among[at]
	}
	return at >= 0
}

// loggedTables are the tables that loggers and meters write into, by their names
// as files carry them.
func loggedTables() (names, tables []string) {
	tables = []string{"Air", "Surface", "Slab RH", "Wood"}
	names = lists.Each(tables, func(table string) string { return strings.TrimSuffix(sheet.FileName(table), ".csv") })
	return names, tables
}

// local refuses times that are told in UTC or another zone of their own where
// the record does not say on what clock the site goes.
func (b *matcher) local(k survey, job report.Job) error {
	for _, t := range b.ties {
		if !isTime(t.Column) || t.at < 0 || job.ZoneName != "" || !k.style.counted && !k.style.zoned && t.zone == nil {
			continue
		}
		return b.fail(t.at, "its times are told with their distance from UTC (%s), and the record does not say the site's; write Time zone into Job, such as America/Chicago", k.first)
	}
	return nil
}
