package acclimate

import (
	"fmt"
	"slices"
	"time"

	"firstboard/report/evidence"
)

// airChecks are the checks of the air over slab and wood, in report order.
func airChecks() []evidence.Check[Room] {
	return []evidence.Check[Room]{
		{
			ID: "air-range", Deciding: true, Judge: airRange,
			Asks: fmt.Sprintf("was the air in range over the %s h up to the latest air reading?", evidence.Hours(Today).Text()),
			Default: fmt.Sprintf("%s over wood flooring, %s over carpet, %s over resilient and laminate; "+
				"humidity: the service climate over wood flooring, at most %s over others",
				UsualTemp(Wooden), UsualTemp(Carpet), UsualTemp(Hard), UsualRH(Hard, nil)),
			Cite: evidence.Cite{
				Source: "temperature: NWFA guidance 2018 (wood flooring), CRI 105-2019 (carpet), ASTM F710 and manufacturers' sheets, recalled " +
					"(others); humidity: the service climate (wood flooring, derived), CRI 105-2019 (others)",
				Standing: evidence.Published,
			},
		},
		{
			ID: "air-held", Deciding: true, Judge: airHeld,
			Asks: fmt.Sprintf("was the air in range for %s up to each judged slab row, and each judged row of wood flooring?",
				DefaultHeld()),
			Default: DefaultHeld().String() + "; the bounds of air-range",
			Cite:    evidence.Cite{Source: fmt.Sprintf("ASTM F2170 (the %s)", DefaultHeld()), Standing: evidence.Recalled},
		},
		{
			ID: "air-usual", Judge: airUsual,
			Asks: fmt.Sprintf("wood flooring: was the air of air-range between %s and %s?", ordinary().Least.Number.Written,
				ordinary().Most.Number),
			Default: ordinary().String(),
			Cite:    evidence.Cite{Source: "NWFA guidance 2018", Standing: evidence.Published},
		},
	}
}

const noAir = "no air reading"

// DefaultHeld is how long the air is held before a judged row (ASTM F2170).
func DefaultHeld() evidence.Reading { return evidence.Typed("48", evidence.Hour) }

// ordinary is the humidity that NWFA names for rooms with wood flooring.
func ordinary() evidence.Limit { return inside("30", "50", evidence.RH, evidence.Cite{}) }

// Today is how far back from the latest reading the air of today reaches.
const Today = 24 * time.Hour

// latestDay is the window up to the latest air reading.
func (r Room) latestDay() (w window, known bool) {
	last := r.Latest()
	return window{
		from: last.First.Add(-Today), to: last.First, temp: r.Temp, rh: r.RH,
		acceptance: r.Acceptance,
	}, last.Shown()
}

func airRange(r Room) evidence.Finding {
	w, known := r.latestDay()
	if !known {
		return evidence.Unshown(noAir).Against(r.Temp)
	}
	return r.judge(w, r.unread()...)
}

func airHeld(r Room) evidence.Finding {
	if r.NoHeld != "" {
		return evidence.Unneeded("%s", r.NoHeld)
	}
	if len(r.HeldFor) == 0 {
		return evidence.Unshown("there is no judged row of slab or flooring for which the air was to be held").Against(r.Temp)
	}
	f := r.judge(r.heldWindow(), r.unread()...)
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

// HeldLike says whether the air of a room is to be held over the same stretch as
// that of another one.
func (r Room) HeldLike(o Room) bool {
	from, to, known := r.HeldWindow()
	oFrom, oTo, oKnown := o.HeldWindow()
	return from.Equal(oFrom) && to.Equal(oTo) && known == oKnown && r.NoHeld == o.NoHeld && r.HeldLack == o.HeldLack
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

// LongInterval is how far apart neighboring air rows of the held window may lie
// without a word: beyond it nothing is known between them.
const LongInterval = 4 * time.Hour

// WidestInterval is the longest time between neighboring air rows of the held
// window, the last one at or before its start included; zero where there are no
// two, or no window.
func (r Room) WidestInterval() time.Duration {
	if r.NoHeld != "" || len(r.HeldFor) == 0 {
		return 0
	}
	var widest time.Duration
	rows := r.behind(r.heldWindow())
	for i := 1; i < len(rows); i++ {
		widest = max(widest, gapBefore(rows, i))
	}
	return widest
}

func airUsual(r Room) evidence.Finding {
	if !r.Wood {
		return evidence.Unneeded("the flooring is not wood")
	}
	w, known := r.latestDay()
	w.temp = evidence.Limit{}
	w.rh = ordinary()
	w.acceptance, w.asRead = evidence.Acceptance{}, true
	if !known {
		return evidence.Unshown(noAir).Against(w.rh)
	}
	return r.judge(w)
}
