package wood

import (
	"slices"
	"time"

	"firstboard/report/evidence"
)

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

	earlier []evidence.Judged[Row] // the boards of the nearest visit that ended 72 h or more before
	missed  []evidence.Judged[Row] // the boards of the week before that were not read again
	lost    []evidence.Judged[Row] // the names of the boards where water left nothing
	timed   []Row                  // every row since water that has a time
	past    past
}

// Visit is how far back from its latest row a visit reaches, and Week how long
// before it a board counts that was not read again.
const (
	Visit = 72 * time.Hour
	Week  = 7 * 24 * time.Hour
)

// Title is what a lot is called in a sentence.
func (lot Lot) Title() string {
	if lot.Name == "" {
		return "the lot without a name"
	}
	return "lot " + lot.Name
}

// ofLot is what stands behind the name of a board.
func (lot Lot) ofLot() string {
	if lot.Name == "" {
		return ""
	}
	return " of " + lot.Title()
}

// FirstPlace is where the first of the lot's boards was read.
func (lot Lot) FirstPlace() evidence.Place {
	for _, board := range lot.Boards {
		for _, r := range board.Rows {
			return r.Place
		}
	}
	return nil
}

// rows are those behind the lot's mean, and behind that of the visit before.
func (lot Lot) rows(before bool) []evidence.Place {
	all := evidence.Rows(lot.Boards, rowPlace)
	if before {
		all = append(all, evidence.Rows(lot.earlier, rowPlace)...)
	}
	return all
}

// Cited are the rows behind the means of the lots that a finding cites by their first row, and
// behind those of the visit before where it counts.
func (f Floor) Cited(found evidence.Finding, before bool) []evidence.Place {
	cited := map[string]bool{}
	for _, p := range found.Evidence {
		cited[p.String()] = true
	}
	var all []evidence.Place
	for _, lot := range f.Lots() {
		if first := lot.FirstPlace(); first != nil && cited[first.String()] {
			all = append(all, lot.rows(before)...)
		}
	}
	return all
}

// lotOf sorts the rows of a lot.
func lotOf(group evidence.Judged[Row], wet time.Time) Lot {
	dry := slices.DeleteFunc(slices.Clone(group.Rows),
		func(r Row) bool { return r.ReadAt.Shown() && r.ReadAt.First.Before(wet) })
	if len(dry) == 0 {
		return Lot{
			Name: group.Name, past: past{wet: len(group.Rows)},
			lost: evidence.Latest(group.Rows, wet, pieceName, readTime),
		}
	}
	visit, before := split(dry)
	lot := lastVisit(group.Name, visit)
	lot.past.wet, lot.past.earlier = len(group.Rows)-len(dry), len(before)
	first := firstTime(visit)
	lot.earlier = lastVisit(group.Name, endedBefore(before, first)).Boards
	lot.missed = missed(before, visit, first)
	lot.timed = slices.DeleteFunc(slices.Clone(dry), func(r Row) bool { return !r.ReadAt.Shown() })
	return lot
}

// split parts rows into those of the visit that ends with the latest of them,
// with those without a time, which may belong to it, and those before it.
func split(rows []Row) (visit, before []Row) {
	last := evidence.Last(rows, readTime)
	for _, r := range rows {
		if r.ReadAt.Shown() && last.First.Sub(r.ReadAt.First) > Visit {
			before = append(before, r)
		} else {
			visit = append(visit, r)
		}
	}
	return visit, before
}

func lastVisit(name string, rows []Row) Lot {
	lot := Lot{Name: name}
	visit, _ := split(rows)
	for _, board := range evidence.Latest(visit, time.Time{}, pieceName, readTime) {
		lot.Read++
		lot.past.judged += len(board.Rows)
		if aside := slices.IndexFunc(board.Rows, Row.culled); aside >= 0 {
			lot.SetAside++
			lot.Aside = append(lot.Aside, board.Rows[aside].Place)
			if evidence.Tidy(board.Rows[aside].Note) == "" {
				lot.Unexplained++
			}
		}
		board.Rows = slices.DeleteFunc(board.Rows, Row.culled)
		if len(board.Rows) > 0 {
			lot.Boards = append(lot.Boards, board)
		}
	}
	lot.past.again = len(visit) - lot.past.judged
	return lot
}

// firstTime is the time of the earliest row that has one.
func firstTime(rows []Row) evidence.Time {
	var first evidence.Time
	for _, r := range rows {
		if r.ReadAt.Shown() && (!first.Shown() || first.After(r.ReadAt)) {
			first = r.ReadAt
		}
	}
	return first
}

// endedBefore are the rows read 72 h or more before a visit began.
func endedBefore(rows []Row, first evidence.Time) []Row {
	return slices.DeleteFunc(slices.Clone(rows), func(r Row) bool { return first.First.Sub(r.ReadAt.First) < Visit })
}

// missed are the boards read in the week before a visit began and not in it.
func missed(before, visit []Row, first evidence.Time) []evidence.Judged[Row] {
	again := map[string]bool{}
	for _, r := range visit {
		again[evidence.Key(r.Piece)] = true
	}
	week := slices.DeleteFunc(slices.Clone(before), func(r Row) bool {
		return again[evidence.Key(r.Piece)] || first.First.Sub(r.ReadAt.First) > Week
	})
	return evidence.Latest(week, time.Time{}, pieceName, readTime)
}
