package wood

import (
	"firstboard/report/evidence"
)

// Checks are the checks of wood, in report order.
func Checks() []evidence.Check[Floor] {
	trade := evidence.Cite{Source: "trade guidance, several", Standing: evidence.Published}
	return []evidence.Check[Floor]{
		belowCheck(),
		{
			ID: "subfloor-count", Deciding: true, Judge: enoughSubfloor,
			Asks:    "were enough subfloor pieces read: 20 for each 1000 ft2, never fewer than 3?",
			Default: "20 for each 1000 ft2",
			Cite: evidence.Cite{
				Source:   "NWFA guidance 2017; the 3: common practice, no source",
				Standing: evidence.Published,
			},
		},
		{
			ID: "subfloor-mc", Deciding: true, Judge: subfloorMC,
			Asks:    "is every subfloor reading, those of the 24 h before the latest one too, at or under its limit?",
			Default: "12 % MC",
			Cite: evidence.Cite{
				Source:   "trade guidance, several (12 to 13 %; judging every reading is stricter than its average)",
				Standing: evidence.Published,
			},
		},
		{
			ID: "subfloor-spots", Judge: subfloorSpots,
			Asks:    "is no subfloor reading more than 3 points above the median?",
			Default: "3 points",
			Cite:    trade,
		},
		{
			ID: "flooring-count", Deciding: true, Judge: enoughBoards,
			Asks:    "were enough boards read: 40 for each 1000 ft2, never fewer than 3, at least 10 a lot where there are several, and no more than 1 in 10 of a visit set aside?",
			Default: "40 for each 1000 ft2",
			Cite: evidence.Cite{
				Source:   "NWFA guidance 2019 (the 40); the rest: common practice, no source",
				Standing: evidence.Published,
			},
		},
		{
			ID: "flooring-mc", Deciding: true, Judge: boardsMC,
			Asks: "does every board lie in the range of moisture content that a product states?",
			Cite: evidence.Cite{Source: "the record", Standing: evidence.ByHand},
		},
		{
			ID: "wood-difference", Deciding: true, Judge: difference,
			Asks:    "is each lot's mean within 4 points (face under 3 in) or 2 points (3 in and over) of the subfloor's mean?",
			Default: "4 or 2 points",
			Cite: evidence.Cite{
				Source:   "NWFA guidance 2017 for solid wood; for other boards by analogy (practice)",
				Standing: evidence.Published,
			},
		},
	}
}

// DefaultSubfloorMC is the limit where the flooring states none: 12 % MC.
func DefaultSubfloorMC() evidence.Bound {
	return evidence.Bound{
		Number: evidence.Typed("12", evidence.MC),
		Cite:   evidence.Cite{Source: "trade guidance, several (12 to 13 %)", Standing: evidence.Published},
	}
}

// DefaultDifference is the limit of the difference of means where the flooring
// states none: 4 points for a face under 3 in, 2 points from there on and
// where the face is not known. NWFA wrote it for solid wood; for other boards
// it is taken by analogy.
func DefaultDifference(face evidence.Reading, solid bool) evidence.Bound {
	points := "2"
	if face.Shown() && face.In(evidence.Inch).Cmp(evidence.Whole(3)) < 0 {
		points = "4"
	}
	cite := evidence.Cite{Source: "NWFA guidance 2017", Standing: evidence.Published}
	if !solid {
		cite = evidence.Cite{Source: "NWFA guidance 2017 for solid wood, by analogy", Standing: evidence.Practice}
	}
	return evidence.Bound{Number: evidence.Typed(points, evidence.Points), Cite: cite}
}
