package acclimate

import "firstboard/report/evidence"

// Covering is the kind of flooring as the air is judged for it.
type Covering int

// The coverings. Bamboo counts as wood.
const (
	Hard   Covering = iota // resilient, laminate
	Wooden                 // solid and engineered wood, bamboo
	Carpet
)

// UsualTemp is the temperature air must keep where no product states one: 60
// to 80 F over wood flooring (NWFA), 65 to 95 F over carpet (CRI 105), 65 to
// 85 F over resilient and laminate (ASTM F710 and manufacturers' sheets).
func UsualTemp(c Covering) evidence.Limit {
	switch c {
	case Wooden:
		return inside("60", "80", evidence.Fahrenheit,
			evidence.Cite{Source: "NWFA guidance 2018", Standing: evidence.Published})
	case Carpet:
		return inside("65", "95", evidence.Fahrenheit,
			evidence.Cite{Source: "CRI 105-2019", Standing: evidence.Published})
	}
	return inside("65", "85", evidence.Fahrenheit,
		evidence.Cite{Source: "ASTM F710 and manufacturers' sheets", Standing: evidence.Recalled})
}

// UsualRH is the humidity air must keep where no product states one: that of
// the service climate over wood flooring, at most 65 % over others (CRI 105).
func UsualRH(c Covering, service []Period) evidence.Limit {
	if c == Wooden {
		return ServiceRH(service)
	}
	return evidence.AtMost(evidence.Bound{
		Number: evidence.Typed("65", evidence.RH),
		Cite:   evidence.Cite{Source: "CRI 105-2019", Standing: evidence.Published},
	})
}

// DefaultSurfaceMax is how warm a surface may be where the flooring states
// nothing: 80 F under wood flooring, 85 F under others.
func DefaultSurfaceMax(c Covering) evidence.Bound {
	if c == Wooden {
		return evidence.Bound{
			Number: evidence.Typed("80", evidence.Fahrenheit),
			Cite:   evidence.Cite{Source: "NWFA installation guidelines 2019", Standing: evidence.Published},
		}
	}
	return evidence.Bound{
		Number: evidence.Typed("85", evidence.Fahrenheit),
		Cite:   evidence.Cite{Source: "ASTM F710 summary", Standing: evidence.Published},
	}
}

func inside(low, high string, unit evidence.Unit, cite evidence.Cite) evidence.Limit {
	return evidence.Limit{
		Least: evidence.Bound{Number: evidence.Typed(low, unit), Cite: cite},
		Most:  evidence.Bound{Number: evidence.Typed(high, unit), Cite: cite},
	}
}
