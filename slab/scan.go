package slab

import (
	"fmt"
	"slices"

	"firstboard/report/evidence"
)

// scanChecks is the check of scans.
func scanChecks() []evidence.Check[Floor] {
	return []evidence.Check[Floor]{{
		ID: "scan-probed", Judge: scanProbed,
		Asks:    "is there a judged hole within " + Reach().String() + " of the highest scan of the bare slab?",
		Default: Reach().String(),
		Cite:    evidence.Cite{Source: "ASTM F2659: scans compare, then probe", Standing: evidence.Published},
	}}
}

// BareScans are the scans of the bare base since it was last wetted.
func (f Floor) BareScans() []Scan {
	return slices.DeleteFunc(slices.Clone(f.Scans), func(r Scan) bool {
		return !r.Bare() || r.ReadAt.Shown() && r.ReadAt.First.Before(f.Wet)
	})
}

// Bare says whether nothing lay on the base where it was scanned.
func (r Scan) Bare() bool { return r.Over == "" || evidence.Same(r.Over, "bare") }

func scanProbed(f Floor) evidence.Finding {
	if f.NoScan == "" && !slices.ContainsFunc(f.Scans, Scan.Bare) {
		f.NoScan = "the bare slab was not scanned"
	}
	if f.NoScan != "" {
		return evidence.Unneeded("%s", f.NoScan)
	}
	scans := f.BareScans()
	for _, r := range scans {
		if !r.ReadAt.Shown() || !r.Reading.Shown() {
			return evidence.Finding{
				Reason:   "scan spot " + r.Spot + " has no reading or no time",
				Evidence: []evidence.Place{r.Place},
			}
		}
	}
	if len(scans) == 0 {
		return evidence.Unshown("the bare slab was not scanned again since water came")
	}
	return f.probed(scans)
}

// probed asks of every scan that ties for the highest.
func (f Floor) probed(scans []Scan) evidence.Finding {
	byReading := func(a, b Scan) int { return a.Reading.Value.Cmp(b.Reading.Value) }
	top := slices.MaxFunc(scans, byReading)
	t := target{plan: placed(f.rows().holes)}
	for _, hole := range f.rows().holes.groups {
		if hole.own {
			t.some, t.nowhere = true, t.nowhere || nowhere(hole)
		}
	}
	var each []evidence.Finding
	for _, r := range scans {
		if byReading(r, top) == 0 {
			each = append(each, t.find(r))
		}
	}
	return evidence.Worst(each...)
}

// target is what scans are held against: the judged holes on the plan of the
// area, whether there are some, and whether one of them has no place.
type target struct {
	plan          near
	some, nowhere bool
}

func (t target) find(r Scan) evidence.Finding {
	found := evidence.Finding{Value: r.Reading.Written, Evidence: []evidence.Place{r.Place}}
	said := fmt.Sprintf("the highest scan, %s at spot %s, ", r.Reading.Written, r.Spot)
	if !r.X.Shown() || !r.Y.Shown() || !t.some {
		found.Reason = said + "has no place on the plan, or no hole was read"
		return found
	}
	name, doubtful := "", t.nowhere
	probed := t.plan.find(evidence.Key(r.Area), r.X, r.Y, func(hole group[Hole]) bool {
		close, known := nearScan(hole.Judged, r)
		name, doubtful = hole.Name, doubtful || !known
		return close
	})
	switch {
	case probed:
		found.Outcome, found.Reason = evidence.Met, said+"is probed by hole "+name
	case doubtful:
		found.Reason = said + "may have a judged hole within " + Reach().String() + ": that cannot be told"
	default:
		found.Outcome, found.Reason = evidence.NotMet, said+"has no judged hole within "+Reach().String()
	}
	return found
}

// nowhere says whether none of a hole's judged rows has a place.
func nowhere(hole group[Hole]) bool {
	return !slices.ContainsFunc(hole.Rows, Hole.placed)
}

// nearScan says whether every judged row of a hole lies near a scan, and
// whether that can be told.
func nearScan(hole evidence.Judged[Hole], r Scan) (near, known bool) {
	known = true
	for _, h := range hole.Rows {
		if h.placed() && !within3ft(r.X, r.Y, h.X, h.Y) {
			return false, true
		}
		known = known && h.placed() && holeUsable(h)
	}
	return known, known
}
