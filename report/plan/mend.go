package plan

import (
	"fmt"
	"slices"
	"time"

	"firstboard/acclimate"
	"firstboard/report/evidence"
	"firstboard/report/lists"
	"firstboard/wood"
)

const otherProduct = "name a membrane, or another adhesive, whose data sheet allows "

// driedHoles is what is done about holes over their limit of humidity, or whose
// concrete is too warm or too cold.
func (p *planner) driedHoles(over []thing) mending {
	if !slices.ContainsFunc(over, func(x thing) bool { return slices.Contains(x.over, "slab-rh") }) {
		return mending{
			do: "bring the concrete to " + p.Slab.Temp.String(), how: p.finding("slab-temp").Reason,
			who: contractor,
		}
	}
	m := p.drying()
	f := p.finding("slab-rh")
	m.or = otherProduct + f.Value + " " + string(f.Unit) + " or more"
	if slices.ContainsFunc(over, func(x thing) bool { return slices.Contains(x.over, "slab-temp") }) {
		m.do = "bring the concrete to " + p.Slab.Temp.String() + " and " + m.do
	}
	return m
}

// drying is the wait until the slab is dry, as far as it can be told.
func (p *planner) drying() mending {
	m := mending{do: "let the slab dry", open: true}
	s := p.coming.Slab
	switch ready, known := dayOf(s.Ready); {
	case known:
		m.from, m.open = ready.Begins(p.Job.Zone), false
		m.do = "let the slab dry until about " + s.Ready
		m.how = fmt.Sprintf("nine times in ten between %s and %s", s.From, s.To)
	case s.Status == evidence.Stalled:
		m.do, m.how = "dry the slab in drier or warmer air", "it does not get there in this air: "+s.Why
		m.untold = m.how
	default:
		m.how = untold(s.Why)
		m.untold = m.how
	}
	return m
}

// untold says that nobody can tell by when, and why.
func untold(why string) string {
	return "by when cannot be told" + lists.If(why == "", "", ": "+why)
}

// dayOf is a day that a forecast writes.
func dayOf(written string) (evidence.Day, bool) {
	t, err := time.Parse(time.DateOnly, written)
	return evidence.DayOf(t), err == nil
}

// dried is what is done about dishes and carbide readings over their limit.
func (p *planner) dried(over []thing) mending {
	m := mending{do: "let the slab dry", untold: untold(""), open: true}
	f := p.finding(lists.If(slices.Contains(over[0].over, "slab-cm"), "slab-cm", "mver-rate"))
	m.how = untold(f.Reason)
	m.or = otherProduct + f.Value + " " + string(f.Unit) + " or more"
	return m
}

// neutral is what is done about a pH outside its limit.
func (p *planner) neutral([]thing) mending {
	f := p.finding("slab-ph")
	return mending{
		do: "treat the surface as the adhesive manufacturer says", how: f.Reason, open: true,
		or: otherProduct + "a pH of " + f.Value,
	}
}

// driedWood is what is done about a subfloor or joists over their limit, or about
// a subfloor that lies too far from the boards.
func (p *planner) driedWood(over []thing) mending {
	const helps = "find where the water comes from, and move drier air over and under it"
	id := over[0].over[0]
	m := mending{
		do:  "let the " + lists.If(id == "joists-dry", "joists", "subfloor") + " dry",
		how: p.finding(id).Reason + ": " + helps, untold: helps, who: contractor, open: true,
	}
	if sub := p.Wood.MeanOfSubfloor(); id == "wood-difference" && sub.High.Value.Cmp(p.target().Mid.Value) < 0 {
		m.do, m.how, m.untold = "let the subfloor take up moisture from the air of the rooms", p.finding(id).Reason,
			untold("")
	}
	return m
}

func (p *planner) target() acclimate.Target { return acclimate.TargetOf(p.Room.Service) }

// isSubfloorOff says whether it is the subfloor and not a lot that lies farther
// from the target, so that it has to come nearer to the boards.
func (p *planner) isSubfloorOff(lot wood.Lot) bool {
	boards, sub, target := p.Wood.Mean(lot), p.Wood.MeanOfSubfloor(), p.target()
	if target.Lack != "" || boards.Lack != "" || sub.Lack != "" || len(p.subfloor.things) == 0 {
		return false
	}
	off := func(mean evidence.Working) evidence.Exact { return mean.Value.Sub(target.Mid.Value).Abs() }
	return off(sub.High).Cmp(off(boards.High)) > 0
}

// settled adds what is done about a lot that is not as the rooms will be: it
// lies in the air that brings it there, and is read again.
func (p *planner) settled(lot lotWork) {
	first := len(p.acts)
	p.anew(lot.task, "over "+evidence.List(lot.over))
	a := &p.acts[first]
	m := p.acclimatizing(lot)
	a.Short, a.mends = m.do+", then "+a.Short, true
	a.How, a.from, a.open, a.Untold = sentence(m.how, p.with(lot.tool)), latest(a.from, m.from), m.open, m.untold
	a.Or = "send the lot back for one that was kept drier or wetter"
	if slices.Contains(lot.over, "flooring-spread") {
		a.Or = fmt.Sprintf("set aside the boards that lie apart, no more than 1 in %d", wood.OneAsideIn)
	}
}

// acclimatizing is the wait until a lot is as the rooms will be, and the air it
// takes.
func (p *planner) acclimatizing(lot lotWork) mending {
	m := mending{do: "let the boards" + lot.ofLot() + " come to the air of the rooms", open: true}
	if air := p.coming.Air; air != nil && air.RHLowPct != "" {
		m.do = fmt.Sprintf("hold the air at %s to %s %% RH and %s F over the boards%s", air.RHLowPct, air.RHHighPct,
			air.TempF, lot.ofLot())
	}
	for _, b := range p.coming.Boards {
		if !evidence.Same(b.Lot, lot.lot) {
			continue
		}
		if ready, known := dayOf(b.Ready); known {
			m.from, m.open = ready.Begins(p.Job.Zone), false
			m.do += " until about " + b.Ready
		}
		m.how = b.Why
	}
	if m.open {
		m.untold = untold(m.how)
	}
	if m.how == "" {
		m.how = p.finding(lot.over[0]).Reason
	}
	return m
}
