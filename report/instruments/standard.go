package instruments

import (
	"fmt"
	"slices"
	"time"

	"firstboard/report/evidence"
	"firstboard/report/lists"
)

// How long a check of a moisture meter on its block stands for a calibration,
// and how long after a reading a check still speaks of it.
const (
	BlockDays = 7
	blockLife = BlockDays * hoursADay // h
	speaksFor = 30 * 24 * time.Hour
)

// How far a check of an instrument may lie from what was expected: of air, of a
// moisture meter, of a surface and of pH (common practice, no source).
func airOff() evidence.Reading     { return evidence.Typed("3", evidence.RH) }
func woodOff() evidence.Reading    { return evidence.Typed("1", evidence.Points) }
func surfaceOff() evidence.Reading { return evidence.Typed("2", evidence.Fahrenheit) }
func phOff() evidence.Reading      { return evidence.Typed("0.2", evidence.PH) }

// tolerance is how far a check may lie from what was expected. Unlike other
// meters a probe in a hole has none here: its checks are those of probe-check.
type tolerance struct {
	most  evidence.Bound
	times evidence.Working // what takes a difference to the unit of most
	ours  bool

	unsaid bool // it is zero, for nothing says how far off the meter may be
}

func toleranceOf(u *meterUse) tolerance {
	within := func(off evidence.Reading) tolerance {
		return tolerance{most: evidence.Bound{Number: off}, ours: true}
	}
	m := u.meter
	switch {
	case u.as == evidence.Probe && (m.Has(evidence.Probe) || m.Has(evidence.SingleUse)):
		return tolerance{}
	case u.reads(evidence.PinMeter), u.reads(evidence.Pinless):
		return within(woodOff())
	case u.reads(evidence.Surface):
		t := within(surfaceOff())
		if u.unit == evidence.Celsius {
			t.times = evidence.Stated("F for each C", evidence.Ratio(9, 5), evidence.Fahrenheit)
		}
		return t
	case u.reads(evidence.PHMeter):
		return within(phOff())
	case u.reads(evidence.AirMeter):
		return within(airOff())
	}
	if m.Uncertainty.Shown() {
		return within(m.Uncertainty)
	}
	t := within(evidence.Typed("0", evidence.None))
	t.unsaid = true
	return t
}

// reads says whether the instrument was used as a kind that it is of; used as
// none of its own, as any that it is of.
func (u *meterUse) reads(kind string) bool {
	if u.meter.Has(u.as) {
		return u.as == kind
	}
	return u.meter.Has(kind)
}

// agrees are the checks of an instrument that speak of its judged rows: the
// last before a row, and each one at it or within 30 days after.
func (rs Readings) agrees(u *meterUse) []evidence.Item {
	allowed := toleranceOf(u)
	if !allowed.ours || len(u.rows) == 0 {
		return nil
	}
	// Of the air the times are the first and the last of each day: a check between
	// the two is one after the first, and speaks of it.
	checks, times := rs.Compared[evidence.Key(u.meter.ID)], lists.Each(u.rows, func(e Row) time.Time { return e.At.First })
	var items []evidence.Item
	for _, c := range checks.typed {
		switch {
		case !c.CheckedAt.Shown():
			items = append(items, c.lacks("no time"))
		case !speaksOf(c, checks.timed, times):
		case !c.whole():
			items = append(items, c.lacks("no expected or no read value"))
		default:
			items = append(items, c.off(allowed))
		}
	}
	return items
}

// speaksOf says whether a check is the last before one of the times, or lies at
// one or within 30 days after it.
func speaksOf(c Comparison, checks []Comparison, times []time.Time) bool {
	at := c.CheckedAt.First
	since, _ := slices.BinarySearchFunc(times, at.Add(-speaksFor), time.Time.Compare)
	if since < len(times) && !times[since].After(at) {
		return true
	}
	next, _ := slices.BinarySearchFunc(times, at.Add(1), time.Time.Compare)
	return next < len(times) && before(checks, at.Add(1)) == before(checks, times[next])
}

// off is how far the instrument read from what was expected.
func (c Comparison) off(allowed tolerance) evidence.Item {
	it := evidence.Item{Name: c.title(), Limit: evidence.AtMost(allowed.most), Place: c.Place}
	apart := evidence.Unsigned(evidence.Less(evidence.Cell("read", c.Read), evidence.Cell("expected", c.Expected)))
	if allowed.times.Shown() {
		apart = evidence.Times(apart, allowed.times, allowed.most.Number.Unit)
	}
	it = it.By(apart)
	it.Says = fmt.Sprintf("%s read %s where %s was expected, %s off", it.Name, c.Read.Written, c.Expected.Written,
		it.Amount())
	if allowed.unsaid {
		it.Says += ", and its uncertainty is not recorded"
	}
	return it
}

// onItsBlock is a check of a pin or pinless meter on its block that agrees, at
// most a week before a reading, with its age: it stands for a calibration.
func (rs Readings) onItsBlock(u *meterUse, e Row) (items []evidence.Item, shown bool) {
	if u.as != evidence.PinMeter && u.as != evidence.Pinless {
		return nil, false // a block says nothing of a meter's other readings
	}
	fit := rs.Compared[evidence.Key(u.meter.ID)].onBlock
	i := before(fit, e.At.First.Add(-blockLife*time.Hour))
	if i == len(fit) || !fit[i].CheckedAt.First.Before(e.At.First) {
		return nil, false
	}
	c := fit[i]
	age := evidence.Item{
		Name: e.What, Limit: evidence.AtMost(evidence.Bound{Number: evidence.Typed(fmt.Sprint(blockLife), evidence.Hour)}),
		Place: e.Place,
	}.By(evidence.HoursBetween(c.CheckedAt, e.At, evidence.Passed))
	age.Says = fmt.Sprintf("%s, read %s h after the %s on its block", e.What, age.Figure(), c.title())
	return []evidence.Item{c.off(toleranceOf(u)), age}, true
}
