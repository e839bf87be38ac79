package wood

import (
	"math"
	"slices"
	"strings"

	"firstboard/report/evidence"
)

// panels are the words of the record that name a panel and not a species.
func panels() []string { return []string{"plywood", "osb", "particleboard", "mdf"} }

// IsPanel says whether the word names a panel.
func IsPanel(word string) bool { return slices.Contains(panels(), evidence.Key(word)) }

// SpeciesName is a species as it is compared: "Oak, northern red", "red oak"
// and "northern red oak" are one.
func SpeciesName(s string) string {
	name := ownName(s)
	for _, syn := range Synonyms() {
		if name == syn.Name {
			return syn.Means
		}
	}
	return name
}

// ownName is a species in the order it is spoken, without a remark in
// brackets: "Maple, sugar (hard maple)" is "sugar maple".
func ownName(s string) string {
	name := strings.ReplaceAll(evidence.Key(s), "-", " ")
	name, _, _ = strings.Cut(name, "(")
	if family, kind, turned := strings.Cut(name, ","); turned {
		name = kind + " " + family
	}
	return evidence.Key(name)
}

// resistance is one row of the resistance table: MC = 10^(a + b log10 R), MC
// in %, R in kilo-ohm, at 80 F.
type resistance struct{ a, b float64 }

// resistanceOf gives the row of a species. Refused: white oak and black ash,
// which the form fits badly, and every species without a row.
//
// Source: James 1988, FPL-GTR-6 Table 1, and Forsen and Tarvainen 2000, VTT
// Publications 420 Table 5 (European oak and beech), as regressed in a public
// thesis: 7 to 25 % MC, worst residual 2 points.
func resistanceOf(species string) (resistance, bool) {
	switch SpeciesName(species) {
	case "douglas fir":
		return resistance{1.7003, -0.12007}, true
	case "northern red oak":
		return resistance{1.7078, -0.12209}, true
	case "black walnut":
		return resistance{1.6676, -0.11069}, true
	case "european oak":
		return resistance{1.6852, -0.11368}, true
	case "european beech":
		return resistance{1.6688, -0.10258}, true
	}
	return resistance{}, false
}

// The moisture contents to which the resistance table was fitted, in %.
const fittedFrom, fittedTo = 7, 25

// speciesLine turns a moisture content shown on one species' scale, in %, into
// that of another with the same resistance, and tells how fast the result
// changes with what is shown. ok is false where the table does not know both
// species, and outside its 7 to 25 %.
func speciesLine(shown float64, scale, species string) (mc, slope float64, ok bool) {
	on, knownScale := resistanceOf(scale)
	of, known := resistanceOf(species)
	if !known || !knownScale || shown < fittedFrom || shown > fittedTo {
		return shown, 1, false
	}
	logR := (math.Log10(shown) - on.a) / on.b
	mc = math.Pow(10, of.a+of.b*logR)
	return mc, mc / shown * of.b / on.b, true
}
