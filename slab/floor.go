package slab

import (
	"slices"
	"time"

	"firstboard/report/evidence"
)

// Floor is one area's slab: its rows, the limits that govern it, and what the
// checks need to know of the area. The No fields say why a test is not needed
// here; they are empty where it is.
type Floor struct {
	Size          evidence.Reading
	Thickness     evidence.Reading
	TwoFaces      bool
	ExteriorWalls evidence.Reading // how many walls of the area are exterior
	MadeOf        string           // normal, lightweight, gypsum, calcium sulfate
	Loose         bool             // the flooring is stretched or installed loose
	Isolated      bool             // a membrane's data sheet states that it needs no RH limit

	Holes    []Hole
	Dishes   []Dish
	PHs      []PH
	Carbides []Carbide
	Others   []Other
	Scans    []Scan

	NoHoles, NoDishes, NoPH, NoCM, NoScan string

	RH, Temp, MVER, PH, CM evidence.Limit
	Wait                   evidence.Bound
	DepthTolerance         evidence.Reading

	Covered     evidence.Date // blank where water came after it
	Wet         time.Time     // the latest wetting; zero where there was none
	Acceptance  evidence.Acceptance
	Instruments evidence.Instruments
}

// Kinds of slab for which some methods are not made.
const (
	Lightweight    = "lightweight"
	Gypsum         = "gypsum"
	CalciumSulfate = "calcium sulfate"
)

func (f Floor) advises(holes bool) bool { return f.Loose || holes && f.Isolated }

// standing are the rows that are not history: those up to the end of the day
// the floor was covered.
func standing[T any](f Floor, rows []T, at func(T) evidence.Time) []T {
	return slices.DeleteFunc(slices.Clone(rows), func(r T) bool {
		t := at(r)
		return f.Covered.Shown() && t.Shown() && t.Day() > f.Covered.Day
	})
}

func holeName(h Hole) string        { return h.Hole }
func holeTime(h Hole) evidence.Time { return h.ReadAt }
func holeUsable(h Hole) bool        { return h.RH.Shown() && h.ReadAt.Shown() }

// JudgedHoles are the holes that count, with their judged rows.
func (f Floor) JudgedHoles() []evidence.Judged[Hole] { return f.holes(false) }

// DiscardedHoles are the holes out of use, with their latest rows: water does
// not undo what they read.
func (f Floor) DiscardedHoles() []evidence.Judged[Hole] {
	f.Wet = time.Time{}
	return f.holes(true)
}

func (f Floor) holes(discarded bool) []evidence.Judged[Hole] {
	out := map[string]bool{}
	for _, h := range f.Holes {
		if h.Discarded != "" {
			out[evidence.Key(h.Hole)] = true
		}
	}
	rows := slices.DeleteFunc(standing(f, f.Holes, holeTime), func(h Hole) bool {
		return out[evidence.Key(h.Hole)] != discarded
	})
	return evidence.Latest(rows, f.Wet, holeName, holeTime)
}
