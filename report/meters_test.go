package report_test

import (
	"slices"
	"strings"
	"testing"
	"time"

	"firstboard/acclimate"
	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/instruments"
	"firstboard/report/limits"
	"firstboard/slab"
	"firstboard/wood"
)

// small is a record of one area with one row of each kind that an instrument
// check looks at; each test changes a thing or two of it.
func small() report.Job {
	f := evidence.Fahrenheit
	j := report.Job{
		Name: "Job", Zone: time.UTC, Settings: report.DefaultSettings(), Instruments: evidence.Instruments{},
		Areas: []report.Area{{
			ID: "A1", Size: num(75, evidence.SquareFoot), Substrate: "slab", Thickness: num(5, evidence.Inch), Flooring: "ENG",
			Adhesive: "GLUE", Installation: "glue-down", Climate: "C1", InstallOn: day(installed),
		}},
		Products: []limits.Product{
			{ID: "ENG", Kind: "engineered wood", Species: "white oak", SlabRH: none(), MVER: none(), DataSheet: "Plank"},
			{
				ID: "GLUE", Kind: "adhesive", SlabRH: says(85, evidence.RH), MVER: says(5, evidence.Pounds), PHMax: says(10, evidence.PH),
				DataSheet: "Glue",
			},
		},
		Climates: []acclimate.Period{{Climate: "C1", Name: "all", Temp: num(70, f), RH: num(40, evidence.RH)}},
		Holes: []slab.Hole{{
			Area: "A1", Hole: "H1", Depth: num(2, evidence.Inch), SealedAt: since(-100), ReadAt: since(-48),
			RH: num(70, evidence.RH), Temp: num(70, f), Instrument: "RP1",
		}},
		Dishes: []slab.Dish{{
			Area: "A1", Dish: "D1", SetAt: since(-140), RetrievedAt: since(-74), Start: num(30, evidence.Gram), End: num(31, evidence.Gram),
			TestArea: num(0.45, evidence.SquareFoot), Instrument: "BL1",
		}},
		PHs:      []slab.PH{{Area: "A1", Spot: "P1", ReadAt: since(-48), PH: num(9, evidence.PH), Instrument: "PH1"}},
		Air:      []acclimate.Air{{Area: "A1", ReadAt: since(-24), Temp: num(70, f), RH: num(40, evidence.RH), Instrument: "AL1"}},
		Surfaces: []acclimate.Surface{{Area: "A1", Spot: "S1", ReadAt: since(-24), Temp: num(66, f), Instrument: "IR1"}},
		Wood: []wood.Row{{
			Area: "A1", Of: wood.OfFlooring, Piece: "B1", ReadAt: since(-24), Method: wood.Pin, Reading: num(7.5, evidence.MC),
			Scale: "white oak", Instrument: "PM1",
		}},
		Checks: []instruments.Comparison{check("RP1", -60, 75, 75)},
	}
	for id, kind := range map[string]string{
		"RP1": evidence.Probe, "BL1": evidence.Balance, "PH1": evidence.PHMeter,
		"AL1": evidence.AirMeter, "IR1": evidence.Surface, "PM1": evidence.PinMeter,
	} {
		j.Instruments[evidence.Key(id)] = evidence.Instrument{ID: id, Kinds: []string{kind}, CalibratedOn: day(installed - 100)}
	}
	return placed(j)
}

func check(id string, hour, expected, read float64) instruments.Comparison {
	return instruments.Comparison{
		Instrument: id, CheckedAt: since(hour), Expected: num(expected, evidence.None),
		Read: num(read, evidence.None), Place: spot("check of " + id),
	}
}

// meter changes an instrument.
func meter(id string, change func(*evidence.Instrument)) func(*report.Job) {
	return func(j *report.Job) {
		i := j.Instruments[evidence.Key(id)]
		change(&i)
		j.Instruments[evidence.Key(id)] = i
	}
}

func checks(all ...instruments.Comparison) func(*report.Job) {
	return func(j *report.Job) { j.Checks = append(slices.Clone(j.Checks), all...) }
}

func calibratedOn(id string, d evidence.Day) func(*report.Job) {
	return meter(id, func(i *evidence.Instrument) { i.CalibratedOn = day(d) })
}

func uncalibrated(id string) func(*report.Job) {
	return meter(id, func(i *evidence.Instrument) { i.CalibratedOn = evidence.Date{} })
}

func due(id string, d evidence.Day) func(*report.Job) {
	return meter(id, func(i *evidence.Instrument) { i.DueOn = day(d) })
}

// found is the finding of one check on a changed record.
func found(id string, changes ...func(*report.Job)) evidence.Finding {
	j := small()
	for _, c := range changes {
		c(&j)
	}
	for _, f := range report.Judge(j)[0].Findings {
		if f.ID == id {
			return f
		}
	}
	return evidence.Finding{}
}

type situation struct {
	name    string
	want    evidence.Outcome
	changes []func(*report.Job)
}

func answers(t *testing.T, id string, all []situation) {
	t.Helper()
	for _, c := range all {
		f := found(id, c.changes...)
		if f.Outcome != c.want {
			t.Errorf("%s: %s, want %s (%s)", c.name, f.Outcome, c.want, f.Reason)
		}
		if by := f.Worked.Outcome(); by != f.Outcome && f.Outcome != evidence.NotNeeded {
			t.Errorf("%s: the tree says %s, the finding %s (%s)", c.name, by, f.Outcome, f.Reason)
		}
	}
}

func do(changes ...func(*report.Job)) []func(*report.Job) { return changes }

// Days and limits of calibration, each at its edge.
func TestCalibrationBoundaries(t *testing.T) {
	read := installed - 1 // the day boards, air and surfaces were read
	untimed := check("AL1", 0, 40, 40)
	untimed.CheckedAt = evidence.Time{}
	blank := check("AL1", -30, 40, 40)
	blank.Read = evidence.Reading{}
	inC := func(j *report.Job) { j.Surfaces[0].Temp = num(19, evidence.Celsius) }
	answers(t, "calibration", []situation{
		{"all calibrated", evidence.Met, nil},
		{"on the day itself", evidence.Met, do(calibratedOn("PM1", read))},
		{"a day after", evidence.NotMet, do(calibratedOn("PM1", read+1))},
		{"365 days", evidence.Met, do(calibratedOn("AL1", read-365))},
		{"366 days", evidence.NotMet, do(calibratedOn("AL1", read-366))},
		{"due on the day", evidence.Met, do(due("AL1", read))},
		{"due the day before", evidence.NotMet, do(due("AL1", read-1))},
		{"a due day comes first", evidence.Met, do(calibratedOn("AL1", read-900), due("AL1", read))},
		{"nothing recorded", evidence.NotShown, do(uncalibrated("AL1"))},
		{"past a due day alone", evidence.NotMet, do(uncalibrated("AL1"), due("AL1", read-1))},
		{"a due day alone", evidence.NotShown, do(uncalibrated("AL1"), due("AL1", read))},
		{"no instrument", evidence.NotShown, do(func(j *report.Job) { j.Wood[0].Instrument = "" })},
		{"balance calibrated between setting and retrieving", evidence.NotMet, do(calibratedOn("BL1", installed-5))},
		{"balance due between", evidence.NotMet, do(due("BL1", installed-5))},
		{"balance due on the day of retrieving", evidence.Met, do(due("BL1", installed-4))},

		{"on its block, 168 h", evidence.Met, do(uncalibrated("PM1"), checks(check("PM1", -24-168, 12, 12)))},
		{"on its block, past 168 h", evidence.NotShown, do(uncalibrated("PM1"), checks(check("PM1", -24-168.1, 12, 12)))},
		{"on its block at the reading", evidence.NotShown, do(uncalibrated("PM1"), checks(check("PM1", -24, 12, 12)))},
		{"on its block, past due", evidence.Met, do(due("PM1", read-9), checks(check("PM1", -30, 12, 13)))},
		{"past due and off its block", evidence.NotMet, do(due("PM1", read-9), checks(check("PM1", -30, 12, 13.01)))},
		{"an air meter has no block", evidence.NotMet, do(due("AL1", read-9), checks(check("AL1", -30, 40, 40)))},
		{
			"a block says nothing of a surface", evidence.NotShown,
			do(uncalibrated("IR1"), checks(check("IR1", -30, 12, 12)),
				meter("IR1", func(i *evidence.Instrument) { i.Kinds = []string{evidence.AirMeter, evidence.PinMeter} })),
		},
		{
			"nor of a dish", evidence.NotShown,
			do(uncalibrated("BL1"), checks(check("BL1", -150, 12, 12)),
				meter("BL1", func(i *evidence.Instrument) { i.Kinds = []string{"balance", evidence.PinMeter} })),
		},
		{
			"a pinless meter has", evidence.Met,
			do(uncalibrated("PM1"), checks(check("PM1", -30, 12, 12)), func(j *report.Job) { j.Wood[0].Method = wood.Pinless },
				meter("PM1", func(i *evidence.Instrument) { i.Kinds = []string{evidence.Pinless} })),
		},

		{"air within 3 % RH", evidence.Met, do(checks(check("AL1", -30, 40, 43)))},
		{"air beyond 3 % RH", evidence.NotMet, do(checks(check("AL1", -30, 40, 36.9)))},
		{"pin within 1 point", evidence.Met, do(checks(check("PM1", -30, 12, 11)))},
		{"pin beyond 1 point", evidence.NotMet, do(checks(check("PM1", -30, 12, 10.9)))},
		{"surface within 2 F", evidence.Met, do(checks(check("IR1", -30, 32, 34)))},
		{"surface beyond 2 F", evidence.NotMet, do(checks(check("IR1", -30, 32, 34.1)))},
		{"surface in C within 2 F", evidence.Met, do(inC, checks(check("IR1", -30, 0, 1.1)))},
		{"surface in C beyond 2 F", evidence.NotMet, do(inC, checks(check("IR1", -30, 0, 1.2)))},
		{"pH within 0.2", evidence.Met, do(checks(check("PH1", -50, 7, 7.2)))},
		{"pH beyond 0.2", evidence.NotMet, do(checks(check("PH1", -50, 7, 7.21)))},
		{"others by their uncertainty", evidence.NotMet, do(checks(check("BL1", -150, 20, 20.2)),
			meter("BL1", func(i *evidence.Instrument) { i.Uncertainty = num(0.1, evidence.None) }))},
		{"others at their uncertainty", evidence.Met, do(checks(check("BL1", -150, 20, 20.1)),
			meter("BL1", func(i *evidence.Instrument) { i.Uncertainty = num(0.1, evidence.None) }))},
		{"others without an uncertainty", evidence.NotMet, do(checks(check("BL1", -150, 20, 20.1)))},
		{"others without one that read true", evidence.Met, do(checks(check("BL1", -150, 20, 20)))},
		{"a probe's checks are not its own", evidence.Met, do(checks(check("RP1", -50, 75, 70)))},

		{"an earlier check than the last says nothing", evidence.Met, do(checks(check("AL1", -50, 40, 50), check("AL1", -30, 40, 40)))},
		{"the last before, however old", evidence.NotMet, do(checks(check("AL1", -2000, 40, 50)))},
		{"at the reading", evidence.NotMet, do(checks(check("AL1", -30, 40, 40), check("AL1", -24, 40, 50)))},
		{"30 days after", evidence.NotMet, do(checks(check("AL1", -24+720, 40, 50)))},
		{"past 30 days after", evidence.Met, do(checks(check("AL1", -24+720.1, 40, 50)))},
		{"a check without a time", evidence.NotShown, do(checks(untimed))},
		{"a check without a figure", evidence.NotShown, do(checks(blank))},
		{"a blank figure of an earlier check", evidence.Met, do(checks(blank, check("AL1", -25, 40, 40)))},
	})
}

// The age and the agreement of a probe's checks, each at its edge.
func TestProbeCheckBoundaries(t *testing.T) {
	alone := func(all ...instruments.Comparison) func(*report.Job) {
		return func(j *report.Job) { j.Checks = all }
	}
	kind := func(kinds ...string) func(*report.Job) {
		return meter("RP1", func(i *evidence.Instrument) { i.Kinds = kinds })
	}
	again := func(j *report.Job) {
		h := j.Holes[0]
		h.Hole = "H2"
		j.Holes = append(slices.Clone(j.Holes), h)
	}
	untimed := check("RP1", 0, 75, 75)
	untimed.CheckedAt = evidence.Time{}
	blank := check("RP1", -60, 75, 75)
	blank.Expected = evidence.Reading{}
	answers(t, "probe-check", []situation{
		{"checked", evidence.Met, nil},
		{"720 h before", evidence.Met, do(alone(check("RP1", -48-720, 75, 75)))},
		{"past 720 h before", evidence.NotMet, do(alone(check("RP1", -48-720.1, 75, 75)))},
		{"never before", evidence.NotShown, do(alone(check("RP1", -48, 75, 75)))},
		{"2 % RH off", evidence.Met, do(alone(check("RP1", -60, 75, 73)))},
		{"more than 2 % RH off", evidence.NotMet, do(alone(check("RP1", -60, 75, 77.1)))},
		{"off 24 h before the last", evidence.NotMet, do(checks(check("RP1", -84, 75, 80)))},
		{"off more than 24 h before the last", evidence.Met, do(checks(check("RP1", -84.1, 75, 80)))},
		{"off at the reading", evidence.NotMet, do(checks(check("RP1", -48, 75, 80)))},
		{"off 30 days after", evidence.NotMet, do(checks(check("RP1", -48+720, 75, 80)))},
		{"off past 30 days after", evidence.Met, do(checks(check("RP1", -48+720.1, 75, 80)))},
		{"a later good one does not mend", evidence.NotMet, do(checks(check("RP1", -40, 75, 80), check("RP1", -30, 75, 75)))},
		{"a blank figure", evidence.NotShown, do(alone(blank))},
		{"a blank time", evidence.NotShown, do(checks(untimed))},
		{"no time of reading", evidence.NotShown, do(func(j *report.Job) { j.Holes[0].ReadAt = evidence.Time{} })},
		{"no instrument", evidence.NotShown, do(func(j *report.Job) { j.Holes[0].Instrument = "" })},
		{"another kind of meter", evidence.NotMet, do(kind(evidence.AirMeter))},
		{"a probe that reads air too", evidence.Met, do(kind(evidence.AirMeter, evidence.Probe))},
		{"single-use", evidence.Met, do(kind(evidence.SingleUse), alone())},
		{"single-use, twice", evidence.NotMet, do(kind(evidence.SingleUse), again)},
		{"single-use, off", evidence.NotMet, do(kind(evidence.SingleUse), alone(check("RP1", -900, 75, 80)))},
		{"single-use, a blank figure", evidence.NotShown, do(kind(evidence.SingleUse), alone(blank))},
	})
	if f := found("probe-check", kind(evidence.SingleUse), again); f.Value != "2" || f.Limit != "1" {
		t.Errorf("used %s times of %s", f.Value, f.Limit)
	}
}

// Ages by calendar date and by hours before the day of installing begins.
func TestReadingAgeBoundaries(t *testing.T) {
	hole := func(hour float64) func(*report.Job) { return func(j *report.Job) { j.Holes[0].ReadAt = since(hour) } }
	board := func(hour float64) func(*report.Job) { return func(j *report.Job) { j.Wood[0].ReadAt = since(hour) } }
	air := func(hour float64) func(*report.Job) { return func(j *report.Job) { j.Air[0].ReadAt = since(hour) } }
	surface := func(hour float64) func(*report.Job) {
		return func(j *report.Job) { j.Surfaces[0].ReadAt = since(hour) }
	}
	covered := func(d evidence.Day, membrane string) func(*report.Job) {
		return func(j *report.Job) {
			j.Areas[0].CoveredOn, j.Areas[0].Membrane = day(d), membrane
			j.Products = append(slices.Clone(j.Products),
				limits.Product{ID: "MEM", Kind: "membrane", SlabRH: says(85, evidence.RH), MVER: none(), DataSheet: "Membrane"})
		}
	}
	other := func(hour float64, instrument string) func(*report.Job) {
		return func(j *report.Job) {
			j.Others = []slab.Other{{
				Area: "A1", Test: "drop", Spot: "1", ReadAt: since(hour), Result: num(90, "s"), AtLeast: num(60, "s"),
				Instrument: instrument,
			}}
		}
	}
	answers(t, "reading-age", []situation{
		{"all young", evidence.Met, nil},
		{"slab 30 days", evidence.Met, do(hole(-24 * 30))},
		{"slab 31 days", evidence.NotMet, do(hole(-24*30 - 1))},
		{"slab on the day", evidence.Met, do(hole(23))},
		{"slab after the day", evidence.NotMet, do(hole(24))},
		{"boards 7 days", evidence.Met, do(board(-24 * 7))},
		{"boards 8 days", evidence.NotMet, do(board(-24*7 - 1))},
		{"boards after the day", evidence.NotMet, do(board(24))},
		{"air 48 h", evidence.Met, do(air(-48))},
		{"air past 48 h", evidence.NotMet, do(air(-48.1))},
		{"surface 48 h", evidence.Met, do(surface(-48))},
		{"surface past 48 h", evidence.NotMet, do(surface(-48.1))},
		{"no air", evidence.NotShown, do(func(j *report.Job) { j.Air = nil })},
		{"slab 30 days to the day it was covered", evidence.Met, do(covered(installed-3, "MEM"), hole(-24*33))},
		{"slab 31 days to the day it was covered", evidence.NotMet, do(covered(installed-3, "MEM"), hole(-24*33-1))},
		{"covered without a membrane", evidence.NotMet, do(covered(installed-3, ""), hole(-24*33))},
		{"other tests 30 days, covered or not", evidence.NotMet, do(covered(installed-3, "MEM"), other(-24*33, ""))},
		{"other tests", evidence.Met, do(other(-24*30, ""))},
		{"no day of installing", evidence.NotShown, do(func(j *report.Job) { j.Areas[0].InstallOn = evidence.Date{} })},
	})
}

// What was not looked up is never no limit.
func TestLimitsKnown(t *testing.T) {
	area := func(change func(*report.Area)) func(*report.Job) {
		return func(j *report.Job) { change(&j.Areas[0]) }
	}
	product := func(i int, change func(*limits.Product)) func(*report.Job) {
		return func(j *report.Job) { change(&j.Products[i]) }
	}
	fill := product(0, func(p *limits.Product) { p.FlooringMin, p.FlooringMax = none(), says(9, evidence.MC) })
	low := product(1, func(p *limits.Product) { p.PHMin = none() })
	membrane := func(p limits.Product) func(*report.Job) {
		return func(j *report.Job) {
			p.ID, p.Kind = "MEM", "membrane"
			j.Products, j.Areas[0].Membrane = append(slices.Clone(j.Products), p), "MEM"
		}
	}
	tile := product(0, func(p *limits.Product) { *p = limits.Product{ID: "ENG", Kind: "resilient"} })
	answersOnly(t, "limits-known", []situation{
		{"all", evidence.Met, do(fill, low)},
		{"no flooring MC min", evidence.NotShown, do(fill, low, product(0, func(p *limits.Product) { p.FlooringMin = limits.Stated{} }))},
		{"no flooring MC max", evidence.NotShown, do(fill, low, product(0, func(p *limits.Product) { p.FlooringMax = limits.Stated{} }))},
		{"no pH min", evidence.NotShown, do(fill)},
		{"no RH of the adhesive", evidence.NotShown, do(fill, low, product(1, func(p *limits.Product) { p.SlabRH = limits.Stated{} }))},
		{"no MVER of the flooring", evidence.NotShown, do(fill, low, product(0, func(p *limits.Product) { p.MVER = limits.Stated{} }))},
		{"no data sheet", evidence.NotShown, do(fill, low, product(1, func(p *limits.Product) { p.DataSheet = "" }))},
		{"no adhesive", evidence.NotShown, do(fill, low, area(func(a *report.Area) { a.Adhesive = "" }))},
		{
			"no adhesive, blank installation", evidence.NotShown,
			do(fill, low, area(func(a *report.Area) { a.Adhesive, a.Installation = "", "" })),
		},
		{"floating needs none", evidence.Met, do(fill, area(func(a *report.Area) { a.Adhesive, a.Installation = "", "floating" }))},
		{
			"a membrane answers for the slab", evidence.Met,
			do(fill, product(1, func(p *limits.Product) { *p = limits.Product{ID: "GLUE", Kind: "adhesive"} }),
				membrane(limits.Product{SlabRH: none(), MVER: none(), PHMin: none(), PHMax: none(), DataSheet: "Membrane"})),
		},
		{
			"a membrane that was not looked up", evidence.NotShown,
			do(fill, low, membrane(limits.Product{SlabRH: none(), MVER: none(), PHMin: none(), DataSheet: "Membrane"})),
		},
		{
			"carbide rows ask for its limit", evidence.NotShown,
			do(fill, low, func(j *report.Job) { j.Carbides = []slab.Carbide{{Area: "A1", Spot: "C1"}} }),
		},
		{
			"carbide rows, looked up", evidence.Met,
			do(fill, low, func(j *report.Job) { j.Carbides = []slab.Carbide{{Area: "A1", Spot: "C1"}} },
				product(0, func(p *limits.Product) { p.CM = none() }), product(1, func(p *limits.Product) { p.CM = says(2, evidence.CM) })),
		},
		{
			"loose-lay asks for nothing of the slab", evidence.NotNeeded,
			do(tile, area(func(a *report.Area) { a.Adhesive, a.Installation = "", "loose-lay" })),
		},
		{"stretched with an adhesive does", evidence.NotShown, do(tile, low, area(func(a *report.Area) { a.Installation = "stretch-in" }))},
		{
			"over wood only the flooring's own", evidence.Met,
			do(fill, area(func(a *report.Area) { a.Substrate, a.Adhesive, a.Installation = "wood", "", "nail-down" })),
		},
		{
			"glued to wood without an adhesive", evidence.NotShown,
			do(fill, area(func(a *report.Area) { a.Substrate, a.Adhesive = "wood", "" })),
		},
		{"pH is not asked over wood on a slab", evidence.Met, do(fill, area(func(a *report.Area) { a.Substrate = "wood over slab" }))},
	})
	if f := found("limits-known", fill, low, area(func(a *report.Area) { a.Adhesive = "" })); !strings.Contains(f.Reason,
		"which adhesive?") {
		t.Error(f.Reason)
	}
}

func answersOnly(t *testing.T, id string, all []situation) {
	t.Helper()
	for _, c := range all {
		if f := found(id, c.changes...); f.Outcome != c.want {
			t.Errorf("%s: %s, want %s (%s)", c.name, f.Outcome, c.want, f.Reason)
		}
	}
}
