package acclimate

import (
	"slices"
	"time"

	"firstboard/report/evidence"
)

// airChecks are the checks of the air over slab and wood, in report order.
func airChecks() []evidence.Check[Room] {
	return []evidence.Check[Room]{
		{
			ID: "air-range", Deciding: true, Judge: airRange,
			Asks:    "was the air in range over the 24 h up to the latest air reading?",
			Default: "60 to 80 F over wood, 65 to 95 F over others; humidity: the service climate over wood, at most 65 % RH over others",
			Cite:    evidence.Cite{Source: "temperature: NWFA guidance 2018 for wood floorings, CRI 105-2019 for others; humidity: the service climate for wood floorings, CRI 105-2019 for others", Standing: evidence.Published},
		},
		{
			ID: "air-held", Deciding: true, Judge: airHeld,
			Asks:    "was the air in range for 48 h up to each judged reading of the slab, and of the flooring where that is wood?",
			Default: "48 h; the bounds of air-range",
			Cite:    evidence.Cite{Source: "ASTM F2170 (the 48 h)", Standing: evidence.Recalled},
		},
		{
			ID: "air-usual", Judge: airUsual,
			Asks:    "wood floorings: was the air of the latest 24 h between 30 and 50 % RH?",
			Default: "30 to 50 % RH",
			Cite:    evidence.Cite{Source: "NWFA guidance 2018", Standing: evidence.Published},
		},
	}
}

const noAir = "no air reading"

// latestDay is the window of 24 h up to the latest air reading.
func (r Room) latestDay() (w window, known bool) {
	last := r.Latest()
	return window{from: last.First.Add(-24 * time.Hour), to: last.First, temp: r.Temp, rh: r.RH, acceptance: r.Acceptance}, last.Shown()
}

func airRange(r Room) evidence.Finding {
	w, known := r.latestDay()
	if !known {
		return evidence.Unshown(noAir).Against(r.Temp)
	}
	return r.judge(w)
}

func airHeld(r Room) evidence.Finding {
	if r.NoHeld != "" {
		return evidence.Unneeded("%s", r.NoHeld)
	}
	if len(r.HeldFor) == 0 {
		return evidence.Unshown("there is no judged reading of slab or flooring for which the air was to be held").Against(r.Temp)
	}
	f := r.judge(r.heldWindow())
	if r.HeldLack != "" && f.Outcome == evidence.Met {
		f.Outcome, f.Reason, f.Evidence = evidence.NotShown, r.HeldLack, nil
	}
	return f
}

// HeldWindow is the stretch over which the air had to be held: from the wait
// before the first judged row to the last. Known is false where none is asked
// for, or no row has a time.
func (r Room) HeldWindow() (from, to time.Time, known bool) {
	if r.NoHeld != "" || len(r.HeldFor) == 0 {
		return from, to, false
	}
	w := r.heldWindow()
	return w.from, w.to, true
}

// heldWindow runs from the wait before the first judged row to the last.
func (r Room) heldWindow() window {
	byTime := func(a, b evidence.Time) int { return a.First.Compare(b.First) }
	first, last := slices.MinFunc(r.HeldFor, byTime), slices.MaxFunc(r.HeldFor, byTime)
	return window{
		from: first.First.Add(-evidence.Duration(r.Held.Exact())), to: last.First, covered: true,
		temp: r.Temp, rh: r.RH, acceptance: r.Acceptance,
	}
}

func airUsual(r Room) evidence.Finding {
	if !r.Wood {
		return evidence.Unneeded("the flooring is not wood")
	}
	w, known := r.latestDay()
	w.temp = evidence.Limit{}
	w.rh = between("30", "50", evidence.RH, evidence.Cite{})
	w.acceptance, w.asRead = evidence.Acceptance{}, true
	if !known {
		return evidence.Unshown(noAir).Against(w.rh)
	}
	return r.judge(w)
}

// JudgedAir are the air rows behind air-range, air-held and surface-dew: those
// in either window, the last at or before its start, and, where the dew point
// is asked for, those nearest in time to a surface.
func (r Room) JudgedAir() []Air {
	var windows []window
	if w, known := r.latestDay(); known {
		windows = append(windows, w)
	}
	if r.NoHeld == "" && len(r.HeldFor) > 0 {
		windows = append(windows, r.heldWindow())
	}
	before := make([]time.Time, len(windows))
	for i, w := range windows {
		before[i] = r.lastBefore(w.from)
	}
	dew := r.dewTimes()
	var judged []Air
	for _, a := range r.Air {
		at := a.ReadAt
		behind := !at.Shown() || dew[at.First.UnixNano()]
		for i, w := range windows {
			behind = behind || at.First.Equal(before[i]) || !at.First.Before(w.from) && !at.First.After(w.to)
		}
		if behind {
			judged = append(judged, a)
		}
	}
	return judged
}

// dewTimes are the times of the air rows that surface-dew compares with.
func (r Room) dewTimes() map[int64]bool {
	times := map[int64]bool{}
	if r.NoDew != "" {
		return times
	}
	for _, spot := range r.JudgedSurfaces() {
		for _, s := range spot.Rows {
			if !s.ReadAt.Shown() {
				continue
			}
			near, _ := r.AirNear(s)
			for _, a := range near {
				times[a.ReadAt.First.UnixNano()] = true
			}
		}
	}
	return times
}
