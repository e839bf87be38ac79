package ahead

import (
	"slices"

	"firstboard/report/evidence"
)

// Advice is what is said under an area's verdict and never changes it: when,
// what next, and whether the verdict holds. Its fields are in the shape that
// programs read.
type Advice struct {
	Outlook Outlook   `json:"outlook"`
	Next    Next      `json:"next"`
	Missing []Missing `json:"-"`
}

// Missing is one thing that checks which stop the area still wait for, and
// those checks.
type Missing struct {
	What   string   `json:"what"`
	Checks []string `json:"checks"`
}

// Awaits says whether something that a check waits for is known to be missing.
func (a Advice) Awaits(check string) bool {
	return slices.ContainsFunc(a.Missing, func(m Missing) bool { return slices.Contains(m.Checks, check) })
}

// Outlook is what is to be expected of slab, boards and air.
type Outlook struct {
	Slab     Slab       `json:"slab"`
	Boards   []Boards   `json:"boards"`
	Air      *Air       `json:"air"`
	Movement []Movement `json:"movement"`
	Holds    Holds      `json:"holds"`
	Damage   []string   `json:"damage,omitempty"` // that what is over a limit is known for
}

// Slab is when the slowest hole is at its limit. Ready, From and To are
// days, empty but for drying. CoveredPct is the humidity that the slab settles
// to once covered.
type Slab struct {
	Status     evidence.Prospect `json:"status"`
	Hole       string            `json:"hole"`
	LimitPct   string            `json:"limitPct"`
	Ready      string            `json:"ready"`
	From       string            `json:"from"`
	To         string            `json:"to"`
	CoveredPct string            `json:"coveredPct"`
	Standing   evidence.Standing `json:"standing"`
	Why        string            `json:"why"`

	Course []Course `json:"-"` // of that hole, for a picture
}

// Course is what is expected on a day: the middle and the ends of an interval
// that holds nine times in ten, in % RH.
type Course struct {
	Day            evidence.Day
	RHPct          float64
	LowPct, TopPct float64
}

// Boards is when a lot is within tolerance of the target.
type Boards struct {
	Lot    string            `json:"lot"`
	Status evidence.Prospect `json:"status"`
	EndPct string            `json:"endPct"`
	Ready  string            `json:"ready"`
	From   string            `json:"from"`
	To     string            `json:"to"`
	Why    string            `json:"why"`
}

// Air is the band of humidity that brings boards to the target at a
// temperature, and the water that boards and subfloor lose (below zero) or
// gain on the way.
type Air struct {
	RHLowPct  string `json:"rhLowPct"`
	RHHighPct string `json:"rhHighPct"`
	TempF     string `json:"tempF"`
	WaterLb   string `json:"waterLb"`
	WaterKG   string `json:"waterKg"`
}

// Movement is what boards of a lot would do over a year if they were
// installed now: a board, and the whole width across.
type Movement struct {
	Lot            string `json:"lot"`
	NowPct         string `json:"nowPct"`
	LowPct         string `json:"lowPct"`
	HighPct        string `json:"highPct"`
	Coefficient    string `json:"coefficient"`
	BoardIn        string `json:"boardIn"`
	ShrinkIn       string `json:"shrinkIn"`
	GrowIn         string `json:"growIn"`
	AcrossShrinkIn string `json:"acrossShrinkIn"`
	AcrossGrowIn   string `json:"acrossGrowIn"`
}

// Holds says whether the verdict stays under the alternatives that the rules
// offer, or the fewest things it turns on.
type Holds struct {
	Holds   bool     `json:"holds"`
	TurnsOn []string `json:"turnsOn"`
}

// Next is the fewest acts that lead to GO, in the order to do them, and the
// earliest day on which the area could be GO. A GO has none.
type Next struct {
	Earliest string `json:"earliest"`
	Acts     []Act  `json:"acts"`
}

// Act is one thing to do, whose it is, and the earliest time it can end.
type Act struct {
	Act  string `json:"act"`
	Who  string `json:"who"`
	Ends string `json:"ends"`
}
