package acclimate

import (
	"fmt"

	"github.com/shopspring/decimal"

	"firstboard/report/evidence"
)

// ServiceRH is the humidity that air over wood must keep: between the lowest
// and the highest period of the service climate, never narrower than 5 points
// either side of the middle.
func ServiceRH(service []Period) evidence.Limit {
	var low, high decimal.Decimal
	for i, p := range service {
		if !p.RH.Shown() {
			return evidence.Limit{Lack: fmt.Sprintf("climate %s, %s: humidity is missing", p.Climate, p.Name)}
		}
		if i == 0 || p.RH.Value.LessThan(low) {
			low = p.RH.Value
		}
		if i == 0 || p.RH.Value.GreaterThan(high) {
			high = p.RH.Value
		}
	}
	if len(service) == 0 {
		return evidence.Limit{Lack: noPeriods}
	}
	const leastHalf = 5
	middle, half := low.Add(high).Div(decimal.New(2, 0)), decimal.New(leastHalf, 0)
	cite := evidence.Cite{
		Source:   fmt.Sprintf("the service climate, at least %d points either side of its middle", leastHalf),
		Standing: evidence.Derived,
	}
	return evidence.Limit{
		Least: evidence.Bound{Number: evidence.Computed(decimal.Min(low, middle.Sub(half)), evidence.RH), Cite: cite},
		Most:  evidence.Bound{Number: evidence.Computed(decimal.Max(high, middle.Add(half)), evidence.RH), Cite: cite},
	}
}
