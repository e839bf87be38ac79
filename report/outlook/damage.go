package outlook

import (
	"firstboard/report/evidence"
	"firstboard/report/lists"
)

// Damage is what floors are known to suffer where a check is not met and the
// floor is installed all the same.
type Damage struct {
	Check    string // its id
	KnownFor string // a sentence without its end
}

// DamageStanding marks the whole table: common practice, no source.
const DamageStanding = evidence.Practice

// Damages are the conditions that are known to damage floors, in the order of
// the checks. A check that counts evidence, or asks how it was got, is not
// among them: what was not measured is known for nothing.
func Damages() []Damage {
	return []Damage{
		{"grade", "solid wood below grade cups and rots: the ground keeps it damp"},
		{"retarder", "ground moisture rises through the slab for as long as the building stands: " +
			"adhesive lets go, boards cup, mold grows under the floor"},
		{"slab-age", "a young slab still gives off its mixing water: boards cup and adhesive cures badly"},
		{"air-range", "boards take up or lose moisture after they are down: gaps and cracks in dry air, " +
			"cupping and buckling in damp air"},
		{"surface-dew", "water condenses on the slab: adhesive, membrane or primer does not bond"},
		{"slab-temp", "adhesive cures too slowly or too fast, and the humidity in the hole is not that of service"},
		{"slab-rh", "once covered the slab's moisture reaches the adhesive and the floor: " +
			"adhesive softens and lets go, boards cup, resilient flooring bubbles, mold grows"},
		{"mver-rate", "moisture leaves the slab faster than the floor lets it through: " +
			"adhesive lets go, boards cup, resilient flooring bubbles"},
		{"slab-ph", "alkaline moisture breaks adhesive down: it turns soft or brittle and lets go"},
		{"slab-cm", "the screed gives its water to the floor: boards cup, adhesive lets go"},
		{"surface-max", "boards over warm spots dry out: gaps, checks, delaminated plies"},
		{"joists-dry", "damp from below wets the subfloor after the boards are down: cupping, buckling, rot"},
		{"subfloor-mc", "the subfloor gives its moisture to the undersides of the boards: " +
			"they cup, and fasteners loosen and squeak as it dries"},
		{"flooring-mc", "boards outside their maker's range shrink to gaps or swell to cupping and buckling"},
		{"flooring-target", "boards wetter than the target shrink to gaps, drier ones swell, cup and buckle"},
		{"flooring-spread", "boards of one floor move by different amounts: uneven gaps, edges of unequal height"},
		{"wood-difference", "boards and subfloor move against each other as they even out: cupping, squeaks, loose fasteners"},
		{"climate-range", "in service the floor leaves the air its manufacturer states: " +
			"gaps, cupping, delaminated plies"},
	}
}

// DamageOf is the damage a check is known for; false where it is not known for
// any.
func DamageOf(check string) (Damage, bool) {
	return lists.First(Damages(), func(d Damage) bool { return d.Check == check })
}
