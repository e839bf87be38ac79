package record

import (
	"firstboard/acclimate"
	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/slab"
	"firstboard/wood"
)

func otherTable() table[slab.Other] {
	type test = slab.Other
	return tableOf("Other tests", func(j *report.Job) *[]test { return &j.Others },
		func(t *test) *evidence.Place { return &t.Place },
		area(func(t *test) *string { return &t.Area }).always(),
		name("Test", func(t *test) *string { return &t.Test }).always(),
		name("Spot", func(t *test) *string { return &t.Spot }),
		clock("Read at", measured(), func(t *test) *evidence.Time { return &t.ReadAt }).must(),
		number("Result", unitless(), anything, func(t *test) *evidence.Reading { return &t.Result }).must(),
		number("At least", unitless(), anything, func(t *test) *evidence.Reading { return &t.AtLeast }),
		number("At most", unitless(), anything, func(t *test) *evidence.Reading { return &t.AtMost }),
		text("Unit", func(t *test) *string { return &t.Unit }),
		instrument(func(t *test) *string { return &t.Instrument }),
		text("Data sheet", func(t *test) *string { return &t.DataSheet }),
		text("By", func(t *test) *string { return &t.By }),
		text("Note", func(t *test) *string { return &t.Note }),
	).asking(func(d *decoder, t *test) {
		d.ordered("At least", t.AtLeast, t.AtMost)
	})
}

func airTable() table[acclimate.Air] {
	type air = acclimate.Air
	return tableOf("Air", func(j *report.Job) *[]air { return &j.Air },
		func(a *air) *evidence.Place { return &a.Place },
		area(func(a *air) *string { return &a.Area }),
		clock("Read at", measured(), func(a *air) *evidence.Time { return &a.ReadAt }).must(),
		number("Temp", fahrenheit(), temperature(), func(a *air) *evidence.Reading { return &a.Temp }).must(),
		number("RH", only(evidence.RH), humidity(), func(a *air) *evidence.Reading { return &a.RH }).must(),
		instrument(func(a *air) *string { return &a.Instrument }, evidence.AirMeter).must(),
		text("By", func(a *air) *string { return &a.By }),
		text("Note", func(a *air) *string { return &a.Note }),
	)
}

func surfaceTable() table[acclimate.Surface] {
	type spot = acclimate.Surface
	return tableOf("Surface", func(j *report.Job) *[]spot { return &j.Surfaces },
		func(s *spot) *evidence.Place { return &s.Place },
		area(func(s *spot) *string { return &s.Area }).always(),
		name("Spot", func(s *spot) *string { return &s.Spot }).always(),
		clock("Read at", measured(), func(s *spot) *evidence.Time { return &s.ReadAt }).must(),
		number("Temp", fahrenheit(), temperature(), func(s *spot) *evidence.Reading { return &s.Temp }).must(),
		instrument(func(s *spot) *string { return &s.Instrument }, evidence.Surface, evidence.AirMeter,
			evidence.AnyMeter),
		text("By", func(s *spot) *string { return &s.By }),
		text("Note", func(s *spot) *string { return &s.Note }),
	)
}

func woodTable() table[wood.Row] {
	type row = wood.Row
	return tableOf("Wood", func(j *report.Job) *[]row { return &j.Wood },
		func(w *row) *evidence.Place { return &w.Place },
		area(func(w *row) *string { return &w.Area }).always(),
		word("Of", []string{wood.OfFlooring, wood.OfSubfloor, wood.OfJoist},
			func(w *row) *string { return &w.Of }).always(),
		name("Piece", func(w *row) *string { return &w.Piece }).always(),
		name("Lot", func(w *row) *string { return &w.Lot }),
		number("X", feet(), anything, func(w *row) *evidence.Reading { return &w.X }),
		number("Y", feet(), anything, func(w *row) *evidence.Reading { return &w.Y }),
		clock("Read at", measured(), func(w *row) *evidence.Time { return &w.ReadAt }).must(),
		word("Method", []string{wood.Pin, wood.Pinless, wood.OvenDry},
			func(w *row) *string { return &w.Method }).must(),
		number("Depth", inches(), notNegative, func(w *row) *evidence.Reading { return &w.Depth }),
		number("Reading", only(evidence.MC), moisture(),
			func(w *row) *evidence.Reading { return &w.Reading }).must(),
		text("Scale", func(w *row) *string { return &w.Scale }),
		text("Species", func(w *row) *string { return &w.Species }),
		number("Wood temp", fahrenheit(), temperature(), func(w *row) *evidence.Reading { return &w.WoodTemp }),
		yesNo("Temp corrected", func(w *row) *string { return &w.TempCorrected }),
		flag("Set aside", []string{"yes", "no"}, "yes", func(w *row) *bool { return &w.SetAside }),
		instrument(func(w *row) *string { return &w.Instrument }).must(),
		text("By", func(w *row) *string { return &w.By }),
		text("Note", func(w *row) *string { return &w.Note }),
	).asking(moreWood)
}

func moreWood(d *decoder, w *wood.Row) {
	if kind := w.MeterKind(); kind != "" && w.Instrument != "" {
		d.column = d.place["Instrument"]
		d.taker(w.Instrument, []string{kind})
	}
	if a, _ := d.areaOf(w.Area); a.Substrate == "slab" && (w.Of == wood.OfSubfloor || w.Of == wood.OfJoist) {
		d.faultAt("Of", "area %s is laid on a slab and has no %s; correct Of, or the area's Substrate",
			evidence.Quote(a.ID), w.Of)
	}
	if w.SetAside && w.Of != wood.OfFlooring && w.Of != "" {
		d.faultAt("Set aside", "only boards of flooring are set aside, and this row is of a %s; clear the cell", w.Of)
	}
}

func scanTable() table[slab.Scan] {
	type spot = slab.Scan
	return tableOf("Scan", func(j *report.Job) *[]spot { return &j.Scans },
		func(s *spot) *evidence.Place { return &s.Place },
		area(func(s *spot) *string { return &s.Area }).always(),
		name("Spot", func(s *spot) *string { return &s.Spot }).always(),
		number("X", feet(), anything, func(s *spot) *evidence.Reading { return &s.X }),
		number("Y", feet(), anything, func(s *spot) *evidence.Reading { return &s.Y }),
		clock("Read at", measured(), func(s *spot) *evidence.Time { return &s.ReadAt }).must(),
		number("Reading", unitless(), anything, func(s *spot) *evidence.Reading { return &s.Reading }).must(),
		text("Over", func(s *spot) *string { return &s.Over }),
		instrument(func(s *spot) *string { return &s.Instrument }),
		text("By", func(s *spot) *string { return &s.By }),
		text("Note", func(s *spot) *string { return &s.Note }),
	)
}
