package record

import (
	"fmt"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/lists"
	"firstboard/slab"
)

func slabRHTable() table[slab.Hole] {
	type hole = slab.Hole
	discards := []string{"aggregate", "crack", "leak", "flooded", "wrong depth", "probe failed"}
	return tableOf("Slab RH", func(j *report.Job) *[]hole { return &j.Holes },
		func(h *hole) *evidence.Place { return &h.Place },
		area(func(h *hole) *string { return &h.Area }).always(),
		name("Hole", func(h *hole) *string { return &h.Hole }).always(),
		number("X", feet(), anything, func(h *hole) *evidence.Reading { return &h.X }),
		number("Y", feet(), anything, func(h *hole) *evidence.Reading { return &h.Y }),
		number("To exterior wall", feet(), notNegative, func(h *hole) *evidence.Reading { return &h.ToWall }),
		identifiers("Wall", func(h *hole) *[]string { return &h.Walls }),
		number("Thickness", inches(), aboveZero, func(h *hole) *evidence.Reading { return &h.Thickness }),
		number("Depth", inches(), notNegative, func(h *hole) *evidence.Reading { return &h.Depth }).must(),
		clock("Sealed at", measured(), func(h *hole) *evidence.Time { return &h.SealedAt }).must(),
		clock("Read at", measured(), func(h *hole) *evidence.Time { return &h.ReadAt }).must(),
		number("RH", only(evidence.RH), humidity(), func(h *hole) *evidence.Reading { return &h.RH }).must(),
		number("Temp", fahrenheit(), temperature(), func(h *hole) *evidence.Reading { return &h.Temp }),
		instrument(func(h *hole) *string { return &h.Instrument }).must(),
		word("Discarded", discards, func(h *hole) *string { return &h.Discarded }),
		text("By", func(h *hole) *string { return &h.By }),
		text("Note", func(h *hole) *string { return &h.Note }),
	).asking(moreHole)
}

func moreHole(d *decoder, h *slab.Hole) {
	d.inTurn("Read at", h.SealedAt, h.ReadAt, "it was sealed")
	d.afterPlacing("Read at", h.Area, h.ReadAt)
	d.thick("Thickness", h.Thickness)
	hole := *h
	d.later(func() { d.otherUnit(hole) })
	d.inside("Depth", h.Depth, lists.If(h.Thickness.Shown(), h.Thickness, d.thicknessOf(h.Area)))
}

// inTurn faults a time that lies before the one it has to follow, however
// their clocks are read.
func (d *decoder) inTurn(column string, first, then evidence.Time, was string) {
	if first.Shown() && then.Shown() && then.Last.Before(first.First) {
		d.wrongAt(column, then.Written, "is before %s, %s; correct one of the two times", was, first.Written)
	}
}

// afterPlacing faults a reading of a slab on a day before it was placed.
func (d *decoder) afterPlacing(column, area string, read evidence.Time) {
	a, _ := d.areaOf(area)
	if placed := a.PlacedOn; read.Shown() && placed.Shown() && read.Day() < placed.Day {
		d.wrongAt(column, read.Written, "is before the slab was placed, %s (Areas, Placed on); correct one of the two",
			placed.Written)
	}
}

// inside faults a depth beyond the thickness.
func (d *decoder) inside(column string, depth, thickness evidence.Reading) {
	if !depth.Shown() || !thickness.Shown() || depth.Exact().Cmp(thickness.In(depth.Unit)) <= 0 {
		return
	}
	const twice, tenth = 2, 10 // of the thickness: a slip of the pen lies closer, and no hole is shallower
	meant, far := "", depth.Exact().Cmp(thickness.In(depth.Unit).Mul(evidence.Whole(twice))) > 0
	for _, u := range []evidence.Unit{evidence.Millimeter, evidence.Centimeter, evidence.Inch} {
		x := evidence.Convert(depth.Exact(), u, thickness.Unit)
		if far && u != depth.Unit && x.Cmp(thickness.Exact()) <= 0 &&
			x.Mul(evidence.Whole(tenth)).Cmp(thickness.Exact()) >= 0 {
			meant = fmt.Sprintf("are these %s? Then name the column %s; else ", u, evidence.Heading(column, u))
			break
		}
	}
	d.wrongAt(column, depth.Written, "is deeper than the slab, which is %s thick; %scorrect the depth or the thickness",
		thickness, meant)
}

func (d *decoder) thicknessOf(area string) evidence.Reading {
	a, _ := d.areaOf(area)
	return a.Thickness
}

// areaOf is the area that an identifier names.
func (d *decoder) areaOf(id string) (a report.Area, listed bool) {
	at, listed := d.areas.find(id)
	if !listed {
		return a, false
	}
	return d.job.Areas[at], true
}

func mverTable() table[slab.Dish] {
	type dish = slab.Dish
	return tableOf("Slab MVER", func(j *report.Job) *[]dish { return &j.Dishes },
		func(s *dish) *evidence.Place { return &s.Place },
		area(func(s *dish) *string { return &s.Area }).always(),
		name("Dish", func(s *dish) *string { return &s.Dish }).always(),
		number("X", feet(), anything, func(s *dish) *evidence.Reading { return &s.X }),
		number("Y", feet(), anything, func(s *dish) *evidence.Reading { return &s.Y }),
		clock("Set at", measured(), func(s *dish) *evidence.Time { return &s.SetAt }).must(),
		clock("Retrieved at", measured(), func(s *dish) *evidence.Time { return &s.RetrievedAt }).must(),
		number("Start mass", only(evidence.Gram), notNegative,
			func(s *dish) *evidence.Reading { return &s.Start }).must(),
		number("End mass", only(evidence.Gram), notNegative,
			func(s *dish) *evidence.Reading { return &s.End }).must(),
		number("Test area", patches(), aboveZero, func(s *dish) *evidence.Reading { return &s.TestArea }).must(),
		instrument(func(s *dish) *string { return &s.Instrument }, evidence.Balance),
		text("By", func(s *dish) *string { return &s.By }),
		text("Note", func(s *dish) *string { return &s.Note }),
	).asking(func(d *decoder, s *dish) {
		d.inTurn("Retrieved at", s.SetAt, s.RetrievedAt, "it was set")
		d.afterPlacing("Retrieved at", s.Area, s.RetrievedAt)
	})
}

func slabPHTable() table[slab.PH] {
	type spot = slab.PH
	return tableOf("Slab pH", func(j *report.Job) *[]spot { return &j.PHs },
		func(s *spot) *evidence.Place { return &s.Place },
		area(func(s *spot) *string { return &s.Area }).always(),
		name("Spot", func(s *spot) *string { return &s.Spot }).always(),
		clock("Read at", measured(), func(s *spot) *evidence.Time { return &s.ReadAt }).must(),
		number("pH", only(evidence.PH), acidity(), func(s *spot) *evidence.Reading { return &s.PH }).must(),
		instrument(func(s *spot) *string { return &s.Instrument }, evidence.PHMeter),
		text("By", func(s *spot) *string { return &s.By }),
		text("Note", func(s *spot) *string { return &s.Note }),
	).asking(func(d *decoder, s *spot) {
		d.afterPlacing("Read at", s.Area, s.ReadAt)
	})
}

func slabCMTable() table[slab.Carbide] {
	type spot = slab.Carbide
	return tableOf("Slab CM", func(j *report.Job) *[]spot { return &j.Carbides },
		func(s *spot) *evidence.Place { return &s.Place },
		area(func(s *spot) *string { return &s.Area }).always(),
		name("Spot", func(s *spot) *string { return &s.Spot }).always(),
		number("Depth", inches(), notNegative, func(s *spot) *evidence.Reading { return &s.Depth }),
		clock("Read at", measured(), func(s *spot) *evidence.Time { return &s.ReadAt }).must(),
		number("CM", only(evidence.CM), within(0, 200), func(s *spot) *evidence.Reading { return &s.CM }).must(),
		instrument(func(s *spot) *string { return &s.Instrument }, evidence.CMMeter),
		text("By", func(s *spot) *string { return &s.By }),
		text("Note", func(s *spot) *string { return &s.Note }),
	).asking(func(d *decoder, s *spot) {
		d.inside("Depth", s.Depth, d.thicknessOf(s.Area))
		d.afterPlacing("Read at", s.Area, s.ReadAt)
	})
}
