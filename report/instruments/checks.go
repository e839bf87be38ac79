package instruments

import (
	"fmt"

	"firstboard/report/evidence"
)

// Checks are the checks of what stands behind the readings, in report order.
func Checks() []evidence.Check[Readings] {
	slab, wood, air := SlabLife(), WoodLife(), AirLife()
	return []evidence.Check[Readings]{{
		ID: "calibration", Deciding: true, Judge: calibration,
		Asks: "was every instrument behind a judged row calibrated on or before that day and not past due on it, " +
			"and do its checks against a standard agree?",
		Default: fmt.Sprintf("%d days where no due day is recorded; a check block within %s point, at most %d h before; "+
			"checks within %[4]s, %[2]s point, %[5]s, pH %[6]s", calibrationLife, woodOff().Written, blockLife,
			airOff(), surfaceOff(), phOff()),
		Cite: evidence.Cite{
			Source: fmt.Sprintf("ASTM F2170; the %d days, the check block and the tolerances: common practice, no source",
				calibrationLife),
			Standing: evidence.Recalled,
		},
	}, {
		ID: "probe-check", Deciding: true, Judge: probeCheck,
		Advises: func(rs Readings) bool { return rs.Slab.HolesAdvise() },
		Asks: fmt.Sprintf("was every probe in a hole checked at most %d days before its reading, to %s, and does every check within %d days "+
			"after agree; was a single-use probe used in one hole only?", ProbeDays, probeOff(),
			int(speaksFor.Hours())/hoursADay),
		Default: fmt.Sprintf("%d h and %s", probeHours, probeOff()),
		Cite: evidence.Cite{
			Source:   fmt.Sprintf("ASTM F2170: the %d days (published); the %s %%", ProbeDays, probeOff().Written),
			Standing: evidence.Recalled,
		},
	}, {
		ID: "reading-age", Deciding: true, Judge: readingAge,
		Asks: fmt.Sprintf("are the readings young enough on the day of installing: slab %s (to the day it was covered, where it was), "+
			"wood %s, air and surfaces %s before that day begins; and is no slab or wood reading later?", slab, wood,
			air),
		Default: fmt.Sprintf("%s, %s, %s", slab, wood, air),
		Cite:    evidence.Cite{Source: "common practice, no source", Standing: evidence.Practice},
	}}
}
