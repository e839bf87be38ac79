package acclimate

import "firstboard/report/evidence"

// UsualTemp is the temperature air must keep where no product states one: 60
// to 80 F over wood floorings (NWFA), 65 to 95 F over others (CRI 105, which
// is written for carpet).
func UsualTemp(wood bool) evidence.Limit {
	if wood {
		return between("60", "80", evidence.Fahrenheit, evidence.Cite{Source: "NWFA guidance 2018", Standing: evidence.Published})
	}
	return between("65", "95", evidence.Fahrenheit, evidence.Cite{Source: "CRI 105-2019 (written for carpet)", Standing: evidence.Practice})
}

// UsualRH is the humidity air must keep where no product states one: that of
// the service climate over wood floorings, at most 65 % over others (CRI 105).
func UsualRH(wood bool, service []Period) evidence.Limit {
	if wood {
		return ServiceRH(service)
	}
	return evidence.AtMost(evidence.Bound{
		Number: evidence.Typed("65", evidence.RH),
		Cite:   evidence.Cite{Source: "CRI 105-2019", Standing: evidence.Published},
	})
}

// DefaultSurfaceMax is how warm a heated floor's surface may be where the
// flooring states nothing: 85 F.
func DefaultSurfaceMax() evidence.Bound {
	return evidence.Bound{
		Number: evidence.Typed("85", evidence.Fahrenheit),
		Cite:   evidence.Cite{Source: "ASTM F710 summary", Standing: evidence.Published},
	}
}

func between(low, high string, unit evidence.Unit, cite evidence.Cite) evidence.Limit {
	return evidence.Limit{
		Least: evidence.Bound{Number: evidence.Typed(low, unit), Cite: cite},
		Most:  evidence.Bound{Number: evidence.Typed(high, unit), Cite: cite},
	}
}
