package limits

import (
	"cmp"
	"slices"
	"strings"

	"firstboard/report/evidence"
	"firstboard/report/lists"
)

// Line is one limit that was held against an area, and whose it is.
type Line struct {
	Area  string
	What  string
	Limit string // as stated: "75", "60 to 80"
	Unit  evidence.Unit
	Whose string // a product, or nobody's where it is the check's own
	Cite  evidence.Cite
	Place evidence.Place // where it was typed; nil for a default
	Note  string
}

// Lines are the limits in force for the area, whose they are, where they were
// typed, and what was looked up and not used.
func (f Floor) Lines() []Line {
	return slices.Concat(lists.Each(Kinds(), f.linesOf)...)
}

// linesOf are the lines of one limit: its ends in force, or why nothing is held
// against it, and what products state beside.
func (f Floor) linesOf(k Kind) []Line {
	line := Line{Area: f.Area, What: k.What}
	l := *k.among(&f.Limits)
	if k.unneeded != nil {
		if why := k.unneeded(f); why != "" {
			line.Note = "not needed: " + why
			return []Line{line}
		}
	}
	if !l.Shown() {
		line.Note = "no limit: no product states one"
		return append([]Line{line}, f.unused(k, l)...)
	}
	var lines []Line
	for _, end := range []struct {
		word  string
		bound evidence.Bound
	}{{"at least", l.Least}, {"at most", l.Most}} {
		if end.bound.Shown() {
			lines = append(lines, f.inForce(k.What+", "+end.word, end.bound))
		}
	}
	if l.Lack != "" {
		line.Note = "not known: " + l.Lack
		lines = append(lines, line)
	}
	return append(lines, f.unused(k, l)...)
}

func (f Floor) inForce(what string, b evidence.Bound) Line {
	return Line{
		Area: f.Area, What: what, Limit: b.Number.Written, Unit: b.Number.Unit,
		Whose: b.Whose, Cite: b.Cite, Place: b.Number.Place, Note: "in force",
	}
}

// unused are the numbers that products state and that do not govern, the words
// none, and the cells that were not looked up where a limit is expected.
func (f Floor) unused(k Kind, l evidence.Limit) []Line {
	var lines []Line
	for _, p := range f.Products() {
		for _, c := range k.Columns() {
			stated := c.Of(p)
			line := f.inForce(k.What+k.end(c), p.bound(c))
			switch {
			case stated.None:
				line.Limit, line.Unit, line.Note = "none", "", "the data sheet states none"
			case stated.Blank() && k.expected(f, p):
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
func (k Kind) end(c Column) string {
	return lists.If(len(k.Columns()) < 2, "", lists.If(c.Name == k.Least.Name, ", at least", ", at most"))
}

func governs(l evidence.Limit, line Line) bool {
	return slices.ContainsFunc([]evidence.Bound{l.Least, l.Most}, func(b evidence.Bound) bool {
		return b.Shown() && b.Whose == line.Whose && b.Number.Place == line.Place
	})
}

// LookUp are the limits of the area's products that were not looked up: cells
// that hold neither a number nor none.
func (f Floor) LookUp() []string {
	var all []string
	for _, p := range f.Products() {
		var columns []string
		for _, k := range Kinds() {
			for _, c := range k.Columns() {
				if k.expected(f, p) && c.Of(p).Blank() {
					columns = append(columns, c.Name)
				}
			}
		}
		if len(columns) > 0 {
			all = append(all, p.ID+" ("+cmp.Or(p.DataSheet, "no data sheet named")+"): "+strings.Join(columns, ", "))
		}
	}
	return all
}
