package report

import "firstboard/report/evidence"

// instrumentChecks are the checks of what stands behind the readings, in
// report order.
func instrumentChecks() []evidence.Check[Site] {
	return []evidence.Check[Site]{
		{
			ID: "calibration", Deciding: true, Judge: calibration,
			Asks:    "was every instrument behind a judged row calibrated on or before that day and not past due on it, and do its checks against a standard agree?",
			Default: "365 days where no due day is recorded; a check block within 1 point, at most 168 h before; checks within 3 % RH, 1 point, 2 F, pH 0.2",
			Cite:    evidence.Cite{Source: "ASTM F2170; the 365 days, the check block and the tolerances: common practice, no source", Standing: evidence.Recalled},
		},
		{
			ID: "probe-check", Deciding: true, Judge: probeCheck,
			Advises: func(s Site) bool { return s.Slab.HolesAdvise() },
			Asks:    "was every probe in a hole checked at most 30 days before its reading, to 2 % RH, and does every check within 30 days after agree; was a single-use probe used in one hole only?",
			Default: "720 h and 2 % RH",
			Cite:    evidence.Cite{Source: "ASTM F2170: 30 days (published), 2 % (recalled)", Standing: evidence.Recalled},
		},
		{
			ID: "reading-age", Deciding: true, Judge: readingAge,
			Asks:    "are the readings young enough on the day of installing: slab 30 days (to the day it was covered, where it was), wood 7 days, air and surfaces 48 h before that day begins; and is no slab or wood reading later?",
			Default: "30 days, 7 days, 48 h",
			Cite:    evidence.Cite{Source: "common practice, no source", Standing: evidence.Practice},
		},
	}
}
