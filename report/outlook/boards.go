package outlook

import (
	"firstboard/acclimate"
	"firstboard/acclimate/settling"
	"firstboard/report"
	"firstboard/report/ahead"
	"firstboard/report/evidence"
	"firstboard/wood"
)

// boardsOf is when each lot of an area is within tolerance of its target.
func boardsOf(s report.Site, air []evidence.AirState) []ahead.Boards {
	all := []ahead.Boards{}
	if s.Wood.NoFlooring != "" {
		return all
	}
	target := acclimate.TargetOf(s.Room.Service)
	for _, lot := range s.Wood.Lots() {
		all = append(all, boardsOutlook(s, lot, target, air))
	}
	return all
}

func boardsOutlook(s report.Site, lot wood.Lot, target acclimate.Target, air []evidence.AirState) ahead.Boards {
	o := ahead.Boards{Lot: lot.Name, Status: evidence.Unread}
	if target.Lack != "" {
		o.Why = "the target is not known: " + target.Lack
		return o
	}
	l := settling.Lot{
		Air: air, TargetPct: target.Mid.Value.Float(),
		TolerancePct: s.Room.Tolerance.Number.Exact().Float(),
	}
	today := 0.0
	for _, v := range lot.Visits() {
		today = max(today, dayAxis(v.Ended))
		l.Visits = append(l.Visits, settling.Visit{
			Day: dayAxis(v.At), MeanPct: v.MeanPct, SpreadPct: v.SpreadPct, Boards: v.Boards,
		})
	}
	f, err := settling.Forecast(l)
	if err != nil {
		o.Why = err.Error()
		return o
	}
	o.Status, o.EndPct, o.Why = f.Prospect, places(f.EndPct, 1), f.Why
	if f.Prospect == evidence.Losing || f.Prospect == evidence.Gaining {
		// A visit may take days, and the lot was not there yet when it ended.
		o.Ready, o.From, o.To = days(s.Job.Zone, max(f.Ready, today), max(f.From, today), max(f.To, today))
	}
	return o
}
