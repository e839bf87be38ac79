package slab

import (
	"slices"

	"firstboard/report/evidence"
)

// Checks are the checks of the slab, in report order.
func Checks() []evidence.Check[Floor] {
	return slices.Concat(levelChecks(), holeChecks(), emissionChecks(), surfaceChecks(), otherChecks(), scanChecks())
}
