package outlook

import (
	"slices"

	"firstboard/report"
	"firstboard/report/ahead"
	"firstboard/report/evidence"
	"firstboard/report/lists"
)

// Holds says whether an area's verdict stays what it is under each of the
// alternatives that the rules offer, taken one at a time, or what it turns on:
//
//   - a hole, dish, subfloor piece or board left out, as long as another of its
//     kind is left. Counts stay as they are: who leaves a reading out has still
//     read the place;
//   - a reading at either end of its uncertainty, where guarded acceptance counts
//     that of single readings and acceptance is simple;
//   - the other acceptance;
//   - the other wait before a hole is read, of the two editions.
func Holds(d report.Decision) ahead.Holds {
	h := &holder{site: d.Site, found: d.Findings, verdict: d.Verdict, all: allMeasured(d.Site), turns: map[id]bool{}}
	h.census = censusOf(h.all)
	if d.Verdict == evidence.Go {
		h.ofGo()
	} else {
		h.ofNoGo()
	}
	on := append(h.things(), h.rules()...)
	return ahead.Holds{Holds: len(on) == 0, TurnsOn: append([]string{}, on...)}
}

// holder finds what the verdict on one area turns on.
type holder struct {
	site    report.Site
	found   []evidence.Finding
	verdict evidence.Verdict
	all     []measured
	census  census
	turns   map[id]bool
}

// ofReadings are the checks that a reading left out may answer otherwise, counts
// aside.
func ofReadings() []string {
	return slices.Concat([]string{
		airHeld, "slab-depth", "slab-wait", "slab-temp", "mver-time", "heat-run",
		"calibration", "probe-check", "reading-age",
	},
		ofSingles(), ofMeans())
}

// ofSingles are the checks that hold single readings of slab and wood against a
// limit, the uncertainty of each with it where acceptance is guarded.
func ofSingles() []string {
	return []string{"slab-rh", "mver-rate", "slab-ph", "slab-cm", "subfloor-mc", "flooring-mc"}
}

// ofMeans are the checks of what several readings come to together.
func ofMeans() []string { return []string{"flooring-target", "flooring-spread", "wood-difference"} }

// ofGo looks for what turns a GO. Single readings of it can only break a limit
// where they move; a mean can where one of its readings is left out, and so can
// whatever the first or the last reading decides: the visit, the air's window.
func (h *holder) ofGo() {
	h.moved()
	turns := func(m measured) bool { return !h.goesWithout(m) }
	h.edges(turns)
	h.eachAlike(turns)
}

// moved looks for single readings that are over a limit at an end of their
// uncertainty: all are moved at once, for each is held against its limit by itself.
func (h *holder) moved() {
	if h.site.Job.Guarded {
		return
	}
	owner := map[string]id{}
	for _, m := range h.all {
		for _, p := range m.places {
			owner[evidence.RowKey(p)] = m.id
		}
	}
	for _, by := range []int{-1, 1} {
		for _, f := range h.site.Again(moving(h.site, nil, by)).Find(ofSingles()) {
			for _, p := range f.Evidence {
				if of, known := owner[evidence.RowKey(p)]; known && f.Deciding && f.Outcome == evidence.NotMet {
					h.turns[of] = true
				}
			}
		}
	}
}

// ofNoGo looks for the one thing without which a NO-GO would be a GO.
func (h *holder) ofNoGo() {
	blocking := h.blocking()
	ids := idsOf(blocking)
	if len(ids) == 0 || len(lists.Among(ids, ofReadings())) < len(ids) {
		return
	}
	apart := slices.ContainsFunc(blocking, func(f evidence.Finding) bool {
		return f.ID != airHeld && !(slices.Contains(ofMeans(), f.ID) && f.Outcome == evidence.NotMet)
	})
	h.edges(h.goesWithout)
	if !apart {
		h.eachAlike(h.goesWithout)
		return
	}
	for _, m := range h.offenders(lists.Where(h.all, h.census.spares), slices.Contains(ids, airHeld)) {
		if h.goesWithout(m) {
			h.turns[m.id] = true
		}
	}
	h.movedBack(blocking)
}

// movedBack looks for the one reading that is within its limit at an end of its
// uncertainty, where no other stops the area.
func (h *holder) movedBack(blocking []evidence.Finding) {
	if h.site.Job.Guarded || len(lists.Among(idsOf(blocking), ofSingles())) < len(blocking) {
		return
	}
	for _, m := range h.all {
		owns := func(p evidence.Place) bool {
			return slices.ContainsFunc(m.places,
				func(q evidence.Place) bool { return evidence.RowKey(p) == evidence.RowKey(q) })
		}
		if !slices.ContainsFunc(blocking[0].Evidence, owns) {
			continue
		}
		only := map[id]bool{m.id: true}
		for _, by := range []int{-1, 1} {
			found := h.site.Again(moving(h.site, only, by)).Find(ofSingles())
			if !slices.ContainsFunc(found, evidence.Finding.Blocks) {
				h.turns[m.id] = true
			}
		}
		return // another one of its rows stops the area as well
	}
}

// edges looks at the things that by themselves were read first or last of their
// kind and lot: a visit, or the window of the air, may be another one without.
func (h *holder) edges(turns func(measured) bool) {
	for _, m := range h.all {
		if h.census.spares(m) && h.census.isEdge(m) && turns(m) {
			h.turns[m.id] = true
		}
	}
}

// offenders finds, half by half, things of which each by itself is all that
// breaks the checks of single readings.
func (h *holder) offenders(some []measured, withAir bool) []measured {
	var halves [2][]measured
	for i, m := range some {
		halves[i%2] = append(halves[i%2], m)
	}
	var all []measured
	for _, half := range halves {
		if len(half) == 0 || !h.passWithout(half, withAir) {
			continue
		}
		if len(half) == 1 {
			all = append(all, half[0])
			continue
		}
		all = append(all, h.offenders(half, withAir)...)
	}
	return all
}

// passWithout says whether the checks of single readings pass without some
// things, and nothing makes a mean unreadable.
func (h *holder) passWithout(some []measured, withAir bool) bool {
	ids := ofReadings()[lists.If(withAir, 0, 1):]
	return h.passes(some, ids, func(f evidence.Finding) bool {
		return !f.Blocks() || slices.Contains(ofMeans(), f.ID) && f.Outcome == evidence.NotMet
	})
}

// goesWithout says whether the area is a GO without a thing, counts and all that
// no reading decides staying as they are.
func (h *holder) goesWithout(m measured) bool {
	return h.passes([]measured{m}, ofReadings(), func(f evidence.Finding) bool { return !f.Blocks() })
}

// passes says whether all answers to some checks pass without some things. What
// stops the area as it is comes first: it mostly still does.
func (h *holder) passes(some []measured, ids []string, pass func(evidence.Finding) bool) bool {
	site := h.site.Again(without(some))
	stopping := lists.Among(ids, idsOf(h.blocking()))
	for _, part := range [][]string{stopping, beside(ids, stopping)} {
		if slices.ContainsFunc(h.find(site, part), func(f evidence.Finding) bool { return !pass(f) }) {
			return false
		}
	}
	return true
}

// find is the answers of another site to some checks. Air that is to be held for
// as long as before is not judged again.
func (h *holder) find(site report.Site, ids []string) []evidence.Finding {
	if !slices.Contains(ids, airHeld) || !site.Room.HeldLike(h.site.Room) {
		return site.Find(ids)
	}
	held := lists.Where(h.found, func(f evidence.Finding) bool { return f.ID == airHeld })
	return append(held, site.Find(beside(ids, []string{airHeld}))...)
}

// blocking are the findings that stop the area.
func (h *holder) blocking() []evidence.Finding {
	return lists.Where(h.found, evidence.Finding.Blocks)
}

const airHeld = "air-held"

func idsOf(found []evidence.Finding) []string {
	return lists.Each(found, func(f evidence.Finding) string { return f.ID })
}

// beside are the names that another list does not hold.
func beside(names, list []string) []string {
	return lists.Where(names, func(n string) bool { return !slices.Contains(list, n) })
}
