package plan

import (
	"slices"
	"time"

	"firstboard/report/evidence"
	"firstboard/report/instruments"
	"firstboard/wood"
)

// lotWork is one lot of flooring as a plan sees it. Again says why all its
// boards are read anew: those of one visit count together.
type lotWork struct {
	name     string
	boards   []thing
	more     []string
	again    string
	over     []string  // the checks whose limit its mean or its spread is over
	apart    bool      // the subfloor lies too far from it
	until    time.Time // when its visit ends; zero where it has not begun
	read     int       // boards of its last visit, those set aside included
	setAside int
}

// isAnew says whether all its boards are read once more.
func (l lotWork) isAnew() bool { return l.again != "" || len(l.over) > 0 }

func (p *planner) surveyWood() {
	f := p.Wood
	if f.NoSubfloor == "" {
		p.subfloor = survey(p, f.Pieces(wood.OfSubfloor), p.viewOfWood(wood.OfSubfloor, f.Of(wood.OfSubfloor)))
	}
	if f.NoBelow == "" && !f.BelowUnknown {
		p.joists = survey(p, f.Pieces(wood.OfJoist), p.viewOfWood(wood.OfJoist, f.Of(wood.OfJoist)))
	}
	if f.NoFlooring == "" {
		p.surveyLots()
		p.surveyDifference()
	}
}

// surveyDifference has the subfloor come nearer to the boards where it is the one
// that lies too far away.
func (p *planner) surveyDifference() {
	if !slices.ContainsFunc(p.lots, func(lot lotWork) bool { return lot.apart }) {
		return
	}
	for i := range p.subfloor {
		x := &p.subfloor[i]
		x.over, x.open, x.again = append(x.over, "wood-difference"), false, ""
	}
}

// nameWood names the pieces and boards still to be read.
func (p *planner) nameWood() {
	f := p.Wood
	if f.NoSubfloor == "" {
		p.moreSubfloor = p.taken.more(headSubfloor, max(0, p.pieces(wood.PerSubfloor)-len(p.subfloor)))
	}
	if f.NoBelow == "" && !f.BelowUnknown {
		p.moreJoists = p.taken.more(headJoist, max(0, p.pieces(wood.PerJoist)-len(p.joists)))
	}
	if f.NoFlooring == "" {
		p.nameBoards()
	}
}

func (p *planner) pieces(per1000 int) int {
	n := wood.Needed(p.Wood.Size, per1000)
	if !n.Shown() {
		n = wood.Needed(evidence.Typed("1", evidence.SquareFoot), per1000)
	}
	return n.Value.Ceil()
}

func (p *planner) viewOfWood(of string, rows []wood.Row) view[wood.Row] {
	return view[wood.Row]{
		heat: of != wood.OfJoist, recounts: of == wood.OfSubfloor, tool: aWoodMeter(), row: instruments.WoodRow,
		spoil: never[wood.Row],
		all:   rows,
		id:    func(r wood.Row) (string, string) { return r.Area, r.Piece },
		place: func(r wood.Row) evidence.Place { return r.Place },
		read:  func(r wood.Row) bool { return r.Reading.Shown() },
		blank: func(r wood.Row) []string {
			return blanks(cell{"Method", r.Method != ""}, cell{"Instrument", r.Instrument != ""})
		},
		lack: func(r wood.Row) string {
			if !r.Reading.Shown() || r.Method == "" {
				return ""
			}
			return r.Moisture().Lack
		},
	}
}

// surveyLots looks at the lots.
func (p *planner) surveyLots() {
	rows := evidence.ByKey(p.Wood.Of(wood.OfFlooring), func(r wood.Row) string { return r.Lot })
	cited := p.citedOfLots()
	for _, lot := range p.Wood.Lots() {
		w := lotWork{name: lot.Name, until: visitEnds(lot), read: lot.Read, setAside: lot.SetAside}
		ofLot := rows[evidence.Key(lot.Name)]
		w.boards = survey(p, lot.Boards, p.viewOfWood(wood.OfFlooring, ofLot))
		if lot.Read == 0 {
			for _, board := range evidence.Group(ofLot, func(r wood.Row) string { return r.Piece }) {
				w.boards = append(w.boards, thing{name: board.Name, area: p.Area.ID, id: board.Name, again: evidence.WetSince})
			}
		}
		w.over = p.lotOver(lot, cited)
		w.apart = len(w.over) == 0 && p.isBroken("wood-difference") && p.isSubfloorOff(lot)
		p.lots = append(p.lots, w)
	}
}

// ofLots are the checks of a lot as a whole.
func ofLots() []string {
	return []string{"flooring-mc", "flooring-target", "flooring-spread", "wood-difference"}
}

// citedOfLots are the checks of lots whose limit is broken, with the rows that each
// cites.
func (p *planner) citedOfLots() map[string]map[string]bool {
	all := map[string]map[string]bool{}
	for _, id := range ofLots() {
		if p.isBroken(id) {
			all[id] = map[string]bool{}
			for _, at := range p.finding(id).Evidence {
				all[id][evidence.RowKey(at)] = true
			}
		}
	}
	return all
}

// lotOver are the checks of a lot as a whole whose limit it is over.
func (p *planner) lotOver(lot wood.Lot, cited map[string]map[string]bool) []string {
	var all []string
	for _, id := range ofLots() {
		places, broken := cited[id]
		if !broken || id == "wood-difference" && len(all) == 0 && p.isSubfloorOff(lot) {
			continue
		}
		if len(places) == 0 || slices.ContainsFunc(lot.Boards, func(board evidence.Judged[wood.Row]) bool {
			return slices.ContainsFunc(board.Rows, func(r wood.Row) bool { return places[evidence.RowKey(r.Place)] })
		}) {
			all = append(all, id)
		}
	}
	return all
}

// nameBoards shares out the boards still to be read.
func (p *planner) nameBoards() {
	left, least := p.pieces(wood.PerFlooring), 0
	if len(p.lots) > 1 {
		least = wood.EachLot
	}
	if len(p.lots) == 0 {
		p.lots = []lotWork{{}}
	}
	for i := range p.lots {
		w := &p.lots[i]
		culled := max(0, w.setAside*wood.OneAsideIn-w.read)
		w.more = p.taken.more(headBoard, max(0, least-len(w.boards), culled))
		left -= len(w.boards) + len(w.more)
	}
	p.lots[0].more = append(p.lots[0].more, p.taken.more(headBoard, max(0, left))...)
}

// shareBoards says which lots are read anew: the boards of a visit count
// together.
func (p *planner) shareBoards() {
	for i := range p.lots {
		w := &p.lots[i]
		for _, board := range w.boards {
			w.again = firstOf(w.again, board.again)
		}
		if !w.isAnew() && len(w.more) > 0 && !w.until.IsZero() && p.soonest().After(w.until) {
			w.again = "the visit that the others belong to is over"
		}
	}
}

// soonest is when a board can be read at the earliest.
func (p *planner) soonest() time.Time {
	return latest(latest(p.now, p.kept.from), latest(p.youngWood(), p.warm()))
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

// wood adds what is left to read of subfloor, joists and flooring.
func (p *planner) wood() {
	t := task{
		one: "subfloor piece", many: "subfloor pieces", verb: "read", who: installer, stage: ofSubfloor,
		tool: aWoodMeter(),
		checks: []string{
			"subfloor-count", "subfloor-mc", "subfloor-spots", "wood-difference", "heat-run",
			"calibration", "reading-age",
		},
		table: "Wood", column: "Piece", of: wood.OfSubfloor, things: p.subfloor, more: p.moreSubfloor,
		from: latest(p.youngWood(), p.warm()), mend: p.driedWood,
	}
	p.do(t)
	t.one, t.many, t.of, t.stage = "joist", "joists", wood.OfJoist, ofJoists
	t.checks, t.things, t.more = []string{"joists-dry", "calibration", "reading-age"}, p.joists, p.moreJoists
	t.from = p.youngWood()
	p.do(t)
	for _, lot := range p.lots {
		p.flooring(lot)
	}
}

// called names the lot behind its boards, where it has a name.
func (l lotWork) called() string {
	if l.name == "" {
		return ""
	}
	return " of lot " + l.name
}

// flooring adds what is left to read of a lot.
func (p *planner) flooring(lot lotWork) {
	t := task{
		one: "board", many: "boards", verb: "read", who: installer, stage: ofBoards, tool: aWoodMeter(),
		checks: also("flooring-count", "flooring-mc", "flooring-target", "flooring-spread", "flooring-steady",
			"wood-difference"),
		table: "Wood", column: "Piece", of: wood.OfFlooring, lot: lot.name, things: lot.boards, more: lot.more,
		from: latest(p.youngWood(), p.warm()),
	}
	switch {
	case len(lot.over) > 0:
		p.settled(t, lot)
	case lot.again != "":
		p.anew(t, lot, "read", lot.again)
	default:
		if len(lot.more) > 0 && !lot.until.IsZero() {
			t.how = "by " + clock(lot.until) + ", or all of the lot anew"
		}
		if lot.until.IsZero() {
			t.how = deliveries(lot)
		}
		p.do(t)
	}
}

// deliveries says how the boards of a plan without any on record are chosen.
func deliveries(lot lotWork) string {
	if lot.name != "" {
		return ""
	}
	return "from as many cartons as there are, each delivery by its name in Lot, " +
		evidence.Count(wood.EachLot, "board", "boards") + " or more of each where there are several; " +
		"a few of them " + evidence.Hours(wood.Visit).Text() + " h or more before show whether they are steady (advice)"
}

// anew has every board of a lot read in one visit. Boards whose rows wait for a
// time need no other row.
func (p *planner) anew(t task, lot lotWork, verb, why string) {
	all := append(names(lot.boards, always), lot.more...)
	slices.SortStableFunc(all, evidence.Order)
	a := p.reading(t, len(all))
	a.Short = verb + " " + t.called(all) + lot.called() + " in one visit"
	a.How = sentence(p.with(t.tool), why)
	for _, x := range lot.boards {
		if x.waits {
			a.Fills = append(a.Fills, Fill{Table: t.table, Area: x.area, Name: x.id})
			continue
		}
		a.from = latest(a.from, after(x.to))
		a.Rows = append(a.Rows, p.row(t, x.id, "again: "+why))
	}
	a.Rows = append(a.Rows, p.newRows(t)...)
	p.add(a)
}
