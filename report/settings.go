package report

import (
	"github.com/shopspring/decimal"

	"firstboard/acclimate"
	"firstboard/report/evidence"
	"firstboard/report/instruments"
	"firstboard/slab"
)

// Settings are the figures of the rules that a job may change, each with the
// unit it is stated in.
type Settings struct {
	ProbeWait       evidence.Reading // h between sealing and reading
	DepthTolerance  evidence.Reading // % of the wanted depth
	HeldConditions  evidence.Reading // h of air in range before a judged row
	LargestAirGap   evidence.Reading // h between neighboring air rows
	AirExcursion    evidence.Reading // h that an excused run may last
	SlabReadingLife evidence.Reading // days
	WoodReadingLife evidence.Reading // days
	AirReadingLife  evidence.Reading // h
	DewMarginF      evidence.Reading // above the dew point, for a surface read in F
	DewMarginC      evidence.Reading // the same for one read in C
	TargetTolerance evidence.Reading // points
	HeatRun         evidence.Reading // h
}

// DefaultSettings are the settings of a record that changes none.
func DefaultSettings() Settings {
	h := func(n string) evidence.Reading { return evidence.Typed(n, evidence.Hour) }
	return Settings{
		ProbeWait:       slab.DefaultWait(),
		DepthTolerance:  slab.DefaultDepthTolerance(),
		HeldConditions:  acclimate.DefaultHeld(),
		LargestAirGap:   h("26"),
		AirExcursion:    h("2"),
		SlabReadingLife: instruments.SlabLife(),
		WoodReadingLife: instruments.WoodLife(),
		AirReadingLife:  instruments.AirLife(),
		DewMarginF:      acclimate.DefaultDewF(),
		DewMarginC:      acclimate.DefaultDewC(),
		TargetTolerance: acclimate.DefaultTolerance(),
		HeatRun:         h("72"),
	}
}

// Setting is one setting by the name of its job item.
type Setting struct {
	Item  string
	Value *evidence.Reading
}

// Items are the settings by the names of their job items, in the design's
// order, for the reader to fill in and for the outputs to list.
func (s *Settings) Items() []Setting {
	return []Setting{
		{"Probe wait (h)", &s.ProbeWait},
		{"Depth tolerance (%)", &s.DepthTolerance},
		{"Held conditions (h)", &s.HeldConditions},
		{"Largest air gap (h)", &s.LargestAirGap},
		{"Air excursion (h)", &s.AirExcursion},
		{"Slab reading life (days)", &s.SlabReadingLife},
		{"Wood reading life (days)", &s.WoodReadingLife},
		{"Air reading life (h)", &s.AirReadingLife},
		{"Dew margin (F)", &s.DewMarginF},
		{"Dew margin (C)", &s.DewMarginC},
		{"Target tolerance (points)", &s.TargetTolerance},
		{"Heat run (h)", &s.HeatRun},
	}
}

// Changed are the settings that differ from their defaults.
func (s Settings) Changed() []Setting {
	var changed []Setting
	def := DefaultSettings()
	for i, item := range s.Items() {
		if differs(*item.Value, *def.Items()[i].Value) {
			changed = append(changed, item)
		}
	}
	return changed
}

// Bound is a setting as a bound. One that the job changed is the record's own.
func (s Settings) Bound(item string) evidence.Bound {
	def := DefaultSettings()
	for i, it := range s.Items() {
		if it.Item != item {
			continue
		}
		b := evidence.Bound{Number: *it.Value}
		if differs(*it.Value, *def.Items()[i].Value) {
			b.Cite = evidence.Cite{Source: "the record: Job, " + item, Standing: evidence.ByHand}
		}
		return b
	}
	return evidence.Bound{}
}

func differs(a, b evidence.Reading) bool { return a.Shown() != b.Shown() || !a.Value.Equal(b.Value) }

// dewMargins are the margins above the dew point for surfaces read in F and in
// C. A margin changed in one unit counts in the other too where it is the
// stricter: a looser one never loosens what was not changed.
func (s Settings) dewMargins() (f, c evidence.Bound) {
	f, c = s.Bound("Dew margin (F)"), s.Bound("Dew margin (C)")
	fromC := evidence.Bound{
		Number: evidence.Computed(c.Number.Value.Mul(decimal.New(18, -1)), evidence.Fahrenheit),
		Cite:   c.Cite,
	}
	fromF := evidence.Bound{
		Number: evidence.Computed(f.Number.Value.Div(decimal.New(18, -1)), evidence.Celsius),
		Cite:   f.Cite,
	}
	changedF, changedC := f.Cite != (evidence.Cite{}), c.Cite != (evidence.Cite{})
	switch {
	case changedC && !changedF && fromC.Number.Value.GreaterThan(f.Number.Value):
		f = fromC
	case changedF && !changedC && fromF.Number.Value.GreaterThan(c.Number.Value):
		c = fromF
	}
	return f, c
}
