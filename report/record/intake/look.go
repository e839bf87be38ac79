package intake

import (
	"fmt"
	"slices"
	"strings"
	"time"

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
	units        [][]unitMention       // of each tie, from behind its numbers
}

type unitMention struct {
	unit evidence.Unit
	at   mention
}

// look goes over all the rows.
func (t export) survey(l layout, ties []tie) (survey, error) {
	from, err := t.lines()
	if err != nil {
		return survey{}, err
	}
	k := survey{
		orders:  yearFirst | dayFirst | monthFirst,
		against: map[dateOrder]mention{}, units: make([][]unitMention, len(ties)),
	}
	var cells []string
	for from.next() {
		if from.number < l.first {
			continue
		}
		var ok bool
		if cells, ok = parted(from.text(), l.sep, cells); ok && l.beyond(cells) == 0 {
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
	if ok && !slices.ContainsFunc(k.units[i], func(m unitMention) bool { return m.unit == u }) {
		k.units[i] = append(k.units[i], unitMention{u, at})
	}
}

// measure parts a number from the unit written behind it, and writes its sign
// as a record does.
func measure(text string) (number, unit string) {
	text = strings.Replace(text, "\u2212", "-", 1)
	end := strings.LastIndexAny(text, "0123456789") + 1
	return strings.TrimPrefix(text[:end], "+"), strings.TrimSpace(text[end:])
}

// order is the one that all dates stand in, or what was told.
func (k survey) order(file, told string) (dateOrder, error) {
	left := k.orders.orders()
	switch {
	case k.style.counted:
		return yearFirst, nil
	case told != "":
		return toldOrder(told)
	case k.rows == 0:
		return 0, fmt.Errorf("%s: no row holds a day and a time of day that can be read; write them such as 2026-03-04 08:30", file)
	case len(left) == 0:
		return 0, k.mixed(file)
	case len(left) > 1 && k.either.line > 0:
		return 0, k.ambiguous(file, left)
	}
	return left[0], nil
}

// telling is the time that settled the order of the dates.
func (k survey) telling() mention {
	last := k.first
	for _, m := range k.against {
		if m.line > last.line {
			last = m
		}
	}
	return last
}

func toldOrder(told string) (dateOrder, error) {
	var names []string
	for _, o := range (yearFirst | dayFirst | monthFirst).orders() {
		name := strings.ReplaceAll(o.String(), " ", "-")
		if told == name {
			return o, nil
		}
		names = append(names, name)
	}
	return 0, fmt.Errorf("--time-format %s: there is no such format; write %s", evidence.Quote(told),
		evidence.Either(names))
}

func (k survey) mixed(file string) error {
	var lines []mention
	for _, m := range k.against {
		lines = append(lines, m)
	}
	slices.SortFunc(lines, func(a, b mention) int { return a.line - b.line })
	return fmt.Errorf("%s: its dates do not stand in one order: %s and %s; export it with one order, or add --time-format to leave out the rows in another",
		file, lines[0], lines[len(lines)-1])
}

func (k survey) ambiguous(file string, left []dateOrder) error {
	st, _ := parseStamp(k.either.text)
	var readings, flags []string
	for _, o := range left {
		y, m, d := st.day(o)
		readings = append(readings, fmt.Sprintf("%04d-%02d-%02d (%s)", y, m, d, o))
		flags = append(flags, "--time-format "+strings.ReplaceAll(o.String(), " ", "-"))
	}
	return fmt.Errorf("%s: the order of its dates cannot be told, as every one could be read so: %s is %s; add %s",
		file, k.either, evidence.Either(readings), evidence.Either(flags))
}

// settle gives each tie its unit, from what was told, the header, the line
// below it and the cells, which must not gainsay each other.
func (b *matcher) settle(k survey) error {
	if k.comma.line > 0 && k.point.line > 0 {
		return fmt.Errorf("%s: numbers have a comma (%s) and a point (%s); export it with one of them", b.file, k.comma,
			k.point)
	}
	for i := range b.ties {
		t := &b.ties[i]
		if t.at >= 0 && len(t.Units) > 0 {
			if err := b.unit(t, k.units[i]); err != nil {
				return err
			}
		}
		if t.at >= 0 && isTime(t.Column) {
			t.zone = b.zone(*t)
		}
	}
	return nil
}

// zone is how far ahead of UTC the header of a time says it is.
func (b *matcher) zone(t tie) *time.Duration {
	names := b.names[t.at]
	if t.clock >= 0 {
		names += " " + b.names[t.clock]
	}
	for _, word := range strings.FieldsFunc(names, func(r rune) bool { return strings.ContainsRune(" ,;()[]_", r) }) {
		if !strings.HasPrefix(word, "UTC") && !strings.HasPrefix(word, "GMT") {
			continue
		}
		if ahead, ok := aheadOfUTC(word); ok {
			return &ahead
		}
	}
	return nil
}

func (b *matcher) unit(t *tie, cells []unitMention) error {
	name := unitsIn(t.Column, b.names[t.at])
	below := ""
	if t.at < len(b.units) {
		below = b.units[t.at]
	}
	under, isUnder := evidence.UnitMeant(below, t.Units)
	var said []unitSaid
	if t.how != "" {
		said = append(said, unitSaid{t.unit, t.how})
	}
	if len(name) == 1 {
		said = append(said, unitSaid{name[0], "from the header"})
	}
	if isUnder {
		said = append(said, unitSaid{under, "from the line below the header"})
	}
	for _, m := range cells {
		said = append(said, unitSaid{m.unit, "from " + m.at.String()})
	}
	if len(said) == 0 && len(t.Units) == 1 {
		said = append(said, unitSaid{t.Units[0], "its only unit"})
	}
	if len(said) == 0 {
		return b.fail(t.at, "its unit is not told; add --column %s", evidence.Either(t.ways(b.tellable(t.at))))
	}
	for _, s := range said[1:] {
		if s.unit != said[0].unit {
			return b.fail(t.at, "it is in %s (%s) and in %s (%s); mend the file, or export it with one unit",
				said[0].unit, said[0].how, s.unit, s.how)
		}
	}
	t.unit, t.how = said[0].unit, said[0].how
	return nil
}

// unitSaid is a unit and what says so.
type unitSaid struct {
	unit evidence.Unit
	how  string
}

// ways are what --column may say of a column in each of its units.
func (t tie) ways(name string) []string {
	var all []string
	base, _ := unbracketed(name)
	for _, u := range t.Units {
		all = append(all, evidence.Quote(strings.ToLower(t.Name)+"="+evidence.Heading(base, u)))
	}
	return all
}
