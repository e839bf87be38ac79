package report

import (
	"slices"
	"strings"

	"firstboard/acclimate"
	"firstboard/report/evidence"
	"firstboard/report/limits"
	"firstboard/report/lists"
	"firstboard/slab"
	"firstboard/wood"
)

// ReportItem is one thing that published standards or trade guidance want on a
// moisture report, and whether the record holds it for an area.
type ReportItem struct {
	What     string
	Asked    string // who asks for it
	Standing evidence.Standing
	Held     bool
	Lacks    string // what is lacking, empty where it is held
}

// items are the evidence list of an area: advice, in the order a report is
// read. What is wanted of holes is left out where no hole is needed.
func (s Site) items(d Decision) []ReportItem {
	j, a := s.Job, s.Area
	read, memory := evidence.Published, evidence.Recalled
	holes := s.Slab.Holes
	every := func(has func(slab.Hole) bool) bool {
		return len(holes) > 0 && !slices.ContainsFunc(holes, func(h slab.Hole) bool { return !has(h) })
	}
	signed := func(has func(SignOff) bool) bool {
		return slices.ContainsFunc(j.SignOffs, func(o SignOff) bool { return evidence.Same(o.Area, a.ID) && has(o) })
	}
	all := []ReportItem{
		wanted("project, site, area, general contractor", "ASTM F2170 section 11; RBK", memory,
			j.Name != "" && j.Site != "" && j.GeneralContractor != "", "Job: Job, Site and General contractor"),
		wanted("who tested", "ICRI; RBK; CRI", read, s.testerNamed(), "By on every reading"),
		wanted("an independent tester's report before gluing", "CRI 104", read,
			signed(func(o SignOff) bool { return o.Role == "tester" }), "a sign-off by a tester"),
		wanted("a plan of every hole", "ASTM F2170; AS 1884; RBK", read,
			every(func(h slab.Hole) bool { return h.X.Shown() && h.Y.Shown() }), "Slab RH: X and Y of every hole"),
		wanted("thickness, drying faces and depth at each hole", "ASTM F2170; RBK", read,
			a.DryingFaces.Shown() && every(func(h slab.Hole) bool {
				return h.Depth.Shown() && (h.Thickness.Shown() || a.Thickness.Shown())
			}),
			"Areas: Drying faces; Slab RH: Depth and Thickness"),
		wanted("when the slab was placed and enclosed", "RBK; Australian practice", read,
			a.PlacedOn.Shown() && a.EnclosedOn.Shown(), "Areas: Placed on and Enclosed on"),
		wanted("what the slab is made of, what lies under it, heating", "RBK", read,
			a.MadeOf != "" && a.UnderSlab != "" && a.RadiantHeat != "", "Areas: Made of, Under slab and Radiant heat"),
		wanted("when each hole was sealed and read", "ASTM F2170", read,
			every(func(h slab.Hole) bool { return h.SealedAt.Shown() && h.ReadAt.Shown() }),
			"Slab RH: Sealed at and Read at"),
		wanted("humidity and temperature in each hole", "ASTM F2170", read,
			every(func(h slab.Hole) bool { return h.RH.Shown() && h.Temp.Shown() }), "Slab RH: RH and Temp"),
		wanted("the air above the slab for "+acclimate.DefaultHeld().String()+" before and during",
			"ASTM F2170 section 9; ASTM F1869; CRI", read,
			d.Outcome("air-held") == evidence.Met, "Air: see the check air-held"),
		wanted("make, serial and calibration of each instrument", "ASTM F2170", memory,
			s.everyMeter(func(m evidence.Instrument) bool {
				return m.Model != "" && m.Serial != "" && m.CalibratedOn.Shown() && m.Certificate != ""
			}),
			"Instruments: Make and model, Serial, Calibrated on, Certificate"),
		wanted("the limits of flooring and adhesive, and whose", "AS 2455.2; ASTM F710", read,
			!slices.ContainsFunc(s.System.Products(), func(p *limits.Product) bool { return p.DataSheet == "" }),
			"Products: Data sheet"),
		wanted("a written approval where a limit is waived", "Australian public works guidance", read,
			!signed(func(o SignOff) bool { return o.Decision == "waive" && o.Document == "" }), "Sign-off: Document"),
		wanted("the uncertainty of measurement", "Hus AMA 98", read, s.everyMeter(func(m evidence.Instrument) bool {
			return m.Uncertainty.Shown()
		}), "Instruments: Uncertainty"),
		wanted("that results hold only for the time and places tested", "ASTM F2170 5.3; CRI", read, true, ""),
		wanted("pH and how the surface was cleaned", "ASTM F710; CRI", read, len(s.Slab.PHs) > 0, "Slab pH"),
		wanted("emission: masses, times, area", "ASTM F1869", memory, len(s.Slab.Dishes) > 0, "Slab MVER"),
		wanted("photographs", "trade guidance", read,
			slices.ContainsFunc(j.Photos, func(p Photo) bool { return evidence.Same(p.Area, a.ID) }), "Photos"),
	}
	return slices.DeleteFunc(all,
		func(i ReportItem) bool { return s.Slab.NoHoles != "" && strings.Contains(i.What, "hole") })
}

func wanted(what, asked string, standing evidence.Standing, held bool, lacks string) ReportItem {
	return ReportItem{What: what, Asked: asked, Standing: standing, Held: held, Lacks: lists.If(held, "", lacks)}
}

func (s Site) testerNamed() bool {
	return len(s.Slab.Holes)+len(s.Wood.Rows) > 0 &&
		!slices.ContainsFunc(s.Slab.Holes, func(h slab.Hole) bool { return h.By == "" }) &&
		!slices.ContainsFunc(s.Wood.Rows, func(r wood.Row) bool { return r.By == "" })
}

// everyMeter says whether all instruments behind judged rows have something.
func (s Site) everyMeter(has func(evidence.Instrument) bool) bool {
	for _, e := range s.Rows {
		if m, listed := s.Job.Instruments.Find(e.Instrument); !listed || !has(m) {
			return false
		}
	}
	return len(s.Rows) > 0
}
