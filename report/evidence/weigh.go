package evidence

import (
	"cmp"
	"fmt"
	"strings"
)

// Acceptance is how a reading is compared with its limit: as read, or, where
// Guarded, with the instrument's uncertainty counted against it. Agreed says
// who agreed the rule and when, in words; empty where nobody is named.
type Acceptance struct {
	Guarded bool
	Agreed  string
}

// Uncertainty is an expanded uncertainty (k = 2) in the unit of the limit it
// is used with. Where it is not Known, guarded acceptance cannot be shown.
type Uncertainty struct {
	Value Exact
	Known bool
}

// Item is one judged value: what it is called, the value in its limit's unit
// as typed and exactly, and its place. Lack says why it cannot be used. Says,
// where given, is the clause that tells the value.
type Item struct {
	Name    string
	Says    string
	Written string
	Value   Exact
	Work    Working // how the value came about
	Limit   Limit
	U       *Uncertainty
	Lack    string
	Place   Place
}

// Measure is the item of a reading held against a limit.
func Measure(name string, r Reading, l Limit) Item {
	it := Item{Name: name, Limit: l, Place: r.Place}
	if !r.Shown() {
		it.Lack = "no reading"
		return it
	}
	u := l.Unit()
	if !l.Least.Shown() && !l.Most.Shown() {
		u = r.Unit
	}
	it = it.By(Converted(Cell(name, r), u))
	it.Written = r.WrittenIn(u, l.Ends()...)
	if r.Unit != u {
		it.Says = fmt.Sprintf("%s, %s, which is %s", name, r, it.Amount())
	}
	return it
}

// By is the item of a figure worked out: its value, and how it is written
// against the item's limit.
func (it Item) By(w Working) Item {
	it.Work, it.Value, it.Written = w, w.Value, w.Value.Text(it.Limit.Ends()...)
	return it
}

// Figure is the value as people read it: as typed, or rounded to what stands
// on its side of the limit.
func (it Item) Figure() string {
	if it.Work.Op == OpTyped {
		return it.Written
	}
	return it.Value.Short(it.Limit.Ends()...)
}

// Amount is the figure with its unit.
func (it Item) Amount() string { return join(it.Figure(), it.Limit.Unit()) }

// worked is how the value came about, or the value alone where that has no
// form of its own.
func (it Item) worked() Working {
	if it.Work.Shown() {
		return it.Work
	}
	return Stated(it.Name, it.Value, it.Limit.Unit())
}

// usable says whether the item can be compared at all.
func (it Item) usable(acc Acceptance) bool {
	return it.Lack == "" && (!acc.Guarded || it.U == nil || it.U.Known)
}

func (it Item) lack(acc Acceptance) string {
	if it.Lack != "" {
		return it.Lack
	}
	if !it.usable(acc) {
		return "guarded acceptance needs the uncertainty of its instrument, and none is stated"
	}
	return it.Limit.Lack
}

// margin is the distance to the nearest end, below zero when it is broken,
// with the uncertainty counted where acceptance is guarded; and that end.
func (it Item) margin(acc Acceptance) (room Exact, end Bound, bounded bool) {
	l, u := it.Limit, it.Limit.Unit()
	if l.Most.Shown() {
		room, end, bounded = l.Most.Number.In(u).Sub(it.Value), l.Most, true
	}
	if l.Least.Shown() {
		if low := it.Value.Sub(l.Least.Number.In(u)); !bounded || low.Cmp(room) < 0 {
			room, end, bounded = low, l.Least, true
		}
	}
	if acc.Guarded && it.U != nil {
		room = room.Sub(it.U.Value)
	}
	return room, end, bounded
}

// Meets says whether the item can be compared and meets its limit.
func (it Item) Meets(acc Acceptance) bool { return it.lack(acc) == "" && !it.Breaks(acc) }

// Breaks says whether the item can be compared and breaks its limit.
func (it Item) Breaks(acc Acceptance) bool {
	room, _, bounded := it.margin(acc)
	return it.usable(acc) && bounded && room.Sign() < 0
}

// Weigh answers a check on judged values, each against its own limit: not met
// if any usable one breaks it; otherwise not shown if any is unusable or
// there is none (none says what is missing); otherwise met. The worst value
// stands in the finding.
func Weigh(items []Item, acc Acceptance, none string) Finding {
	if len(items) == 0 {
		return Finding{Reason: none}
	}
	ordered, nBroken, nUsable := parted(items, acc)
	broken, good, usable, lacking := ordered[:nBroken], ordered[nBroken:nUsable], ordered[:nUsable], ordered[nUsable:]
	f := answer(broken, lacking, good, usable, acc)
	f.Worked = workedOf(usable, len(lacking), acc)
	return f
}

// parted are the items that break their limit, then those that meet it, up to
// usable, then those that cannot be compared.
func parted(items []Item, acc Acceptance) (ordered []Item, broken, usable int) {
	outcomes := make([]Outcome, len(items))
	for i, it := range items {
		switch {
		case it.Breaks(acc):
			outcomes[i] = NotMet
		case it.lack(acc) == "":
			outcomes[i] = Met
		}
	}
	ordered = make([]Item, 0, len(items))
	take := func(o Outcome) int {
		for i := range items {
			if outcomes[i] == o {
				ordered = append(ordered, items[i])
			}
		}
		return len(ordered)
	}
	broken, usable = take(NotMet), take(Met)
	take(NotShown)
	return ordered, broken, usable
}

func answer(broken, lacking, good, usable []Item, acc Acceptance) Finding {
	if len(broken) > 0 {
		f := tell(NotMet, broken, usable, acc)
		if also := others(worst(broken), broken, noun(usable)); also != "" {
			f.Reason += "; also " + broken[0].Limit.beyond() + ": " + also
		}
		return f
	}
	if len(lacking) > 0 {
		f := lackFinding(lacking, acc)
		if len(good) > 0 {
			f.Value = worst(good).Written
		}
		return f
	}
	return tell(Met, good, usable, acc)
}

func tell(o Outcome, items, usable []Item, acc Acceptance) Finding {
	w := worst(items)
	_, end, _ := w.margin(acc)
	f := Finding{Outcome: o, Value: w.Written, Reason: w.reason(usable, acc)}
	f.Evidence = Places(items, w)
	return f.by(end).Against(w.Limit)
}

// worst is the value nearest to its limit, or farthest beyond it, as read.
func worst(items []Item) Item {
	at := 0
	least, _, _ := items[0].margin(Acceptance{})
	for i := 1; i < len(items); i++ {
		room, _, _ := items[i].margin(Acceptance{})
		if c := room.Cmp(least); c < 0 || c == 0 && items[i].before(items[at]) {
			at, least = i, room
		}
	}
	return items[at]
}

// before says which of two equally near items is told: the first by name.
func (it Item) before(other Item) bool {
	return cmp.Or(Order(it.Name, other.Name), strings.Compare(it.Written, other.Written)) < 0
}

// Places are the places of items, each once, in their order, those of the first
// ones before all others.
func Places(items []Item, first ...Item) []Place {
	var places []Place
	seen := map[string]bool{}
	see := func(it Item) {
		if it.Place == nil {
			return
		}
		if at := it.Place.String(); !seen[at] {
			seen[at] = true
			places = append(places, it.Place)
		}
	}
	for _, it := range first {
		see(it)
	}
	for _, it := range items {
		see(it)
	}
	return places
}
