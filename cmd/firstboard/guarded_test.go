package main

import "testing"

// Guarded, a reading and its uncertainty together meet the limit at equality,
// and break it one last digit beyond.
func TestGuardedBoundaries(t *testing.T) {
	t.Parallel()
	for _, b := range guardedBoundaries() {
		b.with = join(list("+job:Acceptance,guarded"), b.with)
		b.test(t)
	}
}

func guardedBoundaries() []boundary {
	const tile, glued, crawl, heated = "slab-resilient", "slab-glue-down-wood", "wood-crawl", "heated-slab"
	boards := each("wood:%d:Reading (%%)", 5, 6, 7)
	oven := join(list(anyWood), each("wood:%d:Method=oven-dry", 5, 6, 7))
	subfloor := each("wood:%d:Reading (%%)", 8, 9, 10)
	saturated := list("air:8:RH (%)=100", "surface:3:Temp (F)=90")
	return []boundary{
		// A probe without its own uncertainty has 2 % RH.
		{"slab-rh", tile, list("slab-rh:4:RH (%)=70"), list("slab-rh:3:RH (%)"), "72.9 met; 73 met; 73.0 met; 73.1 not met"},
		{
			"slab-rh", tile, list("slab-rh:4:RH (%)=70", "instruments:2:Uncertainty=1.8"), list("slab-rh:3:RH (%)"),
			"73.1 met; 73.2 met; 73.3 not met",
		},
		{"slab-ph", tile, list("instruments:7:Uncertainty=0.2"), list("slab-ph:3:pH"), "7.1 not met; 7.2 met; 9.8 met; 9.9 not met"},
		{"slab-ph", tile, nil, list("slab-ph:3:pH"), "8.5 not shown; 9.5 not shown"},
		{"slab-cm", tile, list("instruments:8:Uncertainty=0.1"), list("slab-cm:4:CM (%)"), "1.8 met; 1.9 met; 1.91 not met"},
		{"slab-cm", tile, nil, list("slab-cm:4:CM (%)"), "1.5 not shown"},
		// A dish's is in grams: 1.5 g of gain meets the limit exactly.
		{
			"mver-rate", tile, list("instruments:6:Uncertainty=0.1"), list("slab-mver:4:End mass (g)"),
			"31.3 met; 31.4 met; 31.5 not met; 31.4001 not met",
		},
		{"mver-rate", tile, nil, list("slab-mver:4:End mass (g)"), "31.3 not shown"},
		{
			"other-tests", tile, list("instruments:9:Uncertainty=5"), list("other-tests:2:Result"),
			"64 not met; 65 met; 295 met; 296 not met",
		},
		{"other-tests", tile, nil, list("other-tests:2:Result"), "180 not shown"},

		// An air instrument without its own has 2 % RH and 1 F.
		{"air-range", crawl, nil, list("air:8:RH (%)"), "31.9 not met; 32 met; 48 met; 48.1 not met"},
		{"air-range", crawl, nil, list("air:8:Temp (F)"), "60.9 not met; 61 met; 79 met; 79.1 not met"},
		{
			"air-range", crawl, list("instruments:3:Uncertainty=3", "instruments:3:Uncertainty temp (F)=2"), list("air:8:RH (%)"),
			"32.9 not met; 33 met; 47 met; 47.1 not met",
		},
		{
			"air-range", crawl, list("instruments:3:Uncertainty temp (F)=2"), list("air:8:Temp (F)"),
			"61.9 not met; 62 met; 78 met; 78.1 not met",
		},
		{"air-held", crawl, nil, list("air:7:RH (%)"), "31.9 not met; 32 met; 48 met; 48.1 not met"},

		// A surface instrument has 2 F; saturated air at 70 F has its dew point there.
		{"surface-dew", glued, saturated, list("surface:2:Temp (F)"), "76.9 not met; 77 met; 77.1 met"},
		{
			"surface-dew", glued, join(saturated, list("instruments:4:Uncertainty=1.5")), list("surface:2:Temp (F)"),
			"76.4 not met; 76.5 met",
		},
		{"surface-max", heated, nil, list("surface:3:Temp (F)"), "77.9 met; 78 met; 78.1 not met"},

		// A pin meter has 2 points, an oven 0.2, a mean 1 point.
		{
			"subfloor-mc", crawl, list("wood:8:Reading (%)=9", "wood:9:Reading (%)=9"), list("wood:10:Reading (%)"),
			"9.9 met; 10 met; 10.1 not met",
		},
		{
			"flooring-mc", crawl, join(oven, each("wood:%d:Instrument=OV1", 5, 6, 7), list("+instruments:OV1,oven,2026-01-05,,")),
			list("wood:7:Reading (%)"), "6.1 not met; 6.2 met; 8.8 met; 8.9 not met",
		},
		{"flooring-mc", crawl, join(list("+instruments:PL1,pinless,2026-01-05,,"), each("wood:%d:Instrument=PL1", 5, 6, 7),
			each("wood:%d:Method=pinless", 5, 6, 7)), list("wood:7:Reading (%)"), "7.9 not shown"},
		{"flooring-target", crawl, oven, boards, "6.6 not met; 6.7 met; 8.7 met; 8.8 not met"},

		// A difference by one instrument has 0.5 point, by several 1.4. The boards average 7.7.
		{"wood-difference", crawl, nil, subfloor, "11.1 met; 11.2 met; 11.3 not met"},
		{
			"wood-difference", crawl, join(list("+instruments:PM2,pin,2026-01-05,,"), each("wood:%d:Instrument=PM2", 8, 9, 10)), subfloor,
			"10.2 met; 10.3 met; 10.4 not met",
		},

		// Counts, times, depths and spreads are compared as recorded.
		{"slab-wait", tile, nil, list("slab-rh:2:Read at"), "2026-03-03 07:59 not met; 2026-03-03 08:00 met"},
		{"slab-depth", tile, nil, list("slab-rh:3:Depth (in)"), "1.43 not met; 1.44 met; 1.76 met; 1.77 not met"},
		{"flooring-spread", crawl, oven, list("wood:7:Reading (%)"), "5.38 not met; 5.39 met; 10.01 met; 10.02 not met"},
		{"slab-temp", tile, nil, list("slab-rh:3:Temp (F)"), "64.9 not met; 65 met; 85 met; 85.1 not met"},
		{"joists-dry", crawl, nil, list("wood:13:Reading (%)"), "14 met; 14.1 not met"},
	}
}
