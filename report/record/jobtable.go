package record

import (
	"time"
	_ "time/tzdata"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/record/faults"
	"firstboard/report/record/sheet"
)

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
