package wood

import (
	"slices"
	"time"

	"firstboard/report/evidence"
)

// Floor is the wood of one area: flooring, subfloor and joists, with the
// limits that govern them. The No fields say why a group of checks is not
// needed here; they are empty where it is. Gather makes one.
type Floor struct {
	Size    evidence.Reading
	Species string // of the flooring
	Rows    []Row

	NoFlooring, NoSubfloor, NoDifference, NoBelow string
	BelowUnknown, CrawlSpace                      bool
	GroundCover                                   string

	Subfloor, Flooring, Difference evidence.Limit

	Place       evidence.Place // of the area's row
	Wet         time.Time      // the latest wetting; zero where there was none
	Acceptance  evidence.Acceptance
	Instruments evidence.Instruments

	lots, sentBack   []Lot
	subfloor, joists pieces
}

// pieces are subfloor pieces or joists with the rows that every check judges,
// and those with the rows read again within a day.
type pieces struct{ latest, recent []evidence.Judged[Row] }

// Gather reads every row of an area once, and sorts them into pieces and lots:
// what was read before the latest wetting is not judged.
func Gather(rows []Row, flooringSpecies string, wet time.Time) Floor {
	f := Floor{Species: flooringSpecies, Wet: wet, Rows: slices.Clone(rows)}
	for i := range f.Rows {
		m := MoistureOf(f.Rows[i], flooringSpecies)
		f.Rows[i].moisture = &m
	}
	f.subfloor, f.joists = f.piecesOf(OfSubfloor), f.piecesOf(OfJoist)
	for _, group := range evidence.Group(f.Of(OfFlooring), lotName) {
		lot := lotOf(group, wet)
		if lot.Read > 0 && lot.SetAside == lot.Read && len(lot.Boards) == 0 {
			f.sentBack = append(f.sentBack, lot)
		} else {
			f.lots = append(f.lots, lot)
		}
	}
	return f
}

func (f Floor) piecesOf(what string) pieces {
	rows := f.Of(what)
	return pieces{
		latest: evidence.Latest(rows, f.Wet, pieceName, readTime),
		recent: evidence.Recent(rows, f.Wet, evidence.Again, pieceName, readTime),
	}
}

// Of are the rows of flooring, subfloor or joists.
func (f Floor) Of(what string) []Row {
	return slices.DeleteFunc(slices.Clone(f.Rows), func(r Row) bool { return r.Of != what })
}

// Pieces are the subfloor pieces or joists with their judged rows.
func (f Floor) Pieces(what string) []evidence.Judged[Row] {
	if what == OfJoist {
		return f.joists.latest
	}
	return f.subfloor.latest
}

// Lots are the lots of flooring at their last visits, in the order a person
// lists them. A lot that water left without a reading has no boards. Lots sent
// back are not among them.
func (f Floor) Lots() []Lot { return f.lots }

// SentBack are the lots whose every board of the last visit was set aside.
// They are not judged, and not to be installed.
func (f Floor) SentBack() []Lot { return f.sentBack }

// Unexplained is how many boards were set aside without a note.
func (f Floor) Unexplained() int {
	n := 0
	for _, lot := range slices.Concat(f.lots, f.sentBack) {
		n += lot.Unexplained
	}
	return n
}
