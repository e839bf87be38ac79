package acclimate

import (
	"fmt"
	"strconv"

	"github.com/shopspring/decimal"

	"firstboard/report/evidence"
	"firstboard/wood"
)

// Target is the equilibrium moisture content of a service climate, in % MC:
// the lowest and the highest of its periods, each rounded to 0.1, and exactly
// midway between them. Lack says why it cannot be told.
//
// Source of the midpoint: FPL Report 1655.
type Target struct {
	Low, High, Mid decimal.Decimal
	Lack           string
}

// TargetOf computes the target of a service climate. Every period counts: one
// without temperature or humidity leaves the target unknown.
func TargetOf(service []Period) Target {
	var t Target
	for i, p := range service {
		emc, err := p.EMC()
		if err != nil {
			return Target{Lack: err.Error()}
		}
		if i == 0 || emc.LessThan(t.Low) {
			t.Low = emc
		}
		if i == 0 || emc.GreaterThan(t.High) {
			t.High = emc
		}
	}
	if len(service) == 0 {
		return Target{Lack: "the service climate has no periods"}
	}
	t.Mid = t.Low.Add(t.High).Div(decimal.New(2, 0))
	return t
}

// EMC is the equilibrium moisture content of a period in % MC, rounded once to
// 0.1, half to even. This is where the physics of sorption becomes a decimal.
func (p Period) EMC() (decimal.Decimal, error) {
	if !p.Temp.Shown() || !p.RH.Shown() {
		return decimal.Decimal{}, fmt.Errorf("climate %s, %s: temperature or humidity is missing", p.Climate, p.Name)
	}
	emc, err := wood.EMC(p.Temp.In(evidence.Celsius).Float(), p.RH.Exact().Float())
	if err != nil {
		return decimal.Decimal{}, fmt.Errorf("climate %s, %s: %w", p.Climate, p.Name, err)
	}
	return decimal.RequireFromString(strconv.FormatFloat(emc, 'f', 1, 64)), nil
}

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
		return evidence.Limit{Lack: "the service climate has no periods"}
	}
	middle, five := low.Add(high).Div(decimal.New(2, 0)), decimal.New(5, 0)
	cite := evidence.Cite{Source: "the service climate, at least 5 points either side of its middle", Standing: evidence.Derived}
	return evidence.Limit{
		Least: evidence.Bound{Number: evidence.Computed(decimal.Min(low, middle.Sub(five)), evidence.RH), Cite: cite},
		Most:  evidence.Bound{Number: evidence.Computed(decimal.Max(high, middle.Add(five)), evidence.RH), Cite: cite},
	}
}
