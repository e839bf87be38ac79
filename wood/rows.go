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

	moisture *Moisture // worked out once, when the row was gathered
}

// Moisture is what the row says of its piece. A row that was not gathered is
// of its own species or none.
func (r Row) Moisture() Moisture {
	if r.moisture == nil {
		return MoistureOf(r, "")
	}
	return *r.moisture
}

// usable says whether the row counts for a number of pieces.
func (r Row) usable() bool { return r.ReadAt.Shown() && r.Moisture().Lack == "" }

// culled says whether the row sets its board aside. Without a time it may not
// be the latest, and says nothing.
func (r Row) culled() bool { return r.SetAside && r.ReadAt.Shown() }

// figure is the row's own cell, for a count of pieces.
func (r Row) figure() evidence.Working { return evidence.Cell("piece", r.Reading) }

func pieceName(r Row) string        { return r.Piece }
func lotName(r Row) string          { return r.Lot }
func readTime(r Row) evidence.Time  { return r.ReadAt }
func rowPlace(r Row) evidence.Place { return r.Place }

// What a row is of, and the methods, as the record writes them.
const (
	OfFlooring = "flooring"
	OfSubfloor = "subfloor"
	OfJoist    = "joist"

	Pin     = "pin"
	Pinless = "pinless"
	OvenDry = "oven-dry"
)
