package intake

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"time"

	"firstboard/report/evidence"
	"firstboard/report/lists"
)

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
	lines := slices.SortedFunc(maps.Values(k.against), func(a, b mention) int { return a.line - b.line })
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

func (b *matcher) unit(t *tie, cells []unitSaid) error {
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
	said = append(said, cells...)
	switch {
	case len(said) > 0:
	case len(t.Units) == 1:
		said = append(said, unitSaid{t.Units[0], "its only unit"})
	default:
		return b.fail(t.at, "its unit is not told; add --column %s", evidence.Either(t.ways(b.tellable(t.at))))
	}
	for _, s := range said[1:] {
		if s.unit != said[0].unit {
			return b.fail(t.at, "it is in %s (%s) and in %s (%s); correct the file, or export it with one unit",
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
	base, _ := unbracketed(name)
	return lists.Each(t.Units, func(u evidence.Unit) string {
		return evidence.Quote(strings.ToLower(t.Name) + "=" + evidence.Heading(base, u))
	})
}
