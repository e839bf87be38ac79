package wood

import (
	"fmt"

	"firstboard/report/evidence"
)

// Checks are the checks of wood, in report order.
func Checks() []evidence.Check[Floor] {
	trade := evidence.Cite{Source: "trade guidance, several", Standing: evidence.Published}
	return []evidence.Check[Floor]{
		belowCheck(),
		{
			ID: "subfloor-count", Deciding: true, Judge: enoughSubfloor,
			Asks:    fmt.Sprintf("were enough subfloor pieces read: %s, never fewer than %d?", forEach(PerSubfloor), LeastPieces),
			Default: forEach(PerSubfloor),
			Cite: evidence.Cite{
				Source:   fmt.Sprintf("NWFA guidance 2017; the %d: common practice, no source", LeastPieces),
				Standing: evidence.Published,
			},
		},
		{
			ID: "subfloor-mc", Deciding: true, Judge: subfloorMC,
			Asks: fmt.Sprintf("is every subfloor reading, those of the %s h before the latest one too, at or under its limit?",
				evidence.Hours(evidence.Again).Text()),
			Default: DefaultSubfloorMC().Number.String(),
			Cite: evidence.Cite{
				Source:   "trade guidance, several (12 to 13 %; judging every reading is stricter than its average)",
				Standing: evidence.Published,
			},
		},
		{
			ID: "subfloor-spots", Judge: subfloorSpots,
			Asks:    fmt.Sprintf("is no subfloor reading more than %d points above the median?", spotOver),
			Default: fmt.Sprintf("%d points", spotOver),
			Cite:    trade,
		},
		{
			ID: "flooring-count", Deciding: true, Judge: enoughBoards,
			Asks: fmt.Sprintf("were enough boards read: %s, never fewer than %d, at least %d a lot where there are several, "+
				"and no more than 1 in %d of a visit set aside?", forEach(PerFlooring), LeastPieces, EachLot, OneAsideIn),
			Default: forEach(PerFlooring),
			Cite: evidence.Cite{
				Source:   fmt.Sprintf("NWFA guidance 2019 (the %d); the rest: common practice, no source", PerFlooring),
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
			Asks: fmt.Sprintf("is each lot's mean within %s points (face under %d in) or %s points (%d in and over) "+
				"of the subfloor's mean?",
				narrowApart, wideFace, wideApart, wideFace),
			Default: narrowApart + " or " + wideApart + " points",
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

// How far apart the means may lie under a narrow and under a wide board, in
// points, and the face from which on a board is wide, in inches.
const (
	narrowApart = "4"
	wideApart   = "2"
	wideFace    = 3
)

// DefaultDifference is the limit of the difference of means where the flooring
// states none: 4 points for a face under 3 in, 2 points from there on and
// where the face is not known. NWFA wrote it for solid wood; for other boards
// it is taken by analogy.
func DefaultDifference(face evidence.Reading, solid bool) evidence.Bound {
	points := wideApart
	if face.Shown() && face.In(evidence.Inch).Cmp(evidence.Whole(wideFace)) < 0 {
		points = narrowApart
	}
	cite := evidence.Cite{Source: "NWFA guidance 2017", Standing: evidence.Published}
	if !solid {
		cite = evidence.Cite{Source: "NWFA guidance 2017 for solid wood, by analogy", Standing: evidence.Practice}
	}
	return evidence.Bound{Number: evidence.Typed(points, evidence.Points), Cite: cite}
}
