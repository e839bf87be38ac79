package report

import (
	"slices"

	"firstboard/acclimate"
	"firstboard/report/evidence"
	"firstboard/report/instruments"
	"firstboard/report/limits"
	"firstboard/report/lists"
	"firstboard/slab"
)

// conditions are the plain sentences that a GO of the area rests on. None of
// them changes a verdict, and none is hidden.
func (s Site) conditions() []string {
	f := s.System.Flooring
	soft := f != nil && (f.Kind == "resilient" || f.Kind == "carpet")
	all := append(slices.Concat(s.slabConditions(), s.siteConditions(), s.woodConditions()),
		provided(soft, "keep the air in range for 48 h (carpet 72 h) after installing"))
	return slices.DeleteFunc(all, func(c string) bool { return c == "" })
}

// provided is a sentence where something holds.
func provided(holds bool, sentence string) string { return lists.If(holds, sentence, "") }

// slabConditions are those of the slab and what lies on it.
func (s Site) slabConditions() []string {
	a := s.Area
	overSlab := a.Substrate != limits.OnWood
	onGround := a.SlabKind == "" || a.SlabKind == slab.OnGrade || a.SlabKind == slab.BelowGrade
	return []string{
		provided(a.Membrane != "" && !s.Slab.Covered.Shown(),
			"provided "+a.Membrane+" is in place and cured as its manufacturer says before anything is installed"),
		provided(overSlab && onGround && a.UnderSlab == "unknown" && a.Membrane == "",
			"it is not known whether there is a vapor retarder under the slab: the readings speak for their day"),
		provided(a.CoveredOn.Shown() && a.Membrane == "", "the slab was covered, and by what is not recorded"),
		provided(s.defaultRH(), "no product states a slab moisture limit: the default of "+slab.DefaultRH().Number.String()+" governs"),
		provided(overSlab && s.System.WoodFlooring() && !a.PlacedOn.Shown(),
			"when the slab was placed was not recorded"),
		s.leveledSince(),
	}
}

// defaultRH says whether holes decide by the default although the data sheets
// state no limit of humidity and none of emission. Under a membrane that states
// none a flooring's or an adhesive's limit of emission still decides.
func (s Site) defaultRH() bool {
	l := s.Limits.SlabRH.Most
	if s.Slab.NoHoles != "" || !l.Shown() || l.Whose != "" || s.System.States(limits.MVER()) {
		return false
	}
	asked := slices.DeleteFunc(s.System.Products(), func(p *limits.Product) bool { return !s.System.ReachedBySlab(p) })
	return len(asked) > 0 && !slices.ContainsFunc(asked,
		func(p *limits.Product) bool { return !p.SlabRH.None || !p.MVER.None })
}

// leveledSince says when a leveler was placed after a judged row of the slab.
func (s Site) leveledSince() string {
	leveled := s.lastEvent("leveler placed").At
	before := func(e instruments.Row) bool { return e.Kind == instruments.OfSlab && leveled.After(e.At) }
	if !slices.ContainsFunc(s.Rows, before) {
		return ""
	}
	return "a leveler was placed on " + leveled.Day().String() +
		", after the slab was tested: its own drying time applies"
}

// siteConditions are those of the air, of heating and of what lies below.
func (s Site) siteConditions() []string {
	a := s.Area
	widest := s.Room.WidestInterval()
	return []string{
		provided(a.HVAC == "temporary", "provided temporary HVAC runs until the permanent system takes over"),
		provided(a.HVAC == "none", "nothing conditions the air: provided it stays in range until and after installing"),
		provided(a.RadiantHeat == "", "whether the floor is heated was not recorded"),
		provided(a.Substrate == limits.OnWood && a.Below == "", "what lies below was not recorded"),
		provided(widest > acclimate.LongInterval,
			"the air was read at intervals of up to "+evidence.Hours(widest).Short()+" h: nothing is known between them"),
	}
}

// woodConditions are those of boards that were left out.
func (s Site) woodConditions() []string {
	if s.Wood.NoFlooring != "" {
		return nil
	}
	said := []string{provided(s.Wood.Unexplained() > 0, "boards were set aside without a reason")}
	for _, lot := range s.Wood.SentBack() {
		said = append(said, lot.Title()+" was sent back: it is not installed")
	}
	var boards []string
	for _, it := range s.Room.BoardsNotReadAgain() {
		if !slices.Contains(boards, it.Name) {
			boards = append(boards, it.Name)
		}
	}
	return append(said, provided(len(boards) > 0,
		"outside the limits in the week before the last visit and not read again, so not to be installed: "+evidence.List(boards)))
}
