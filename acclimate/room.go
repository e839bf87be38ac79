package acclimate

import (
	"time"

	"firstboard/report/evidence"
	"firstboard/wood"
)

// Room is the air of one area, what it is held against, and the rows of slab
// and wood that it must be held for. NoHeld and NoFlooring say why a check is
// not needed; they are empty where it is.
type Room struct {
	Air  AirRows // of the area and of the whole site, up to the day of installing
	Wood bool    // the flooring is wood

	Temp, RH       evidence.Limit
	Service        []Period
	StatedTemp     evidence.Limit // by the flooring alone
	StatedRH       evidence.Limit
	Boards         wood.Floor
	Tolerance      evidence.Bound // of a lot's mean around the target
	TargetAdvises  bool
	Surfaces       []Surface
	LaterSurfaces  int       // read after the day of installing
	Leveled        time.Time // the latest leveler; zero where there was none
	SurfaceMax     evidence.Limit
	DewF, DewC     evidence.Bound // margins above the dew point
	NoDew, NoMax   string         // why a check of surfaces is not needed
	NoHeld         string
	HeldFor        []evidence.Time // the judged rows of slab and flooring
	HeldLack       string          // a judged row that has no time
	Held           evidence.Reading
	Gap, Excursion evidence.Reading
	Open           Opened // when the house was last left open

	Acceptance  evidence.Acceptance
	Instruments evidence.Instruments
}

// Opened is the latest event after which the air of before says nothing: HVAC
// off or building open, in the record's words. Its time is blank where there
// was none.
type Opened struct {
	What  string
	At    evidence.Time
	Place evidence.Place
}

// unread is the lack of air read after the house was last left open.
func (r Room) unread() []evidence.Item {
	if !r.Open.At.Shown() {
		return nil
	}
	if a := r.Air.Latest(); a != nil && a.ReadAt.After(r.Open.At) {
		return nil
	}
	lack := "not read since " + r.Open.What + " at " + r.Open.At.Written
	return []evidence.Item{{Name: "the air", Lack: lack, Place: r.Open.Place}}
}

// Earliest is the time of the first air reading; blank where there is none.
func (r Room) Earliest() evidence.Time {
	if a := r.Air.Earliest(); a != nil {
		return a.ReadAt
	}
	return evidence.Time{}
}

// Latest is the time of the latest air reading; blank where there is none.
func (r Room) Latest() evidence.Time {
	if a := r.Air.Latest(); a != nil {
		return a.ReadAt
	}
	return evidence.Time{}
}
