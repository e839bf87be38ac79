package report

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"firstboard/report/evidence"
	"firstboard/slab"
)

// probeCheck asks of every judged hole whether its probe could be believed.
func probeCheck(s Site) evidence.Finding {
	if s.Slab.NoHoles != "" {
		return evidence.Unneeded("%s", s.Slab.NoHoles)
	}
	var items []evidence.Item
	var wrong evidence.Finding
	for _, hole := range s.Slab.JudgedHoles() {
		name := "hole " + hole.Name
		for _, h := range hole.Rows {
			meter, listed := s.Job.Instruments.Find(h.Instrument)
			switch {
			case !listed:
				items = append(items, evidence.Item{Name: name, Limit: probeLife(), Lack: "no instrument named", Place: h.Place})
			case meter.Has(evidence.Probe):
				items = append(items, s.checked(name, h, meter)...)
			case meter.Has(evidence.SingleUse):
				items = append(items, s.usedOnce(name, h, meter))
			default:
				wrong = notAProbe(wrong, name, h, meter)
			}
		}
	}
	if wrong.Outcome == evidence.NotMet {
		return wrong
	}
	return evidence.Weigh(items, evidence.Acceptance{}, "no hole was read, or none since water came")
}

func notAProbe(wrong evidence.Finding, name string, h slab.Hole, meter evidence.Instrument) evidence.Finding {
	if wrong.Outcome != evidence.NotMet {
		wrong = evidence.Finding{
			Outcome: evidence.NotMet, Value: strings.Join(meter.Kinds, ", "), Limit: evidence.Probe,
			Reason: fmt.Sprintf("%s was read with %s, which is listed as %q and not as a probe of relative humidity", name, meter.ID, strings.Join(meter.Kinds, ", ")),
		}
	}
	wrong.Evidence = append(wrong.Evidence, h.Place)
	return wrong
}

func probeLife() evidence.Limit {
	return evidence.AtMost(evidence.Bound{Number: evidence.Typed("720", evidence.Hour)})
}

// checked weighs the last checks before a reading, their age and agreement,
// and the agreement of the first ones after it.
func (s Site) checked(name string, h slab.Hole, meter evidence.Instrument) []evidence.Item {
	if !h.ReadAt.Shown() {
		return []evidence.Item{{Name: name, Limit: probeLife(), Lack: evidence.NoTime, Place: h.Place}}
	}
	before, after, untimed := s.around(meter.ID, h.ReadAt.First)
	var items []evidence.Item
	for _, c := range untimed {
		items = append(items, evidence.Item{Name: "a check of " + meter.ID, Limit: probeLife(), Lack: "no time", Place: c.Place})
	}
	if len(before) == 0 {
		lack := "its probe " + meter.ID + " has no check before the reading"
		items = append(items, evidence.Item{Name: name, Limit: probeLife(), Lack: lack, Place: h.Place})
	}
	for _, c := range before {
		items = append(items, checkAge(name, h, c), agreement(c))
	}
	for _, c := range after {
		items = append(items, agreement(c))
	}
	return items
}

// around are the last checks of an instrument before a time, the first ones
// from then on, and those without a time.
func (s Site) around(id string, at time.Time) (before, after, untimed []InstrumentCheck) {
	for _, c := range s.Job.Checks {
		switch t := c.CheckedAt.First; {
		case !evidence.Same(c.Instrument, id):
		case !c.CheckedAt.Shown():
			untimed = append(untimed, c)
		case !t.Before(at):
			after = nearer(after, c, func(was time.Time) int { return was.Compare(t) })
		default:
			before = nearer(before, c, func(was time.Time) int { return t.Compare(was) })
		}
	}
	return before, after, untimed
}

// nearer keeps the nearest checks, and all that tie: closer says how much
// nearer the new one is than those kept.
func nearer(kept []InstrumentCheck, c InstrumentCheck, closer func(was time.Time) int) []InstrumentCheck {
	if len(kept) == 0 || closer(kept[0].CheckedAt.First) > 0 {
		return []InstrumentCheck{c}
	}
	if closer(kept[0].CheckedAt.First) == 0 {
		return append(kept, c)
	}
	return kept
}

func checkAge(name string, h slab.Hole, c InstrumentCheck) evidence.Item {
	age := evidence.Hours(evidence.Longest(c.CheckedAt, h.ReadAt))
	it := evidence.Item{Name: name, Value: age, Written: age.Text(evidence.Whole(720)), Limit: probeLife(), Place: h.Place}
	it.Says = fmt.Sprintf("%s was read %s h after the last check of its probe %s", name, it.Written, c.Instrument)
	return it
}

func agreement(c InstrumentCheck) evidence.Item {
	limit := evidence.AtMost(evidence.Bound{Number: evidence.Typed("2", evidence.RH)})
	it := evidence.Item{Name: "the check of " + c.Instrument + " at " + c.CheckedAt.Written, Limit: limit, Place: c.Place}
	expected, from := c.Expectation()
	if !expected.Shown() || !c.Read.Shown() {
		it.Lack = "no expected or no read value"
		return it
	}
	it.Value = c.Read.Exact().Sub(expected.Exact()).Abs()
	it.Written = it.Value.Text(limit.Ends()...)
	it.Says = fmt.Sprintf("%s read %s where %s was expected%s, %s %% RH off", it.Name, c.Read.Written, expected.Written, from, it.Written)
	return it
}

// Expectation is what the check should have read: as typed, or, where that is
// blank and the standard names a saturated salt ("NaCl at 23 C"), its fixed
// point rounded to 0.01, and where it is from.
func (c InstrumentCheck) Expectation() (expected evidence.Reading, from string) {
	if c.Expected.Shown() {
		return c.Expected, ""
	}
	salt, at, found := strings.Cut(evidence.Tidy(c.Standard), " at ")
	var degrees float64
	var unit string
	if n, _ := fmt.Sscanf(strings.ReplaceAll(at, "°", ""), "%g%s", &degrees, &unit); !found || n != 2 {
		return c.Expected, ""
	}
	if strings.EqualFold(unit, string(evidence.Fahrenheit)) {
		degrees = (degrees - 32) / 1.8
	} else if !strings.EqualFold(unit, string(evidence.Celsius)) {
		return c.Expected, ""
	}
	rh, err := slab.SaltRH(salt, degrees)
	if err != nil {
		return c.Expected, ""
	}
	return evidence.Typed(strconv.FormatFloat(rh, 'f', 2, 64), evidence.RH), " (" + c.Standard + ", Greenspan 1977)"
}

// usedOnce counts the holes of the whole record that a single-use probe was
// used in.
func (s Site) usedOnce(name string, h slab.Hole, meter evidence.Instrument) evidence.Item {
	holes := map[string]bool{}
	for _, other := range s.Job.Holes {
		if evidence.Same(other.Instrument, meter.ID) {
			holes[evidence.Key(other.Area)+"\x00"+evidence.Key(other.Hole)] = true
		}
	}
	limit := evidence.AtMost(evidence.Bound{Number: evidence.Typed("1", evidence.Holes)})
	it := evidence.Item{Name: name, Value: evidence.Whole(len(holes)), Written: fmt.Sprint(len(holes)), Limit: limit, Place: h.Place}
	it.Says = fmt.Sprintf("the single-use probe %s of %s was used in %s", meter.ID, name, evidence.Count(len(holes), "hole", "holes"))
	switch {
	case !h.ReadAt.Shown():
		it.Lack = evidence.NoTime
	case s.namelessHole(h) != "" && len(holes) == 1:
		it.Lack = "hole " + s.namelessHole(h) + " names no instrument, and may have used its probe " + meter.ID
	}
	return it
}

// namelessHole is another hole of the area with a row that names no instrument.
func (s Site) namelessHole(h slab.Hole) string {
	for _, other := range s.Slab.Holes {
		if other.Instrument == "" && !evidence.Same(other.Hole, h.Hole) {
			return other.Hole
		}
	}
	return ""
}
