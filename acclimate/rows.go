package acclimate

import "firstboard/report/evidence"

// Air is one reading of the air. A blank Area is the whole site.
type Air struct {
	Area       string
	ReadAt     evidence.Time
	Temp, RH   evidence.Reading
	Instrument string
	By, Note   string
	Place      evidence.Place
}

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
