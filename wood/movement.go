package wood

import (
	"cmp"
	"fmt"
	"slices"

	"firstboard/report/evidence"
)

// Species is a wood and how it moves: across the grain radially (the face of
// a quartersawn board) and tangentially (plainsawn). Coefficients are
// fractions of the width per 1 % of moisture content; shrinkages are % from
// green to oven-dry, either 0 where it is not
// printed.
type Species struct {
	Common, Botanical                 string
	Radial, Tangential                float64
	RadialShrinkage, TangentShrinkage float64
	Standing                          evidence.Standing
}

// FindSpecies finds a species by its common name in either order of words, by
// a name of the trade, or by its botanical name. "red oak" and "white oak" are
// the trade's mixtures, the rows named commercial, of which northern red oak is
// the chief part.
func FindSpecies(name string) (Species, error) {
	table := coefficients()
	for _, same := range []func(Species) bool{
		func(s Species) bool { return ownName(s.Common) == ownName(name) },
		func(s Species) bool { return SpeciesName(s.Common) == SpeciesName(name) },
		func(s Species) bool { return evidence.Same(s.Botanical, name) },
	} {
		if i := slices.IndexFunc(table, same); i >= 0 {
			return table[i], nil
		}
	}
	var names []string
	for _, s := range table {
		names = append(names, ownName(s.Common))
	}
	return Species{}, fmt.Errorf("no species %q in the table of dimensional change; name one that is in it, such as %q, or give the product's own coefficient",
		name, cmp.Or(evidence.NearMiss(SpeciesName(name), names), "red oak"))
}

// Across is the coefficient and the shrinkage of a cut: quartersawn, or
// plainsawn, by which riftsawn and mixed are judged because it moves more.
func (s Species) Across(cut string) (coefficient, shrinkage float64, err error) {
	switch evidence.Key(cut) {
	case "plainsawn", "riftsawn", "mixed", "":
		coefficient, shrinkage = s.Tangential, s.TangentShrinkage
	case "quartersawn":
		coefficient, shrinkage = s.Radial, s.RadialShrinkage
	default:
		return 0, 0, fmt.Errorf("no cut %q: write plainsawn, quartersawn, riftsawn or mixed", cut)
	}
	if coefficient == 0 {
		return 0, 0, fmt.Errorf("no coefficient of %s is known for that cut; give the product's own", s.Common)
	}
	return coefficient, shrinkage, nil
}

// The range in which the coefficient holds, and the moisture content at which
// it was worked out from the shrinkage, in %.
const (
	linearFrom, linearTo = 6, 14
	workedAt             = 10
	saturated            = 30
)

// Movement gives the change of a board's width, in the unit of the width,
// between two moisture contents in %: above zero it grows.
//
// From 6 to 14 % it is width x coefficient x change: Wood Handbook, equation
// 13-2. Where either end lies outside, it is width x change / (3000/S - 30 +
// from) with the shrinkage S in % (recalled), from 0 to 30 %; without a printed
// S it follows from the coefficient, which is that form at 10 %. An installed
// floor moves as much as a loose board (FPL): there is no discount.
func Movement(width, coefficient, shrinkage, fromPct, toPct float64) (float64, error) {
	if !(width > 0) {
		return 0, fmt.Errorf("a width of %.6g is not above 0", width)
	}
	if !(coefficient > 0 && coefficient < 0.02) {
		return 0, fmt.Errorf("a coefficient of %.6g is no fraction of the width per 1 %% of moisture content",
			coefficient)
	}
	if !(fromPct >= 0 && fromPct <= saturated && toPct >= 0 && toPct <= saturated) {
		return 0, fmt.Errorf("from %.6g to %.6g %% moisture content leaves 0 to 30 %%, where wood moves", fromPct,
			toPct)
	}
	change := toPct - fromPct
	if Linear(fromPct, toPct) {
		return width * coefficient * change, nil
	}
	perShrinkage := 1/coefficient - workedAt + saturated
	if shrinkage > 0 {
		perShrinkage = 100 * saturated / shrinkage
	}
	return width * change / (perShrinkage - saturated + fromPct), nil
}

// Linear says whether both moisture contents lie where the coefficient holds.
func Linear(fromPct, toPct float64) bool {
	return min(fromPct, toPct) >= linearFrom && max(fromPct, toPct) <= linearTo
}
