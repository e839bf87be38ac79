package limits_test

import (
	"slices"
	"testing"

	"github.com/shopspring/decimal"

	"firstboard/acclimate"
	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/limits"
)

// stack is a flooring system and the climate it will live in.
type stack struct {
	limits.System
	service []acclimate.Period
}

type change func(*stack)

// limitsOf are the limits in force for engineered wood in glue after changes.
func limitsOf(changes ...change) limits.InForce {
	s := stack{service: []acclimate.Period{
		{Climate: "C1", Name: "all", Temp: num(70, evidence.Fahrenheit), RH: num(40, evidence.RH)},
	}}
	s.Flooring = &limits.Product{ID: "ENG", Kind: "engineered wood", Species: "white oak", SlabRH: none(), MVER: none()}
	s.Adhesive = &limits.Product{
		ID: "GLUE", Kind: "adhesive", SlabRH: says(85, evidence.RH), MVER: says(5, evidence.Pounds),
		PHMax: says(10, evidence.PH),
	}
	for _, c := range changes {
		c(&s)
	}
	return s.InForce(s.service)
}

func do(changes ...change) []change { return changes }

func num(x float64, u evidence.Unit) evidence.Reading {
	return evidence.Typed(decimal.NewFromFloat(x).String(), u)
}

func says(x float64, u evidence.Unit) limits.Stated { return limits.Stated{Number: num(x, u)} }

func none() limits.Stated { return limits.Stated{None: true} }

func flooring(set func(*limits.Product)) change { return func(s *stack) { set(s.Flooring) } }

func adhesive(set func(*limits.Product)) change { return func(s *stack) { set(s.Adhesive) } }

func withMembrane(p limits.Product) change {
	p.ID, p.Kind = "MEM", "membrane"
	return func(s *stack) { s.Membrane = &p }
}

// Which limit governs: a number, none, a blank that brings the default, a
// membrane that stands between, the strictest else, and the default where
// nobody brings one.
func TestWhichLimitGoverns(t *testing.T) {
	rh := func(s limits.Stated) func(*limits.Product) { return func(p *limits.Product) { p.SlabRH = s } }
	pct := func(n float64) limits.Stated { return says(n, evidence.RH) }
	for _, c := range []struct {
		what    string
		changes []change
		want    string // "75 of nobody"
	}{
		{"none and a number", nil, "85 of GLUE"},
		{"the stricter of two", do(flooring(rh(pct(80)))), "80 of ENG"},
		{"the stricter of two, the other way", do(flooring(rh(pct(90)))), "85 of GLUE"},
		{"a blank brings the default", do(flooring(rh(limits.Stated{}))), "75 of "},
		{"a number under the default", do(flooring(rh(limits.Stated{})), adhesive(rh(pct(70)))), "70 of GLUE"},
		{"none by anybody", do(adhesive(rh(none()))), "75 of "},
		{"a membrane replaces both", do(flooring(rh(pct(70))), withMembrane(limits.Product{SlabRH: pct(95)})), "95 of MEM"},
		{"a membrane that states none", do(withMembrane(limits.Product{SlabRH: none()})), "85 of GLUE"},
		{"a blank of a membrane brings the default", do(withMembrane(limits.Product{})), "75 of "},
	} {
		b := limitsOf(c.changes...).SlabRH.Most
		if got := b.Number.Written + " of " + b.Whose; got != c.want {
			t.Errorf("%s: %s, want %s", c.what, got, c.want)
		}
	}
	l := limitsOf(withMembrane(limits.Product{SlabRH: none(), PHMin: says(6, evidence.PH)}))
	if l.PH.Least.Whose != "MEM" || l.PH.Most.Whose != "GLUE" {
		t.Errorf("each end by itself: %s and %s", l.PH.Least.Whose, l.PH.Most.Whose)
	}
	if l := limitsOf(adhesive(func(p *limits.Product) { p.MVER = limits.Stated{} })); l.MVER.Shown() {
		t.Errorf("emission has no default, and %s governs", l.MVER)
	}
}

// Only the flooring's blank brings a default for what lies under and over it.
func TestOnlyTheFlooringBringsTheseDefaults(t *testing.T) {
	f, mc := evidence.Fahrenheit, evidence.MC
	low := adhesive(func(p *limits.Product) {
		p.SubfloorMC, p.Difference, p.SurfaceTemp = says(14, mc), says(5, evidence.Points), says(95, f)
	})
	none := flooring(func(p *limits.Product) { p.SubfloorMC, p.Difference, p.SurfaceTemp = none(), none(), none() })
	for _, c := range []struct {
		changes []change
		want    [3]string
	}{
		{do(low), [3]string{"12", "2", "80"}},
		{do(low, none), [3]string{"14", "5", "95"}},
		{do(none), [3]string{"12", "2", "80"}},
		{do(none, flooring(func(p *limits.Product) { p.FaceWidth = num(2.9, evidence.Inch) })), [3]string{"12", "4", "80"}},
		{
			do(none, flooring(func(p *limits.Product) { p.Kind, p.FaceWidth = "resilient", num(3, evidence.Inch) })),
			[3]string{"12", "2", "85"},
		},
	} {
		l := limitsOf(c.changes...)
		got := [3]string{l.Subfloor.Figures(), l.Difference.Figures(), l.SurfaceMax.Figures()}
		if got != c.want {
			t.Errorf("got %v, want %v", got, c.want)
		}
	}
}

// The air's bounds each by themselves, the strictest stated, else the
// flooring's default.
func TestAirBounds(t *testing.T) {
	kind := func(k string) change { return flooring(func(p *limits.Product) { p.Kind = k }) }
	strict := adhesive(func(p *limits.Product) {
		p.AirTempMin, p.AirRHMax = says(65, evidence.Fahrenheit), says(42, evidence.RH)
	})
	for _, c := range []struct {
		changes []change
		want    string
	}{
		{nil, "60 to 80, 35 to 45"},
		{do(strict), "65 to 80, 35 to 42"},
		{do(strict, flooring(func(p *limits.Product) { p.AirTempMin = says(62, evidence.Fahrenheit) })), "65 to 80, 35 to 42"},
		{do(kind("bamboo")), "60 to 80, 35 to 45"},
		{do(kind("carpet")), "65 to 95, 65"},
		{do(kind("resilient")), "65 to 85, 65"},
		{do(kind("laminate")), "65 to 85, 65"},
	} {
		l := limitsOf(c.changes...)
		if got := l.AirTemp.Figures() + ", " + l.AirRH.Figures(); got != c.want {
			t.Errorf("got %s, want %s", got, c.want)
		}
	}
	if l := limitsOf(func(s *stack) { s.service = nil }); l.AirRH.Lack == "" {
		t.Error("without a service climate the humidity of the air is known")
	}
}

// Every limit has a column, a place among the limits in force, and checks of
// the catalog that read it.
func TestKindsAreWhole(t *testing.T) {
	seen := map[string]bool{}
	for _, k := range limits.Kinds() {
		if k.What == "" || len(k.Columns()) == 0 {
			t.Errorf("%+v is not whole", k.What)
		}
		for _, c := range k.Columns() {
			if seen[c.Name] {
				t.Errorf("%s stands twice", c.Name)
			}
			seen[c.Name] = true
		}
		for _, id := range k.Checks {
			if !slices.Contains(report.Order(), id) {
				t.Errorf("%s names a check %s", k.What, id)
			}
		}
	}
	if len(seen) != 14 {
		t.Errorf("%d columns", len(seen))
	}
}
