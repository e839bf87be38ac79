package pictures

import (
	"slices"
	"strings"

	"firstboard/acclimate"
	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/wood"
)

// moistureOf is how the boards and the subfloor are spread, lot by lot.
func moistureOf(s report.Site) Picture {
	p := Picture{
		Shows: WoodMoisture, Title: "Moisture content of boards and subfloor (% MC, a dot a reading)",
		X: "moisture content (%)", Y: "number of readings", Unit: evidence.MC,
	}
	var lacking []string
	if s.Wood.NoFlooring == "" {
		for _, lot := range s.Wood.Lots() {
			points := moistures(lot.Boards, &lacking)
			p.with(lot.Title(), Flooring, points)
		}
	}
	boards := len(p.Series) > 0
	if s.Wood.NoSubfloor == "" {
		p.with("subfloor", Subfloor, moistures(s.Wood.Pieces(wood.OfSubfloor), &lacking))
	}
	if n := len(p.Series); n > 0 && p.Series[n-1].Role == Subfloor {
		p.ends("subfloor ", s.Limits.Subfloor, evidence.MC)
	}
	if boards {
		p.ends("boards, ", s.Limits.Flooring, evidence.MC)
		p.target(s)
	}
	switch {
	case len(p.Series) == 0 || p.Series[0].Role == Subfloor:
		p.Title = strings.Replace(p.Title, "boards and subfloor", "the subfloor", 1)
	case !slices.ContainsFunc(p.Series, func(s Series) bool { return s.Role == Subfloor }):
		p.Title = strings.Replace(p.Title, "boards and subfloor", "the boards", 1)
	}
	p.leftOut(lacking)
	return p
}

// WithMeans is a picture of moisture with the means of lots and subfloor, and how
// far from the subfloor's a lot's may lie; any other as it is.
func (p Picture) WithMeans(s report.Site) Picture {
	if p.Shows != WoodMoisture {
		return p
	}
	p.Series, p.Notes = slices.Clone(p.Series), slices.Clone(p.Notes)
	addMeans(s, &p)
	most := s.Wood.Difference.Most.Number
	for _, mean := range s.Wood.MeanOfSubfloor().Each() {
		if s.Wood.NoDifference != "" || !most.Shown() {
			continue
		}
		y := evidence.Reading{Written: mean.Value.Text(), Value: mean.Value.Decimal(), Unit: evidence.MC}
		p.Series = append(p.Series, Series{"mean of the subfloor", LotMean, []Point{{Y: y}}})
		under, over := besides(s, mean)
		if under {
			p.level("a lot's mean, lowest", Lowest, evidence.Computed(y.Value.Sub(most.Value), evidence.MC),
				evidence.MC)
		}
		if over {
			p.level("a lot's mean, highest", Highest, evidence.Computed(y.Value.Add(most.Value), evidence.MC),
				evidence.MC)
		}
	}
	return p
}

// besides says whether lots' means lie under and over the subfloor's.
func besides(s report.Site, subfloor evidence.Working) (under, over bool) {
	for _, lot := range s.Wood.Lots() {
		for _, mean := range s.Wood.Mean(lot).Each() {
			less := mean.Value.Decimal().LessThan(subfloor.Value.Decimal())
			under, over = under || less, over || !less
		}
	}
	return under, over
}

// moistures are the judged readings of pieces, corrected where they had to be.
func moistures(pieces []evidence.Judged[wood.Row], lacking *[]string) []Point {
	var all []Point
	for _, piece := range pieces {
		var read []Point
		for _, r := range piece.Rows {
			m := r.Moisture()
			if !r.ReadAt.Shown() {
				m.Lack = evidence.NoTime
			}
			if m.Lack != "" {
				*lacking = append(*lacking, piece.Name+" ("+m.Lack+")")
				continue
			}
			y := evidence.Reading{
				Written: m.Written, Value: m.Value().Decimal(), Unit: evidence.MC,
				Place: r.Reading.Place,
			}
			read = append(read, Point{Name: piece.Name, At: r.ReadAt, Y: y})
		}
		slices.SortStableFunc(read, inTime)
		all = append(all, read...)
	}
	return all
}

// target adds the target of the service climate, where it is known.
func (p *Picture) target(s report.Site) {
	if t := acclimate.TargetOf(s.Room.Service); t.Lack == "" {
		p.level("target", TargetEMC, evidence.Computed(t.Mid.Value.Decimal(), evidence.MC), evidence.MC)
	}
}

// serviceOf is the moisture content that the boards will seek over the
// year, beside their mean.
func serviceOf(s report.Site) Picture {
	p := Picture{
		Shows: ServiceEMC, Title: "Equilibrium moisture content of each period of the service climate (% MC)",
		X: "period", Y: "moisture content (%)", Unit: evidence.MC,
	}
	if s.Wood.NoFlooring != "" {
		return p
	}
	var points []Point
	var lacking []string
	for _, period := range s.Room.Service {
		emc, err := period.EMC()
		if err != nil {
			lacking = append(lacking, period.Name)
			continue
		}
		y := evidence.Computed(emc.Value.Decimal(), evidence.MC)
		y.Place = period.RH.Place
		points = append(points, Point{Name: period.Name, Y: y})
	}
	p.with("EMC of the period", Judged, points)
	addMeans(s, &p)
	p.target(s)
	p.leftOut(lacking)
	if len(p.Series) > 1 {
		p.Notes = append(p.Notes, "a lot's mean may lie "+s.Room.Tolerance.Number.String()+" either side of the target")
	}
	return p
}

// addMeans adds the mean of each lot; of many lots the lowest and the highest.
func addMeans(s report.Site, p *Picture) {
	const few = 4
	var all []Series
	for _, lot := range s.Wood.Lots() {
		for _, mean := range s.Wood.Mean(lot).Each() {
			y := evidence.Reading{Written: mean.Value.Text(), Value: mean.Value.Decimal(), Unit: evidence.MC}
			all = append(all, Series{"mean of " + lot.Title(), LotMean, []Point{{Y: y}}})
		}
	}
	if len(all) > few {
		byMean := func(a, b Series) int { return a.Points[0].Y.Value.Cmp(b.Points[0].Y.Value) }
		p.Notes = append(p.Notes, "the lots of the lowest and the highest mean are drawn, of "+evidence.Count(len(all),
			"mean", "means"))
		all = []Series{slices.MinFunc(all, byMean), slices.MaxFunc(all, byMean)}
	}
	p.Series = append(p.Series, all...)
}
