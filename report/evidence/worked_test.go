package evidence_test

import (
	"testing"
	"time"

	"firstboard/report/evidence"
)

// One end held against all values is worked with their highest or lowest alone;
// values of several limits, or of other uncertainties that count, each with its
// room. Uncertainty counts where acceptance is guarded, and only where there is any.
func TestWorkingsTakeTheFormTheyNeed(t *testing.T) {
	most := evidence.AtMost(evidence.Bound{Number: evidence.Typed("85", evidence.RH)})
	least := evidence.AtLeast(evidence.Bound{Number: evidence.Typed("60", evidence.RH)})
	both := evidence.Limit{Least: least.Least, Most: most.Most}
	value := func(n string, l evidence.Limit, u string) evidence.Item {
		it := evidence.Measure("hole H"+n, read(n, evidence.RH, "J"+n), l)
		if u != "" {
			it.U = evidence.Within(evidence.Typed(u, evidence.RH).Exact())
		}
		return it
	}
	simple, guarded := evidence.Acceptance{}, evidence.Acceptance{Guarded: true}
	all := func(items ...evidence.Item) []evidence.Item { return items }
	const (
		typed, less, unsigned    = evidence.OpTyped, evidence.OpLess, evidence.OpUnsigned
		highest, lowest, nearest = evidence.OpHighest, evidence.OpLowest, evidence.OpNearest
	)
	for name, c := range map[string]struct {
		items       []evidence.Item
		acc         evidence.Acceptance
		value, room evidence.Op
		left        string
	}{
		"one value":                    {all(value("84", most, "")), simple, typed, less, "1"},
		"the highest":                  {all(value("80", most, ""), value("84", most, "")), simple, highest, less, "1"},
		"the lowest":                   {all(value("70", least, ""), value("84", least, "")), simple, lowest, less, "10"},
		"one value between two":        {all(value("84", both, "")), simple, typed, lowest, "1"},
		"two values between two":       {all(value("62.5", both, ""), value("84", both, "")), simple, nearest, lowest, "1"},
		"other limits":                 {all(value("80", most, ""), value("62", least, "")), simple, nearest, lowest, "2"},
		"an uncertainty that counts":   {all(value("84", most, "0.5")), guarded, typed, less, "0.5"},
		"and one that does not":        {all(value("84", most, "0.5")), simple, typed, less, "1"},
		"none that could":              {all(value("84", most, "")), guarded, typed, less, "1"},
		"the same uncertainty":         {all(value("80", most, "0.5"), value("84", most, "0.5")), guarded, highest, less, "0.5"},
		"another uncertainty":          {all(value("80", most, "5"), value("84", most, "0.5")), guarded, nearest, lowest, "0"},
		"another that does not count":  {all(value("80", most, "5"), value("84", most, "0.5")), simple, highest, less, "1"},
		"between two, and it counts":   {all(value("84", both, "0.5")), guarded, typed, less, "0.5"},
		"between two, nothing counts":  {all(value("84", both, "0")), guarded, typed, lowest, "1"},
		"a limit that nobody has read": {all(value("84", evidence.Limit{}, "")), simple, typed, unsigned, "84"},
	} {
		w := evidence.Weigh(c.items, c.acc, "").Worked
		if w.Value.Op != c.value || w.Room.Op != c.room || w.Room.Value.Text() != c.left {
			t.Errorf("%s: value by %s, room of %s by %s; want %s, %s by %s", name, w.Value.Op, w.Room.Value.Text(), w.Room.Op, c.value,
				c.left, c.room)
		}
	}
}

// Of values with limits of their own the one with the least room is told, of equal
// rooms the first.
func TestTheNearestValueIsTold(t *testing.T) {
	most := evidence.AtMost(evidence.Bound{Number: evidence.Typed("85", evidence.RH)})
	least := evidence.AtLeast(evidence.Bound{Number: evidence.Typed("60", evidence.RH)})
	dry := evidence.Measure("hole H1", read("62", evidence.RH, "J1"), least)
	wet := evidence.Measure("hole H2", read("84", evidence.RH, "J2"), most)
	level := evidence.Measure("hole H3", read("83", evidence.RH, "J3"), most)
	for _, c := range []struct {
		items []evidence.Item
		want  string
	}{
		{[]evidence.Item{dry, wet}, "84"},
		{[]evidence.Item{wet, dry}, "84"},
		{[]evidence.Item{dry, level}, "62"},
		{[]evidence.Item{level, dry}, "83"},
	} {
		if w := evidence.Weigh(c.items, evidence.Acceptance{}, "").Worked; w.Value.Value.Text() != c.want {
			t.Errorf("of %s and %s %s is told", c.items[0].Written, c.items[1].Written, w.Value.Value.Text())
		}
	}
}

// A day begins at 0:00 of the clock that times are read from.
func TestDaysAndMomentsAreOfOneClock(t *testing.T) {
	zone := time.FixedZone("", -5*60*60)
	noon := time.Date(2026, 3, 1, 12, 0, 0, 0, zone)
	day := evidence.OnDay("on", evidence.Date{Day: evidence.DayOf(time.Date(2026, 3, 4, 0, 0, 0, 0, time.UTC))})
	w := evidence.Less(day, evidence.Moment("read", evidence.Time{First: noon, Last: noon}))
	if got := w.Value.Text(); got != "60" {
		t.Errorf("from noon on the 1st to the 4th pass %s h, want 60", got)
	}
}

// Days are those of the calendar, however few hours lie between.
func TestDaysBetweenAreOfTheCalendar(t *testing.T) {
	at := func(day, hour, minute int) evidence.Working {
		clock := time.Date(2026, 3, day, hour, minute, 0, 0, time.UTC)
		return evidence.Moment("", evidence.Time{First: clock, Last: clock})
	}
	for _, c := range []struct {
		from, to evidence.Working
		want     string
	}{
		{at(1, 0, 0), at(1, 23, 59), "0"},
		{at(1, 23, 59), at(2, 0, 0), "1"},
		{at(1, 12, 0), at(31, 12, 0), "30"},
		{at(2, 0, 0), at(1, 23, 59), "-1"},
	} {
		if got := evidence.DaysBetween(c.from, c.to); got.Value.Text() != c.want || got.Unit != evidence.DayUnit {
			t.Errorf("%s days, want %s", got.Value.Text(), c.want)
		}
	}
}

// What lies at an end lies inside.
func TestInsideHoldsItsEnds(t *testing.T) {
	number := func(n string) evidence.Working { return evidence.Cell("", evidence.Typed(n, evidence.MC)) }
	var values []evidence.Working
	for _, n := range []string{"5.9", "6", "7", "9", "9.1"} {
		values = append(values, number(n))
	}
	if got := evidence.Inside(evidence.Pieces, number("6"), number("9"), values...).Value.Text(); got != "3" {
		t.Errorf("%s lie from 6 to 9, want 3", got)
	}
}

// A figure is of the unit of what it is made of.
func TestFiguresKeepTheirUnit(t *testing.T) {
	one := evidence.Stated("", evidence.Whole(1), evidence.MC)
	for _, w := range []evidence.Working{
		evidence.Total(one), evidence.MeanOf(one), evidence.Highest(one), evidence.Total(one, one), evidence.Highest(one, one),
	} {
		if w.Unit != evidence.MC {
			t.Errorf("%s is in %q", w.Op, w.Unit)
		}
	}
	if w := evidence.Total(); w.Unit != evidence.None {
		t.Errorf("nothing is in %q", w.Unit)
	}
}
