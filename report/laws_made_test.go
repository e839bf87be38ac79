package report_test

import (
	"fmt"
	"time"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"

	"firstboard/acclimate"
	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/instruments"
	"firstboard/report/limits"
	"firstboard/slab"
	"firstboard/wood"
)

// Records made up for the laws: one area of each situation, small and good,
// spoiled afterwards. Nothing is read from a file, so a draw is cheap.

// spot is where a made-up row stands.
type spot string

func (s spot) String() string { return string(s) }

// installed is the day of installing of a made-up record, 12 March 2026.
const installed = evidence.Day(20524)

func day(d evidence.Day) evidence.Date { return evidence.Date{Written: d.String(), Day: d} }

// since is a time so many hours from the beginning of the day of installing.
func since(hours float64) evidence.Time {
	at := installed.Begins(time.UTC).Add(time.Duration(hours * float64(time.Hour)))
	return evidence.Time{Written: at.Format("2006-01-02 15:04"), First: at, Last: at}
}

func num(x float64, u evidence.Unit) evidence.Reading {
	d := decimal.NewFromFloat(x).Round(4)
	return evidence.Reading{Written: d.String(), Value: d, Unit: u}
}

func says(x float64, u evidence.Unit) limits.Stated { return limits.Stated{Number: num(x, u)} }

func none() limits.Stated { return limits.Stated{None: true} }

// builder builds a record area by area. Shape holds the drawn choices.
type builder struct {
	job   report.Job
	shape func(label string, n int) int
}

func (m *builder) yes(label string) bool { return m.shape(label, 2) == 1 }

// made draws a good record of one to three areas.
func made(t *rapid.T) report.Job {
	m := &builder{shape: func(label string, n int) int { return rapid.IntRange(0, n-1).Draw(t, label) }}
	m.start()
	for i := range 1 + m.shape("more areas", 3) {
		m.area(fmt.Sprintf("A%d", i+1), m.shape("situation", 5))
	}
	return placed(m.job)
}

func (m *builder) area(id string, situation int) {
	switch situation {
	case 0:
		m.resilient(id)
	case 1:
		m.gluedWood(id)
	case 2:
		m.nailedWood(id)
	case 3:
		m.heatedWood(id)
	default:
		m.carpet(id)
	}
	m.job.SignOffs = append(m.job.SignOffs,
		report.SignOff{Area: id, Role: "installer", Name: "Installer", At: since(-2), Decision: "accept"})
}

// start is the head of a record: settings, instruments, products, the service
// climate and a log of the air of the whole site.
func (m *builder) start() {
	m.job = report.Job{
		Name: "Job", Zone: time.UTC, Settings: report.DefaultSettings(), Guarded: m.yes("guarded"),
		Instruments: evidence.Instruments{},
	}
	for _, x := range []struct {
		id, kind string
		u        float64
	}{
		{"RP1", evidence.Probe, 0},
		{"RP2", evidence.Probe, 1.5},
		{"AL1", evidence.AirMeter, 0},
		{"AL2", evidence.AirMeter, 2.5},
		{"IR1", evidence.Surface, 0},
		{"PM1", evidence.PinMeter, 0.5},
		{"PM2", evidence.PinMeter, 0.4},
		{"PL1", "pinless", 0.6},
		{"OV1", "oven", 0},
		{"BAL", "balance", 0.01},
		{"PH1", "pH", 0.1},
		{"CM1", "CM", 0.1},
		{"OT1", "other", 1},
		{"XX1", "other", 0},
	} {
		m.instrument(x.id, x.kind, x.u)
	}
	for _, id := range []string{"RP1", "RP2"} {
		for _, at := range []float64{-600, -200, -10} {
			m.job.Checks = append(m.job.Checks, instruments.Comparison{
				Instrument: id, CheckedAt: since(at),
				Expected: num(75.3, evidence.RH), Read: num(75.9, evidence.RH),
			})
		}
	}
	for _, p := range [][2]float64{{70, 32}, {75, 50}} {
		m.job.Climates = append(m.job.Climates,
			acclimate.Period{Climate: "C1", Name: fmt.Sprint(p[0]), Temp: num(p[0], evidence.Fahrenheit), RH: num(p[1], evidence.RH)})
	}
	m.job.Products = products()
	for h := -240.0; h < 0; h += 12 {
		m.air("", h-4, 40, "AL1")
	}
}

func (m *builder) instrument(id, kind string, u float64) {
	i := evidence.Instrument{ID: id, Kinds: []string{kind}, CalibratedOn: day(installed - 200), DueOn: day(installed + 100)}
	if u > 0 {
		i.Uncertainty = num(u, evidence.None)
	}
	m.job.Instruments[evidence.Key(id)] = i
}

// products state or deny every limit that the situations ask for.
func products() []limits.Product {
	rh, mc, f := evidence.RH, evidence.MC, evidence.Fahrenheit
	return []limits.Product{
		{
			ID: "TILE", Kind: "resilient", SlabRH: says(80, rh), MVER: says(5, evidence.Pounds), CM: none(), PHMax: says(10, evidence.PH),
			DataSheet: "Tile",
		},
		{
			ID: "SHEET", Kind: "resilient", SlabRH: none(), MVER: says(24, evidence.Grams), CM: says(2, evidence.CM),
			PHMax: says(11, evidence.PH), AirTempMax: says(85, f), DataSheet: "Sheet",
		},
		{
			ID: "ENG", Kind: "engineered wood", Species: "white oak", FaceWidth: num(6, evidence.Inch), SlabRH: none(), MVER: none(),
			FlooringMin: says(5, mc), FlooringMax: says(9.5, mc), AirRHMin: says(30, rh), AirRHMax: says(55, rh), DataSheet: "Plank",
		},
		{
			ID: "STRIP", Kind: "solid wood", Species: "red oak", FaceWidth: num(2.25, evidence.Inch), FlooringMin: says(5, mc),
			FlooringMax: says(10, mc), DataSheet: "Strip",
		},
		{
			ID: "ENGF", Kind: "engineered wood", Species: "white oak", FlooringMin: none(), FlooringMax: none(), SurfaceTemp: says(82, f),
			AirTempMin: says(62, f), DataSheet: "Click",
		},
		{ID: "CARPET", Kind: "carpet", SlabRH: says(80, rh), DataSheet: "Carpet"},
		{
			ID: "GLUE", Kind: "adhesive", SlabRH: says(85, rh), MVER: none(), CM: none(), PHMin: none(), PHMax: says(11, evidence.PH),
			DataSheet: "Glue",
		},
		{
			ID: "WET", Kind: "adhesive", SlabRH: none(), MVER: none(), CM: none(), PHMin: says(7, evidence.PH), PHMax: none(),
			DataSheet: "Wet glue",
		},
		{
			ID: "MEM", Kind: "membrane", SlabRH: says(90, rh), MVER: none(), CM: none(), PHMin: none(), PHMax: says(12, evidence.PH),
			DataSheet: "Membrane",
		},
		{
			ID: "SEAL", Kind: "membrane", SlabRH: none(), MVER: none(), CM: none(), PHMin: none(), PHMax: none(),
			DataSheet: "Sealing membrane",
		},
	}
}

func (m *builder) air(area string, hour, rh float64, by string) {
	m.job.Air = append(m.job.Air, acclimate.Air{
		Area: area, ReadAt: since(hour), Temp: num(70, evidence.Fahrenheit),
		RH: num(rh, evidence.RH), Instrument: by,
	})
}

// holes are three holes of an area, the first by the wall, with a history.
func (m *builder) holes(id string, hour, depth float64) {
	single := m.yes("single-use")
	for i := range 3 {
		by := []string{"RP1", "RP2"}[i%2]
		if single {
			by = fmt.Sprintf("SU-%s-%d", id, i)
			m.instrument(by, evidence.SingleUse, 2)
		}
		x := float64(2 + 8*i)
		h := slab.Hole{
			Area: id, Hole: fmt.Sprintf("H%d", i+1), X: num(x, evidence.Foot), Y: num(4, evidence.Foot), ToWall: num(x, evidence.Foot),
			Depth: num(depth, evidence.Inch), SealedAt: since(hour - 60), ReadAt: since(hour - 30), RH: num(74+float64(i), evidence.RH),
			Temp: num(69, evidence.Fahrenheit), Instrument: by,
		}
		if m.yes("history") {
			m.job.Holes = append(m.job.Holes, h)
		}
		h.ReadAt, h.RH = since(hour), num(70+float64(i), evidence.RH)
		m.job.Holes = append(m.job.Holes, h)
	}
}

func (m *builder) surfaces(id string, temp float64) {
	for i := range 2 {
		m.job.Surfaces = append(m.job.Surfaces, acclimate.Surface{
			Area: id, Spot: fmt.Sprintf("S%d", i+1), ReadAt: since(-16.5),
			Temp: num(temp+float64(i), evidence.Fahrenheit), Instrument: "IR1",
		})
	}
}

// boards are rows of wood, a lot or the pieces below.
func (m *builder) boards(of string, r wood.Row, n int, mc float64) {
	for i := range n {
		r.Of, r.Piece, r.ReadAt = of, fmt.Sprintf("%s%d", r.Lot, i+1), since(-40+0.1*float64(i))
		r.Reading = num(mc+float64(i%3-1)/5, evidence.MC)
		m.job.Wood = append(m.job.Wood, r)
	}
}

// resilient is a glued resilient floor on a slab: by humidity, dishes and pH,
// or by dishes, carbide and pH.
func (m *builder) resilient(id string) {
	a := report.Area{
		ID: id, Size: num(480, evidence.SquareFoot), Substrate: "slab", Thickness: num(5, evidence.Inch), SlabKind: "on grade",
		UnderSlab: "retarder", ExteriorWalls: num(1, evidence.None), Flooring: "TILE", Adhesive: "GLUE", Installation: "glue-down",
		Climate: "C1", InstallOn: day(installed),
	}
	if m.yes("by carbide") {
		a.Flooring, a.Adhesive = "SHEET", "WET"
	}
	m.job.Areas = append(m.job.Areas, a)
	m.holes(id, -72, 2)
	for i := range 3 {
		spot := fmt.Sprintf("P%d", i+1)
		m.job.Dishes = append(m.job.Dishes, slab.Dish{
			Area: id, Dish: spot, SetAt: since(-140), RetrievedAt: since(-74),
			Start: num(30, evidence.Gram), End: num(31.5, evidence.Gram), TestArea: num(0.45, evidence.SquareFoot), Instrument: "BAL",
		})
		m.job.PHs = append(m.job.PHs, slab.PH{Area: id, Spot: spot, ReadAt: since(-60), PH: num(9, evidence.PH), Instrument: "PH1"})
		m.job.Carbides = append(m.job.Carbides, slab.Carbide{
			Area: id, Spot: spot, Depth: num(1, evidence.Inch), ReadAt: since(-60),
			CM: num(1.5, evidence.CM), Instrument: "CM1",
		})
	}
	m.surfaces(id, 66)
	m.tests(id)
	m.scans(id)
}

func (m *builder) tests(id string) {
	for i := range 2 {
		m.job.Others = append(m.job.Others, slab.Other{
			Area: id, Test: "drop", Spot: fmt.Sprintf("D%d", i+1), ReadAt: since(-50),
			Result: num(100, "s"), AtLeast: num(30, "s"), AtMost: num(300, "s"), Instrument: "OT1",
		})
	}
}

func (m *builder) scans(id string) {
	for i := range 3 {
		m.job.Scans = append(m.job.Scans, slab.Scan{
			Area: id, Spot: fmt.Sprintf("N%d", i+1), X: num(float64(3+8*i), evidence.Foot),
			Y: num(4, evidence.Foot), ReadAt: since(-150), Reading: num(float64(40+i), evidence.None),
		})
	}
}

// gluedWood is engineered wood of two lots glued to a slab.
func (m *builder) gluedWood(id string) {
	m.job.Areas = append(m.job.Areas, report.Area{
		ID: id, Size: num(44, evidence.SquareM), Substrate: "slab",
		Thickness: num(125, evidence.Millimeter), UnderSlab: "unknown", ExteriorWalls: num(1, evidence.None), Flooring: "ENG",
		Adhesive: "GLUE", Installation: "glue-down", Climate: "C1", InstallOn: day(installed), HVAC: "temporary",
	})
	m.holes(id, -72, 2)
	for i := range 2 {
		m.job.PHs = append(m.job.PHs, slab.PH{
			Area: id, Spot: fmt.Sprintf("P%d", i+1), ReadAt: since(-60), PH: num(9, evidence.PH),
			Instrument: "PH1",
		})
	}
	m.surfaces(id, 66)
	for _, lot := range []string{"L1", "L2"} {
		m.boards(wood.OfFlooring, wood.Row{Area: id, Lot: lot, Method: wood.Pin, Scale: "white oak", Instrument: "PM1"}, 10, 7.6)
	}
}

// nailedWood is solid wood nailed to a wood base over a crawl space.
func (m *builder) nailedWood(id string) {
	m.job.Areas = append(m.job.Areas, report.Area{
		ID: id, Size: num(140, evidence.SquareFoot), Substrate: "wood", Below: "crawl space",
		GroundCover: "yes", Flooring: "STRIP", Installation: "nail-down", Climate: "C1", InstallOn: day(installed),
	})
	pin := wood.Row{
		Area: id, Method: wood.Pin, Scale: "red oak", Instrument: "PM1", TempCorrected: "no",
		WoodTemp: num(72, evidence.Fahrenheit),
	}
	m.boards(wood.OfFlooring, pin, 11, 7.6)
	pin.Scale, pin.Species, pin.Instrument = "Douglas-fir", "Douglas-fir", []string{"PM1", "PM2"}[m.shape("second meter", 2)]
	m.boards(wood.OfSubfloor, pin, 4, 9)
	m.boards(wood.OfJoist, pin, 3, 11)
	m.air(id, -16, 41, "AL2")
}

// heatedWood is floating engineered wood on a heated wood base over a slab,
// with a membrane between that was covered two days before installing.
func (m *builder) heatedWood(id string) {
	a := report.Area{
		ID: id, Size: num(140, evidence.SquareFoot), Substrate: "wood over slab", Thickness: num(5, evidence.Inch),
		DryingFaces: num(2, evidence.None), SlabKind: "suspended", ExteriorWalls: num(0, evidence.None), RadiantHeat: "yes",
		HeatOnSince: since(-240), Flooring: "ENGF", Membrane: "MEM", Installation: "floating", Climate: "C1",
		CoveredOn: day(installed - 2), InstallOn: day(installed),
	}
	if m.yes("sealed") {
		a.Membrane = "SEAL"
	}
	m.job.Areas = append(m.job.Areas, a)
	m.holes(id, -72, 1)
	m.surfaces(id, 74)
	m.boards(wood.OfFlooring, wood.Row{Area: id, Method: wood.OvenDry, Instrument: "OV1"}, 11, 7.6)
	m.boards(wood.OfSubfloor, wood.Row{Area: id, Method: wood.Pinless, Scale: "plywood", Species: "plywood", Instrument: "PL1"}, 3, 8)
}

// carpet is stretched on a slab: its slab checks advise.
func (m *builder) carpet(id string) {
	m.job.Areas = append(m.job.Areas, report.Area{
		ID: id, Size: num(900, evidence.SquareFoot), Substrate: "slab",
		Thickness: num(5, evidence.Inch), UnderSlab: "retarder", ExteriorWalls: num(1, evidence.None), Flooring: "CARPET",
		Installation: "stretch-in", Climate: "C1", InstallOn: day(installed),
	})
	m.holes(id, -72, 2)
	for h := -120.0; h < 0; h += 24 {
		m.air(id, h+1, 42, "AL2")
	}
}
