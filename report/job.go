package report

import (
	"time"

	"firstboard/acclimate"
	"firstboard/report/evidence"
	"firstboard/report/instruments"
	"firstboard/report/limits"
	"firstboard/slab"
	"firstboard/wood"
)

// Job is everything a record says of one job, each thing with its place.
// Identifiers keep their typed spelling and are compared with evidence.Same;
// fixed words stand in the design's own spelling ("on grade", "RH probe").
type Job struct {
	Name, Site, PreparedBy, Company, GeneralContractor string

	Zone      *time.Location // UTC where the record names no time zone
	ZoneName  string         // as typed, empty where there is none
	Elevation evidence.Reading

	Guarded            bool
	AcceptanceAgreedBy string
	AcceptanceAgreedOn evidence.Date
	Settings           Settings

	Areas       []Area
	Products    []limits.Product
	Climates    []acclimate.Period
	Instruments evidence.Instruments
	Checks      []instruments.Comparison // of instruments, not of the catalog

	Holes    []slab.Hole
	Dishes   []slab.Dish
	PHs      []slab.PH
	Carbides []slab.Carbide
	Others   []slab.Other
	Scans    []slab.Scan
	Air      []acclimate.Air
	Surfaces []acclimate.Surface
	Wood     []wood.Row

	Events   []Event
	Photos   []Photo
	SignOffs []SignOff
}

// Area is one part of the floor that is accepted or refused as a whole, as
// the record describes it. Blank words are kept blank.
type Area struct {
	ID, Name      string
	Size          evidence.Reading
	Substrate     string
	Thickness     evidence.Reading // of the slab
	DryingFaces   evidence.Reading
	SlabKind      string
	MadeOf        string
	UnderSlab     string
	ExteriorWalls evidence.Reading // how many
	Zone          string           // areas on one pour that share their slab tests
	PlacedOn      evidence.Date
	EnclosedOn    evidence.Date
	RadiantHeat   string
	HeatOnSince   evidence.Time
	HVAC          string
	Below         string
	GroundCover   string
	Flooring      string
	Adhesive      string
	Membrane      string
	Installation  string
	Climate       string
	CoveredOn     evidence.Date
	InstallOn     evidence.Date
	AcrossBoards  evidence.Reading // width of the room across the boards
	Place         evidence.Place
}

// Event is something that happened to an area, or to the whole site where
// Area is blank.
type Event struct {
	Area    string
	At      evidence.Time
	What    string
	Remarks string
	Place   evidence.Place
}

// Photo names a picture of an area.
type Photo struct {
	Area, File string
	TakenAt    evidence.Time
	Of         string
	Place      evidence.Place
}

// SignOff is a signature under an area's decision. It never changes a verdict.
type SignOff struct {
	Area, Role, Name string
	At               evidence.Time
	Decision         string
	Waives           []string
	Document         string
	Remarks          string
	Place            evidence.Place
}
