package main

import (
	"fmt"
	"strings"
	"testing"
)

// boundary is one limit: the cells that are set to each case's value, the
// changes made to the base before, and what must be found. A case is a value
// and an outcome; cases are parted by semicolons.
type boundary struct {
	check string
	base  string
	with  []string
	cells []string
	cases string
}

func (b boundary) test(t *testing.T) {
	for _, c := range strings.Split(b.cases, "; ") {
		value, want := caseOf(c)
		t.Run(b.check+" "+b.base+" "+value, func(t *testing.T) {
			changes := b.with[:len(b.with):len(b.with)]
			for _, cell := range b.cells {
				changes = append(changes, cell+"="+value)
			}
			expect(t, b.check, want, b.base, changes...)
		})
	}
}

func caseOf(c string) (value, outcome string) {
	for _, outcome := range []string{" not met", " not shown", " not needed", " met"} {
		if value, ok := strings.CutSuffix(c, outcome); ok {
			return value, outcome[1:]
		}
	}
	panic(c + ": no outcome")
}

// expect judges a base with changes and compares one check's outcome.
func expect(t *testing.T, check, want, base string, changes ...string) {
	t.Helper()
	f, err := findingOf(judgeBase(t, base, changes...), check)
	if err != nil {
		t.Fatal(err)
	}
	if f.Outcome != want {
		t.Errorf("%s is %s, want %s: %s (value %s, limit %s)", check, f.Outcome, want, f.Reason, f.Value, f.Limit)
	}
}

// each writes a change for several lines.
func each(format string, lines ...int) []string {
	var all []string
	for _, n := range lines {
		all = append(all, fmt.Sprintf(format, n))
	}
	return all
}

func join(lists ...[]string) []string {
	var all []string
	for _, l := range lists {
		all = append(all, l...)
	}
	return all
}

func list(changes ...string) []string { return changes }

// Every limit is met at equality, and broken one last digit beyond it.
func TestBoundaries(t *testing.T) {
	t.Parallel()
	for _, b := range join2(slabBoundaries(), woodBoundaries(), airBoundaries(), instrumentBoundaries()) {
		b.test(t)
	}
}

func join2(lists ...[]boundary) []boundary {
	var all []boundary
	for _, l := range lists {
		all = append(all, l...)
	}
	return all
}

func slabBoundaries() []boundary {
	const tile = "slab-resilient"
	twoFaces := list("areas:2:Slab kind=suspended", "areas:2:Drying faces=2", "areas:2:Under slab=unknown", "slab-rh:2:Depth (in)=0.8",
		"slab-rh:4:Depth (in)=0.8")
	depthMM := list("slab-rh:1:Depth (in)=Depth (mm)", "slab-rh:2:Depth (mm)=40.64", "slab-rh:4:Depth (mm)=40.64")
	return []boundary{
		{"slab-rh", tile, nil, list("slab-rh:3:RH (%)"), "74.9 met; 75 met; 75.0 met; 75.1 not met; 75.00000000000001 not met"},
		{
			"slab-wait", tile, nil, list("slab-rh:2:Read at"),
			"2026-03-03 07:59 not met; 2026-03-03 07:59:59 not met; 2026-03-03 08:00 met; 2026-03-03 08:01 met",
		},
		{
			"slab-temp", "slab-glue-down-wood", nil, list("slab-rh:3:Temp (F)"),
			"59.9 not met; 60 met; 60.1 met; 79.9 met; 80.0 met; 80.1 not met",
		},

		// 40 % of 4 in, within 10 % of it (0.16 in); 20 %, within 1/8 in.
		{"slab-depth", tile, nil, list("slab-rh:3:Depth (in)"), "1.43 not met; 1.44 met; 1.45 met; 1.75 met; 1.76 met; 1.77 not met"},
		{
			"slab-depth", tile, twoFaces, list("slab-rh:3:Depth (in)"),
			"0.674 not met; 0.675 met; 0.676 met; 0.924 met; 0.925 met; 0.926 not met",
		},
		{"slab-depth", tile, depthMM, list("slab-rh:3:Depth (mm)"), "36.575 not met; 36.576 met; 44.704 met; 44.705 not met"},
		// At 3.125 in the two tolerances are one, 0.125 in about 1.25 in.
		{
			"slab-depth", tile, list("areas:2:Slab thickness (in)=3.125", "slab-rh:2:Depth (in)=1.25", "slab-rh:4:Depth (in)=1.25"),
			list("slab-rh:3:Depth (in)"), "1.124 not met; 1.125 met; 1.375 met; 1.376 not met",
		},

		{"slab-edge", tile, nil, list("slab-rh:2:To exterior wall (ft)"), "2.9 met; 3 met; 3.1 not met"},
		{
			"slab-edge", tile, list("slab-rh:1:To exterior wall (ft)=To exterior wall (m)"), list("slab-rh:2:To exterior wall (m)"),
			"0.9143 met; 0.9144 met; 0.9145 not met",
		},

		// 1000 ft2 and 100 m2 are two rules, not one converted.
		{"slab-holes", tile, nil, list("areas:2:Size (ft2)"), "999 met; 1000 met; 1000.1 not met; 1001 not met"},
		{
			"slab-holes", tile, list("areas:1:Size (ft2)=Size (m2)"), list("areas:2:Size (m2)"),
			"99 met; 100 met; 100.1 not met; 101 not met",
		},
		{
			"slab-holes", tile, list("+slab-rh:A1,H4,3,3,3,1.6,2026-03-02 08:00,2026-03-03 08:10,72.0,68,RP1"), list("areas:2:Size (ft2)"),
			"1023 met; 1999 met; 2000 met; 2000.1 not met",
		},
		{"mver-dishes", tile, nil, list("areas:2:Size (ft2)"), "999 met; 1000 met; 1000.1 not met"},
		{"mver-dishes", tile, list("areas:1:Size (ft2)=Size (m2)"), list("areas:2:Size (m2)"), "100 met; 100.1 not met"},

		{
			"mver-time", tile, nil, list("slab-mver:3:Set at"),
			"2026-02-28 20:01 not met; 2026-02-28 20:00:01 not met; 2026-02-28 20:00 met; 2026-02-28 19:59 met; 2026-02-28 08:01 met; 2026-02-28 08:00 met; 2026-02-28 07:59 not met",
		},
		{"mver-rate", tile, nil, list("slab-mver:4:End mass (g)"), "31.4 met; 31.5 met; 31.6 not met; 31.5001 not met"},
		// 3 lb per 1000 ft2 in 24 h, on 0.45 ft2 for 60 h, are
		// 3 x 453.59237 / 24000 x 0.45 x 60 = 1.53087424875 g.
		{"mver-rate", tile, join(
			list("products:1:MVER max (g)=MVER max (lb)", "products:2:MVER max (lb)=3", "slab-mver:1:Test area (cm2)=Test area (ft2)"),
			each("slab-mver:%d:Test area (ft2)=0.45", 2, 3, 4),
		), list("slab-mver:4:End mass (g)"), "31.53087424874 met; 31.53087424875 met; 31.53087424876 not met"},

		{"slab-ph", tile, nil, list("slab-ph:3:pH"), "6.9 not met; 7 met; 7.0 met; 7.1 met; 9.9 met; 10 met; 10.0 met; 10.1 not met"},
		{"slab-cm", tile, nil, list("slab-cm:4:CM (%)"), "1.9 met; 2 met; 2.00 met; 2.1 not met"},
		{
			"slab-cm", tile, list("-slab-cm:4", "areas:1:Size (ft2)=Size (m2)"), list("areas:2:Size (m2)"),
			"49.9 met; 50 met; 50.1 not shown",
		},
		{"slab-cm", tile, list("-slab-cm:4"), list("areas:2:Size (ft2)"), "538.19 met; 538.20 not shown"},
		{"other-tests", tile, nil, list("other-tests:2:Result"), "59 not met; 60 met; 61 met; 299 met; 300 met; 301 not met"},

		// Hole H2 stands at 15, 12; 1.8 and 2.4 ft off are 3 ft.
		{"scan-probed", tile, nil, list("scan:3:Y (ft)"), "8.9 not met; 9 met; 9.1 met; 14.9 met; 15 met; 15.1 not met"},
		{"scan-probed", tile, list("scan:3:Y (ft)=14.4"), list("scan:3:X (ft)"), "16.7 met; 16.8 met; 16.9 not met; 16.8000001 not met"},
		{"slab-rh", tile, list(
			"slab-rh:3:RH (%)=80", "slab-rh:3:Discarded=crack",
			"+slab-rh:A1,H4,18,12,18,1.6,2026-03-03 09:11,2026-03-04 09:11,73.5,68,RP1",
		), list("slab-rh:5:X (ft)"), "17.9 met; 18 met; 18.1 not shown"},
		{"slab-rh", tile, list(
			"slab-rh:3:RH (%)=80", "slab-rh:3:Discarded=crack",
			"+slab-rh:A1,H4,18,12,18,1.6,2026-03-03 09:11,2026-03-04 09:11,73.5,68,RP1",
		), list("slab-rh:5:Sealed at"), "2026-03-03 09:10 not shown; 2026-03-03 09:11 met"},

		{
			"heat-run", "heated-slab", nil, list("areas:2:Heat on since"),
			"2026-02-28 07:59 met; 2026-02-28 08:00 met; 2026-02-28 08:01 not met",
		},
		{"surface-max", "heated-slab", nil, list("surface:3:Temp (F)"), "79.9 met; 80 met; 80.0 met; 80.1 not met"},
		// 80 F is 26.666... C.
		{
			"surface-max", "heated-slab", list("surface:1:Temp (F)=Temp (C)", "surface:2:Temp (C)=20"), list("surface:3:Temp (C)"),
			"26.66 met; 26.67 not met",
		},
	}
}

// anyWood makes the pin meter one of every kind that reads wood.
const anyWood = "instruments:5:Kind=pin, pinless, oven"

func woodBoundaries() []boundary {
	const crawl, over = "wood-crawl", "wood-over-slab"
	boards := each("wood:%d:Reading (%%)", 5, 6, 7)
	before := each("wood:%d:Reading (%%)", 2, 3, 4)
	oven := join(list(anyWood), each("wood:%d:Method=oven-dry", 5, 6, 7))
	subfloor := each("wood:%d:Reading (%%)", 8, 9, 10)
	return []boundary{
		{"joists-dry", crawl, nil, list("wood:13:Reading (%)"), "13.9 met; 14 met; 14.0 met; 14.1 not met"},
		{"joists-dry", crawl, list("products:2:Subfloor MC max (%)=11.5"), list("wood:13:Reading (%)"), "13.5 met; 13.6 not met"},
		{"joists-dry", crawl, nil, list("areas:2:Size (ft2)"), "599.9 met; 600 met; 600.1 not met"},
		{"subfloor-count", crawl, nil, list("areas:2:Size (ft2)"), "149.9 met; 150 met; 150.1 not met"},
		{"subfloor-mc", crawl, nil, list("wood:10:Reading (%)"), "11.9 met; 12 met; 12.0 met; 12.1 not met"},
		{
			"subfloor-spots", crawl, list("wood:8:Reading (%)=8.0", "wood:9:Reading (%)=8.4"), list("wood:10:Reading (%)"),
			"11.3 met; 11.4 met; 11.5 not met",
		},

		// A pin meter reads from 6 %, a pinless one from 4; over 30 it stands.
		{"subfloor-mc", crawl, nil, list("wood:10:Reading (%)"), "5.9 not shown; 6 met; 6.1 met; 30 not met; 30.1 not met"},
		{"subfloor-mc", crawl, list(anyWood, "wood:10:Method=pinless"), list("wood:10:Reading (%)"), "3.9 not shown; 4 met; 4.0 met"},
		{"subfloor-mc", crawl, list(anyWood, "wood:10:Method=oven-dry"), list("wood:10:Reading (%)"), "0 met; 3.9 met"},

		{"flooring-count", crawl, nil, list("areas:2:Size (ft2)"), "74.9 met; 75 met; 75.1 not met"},
		{"flooring-count", crawl, list("areas:1:Size (ft2)=Size (m2)"), list("areas:2:Size (m2)"), "6.96 met; 6.97 not met"},
		// 75 ft2 are 6.9677 m2
		{
			"flooring-count", crawl, list("areas:2:Size (ft2)=100", "wood:2:Piece=B9"), list("wood:2:Read at"),
			"2026-02-28 07:59 not met; 2026-02-28 08:00 met",
		},
		{"flooring-mc", crawl, oven, list("wood:7:Reading (%)"), "5.9 not met; 6 met; 6.1 met; 8.9 met; 9 met; 9.0 met; 9.1 not met"},

		// Target 7.7: 2.0 points either side, 0.7 and 1.3 of it.
		{"flooring-target", crawl, oven, boards, "5.6 not met; 5.7 met; 5.8 met; 9.6 met; 9.7 met; 9.8 not met"},
		{
			"flooring-target", crawl, list("wood:5:Reading (%)=9.6", "wood:6:Reading (%)=9.7"), list("wood:7:Reading (%)"),
			"9.7 met; 9.8 met; 9.9 not met",
		},
		{
			"flooring-spread", crawl, oven, list("wood:7:Reading (%)"),
			"5.38 not met; 5.39 met; 5.40 met; 10.00 met; 10.01 met; 10.02 not met",
		},

		// The last mean is 7.7 and so is the EMC of air at 70 F and 40 %.
		{"flooring-steady", crawl, nil, before, "7.1 not met; 7.2 met; 8.2 met; 8.3 not met"},
		{
			"flooring-steady", crawl, join(oven, each("wood:%d:Method=oven-dry", 2, 3, 4)), join(before, boards),
			"6.1 not met; 6.2 met; 9.2 met; 9.3 not met",
		},
		{"flooring-steady", crawl, nil, each("wood:%d:Read at", 2, 3, 4), "2026-02-28 07:59 met; 2026-02-28 08:00 not shown"},

		// The boards average 7.7.
		{"wood-difference", crawl, nil, subfloor, "11.6 met; 11.7 met; 11.8 not met"},
		{"wood-difference", over, nil, subfloor, "9.6 met; 9.7 met; 9.8 not met"},
		{"wood-difference", over, nil, boards, "7.3 not met; 7.4 met; 11.4 met; 11.5 not met"},
		{
			"wood-difference", crawl, each("wood:%d:Reading (%%)=10.0", 8, 9, 10), list("products:2:Face width (in)"),
			"2.9 met; 2.999 met; 3 not met; 3.0 not met; 3.1 not met",
		},
		{
			"wood-difference", crawl, join(list("products:1:Face width (in)=Face width (mm)"), each("wood:%d:Reading (%%)=10.0", 8, 9, 10)),
			list("products:2:Face width (mm)"), "76.1 met; 76.2 not met",
		},
	}
}

func airBoundaries() []boundary {
	const crawl, glued, tile = "wood-crawl", "slab-glue-down-wood", "slab-resilient"
	const last = "air:8:"
	celsius := join(list("air:1:Temp (F)=Temp (C)"), each("air:%d:Temp (C)=21", 2, 3, 4, 5, 6, 7, 8))
	noBounds := list("products:2:Air temp min (F)=", "products:2:Air temp max (F)=")
	wet := list(last+"RH (%)=100", "surface:3:Temp (F)=90")
	excursion := list("+air:2026-03-03 20:00,70,40,AL1", "+air:2026-03-03 21:00,70,55,AL1", "+air:2026-03-03 22:00,70,40,AL1")
	twice := list(
		"+air:2026-03-01 11:30,70,40,AL1", "+air:2026-03-01 12:00,70,55,AL1", "+air:2026-03-01 12:30,70,40,AL1",
		"+air:2026-03-02 11:30,70,40,AL1", "+air:2026-03-02 12:00,70,55,AL1", "+air:2026-03-02 12:30,70,40,AL1",
	)
	return []boundary{
		{"air-range", crawl, nil, list(last + "Temp (F)"), "59.9 not met; 60 met; 60.1 met; 79.9 met; 80 met; 80.1 not met"},
		{"air-range", crawl, nil, list(last + "RH (%)"), "29.9 not met; 30 met; 30.1 met; 49.9 met; 50 met; 50.1 not met"},
		{"air-range", tile, noBounds, list(last + "Temp (F)"), "64.9 not met; 65 met; 85 met; 85.1 not met"},
		{"air-range", tile, nil, list(last + "RH (%)"), "4.9 not shown; 5 met; 64.9 met; 65 met; 65.1 not met"},
		{"air-range", crawl, celsius, list(last + "Temp (C)"), "15.5 not met; 15.6 met; 26.6 met; 26.7 not met"},
		// 60 and 80 F are 15.55... and 26.66...
		{
			"air-range", crawl, list("climates:2:RH (%)=36", "climates:3:RH (%)=44"), list(last + "RH (%)"),
			"34.9 not met; 35 met; 45 met; 45.1 not met",
		},
		{"air-usual", glued, nil, list(last + "RH (%)"), "29.9 not met; 30 met; 50 met; 50.1 not met"},
		{"climate-range", glued, nil, list("climates:2:RH (%)"), "29.9 not met; 30 met; 55 met; 55.1 not met"},
		{"climate-range", glued, nil, list("climates:3:Temp (F)"), "59.9 not met; 60 met; 80 met; 80.1 not met"},

		// A run out of range between two rows at most 2 h apart is excused.
		{"air-range", crawl, excursion, list("air:11:Read at"), "2026-03-03 21:59 met; 2026-03-03 22:00 met; 2026-03-03 22:01 not met"},
		{"air-range", crawl, excursion, list("air:9:Read at"), "2026-03-03 20:01 met; 2026-03-03 19:59 not met"},

		// The window of air-held runs from 08:00 on 1 March to 08:00 on 3 March.
		// Of two runs in it that begin within 24 h neither is excused.
		{"air-held", crawl, twice, list("air:10:Read at"), "2026-03-01 11:59 met; 2026-03-01 12:00 not met; 2026-03-01 12:01 not met"},
		{"air-held", crawl, nil, list("air:6:Read at"), "2026-03-02 09:59 met; 2026-03-02 10:00 met; 2026-03-02 10:01 not shown"},
		{
			"air-held", crawl, list("air:7:Read at=2026-03-03 08:01"), list("air:6:Read at"),
			"2026-03-02 05:59 not shown; 2026-03-02 06:00 met",
		},
		{"air-held", crawl, list("-air:4", "-air:3", "-air:2"), list("air:2:Read at"), "2026-03-01 08:00 met; 2026-03-01 08:01 not shown"},
		{
			"air-held", crawl, list("+air:2026-03-01 07:59,70,55,AL1", "+air:2026-03-01 07:00,70,40,AL1"), list("air:5:Read at"),
			"2026-03-01 08:00 met; 2026-03-01 09:01 not met",
		},

		// Saturated air at 70 F has its dew point at 70.00 F.
		{"surface-dew", glued, wet, list("surface:2:Temp (F)"), "74.9 not met; 74.99 not met; 75 met; 75.1 met"},
		{
			"surface-dew", glued, join(celsius, list(last+"RH (%)=100", "surface:1:Temp (F)=Temp (C)", "surface:3:Temp (C)=40")),
			list("surface:2:Temp (C)"), "23.9 not met; 24 met; 24.1 met",
		},
		{
			"surface-dew", glued, nil, list("surface:2:Read at"),
			"2026-03-04 05:59 not shown; 2026-03-04 06:00 met; 2026-03-04 10:00 met; 2026-03-04 10:01 not shown",
		},
	}
}

func instrumentBoundaries() []boundary {
	const crawl, glued, tile, over = "wood-crawl", "slab-glue-down-wood", "slab-resilient", "wood-over-slab"
	april := list("+air:2026-04-01 08:00,70,40,AL1", "surface:2:Read at=2026-04-01 08:00", "surface:3:Read at=2026-04-01 08:00")
	covered := join(
		list("areas:2:Install on=2026-04-06", "+air:2026-04-05 08:00,70,40,AL1", "surface:2:Read at=2026-04-05 08:00",
			"surface:3:Read at=2026-04-05 08:00"),
		each("wood:%d:Read at=2026-03-31 08:00", 5, 6, 7, 8, 9, 10),
	)
	return []boundary{
		{
			"calibration", crawl, nil, list("instruments:5:Calibrated on"),
			"2025-03-02 not met; 2025-03-03 met; 2026-03-02 met; 2026-03-03 met; 2026-03-04 not met",
		},
		{"calibration", crawl, nil, list("instruments:5:Due on"), "2026-03-02 not met; 2026-03-03 met; 2026-03-04 met"},

		// Hole H3 was read at 10:10 on 3 March, 720 h after 10:10 on 1 February.
		{
			"probe-check", glued, nil, list("instrument-checks:2:Checked at"),
			"2026-02-01 10:09 not met; 2026-02-01 10:10 met; 2026-02-01 10:11 met",
		},
		{"probe-check", glued, nil, list("instrument-checks:2:Read"), "73.2 not met; 73.3 met; 73.4 met; 77.2 met; 77.3 met; 77.4 not met"},

		{
			"reading-age", crawl, list("+air:2026-03-09 08:00,70,40,AL1"), list("areas:2:Install on"),
			"2026-03-09 met; 2026-03-10 met; 2026-03-11 not met",
		},
		{"reading-age", crawl, nil, list("areas:2:Install on"), "2026-03-02 not met; 2026-03-03 met"},
		{"reading-age", tile, april, list("areas:2:Install on"), "2026-04-01 met; 2026-04-02 met; 2026-04-03 not met"},
		// A covered slab's readings count to the day it was covered.
		{"reading-age", over, covered, list("areas:2:Covered on"), "2026-03-03 met; 2026-04-01 met; 2026-04-02 met; 2026-04-03 not met"},
		{
			"reading-age", crawl, list("areas:2:Install on=2026-03-06"), list("air:8:Read at"),
			"2026-03-03 23:59 not met; 2026-03-04 00:00 met; 2026-03-04 00:01 met",
		},
		{
			"reading-age", glued, list("areas:2:Install on=2026-03-06"), list("surface:2:Read at"),
			"2026-03-03 23:59 not met; 2026-03-04 00:00 met; 2026-03-04 00:01 met",
		},
	}
}
