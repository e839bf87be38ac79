package evidence

// Bound is one end of a limit: the number as stated, whose it is (a product,
// or nobody's where it is the check's own default) and its source.
type Bound struct {
	Number Reading
	Whose  string
	Cite   Cite
	Work   Working // how the number came about, where it was not typed
}

// Shown says whether there is a bound.
func (b Bound) Shown() bool { return b.Number.Shown() }

// Computed is the bound of a figure worked out here; it ends within 20 places.
func (b Bound) Computed(w Working) Bound {
	b.Work, b.Number = w, Computed(w.Value.Decimal(), w.Unit)
	return b
}

// figureIn is the bound's figure in a unit of the same quantity.
func (b Bound) figureIn(u Unit) Working {
	w := b.Work
	if !w.Shown() {
		label := "the limit"
		if b.Whose != "" {
			label += " of " + b.Whose
		}
		w = Cell(label, b.Number)
	}
	return Converted(w, u)
}

// Limit is what a reading is held against: a lowest, a highest, or both, each
// met at equality. Lack says why an end that is asked for is not known.
type Limit struct {
	Least, Most Bound
	Lack        string
}

// Shown says whether either end is known or asked for.
func (l Limit) Shown() bool { return l.Least.Shown() || l.Most.Shown() || l.Lack != "" }

// AtMost is a limit with a highest value alone.
func AtMost(b Bound) Limit { return Limit{Most: b} }

// AtLeast is a limit with a lowest value alone.
func AtLeast(b Bound) Limit { return Limit{Least: b} }

// Unit is the unit the limit is stated in.
func (l Limit) Unit() Unit {
	if l.Most.Shown() {
		return l.Most.Number.Unit
	}
	return l.Least.Number.Unit
}

// Figures is the limit as stated, without its unit: "75", "60 to 80".
func (l Limit) Figures() string {
	u := l.Unit()
	least, most := l.Least.Number.WrittenIn(u), l.Most.Number.WrittenIn(u)
	if least != "" && most != "" {
		return least + " to " + most
	}
	return least + most
}

// Text is the limit in words, without its unit: "75", "at least 24", "60 to 80".
func (l Limit) Text() string {
	if l.Least.Shown() && !l.Most.Shown() {
		return "at least " + l.Figures()
	}
	return l.Figures()
}

// String is the limit as stated with its unit.
func (l Limit) String() string {
	if l.Text() == "" {
		return ""
	}
	return join(l.Text(), l.Unit())
}

// nearest is the end that a high reading meets first: the highest where there
// is one, else the lowest.
func (l Limit) nearest() Bound {
	if l.Most.Shown() {
		return l.Most
	}
	return l.Least
}

// Ends are the known ends in the limit's own unit.
func (l Limit) Ends() []Exact {
	var ends []Exact
	for _, b := range []Bound{l.Least, l.Most} {
		if b.Shown() {
			ends = append(ends, b.Number.In(l.Unit()))
		}
	}
	return ends
}

// Stricter is the stricter of two highest bounds, the first where they agree.
func Stricter(a, b Bound) Bound { return pick(a, b, -1) }

// Higher is the stricter of two lowest bounds, the first where they agree.
func Higher(a, b Bound) Bound { return pick(a, b, 1) }

func pick(a, b Bound, side int) Bound {
	if b.Shown() && (!a.Shown() || b.Number.In(a.Number.Unit).Cmp(a.Number.Exact()) == side) {
		return b
	}
	return a
}
