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

// Kinds of instrument with a default uncertainty or a rule of their own.
const (
	Probe     = "RH probe"
	SingleUse = "RH probe single-use"
	AirMeter  = "air"
	SurfMeter = "surface"
	PinMeter  = "pin"
	Oven      = "oven"
)

// U is the uncertainty of a reading by the named instrument: its own where
// one is stated, else the default of its kind, else of the kind that the
// reading asks for where no instrument is named. Defaults: RH probe and air
// 2 % RH, surface 2 F, pin 2 points (timber guidance, published), oven 0.2
// point; the others practice.
func (in Instruments) U(id, asked string, unit Unit) *Uncertainty {
	meter, listed := in.Find(id)
	if meter.Uncertainty.Shown() {
		return &Uncertainty{Value: meter.Uncertainty.Exact(), Known: true}
	}
	if listed {
		asked = meter.Kind
	}
	switch asked {
	case Probe, SingleUse, AirMeter, PinMeter:
		return &Uncertainty{Value: Whole(2), Known: true}
	case SurfMeter:
		return &Uncertainty{Value: ConvertSpan(Whole(2), Fahrenheit, unit), Known: true}
	case Oven:
		return &Uncertainty{Value: Ratio(1, 5), Known: true}
	}
	return &Uncertainty{}
}

// UTemp is the uncertainty of a temperature by an air instrument: its own, or
// 1 F (practice), in the unit asked for.
func (in Instruments) UTemp(id string, unit Unit) *Uncertainty {
	meter, _ := in.Find(id)
	if u := meter.UncertaintyTemp; u.Shown() {
		return &Uncertainty{Value: ConvertSpan(u.Exact(), u.Unit, unit), Known: true}
	}
	return &Uncertainty{Value: ConvertSpan(Whole(1), Fahrenheit, unit), Known: true}
}
