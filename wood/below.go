package wood

import (
	"fmt"
	"slices"

	"firstboard/report/evidence"
)

// joistsOver is how many points over the subfloor's limit a joist may be.
const joistsOver = 2

// belowCheck asks whether what lies under a wood floor is dry.
func belowCheck() evidence.Check[Floor] {
	return evidence.Check[Floor]{
		ID: "joists-dry", Deciding: true, Judge: belowDry,
		Asks: fmt.Sprintf("over a crawl space, an open or an unconditioned room: were %d joists read for each %d ft2, "+
			"never fewer than %d, each at most %d points over the subfloor's limit, and is the ground of a crawl space covered?",
			PerJoist, PartFT2, LeastPieces, joistsOver),
		Default: fmt.Sprintf("%s: the subfloor's limit and %d points",
			Floor{Subfloor: evidence.AtMost(DefaultSubfloorMC())}.joistLimit(), joistsOver),
		Cite: evidence.Cite{Source: "common practice, no source", Standing: evidence.Practice},
	}
}

func belowDry(f Floor) evidence.Finding {
	if f.NoBelow != "" {
		return evidence.Unneeded("%s", f.NoBelow)
	}
	if f.BelowUnknown {
		return evidence.Unshown("what lies below the floor is not recorded")
	}
	limit := f.joistLimit()
	items := slices.Concat(f.PieceItems(OfJoist, limit)...)
	for i := range items {
		items[i].U = nil
	}
	joists := evidence.Weigh(items, evidence.Acceptance{}, "no joist was read").Against(limit)
	return evidence.Worst(joists, f.tally(f.Pieces(OfJoist), PerJoist, "joist", "joists"), f.ground())
}

// joistLimit is 2 points over the subfloor's limit.
func (f Floor) joistLimit() evidence.Limit {
	over := evidence.Total(
		evidence.Cell("the subfloor's limit", f.Subfloor.Most.Number),
		evidence.Stated("points over it", evidence.Whole(joistsOver), evidence.MC),
	)
	return evidence.AtMost(evidence.Bound{
		Cite: evidence.Cite{
			Source:   fmt.Sprintf("%d points over the subfloor's limit: common practice, no source", joistsOver),
			Standing: evidence.Practice,
		},
	}.Computed(over))
}

// ground asks whether the ground of a crawl space is covered.
func (f Floor) ground() evidence.Finding {
	answer := evidence.Finding{Limit: "yes", Evidence: []evidence.Place{f.Place}}
	switch {
	case !f.CrawlSpace || f.GroundCover == "yes":
		answer.Outcome = evidence.Met
	case f.GroundCover == "no":
		answer.Outcome, answer.Value = evidence.NotMet, "no"
		answer.Reason = "the ground of the crawl space is not covered"
	default:
		answer.Reason = "whether the ground of the crawl space is covered is not recorded"
	}
	return answer
}
