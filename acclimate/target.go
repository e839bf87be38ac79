package acclimate

import (
	"fmt"
	"strconv"

	"firstboard/report/evidence"
	"firstboard/wood"
)

// Target is the equilibrium moisture content of a service climate, in % MC:
// the lowest and the highest of its periods, each rounded to 0.1, and exactly
// midway between them. Lack says why it cannot be told.
//
// Source of the midpoint: FPL Report 1655.
type Target struct {
	Low, High, Mid evidence.Working
	Lack           string
}

// TargetOf computes the target of a service climate. Every period counts: one
// without temperature or humidity leaves the target unknown.
func TargetOf(service []Period) Target {
	var emcs []evidence.Working
	for _, p := range service {
		emc, err := p.EMC()
		if err != nil {
			return Target{Lack: err.Error()}
		}
		emcs = append(emcs, emc)
	}
	if len(emcs) == 0 {
		return Target{Lack: noPeriods}
	}
	t := Target{Low: evidence.Lowest(emcs...), High: evidence.Highest(emcs...)}
	t.Mid = evidence.MeanOf(t.Low, t.High).Called("target")
	return t
}

const noPeriods = "the service climate has no periods"

// EMC is the equilibrium moisture content of a period in % MC, rounded once to
// 0.1, half to even.
func (p Period) EMC() (evidence.Working, error) {
	if !p.Temp.Shown() || !p.RH.Shown() {
		return evidence.Working{}, fmt.Errorf("climate %s, %s: temperature or humidity is missing", p.Climate, p.Name)
	}
	emc, err := emcOf(evidence.Cell("temperature", p.Temp), evidence.Cell("humidity", p.RH))
	if err != nil {
		return emc, fmt.Errorf("climate %s, %s: %w", p.Climate, p.Name, err)
	}
	return emc.Called("EMC of " + p.Name), nil
}

// Written is the target with one place at least.
func (t Target) Written() string {
	mid := t.Mid.Value
	if mid.Round(1).Equal(mid) {
		return mid.Fixed(1)
	}
	return mid.Text()
}

// emcOf is where the physics of sorption becomes a decimal, rounded once, to
// 0.1.
func emcOf(temp, rh evidence.Working) (evidence.Working, error) {
	warm := evidence.Converted(temp, evidence.Fahrenheit)
	pct, err := wood.EMC(evidence.Converted(temp, evidence.Celsius).Value.Float(), rh.Value.Float())
	if err != nil {
		return evidence.Working{}, err
	}
	rounded := evidence.Typed(strconv.FormatFloat(pct, 'f', 1, 64), evidence.MC)
	return evidence.Physics(evidence.OpEMC, rounded.Exact(), evidence.MC, warm, rh), nil
}
