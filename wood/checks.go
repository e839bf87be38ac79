package wood

import (
	"fmt"
	"slices"
	"strconv"

	"github.com/shopspring/decimal"

	"firstboard/report/evidence"
)

// Checks are the checks of wood, in report order.
func Checks() []evidence.Check[Floor] {
	nwfa := evidence.Cite{Source: "NWFA guidance 2017", Standing: evidence.Published}
	trade := evidence.Cite{Source: "trade guidance, several", Standing: evidence.Published}
	return []evidence.Check[Floor]{
		belowCheck(),
		{
			ID: "subfloor-count", Deciding: true, Judge: enoughSubfloor,
			Asks:    "were enough subfloor pieces read: 20 for each 1000 ft2, never fewer than 3?",
			Default: "20 for each 1000 ft2",
			Cite:    evidence.Cite{Source: "NWFA guidance 2017; the 3: common practice, no source", Standing: evidence.Published},
		},
		{
			ID: "subfloor-mc", Deciding: true, Judge: subfloorMC,
			Asks:    "is every subfloor reading at or under its limit (12 % MC unless a product states one)?",
			Default: "12 % MC",
			Cite:    evidence.Cite{Source: "trade guidance, several (12 to 13 %; judging every reading is stricter than its average)", Standing: evidence.Published},
		},
		{
			ID: "subfloor-spots", Judge: subfloorSpots,
			Asks:    "is no subfloor reading more than 3 points above the median?",
			Default: "3 points",
			Cite:    trade,
		},
		{
			ID: "flooring-count", Deciding: true, Judge: enoughBoards,
			Asks:    "were enough boards read: 40 for each 1000 ft2, never fewer than 3, at least 10 a lot where there are several, and no more than 1 in 10 set aside?",
			Default: "40 for each 1000 ft2",
			Cite:    evidence.Cite{Source: "NWFA guidance 2019 (the 40); the rest: common practice, no source", Standing: evidence.Published},
		},
		{
			ID: "flooring-mc", Deciding: true, Judge: boardsMC,
			Asks: "does every board lie in the range of moisture content that a product states?",
			Cite: evidence.Cite{Source: "the record", Standing: evidence.ByHand},
		},
		{
			ID: "wood-difference", Deciding: true, Judge: difference,
			Asks:    "is each lot's mean within 4 points (face under 3 in) or 2 points (3 in and over) of the subfloor's mean?",
			Default: "4 or 2 points",
			Cite:    nwfa,
		},
	}
}

// DefaultSubfloorMC is the limit where the flooring states none: 12 % MC.
func DefaultSubfloorMC() evidence.Bound {
	return evidence.Bound{
		Number: evidence.Typed("12", evidence.MC),
		Cite:   evidence.Cite{Source: "trade guidance, several (12 to 13 %)", Standing: evidence.Published},
	}
}

// DefaultDifference is the limit of the difference of means where the flooring
// states none: 4 points for a face under 3 in, 2 points from there on and
// where the face is not known. NWFA wrote it for solid wood; for other boards
// it is taken by analogy.
func DefaultDifference(face evidence.Reading, solid bool) evidence.Bound {
	points := "2"
	if face.Shown() && face.In(evidence.Inch).Cmp(evidence.Whole(3)) < 0 {
		points = "4"
	}
	cite := evidence.Cite{Source: "NWFA guidance 2017", Standing: evidence.Published}
	if !solid {
		cite = evidence.Cite{Source: "NWFA guidance 2017 for solid wood, by analogy", Standing: evidence.Practice}
	}
	return evidence.Bound{Number: evidence.Typed(points, evidence.Points), Cite: cite}
}

// How many pieces are read on each 1000 ft2, and how many boards of each lot
// where there are several.
const (
	PerFlooring = 40
	PerSubfloor = 20
	PerJoist    = 5
	EachLot     = 10
)

// Needed is the number of pieces for an area at so many per 1000 ft2, never
// fewer than 3. It is no figure for a blank size.
func Needed(size evidence.Reading, per1000 int) evidence.Working {
	if !size.Shown() {
		return evidence.Working{}
	}
	feet := evidence.Converted(evidence.Cell("size", size), evidence.SquareFoot)
	share := evidence.Times(feet, evidence.Stated("for each ft2", evidence.Ratio(int64(per1000), 1000), evidence.None), evidence.Pieces)
	return evidence.Highest(evidence.Stated("at least", evidence.Whole(3), evidence.Pieces), evidence.RoundedUp(share))
}

const (
	noSubfloor = "no subfloor piece was read"
	noBoard    = "no board was read"
)

func enoughSubfloor(f Floor) evidence.Finding {
	if f.NoSubfloor != "" {
		return evidence.Unneeded("%s", f.NoSubfloor)
	}
	return f.tally(f.Pieces(OfSubfloor), PerSubfloor, "subfloor piece", "subfloor pieces")
}

func (f Floor) tally(things []evidence.Judged[Row], per1000 int, one, many string) evidence.Finding {
	counted, unusable := evidence.TallyOf(things, f.counts, pieceFigure)
	found := evidence.Tally{
		Counted: counted, Unusable: unusable, Needed: Needed(f.Size, per1000),
		Unit: evidence.Pieces, One: one, Many: many,
	}.Find(f.Size)
	found.Evidence = evidence.Rows(things, func(r Row) evidence.Place { return r.Place })
	return found
}

func pieceFigure(r Row) evidence.Working { return evidence.Cell("piece", r.Reading) }

func subfloorMC(f Floor) evidence.Finding {
	if f.NoSubfloor != "" {
		return evidence.Unneeded("%s", f.NoSubfloor)
	}
	items := slices.Concat(f.PieceItems(OfSubfloor, f.Subfloor)...)
	return evidence.Weigh(items, f.Acceptance, noSubfloor)
}

// subfloorSpots holds each piece against the median: where a piece was read
// twice at one time, its higher reading against the median of the lower ones.
func subfloorSpots(f Floor) evidence.Finding {
	if f.NoSubfloor != "" {
		return evidence.Unneeded("%s", f.NoSubfloor)
	}
	pieces := f.PieceItems(OfSubfloor, evidence.Limit{})
	limit := evidence.Limit{Lack: noSubfloor}
	if mid, known := median(pieces); known {
		limit = evidence.AtMost(evidence.Bound{Number: evidence.Computed(mid.Add(decimal.New(3, 0)), evidence.MC)})
	}
	items := slices.Concat(pieces...)
	for i, it := range items {
		items[i].Limit, items[i].U = limit, nil
		items[i].Says = fmt.Sprintf("%s read %s %% MC, 3 points over the median being %s %% MC", it.Name, it.Written, limit.Text())
	}
	return evidence.Weigh(items, evidence.Acceptance{}, noSubfloor)
}

// median is the middle of the pieces' readings, each of which ends within a
// few places.
func median(pieces [][]evidence.Item) (mid decimal.Decimal, known bool) {
	var values []evidence.Exact
	for _, items := range pieces {
		usable := slices.DeleteFunc(slices.Clone(items), func(it evidence.Item) bool { return it.Lack != "" })
		if len(usable) > 0 {
			values = append(values, low(usable))
		}
	}
	if len(values) == 0 {
		return mid, false
	}
	slices.SortFunc(values, evidence.Exact.Cmp)
	n := len(values)
	return evidence.Mean(values[(n-1)/2 : n/2+1]).Decimal(), true
}

func enoughBoards(f Floor) evidence.Finding {
	if f.NoFlooring != "" {
		return evidence.Unneeded("%s", f.NoFlooring)
	}
	lots := f.Lots()
	if dry := slices.ContainsFunc(lots, func(lot Lot) bool { return lot.Read > 0 }); len(lots) > 0 && !dry {
		return evidence.Unshown("no board was read again since water came")
	}
	var all []evidence.Judged[Row]
	var each []evidence.Finding
	for _, lot := range lots {
		all = append(all, lot.Boards...)
		if lot.Read == 0 { // water left it with nothing: its boards are unusable
			all = append(all, f.lost(lot)...)
			each = append(each, evidence.Unshown("%s: %s", lot.Title(), evidence.WetSince))
			continue
		}
		each = append(each, setAside(lot))
		if len(lots) > 1 {
			each = append(each, f.enoughOfLot(lot))
		}
	}
	return evidence.Worst(append([]evidence.Finding{f.tally(all, PerFlooring, "board", "boards")}, each...)...)
}

// lost are the boards of a lot that were read before it was wetted, without
// rows.
func (f Floor) lost(lot Lot) []evidence.Judged[Row] {
	ofLot := slices.DeleteFunc(f.Of(OfFlooring), func(r Row) bool { return !evidence.Same(r.Lot, lot.Name) })
	return evidence.Latest(ofLot, f.Wet, pieceName, readTime)
}

func (f Floor) enoughOfLot(lot Lot) evidence.Finding {
	counted, unusable := evidence.TallyOf(lot.Boards, f.counts, pieceFigure)
	usable := len(counted)
	enough := evidence.Finding{Outcome: evidence.Enough(usable, unusable, EachLot), Value: strconv.Itoa(usable), Limit: strconv.Itoa(EachLot), Unit: evidence.Pieces}
	enough.Worked = evidence.AtLeastSo(evidence.CountOf(evidence.Pieces, counted...), evidence.Stated("of each lot", evidence.Whole(EachLot), evidence.Pieces), 0)
	enough.Reason = fmt.Sprintf("%s: %s usable; 10 are asked for of each lot where there are several", lot.Title(), evidence.Count(usable, "board", "boards"))
	enough.Cite = evidence.Cite{Source: "10 of each lot: common practice, no source", Standing: evidence.Practice}
	enough.Evidence = evidence.Rows(lot.Boards, func(r Row) evidence.Place { return r.Place })
	return enough
}

func setAside(lot Lot) evidence.Finding {
	f := evidence.Finding{Outcome: evidence.Met, Value: strconv.Itoa(lot.SetAside), Unit: evidence.Pieces, Evidence: lot.Aside}
	f.Cite = evidence.Cite{Source: "no more than 1 in 10 set aside: common practice, no source", Standing: evidence.Practice}
	if lot.SetAside*10 > lot.Read {
		f.Outcome, f.Limit = evidence.NotMet, strconv.Itoa(lot.Read/10)
		f.Reason = fmt.Sprintf("%s: %d of %s were set aside; more than 1 in 10 speaks against the lot", lot.Title(), lot.SetAside, evidence.Count(lot.Read, "board", "boards"))
	}
	return f
}

func boardsMC(f Floor) evidence.Finding {
	switch {
	case f.NoFlooring != "":
		return evidence.Unneeded("%s", f.NoFlooring)
	case !f.Flooring.Shown():
		return evidence.Unneeded("no product states a moisture content for the flooring")
	}
	var items []evidence.Item
	for _, lot := range f.Lots() {
		items = append(items, f.eachBoard(lot)...)
	}
	return evidence.Weigh(items, f.Acceptance, noBoard)
}

// eachBoard are the judged values of a lot's boards, or that water left it
// without any.
func (f Floor) eachBoard(lot Lot) []evidence.Item {
	if len(lot.Boards) == 0 && lot.SetAside == 0 {
		return []evidence.Item{{Name: lot.Title(), Limit: f.Flooring, Lack: evidence.WetSince}}
	}
	return slices.Concat(f.BoardItems(lot, f.Flooring)...)
}

func difference(f Floor) evidence.Finding {
	if f.NoDifference != "" {
		return evidence.Unneeded("%s", f.NoDifference)
	}
	sub := SpanOf(f.PieceItems(OfSubfloor, evidence.Limit{}), noSubfloor)
	var items []evidence.Item
	for _, lot := range f.Lots() {
		items = append(items, f.apart(lot, f.Mean(lot), sub)...)
	}
	return evidence.Weigh(items, f.Acceptance, noBoard)
}
