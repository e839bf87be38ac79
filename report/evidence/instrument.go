package evidence

import "slices"

// Instrument is a meter of the record, with what is known of its calibration
// and its expanded uncertainty (k = 2), in the unit of its readings.
type Instrument struct {
	ID              string
	Kinds           []string // of a meter that does several, each
	Model           string
	Serial          string
	CalibratedOn    Date
	DueOn           Date
	Certificate     string
	Uncertainty     Reading
	UncertaintyTemp Reading
	Place           Place
}

// Has says whether the instrument is of a kind.
func (i Instrument) Has(kind string) bool { return slices.Contains(i.Kinds, kind) }

// Instruments are a record's instruments by the key of their name.
type Instruments map[string]Instrument

// Find is the instrument of that name.
func (in Instruments) Find(id string) (Instrument, bool) {
	i, ok := in[Key(id)]
	return i, ok
}

// Kinds of instrument that a rule names.
const (
	Probe     = "RH probe"
	SingleUse = "RH probe single-use"
	AirMeter  = "air"
	Surface   = "surface"
	PinMeter  = "pin"
	Pinless   = "pinless"
	OvenMeter = "oven"
	Balance   = "balance"
	PHMeter   = "pH"
	CMMeter   = "CM"
	AnyMeter  = "other"
)

// U is the uncertainty of a reading of the named instrument, in the unit of
// the reading: the one its row states, else the usual one of its kind: RH probe
// and air 2 % RH (ASTM F2170, recalled), surface 2 F and oven 0.2 point
// (practice), pin 2 points (timber guidance, published). Any other kind, and a
// reading by no instrument, has none.
func (in Instruments) U(id string, unit Unit) *Uncertainty {
	meter, _ := in.Find(id)
	return in.UAs(id, unit, meter.Kinds...)
}

// UAs is U where the reading was taken as with one of these kinds: a meter may
// do several.
func (in Instruments) UAs(id string, unit Unit, kinds ...string) *Uncertainty {
	meter, _ := in.Find(id)
	if meter.Uncertainty.Shown() {
		return Within(meter.Uncertainty.Exact())
	}
	as := func(kind string) bool { return meter.Has(kind) && slices.Contains(kinds, kind) }
	switch {
	case as(Probe), as(SingleUse), as(AirMeter), as(PinMeter):
		return Within(Whole(2))
	case as(Surface):
		return Within(ConvertSpan(Whole(2), Fahrenheit, unit))
	case as(OvenMeter):
		return Within(Ratio(1, 5))
	}
	return &Uncertainty{}
}

// USurface is U for a surface's temperature. An instrument that reads humidity
// states that of its temperatures apart; on a surface its usual one is that of
// a surface instrument, not the one it has in air.
func (in Instruments) USurface(id string, unit Unit) *Uncertainty {
	meter, _ := in.Find(id)
	switch humid := meter.Has(Probe) || meter.Has(SingleUse) || meter.Has(AirMeter); {
	case humid && meter.UncertaintyTemp.Shown():
		return in.UTemp(id, unit)
	case humid:
		return Within(ConvertSpan(Whole(2), Fahrenheit, unit))
	}
	return in.U(id, unit)
}

// UTemp is U for the temperatures of an instrument that reads humidity, in
// the unit asked for; the usual one of an air instrument is 1 F (practice).
func (in Instruments) UTemp(id string, unit Unit) *Uncertainty {
	meter, _ := in.Find(id)
	switch {
	case meter.UncertaintyTemp.Shown():
		return Within(ConvertSpan(meter.UncertaintyTemp.Exact(), meter.UncertaintyTemp.Unit, unit))
	case meter.Has(AirMeter):
		return Within(ConvertSpan(Whole(1), Fahrenheit, unit))
	}
	return &Uncertainty{}
}

// Within is the uncertainty of a computed value that a publication states.
func Within(x Exact) *Uncertainty { return &Uncertainty{Value: x, Known: true} }
