package instruments

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"firstboard/report/evidence"
	"firstboard/slab"
)

// probeCheck asks of every judged hole whether its probe could be believed.
func probeCheck(rs Readings) evidence.Finding {
	if rs.Slab.NoHoles != "" {
		return evidence.Unneeded("%s", rs.Slab.NoHoles)
	}
	var items []evidence.Item
	seen := map[string]bool{} // a check of a probe speaks once, whatever holes it was read in
	for _, hole := range rs.Slab.JudgedHoles() {
		for _, h := range hole.Rows {
			for _, it := range rs.ProbeItems("hole "+hole.Name, h) {
				if key := strings.Join([]string{it.Name, it.Lack, it.Says, evidence.RowKey(it.Place)}, "\x00"); !seen[key] {
					seen[key] = true
					items = append(items, it)
				}
			}
		}
	}
	return evidence.Weigh(items, evidence.Acceptance{}, "no hole was read, or none since water came")
}

// ProbeItems are what is weighed of the instrument in a hole.
func (rs Readings) ProbeItems(name string, h slab.Hole) []evidence.Item {
	meter, listed := rs.Slab.Instruments.Find(h.Instrument)
	if !listed {
		return []evidence.Item{{Name: name, Limit: ProbeLife(), Lack: "no instrument named", Place: h.Place}}
	}
	var items []evidence.Item
	if meter.Has(evidence.Probe) {
		items = append(items, rs.checked(name, h, meter)...)
	}
	if meter.Has(evidence.SingleUse) {
		items = append(items, rs.usedOnce(name, h, meter)...)
	}
	if len(items) == 0 {
		items = append(items, notAProbe(name, h, meter))
	}
	return items
}

// notAProbe counts the probes in a hole: none.
func notAProbe(name string, h slab.Hole, meter evidence.Instrument) evidence.Item {
	limit := evidence.AtLeast(evidence.Bound{Number: evidence.Typed("1", evidence.Pieces)})
	it := evidence.Item{Name: name, Limit: limit, Place: h.Place}.By(evidence.CountOf(evidence.Pieces))
	it.Says = fmt.Sprintf("%s, read with %s, which is listed as %q and not as an RH probe", name, meter.ID,
		strings.Join(meter.Kinds, ", "))
	return it
}

// How old the last check of a probe may be, and how long before that one others
// count as well.
const (
	probeHours = 720
	together   = 24 * time.Hour
)

func ProbeLife() evidence.Limit {
	return evidence.AtMost(evidence.Bound{Number: evidence.Typed(fmt.Sprint(probeHours), evidence.Hour)})
}

// probeOff is how far a check of a probe may lie from what was expected (ASTM
// F2170, recalled).
func probeOff() evidence.Reading { return evidence.Typed("2", evidence.RH) }

func probeTolerance() tolerance {
	return tolerance{most: evidence.Bound{Number: probeOff()}}
}

// checked weighs the last check before a reading, its age, and the agreement of
// all that count: those of the 24 h up to it, and each one at the reading or
// within 30 days after.
func (rs Readings) checked(name string, h slab.Hole, meter evidence.Instrument) []evidence.Item {
	if !h.ReadAt.Shown() {
		return []evidence.Item{{Name: name, Limit: ProbeLife(), Lack: evidence.NoTime, Place: h.Place}}
	}
	checks := rs.Compared[evidence.Key(meter.ID)]
	last := evidence.Last(checks, func(c Comparison) evidence.Time {
		if !c.CheckedAt.First.Before(h.ReadAt.First) {
			return evidence.Time{}
		}
		return c.CheckedAt
	})
	var items []evidence.Item
	if !last.Shown() {
		lack := "its probe " + meter.ID + " has no check before the reading"
		items = append(items, evidence.Item{Name: name, Limit: ProbeLife(), Lack: lack, Place: h.Place})
	} else {
		items = append(items, checkAge(name, h, last))
	}
	for _, c := range checks {
		switch t := c.CheckedAt.First; {
		case !c.CheckedAt.Shown():
			items = append(items, c.lacks("no time"))
		case t.Before(h.ReadAt.First) && last.First.Sub(t) <= together, !t.Before(h.ReadAt.First) &&
			t.Sub(h.ReadAt.First) <= speaksFor:
			items = append(items, agreement(c))
		}
	}
	return items
}

func checkAge(name string, h slab.Hole, last evidence.Time) evidence.Item {
	it := evidence.Item{
		Name: name, Limit: ProbeLife(),
		Place: h.Place,
	}.By(evidence.HoursBetween(last, h.ReadAt, evidence.Passed))
	it.Says = fmt.Sprintf("%s, read %s h after the last check of its probe %s", name, it.Figure(), h.Instrument)
	return it
}

func agreement(c Comparison) evidence.Item {
	if !c.Expected.Shown() || !c.Read.Shown() {
		return c.lacks("no expected or no read value")
	}
	return c.off(probeTolerance())
}

// usedOnce counts the holes of the whole record that a single-use probe was
// used in, and holds each check of it against the tolerance.
func (rs Readings) usedOnce(name string, h slab.Hole, meter evidence.Instrument) []evidence.Item {
	var holes []evidence.Working
	var known []string
	for _, other := range rs.Probed[evidence.Key(meter.ID)] {
		if key := evidence.Key(other.Area) + "\x00" + evidence.Key(other.Hole); !slices.Contains(known, key) {
			known = append(known, key)
			holes = append(holes, evidence.Cell("hole "+other.Hole, other.RH))
		}
	}
	limit := evidence.AtMost(evidence.Bound{Number: evidence.Typed("1", evidence.Holes)})
	it := evidence.Item{Name: name, Limit: limit, Place: h.Place}.By(evidence.CountOf(evidence.Holes, holes...))
	it.Says = fmt.Sprintf("%s, whose single-use probe %s was used in %s", name, meter.ID,
		evidence.Count(len(holes), "hole", "holes"))
	if !h.ReadAt.Shown() {
		it.Lack = evidence.NoTime
	}
	items := []evidence.Item{it}
	for _, c := range rs.Compared[evidence.Key(meter.ID)] {
		items = append(items, agreement(c))
	}
	return items
}
