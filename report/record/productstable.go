package record

import (
	"slices"

	"firstboard/acclimate"
	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/instruments"
	"firstboard/report/limits"
	"firstboard/report/lists"
)

func productsTable() table[limits.Product] {
	type product = limits.Product
	return tableOf("Products", func(j *report.Job) *[]product { return &j.Products },
		func(p *product) *evidence.Place { return &p.Place },
		slices.Concat([]column[product]{
			listed("Product", func(d *decoder) *index { return &d.products },
				func(p *product) *string { return &p.ID }).always(),
			word("Kind", append(floorings(), "adhesive", "membrane"),
				func(p *product) *string { return &p.Kind }).always(),
			text("Description", func(p *product) *string { return &p.Description }),
			text("Species", func(p *product) *string { return &p.Species }),
			word("Cut", []string{"plainsawn", "quartersawn", "riftsawn", "mixed"},
				func(p *product) *string { return &p.Cut }),
			yesNo("Below grade", func(p *product) *string { return &p.BelowGrade }),
			number("Face width", inches(), aboveZero, func(p *product) *evidence.Reading { return &p.FaceWidth }),
			number("Thickness", inches(), aboveZero, func(p *product) *evidence.Reading { return &p.Thickness }),
		}, limitColumns(), []column[product]{
			number("Movement coefficient", unitless(), notNegative,
				func(p *product) *evidence.Reading { return &p.Across }),
			text("Data sheet", func(p *product) *string { return &p.DataSheet }),
		})...,
	).asking(moreProduct)
}

// limitColumns are the columns of the limits that products state.
func limitColumns() []column[limits.Product] {
	var all []column[limits.Product]
	for _, k := range limits.Kinds() {
		for _, c := range k.Columns() {
			all = append(all, limit(c.Name, k.Units, ruleOf(k.Units[0]), c.Cell))
		}
	}
	return all
}

// ruleOf is what a limit in a unit may be.
func ruleOf(u evidence.Unit) rule {
	of, known := map[evidence.Unit]rule{
		evidence.RH: humidity(), evidence.MC: moisture(), evidence.CM: within(0, 200), evidence.PH: acidity(),
		evidence.Fahrenheit: temperature(),
	}[u]
	return lists.If(known, of, notNegative)
}

func moreProduct(d *decoder, p *limits.Product) {
	for _, k := range limits.Kinds() {
		if len(k.Columns()) == 2 {
			d.ordered(k.Least.Name, k.Least.Of(p).Number, k.Most.Of(p).Number)
		}
	}
}

// ordered faults a minimum that lies above its maximum.
func (d *decoder) ordered(column string, least, most evidence.Reading) {
	if least.Shown() && most.Shown() && least.Exact().Cmp(most.In(least.Unit)) > 0 {
		d.wrongAt(column, least.Written, "is above its maximum, %s; write the lower of the two here", most)
	}
}

func climatesTable() table[acclimate.Period] {
	type period = acclimate.Period
	return tableOf("Climates", func(j *report.Job) *[]period { return &j.Climates },
		func(p *period) *evidence.Place { return &p.Place },
		name("Climate", func(p *period) *string { return &p.Climate }).always(),
		name("Period", func(p *period) *string { return &p.Name }).always(),
		number("Temp", fahrenheit(), temperature(), func(p *period) *evidence.Reading { return &p.Temp }).must(),
		number("RH", only(evidence.RH), humidity(), func(p *period) *evidence.Reading { return &p.RH }).must(),
		text("From", func(p *period) *string { return &p.From }),
	).asking(func(d *decoder, p *period) {
		d.climates.add(p.Climate, d.nth)
	})
}

func instrumentKinds() []string {
	return []string{
		evidence.Probe, evidence.SingleUse, evidence.AirMeter, evidence.Surface, evidence.PinMeter,
		evidence.Pinless, evidence.OvenMeter, evidence.Balance, evidence.PHMeter, evidence.CMMeter, evidence.AnyMeter,
	}
}

func instrumentsTable() table[evidence.Instrument] {
	type meter = evidence.Instrument
	return tableOf("Instruments", nil, func(m *meter) *evidence.Place { return &m.Place },
		listed("Instrument", func(d *decoder) *index { return &d.instruments },
			func(m *meter) *string { return &m.ID }).always(),
		kinds(func(m *meter) *[]string { return &m.Kinds }).always(),
		text("Make and model", func(m *meter) *string { return &m.Model }),
		text("Serial", func(m *meter) *string { return &m.Serial }),
		date("Calibrated on", since90(), func(m *meter) *evidence.Date { return &m.CalibratedOn }),
		date("Due on", since90(), func(m *meter) *evidence.Date { return &m.DueOn }),
		text("Certificate", func(m *meter) *string { return &m.Certificate }),
		number("Uncertainty", unitless(), notNegative, func(m *meter) *evidence.Reading { return &m.Uncertainty }),
		number("Uncertainty temp", fahrenheit(), notNegative,
			func(m *meter) *evidence.Reading { return &m.UncertaintyTemp }),
	).asking(func(d *decoder, m *meter) { d.job.Instruments[evidence.Key(m.ID)] = *m })
}

func checksTable() table[instruments.Comparison] {
	type check = instruments.Comparison
	return tableOf("Instrument checks", func(j *report.Job) *[]check { return &j.Checks },
		func(c *check) *evidence.Place { return &c.Place },
		instrument(func(c *check) *string { return &c.Instrument }).always(),
		clock("Checked at", since90(), func(c *check) *evidence.Time { return &c.CheckedAt }).must(),
		text("Standard", func(c *check) *string { return &c.Standard }),
		checked("Expected", func(c *check) *evidence.Reading { return &c.Expected }).must(),
		checked("Read", func(c *check) *evidence.Reading { return &c.Read }).must(),
		text("By", func(c *check) *string { return &c.By }),
	)
}

// kinds is the column of what a meter reads: several for one that does several.
func kinds(field func(*evidence.Instrument) *[]string) column[evidence.Instrument] {
	takes := grid.Takes{Words: instrumentKinds(), Several: true}
	return column[evidence.Instrument]{
		Column{Name: "Kind", Takes: takes},
		func(d *decoder, c *grid.Cell, m *evidence.Instrument) {
			for _, typed := range entries(words(c)) {
				kind, complaint := oneOf(typed, instrumentKinds())
				if complaint.Text != "" {
					d.complain(complaint)
					continue
				}
				*field(m) = append(*field(m), kind)
			}
		},
	}
}

// checked is a column of numbers in the unit of the row's instrument: no
// fractions of one where that reads RH.
func checked(title string, field func(*instruments.Comparison) *evidence.Reading) column[instruments.Comparison] {
	takes := grid.Takes{Kind: grid.NumberField}
	return column[instruments.Comparison]{
		Column{Name: title, Takes: takes, Span: anything},
		func(d *decoder, c *grid.Cell, row *instruments.Comparison) {
			named := d.typed("Instrument")
			meter, _ := d.job.Instruments.Find(words(&named))
			inRH := meter.Has(evidence.Probe) || meter.Has(evidence.SingleUse) || meter.Has(evidence.AirMeter)
			d.known = nil // the rule is the row's own
			*field(row) = d.number(c, lists.If(inRH, unbounded, anything))
		},
	}
}
