package wood

import (
	"math"
	"strconv"

	"firstboard/report/evidence"
)

// line is a correction close to one reading: what the reading becomes, and how
// fast that changes with the reading.
type line struct{ at, slope evidence.Exact }

// wet says whether the value lies above the last column of the tables.
func (l line) wet() bool { return l.at.Cmp(evidence.Whole(wettest)) > 0 }

// about is the corrected value as a straight line of the reading's own cell,
// rounded once, to 0.1: the same figure as the tables give, in a form that a
// spreadsheet can follow.
func (l line) about(r evidence.Reading) evidence.Working {
	slope := l.slope.Round(6)
	start := l.at.Sub(slope.Mul(r.Exact())).Round(9)
	return evidence.Rounded(evidence.Total(
		evidence.Stated("start of the correction near this reading", start, evidence.MC),
		evidence.Times(evidence.Stated("slope of the correction near this reading", slope, evidence.None),
			evidence.Cell("reading", r), evidence.MC),
	), 1)
}

// forSpecies turns the value from one species' scale to another's.
func (l line) forSpecies(scale, species string) (line, bool) {
	mc, slope, ok := speciesLine(l.at.Float(), scale, species)
	return line{fromFloat(mc), fromFloat(slope).Mul(l.slope)}, ok
}

// fromFloat is where a float64 of the species correction becomes a decimal.
func fromFloat(x float64) evidence.Exact {
	const parts = 1_000_000_000
	n, _ := strconv.ParseInt(strconv.FormatFloat(math.RoundToEven(x*parts), 'f', 0, 64), 10, 64)
	return evidence.Ratio(n, parts)
}
