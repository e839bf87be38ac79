package wood

import (
	"slices"
	"time"

	"firstboard/report/evidence"
)

// Floor is the wood of one area: flooring, subfloor and joists, with the
// limits that govern them. The No fields say why a group of checks is not
// needed here; they are empty where it is.
type Floor struct {
	Size    evidence.Reading
	Species string // of the flooring
	Rows    []Row

	NoFlooring, NoSubfloor, NoDifference, NoBelow string
	CrawlSpace                                    bool
	GroundCover                                   string

	Subfloor, Flooring, Difference evidence.Limit

	Place       evidence.Place // of the area's row
	Wet         time.Time      // the latest wetting; zero where there was none
	Acceptance  evidence.Acceptance
	Instruments evidence.Instruments
}

// Lot is one delivery of flooring at its last visit: how many boards were
// read, those that count, how many were set aside, and how many of those
// without a note.
type Lot struct {
	Name        string
	Read        int
	Boards      []evidence.Judged[Row]
	SetAside    int
	Aside       []evidence.Place // the rows that set them aside
	Unexplained int
}

// Visit is how far back from its latest row a visit reaches.
const Visit = 72 * time.Hour

func pieceName(r Row) string       { return r.Piece }
func lotName(r Row) string         { return r.Lot }
func readTime(r Row) evidence.Time { return r.ReadAt }

// counts says whether a row counts for a number of pieces.
func (f Floor) counts(r Row) bool {
	return r.ReadAt.Shown() && MoistureOf(r, f.Species).Lack == ""
}

// Of are the rows of flooring, subfloor or joists.
func (f Floor) Of(what string) []Row {
	return slices.DeleteFunc(slices.Clone(f.Rows), func(r Row) bool { return r.Of != what })
}

// Pieces are the subfloor pieces or joists with their judged rows.
func (f Floor) Pieces(what string) []evidence.Judged[Row] {
	return evidence.Latest(f.Of(what), f.Wet, pieceName, readTime)
}

// Lots are the lots of flooring at their last visits, in the order a person
// lists them. A lot that water left without a reading has no boards.
func (f Floor) Lots() []Lot {
	names := evidence.Latest(f.Of(OfFlooring), time.Time{}, lotName, readTime)
	lots := make([]Lot, len(names))
	for i, lot := range names {
		lots[i] = lastVisit(lot.Name, f.ofLot(lot.Name))
	}
	return lots
}

func lastVisit(name string, rows []Row) Lot {
	lot := Lot{Name: name}
	for _, board := range evidence.Latest(within(rows, evidence.Last(rows, readTime)), time.Time{}, pieceName, readTime) {
		lot.Read++
		if aside := slices.IndexFunc(board.Rows, culled); aside >= 0 {
			lot.SetAside++
			lot.Aside = append(lot.Aside, board.Rows[aside].Place)
			if board.Rows[aside].Note == "" {
				lot.Unexplained++
			}
		}
		board.Rows = slices.DeleteFunc(board.Rows, culled)
		if len(board.Rows) > 0 {
			lot.Boards = append(lot.Boards, board)
		}
	}
	return lot
}

// culled says whether a row sets its board aside. Without a time it may not
// be the latest, and says nothing.
func culled(r Row) bool { return r.SetAside && r.ReadAt.Shown() }

// within are the rows of the visit that ends with last, and those without a
// time, which may belong to it.
func within(rows []Row, last evidence.Time) []Row {
	return slices.DeleteFunc(slices.Clone(rows), func(r Row) bool {
		return r.ReadAt.Shown() && last.First.Sub(r.ReadAt.First) > Visit
	})
}
