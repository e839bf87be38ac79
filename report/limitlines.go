package report

import "firstboard/report/evidence"

// LimitLines are the limits in force for every area, whose they are, where
// they were typed, and what was looked up and not used.
func LimitLines(j Job) []LimitLine {
	var lines []LimitLine
	for _, a := range j.Areas {
		lines = append(lines, j.site(a).limitLines()...)
	}
	return lines
}

func (s Site) limitLines() []LimitLine {
	l := s.Limits
	lines := s.ends("air temperature", l.AirTemp, "", airTempMin, airTempMax)
	lines = append(lines, s.ends("air humidity", l.AirRH, "", airRHMin, airRHMax)...)
	lines = append(lines, s.ends("slab relative humidity", l.SlabRH, s.Slab.NoHoles, slabRH)...)
	lines = append(lines, s.ends("slab moisture emission", l.MVER, s.Slab.NoDishes, mver)...)
	lines = append(lines, s.ends("slab pH", l.PH, s.Slab.NoPH, pHMin, pHMax)...)
	lines = append(lines, s.ends("slab carbide (CM)", l.CM, s.Slab.NoCM, carbide)...)
	lines = append(lines, s.ends("subfloor moisture content", l.Subfloor, s.Wood.NoSubfloor, subfloorMC)...)
	lines = append(lines, s.ends("flooring moisture content", l.Flooring, s.Wood.NoFlooring, flooringMin, flooringMax)...)
	lines = append(lines, s.ends("flooring less subfloor", l.Difference, s.Wood.NoDifference, difference)...)
	lines = append(lines, s.ends("heated surface", l.SurfaceMax, s.unheated(), surfaceTemp)...)
	return lines
}

func (s Site) unheated() string {
	if s.Area.RadiantHeat != "yes" {
		return "the area is not heated"
	}
	return ""
}

// ends are the lines of one limit: its lowest and highest where they differ in
// whose they are, or why it is not needed, and the numbers not used.
func (s Site) ends(what string, l evidence.Limit, unneeded string, limits ...limitOf) []LimitLine {
	line := LimitLine{Area: s.Area.ID, What: what}
	switch {
	case unneeded != "":
		line.Note = "not needed: " + unneeded
		return []LimitLine{line}
	case !l.Shown():
		line.Note = "no limit: no product states one"
		return []LimitLine{line}
	}
	var lines []LimitLine
	for _, end := range []struct {
		word  string
		bound evidence.Bound
	}{{"at least", l.Least}, {"at most", l.Most}} {
		if end.bound.Shown() {
			lines = append(lines, s.inForce(what+", "+end.word, end.bound))
		}
	}
	if l.Lack != "" {
		line.Note = "not known: " + l.Lack
		lines = append(lines, line)
	}
	return append(lines, s.unused(what, l, limits)...)
}

func (s Site) inForce(what string, b evidence.Bound) LimitLine {
	return LimitLine{
		Area: s.Area.ID, What: what, Limit: b.Number.Written, Unit: b.Number.Unit,
		Whose: b.Whose, Cite: b.Cite, Place: b.Number.Place, Note: "in force",
	}
}

// unused are the numbers that products state and that do not govern, the words
// none, and the cells that nobody looked up where one is expected.
func (s Site) unused(what string, l evidence.Limit, limits []limitOf) []LimitLine {
	var lines []LimitLine
	for _, p := range s.stack.products() {
		for i, of := range limits {
			stated := of(p)
			line := s.inForce(what+end(i, len(limits)), p.bound(of))
			switch {
			case stated.None:
				line.Limit, line.Unit, line.Note = "none", "", "the data sheet states none"
			case stated.Blank() && s.expected(what, p):
				line.Cite, line.Note = evidence.Cite{}, "nobody looked it up"
			case !stated.Number.Shown() || governs(l, line):
				continue
			default:
				line.Note = "not used: another limit governs"
			}
			lines = append(lines, line)
		}
	}
	return lines
}

// end is the word for one end of a limit that has two.
func end(i, of int) string {
	if of < 2 {
		return ""
	}
	return [...]string{", at least", ", at most"}[i]
}

// expected says whether a data sheet of the product may be expected to speak of
// a limit: any of the slab's, the flooring of what lies under and over it. The
// air's and the flooring's bounds are the manufacturer's to state or not.
func (s Site) expected(what string, p *Product) bool {
	switch what {
	case "slab relative humidity", "slab moisture emission", "slab pH", "slab carbide (CM)":
		return true
	case "subfloor moisture content", "flooring less subfloor", "heated surface":
		return p == s.stack.flooring
	}
	return false
}

func governs(l evidence.Limit, line LimitLine) bool {
	for _, b := range []evidence.Bound{l.Least, l.Most} {
		if b.Shown() && b.Whose == line.Whose && b.Number.Place == line.Place {
			return true
		}
	}
	return false
}
