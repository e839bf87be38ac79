package slab

import (
	"fmt"
	"slices"
	"strconv"
	"time"

	"firstboard/report/evidence"
)

// otherChecks are the check of further tests and that of scans, in report
// order.
func otherChecks() []evidence.Check[Floor] {
	return []evidence.Check[Floor]{
		{
			ID: "other-tests", Deciding: true, Judge: otherTests,
			Asks: "does every further test that a manufacturer asks for meet the bounds of its own row?",
			Cite: evidence.Cite{Source: "the record", Standing: evidence.ByHand},
		},
		{
			ID: "scan-probed", Judge: scanProbed,
			Asks:    "is there a judged hole within 3 ft of the highest scan of the bare slab?",
			Default: "3 ft",
			Cite:    evidence.Cite{Source: "ASTM F2659: scans compare, then probe", Standing: evidence.Published},
		},
	}
}

func otherTime(r Other) evidence.Time { return r.ReadAt }

// JudgedOthers are the further tests, each at each spot, with their judged
// rows. Water does not undo them: they need not be of the slab.
func (f Floor) JudgedOthers() []evidence.Judged[Other] {
	return evidence.Latest(f.Others, time.Time{}, otherName, otherTime)
}

// otherName quotes test and spot, so that no two pairs share a name.
func otherName(r Other) string {
	if r.Spot == "" {
		return strconv.Quote(evidence.Tidy(r.Test))
	}
	return strconv.Quote(evidence.Tidy(r.Test)) + " at " + strconv.Quote(evidence.Tidy(r.Spot))
}

func otherTests(f Floor) evidence.Finding {
	if len(f.Others) == 0 {
		return evidence.Unneeded("no further test is recorded")
	}
	items := evidence.Items(f.JudgedOthers(), otherTime, func(name string, r Other) evidence.Item {
		it := evidence.Measure(name, r.Result, r.bounds())
		it.U = f.Instruments.U(r.Instrument, r.Result.Unit)
		if !r.AtLeast.Shown() && !r.AtMost.Shown() {
			it.Lack = "no bound is recorded for it"
		}
		return it
	})
	return evidence.Weigh(items, f.Acceptance, "no further test was read")
}

func (r Other) bounds() evidence.Limit {
	cite := evidence.Cite{Source: "the record: Other tests, no data sheet named", Standing: evidence.ByHand}
	if r.DataSheet != "" {
		cite = evidence.Cite{Source: r.DataSheet, Standing: evidence.Manufacturer}
	}
	return evidence.Limit{Least: evidence.Bound{Number: r.AtLeast, Cite: cite}, Most: evidence.Bound{Number: r.AtMost, Cite: cite}}
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
		f.NoScan = "the bare base was not scanned"
	}
	if f.NoScan != "" {
		return evidence.Unneeded("%s", f.NoScan)
	}
	scans := f.BareScans()
	for _, r := range scans {
		if !r.ReadAt.Shown() || !r.Reading.Shown() {
			return evidence.Finding{Reason: "scan spot " + r.Spot + " has no reading or no time", Evidence: []evidence.Place{r.Place}}
		}
	}
	if len(scans) == 0 {
		return evidence.Unshown("the base was not scanned again since it was wetted")
	}
	return f.probed(scans)
}

// probed asks of every scan that ties for the highest.
func (f Floor) probed(scans []Scan) evidence.Finding {
	byReading := func(a, b Scan) int { return a.Reading.Value.Cmp(b.Reading.Value) }
	top := slices.MaxFunc(scans, byReading)
	var each []evidence.Finding
	for _, r := range scans {
		if byReading(r, top) == 0 {
			each = append(each, f.hasHole(r))
		}
	}
	return evidence.Worst(each...)
}

func (f Floor) hasHole(r Scan) evidence.Finding {
	found := evidence.Finding{Value: r.Reading.Written, Evidence: []evidence.Place{r.Place}}
	found.Reason = fmt.Sprintf("the highest scan, %s at spot %s, has no place on the plan, or no hole is usable", r.Reading.Written, r.Spot)
	holes := slices.DeleteFunc(f.JudgedHoles(), func(h evidence.Judged[Hole]) bool { return len(h.Rows) == 0 })
	if !r.X.Shown() || !r.Y.Shown() || len(holes) == 0 {
		return found
	}
	found.Outcome = evidence.NotMet
	found.Reason = fmt.Sprintf("the highest scan, %s at spot %s, has no judged hole within 3 ft", r.Reading.Written, r.Spot)
	for _, hole := range holes {
		switch near, known := nearScan(hole, r); {
		case near && known:
			found.Outcome = evidence.Met
			found.Reason = fmt.Sprintf("the highest scan, %s at spot %s, is probed by hole %s", r.Reading.Written, r.Spot, hole.Name)
			return found
		case !known:
			found.Outcome = evidence.NotShown
			found.Reason = fmt.Sprintf("whether a judged hole lies within 3 ft of the highest scan, %s at spot %s, cannot be told", r.Reading.Written, r.Spot)
		}
	}
	return found
}

// nearScan says whether every judged row of a hole lies near a scan, and
// whether that can be told.
func nearScan(hole evidence.Judged[Hole], r Scan) (near, known bool) {
	known = true
	for _, h := range hole.Rows {
		placed := h.X.Shown() && h.Y.Shown()
		if placed && !within3ft(r.X, r.Y, h.X, h.Y) {
			return false, true
		}
		known = known && placed && holeUsable(h)
	}
	return known, known
}
