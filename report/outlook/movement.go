package outlook

import (
	"strconv"

	"firstboard/acclimate"
	"firstboard/report"
	"firstboard/report/ahead"
	"firstboard/report/evidence"
	"firstboard/report/limits"
	"firstboard/wood"
)

// movementOf is what the boards of each lot would do over a year, installed as
// they are: free movement between the driest and the wettest period of the
// service climate (Wood Handbook eq. 13-2). A lot is left out where its mean,
// its width or how its wood moves is not known.
func movementOf(s report.Site) []ahead.Movement {
	all := []ahead.Movement{}
	target, p := acclimate.TargetOf(s.Room.Service), s.System.Flooring
	if s.Wood.NoFlooring != "" || target.Lack != "" || p == nil || !p.FaceWidth.Shown() {
		return all
	}
	floor := wood.Installed{Width: p.FaceWidth.In(evidence.Inch).Float()}
	coefficient, known := across(p, &floor)
	if !known {
		return all
	}
	if s.Area.AcrossBoards.Shown() {
		floor.Across = s.Area.AcrossBoards.In(evidence.Inch).Float()
	}
	for _, lot := range s.Wood.Lots() {
		mean := s.Wood.Mean(lot)
		if mean.Lack != "" {
			continue
		}
		now := mean.High.Value
		year, err := floor.Through(now.Float(), target.Low.Value.Float(), target.High.Value.Float())
		if err != nil {
			continue
		}
		m := ahead.Movement{
			Lot: lot.Name, NowPct: now.Text(), LowPct: target.Low.Value.Fixed(1), HighPct: target.High.Value.Fixed(1),
			Coefficient: coefficient, BoardIn: p.FaceWidth.In(evidence.Inch).Text(),
			ShrinkIn: places(year.Shrinks, 4), GrowIn: places(year.Grows, 4),
		}
		if floor.Across > 0 {
			m.AcrossShrinkIn, m.AcrossGrowIn = places(year.AcrossShrinks, 2), places(year.AcrossGrows, 2)
		}
		all = append(all, m)
	}
	return all
}

// across fills in how a flooring's boards move, by its own coefficient or by
// that of its species and cut.
func across(p *limits.Product, floor *wood.Installed) (written string, known bool) {
	if p.Across.Shown() {
		floor.Coefficient = p.Across.Exact().Float()
		return p.Across.Written, true
	}
	species, err := wood.FindSpecies(p.Species)
	if err != nil {
		return "", false
	}
	if floor.Coefficient, floor.Shrinkage, err = species.Across(p.Cut); err != nil {
		return "", false
	}
	return strconv.FormatFloat(floor.Coefficient, 'f', -1, 64), true
}

// places is a number with so many decimals.
func places(x float64, n int) string { return strconv.FormatFloat(x, 'f', n, 64) }
