package record

import (
	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/slab"
)

func slabRHTable() table[slab.Hole] {
	type hole = slab.Hole
	discards := []string{"aggregate", "crack", "leak", "flooded", "wrong depth", "probe failed"}
	return table[hole]{
		name: "Slab RH", more: moreHole,
		rows:  func(j *report.Job) *[]hole { return &j.Holes },
		place: func(h *hole) *evidence.Place { return &h.Place },
		columns: []column[hole]{
			area(func(h *hole) *string { return &h.Area }).always(),
			name("Hole", func(h *hole) *string { return &h.Hole }).always(),
			number("X", feet(), anything, func(h *hole) *evidence.Reading { return &h.X }),
			number("Y", feet(), anything, func(h *hole) *evidence.Reading { return &h.Y }),
			number("To exterior wall", feet(), notNegative, func(h *hole) *evidence.Reading { return &h.ToWall }),
			identifiers("Wall", func(h *hole) *[]string { return &h.Walls }),
			number("Thickness", inches(), aboveZero, func(h *hole) *evidence.Reading { return &h.Thickness }),
			number("Depth", inches(), notNegative, func(h *hole) *evidence.Reading { return &h.Depth }).must(),
			clock("Sealed at", since90, func(h *hole) *evidence.Time { return &h.SealedAt }).must(),
			clock("Read at", since90, func(h *hole) *evidence.Time { return &h.ReadAt }).must(),
			number("RH", in(evidence.RH), humidity(), func(h *hole) *evidence.Reading { return &h.RH }).must(),
			number("Temp", fahrenheit(), temperature(), func(h *hole) *evidence.Reading { return &h.Temp }),
			instrument(func(h *hole) *string { return &h.Instrument }).must(),
			word("Discarded", discards, func(h *hole) *string { return &h.Discarded }),
			text("By", func(h *hole) *string { return &h.By }),
			text("Note", func(h *hole) *string { return &h.Note }),
		},
	}
}

func moreHole(d *decoder, h *slab.Hole) {
	d.inTurn("Read at", h.SealedAt, h.ReadAt, "it was sealed")
	thickness := h.Thickness
	if !thickness.Shown() {
		thickness = d.thicknessOf(h.Area)
	}
	d.inside("Depth", h.Depth, thickness)
}

// inTurn faults a time that lies before the one it has to follow, however
// their clocks are read.
func (d *decoder) inTurn(column string, first, then evidence.Time, was string) {
	if first.Shown() && then.Shown() && then.Last.Before(first.First) {
		d.faultAt(column, "%s", saying(then.Written, "is before %s, %s; mend one of the two times", was, first.Written))
	}
}

// inside faults a depth beyond the thickness.
func (d *decoder) inside(column string, depth, thickness evidence.Reading) {
	if depth.Shown() && thickness.Shown() && depth.Exact().Cmp(thickness.In(depth.Unit)) > 0 {
		d.faultAt(column, "%s", saying(depth.Written, "is deeper than the slab, which is %s thick; mend the depth or the thickness", thickness))
	}
}

func (d *decoder) thicknessOf(area string) evidence.Reading {
	if at, ok := d.areas.find(area); ok {
		return d.job.Areas[at].Thickness
	}
	return evidence.Reading{}
}

func emissionTable() table[slab.Dish] {
	type dish = slab.Dish
	return table[dish]{
		name: "Slab MVER",
		columns: []column[dish]{
			area(func(s *dish) *string { return &s.Area }).always(),
			name("Dish", func(s *dish) *string { return &s.Dish }).always(),
			number("X", feet(), anything, func(s *dish) *evidence.Reading { return &s.X }),
			number("Y", feet(), anything, func(s *dish) *evidence.Reading { return &s.Y }),
			clock("Set at", since90, func(s *dish) *evidence.Time { return &s.SetAt }).must(),
			clock("Retrieved at", since90, func(s *dish) *evidence.Time { return &s.RetrievedAt }).must(),
			number("Start mass", in(evidence.Gram), notNegative, func(s *dish) *evidence.Reading { return &s.Start }).must(),
			number("End mass", in(evidence.Gram), notNegative, func(s *dish) *evidence.Reading { return &s.End }).must(),
			number("Test area", patches(), aboveZero, func(s *dish) *evidence.Reading { return &s.TestArea }).must(),
			instrument(func(s *dish) *string { return &s.Instrument }),
			text("By", func(s *dish) *string { return &s.By }),
			text("Note", func(s *dish) *string { return &s.Note }),
		},
		rows:  func(j *report.Job) *[]dish { return &j.Dishes },
		place: func(s *dish) *evidence.Place { return &s.Place },
		more: func(d *decoder, s *dish) {
			d.inTurn("Retrieved at", s.SetAt, s.RetrievedAt, "it was set")
		},
	}
}

func slabPHTable() table[slab.PH] {
	type spot = slab.PH
	return table[spot]{
		name: "Slab pH",
		columns: []column[spot]{
			area(func(s *spot) *string { return &s.Area }).always(),
			name("Spot", func(s *spot) *string { return &s.Spot }).always(),
			clock("Read at", since90, func(s *spot) *evidence.Time { return &s.ReadAt }).must(),
			number("pH", in(evidence.PH), acidity(), func(s *spot) *evidence.Reading { return &s.PH }).must(),
			instrument(func(s *spot) *string { return &s.Instrument }).must(),
			text("By", func(s *spot) *string { return &s.By }),
			text("Note", func(s *spot) *string { return &s.Note }),
		},
		rows:  func(j *report.Job) *[]spot { return &j.PHs },
		place: func(s *spot) *evidence.Place { return &s.Place },
	}
}

func slabCMTable() table[slab.Carbide] {
	type spot = slab.Carbide
	return table[spot]{
		name: "Slab CM",
		columns: []column[spot]{
			area(func(s *spot) *string { return &s.Area }).always(),
			name("Spot", func(s *spot) *string { return &s.Spot }).always(),
			number("Depth", inches(), notNegative, func(s *spot) *evidence.Reading { return &s.Depth }),
			clock("Read at", since90, func(s *spot) *evidence.Time { return &s.ReadAt }).must(),
			number("CM", in(evidence.CM), within(0, 200), func(s *spot) *evidence.Reading { return &s.CM }).must(),
			instrument(func(s *spot) *string { return &s.Instrument }).must(),
			text("By", func(s *spot) *string { return &s.By }),
			text("Note", func(s *spot) *string { return &s.Note }),
		},
		rows:  func(j *report.Job) *[]spot { return &j.Carbides },
		place: func(s *spot) *evidence.Place { return &s.Place },
		more: func(d *decoder, s *spot) {
			d.inside("Depth", s.Depth, d.thicknessOf(s.Area))
		},
	}
}
