package plan

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"github.com/shopspring/decimal"

	"firstboard/report/evidence"
	"firstboard/report/instruments"
	"firstboard/report/lists"
	"firstboard/slab"
)

// surveyHoles looks at the holes that are judged. A hole at a wrong depth does
// not count: another takes its place.
func (p *planner) surveyHoles() {
	f := p.Slab
	if f.NoHoles != "" || f.UnfitForHoles() != "" {
		return
	}
	p.sealed = map[string]time.Time{}
	var good, wrong []evidence.Judged[slab.Hole]
	for _, hole := range f.JudgedHoles() {
		rows := p.placed(hole).Rows // water restarts no wait
		if p.wrongDepth(rows) {
			wrong = append(wrong, hole)
			continue
		}
		good = append(good, hole)
		for _, h := range rows {
			if h.SealedAt.Shown() {
				p.sealed[hole.Name] = latest(p.sealed[hole.Name], f.ReadableFrom(h))
			}
		}
	}
	t := p.onSlab(task{
		one: "hole", many: "holes", verb: "read", tool: anRHProbe(), checks: holeIDs(), recounts: true,
		table: "Slab RH", column: "Hole", mend: p.driedHoles, planned: true,
		how: "humidity and the temperature of the concrete, " + f.Wait.Number.String() + " after sealing or later",
	})
	p.holes, p.wrong = survey(p, t, good, f.Holes, p.seeHole), survey(p, t, wrong, f.Holes, p.seeHole).things
}

func (p *planner) seeHole(h slab.Hole) seen {
	return seen{
		area: h.Area, id: h.Hole, row: instruments.HoleRow("", h), read: h.RH.Shown(), spoiled: p.spoiltHole(h),
		early: !p.Slab.MayHaveWaited(h),
		blank: blanks(cell{"Depth", h.Depth.Shown()}, cell{"Sealed at", h.SealedAt.Shown()},
			cell{"Temp", h.Temp.Shown()}),
	}
}

func (p *planner) wrongDepth(rows []slab.Hole) bool {
	return slices.ContainsFunc(rows, func(h slab.Hole) bool {
		thick := lists.If(h.Thickness.Shown(), h.Thickness, p.Slab.Thickness)
		return h.Depth.Shown() && evidence.Measure("", h.Depth, p.Slab.DepthRange(thick)).Breaks(evidence.Acceptance{})
	})
}

// spoiltHole says why a hole has to be read again: too early, by a probe that
// cannot be believed, or so low that the probe failed.
func (p *planner) spoiltHole(h slab.Hole) string {
	if h.SealedAt.Shown() && h.ReadAt.Shown() && h.ReadAt.First.Before(p.Slab.ReadableFrom(h)) {
		return "read before " + p.Slab.Wait.Number.String() + " had passed"
	}
	if h.RH.Shown() && h.RH.Exact().Cmp(slab.LeastRH().Exact()) < 0 {
		return "it read under " + slab.LeastRH().String() + ": the probe or its seal failed"
	}
	if !h.ReadAt.Shown() {
		return ""
	}
	return p.ofEach("spoiled", anRHProbe(), instruments.HoleRow("", h), func(id string) string {
		h.Instrument = id
		return p.spoiltProbe(h)
	})
}

// spoiltProbe says why the probe of a hole cannot be believed.
func (p *planner) spoiltProbe(h slab.Hole) string {
	items := p.ProbeItems("hole "+h.Hole, h)
	for _, it := range items {
		switch {
		case !it.Breaks(evidence.Acceptance{}):
		case it.Limit.Unit() == evidence.Hour:
			return "read more than " + it.Limit.String() + " after the last check of " + h.Instrument
		default:
			return it.Says
		}
	}
	if p.Disagrees(h) {
		return "a check of " + h.Instrument + " does not agree with its standard"
	}
	meter, _ := p.Job.Instruments.Find(h.Instrument)
	lacking := func(it evidence.Item) bool { return it.Lack != "" }
	if meter.Has(evidence.Probe) && slices.ContainsFunc(items, lacking) {
		return "no check of " + meter.ID + " before the reading is on record (one that was made and is not there will do)"
	}
	return ""
}

// nameHoles names the holes still to be drilled: as many as the size asks for,
// one at each exterior wall that has none, and one beside each discarded hole
// that was over the limit.
func (p *planner) nameHoles() {
	f := p.Slab
	if f.NoHoles != "" || f.UnfitForHoles() != "" {
		return
	}
	p.walls, p.unknownWall = p.wallsLacking()
	open := lists.Where(p.holes.things, isOpen)
	more := max(asked(slab.HolesNeeded, p.Slab.Sizes...)-len(p.holes.things), len(p.replaced())-len(open), p.walls)
	p.holes.more = p.taken.more("H", more)
}

// replaced are the holes beside which another must be sealed: those discarded
// over the limit, and those at a wrong depth that are over it or do not say.
func (p *planner) replaced() []string {
	all := lists.Each(p.Slab.Unreplaced(), func(name string) string {
		return strings.TrimPrefix(name, "discarded hole ")
	})
	for _, x := range p.wrong {
		if slices.ContainsFunc(p.rowsOf(x), func(h slab.Hole) bool {
			it := evidence.Measure("", h.RH, p.Slab.RH)
			it.U = p.Job.Instruments.U(h.Instrument, evidence.RH)
			return !it.Meets(p.Slab.Acceptance)
		}) {
			all = append(all, x.name)
		}
	}
	return all
}

// rowsOf are all rows of a hole on record.
func (p *planner) rowsOf(x thing) []slab.Hole {
	return lists.Where(p.Slab.Holes, func(h slab.Hole) bool {
		return evidence.Same(h.Area, x.area) && evidence.Same(h.Hole, x.id)
	})
}

// asked is how many are asked for on the area's size, or on a small one where
// that is blank.
func asked(needed func(...evidence.Reading) evidence.Working, sizes ...evidence.Reading) int {
	n := needed(sizes...)
	if !n.Shown() {
		n = needed(evidence.Typed("1", evidence.SquareFoot))
	}
	return n.Value.Ceil()
}

// wallsLacking are how many exterior walls no hole stands at, and the holes that
// may stand at one: the distance or the name of the wall is not written down.
func (p *planner) wallsLacking() (lacking int, unknown []string) {
	var good []evidence.Judged[slab.Hole]
	for _, hole := range p.Slab.JudgedHoles() {
		if slices.ContainsFunc(p.wrong, func(x thing) bool { return x.name == hole.Name }) {
			continue
		}
		hole = p.placed(hole)
		good = append(good, hole)
		if _, open := p.Slab.WallsLacking([]evidence.Judged[slab.Hole]{hole}); open {
			unknown = append(unknown, hole.Name)
		}
	}
	if lacking, _ = p.Slab.WallsLacking(good); lacking == 0 {
		return 0, nil
	}
	return max(0, lacking-len(unknown)), unknown
}

// placed is a hole with the rows that tell its place: where none of them is
// judged, those from before.
func (p *planner) placed(hole evidence.Judged[slab.Hole]) evidence.Judged[slab.Hole] {
	if len(hole.Rows) == 0 {
		hole.Rows = p.rowsOf(thing{area: p.Area.ID, id: hole.Name})
	}
	return hole
}

// depth is how deep a hole is drilled, in words.
func (p *planner) depth() string {
	share := slab.Depth(decimal.New(100, 0), p.Slab.TwoFaces).String() + " %"
	faces := lists.If(p.Slab.TwoFaces, "two drying faces", "one drying face")
	l := p.Slab.DepthRange(p.Slab.Thickness)
	if !l.Shown() {
		return "at " + share + " of the slab's thickness (" + faces + ")"
	}
	return evidence.Mean(l.Ends()).Text() + " " + string(l.Unit()) + " deep (" + inward(l) + ": " + share + " of " +
		p.Slab.Thickness.String() + ", " + faces + ")"
}

// inward is a range of depths as somebody who drills reads it: whole millimeters
// or hundredths of an inch, rounded so that what lies within them is in range.
func inward(l evidence.Limit) string {
	places, scale := 2, evidence.Whole(100)
	switch l.Unit() {
	case evidence.Millimeter:
		places, scale = 0, evidence.Whole(1)
	case evidence.Centimeter:
		places, scale = 1, evidence.Whole(10)
	case evidence.Meter:
		places, scale = 3, evidence.Whole(1000)
	}
	ends, zero := l.Ends(), evidence.Whole(0)
	low := evidence.Whole(ends[0].Mul(scale).Ceil()).Over(scale)
	high := zero.Sub(evidence.Whole(zero.Sub(ends[1].Mul(scale)).Ceil()).Over(scale))
	return low.Fixed(places) + " to " + high.Fixed(places) + " " + string(l.Unit())
}

// where is where the holes are drilled, in words.
func (p *planner) where() string {
	wall := ""
	switch {
	case p.walls == 1:
		wall = "one within " + slab.NearWall().String() + " of an exterior wall"
	case p.walls > 1:
		wall = fmt.Sprintf("%d within %s of exterior walls, a different one each (Wall)", p.walls, slab.NearWall())
	}
	scanned := p.finding("scan-probed").Outcome == evidence.NotMet
	clauses := []string{"spread over the area", wall, lists.If(scanned, "one at the highest scan of the bare slab", "")}
	for _, name := range p.replaced() {
		clauses = append(clauses, "one within "+slab.Reach().String()+" of "+name)
	}
	return sentence(clauses...)
}
