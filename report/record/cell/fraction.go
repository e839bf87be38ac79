package cell

import (
	"strconv"
	"strings"

	"github.com/shopspring/decimal"

	"firstboard/report/evidence"
)

// fraction is the decimal that a fraction of the trade stands for, exactly, or
// empty where it is none: 5/8 is 0.625, 2 1/4 and 2-1/4 are 2.25. Its
// denominator is a power of two, as on a tape, up to 64.
func fraction(s string) string {
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
	if evidence.Plain(s) || fraction(s) != "" {
		return s
	}
	if p := plainer(s); evidence.Plain(p) {
		return p
	}
	return "digits with a point or a fraction, such as 2.25 or 2 1/4"
}
