package plan

import (
	"time"

	"github.com/shopspring/decimal"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/slab"
)

// surveyHoles looks at the holes that are judged and names those still to be
// drilled. A hole at a wrong depth does not count: another takes its place.
func (p *planner) surveyHoles() {
	f := p.Slab
	if f.NoHoles != "" || f.UnfitForHoles() != "" {
		return
	}
	judged := f.JudgedHoles()
	p.sealed = map[string]time.Time{}
	var good []evidence.Judged[slab.Hole]
	for _, hole := range judged {
		if p.wrongDepth(hole) {
			p.wrong = append(p.wrong, hole.Name)
			continue
		}
		good = append(good, hole)
		for _, h := range hole.Rows {
			if h.SealedAt.Shown() && f.ReadableFrom(h).After(p.sealed[hole.Name]) {
				p.sealed[hole.Name] = f.ReadableFrom(h)
			}
		}
	}
	p.holes = survey(p.Site, good, view[slab.Hole]{
		heat: true, spoil: p.spoiledHole,
		row:  func(name string, h slab.Hole) report.JudgedRow { return report.SlabRow(name, h.ReadAt, h.Instrument) },
		read: func(h slab.Hole) bool { return h.RH.Shown() },
		blank: func(h slab.Hole) []string {
			return blanks(cell{"Depth", h.Depth.Shown()}, cell{"Sealed at", h.SealedAt.Shown()}, cell{"Temp", h.Temp.Shown()}, cell{"Instrument", h.Instrument != ""})
		},
	})
	p.moreHoles = newNames("H", p.holesToDrill(good), p.holeNames())
}

func (p *planner) wrongDepth(hole evidence.Judged[slab.Hole]) bool {
	for _, h := range hole.Rows {
		thick := h.Thickness
		if !thick.Shown() {
			thick = p.Slab.Thickness
		}
		if evidence.Measure("", h.Depth, p.Slab.DepthRange(thick)).Breaks(evidence.Acceptance{}) && h.Depth.Shown() {
			return true
		}
	}
	return false
}

// spoiledHole says why a hole has to be read again: too early, or by a probe
// that cannot be believed.
func (p *planner) spoiledHole(h slab.Hole) string {
	if h.SealedAt.Shown() && h.ReadAt.Shown() && h.ReadAt.First.Before(p.Slab.ReadableFrom(h)) {
		return "read before " + p.Slab.Wait.Number.String() + " had passed"
	}
	for _, it := range p.ProbeItems("hole "+h.Hole, h) {
		if it.Breaks(evidence.Acceptance{}) {
			return it.Says
		}
	}
	return ""
}

// holesToDrill is how many holes are still to be drilled: as many as the size
// asks for, one near each exterior wall, and one beside each discarded hole that was over
// the limit.
func (p *planner) holesToDrill(good []evidence.Judged[slab.Hole]) int {
	asked, known := asking(slab.HolesNeeded(p.Slab.Sizes...))
	if !known {
		asked, _ = asking(slab.HolesNeeded(evidence.Typed("1", evidence.SquareFoot)))
	}
	lacking, unknown := p.Slab.WallsLacking(good)
	p.unknownWall = lacking > 0 && unknown
	if !unknown {
		p.walls = lacking
	}
	return max(asked-len(good), len(p.Slab.Unreplaced())-len(names(p.holes, isOpen)), p.walls)
}

func (p *planner) holeNames() []string {
	var used []string
	for _, h := range p.Slab.Holes {
		used = append(used, h.Hole)
	}
	return used
}

// depth is how deep a hole is drilled, in words.
func (p *planner) depth() string {
	share := slab.Depth(decimal.New(100, 0), p.Slab.TwoFaces).String() + " %"
	faces := "one drying face"
	if p.Slab.TwoFaces {
		faces = "two drying faces"
	}
	l := p.Slab.DepthRange(p.Slab.Thickness)
	if !l.Shown() {
		return "at " + share + " of the slab's thickness (" + faces + ")"
	}
	ends := l.Ends()
	return evidence.Mean(ends).Text() + " " + string(l.Unit()) + " deep (" + l.String() + ": " + share + " of " + p.Slab.Thickness.String() + ", " + faces + ")"
}

// where is where the holes are drilled, in words.
func (p *planner) where() string {
	wall, scan := "", ""
	if p.walls > 0 || p.unknownWall {
		wall = "one within " + slab.NearWall().String() + " of each exterior wall that has none (write its name in Wall)"
	}
	if p.outcome("scan-probed") == evidence.NotMet {
		scan = "one at the highest scan of the bare slab"
	}
	clauses := []string{"spread over the area", wall, scan}
	for _, name := range p.Slab.Unreplaced() {
		clauses = append(clauses, "one within 3 ft of "+name)
	}
	return sentence(clauses...)
}
