package slab

import (
	"fmt"

	"firstboard/report/evidence"
)

// levelChecks are the checks of what the slab is and lies on, in report order.
func levelChecks() []evidence.Check[Floor] {
	return []evidence.Check[Floor]{
		{
			ID: "grade", Deciding: true, Judge: grade,
			Asks: "below grade: does the flooring's manufacturer allow it there (solid wood only where its manufacturer says yes)?",
			Cite: evidence.Cite{Source: "NWFA guidelines 2019", Standing: evidence.Published},
		},
		{
			ID: "retarder", Deciding: true, Judge: retarder,
			Asks: "on or below grade: is there a vapor retarder under the slab, or a membrane in the flooring system?",
			Cite: evidence.Cite{Source: "ASTM F710-05", Standing: evidence.Published},
		},
		{
			ID: "slab-age", Deciding: true, Judge: slabAge,
			Advises: func(f Floor) bool { return f.Loose && !f.StatesRH },
			Asks: "wood flooring over a slab: was the slab placed " + LeastAge().String() +
				" or more before installing?",
			Default: LeastAge().String(),
			Cite:    evidence.Cite{Source: "NWFA guidelines 2019", Standing: evidence.Recalled},
		},
	}
}

func grade(f Floor) evidence.Finding {
	found := evidence.Finding{Evidence: rowOf(f.Place)}
	switch {
	case f.NoSlab != "":
		return evidence.Unneeded("%s", f.NoSlab)
	case f.Kind == "" && f.SolidWood:
		found.Reason = "whether the slab lies below grade is not recorded; write its Slab kind"
		return found
	case f.Kind != BelowGrade:
		return evidence.Unneeded("the slab does not lie below grade")
	case f.BelowGrade == "yes":
		found.Outcome, found.Reason = evidence.Met,
			"the slab lies below grade, and the flooring's manufacturer allows it there"
	case f.SolidWood:
		found.Outcome = evidence.NotMet
		found.Reason = "the slab lies below grade: solid wood is not installed there unless its manufacturer says so (Products, Below grade: yes)"
	case f.BelowGrade == "no":
		found.Outcome = evidence.NotMet
		found.Reason = "the slab lies below grade, and the flooring's manufacturer does not allow it there"
	default:
		found.Reason = "the slab lies below grade, and whether the flooring may be installed there was not looked up (Products, Below grade)"
	}
	return found
}

// What lies under a slab, as it is typed.
const (
	underRetarder = "retarder"
	underNone     = "none"
)

func retarder(f Floor) evidence.Finding {
	found := evidence.Finding{Outcome: evidence.Met, Evidence: rowOf(f.Place)}
	switch {
	case f.NoSlab != "":
		return evidence.Unneeded("%s", f.NoSlab)
	case !f.onGround():
		return evidence.Unneeded("the slab is of the kind %s; one on or below grade would make it needed", f.Kind)
	case f.Membrane != "":
		found.Reason = "the flooring system has a membrane, " + f.Membrane
	case f.Under == underRetarder:
		found.Reason = "there is a vapor retarder under the slab"
	case f.Under == underNone:
		found.Outcome, found.Reason = evidence.NotMet,
			"there is no vapor retarder under the slab, and no membrane in the flooring system"
	case f.Under == "":
		found.Outcome = evidence.NotShown
		found.Reason = "what lies under the slab is not recorded; write unknown in Under slab where nobody knows"
	default:
		found.Reason = "it is not known whether there is a vapor retarder under the slab"
	}
	return found
}

// LeastAge is how old a slab is before wood goes over it: 30 days (NWFA,
// recalled).
func LeastAge() evidence.Reading { return evidence.Typed("30", evidence.DayUnit) }

func slabAge(f Floor) evidence.Finding {
	switch {
	case f.NoSlab != "":
		return evidence.Unneeded("%s", f.NoSlab)
	case !f.Wood:
		return evidence.Unneeded("the flooring is not wood")
	case !f.PlacedOn.Shown():
		return evidence.Unneeded("when the slab was placed is not recorded; Placed on would make it needed")
	case !f.InstallOn.Shown():
		return evidence.Finding{Reason: "the day of installing is not recorded", Evidence: rowOf(f.Place)}
	}
	it := evidence.Item{
		Name: "the slab", Limit: evidence.AtLeast(evidence.Bound{Number: LeastAge()}),
		Place: f.PlacedOn.Place,
	}
	it = it.By(evidence.DaysBetween(evidence.OnDay("placed on", f.PlacedOn), evidence.OnDay("install on", f.InstallOn)))
	it.Says = fmt.Sprintf("the slab, %s days old on the day of installing", it.Written)
	return evidence.Weigh([]evidence.Item{it}, evidence.Acceptance{}, "")
}
