package instruments

import (
	"fmt"
	"slices"

	"firstboard/report/evidence"
	"firstboard/report/lists"
)

// calibrationLife is how many days a calibration lasts where no due day is
// recorded.
const calibrationLife = 365

// calibration weighs, for each instrument behind a judged row, the days since
// its calibration and until it is due, and its checks against a standard.
func calibration(rs Readings) evidence.Finding {
	var items []evidence.Item
	for _, u := range rs.meterUses() {
		items = append(items, rs.calibrated(u)...)
		items = append(items, rs.agrees(u)...)
	}
	return evidence.Weigh(items, evidence.Acceptance{}, "there is no judged reading")
}

// meterUse is one instrument as it was used for one kind of reading.
type meterUse struct {
	meter evidence.Instrument
	as    string
	unit  evidence.Unit // of surfaces
	rows  []Row         // those that have an instrument and their times
	lacks []evidence.Item
}

// meterUses are the instruments behind the judged rows, in the order of their
// names; rows without an instrument or a time lack what they lack.
func (rs Readings) meterUses() []*meterUse {
	uses := map[string]*meterUse{}
	var all []*meterUse
	for _, e := range rs.Rows {
		if e.Kind == OfOther && e.Instrument == "" {
			continue
		}
		meter, listed := rs.Slab.Instruments.Find(e.Instrument)
		key := evidence.Key(e.Instrument) + "\x00" + e.As + "\x00" + string(e.Unit)
		u := uses[key]
		if u == nil {
			u = &meterUse{meter: meter, as: e.As, unit: e.Unit}
			uses[key] = u
			all = append(all, u)
		}
		switch lack := e.Began(); {
		case lack != "":
			u.lacks = append(u.lacks, evidence.Item{Name: e.What, Lack: lack, Limit: noDaysLess(), Place: e.Place})
		case !listed:
			u.lacks = append(u.lacks, evidence.Item{
				Name: e.What, Lack: "no instrument named", Limit: noDaysLess(),
				Place: e.Place,
			})
		default:
			u.rows = append(u.rows, e)
		}
	}
	slices.SortStableFunc(all, func(a, b *meterUse) int { return evidence.Order(a.meter.ID, b.meter.ID) })
	for _, u := range all {
		slices.SortStableFunc(u.rows, func(a, b Row) int { return a.At.First.Compare(b.At.First) })
	}
	return all
}

// noDaysLess is the limit of a number of days that must not be below zero.
func noDaysLess() evidence.Limit {
	return evidence.AtLeast(evidence.Bound{Number: evidence.Typed("0", evidence.DayUnit)})
}

// covers says whether the calibration on record covers a row.
func covers(meter evidence.Instrument, e Row) bool {
	return meter.CalibratedOn.Shown() && meter.CalibratedOn.Day <= e.From.Day() && DueOn(meter) >= e.At.Day()
}

// Uncalibrated says why the instrument of a row was not calibrated when it was
// read; empty where it was, and where that is not known.
func (rs Readings) Uncalibrated(r Row) string {
	meter, listed := rs.Slab.Instruments.Find(r.Instrument)
	if !listed || covers(meter, r) {
		return ""
	}
	use := &meterUse{meter: meter, as: r.As, unit: r.Unit, rows: []Row{r}}
	broken, _ := lists.First(rs.calibrated(use), func(it evidence.Item) bool { return it.Breaks(evidence.Acceptance{}) })
	return broken.Says
}

// DueOn is the last day that a calibration covers.
func DueOn(meter evidence.Instrument) evidence.Day {
	if meter.DueOn.Shown() {
		return meter.DueOn.Day
	}
	return meter.CalibratedOn.Day + calibrationLife
}

// calibrated are the days of calibration around the rows of an instrument: of
// those that it covers the first and the last, and each day that it does not.
func (rs Readings) calibrated(u *meterUse) []evidence.Item {
	items := u.lacks
	var first, last Row
	seen := map[string]bool{}
	for _, e := range u.rows {
		if covers(u.meter, e) {
			if first.What == "" || e.From.Day() < first.From.Day() {
				first = e
			}
			last = e
			continue
		}
		if block, shown := rs.onItsBlock(u, e); shown {
			items = append(items, block...)
			continue
		}
		if day := e.From.Day().String() + e.At.Day().String(); !seen[day] {
			seen[day] = true
			items = append(items, uncovered(u.meter, e)...)
		}
	}
	if first.What != "" {
		items = append(items, sinceCalibration(u.meter, first), untilDue(u.meter, last))
	}
	return items
}

// uncovered says what the calibration of an instrument lacks for a row.
func uncovered(meter evidence.Instrument, e Row) []evidence.Item {
	var items []evidence.Item
	switch {
	case meter.CalibratedOn.Shown():
		items = append(items, sinceCalibration(meter, e), untilDue(meter, e))
	case meter.DueOn.Shown() && meter.DueOn.Day < e.At.Day():
		items = append(items, untilDue(meter, e))
	default:
		lack := "no day of calibration"
		if e.As == evidence.PinMeter || e.As == evidence.Pinless {
			lack += fmt.Sprintf(", and no check on its block in the %d h before", blockLife)
		}
		items = append(items, evidence.Item{
			Name: "instrument " + meter.ID, Lack: lack, Limit: noDaysLess(),
			Place: meter.Place,
		})
	}
	return items
}

func sinceCalibration(meter evidence.Instrument, e Row) evidence.Item {
	it := evidence.Item{Name: "instrument " + meter.ID, Limit: noDaysLess(), Place: e.Place}
	it = it.By(evidence.DaysBetween(evidence.OnDay("calibrated", meter.CalibratedOn), evidence.Moment("used", e.From)))
	it.Says = fmt.Sprintf("instrument %s, used on %s, %s after its calibration", meter.ID, e.From.Day(),
		inDays(it.Value))
	if it.Value.Sign() < 0 {
		it.Says = fmt.Sprintf("instrument %s, used on %s, calibrated only on %s", meter.ID, e.From.Day(),
			meter.CalibratedOn.Day)
	}
	return it
}

func untilDue(meter evidence.Instrument, e Row) evidence.Item {
	it := evidence.Item{Name: "instrument " + meter.ID, Limit: noDaysLess(), Place: e.Place}
	used, due := evidence.Moment("used", e.At), meter.DueOn.Day.String()
	if meter.DueOn.Shown() {
		it = it.By(evidence.DaysBetween(used, evidence.OnDay("due", meter.DueOn)))
	} else {
		life := evidence.Stated("a calibration lasts", evidence.Whole(calibrationLife), evidence.DayUnit)
		it = it.By(evidence.Less(life, evidence.DaysBetween(evidence.OnDay("calibrated", meter.CalibratedOn), used)))
		due = fmt.Sprintf("%s, %d days from its calibration", DueOn(meter), calibrationLife)
	}
	it.Says = fmt.Sprintf("instrument %s, used on %s, %s before it is due on %s", meter.ID, e.At.Day(),
		inDays(it.Value), due)
	if it.Value.Sign() < 0 {
		it.Says = fmt.Sprintf("instrument %s, used on %s, %s past due on %s", meter.ID, e.At.Day(),
			inDays(it.Value.Abs()), due)
	}
	return it
}

func inDays(n evidence.Exact) string { return evidence.Count(n.Ceil(), "day", "days") }
