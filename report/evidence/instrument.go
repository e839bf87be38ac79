package evidence

// Instrument is a meter of the record, with what is known of its calibration
// and its expanded uncertainty (k = 2), in the unit of its readings.
type Instrument struct {
	ID              string
	Kind            string
	Model           string
	Serial          string
	CalibratedOn    Date
	DueOn           Date
	Certificate     string
	Uncertainty     Reading
	UncertaintyTemp Reading
	Place           Place
}

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
)

// U is the uncertainty of a reading by the named instrument: the one its row
// states, else the usual one of such a reading, which is none where it has no
// known one.
func (in Instruments) U(id string, usual *Uncertainty) *Uncertainty {
	if meter, _ := in.Find(id); meter.Uncertainty.Shown() {
		return Within(meter.Uncertainty.Exact())
	}
	return usual
}

// UTemp is U for the temperatures of an instrument that reads humidity, in
// the unit asked for; the usual one is 1 F (practice).
func (in Instruments) UTemp(id string, unit Unit) *Uncertainty {
	if meter, _ := in.Find(id); meter.UncertaintyTemp.Shown() {
		u := meter.UncertaintyTemp
		return Within(ConvertSpan(u.Exact(), u.Unit, unit))
	}
	return Within(ConvertSpan(Whole(1), Fahrenheit, unit))
}

// Within is a known uncertainty.
func Within(x Exact) *Uncertainty { return &Uncertainty{Value: x, Known: true} }

// Unknown is the uncertainty of a reading for which nobody states one.
func Unknown() *Uncertainty { return &Uncertainty{} }
