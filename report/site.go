package report

import (
	"slices"
	"time"

	"firstboard/acclimate"
	"firstboard/report/evidence"
	"firstboard/report/instruments"
	"firstboard/report/limits"
	"firstboard/report/lists"
	"firstboard/slab"
	"firstboard/wood"
)

// Site is one area made ready to be judged: its flooring system, the limits in
// force, and its readings of slab, wood and air.
type Site struct {
	Job    Job
	Area   Area
	System limits.System
	Limits limits.InForce
	instruments.Readings

	record *byArea
}

// siteOf gathers what the record says of an area.
func (j Job) siteOf(a Area, record *byArea) Site {
	s := Site{Job: j, Area: a, record: record}
	s.System = limits.System{
		Area: a.ID, Place: a.Place, Substrate: a.Substrate, Installation: a.Installation,
		Flooring: j.product(a.Flooring), Adhesive: j.product(a.Adhesive), Membrane: j.product(a.Membrane),
	}
	service := lists.Where(j.Climates, func(p acclimate.Period) bool { return evidence.Same(p.Climate, a.Climate) })
	s.Limits = s.System.InForce(service)
	wet := s.lastWater()
	s.Slab = s.slabFloor(wet)
	s.Wood = s.woodFloor(wet.First)
	s.Room = s.room(service)
	s.Compared, s.Used, s.Zone = record.checks, record.used, j.Zone
	s.SlabLife = j.Settings.Bound("Slab reading life (days)")
	s.WoodLife = j.Settings.Bound("Wood reading life (days)")
	s.AirLife = j.Settings.Bound("Air reading life (h)")
	s.Rows = s.JudgedRows()
	return s
}

// Floor is the flooring system with the limits in force and what they are held
// against.
func (s Site) Floor() limits.Floor {
	return limits.Floor{System: s.System, Limits: s.Limits, Slab: s.Slab, Wood: s.Wood, Room: s.Room}
}

func (j Job) product(id string) *limits.Product {
	at := slices.IndexFunc(j.Products, func(p limits.Product) bool { return id != "" && evidence.Same(p.ID, id) })
	if at < 0 {
		return nil
	}
	return &j.Products[at]
}

// lastWater is the latest time that water came to the area or the whole site.
func (s Site) lastWater() evidence.Time {
	return evidence.Last(here(s.record.events, s.Area.ID), func(e Event) evidence.Time {
		return lists.If(e.What == "water", e.At, evidence.Time{})
	})
}

func (j Job) acceptance() evidence.Acceptance {
	on := lists.If(j.AcceptanceAgreedBy != "" && j.AcceptanceAgreedOn.Shown(), " on "+j.AcceptanceAgreedOn.Written, "")
	return evidence.Acceptance{Guarded: j.Guarded, Agreed: j.AcceptanceAgreedBy + on}
}

func (s Site) slabFloor(wet evidence.Time) slab.Floor {
	j, a := s.Job, s.Area
	f := slab.Floor{
		Area: a.ID, Place: a.Place,
		Thickness: a.Thickness, TwoFaces: a.DryingFaces.Shown() && a.DryingFaces.Value.IntPart() == 2,
		Kind: a.SlabKind, MadeOf: a.MadeOf, Under: a.UnderSlab, ExteriorWalls: a.ExteriorWalls,
		PlacedOn: a.PlacedOn, InstallOn: a.InstallOn, Membrane: a.Membrane,
		Loose: s.System.Loose(), Isolated: s.isolated(), StatesRH: s.System.States(limits.SlabRH()),
		RH: s.Limits.SlabRH, Temp: s.Limits.AirTemp, MVER: s.Limits.MVER, PH: s.Limits.PH, CM: s.Limits.CM,
		Wait: j.Settings.Bound("Probe wait (h)"), DepthTolerance: j.Settings.DepthTolerance,
		Wet: wet.First, Leveled: s.lastEvent("leveler placed").At.First,
		Acceptance: j.acceptance(), Instruments: j.Instruments,
	}
	if a.Membrane != "" && !(wet.Shown() && a.CoveredOn.Shown() && wet.Day() > a.CoveredOn.Day) {
		f.Covered = a.CoveredOn
	}
	if p := s.System.Flooring; p != nil {
		f.SolidWood, f.Wood, f.BelowGrade = p.Kind == "solid wood", s.System.WoodFlooring(), p.BelowGrade
	}
	own := evidence.Key(a.ID)
	for _, part := range s.record.zone(a) {
		key := evidence.Key(part.ID)
		f.Sizes = append(f.Sizes, part.Size)
		f.Holes = append(f.Holes, s.record.holes[key]...)
		f.Dishes = append(f.Dishes, s.record.dishes[key]...)
		f.PHs = append(f.PHs, s.record.phs[key]...)
		f.Carbides = append(f.Carbides, s.record.carbides[key]...)
	}
	f.Others, f.Scans = s.record.others[own], s.record.scans[own]
	s.slabNeeds(&f)
	return f.Sorted()
}

// isolated says whether a membrane's data sheet states that it needs no limit
// of relative humidity.
func (s Site) isolated() bool {
	m := s.System.Membrane
	return m != nil && m.SlabRH.None && m.DataSheet != ""
}

// slabNeeds says which tests of the slab are not needed, and why.
func (s Site) slabNeeds(f *slab.Floor) {
	if s.Area.Substrate == limits.OnWood {
		none := "the substrate is wood; a slab would make it needed"
		f.NoSlab, f.NoHoles, f.NoDishes, f.NoPH, f.NoCM, f.NoScan = none, none, none, none, none, none
		return
	}
	if s.System.States(limits.MVER(), limits.Carbide()) && !s.System.States(limits.SlabRH()) && len(f.Holes) == 0 {
		f.NoHoles = "no product states an RH limit and no hole is recorded: the flooring system asks for " +
			s.askedInstead() + " instead"
	}
	if !s.System.States(limits.MVER()) {
		f.NoDishes = "no product states an MVER limit (MVER max)"
	}
	if !s.System.States(limits.Carbide()) {
		f.NoCM = "no product states a carbide limit (CM max)"
	}
	switch {
	case s.Area.Substrate != limits.OnSlab:
		f.NoPH = "the substrate is not the slab itself"
	case !s.System.States(limits.Alkalinity()):
		f.NoPH = "no product states a pH limit (pH min, pH max)"
	}
}

func (s Site) askedInstead() string {
	var tests []string
	if s.System.States(limits.MVER()) {
		tests = append(tests, "the MVER test (Slab MVER)")
	}
	if s.System.States(limits.Carbide()) {
		tests = append(tests, "the carbide test (Slab CM)")
	}
	return evidence.List(tests)
}

func (s Site) woodFloor(wet time.Time) wood.Floor {
	j, a := s.Job, s.Area
	species := ""
	if s.System.Flooring != nil {
		species = s.System.Flooring.Species
	}
	f := wood.Gather(s.record.wood[evidence.Key(a.ID)], species, wet)
	f.Size, f.Place, f.GroundCover = a.Size, a.Place, a.GroundCover
	f.CrawlSpace, f.BelowUnknown = a.Below == "crawl space", a.Below == ""
	f.Subfloor, f.Flooring, f.Difference = s.Limits.Subfloor, s.Limits.Flooring, s.Limits.Difference
	f.Acceptance, f.Instruments = j.acceptance(), j.Instruments
	s.woodNeeds(&f)
	return f
}

// woodNeeds says which tests of wood are not needed, and why.
func (s Site) woodNeeds(f *wood.Floor) {
	a := s.Area
	if !s.System.WoodFlooring() {
		f.NoFlooring = "the flooring is not wood"
	}
	if a.Substrate == limits.OnSlab {
		f.NoSubfloor = "there is no wood subfloor: the substrate is a slab"
	}
	switch {
	case f.NoFlooring != "":
		f.NoDifference = f.NoFlooring
	case f.NoSubfloor != "":
		f.NoDifference = f.NoSubfloor
	case a.Installation != "" && a.Installation != "nail-down" && a.Installation != "glue-down":
		f.NoDifference = "the floor is neither nailed nor glued: it is " + a.Installation
	}
	switch {
	case a.Substrate != limits.OnWood:
		f.NoBelow = "the substrate is not a wood subfloor on joists"
	case a.Below == "conditioned room":
		f.NoBelow = "a conditioned room lies below"
	}
}
