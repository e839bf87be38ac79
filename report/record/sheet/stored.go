package sheet

import (
	"math"
	"strconv"
	"strings"
	"time"

	"github.com/shopspring/decimal"

	"firstboard/report/evidence"
	"firstboard/report/grid"
)

// exactDigits is how many digits a spreadsheet keeps of a number. It may
// store up to 17 to name the float next to it.
const exactDigits = 15

// meant is the plain decimal that a spreadsheet means by a stored number:
// 84.7 by 84.700000000000003.
func meant(stored string) (string, bool) {
	if evidence.Plain(stored) && len(stored) <= exactDigits &&
		(stored[0] != '0' || len(stored) == 1 || stored[1] == '.') {
		return stored, true
	}
	if stored == "" || strings.Trim(stored, "0123456789.+-eE") != "" {
		return "", false
	}
	f, err := strconv.ParseFloat(stored, 64)
	if err != nil {
		return "", false
	}
	rounded, err := strconv.ParseFloat(strconv.FormatFloat(f, 'e', exactDigits-1, 64), 64)
	if err != nil {
		return "", false
	}
	return strconv.FormatFloat(rounded, 'f', -1, 64), true
}

// numberCell is a stored number as its format shows it to be: a number, a
// percentage, a day or a time.
func (w *workbook) numberCell(stored string, f format) (grid.Cell, bool) {
	text, ok := meant(stored)
	c := grid.Cell{Kind: grid.NumberCell, Text: text}
	switch {
	case !ok:
		return c, false
	case f == percentage:
		c.Kind, c.Text = Percent, decimal.RequireFromString(text).Shift(2).String()
	case f > decimals:
		c.Places = uint8(f - decimals)
	case f == dayFormat, f == clockFormat:
		if t, ok := w.clock(stored); ok {
			return clockCell(t, f), true
		}
	}
	return c, true
}

// Padded restores the zeros that were typed and that a stored number cannot
// keep: 84.7 shown with two decimals was typed as 84.70. No digit is rounded.
func Padded(text string, places int) string {
	whole, fraction, _ := strings.Cut(text, ".")
	if missing := places - len(fraction); missing > 0 {
		return whole + "." + fraction + strings.Repeat("0", missing)
	}
	return text
}

// WithoutZeros is a stored number as an identifier, without the zeros that its
// writer may have left behind its point: 7.0 is 7.
func WithoutZeros(text string) string {
	if !strings.Contains(text, ".") {
		return text
	}
	return strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
}

// clock is the time that a stored number of days stands for, to the nearest
// second. Before March 1900 spreadsheets disagree, so there is none.
func (w *workbook) clock(stored string) (time.Time, bool) {
	const day, most = 24 * 60 * 60, 2900000
	base, least := time.Date(1899, time.December, 30, 0, 0, 0, 0, time.UTC), 61.0
	if w.since04 {
		base, least = time.Date(1904, time.January, 1, 0, 0, 0, 0, time.UTC), 0
	}
	days, err := strconv.ParseFloat(stored, 64)
	if err != nil || days < least || days > most {
		return time.Time{}, false
	}
	return time.Unix(base.Unix()+int64(math.Round(days*day)), 0).UTC(), true
}

// clockCell is a day where the format shows no time and there is none.
func clockCell(t time.Time, f format) grid.Cell {
	if f == dayFormat && t.Equal(t.Truncate(24*time.Hour)) {
		return grid.Cell{Kind: grid.DayCell, Text: t.Format(time.DateOnly)}
	}
	return grid.Cell{Kind: grid.TimeCell, Text: evidence.ClockText(t)}
}

// isoCell is a cell stored as an ISO 8601 text: a day, or a day and a time.
func isoCell(stored string, f format) grid.Cell {
	stored = strings.TrimSpace(stored)
	for _, layout := range []string{"2006-01-02T15:04:05", "2006-01-02T15:04"} {
		if t, err := time.Parse(layout, strings.TrimSuffix(stored, "Z")); err == nil {
			return clockCell(t.Round(time.Second), f)
		}
	}
	return grid.Cell{Kind: grid.TextCell, Text: stored}
}
