package record

import (
	"strings"

	"github.com/shopspring/decimal"

	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/record/faults"
	"firstboard/report/record/sheet"
)

// entry is a number as it stands in a cell.
type entry struct {
	text   string
	kind   grid.CellKind
	places uint8
}

// mostKnown is how many numbers of a column are kept: a logger writes the same
// ones over and over.
const mostKnown = 4096

// number reads the number of a cell, in the unit of its column.
func (d *decoder) number(c *grid.Cell, rule rule) evidence.Reading {
	is := entry{c.Text, c.Kind, c.Places}
	r, known := d.known[is]
	if !known {
		var wrong faults.Complaint
		if r, wrong = d.measured(c, rule); wrong.Text != "" {
			d.complain(wrong)
			return evidence.Reading{}
		}
		if len(d.known) < mostKnown && d.known != nil {
			d.known[is] = r
		}
	}
	r.Place = d.kept(d.cell())
	c.Kind, c.Text, c.Places = grid.NumberCell, r.Written, uint8(min(places(r.Written), 255))
	return r
}

// measured is the number of a cell without its place, or what is wrong with it.
func (d *decoder) measured(c *grid.Cell, rule rule) (evidence.Reading, faults.Complaint) {
	written, wrong := d.written(c)
	if wrong.Text != "" {
		return evidence.Reading{}, wrong
	}
	r := evidence.Reading{Written: written, Value: decimal.RequireFromString(written), Unit: d.unit}
	return r, outside(rule(r.Unit), r, strings.TrimSpace(c.Text), c.Kind == sheet.Percent)
}

// written is the plain decimal that a cell holds.
func (d *decoder) written(c *grid.Cell) (string, faults.Complaint) {
	inches := d.unit == evidence.Inch || d.unit == evidence.Foot
	switch clock := c.Kind == grid.DayCell || c.Kind == grid.TimeCell; {
	case clock && inches:
		return "", faults.Mistake(c.Text, "is a date, as a spreadsheet makes one of a fraction; write the fraction with its whole number, such as 0 5/8, or as 0.625")
	case clock:
		return "", faults.Mistake(c.Text, "is a date, not a number; write the number, and format the cell as one")
	}
	typed := strings.TrimSpace(c.Text)
	text := sheet.Padded(typed, int(c.Places))
	if d.src.Comma && strings.Count(text, ",") == 1 && !strings.Contains(text, ".") {
		text = strings.Replace(text, ",", ".", 1)
	}
	const longest = 40
	switch {
	case evidence.Plain(text):
	case inches && fraction(typed) != "":
		return fraction(typed), faults.Complaint{}
	case inches:
		return "", faults.Mistake(typed, "is not a plain number or a fraction; write %s", fractional(typed))
	case plainer(text) == "":
		return "", faults.Mistake(typed, "is not a plain number; write "+anyNumber)
	default:
		return "", faults.Mistake(typed, "is not a plain number; write %s", plainer(text))
	}
	if len(text) > longest {
		return "", faults.Mistake(text, "has more digits than any reading; write the number as read")
	}
	return text, faults.Complaint{}
}

func places(written string) int {
	_, after, _ := strings.Cut(written, ".")
	return len(after)
}

// anyNumber is what to write where nobody can tell what was meant.
const anyNumber = "digits with a point, such as 84.7"

// plainer is the plain decimal that was probably meant, or empty. A comma before
// three digits may part thousands or stand for the point.
func plainer(s string) string {
	s = strings.NewReplacer(" ", "", "\u00a0", "", "\u2212", "-", "'", "", "%", "", "+", "").Replace(s)
	whole := strings.ReplaceAll(s, ",", "")
	pointed := strings.Replace(s, ",", ".", 1)
	switch {
	case thousands(s) && evidence.Plain(pointed):
		return whole + " or " + pointed
	case thousands(s):
		return whole
	case evidence.Plain(pointed):
		return pointed
	}
	const sane = 20
	if x, err := decimal.NewFromString(s); err == nil && max(x.Exponent(), -x.Exponent()) < sane && len(s) < sane {
		return x.String()
	}
	return ""
}

// thousands says whether commas part s into groups of three digits.
func thousands(s string) bool {
	whole, part, point := strings.Cut(s, ".")
	groups := strings.Split(strings.TrimPrefix(whole, "-"), ",")
	for i, g := range groups {
		if !evidence.Digits(g) || len(g) > 3 || i > 0 && len(g) < 3 {
			return false
		}
	}
	return len(groups) > 1 && (!point || evidence.Digits(part))
}
