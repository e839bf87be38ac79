package wood

import "firstboard/report/evidence"

// Row is one moisture reading of a board, a subfloor panel or a joist, as the
// meter showed it.
type Row struct {
	Area, Of, Piece, Lot string
	X, Y                 evidence.Reading
	ReadAt               evidence.Time
	Method               string
	Depth                evidence.Reading
	Reading              evidence.Reading
	Scale                string
	Species              string
	WoodTemp             evidence.Reading
	TempCorrected        string
	SetAside             bool
	Instrument           string
	By, Note             string
	Place                evidence.Place
}

// What a row is of, and the methods, as the record writes them.
const (
	OfFlooring = "flooring"
	OfSubfloor = "subfloor"
	OfJoist    = "joist"

	Pin     = "pin"
	Pinless = "pinless"
	OvenDry = "oven-dry"
)
