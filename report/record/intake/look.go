package intake

import (
	"fmt"
	"slices"
	"strings"

	"firstboard/report/evidence"
)

// mention is something an export says, and the line it says it in.
type mention struct {
	line int
	text string
}

func (m mention) String() string { return fmt.Sprintf("%s in line %d", evidence.Quote(m.text), m.line) }

// survey is what all the rows of an export say of how they are written.
type survey struct {
	rows         int
	orders       dateOrder             // that every date fits
	against      map[dateOrder]mention // the first date that does not fit each
	either       mention               // the first date that fits several, as different days
	style        style                 // of the first time
	first        mention               // the first time
	comma, point mention               // the first number with each
	units        [][]unitSaid          // of each tie, from behind its numbers
}

// look goes over all the rows.
func (t export) survey(l layout, ties []tie) (survey, error) {
	from := t.lines()
	k := survey{
		orders:  yearFirst | dayFirst | monthFirst,
		against: map[dateOrder]mention{}, units: make([][]unitSaid, len(ties)),
	}
	var cells []string
	for from.next() {
		if from.number < l.first {
			continue
		}
		var ok bool
		if cells, ok = parted(from.Text(), l.sep, cells); ok && l.beyond(cells) == 0 {
			k.row(from.number, cells, ties)
		}
	}
	return k, from.err()
}

func (k *survey) row(line int, cells []string, ties []tie) {
	for i, t := range ties {
		text := t.text(cells)
		switch {
		case text == "" || t.at < 0:
		case isTime(t.Column):
			k.time(mention{line, text})
		case len(t.Units) > 0:
			k.number(i, t, mention{line, text})
		}
	}
}

// text is what a row holds for a tie.
func (t tie) text(cells []string) string {
	cell := func(at int) string {
		if at < 0 || at >= len(cells) {
			return ""
		}
		return cells[at]
	}
	switch day := cell(t.at); {
	case t.at < 0:
		return t.same
	case t.clock < 0 || day == "":
		return day
	default:
		return strings.TrimSpace(day + " " + cell(t.clock))
	}
}

func (k *survey) time(at mention) {
	st, ok := parseStamp(at.text)
	if !ok || !st.dated || !st.timed {
		return
	}
	if k.rows++; k.rows == 1 {
		k.style, k.first = st.style, at
	}
	if st.counted {
		return
	}
	for _, o := range k.orders.orders() {
		if st.fits&o == 0 {
			k.orders &^= o
			k.against[o] = at
		}
	}
	if k.either.line == 0 && st.fits&k.orders != 0 && st.differs(st.fits&k.orders) {
		k.either = at
	}
}

// differs says whether a date is another day in some of these orders than in
// others.
func (st stamp) differs(in dateOrder) bool {
	all := in.orders()
	for _, o := range all[1:] {
		y, m, d := st.day(o)
		if a, b, c := st.day(all[0]); a != y || b != m || c != d {
			return true
		}
	}
	return false
}

func (k *survey) number(i int, t tie, at mention) {
	number, unit := measure(at.text)
	switch comma, point := strings.Contains(number, ","), strings.Contains(number, "."); {
	case comma && point:
	case comma && k.comma.line == 0:
		k.comma = mention{at.line, number}
	case point && k.point.line == 0:
		k.point = mention{at.line, number}
	}
	u, ok := evidence.UnitMeant(unit, t.Units)
	if ok && !slices.ContainsFunc(k.units[i], func(s unitSaid) bool { return s.unit == u }) {
		k.units[i] = append(k.units[i], unitSaid{u, "from " + at.String()})
	}
}

// measure parts a number from the unit written behind it, and writes its sign
// as a record does.
func measure(text string) (number, unit string) {
	text = strings.Replace(text, "\u2212", "-", 1)
	end := strings.LastIndexAny(text, "0123456789") + 1
	return strings.TrimPrefix(text[:end], "+"), strings.TrimSpace(text[end:])
}
