package record

import (
	_ "time/tzdata"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/instruments"
	"firstboard/report/lists"
)

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
