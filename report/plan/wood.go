package plan

import (
	"slices"
	"time"

	"firstboard/report/evidence"
	"firstboard/report/instruments"
	"firstboard/report/lists"
	"firstboard/wood"
)

// lotWork is one lot of flooring as a plan sees it. Again says why all its
// boards are read anew: those of one visit count together.
type lotWork struct {
	task
	again  string
	over   []string  // the checks whose limit its mean or its spread is over
	apart  bool      // the subfloor lies too far from it
	until  time.Time // when its visit ends; zero where it has not begun
	culled int       // how many more boards of it are read where too many of its last visit were set aside
}

// isAnew says whether all its boards are read once more.
func (l lotWork) isAnew() bool { return l.again != "" || len(l.over) > 0 }

func (p *planner) surveyWood() {
	f := p.Wood
	t := task{
		verb: "read", who: installer, tool: aWoodMeter(), table: "Wood", column: "Piece", from: p.youngWood(),
		mend: p.driedWood,
	}
	if f.NoBelow == "" && !f.BelowUnknown {
		t.one, t.many, t.of, t.stage = "joist", "joists", wood.OfJoist, ofJoists
		t.checks = []string{"joists-dry", "calibration", "reading-age"}
		t.asked, t.head = p.pieces(wood.PerJoist), "J"
		p.joists = survey(p, t, f.Pieces(t.of), f.Of(t.of), seeWood)
	}
	if f.NoSubfloor == "" {
		t.one, t.many, t.of, t.stage = "subfloor piece", "subfloor pieces", wood.OfSubfloor, ofSubfloor
		t.from, t.heated, t.recounts = latest(t.from, p.warm()), true, true
		t.asked, t.head = p.pieces(wood.PerSubfloor), "SF"
		t.checks = []string{
			"subfloor-count", "subfloor-mc", "subfloor-spots", "wood-difference", "heat-run", "calibration",
			"reading-age",
		}
		p.subfloor = survey(p, t, f.Pieces(t.of), f.Of(t.of), seeWood)
	}
	if f.NoFlooring == "" {
		p.surveyLots()
		p.surveyDifference()
		p.nameBoards()
	}
}

// surveyDifference has the subfloor come nearer to the boards where it is the one
// that lies too far away.
func (p *planner) surveyDifference() {
	if !slices.ContainsFunc(p.lots, func(lot lotWork) bool { return lot.apart }) {
		return
	}
	for i := range p.subfloor.things {
		x := &p.subfloor.things[i]
		x.over, x.open, x.again = append(x.over, "wood-difference"), false, ""
	}
}

func (p *planner) pieces(per1000 int) int {
	needed := func(size ...evidence.Reading) evidence.Working { return wood.Needed(size[0], per1000) }
	return asked(needed, p.Wood.Size)
}

func seeWood(r wood.Row) seen {
	s := seen{
		area: r.Area, id: r.Piece, row: instruments.WoodRow("", r), read: r.Reading.Shown(),
		blank: blanks(cell{"Method", r.Method != ""}),
	}
	if s.read && r.Method != "" {
		s.lack = r.Moisture().Lack
	}
	return s
}

// surveyLots looks at the lots.
func (p *planner) surveyLots() {
	rows := evidence.ByKey(p.Wood.Of(wood.OfFlooring), func(r wood.Row) string { return r.Lot })
	cited := p.citedOfLots()
	for _, lot := range p.Wood.Lots() {
		w := lotWork{until: visitEnds(lot), culled: lot.SetAside*wood.OneAsideIn - lot.Read}
		ofLot := rows[evidence.Key(lot.Name)]
		w.task = survey(p, p.ofBoards(lot.Name), lot.Boards, ofLot, seeWood)
		if lot.Read == 0 {
			for _, board := range evidence.Group(ofLot, func(r wood.Row) string { return r.Piece }) {
				w.things = append(w.things, thing{name: board.Name, area: p.Area.ID, id: board.Name, again: evidence.WetSince})
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
		p.lots = []lotWork{{task: p.ofBoards("")}}
	}
	for i := range p.lots {
		w := &p.lots[i]
		w.more = p.taken.more("B", max(least-len(w.things), w.culled))
		left -= len(w.things) + len(w.more)
	}
	p.lots[0].more = append(p.lots[0].more, p.taken.more("B", left)...)
}

// shareBoards says which lots are read anew: the boards of a visit count
// together.
func (p *planner) shareBoards() {
	soonest := latest(latest(p.now, p.kept), latest(p.youngWood(), p.warm()))
	for i := range p.lots {
		w := &p.lots[i]
		for _, board := range w.things {
			w.again = firstOf(w.again, board.again)
		}
		if !w.isAnew() && len(w.more) > 0 && !w.until.IsZero() && soonest.After(w.until) {
			w.again = "the visit that the others belong to is over"
		}
	}
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
	return lists.If(first.IsZero(), first, first.Add(wood.Visit))
}

// wood adds what is left to read of subfloor, joists and flooring.
func (p *planner) wood() {
	p.do(p.subfloor)
	p.do(p.joists)
	for _, lot := range p.lots {
		p.flooring(lot)
	}
}

// ofBoards is the task of reading the boards of a lot.
func (p *planner) ofBoards(lot string) task {
	return task{
		one: "board", many: "boards", verb: "read", who: installer, stage: ofBoards, tool: aWoodMeter(), heated: true,
		checks: also("flooring-count", "flooring-mc", "flooring-target", "flooring-spread", "flooring-steady",
			"wood-difference"),
		table: "Wood", column: "Piece", of: wood.OfFlooring, lot: lot, from: latest(p.youngWood(), p.warm()),
	}
}

// ofLot names the lot behind its boards, where it has a name.
func (t task) ofLot() string {
	return lists.If(t.lot == "", "", " of lot "+t.lot)
}

// flooring adds what is left to read of a lot.
func (p *planner) flooring(lot lotWork) {
	switch {
	case len(lot.over) > 0:
		p.settled(lot)
	case lot.again != "":
		p.anew(lot.task, lot.again)
	case lot.until.IsZero():
		lot.how = deliveries(lot.lot)
		p.do(lot.task)
	default:
		if len(lot.more) > 0 {
			lot.how = "by " + clock(lot.until) + ", or all of the lot again"
		}
		p.do(lot.task)
	}
}

// deliveries says how the boards of a plan without any on record are chosen.
func deliveries(lot string) string {
	if lot != "" {
		return ""
	}
	return "from as many cartons as there are, each delivery by its name in Lot, " +
		evidence.Count(wood.EachLot, "board", "boards") + " or more of each where there are several; " +
		"a few of them " + evidence.Hours(wood.Visit).Text() + " h or more before show whether they are steady (advice)"
}

// anew has every board of a lot read in one visit. Boards whose rows wait for a
// time need no other row.
func (p *planner) anew(t task, why string) {
	all := append(names(t.things), t.more...)
	slices.SortStableFunc(all, evidence.Order)
	a := p.reading(t, len(all))
	a.Short = t.verb + " " + t.called(all) + t.ofLot() + " in one visit"
	a.How = sentence(p.with(t.tool), why)
	for _, x := range t.things {
		if x.waits {
			a.Fills = append(a.Fills, t.fill(x))
			continue
		}
		a.from = latest(a.from, after(x.to))
		a.Rows = append(a.Rows, p.row(t, x.id, "again: "+why))
	}
	a.Rows = append(a.Rows, p.newRows(t)...)
	p.add(a)
}
