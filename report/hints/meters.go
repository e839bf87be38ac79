package hints

import (
	"fmt"
	"slices"

	"firstboard/report/evidence"
	"firstboard/report/lists"
	"firstboard/slab"
	"firstboard/wood"
)

// What two kinds of meter say together is common practice, no source: it
// advises and judges nothing. A pin reading is high when it lies more than 3
// points over the median of its area, low when it does not lie over it; a scan
// is high when it lies more than a quarter over the spot named reference, or
// over the median where no spot is, low when it does not lie over it.
const practiceNote = " (common practice, no source)"

// Meters is what pins, scans and depths say together.
func (a Area) Meters() []string {
	return slices.Concat(a.pinsAndScans(), a.wetSides(wood.OfSubfloor), a.wetSides(wood.OfFlooring),
		a.wetSides(wood.OfJoist), a.coveredScans())
}

// pinsAndScans holds every pin reading against the scans at its place.
func (a Area) pinsAndScans() []string {
	pins := lists.Where(a.Wood.Rows, func(r wood.Row) bool { return r.Method == wood.Pin && r.Reading.Shown() })
	scans := lists.Where(a.Slab.Scans, func(r slab.Scan) bool { return r.Reading.Shown() })
	midPin := middle(lists.Each(pins, func(r wood.Row) evidence.Exact { return r.Reading.Exact() }))
	midScan := reference(scans)
	var advice []string
	for _, pin := range pins {
		for _, scan := range scans {
			if !samePlace(pin, scan) {
				continue
			}
			over := pin.Reading.Exact().Sub(midPin)
			share := scan.Reading.Exact()
			high := share.Cmp(midScan.Mul(evidence.Ratio(5, 4))) > 0
			low := share.Cmp(midScan) <= 0
			switch {
			case over.Cmp(evidence.Whole(3)) > 0 && low:
				advice = append(advice, fmt.Sprintf("%s %s: pins high (%s) and the scan at %s low (%s): "+
					"moisture at the surface, condensation the likely cause; %s%s",
					pin.Of, pin.Piece, pin.Reading, scan.Spot, scan.Reading.Written, a.dewWord(), practiceNote))
			case over.Sign() <= 0 && high:
				advice = append(advice, fmt.Sprintf("%s %s: pins low (%s) and the scan at %s high (%s): "+
					"moisture below the surface or under a flooring; probe it%s",
					pin.Of, pin.Piece, pin.Reading, scan.Spot, scan.Reading.Written, practiceNote))
			}
		}
	}
	return advice
}

// dewWord is what the surface margin says of condensation.
func (a Area) dewWord() string {
	switch a.Outcome("surface-dew") {
	case evidence.Met:
		return "the surface margin above the dew point denies it"
	case evidence.NotMet:
		return "the surface margin above the dew point confirms it"
	}
	return "no surface margin above the dew point confirms or denies it"
}

// reference is the reading of the spot named reference, else the median.
func reference(scans []slab.Scan) evidence.Exact {
	named := func(r slab.Scan) bool { return evidence.Same(r.Spot, "reference") }
	if at := slices.IndexFunc(scans, named); at >= 0 {
		return scans[at].Reading.Exact()
	}
	return middle(lists.Each(scans, func(r slab.Scan) evidence.Exact { return r.Reading.Exact() }))
}

// middle is the median, and zero of nothing.
func middle(values []evidence.Exact) evidence.Exact {
	if len(values) == 0 {
		return evidence.Exact{}
	}
	slices.SortFunc(values, evidence.Exact.Cmp)
	n := len(values)
	return evidence.Mean(values[(n-1)/2 : n/2+1])
}

// samePlace says whether a piece and a scan spot share a name or lie within
// 1 ft of each other.
func samePlace(pin wood.Row, scan slab.Scan) bool {
	if evidence.Same(pin.Piece, scan.Spot) {
		return true
	}
	if !pin.X.Shown() || !pin.Y.Shown() || !scan.X.Shown() || !scan.Y.Shown() {
		return false
	}
	dx := pin.X.In(evidence.Foot).Sub(scan.X.In(evidence.Foot))
	dy := pin.Y.In(evidence.Foot).Sub(scan.Y.In(evidence.Foot))
	return dx.Mul(dx).Add(dy.Mul(dy)).Cmp(evidence.Whole(1)) <= 0
}

// wetSides says of every piece read at several depths which side is wetter.
func (a Area) wetSides(what string) []string {
	rows := lists.Where(a.Wood.Of(what), func(r wood.Row) bool { return r.Depth.Shown() && r.Reading.Shown() })
	var advice []string
	for _, piece := range evidence.Group(rows, func(r wood.Row) string { return r.Lot + "\x00" + r.Piece }) {
		if word := wetSide(piece.Rows); word != "" {
			advice = append(advice, word+practiceNote)
		}
	}
	return advice
}

// wetSide compares the shallowest and the deepest reading of a piece, taken
// on one day, from 1 point of difference on.
func wetSide(rows []wood.Row) string {
	byDepth := func(a, b wood.Row) int { return a.Depth.In(evidence.Inch).Cmp(b.Depth.In(evidence.Inch)) }
	up, down := slices.MinFunc(rows, byDepth), slices.MaxFunc(rows, byDepth)
	apart := down.Reading.Exact().Sub(up.Reading.Exact())
	if byDepth(up, down) == 0 || up.ReadAt.Day() != down.ReadAt.Day() || apart.Abs().Cmp(evidence.Whole(1)) < 0 {
		return ""
	}
	side := lists.If(apart.Sign() < 0, "the wet side is up: look for moisture from above",
		"the wet side is down: look for moisture from below")
	return fmt.Sprintf("%s %s: %s at %s deep and %s at %s deep: %s", up.Of, up.Piece, up.Reading, up.Depth,
		down.Reading, down.Depth, side)
}

// coveredScans says what has to be opened before a scan counts.
func (a Area) coveredScans() []string {
	covered := lists.Where(a.Slab.Scans, func(r slab.Scan) bool { return !r.Bare() })
	return lists.Each(covered, func(r slab.Scan) string {
		return fmt.Sprintf("spot %s was scanned over %s: open it there and read the substrate itself; "+
			"a scan over a flooring is not judged", r.Spot, r.Over)
	})
}
