package report

import "firstboard/report/evidence"

// LimitLines are the limits in force for every area, whose they are, where
// they were typed, and what was looked up and not used.
func LimitLines(all []Decision) []LimitLine {
	var lines []LimitLine
	for _, d := range all {
		lines = append(lines, d.Site.limitLines()...)
	}
	return lines
}

func (s Site) limitLines() []LimitLine {
	var lines []LimitLine
	for _, k := range LimitKinds() {
		lines = append(lines, s.linesOf(k)...)
	}
	return lines
}

// linesOf are the lines of one limit: its ends in force, or why nothing is held
// against it, and what products state beside.
func (s Site) linesOf(k LimitKind) []LimitLine {
	line := LimitLine{Area: s.Area.ID, What: k.What}
	l := *k.inForce(&s.Limits)
	if k.unneeded != nil {
		if why := k.unneeded(s); why != "" {
			line.Note = "not needed: " + why
			return []LimitLine{line}
		}
	}
	if !l.Shown() {
		line.Note = "no limit: no product states one"
		return append([]LimitLine{line}, s.unused(k, l)...)
	}
	var lines []LimitLine
	for _, end := range []struct {
		word  string
		bound evidence.Bound
	}{{"at least", l.Least}, {"at most", l.Most}} {
		if end.bound.Shown() {
			lines = append(lines, s.inForce(k.What+", "+end.word, end.bound))
		}
	}
	if l.Lack != "" {
		line.Note = "not known: " + l.Lack
		lines = append(lines, line)
	}
	return append(lines, s.unused(k, l)...)
}

func (s Site) inForce(what string, b evidence.Bound) LimitLine {
	return LimitLine{
		Area: s.Area.ID, What: what, Limit: b.Number.Written, Unit: b.Number.Unit,
		Whose: b.Whose, Cite: b.Cite, Place: b.Number.Place, Note: "in force",
	}
}

// unused are the numbers that products state and that do not govern, the words
// none, and the cells that were not looked up where a limit is expected.
func (s Site) unused(k LimitKind, l evidence.Limit) []LimitLine {
	var lines []LimitLine
	for _, p := range s.system.products() {
		for _, c := range k.Columns() {
			stated := c.Of(p)
			line := s.inForce(k.What+k.end(c), p.bound(c))
			switch {
			case stated.None:
				line.Limit, line.Unit, line.Note = "none", "", "the data sheet states none"
			case stated.Blank() && k.expected(s, p):
				line.Cite, line.Note = evidence.Cite{}, "not looked up"
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
func (k LimitKind) end(c LimitColumn) string {
	switch {
	case len(k.Columns()) < 2:
		return ""
	case c.Name == k.Least.Name:
		return ", at least"
	}
	return ", at most"
}

func governs(l evidence.Limit, line LimitLine) bool {
	for _, b := range []evidence.Bound{l.Least, l.Most} {
		if b.Shown() && b.Whose == line.Whose && b.Number.Place == line.Place {
			return true
		}
	}
	return false
}
