package slab

import (
	"slices"

	"firstboard/report/evidence"
)

// Checks are the checks of the slab, in report order.
func Checks() []evidence.Check[Floor] {
	return slices.Concat(holeChecks(), emissionChecks(), surfaceChecks(), otherChecks())
}
