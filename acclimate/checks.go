package acclimate

import (
	"slices"

	"firstboard/report/evidence"
)

// Checks are the checks of air, flooring and service climate, in report order.
func Checks() []evidence.Check[Room] {
	return slices.Concat(airChecks(), surfaceChecks(), flooringChecks(),
		[]evidence.Check[Room]{steadyCheck(), serviceCheck()})
}
