package instruments

import (
	"fmt"
	"slices"

	"firstboard/report/evidence"
	"firstboard/report/lists"
)

// readingAge counts ages to the day of installing by calendar date.
func readingAge(rs Readings) evidence.Finding {
	if !rs.Slab.InstallOn.Shown() {
		return evidence.Unshown("the day of installing is not recorded (Areas, Install on): ages cannot be counted")
	}
	rows := rs.agedRows()
	items := make([]evidence.Item, 0, len(rows))
	for _, e := range rows {
		it := evidence.Item{Name: e.What, Limit: rs.lifeOf(e.Kind), Lack: e.Lack, Place: e.Place}
		if e.Lack == "" {
			it = rs.aged(it, e)
		}
		items = append(items, it)
	}
	return evidence.Weigh(items, evidence.Acceptance{}, "there is no judged reading")
}

// agedRows are the judged rows, and of the air its latest alone.
func (rs Readings) agedRows() []Row {
	others := lists.Where(rs.Rows, func(e Row) bool { return e.Kind != OfAir })
	return slices.Concat(others, lists.Each(rs.Room.Air.Untimed(), AirRow), []Row{rs.LatestAir()})
}

// LatestAir is the latest row of the air.
func (rs Readings) LatestAir() Row {
	latest := rs.Room.Latest()
	lack := lists.If(latest.Shown(), "", "there is none")
	return Row{Kind: OfAir, What: "the latest air reading", From: latest, At: latest, Place: latest.Place, Lack: lack}
}

// TooOld says whether a row will be too old on the day of installing.
func (rs Readings) TooOld(r Row) bool {
	life := evidence.AtMost(rs.lifeOf(r.Kind).Most)
	return rs.Slab.InstallOn.Shown() && rs.aged(evidence.Item{Limit: life}, r).Breaks(evidence.Acceptance{})
}

// How old readings may be where the job does not say.
func SlabLife() evidence.Reading { return evidence.Typed("30", evidence.DayUnit) }
func WoodLife() evidence.Reading { return evidence.Typed("7", evidence.DayUnit) }
func AirLife() evidence.Reading  { return evidence.Typed("48", evidence.Hour) }

// lifeOf is how old a reading of a kind may be: whole days of slab and wood,
// none of them later than the day it counts to, and hours of air and surfaces.
func (rs Readings) lifeOf(k Kind) evidence.Limit {
	switch k {
	case OfSlab, OfOther:
		return evidence.Limit{Least: noDaysLess().Least, Most: rs.SlabLife}
	case OfWood:
		return evidence.Limit{Least: noDaysLess().Least, Most: rs.WoodLife}
	}
	return evidence.AtMost(rs.AirLife)
}

// aged is the age of a row: days of the calendar for slab and wood, hours
// before the day of installing begins for air and surfaces.
func (rs Readings) aged(it evidence.Item, e Row) evidence.Item {
	to, day := "the day of installing", rs.Slab.InstallOn
	if e.Kind == OfAir || e.Kind == OfSurface {
		it = it.By(evidence.HoursBefore(e.At, day, rs.Zone))
		it.Says = fmt.Sprintf("%s, %s h old (read at %s) when %s, %s, begins", e.What, it.Figure(), e.At.Written, to,
			day.Day)
		return it
	}
	if e.Kind == OfSlab && rs.Slab.Covered.Shown() {
		to, day = "the day the slab was covered", rs.Slab.Covered
	}
	it = it.By(evidence.DaysBetween(evidence.Moment("read", e.At), evidence.OnDay(to, day)))
	it.Says = fmt.Sprintf("%s, read on %s, %s before %s, %s", e.What, e.At.Day(), inDays(it.Value), to, day.Day)
	if it.Value.Sign() < 0 {
		it.Says = fmt.Sprintf("%s, read on %s, after %s, %s", e.What, e.At.Day(), to, day.Day)
	}
	return it
}
