package report_test

import (
	"fmt"
	"slices"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/slab"
	"firstboard/wood"
)

// resilient is a glued resilient floor on a slab: by humidity, dishes and pH,
// or by dishes, carbide and pH.
func (m *manufacturer) resilient(id string) {
	a := report.Area{ID: id, Size: num(480, evidence.SquareFoot), Substrate: "slab", Thickness: num(5, evidence.Inch), SlabKind: "on grade", UnderSlab: "retarder", Flooring: "TILE", Adhesive: "GLUE", Installation: "glue-down", Climate: "C1", InstallOn: day(installed)}
	if m.yes("by carbide") {
		a.Flooring, a.Adhesive = "SHEET", ""
	}
	m.job.Areas = append(m.job.Areas, a)
	m.holes(id, -72, 2)
	for i := range 3 {
		spot := fmt.Sprintf("P%d", i+1)
		m.job.Dishes = append(m.job.Dishes, slab.Dish{Area: id, Dish: spot, SetAt: since(-140), RetrievedAt: since(-74), Start: num(30, evidence.Gram), End: num(31.5, evidence.Gram), TestArea: num(0.45, evidence.SquareFoot), Instrument: "BAL"})
		m.job.PHs = append(m.job.PHs, slab.PH{Area: id, Spot: spot, ReadAt: since(-60), PH: num(9, evidence.PH), Instrument: "PH1"})
		m.job.Carbides = append(m.job.Carbides, slab.Carbide{Area: id, Spot: spot, Depth: num(1, evidence.Inch), ReadAt: since(-60), CM: num(1.5, evidence.CM), Instrument: "CM1"})
	}
	m.surfaces(id, 66)
	m.tests(id)
	m.scans(id)
}

func (m *manufacturer) tests(id string) {
	for i := range 2 {
		m.job.Others = append(m.job.Others, slab.Other{Area: id, Test: "drop", Spot: fmt.Sprintf("D%d", i+1), ReadAt: since(-50), Result: num(100, "s"), AtLeast: num(30, "s"), AtMost: num(300, "s"), Instrument: "OT1"})
	}
}

func (m *manufacturer) scans(id string) {
	for i := range 3 {
		m.job.Scans = append(m.job.Scans, slab.Scan{Area: id, Spot: fmt.Sprintf("N%d", i+1), X: num(float64(3+8*i), evidence.Foot), Y: num(4, evidence.Foot), ReadAt: since(-150), Reading: num(float64(40+i), evidence.None)})
	}
}

// gluedWood is engineered wood of two lots glued to a slab.
func (m *manufacturer) gluedWood(id string) {
	m.job.Areas = append(m.job.Areas, report.Area{ID: id, Size: num(44, evidence.SquareM), Substrate: "slab", Thickness: num(125, evidence.Millimeter), Flooring: "ENG", Adhesive: "GLUE", Installation: "glue-down", Climate: "C1", InstallOn: day(installed), HVAC: "temporary"})
	m.holes(id, -72, 2)
	for i := range 2 {
		m.job.PHs = append(m.job.PHs, slab.PH{Area: id, Spot: fmt.Sprintf("P%d", i+1), ReadAt: since(-60), PH: num(9, evidence.PH), Instrument: "PH1"})
	}
	m.surfaces(id, 66)
	for _, lot := range []string{"L1", "L2"} {
		m.boards(wood.OfFlooring, wood.Row{Area: id, Lot: lot, Method: wood.Pin, Scale: "white oak", Instrument: "PM1"}, 10, 7.6)
	}
}

// nailedWood is solid wood nailed to a wood base over a crawl space.
func (m *manufacturer) nailedWood(id string) {
	m.job.Areas = append(m.job.Areas, report.Area{ID: id, Size: num(140, evidence.SquareFoot), Substrate: "wood", Below: "crawl space", GroundCover: "yes", Flooring: "STRIP", Installation: "nail-down", Climate: "C1", InstallOn: day(installed)})
	pin := wood.Row{Area: id, Method: wood.Pin, Scale: "red oak", Instrument: "PM1", TempCorrected: "no", WoodTemp: num(72, evidence.Fahrenheit)}
	m.boards(wood.OfFlooring, pin, 11, 7.6)
	pin.Scale, pin.Species, pin.Instrument = "Douglas-fir", "Douglas-fir", []string{"PM1", "PM2"}[m.shape("second meter", 2)]
	m.boards(wood.OfSubfloor, pin, 4, 9)
	m.boards(wood.OfJoist, pin, 3, 11)
	m.air(id, -16, 41, "AL2")
}

// heatedWood is floating engineered wood on a heated wood base over a slab,
// with a membrane between that was covered two days before installing.
func (m *manufacturer) heatedWood(id string) {
	a := report.Area{ID: id, Size: num(140, evidence.SquareFoot), Substrate: "wood over slab", Thickness: num(5, evidence.Inch), DryingFaces: num(2, evidence.None), SlabKind: "suspended", ExteriorWalls: num(0, evidence.None), RadiantHeat: "yes", HeatOnSince: since(-240), Flooring: "ENGF", Membrane: "MEM", Installation: "floating", Climate: "C1", CoveredOn: day(installed - 2), InstallOn: day(installed)}
	if m.yes("sealed") {
		a.Membrane = "SEAL"
	}
	m.job.Areas = append(m.job.Areas, a)
	m.holes(id, -72, 1)
	m.surfaces(id, 74)
	m.boards(wood.OfFlooring, wood.Row{Area: id, Method: wood.OvenDry, Instrument: "PM2"}, 11, 7.6)
	m.boards(wood.OfSubfloor, wood.Row{Area: id, Method: wood.Pinless, Scale: "plywood", Species: "plywood", Instrument: "PL1"}, 3, 8)
}

// textile is a stretched textile on a slab: its slab checks advise.
func (m *manufacturer) textile(id string) {
	m.job.Areas = append(m.job.Areas, report.Area{ID: id, Size: num(900, evidence.SquareFoot), Substrate: "slab", Thickness: num(5, evidence.Inch), Flooring: "CARPET", Installation: "stretch-in", Climate: "C1", InstallOn: day(installed)})
	m.holes(id, -72, 2)
	for h := -120.0; h < 0; h += 24 {
		m.air(id, h+1, 42, "AL2")
	}
}

// placed gives every row of a record a place of its own.
func placed(j report.Job) report.Job {
	for name, rows := range tables(&j) {
		for i := range rows.Len() {
			put(rows.Index(i), fmt.Sprintf("%s %d", name, i+1))
		}
	}
	return j
}

// keepAreas is a record with some of its areas alone, all their rows, and those
// of the whole site.
func keepAreas(j report.Job, keep func(area string) bool) report.Job {
	j = copied(j)
	for _, rows := range tables(&j) {
		if rows.Type().Elem().Name() == "InstrumentCheck" {
			continue
		}
		filter(rows, func(i int) bool {
			area := rows.Index(i).FieldByName("Area").String()
			return area == "" || keep(area)
		})
	}
	j.Areas = slices.DeleteFunc(slices.Clone(j.Areas), func(a report.Area) bool { return !keep(a.ID) })
	j.Events = slices.DeleteFunc(slices.Clone(j.Events), func(e report.Event) bool { return e.Area != "" && !keep(e.Area) })
	j.SignOffs = slices.DeleteFunc(slices.Clone(j.SignOffs), func(o report.SignOff) bool { return !keep(o.Area) })
	return j
}
