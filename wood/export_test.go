package wood

import "firstboard/report/evidence"

// ForTemperature is the correction of a pin reading for the wood's temperature.
func ForTemperature(shown, tempC evidence.Exact) (corrected evidence.Exact, ok bool) {
	l, ok := forTemperature(shown, tempC)
	return l.at, ok
}

// ForSpecies is the correction of a pin reading for the wood's species.
func ForSpecies(shown float64, scale, species string) (mc float64, ok bool) {
	mc, _, ok = speciesLine(shown, scale, species)
	return mc, ok
}

// SpeciesTable is every species that is known to move, in alphabetical order.
func SpeciesTable() []Species { return coefficients() }
