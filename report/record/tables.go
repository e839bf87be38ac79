package record

import (
	"time"
	_ "time/tzdata" // a record's zone is known on every machine

	"github.com/shopspring/decimal"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/lists"
	"firstboard/report/record/cell"
	"firstboard/report/record/faults"
	"firstboard/report/record/sheet"
)

// schemas are the tables of a record, in the design's order.
func schemas() []schema {
	return []schema{
		jobTable(), areasTable(), productsTable(), climatesTable(), instrumentsTable(), checksTable(),
		slabRHTable(), mverTable(), slabPHTable(), slabCMTable(), otherTable(),
		airTable(), surfaceTable(), woodTable(), scanTable(),
		eventsTable(), photosTable(), signOffTable(),
	}
}

// The units that headers may carry, the design's own first.
func fahrenheit() []evidence.Unit { return []evidence.Unit{evidence.Fahrenheit, evidence.Celsius} }

func inches() []evidence.Unit {
	return []evidence.Unit{evidence.Inch, evidence.Foot, evidence.Millimeter, evidence.Centimeter, evidence.Meter}
}

func feet() []evidence.Unit {
	return []evidence.Unit{evidence.Foot, evidence.Inch, evidence.Millimeter, evidence.Centimeter, evidence.Meter}
}

func patches() []evidence.Unit {
	return []evidence.Unit{evidence.SquareFoot, evidence.SquareInch, evidence.SquareCM, evidence.SquareM}
}

func only(u evidence.Unit) []evidence.Unit { return []evidence.Unit{u} }

// unitless is for a number in no unit, or in one that its row names.
func unitless() []evidence.Unit { return nil }

// The rules of the percentages.
func humidity() rule { return percents(100) }
func moisture() rule { return percents(200) }
func acidity() rule  { return within(0, 14) }

// The products a flooring system may be made of.
func floorings() []string {
	return []string{"solid wood", "engineered wood", "bamboo", "laminate", "resilient", "carpet"}
}

// TableNames are the names of all tables a record may have, in the design's
// order.
func TableNames() []string {
	return lists.Each(schemas(), schema.title)
}

// rule is the numbers that a column takes in a unit it may carry.
type rule func(evidence.Unit) grid.Span

func anything(evidence.Unit) grid.Span { return grid.Span{} }

func notNegative(evidence.Unit) grid.Span { return grid.Span{Least: bound64(0)} }

func aboveZero(evidence.Unit) grid.Span { return grid.Span{Least: bound64(0), Above: true} }

// count is the rule of a whole number from 0 up.
func count(evidence.Unit) grid.Span { return grid.Span{Least: bound64(0), Whole: true} }

func oneOrTwo(evidence.Unit) grid.Span {
	return grid.Span{Least: bound64(1), Most: bound64(2), Whole: true}
}

// unbounded is the rule of a percentage without bounds.
func unbounded(evidence.Unit) grid.Span { return grid.Span{Percent: true} }

// within is the rule of a number that lies between two bounds.
func within(low, high int64) rule {
	span := grid.Span{Least: bound64(low), Most: bound64(high)}
	return func(evidence.Unit) grid.Span { return span }
}

// percents is the rule of a percentage: within bounds, and not typed as a
// fraction of one.
func percents(high int64) rule {
	span := grid.Span{Least: bound64(0), Most: bound64(high), Percent: true}
	return func(evidence.Unit) grid.Span { return span }
}

// temperature is the rule of a temperature: -40 to 160 F, in either unit.
func temperature() rule {
	inF := within(-40, 160)
	inC := inF(evidence.Celsius)
	inC.Most.Decimal = evidence.Typed("160", evidence.Fahrenheit).In(evidence.Celsius).Decimal()
	return func(u evidence.Unit) grid.Span {
		if u == evidence.Celsius {
			return inC
		}
		return inF(u)
	}
}

func bound64(n int64) decimal.NullDecimal { return decimal.NewNullDecimal(decimal.NewFromInt(n)) }

// anyYear is for days of building and of installing.
func anyYear() cell.Era { return cell.Era{} }

// since90 is for calibrations and checks of instruments, measured for readings.
func since90() cell.Era  { return cell.Era{Since: 1990} }
func measured() cell.Era { return cell.Era{Since: 1990, ToInstall: true} }

// jobItem is a row of Job: a column turned on its side.
type jobItem struct {
	name  string
	entry *grid.Cell
}

func jobTable() table[jobItem] {
	items := jobItems()
	return tableOf("Job", nil, nil,
		name("Item", func(i *jobItem) *string { return &i.name }).always(),
		column[jobItem]{Column{Name: "Entry"}, func(_ *decoder, c *grid.Cell, i *jobItem) { i.entry = c }}.must(),
	).asking(func(d *decoder, i *jobItem) {
		if i.name != "" {
			d.readItem(i, items)
		}
	})
}

// jobNamed faults a table Job with rows of which none is the item Job.
func (d *decoder) jobNamed(table string, src *sheet.Table) {
	if _, named := d.items.find("Job"); table != "Job" || named || len(src.Rows) == 0 || src.Blank() {
		return
	}
	d.column = d.place["Item"]
	d.fault("the item Job is missing; add a row Job with the name of the job")
}

// readItem reads a row of Job by the column that its name stands for.
func (d *decoder) readItem(i *jobItem, items []column[report.Job]) {
	m := match("Job", i.name, headsOf(items))
	if m.complaint != "" {
		d.column = d.place["Item"]
		d.complain(faults.About(i.name, "%s", m.complaint))
		return
	}
	if !d.items.add(items[m.column].Title(), d.nth) {
		d.wrongAt("Item", i.name, "is listed twice; keep one row of it")
		return
	}
	if i.entry != nil && i.entry.Kind != grid.BlankCell {
		d.column, d.unit, d.known = d.place["Entry"], m.unit, nil
		items[m.column].read(d, i.entry, &d.job)
	}
}

// JobItems are the items of Job, as columns.
func JobItems() []Column { return headsOf(jobItems()) }

func jobItems() []column[report.Job] {
	type job = report.Job
	items := []column[job]{
		text("Job", func(j *job) *string { return &j.Name }).must(),
		text("Site", func(j *job) *string { return &j.Site }),
		text("Prepared by", func(j *job) *string { return &j.PreparedBy }),
		text("Company", func(j *job) *string { return &j.Company }),
		text("General contractor", func(j *job) *string { return &j.GeneralContractor }),
		{Column{Name: "Time zone"}, readZone},
		number("Elevation", []evidence.Unit{evidence.Foot, evidence.Meter}, anything,
			func(j *job) *evidence.Reading { return &j.Elevation }),
		flag("Acceptance", []string{"simple", "guarded"}, "guarded", func(j *job) *bool { return &j.Guarded }),
		text("Acceptance agreed by", func(j *job) *string { return &j.AcceptanceAgreedBy }),
		date("Acceptance agreed on", anyYear(), func(j *job) *evidence.Date { return &j.AcceptanceAgreedOn }),
	}
	settings := report.DefaultSettings()
	for i, s := range settings.Items() {
		title, _ := evidence.Parted(s.Item)
		items = append(items, number(title, only(s.Value.Unit), notNegative,
			func(j *job) *evidence.Reading { return j.Settings.Items()[i].Value }))
	}
	return items
}

func readZone(d *decoder, c *grid.Cell, j *report.Job) {
	zone := words(c)
	at, err := time.LoadLocation(zone)
	// Names of the machine's own, such as localtime, begin with a small letter.
	if own := zone[0] < 'A' || zone[0] > 'Z'; err != nil || own || at == time.Local {
		d.wrong(zone, "is not a time zone; write its area and city, such as America/Chicago")
		return
	}
	j.Zone, j.ZoneName = at, zone
}
