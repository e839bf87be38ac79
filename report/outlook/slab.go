package outlook

import (
	"cmp"
	"math"
	"slices"
	"time"

	"firstboard/report"
	"firstboard/report/ahead"
	"firstboard/report/evidence"
	"firstboard/report/lists"
	"firstboard/slab"
	"firstboard/slab/drying"
)

// mostForecast is how many holes of an area are forecast: of more, those that a
// straight line through their readings brings to the limit last.
const mostForecast = 9

// slabOf is when the slowest hole of an area is at its limit.
func slabOf(s report.Site, air []evidence.AirState) ahead.Slab {
	limit := s.Slab.RH.Most.Number
	none := func(why string) ahead.Slab {
		return ahead.Slab{Status: evidence.Unasked, Standing: evidence.Derived, Why: why}
	}
	switch {
	case s.Slab.NoHoles != "":
		return none(s.Slab.NoHoles)
	case s.Slab.UnfitForHoles() != "":
		return none(s.Slab.UnfitForHoles())
	case s.Slab.Isolated:
		return none("the membrane's manufacturer asks for no limit")
	case !limit.Shown():
		return none("the limit is not known")
	}
	holes := s.Slab.Histories()
	if len(holes) == 0 {
		return ahead.Slab{
			Status: evidence.Unread, LimitPct: limit.Written, Standing: evidence.Derived, Why: "no hole was read",
		}
	}
	return worst(forecasts(s, holes, air, limit))
}

// forecasts are those of the holes over their limit, the slowest by a straight
// line first, or of the highest where all are at it.
func forecasts(s report.Site, holes []evidence.Judged[slab.Hole], air []evidence.AirState, limit evidence.Reading,
) []ahead.Slab {
	type named struct {
		drying.Hole
		name string
	}
	start := began(s)
	over := lists.Each(holes, func(h evidence.Judged[slab.Hole]) named {
		return named{holeOf(s, h, start, air, limit), h.Name}
	})
	slices.SortStableFunc(over, func(a, b named) int { return cmp.Compare(linear(b.Hole), linear(a.Hole)) })
	var all []ahead.Slab
	for n, h := range over {
		if n > 0 && (n == mostForecast || linear(h.Hole) <= 0) {
			break
		}
		all = append(all, slabOutlook(h.Hole, h.name, limit, s.Job.Zone))
	}
	return all
}

// linear is in how many days a straight line from the first sample to the last
// comes to the limit: never where it does not fall or there is none; a hole at
// its limit is ranked below all others, by how far below it lies.
func linear(h drying.Hole) float64 {
	if len(h.Samples) == 0 {
		return math.Inf(1)
	}
	first, last := h.Samples[0], h.Samples[len(h.Samples)-1]
	above := last.RHPct - h.LimitPct
	switch {
	case above <= 0:
		return above
	case first.RHPct <= last.RHPct:
		return math.Inf(1)
	}
	return above * (last.Day - first.Day) / (first.RHPct - last.RHPct)
}

// inTurn are the rows of a hole in order of time, the worse of two at one time
// last.
func inTurn(rows []slab.Hole) []slab.Hole {
	return slices.SortedStableFunc(slices.Values(rows), func(a, b slab.Hole) int {
		return cmp.Or(a.ReadAt.First.Compare(b.ReadAt.First), a.RH.Exact().Cmp(b.RH.Exact()))
	})
}

// holeOf is a hole with its readings in order of time. Thickness and depth are
// those that the latest row tells that tells them, else 0.
func holeOf(s report.Site, h evidence.Judged[slab.Hole], start float64, air []evidence.AirState,
	limit evidence.Reading,
) drying.Hole {
	hole := drying.Hole{
		Faces: lists.If(s.Slab.TwoFaces, 2, 1), StartDay: start, Air: air, LimitPct: limit.Exact().Float(),
	}
	thickness, depth := s.Slab.Thickness, evidence.Reading{}
	for _, r := range inTurn(h.Rows) {
		sd := 1.0
		if u := s.Slab.Instruments.U(r.Instrument, evidence.RH); u.Known && u.Value.Sign() > 0 {
			sd = u.Value.Float() / 2
		}
		hole.Samples = append(hole.Samples,
			drying.Sample{Day: dayAxis(r.ReadAt.First), RHPct: r.RH.Exact().Float(), SDPct: sd})
		if r.Thickness.Shown() {
			thickness = r.Thickness
		}
		if r.Depth.Shown() {
			depth = r.Depth
		}
	}
	if thickness.Shown() {
		hole.ThicknessMM = thickness.In(evidence.Millimeter).Float()
	}
	if depth.Shown() {
		hole.DepthMM = depth.In(evidence.Millimeter).Float()
	}
	return hole
}

// began is the day on which the slab began to dry: that of enclosing, else of
// placing; unknown after water, and where neither is recorded.
func began(s report.Site) float64 {
	for _, d := range []evidence.Date{s.Area.EnclosedOn, s.Area.PlacedOn} {
		if !d.Shown() {
			continue
		}
		begins := d.Day.Begins(s.Job.Zone)
		if s.Slab.Wet.After(begins) {
			return math.NaN()
		}
		return dayAxis(begins)
	}
	return math.NaN()
}

// noneTells is why nothing can be told of a hole none of whose rows is a part of
// its history.
func noneTells() string {
	return "none of its readings tells of the slab today: each is blank, has no time, is from before water or too " +
		"soon after sealing, or lies under " + slab.LeastRH().String()
}

func slabOutlook(h drying.Hole, name string, limit evidence.Reading, zone *time.Location) ahead.Slab {
	o := ahead.Slab{Hole: name, LimitPct: limit.Written, Standing: evidence.Derived}
	if len(h.Samples) == 0 {
		o.Status, o.Why = evidence.Unread, noneTells()
		return o
	}
	if h.ThicknessMM == 0 || h.DepthMM == 0 {
		o.Status, o.Why = evidence.Unread, "the thickness of the slab or the depth of the hole is not recorded"
		if why, reached := h.Reached(); reached {
			o.Status, o.Why = evidence.Reached, why
		}
		return o
	}
	f, err := drying.Forecast(h)
	if err != nil {
		o.Status, o.Why = evidence.Unread, err.Error()
		return o
	}
	o.Status, o.Why = f.Prospect, f.Why
	if f.CoveredPct > 0 {
		o.CoveredPct = places(f.CoveredPct, 1)
	}
	if f.Prospect == evidence.Losing {
		o.Ready, o.From, o.To = days(zone, f.Ready, f.From, f.To)
	}
	for _, e := range f.Expected {
		o.Course = append(o.Course, ahead.Course{
			Day: dayOf(e.Day, zone), RHPct: e.RHPct, LowPct: e.LowPct, TopPct: e.HighPct,
		})
	}
	return o
}

// worst is the hole whose status stands for the slab: of those that dry, the
// slowest.
func worst(all []ahead.Slab) ahead.Slab {
	rank := []evidence.Prospect{evidence.Unread, evidence.Stalled, evidence.Losing, evidence.Reached}
	return slices.MinFunc(all, func(a, b ahead.Slab) int {
		return cmp.Or(
			cmp.Compare(slices.Index(rank, a.Status), slices.Index(rank, b.Status)),
			cmp.Compare(b.Ready, a.Ready), cmp.Compare(b.To, a.To),
		)
	})
}
