package wood

import (
	"fmt"
	"slices"
	"strconv"

	"firstboard/report/evidence"
)

// How many pieces are read on each part of a floor, never fewer than the least, how
// many boards of each lot where there are several, and of how many boards of a
// visit one may be set aside.
const (
	PerFlooring = 40
	PerSubfloor = 20
	PerJoist    = 5
	PartFT2     = 1000
	LeastPieces = 3
	EachLot     = 10
	OneAsideIn  = 10
)

// forEach is how many pieces are read on each part of a floor.
func forEach(n int) string { return fmt.Sprintf("%d for each %d ft2", n, PartFT2) }

const noSubfloor = "no subfloor piece was read"

// NoBoard is why there is no board to judge.
func (f Floor) NoBoard() string {
	if len(f.sentBack) > 0 {
		return "every board read was set aside"
	}
	return "no board was read"
}

// Needed is the number of pieces for an area at so many per 1000 ft2, never
// fewer than 3. It is no figure for a blank size.
func Needed(size evidence.Reading, per1000 int) evidence.Working {
	if !size.Shown() {
		return evidence.Working{}
	}
	feet := evidence.Converted(evidence.Cell("size", size), evidence.SquareFoot)
	share := evidence.Times(feet, evidence.Stated("for each ft2", evidence.Ratio(int64(per1000), PartFT2), evidence.None),
		evidence.Pieces)
	return evidence.Highest(evidence.Stated("at least", evidence.Whole(LeastPieces), evidence.Pieces),
		evidence.RoundedUp(share))
}

func enoughSubfloor(f Floor) evidence.Finding {
	if f.NoSubfloor != "" {
		return evidence.Unneeded("%s", f.NoSubfloor)
	}
	return f.tally(f.Pieces(OfSubfloor), PerSubfloor, "subfloor piece", "subfloor pieces")
}

func (f Floor) tally(things []evidence.Judged[Row], per1000 int, one, many string) evidence.Finding {
	t := evidence.Tally{Needed: Needed(f.Size, per1000), Unit: evidence.Pieces, One: one, Many: many}
	t.Counted, t.Unusable = evidence.TallyOf(things, Row.usable, Row.figure)
	found := t.Find(f.Size)
	found.Evidence = evidence.Rows(things, rowPlace)
	return found
}

func enoughBoards(f Floor) evidence.Finding {
	if f.NoFlooring != "" {
		return evidence.Unneeded("%s", f.NoFlooring)
	}
	lots := f.Lots()
	if len(lots) == 0 {
		return evidence.Unshown("%s", f.NoBoard())
	}
	if !slices.ContainsFunc(lots, func(lot Lot) bool { return lot.Read > 0 }) {
		return evidence.Unshown("no board was read again since water came")
	}
	var all []evidence.Judged[Row]
	var each []evidence.Finding
	for _, lot := range lots {
		all = append(append(all, lot.Boards...), lot.lost...)
		if lot.Read == 0 { // water left it with nothing: its boards are unusable
			each = append(each, evidence.Unshown("%s: %s", lot.Title(), evidence.WetSince))
			continue
		}
		each = append(each, fewAside(lot))
		if len(lots) > 1 {
			each = append(each, enoughOfLot(lot))
		}
	}
	return evidence.Worst(append([]evidence.Finding{f.tally(all, PerFlooring, "board", "boards")}, each...)...)
}

// enoughOfLot asks for 10 boards of a lot.
func enoughOfLot(lot Lot) evidence.Finding {
	each := evidence.Stated("of each lot", evidence.Whole(EachLot), evidence.Pieces)
	t := evidence.Tally{Needed: each, Unit: evidence.Pieces, One: "board", Many: "boards"}
	t.Counted, t.Unusable = evidence.TallyOf(lot.Boards, Row.usable, Row.figure)
	enough := t.Find(evidence.Reading{})
	enough.Reason = fmt.Sprintf("%s: %s usable; %d are asked for of each lot where there are several",
		lot.Title(), evidence.Count(len(t.Counted), "board", "boards"), EachLot)
	enough.Cite = evidence.Cite{
		Source:   fmt.Sprintf("%d of each lot: common practice, no source", EachLot),
		Standing: evidence.Practice,
	}
	enough.Evidence = evidence.Rows(lot.Boards, rowPlace)
	return enough
}

// fewAside asks that no more than 1 in 10 boards of a visit were set aside.
func fewAside(lot Lot) evidence.Finding {
	read := evidence.Stated("boards of the visit", evidence.Whole(lot.Read), evidence.Pieces)
	aside := evidence.Stated("boards set aside", evidence.Whole(lot.SetAside), evidence.Pieces)
	most := evidence.DividedBy(read, evidence.Stated("1 in", evidence.Whole(OneAsideIn), evidence.None),
		evidence.Pieces)
	f := evidence.Finding{
		Value: strconv.Itoa(lot.SetAside), Limit: strconv.Itoa(lot.Read / OneAsideIn), Unit: evidence.Pieces,
		Evidence: lot.Aside,
		Worked:   evidence.Worked{Value: aside, Most: most, Room: evidence.Less(most, aside)},
		Reason: fmt.Sprintf("%d of the %s read of %s were set aside; no more than 1 in %d may be",
			lot.SetAside, evidence.Count(lot.Read, "board", "boards"), lot.Title(), OneAsideIn),
		Cite: evidence.Cite{
			Source:   fmt.Sprintf("no more than 1 in %d set aside: common practice, no source", OneAsideIn),
			Standing: evidence.Practice,
		},
	}
	f.Outcome = f.Worked.Outcome()
	return f
}
