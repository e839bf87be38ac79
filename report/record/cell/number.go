package cell

import (
	"strconv"
	"strings"

	"github.com/shopspring/decimal"

	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/record/faults"
	"firstboard/report/record/sheet"
)

// Number is the number of a cell in a unit, or what is wrong with it. Comma
// says that one may stand for the point.
func Number(c *grid.Cell, unit evidence.Unit, comma bool, span grid.Span) (evidence.Reading, faults.Complaint) {
	written, wrong := writtenIn(c, unit, comma)
	if wrong.Text != "" {
		return evidence.Reading{}, wrong
	}
	r := evidence.Reading{Written: written, Value: decimal.RequireFromString(written), Unit: unit}
	return r, outside(span, r, strings.TrimSpace(c.Text), c.Kind == sheet.Percent)
}

// writtenIn is the plain decimal that a cell holds.
func writtenIn(c *grid.Cell, unit evidence.Unit, comma bool) (string, faults.Complaint) {
	inches := unit == evidence.Inch || unit == evidence.Foot
	switch clock := c.Kind == grid.DayCell || c.Kind == grid.TimeCell; {
	case clock && inches:
		return "", faults.Mistake(c.Text, "is a date, as a spreadsheet makes one of a fraction; write the fraction with its whole number, such as 0 5/8, or as 0.625")
	case clock:
		return "", faults.Mistake(c.Text, "is a date, not a number; write the number, and format the cell as one")
	}
	typed := strings.TrimSpace(c.Text)
	text := sheet.Padded(typed, int(c.Places))
	if comma && strings.Count(text, ",") == 1 && !strings.Contains(text, ".") {
		text = strings.Replace(text, ",", ".", 1)
	}
	const longest = 40
	switch {
	case evidence.Plain(text):
	case inches && Fraction(typed) != "":
		return Fraction(typed), faults.Complaint{}
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

// outside says what is wrong with a number and what to write instead, or
// nothing. A percentage is a number that its source shows with a percent sign.
func outside(s grid.Span, r evidence.Reading, typed string, percent bool) faults.Complaint {
	x := r.Value
	low := s.Least.Valid && (x.LessThan(s.Least.Decimal) || s.Above && x.Equal(s.Least.Decimal))
	high := s.Most.Valid && x.GreaterThan(s.Most.Decimal)
	switch {
	case s.Percent && !percent && x.IsPositive() && x.Cmp(decimal.NewFromInt(1)) <= 0:
		return faults.Mistake(typed, "looks like a fraction of one; write %s", x.Shift(2))
	case s.Whole && s.Most.Valid && (low || high || !x.IsInteger()):
		return faults.Mistake(typed, "is not %s or %s; write one of the two", s.Least.Decimal, s.Most.Decimal)
	case s.Whole && (low || !x.IsInteger()):
		return faults.Mistake(typed, "is not a count; write a whole number: 0, 1, 2 and so on")
	case high && r.Unit == evidence.Celsius:
		return faults.Mistake(typed, "is outside %s to %s C; is it in F? Then write the unit in the header, or leave the cell blank",
			s.Least.Decimal, s.Most.Decimal.Truncate(1))
	case s.Most.Valid && (low || high):
		return faults.Mistake(typed, "is outside %s to %s; write the number in the unit of its column, or leave the cell blank",
			s.Least.Decimal, s.Most.Decimal.Truncate(1))
	case low && s.Above:
		return faults.Mistake(typed, "is not above 0; write a number above 0, or leave the cell blank")
	case low:
		return faults.Mistake(typed, "is below 0; write a number from 0 up, or leave the cell blank")
	}
	return faults.Complaint{}
}

// Fraction is the decimal that a fraction of the trade stands for, exactly, or
// empty where it is none: 5/8 is 0.625, 2 1/4 and 2-1/4 are 2.25. Its
// denominator is a power of two, as on a tape, up to 64.
func Fraction(s string) string {
	sign := ""
	if rest, minus := strings.CutPrefix(s, "-"); minus {
		s, sign = rest, "-"
	}
	whole, part := "0", s
	if at := strings.IndexAny(s, " -"); at >= 0 {
		whole, part = s[:at], strings.TrimLeft(s[at+1:], " ")
	}
	above, below, slash := strings.Cut(part, "/")
	const most = 4 // digits of any part
	if !slash || !evidence.Digits(whole) || !evidence.Digits(above) || !evidence.Digits(below) ||
		max(len(whole), len(above), len(below)) > most {
		return ""
	}
	n, _ := strconv.Atoi(above)
	of, _ := strconv.Atoi(below)
	if of < 2 || of > 64 || of&(of-1) != 0 || n >= of {
		return ""
	}
	exact := decimal.NewFromInt(int64(n)).Div(decimal.NewFromInt(int64(of)))
	return sign + decimal.RequireFromString(whole).Add(exact).String()
}

// fractional is the number or fraction that was probably meant, or examples.
func fractional(s string) string {
	s = strings.NewReplacer(
		"\"", "", "\u2033", "", "\u201d", "", "''", "", "in.", "", "in", "", "ft", "", "\u2044", "/", "\u2013", "-",
		"\u00bc", " 1/4", "\u00bd", " 1/2", "\u00be", " 3/4", "\u215b", " 1/8", "\u215c", " 3/8", "\u215d", " 5/8",
		"\u215e", " 7/8",
	).Replace(s)
	s = strings.Join(strings.Fields(s), " ")
	if evidence.Plain(s) || Fraction(s) != "" {
		return s
	}
	if p := plainer(s); evidence.Plain(p) {
		return p
	}
	return "digits with a point or a fraction, such as 2.25 or 2 1/4"
}
