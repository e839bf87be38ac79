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
			Asks:    fmt.Sprintf("wood flooring over a slab: was the slab placed %s or more before installing?", LeastAge()),
			Default: LeastAge().String(),
			Cite:    evidence.Cite{Source: "NWFA guidelines 2019", Standing: evidence.Recalled},
		},
	}
}

func grade(f Floor) evidence.Finding {
	if f.NoSlab != "" {
		return evidence.Unneeded("%s", f.NoSlab)
	}
	if f.Kind == "" && f.SolidWood {
		return evidence.Finding{
			Reason:   "whether the slab lies below grade is not recorded; write its Slab kind",
			Evidence: rowOf(f.Place),
		}
	}
	if f.Kind != BelowGrade {
		return evidence.Unneeded("the slab does not lie below grade")
	}
	outcome, why := f.allowed()
	return evidence.Finding{Outcome: outcome, Reason: "the slab lies below grade" + why, Evidence: rowOf(f.Place)}
}

// allowed is whether the flooring may be installed below grade, and why.
func (f Floor) allowed() (evidence.Outcome, string) {
	if f.BelowGrade == "yes" {
		return evidence.Met, ", and the flooring's manufacturer allows it there"
	}
	if f.SolidWood {
		return evidence.NotMet,
			": solid wood is not installed there unless its manufacturer says so (Products, Below grade: yes)"
	}
	if f.BelowGrade == "no" {
		return evidence.NotMet, ", and the flooring's manufacturer does not allow it there"
	}
	return evidence.NotShown,
		", and whether the flooring may be installed there was not looked up (Products, Below grade)"
}

// What lies under a slab, as it is typed.
const (
	underRetarder = "retarder"
	underNone     = "none"
)

func retarder(f Floor) evidence.Finding {
	if f.NoSlab != "" {
		return evidence.Unneeded("%s", f.NoSlab)
	}
	if !f.onGround() {
		return evidence.Unneeded("the slab is of the kind %s; one on or below grade would make it needed", f.Kind)
	}
	outcome, why := f.retarded()
	return evidence.Finding{Outcome: outcome, Reason: why, Evidence: rowOf(f.Place)}
}

// retarded is whether vapor from the ground is held back, and by what. That
// nobody knows what lies under the slab is an answer, and stops nothing.
func (f Floor) retarded() (evidence.Outcome, string) {
	if f.Membrane != "" {
		return evidence.Met, "the flooring system has a membrane, " + f.Membrane
	}
	switch f.Under {
	case underRetarder:
		return evidence.Met, "there is a vapor retarder under the slab"
	case underNone:
		return evidence.NotMet, "there is no vapor retarder under the slab, and no membrane in the flooring system"
	case "":
		return evidence.NotShown,
			"what lies under the slab is not recorded; write unknown in Under slab where nobody knows"
	}
	return evidence.Met, "it is not known whether there is a vapor retarder under the slab"
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
