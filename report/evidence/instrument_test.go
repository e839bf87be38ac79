package evidence_test

import (
	"testing"

	"firstboard/report/evidence"
)

// The usual uncertainties, where an instrument states none, and what it states.
func TestUncertainties(t *testing.T) {
	meters := evidence.Instruments{}
	for id, m := range map[string]evidence.Instrument{
		"RP": {Kinds: []string{evidence.Probe}}, "SU": {Kinds: []string{evidence.SingleUse}}, "AL": {Kinds: []string{evidence.AirMeter}},
		"IR": {Kinds: []string{evidence.Surface}}, "PM": {Kinds: []string{evidence.PinMeter}}, "OV": {Kinds: []string{evidence.OvenMeter}},
		"PL": {Kinds: []string{evidence.Pinless}}, "XX": {Kinds: []string{evidence.AnyMeter}},
		"PP": {Kinds: []string{evidence.PinMeter, evidence.Pinless}},
		"AS": {
			Kinds: []string{evidence.AirMeter}, Uncertainty: read("3", evidence.None, ""),
			UncertaintyTemp: read("0.9", evidence.Fahrenheit, ""),
		},
		"IS": {Kinds: []string{evidence.Surface}, Uncertainty: read("1.5", evidence.None, "")},
	} {
		m.ID = id
		meters[evidence.Key(id)] = m
	}
	inF, inC := evidence.Fahrenheit, evidence.Celsius
	for _, c := range []struct {
		what string
		u    *evidence.Uncertainty
		want string
	}{
		{"probe", meters.U("RP", evidence.RH), "2"},
		{"single-use probe", meters.U("SU", evidence.RH), "2"},
		{"air", meters.U("AL", evidence.RH), "2"},
		{"air, its own", meters.U("AS", evidence.RH), "3"},
		{"air temperature", meters.UTemp("AL", inF), "1"},
		{"air temperature in C", meters.UTemp("AL", inC), "0.56"},
		{"air temperature, its own", meters.UTemp("AS", inF), "0.9"},
		{"air temperature, its own in C", meters.UTemp("AS", inC), "0.5"},
		{"temperature of a surface instrument in air", meters.UTemp("IR", inF), "unknown"},
		{"surface", meters.USurface("IR", inF), "2"},
		{"surface in C", meters.USurface("IR", inC), "1.11"},
		{"surface, its own", meters.USurface("IS", inF), "1.5"},
		{"air instrument on a surface", meters.USurface("AL", inF), "2"},
		{"air instrument on a surface in C", meters.USurface("AL", inC), "1.11"},
		{"air instrument on a surface, its own", meters.USurface("AS", inF), "0.9"},
		{"another on a surface", meters.USurface("XX", inF), "unknown"},
		{"pin", meters.U("PM", evidence.MC), "2"},
		{"oven", meters.U("OV", evidence.MC), "0.2"},
		{"pinless", meters.U("PL", evidence.MC), "unknown"},
		{"pins of two kinds", meters.UAs("PP", evidence.MC, evidence.PinMeter), "2"},
		{"pinless of two kinds", meters.UAs("PP", evidence.MC, evidence.Pinless), "unknown"},
		{"other", meters.U("XX", evidence.None), "unknown"},
		{"nobody's", meters.U("", evidence.RH), "unknown"},
	} {
		got := "unknown"
		if c.u.Known {
			got = c.u.Value.Short()
		}
		if got != c.want {
			t.Errorf("%s: %s, want %s", c.what, got, c.want)
		}
	}
}

// Of two bounds the stricter stands, in whatever unit, the first where they
// agree.
func TestTheStricterBoundStands(t *testing.T) {
	b := func(n string, u evidence.Unit, whose string) evidence.Bound {
		return evidence.Bound{Number: evidence.Typed(n, u), Whose: whose}
	}
	f, c := b("68", evidence.Fahrenheit, "F"), b("20", evidence.Celsius, "C")
	for _, x := range []struct {
		got  evidence.Bound
		want string
	}{
		{evidence.Stricter(f, c), "F"},
		{evidence.Stricter(c, f), "C"},
		{evidence.Stricter(f, b("19.9", evidence.Celsius, "C")), "C"},
		{evidence.Stricter(f, b("20.1", evidence.Celsius, "C")), "F"},
		{evidence.Higher(f, b("19.9", evidence.Celsius, "C")), "F"},
		{evidence.Higher(f, b("20.1", evidence.Celsius, "C")), "C"},
		{evidence.Higher(evidence.Bound{}, c), "C"},
		{evidence.Stricter(evidence.Bound{}, c), "C"},
		{evidence.Stricter(f, evidence.Bound{}), "F"},
	} {
		if x.got.Whose != x.want {
			t.Errorf("%s's %s stands, want %s's", x.got.Whose, x.got.Number, x.want)
		}
	}
}
