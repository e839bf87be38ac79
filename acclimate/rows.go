package acclimate

import (
	"github.com/shopspring/decimal"

	"firstboard/report/evidence"
)

// Air is one reading of the air. A blank Area is the whole site.
type Air struct {
	Area       string
	ReadAt     evidence.Time
	Temp, RH   evidence.Reading
	Instrument string
	By, Note   string
	Place      evidence.Place
}

// LeastRH is the lowest humidity of air that is believed, in %: no room is so
// dry, so the meter failed (common practice, no source).
const LeastRH = 5

const tooDry = "under 5 % RH: no room is so dry, so the meter failed"

// Humidity is the relative humidity read, blank where it is too low for any
// room.
func (a *Air) Humidity() evidence.Reading {
	if a.RH.Shown() && order(a.RH.Value, decimal.New(LeastRH, 0)) < 0 {
		return evidence.Reading{Unit: a.RH.Unit, Place: a.RH.Place}
	}
	return a.RH
}

func (a *Air) temperature() evidence.Reading { return a.Temp }
func (a *Air) humidity() evidence.Reading    { return a.RH }

// Surface is one reading of a surface's temperature.
type Surface struct {
	Area, Spot string
	ReadAt     evidence.Time
	Temp       evidence.Reading
	Instrument string
	By, Note   string
	Place      evidence.Place
}

// Period is one seasonal mean of a service climate: what the floor will live
// through. From says whose figure it is.
type Period struct {
	Climate, Name string
	Temp, RH      evidence.Reading
	From          string
	Place         evidence.Place
}
