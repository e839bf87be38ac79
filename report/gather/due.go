package gather

import (
	"cmp"
	"slices"
	"strings"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/instruments"
	"firstboard/report/lists"
)

// Due is one thing that falls due on a day: of one area, or of an instrument
// that areas lean on.
type Due struct {
	On     Text
	What   Text // one of a few kinds
	Of     Text // what exactly
	Record Text
	Job    Text
	Areas  []Text
	Whose  Text // who is to act
}

// The kinds of things that fall due.
const (
	dueAgain       = "good until this day"
	dueAct         = "the next act can end"
	dueGo          = "GO at the earliest"
	dueCalibration = "a calibration lapses"
	dueProbe       = "a probe's check lapses"
)

// areaDue is what falls due of an area.
func (r Row) areaDue() []Due {
	var all []Due
	add := func(on, what, of, whose Text) {
		if on != "" {
			all = append(all, Due{On: on, What: what, Of: of, Job: r.Job, Areas: []Text{r.Area}, Whose: whose})
		}
	}
	if len(r.ReRead) > 0 {
		add(r.GoodUntil, dueAgain, Text("to install later, read again: "+evidence.List(plain(r.ReRead))), "")
	}
	day, _, _ := strings.Cut(string(r.NextEnds), " ")
	add(Text(day), dueAct, r.NextAct, r.NextWho)
	add(r.Earliest, dueGo, "", "")
	return all
}

// meterDue is what falls due of the instruments behind the judged rows of a
// record's areas, in the order of their names.
func meterDue(j report.Job, decisions []report.Decision) []Due {
	used := map[string][]Text{} // areas, by the key of the instrument
	var keys []string
	for _, d := range decisions {
		for _, row := range d.Site.Rows {
			key := evidence.Key(row.Instrument)
			if used[key] == nil {
				keys = append(keys, key)
			}
			if area := kept(d.Area.ID); !slices.Contains(used[key], area) {
				used[key] = append(used[key], area)
			}
		}
	}
	slices.SortFunc(keys, func(a, b string) int { return cmp.Or(evidence.Order(a, b), strings.Compare(a, b)) })
	var all []Due
	for _, key := range keys {
		meter, listed := j.Instruments.Find(key)
		if !listed {
			continue
		}
		of := Due{Of: kept(meter.ID), Job: kept(j.Name), Areas: used[key]}
		if meter.CalibratedOn.Shown() || meter.DueOn.Shown() {
			of.On, of.What = Text(instruments.DueOn(meter).String()), dueCalibration
			all = append(all, of)
		}
		if day, known := probeDue(j, meter); known {
			of.On, of.What = Text(day.String()), dueProbe
			all = append(all, of)
		}
	}
	return all
}

// probeDue is the last day that a probe's last check speaks for.
func probeDue(j report.Job, meter evidence.Instrument) (day evidence.Day, known bool) {
	last := evidence.Last(j.Checks, func(c instruments.Comparison) evidence.Time {
		if !evidence.Same(c.Instrument, meter.ID) {
			return evidence.Time{}
		}
		return c.CheckedAt
	})
	if !meter.Has(evidence.Probe) || !last.Shown() {
		return 0, false
	}
	life := evidence.Duration(instruments.ProbeLife().Most.Number.Exact())
	return evidence.DayOf(last.First.Add(life)), true
}

// plain are texts as strings.
func plain(from []Text) []string {
	return lists.Each(from, func(t Text) string { return string(t) })
}
