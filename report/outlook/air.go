package outlook

import (
	"math"

	"gonum.org/v1/gonum/stat"

	"firstboard/acclimate"
	"firstboard/acclimate/settling"
	"firstboard/report"
	"firstboard/report/ahead"
	"firstboard/report/evidence"
	"firstboard/wood"
)

// airOf is the air that brings the boards of an area to their target, at the
// temperature that the air has had, and the water that boards and subfloor give
// up or take in on the way; nil where the target or the air is not known.
func airOf(s report.Site, air []evidence.AirState) *ahead.Air {
	target := acclimate.TargetOf(s.Room.Service)
	if s.Wood.NoFlooring != "" || target.Lack != "" || len(air) == 0 {
		return nil
	}
	last := air[len(air)-1].Day
	tempC := evidence.AirMean(air, func(a evidence.AirState) float64 { return a.TempC })(last, last)
	low, high, err := settling.Band(tempC, target.Mid.Value.Float(), s.Room.Tolerance.Number.Exact().Float())
	if err != nil {
		return nil
	}
	o := &ahead.Air{
		RHLowPct: places(math.Ceil(low), 0), RHHighPct: places(math.Floor(high), 0),
		TempF: places(math.Round(tempC*9/5+32), 0),
	}
	if kg, known := waterKG(s, target.Mid.Value.Float()); known {
		o.WaterKG, o.WaterLb = places(kg, 1), places(kg/poundKG, 1)
	}
	return o
}

const poundKG = 0.45359237 // exactly

// subfloorMM stands in for the thickness of a subfloor, which no record holds:
// 3/4 in (practice).
const subfloorMM = 19.05

// waterKG is the water that the boards, and under them a wood subfloor, take in
// until they are at the target; unknown where a mean or a measure of them is.
func waterKG(s report.Site, targetPct float64) (kg float64, known bool) {
	p := s.System.Flooring
	if p == nil || !p.Thickness.Shown() || !s.Area.Size.Shown() {
		return 0, false
	}
	now, known := boardsNow(s)
	if !known {
		return 0, false
	}
	m2 := s.Area.Size.In(evidence.SquareM).Float()
	boards, err := wood.Water(m2, p.Thickness.In(evidence.Millimeter).Float(), wood.GravityOf(p.Species).Value, now,
		targetPct)
	if err != nil || s.Wood.NoSubfloor != "" {
		return boards, err == nil
	}
	under, known := middleOf(s.Wood.MeanOfSubfloor())
	if !known {
		return 0, false
	}
	below, err := wood.Water(m2, subfloorMM, wood.GravityOf(subfloorOf(s)).Value, under, targetPct)
	return boards + below, err == nil
}

// subfloorOf is what the subfloor is made of, as its first judged row says.
func subfloorOf(s report.Site) string {
	for _, piece := range s.Wood.Pieces(wood.OfSubfloor) {
		for _, r := range piece.Rows {
			return r.Species
		}
	}
	return ""
}

// boardsNow is the mean of all lots, each as heavy as its boards are many.
func boardsNow(s report.Site) (pct float64, known bool) {
	var means, boards []float64
	for _, lot := range s.Wood.Lots() {
		mean, known := middleOf(s.Wood.Mean(lot))
		if !known {
			return 0, false
		}
		means, boards = append(means, mean), append(boards, float64(len(lot.Boards)))
	}
	return stat.Mean(means, boards), len(means) > 0
}

func middleOf(mean wood.Span) (pct float64, known bool) {
	if mean.Lack != "" {
		return 0, false
	}
	return (mean.Low.Value.Float() + mean.High.Value.Float()) / 2, true
}
