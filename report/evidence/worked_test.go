package evidence_test

import (
	"testing"

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
	for name, c := range map[string]struct {
		items       []evidence.Item
		acc         evidence.Acceptance
		value, room evidence.Op
		left        string
	}{
		"one value":                    {[]evidence.Item{value("84", most, "")}, simple, evidence.OpTyped, evidence.OpLess, "1"},
		"the highest":                  {[]evidence.Item{value("80", most, ""), value("84", most, "")}, simple, evidence.OpHighest, evidence.OpLess, "1"},
		"the lowest":                   {[]evidence.Item{value("70", least, ""), value("84", least, "")}, simple, evidence.OpLowest, evidence.OpLess, "10"},
		"one value between two":        {[]evidence.Item{value("84", both, "")}, simple, evidence.OpTyped, evidence.OpLowest, "1"},
		"two values between two":       {[]evidence.Item{value("62.5", both, ""), value("84", both, "")}, simple, evidence.OpNearest, evidence.OpLowest, "1"},
		"other limits":                 {[]evidence.Item{value("80", most, ""), value("62", least, "")}, simple, evidence.OpNearest, evidence.OpLowest, "2"},
		"an uncertainty that counts":   {[]evidence.Item{value("84", most, "0.5")}, guarded, evidence.OpTyped, evidence.OpLess, "0.5"},
		"and one that does not":        {[]evidence.Item{value("84", most, "0.5")}, simple, evidence.OpTyped, evidence.OpLess, "1"},
		"none that could":              {[]evidence.Item{value("84", most, "")}, guarded, evidence.OpTyped, evidence.OpLess, "1"},
		"the same uncertainty":         {[]evidence.Item{value("80", most, "0.5"), value("84", most, "0.5")}, guarded, evidence.OpHighest, evidence.OpLess, "0.5"},
		"another uncertainty":          {[]evidence.Item{value("80", most, "5"), value("84", most, "0.5")}, guarded, evidence.OpNearest, evidence.OpLowest, "0"},
		"another that does not count":  {[]evidence.Item{value("80", most, "5"), value("84", most, "0.5")}, simple, evidence.OpHighest, evidence.OpLess, "1"},
		"between two, and it counts":   {[]evidence.Item{value("84", both, "0.5")}, guarded, evidence.OpTyped, evidence.OpLess, "0.5"},
		"between two, nothing counts":  {[]evidence.Item{value("84", both, "0")}, guarded, evidence.OpTyped, evidence.OpLowest, "1"},
		"a limit that nobody has read": {[]evidence.Item{value("84", evidence.Limit{}, "")}, simple, evidence.OpTyped, evidence.OpUnsigned, "84"},
	} {
		w := evidence.Weigh(c.items, c.acc, "").Worked
		if w.Value.Op != c.value || w.Room.Op != c.room || w.Room.Value.Text() != c.left {
			t.Errorf("%s: value by %s, room of %s by %s; want %s, %s by %s", name, w.Value.Op, w.Room.Value.Text(), w.Room.Op, c.value, c.left, c.room)
		}
	}
}
