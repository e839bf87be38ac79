package plan

import (
	"slices"
	"time"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/wood"
)

// lotWork is one lot of flooring as a plan sees it. Again says why all its
// boards are read anew: those of one visit count together.
type lotWork struct {
	name   string
	boards []thing
	more   []string
	again  string
	until  time.Time // when its visit ends; zero where it has not begun
}

func (p *planner) surveyWood() {
	f := p.Wood
	if f.NoSubfloor == "" {
		p.subfloor = survey(p.Site, f.Pieces(wood.OfSubfloor), p.viewOfWood(true))
		p.moreSubfloor = newNames("P", p.pieces(wood.PerSubfloor)-len(p.subfloor), names(p.subfloor, always))
	}
	if f.NoBelow == "" {
		p.joists = survey(p.Site, f.Pieces(wood.OfJoist), p.viewOfWood(false))
		p.moreJoists = newNames("J", p.pieces(wood.PerJoist)-len(p.joists), names(p.joists, always))
	}
	if f.NoFlooring == "" {
		p.surveyLots()
	}
}

func (p *planner) pieces(per1000 int) int {
	n, known := asking(wood.Needed(p.Wood.Size, per1000))
	if !known {
		n, _ = asking(wood.Needed(evidence.Typed("1", evidence.SquareFoot), per1000))
	}
	return n
}

func (p *planner) viewOfWood(heat bool) view[wood.Row] {
	return view[wood.Row]{
		heat: heat, row: report.WoodRow,
		read: func(r wood.Row) bool { return r.Reading.Shown() },
		blank: func(r wood.Row) []string {
			return blanks(cell{"Method", r.Method != ""}, cell{"Instrument", r.Instrument != ""})
		},
		spoil: never[wood.Row],
		lack: func(r wood.Row) string {
			if !r.Reading.Shown() || r.Method == "" {
				return ""
			}
			return r.Moisture().Lack
		},
	}
}

// surveyLots looks at the lots and shares out the boards still to be read.
func (p *planner) surveyLots() {
	lots := p.Wood.Lots()
	left, least := p.pieces(wood.PerFlooring), 0
	if len(lots) > 1 {
		least = wood.EachLot
	}
	for _, lot := range lots {
		w := lotWork{name: lot.Name, boards: survey(p.Site, lot.Boards, p.viewOfWood(true))}
		if lot.Read == 0 {
			for _, name := range p.boardNames(lot.Name) {
				w.boards = append(w.boards, thing{name: name, again: evidence.WetSince})
			}
		}
		for _, board := range w.boards {
			w.again = firstOf(w.again, board.again)
		}
		w.until = visitEnds(lot)
		n := max(0, least-len(w.boards))
		w.more = newNames("B", n, p.boardNames(lot.Name))
		left -= len(w.boards) + n
		p.lots = append(p.lots, w)
	}
	if len(lots) == 0 {
		p.lots = []lotWork{{}}
	}
	w := &p.lots[0]
	w.more = newNames("B", len(w.more)+max(0, left), p.boardNames(w.name))
}

// visitEnds is the latest time at which a board counts with those that a lot's
// last visit holds; zero where none has a time.
func visitEnds(lot wood.Lot) time.Time {
	var first time.Time
	for _, board := range lot.Boards {
		for _, r := range board.Rows {
			if r.ReadAt.Shown() && (first.IsZero() || r.ReadAt.First.Before(first)) {
				first = r.ReadAt.First
			}
		}
	}
	if first.IsZero() {
		return first
	}
	return first.Add(wood.Visit)
}

func (p *planner) boardNames(lot string) []string {
	rows := slices.DeleteFunc(slices.Clone(p.Wood.Of(wood.OfFlooring)), func(r wood.Row) bool { return !evidence.Same(r.Lot, lot) })
	boards := evidence.Latest(rows, time.Time{}, func(r wood.Row) string { return r.Piece }, func(r wood.Row) evidence.Time { return r.ReadAt })
	used := make([]string, len(boards))
	for i, board := range boards {
		used[i] = board.Name
	}
	return used
}

// wood adds what is left to read of subfloor, joists and flooring.
func (p *planner) wood() {
	t := task{
		one: "subfloor piece", many: "subfloor pieces", verb: "read", day: p.days.read, tool: aWoodMeter(),
		checks: also("subfloor-count", "subfloor-mc", "subfloor-spots", "wood-difference"),
		table:  "Wood", column: "Piece", of: wood.OfSubfloor, things: p.subfloor, more: p.moreSubfloor,
	}
	p.do(t)
	t.one, t.many, t.of = "joist", "joists", wood.OfJoist
	t.checks, t.things, t.more = []string{"joists-dry", "calibration", "reading-age"}, p.joists, p.moreJoists
	p.do(t)
	for _, lot := range p.lots {
		p.flooring(lot)
	}
}

// of names the lot behind its boards, where it has a name.
func (l lotWork) of() string {
	if l.name == "" {
		return ""
	}
	return " of lot " + l.name
}

// flooring adds what is left to read of a lot.
func (p *planner) flooring(lot lotWork) {
	t := task{
		one: "board" + lot.of(), many: "boards" + lot.of(), verb: "read", day: p.days.read, tool: aWoodMeter(),
		checks: also("flooring-count", "flooring-mc", "flooring-target", "flooring-spread", "flooring-steady", "wood-difference"),
		table:  "Wood", column: "Piece", of: wood.OfFlooring, lot: lot.name, things: lot.boards, more: lot.more,
	}
	if lot.again != "" {
		p.anew(t, lot)
		return
	}
	if len(lot.more) > 0 && !lot.until.IsZero() {
		t.until = "by " + clock(lot.until) + ", or all of the lot anew"
		if p.Area.InstallOn.Shown() {
			t.day = min(t.day, p.dayOf(lot.until))
		}
	}
	if lot.until.IsZero() && p.left(lot.boards, lot.more) {
		p.add(p.days.last, nil, "read a few "+t.many+" a first time, "+evidence.Hours(wood.Visit).Text()+" h or more before all of them (advice: flooring-steady)", "")
	}
	p.do(t)
}

// anew has every board of a lot read in one visit. Boards whose rows wait for a
// time need no other row.
func (p *planner) anew(t task, lot lotWork) {
	t.more = append(names(lot.boards, always), lot.more...)
	slices.SortStableFunc(t.more, evidence.Order)
	t.things = nil
	do := t.count() + " in one visit, " + p.with(t.tool) + ": " + lot.again
	t.more = append(names(lot.boards, func(x thing) bool { return !x.waits }), lot.more...)
	p.add(t.day, t.checks, "read "+do, do, p.newRows(t)...)
}

// asking is how many are needed, and whether that can be told.
func asking(needed evidence.Working) (n int, known bool) {
	return needed.Value.Ceil(), needed.Shown()
}
