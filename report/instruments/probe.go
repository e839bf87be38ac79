package instruments

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"firstboard/report/evidence"
	"firstboard/report/lists"
	"firstboard/slab"
)

// probeCheck asks of every judged hole whether its probe could be believed. A
// check of a probe speaks once, whatever holes it was read in.
func probeCheck(rs Readings) evidence.Finding {
	if rs.Slab.NoHoles != "" {
		return evidence.Unneeded("%s", rs.Slab.NoHoles)
	}
	var items []evidence.Item
	told := Told{}
	for _, hole := range rs.Slab.JudgedHoles() {
		for _, h := range hole.Rows {
			items = append(items, rs.ProbeItems("hole "+hole.Name, h)...)
			items = append(items, rs.ProbeChecks(h, told)...)
		}
	}
	return evidence.Weigh(items, evidence.Acceptance{}, "no hole was read, or none since water came")
}

// ProbeItems are what is weighed of the instrument in a hole, but for its checks.
func (rs Readings) ProbeItems(name string, h slab.Hole) []evidence.Item {
	meter, listed := rs.Slab.Instruments.Find(h.Instrument)
	if !listed {
		return []evidence.Item{{Name: name, Limit: ProbeLife(), Lack: "no instrument named", Place: h.Place}}
	}
	var items []evidence.Item
	if meter.Has(evidence.Probe) {
		items = append(items, rs.checkAge(name, h, meter))
	}
	if meter.Has(evidence.SingleUse) {
		items = append(items, rs.usedOnce(name, h, meter))
	}
	if len(items) == 0 {
		items = append(items, notAProbe(name, h, meter))
	}
	return items
}

// ProbeChecks are what is weighed of the checks that speak of the probe in a hole,
// but for those that were told, in the order of the record.
func (rs Readings) ProbeChecks(h slab.Hole, told Told) []evidence.Item {
	meter, _ := rs.Slab.Instruments.Find(h.Instrument)
	key := evidence.Key(h.Instrument)
	cs := rs.Compared[key]
	type ranked struct {
		rank int
		item evidence.Item
	}
	var items []ranked
	if meter.Has(evidence.Probe) && h.ReadAt.Shown() {
		for i := range told.fresh(key+"\x00no time", len(cs.timed), span{0, cs.untimed()}) {
			items = append(items, ranked{cs.rank[i], cs.timed[i].lacks("no time")})
		}
	}
	for i := range told.fresh(key, len(cs.timed), cs.speaking(h, meter)) {
		items = append(items, ranked{cs.rank[i], cs.ofProbe[i]})
	}
	slices.SortStableFunc(items, func(a, b ranked) int { return a.rank - b.rank })
	return lists.Each(items, func(r ranked) evidence.Item { return r.item })
}

// Disagrees says whether a check that speaks of the probe in a hole is off.
func (rs Readings) Disagrees(h slab.Hole) bool {
	meter, _ := rs.Slab.Instruments.Find(h.Instrument)
	cs := rs.Compared[evidence.Key(h.Instrument)]
	s := cs.speaking(h, meter)
	return s.from < s.to && cs.off[s.to] > cs.off[s.from]
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
	ProbeDays  = 30
	probeHours = ProbeDays * hoursADay
	hoursADay  = 24
	together   = 24 * time.Hour
)

func ProbeLife() evidence.Limit {
	return evidence.AtMost(evidence.Bound{Number: evidence.Typed(fmt.Sprint(probeHours), evidence.Hour)})
}

// probeOff is how far a check of a probe may lie from what was expected (ASTM
// F2170, recalled).
func probeOff() evidence.Reading { return evidence.Typed("2", evidence.RH) }

// checkAge is how long before a reading its probe was last checked.
func (rs Readings) checkAge(name string, h slab.Hole, meter evidence.Instrument) evidence.Item {
	it := evidence.Item{Name: name, Limit: ProbeLife(), Place: h.Place}
	if !h.ReadAt.Shown() {
		it.Lack = evidence.NoTime
		return it
	}
	last := rs.Compared[evidence.Key(h.Instrument)].lastBefore(h.ReadAt.First)
	if !last.Shown() {
		it.Lack = "probe " + meter.ID + " has no check before the reading"
		return it
	}
	it = it.By(evidence.HoursBetween(last, h.ReadAt, evidence.Passed))
	it.Says = fmt.Sprintf("%s, read %s h after the last check of its probe %s", name, it.Figure(), h.Instrument)
	return it
}

// span is a run of numbers: from is its first, to the one after its last.
type span struct{ from, to int }

// speaking are the checks that speak of a reading: of a probe for single use all;
// of another the last one before it, those of the 24 h up to that, and each one at
// the reading or within 30 days after.
func (cs Comparisons) speaking(h slab.Hole, meter evidence.Instrument) span {
	switch t := h.ReadAt.First; {
	case meter.Has(evidence.SingleUse):
		return span{0, len(cs.timed)}
	case !h.ReadAt.Shown() || !meter.Has(evidence.Probe):
		return span{}
	default:
		from := t
		if last := cs.lastBefore(t); last.Shown() {
			from = last.First.Add(-together)
		}
		return span{before(cs.timed, from), before(cs.timed, t.Add(speaksFor+1))}
	}
}

// ofProbe is what a comparison weighs as the check of a probe.
func (c Comparison) ofProbe() evidence.Item {
	if !c.whole() {
		return c.lacks("no expected or no read value")
	}
	return c.off(tolerance{most: evidence.Bound{Number: probeOff()}})
}

// usedOnce counts the holes of the whole record that a single-use probe was used
// in.
func (rs Readings) usedOnce(name string, h slab.Hole, meter evidence.Instrument) evidence.Item {
	limit := evidence.AtMost(evidence.Bound{Number: evidence.Typed("1", evidence.Holes)})
	it := evidence.Item{Name: name, Limit: limit, Place: h.Place}.By(rs.Used[evidence.Key(meter.ID)])
	it.Says = fmt.Sprintf("%s, whose single-use probe %s was used in %s", name, meter.ID,
		evidence.Count(it.Value.Ceil(), "hole", "holes"))
	if !h.ReadAt.Shown() {
		it.Lack = evidence.NoTime
	}
	return it
}

// UsedIn counts the holes that each single-use probe was used in, by the key of the
// probe; rows are those of holes by the same key.
func UsedIn(rows map[string][]slab.Hole, all evidence.Instruments) map[string]evidence.Working {
	used := map[string]evidence.Working{}
	for key, meter := range all {
		if !meter.Has(evidence.SingleUse) {
			continue
		}
		var holes []evidence.Working
		known := map[[2]string]bool{}
		for _, h := range rows[key] {
			if hole := [2]string{evidence.Key(h.Area), evidence.Key(h.Hole)}; !known[hole] {
				known[hole] = true
				holes = append(holes, evidence.Cell("hole "+h.Hole, h.RH))
			}
		}
		used[key] = evidence.CountOf(evidence.Holes, holes...)
	}
	return used
}
