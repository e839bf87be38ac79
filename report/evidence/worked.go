package evidence

// Worked is how a finding came about: its value, the ends of its limit, and
// the room that the judged values leave to their limits, which is below zero
// where the rule is broken. Unusable counts the values that cannot be compared.
// Any part may be missing where there is nothing to work on.
type Worked struct {
	Value       Working
	Least, Most Working
	Room        Working
	Unusable    int
}

// Outcome is the answer that the figures give by themselves: not met where a
// value breaks its limit, not shown where one cannot be used or there is none.
func (w Worked) Outcome() Outcome {
	if w.Room.Value.Sign() < 0 {
		return NotMet
	}
	if w.Unusable > 0 || !w.Room.Shown() {
		return NotShown
	}
	return Met
}

// AtLeastSo is a figure that must reach another: a count, a number of hours.
func AtLeastSo(value, least Working, unusable int) Worked {
	return Worked{Value: value, Least: least, Room: Less(value, least), Unusable: unusable}
}

// workedOf is the working of judged values held against their limits.
func workedOf(items []Item, unusable int, acc Acceptance) Worked {
	if len(items) == 0 {
		return Worked{Unusable: unusable}
	}
	if oneSided(items, acc) {
		return workedTogether(items, unusable, acc)
	}
	values, rooms := make([]Working, len(items)), make([]Working, len(items))
	for i, it := range items {
		values[i], rooms[i] = it.worked(), it.room(acc)
	}
	w := Worked{Unusable: unusable, Room: Lowest(rooms...), Value: values[0]}
	if len(items) > 1 {
		w.Value = nearest(values, rooms)
	}
	near := worst(items)
	w.Least, w.Most = near.ends()
	return w
}

// oneSided says whether all items are held against one and the same end, so
// that the highest or the lowest of them stands for all.
func oneSided(items []Item, acc Acceptance) bool {
	first := items[0]
	if first.Limit.Least.Shown() == first.Limit.Most.Shown() {
		return false
	}
	for _, it := range items {
		same := it.Limit.Text() == first.Limit.Text() && it.Limit.Unit() == first.Limit.Unit()
		if !same || acc.Guarded && it.guards(acc).Cmp(first.guards(acc)) != 0 {
			return false
		}
	}
	return true
}

func workedTogether(items []Item, unusable int, acc Acceptance) Worked {
	values := make([]Working, len(items))
	for i, it := range items {
		values[i] = it.worked()
	}
	one := items[0]
	if one.Limit.Most.Shown() {
		one.Work = Highest(values...)
	} else {
		one.Work = Lowest(values...)
	}
	w := Worked{Value: one.Work, Room: one.room(acc), Unusable: unusable}
	w.Least, w.Most = one.ends()
	return w
}

// ends are the ends of the item's limit, in the limit's unit.
func (it Item) ends() (least, most Working) {
	if it.Limit.Least.Shown() {
		least = it.Limit.Least.figureIn(it.Limit.Unit())
	}
	if it.Limit.Most.Shown() {
		most = it.Limit.Most.figureIn(it.Limit.Unit())
	}
	return least, most
}

// guards is the uncertainty that counts against the item.
func (it Item) guards(acc Acceptance) Exact {
	if !acc.Guarded || it.U == nil {
		return Exact{}
	}
	return it.U.Value
}

// room is what the item leaves to the nearest end of its limit: nothing to
// compare with leaves the value itself, which no rule breaks.
func (it Item) room(acc Acceptance) Working {
	value := it.worked()
	least, most := it.ends()
	var rooms []Working
	if most.Shown() {
		rooms = append(rooms, Less(most, value))
	}
	if least.Shown() {
		rooms = append(rooms, Less(value, least))
	}
	if len(rooms) == 0 {
		return Unsigned(value)
	}
	room := Lowest(rooms...)
	if u := it.guards(acc); u.Sign() > 0 {
		room = Less(room, Stated("uncertainty", u, it.Limit.Unit()))
	}
	return room
}
