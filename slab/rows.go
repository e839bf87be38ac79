package slab

import "firstboard/report/evidence"

// Hole is one reading of a probe sealed in a hole. X and Y are coordinates on
// the plan of its area; ToWall is the distance to the nearest exterior wall and
// Walls which one that is, two in a corner; Thickness is the slab's at the hole.
// Discarded is the word that says why the hole is out of use, or empty.
type Hole struct {
	Area, Hole       string
	X, Y, ToWall     evidence.Reading
	Walls            []string
	Thickness, Depth evidence.Reading
	SealedAt, ReadAt evidence.Time
	RH, Temp         evidence.Reading
	Instrument       string
	Discarded        string
	By, Note         string
	Place            evidence.Place
}

// placed says whether a row tells where its hole lies.
func (h Hole) placed() bool { return h.X.Shown() && h.Y.Shown() }

// Dish is one anhydrous calcium chloride dish: set, lifted, and weighed both
// times. TestArea is the concrete under the dome less the dish.
type Dish struct {
	Area, Dish         string
	X, Y               evidence.Reading
	SetAt, RetrievedAt evidence.Time
	Start, End         evidence.Reading
	TestArea           evidence.Reading
	Instrument         string
	By, Note           string
	Place              evidence.Place
}

// PH is one reading of the surface's alkalinity.
type PH struct {
	Area, Spot string
	ReadAt     evidence.Time
	PH         evidence.Reading
	Instrument string
	By, Note   string
	Place      evidence.Place
}

// Carbide is one carbide (CM) reading of a sample taken at a depth.
type Carbide struct {
	Area, Spot string
	Depth      evidence.Reading
	ReadAt     evidence.Time
	CM         evidence.Reading
	Instrument string
	By, Note   string
	Place      evidence.Place
}

// Other is one result of any further test a manufacturer asks for, with the bounds
// that the row itself states.
type Other struct {
	Area, Test, Spot string
	ReadAt           evidence.Time
	Result           evidence.Reading
	AtLeast, AtMost  evidence.Reading
	Unit             string
	Instrument       string
	DataSheet        string
	By, Note         string
	Place            evidence.Place
}

// Scan is one relative number of a nondestructive meter: never a moisture
// content. Over is what lay on the base: bare (or blank), or the flooring.
type Scan struct {
	Area, Spot string
	X, Y       evidence.Reading
	ReadAt     evidence.Time
	Reading    evidence.Reading
	Over       string
	Instrument string
	By, Note   string
	Place      evidence.Place
}
