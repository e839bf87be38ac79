package slab

import (
	"slices"
	"strconv"
	"time"

	"firstboard/report/evidence"
)

// otherChecks is the check of further tests.
func otherChecks() []evidence.Check[Floor] {
	return []evidence.Check[Floor]{
		{
			ID: "other-tests", Deciding: true, Judge: otherTests,
			Asks: "does every further test that a manufacturer asks for meet the bounds of its own row?",
			Cite: evidence.Cite{Source: "the record", Standing: evidence.ByHand},
		},
	}
}

func otherTime(r Other) evidence.Time { return r.ReadAt }

// JudgedOthers are the further tests, each at each spot, with their judged
// rows; a row without a spot is one of its own. Water does not undo them: they
// need not be of the slab.
func (f Floor) JudgedOthers() []evidence.Judged[Other] {
	var spotted []Other
	var alone []evidence.Judged[Other]
	for _, r := range f.Others {
		if evidence.Tidy(r.Spot) != "" {
			spotted = append(spotted, r)
			continue
		}
		name := strconv.Quote(evidence.Tidy(r.Test))
		if r.Place != nil {
			name += " in " + r.Place.String()
		}
		alone = append(alone, evidence.Judged[Other]{Name: name, Rows: []Other{r}})
	}
	slices.SortStableFunc(alone, func(a, b evidence.Judged[Other]) int { return evidence.Order(a.Name, b.Name) })
	return append(evidence.Latest(spotted, time.Time{}, otherName, otherTime), alone...)
}

// otherName quotes the test, so that no two pairs of test and spot share a name.
func otherName(r Other) string {
	return strconv.Quote(evidence.Tidy(r.Test)) + " spot " + evidence.Tidy(r.Spot)
}

func otherTests(f Floor) evidence.Finding {
	if len(f.Others) == 0 {
		return evidence.Unneeded("no further test is recorded")
	}
	items := evidence.Items(f.JudgedOthers(), otherTime, func(name string, r Other) evidence.Item {
		it := evidence.Measure(name, r.Result, r.bounds())
		it.U = f.Instruments.U(r.Instrument, r.Result.Unit)
		if !r.AtLeast.Shown() && !r.AtMost.Shown() {
			it.Lack = "no bound is recorded for it"
		}
		return it
	})
	return evidence.Weigh(items, f.Acceptance, "no further test was read")
}

func (r Other) bounds() evidence.Limit {
	cite := evidence.Cite{Source: "the record: Other tests, no data sheet named", Standing: evidence.ByHand}
	if r.DataSheet != "" {
		cite = evidence.Cite{Source: r.DataSheet, Standing: evidence.Manufacturer}
	}
	return evidence.Limit{
		Least: evidence.Bound{Number: r.AtLeast, Cite: cite},
		Most:  evidence.Bound{Number: r.AtMost, Cite: cite},
	}
}
