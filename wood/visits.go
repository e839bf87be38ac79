package wood

import (
	"slices"
	"time"

	"gonum.org/v1/gonum/stat"

	"firstboard/report/evidence"
)

// Visited is what the boards of a lot read at one visit: when on the whole and
// when the last of its rows, their mean, the standard deviation among them (0 for
// a single one), in % MC, and how many they were.
type Visited struct {
	At, Ended          time.Time
	MeanPct, SpreadPct float64
	Boards             int
}

// Visits are the visits to a lot since water, the last one first: that one is
// what the checks judge, and each before it the same of the rows left over. A
// board that does not say its moisture content is not among them.
func (lot Lot) Visits() []Visited {
	var all []Visited
	for _, v := range parted(lot.timed) {
		if told, ok := v.told(); ok {
			all = append(all, told)
		}
	}
	return all
}

// call is one visit: its latest time, and the rows of each board in it.
type call struct {
	ended  time.Time
	boards [][]Row
}

// parted puts each row into the latest visit it can belong to: one that ended
// within 72 h after it and in which its board was not read later.
func parted(rows []Row) []call {
	type taken struct {
		visit, board int
		at           time.Time
	}
	var visits []call
	open, last := 0, map[string]taken{}
	for _, r := range slices.SortedStableFunc(slices.Values(rows),
		func(a, b Row) int { return b.ReadAt.First.Compare(a.ReadAt.First) }) {
		at, key := r.ReadAt.First, evidence.Key(r.Piece)
		was, known := last[key]
		if known && was.at.Equal(at) {
			boards := visits[was.visit].boards
			boards[was.board] = append(boards[was.board], r)
			continue
		}
		for open < len(visits) && visits[open].ended.Sub(at) > Visit {
			open++
		}
		into := open
		if known {
			into = max(open, was.visit+1)
		}
		if into == len(visits) {
			visits = append(visits, call{ended: at})
		}
		visits[into].boards = append(visits[into].boards, []Row{r})
		last[key] = taken{into, len(visits[into].boards) - 1, at}
	}
	return visits
}

// told is what the boards of a visit say; false where none says anything.
func (c call) told() (Visited, bool) {
	var values []float64
	var before time.Duration
	for _, rows := range c.boards {
		var said []float64
		for _, r := range rows {
			if m := r.Moisture(); m.Lack == "" && !r.culled() {
				said = append(said, m.Value().Float())
			}
		}
		if len(said) > 0 {
			values = append(values, stat.Mean(said, nil))
			before += c.ended.Sub(rows[0].ReadAt.First)
		}
	}
	if len(values) == 0 {
		return Visited{}, false
	}
	v := Visited{
		Boards: len(values), At: c.ended.Add(-before / time.Duration(len(values))), Ended: c.ended,
		MeanPct: stat.Mean(values, nil),
	}
	if len(values) > 1 {
		v.SpreadPct = stat.StdDev(values, nil)
	}
	return v, true
}
