package evidence

import (
	"strings"

	"github.com/shopspring/decimal"
)

// Place is where something was typed: a cell or a row of the record.
type Place interface{ String() string }

// RowOf is the row of a place, by which a record names it in every kind of file.
func RowOf(p Place) string {
	s := p.String()
	return "row " + s[len(strings.TrimRight(s, "0123456789")):]
}

// Reading is a number somebody typed: the decimal as written, its unit and
// its place. Nothing was written where Written is empty: a blank is never
// zero.
type Reading struct {
	Written string
	Value   decimal.Decimal
	Unit    Unit
	Place   Place
}

// Typed is the reading of a plain decimal known to be one: a default of the
// project. It panics on anything else.
func Typed(written string, unit Unit) Reading {
	return Reading{Written: written, Value: decimal.RequireFromString(written), Unit: unit}
}

// Shown says whether anything was written.
func (r Reading) Shown() bool { return r.Written != "" }

// Exact is the number as typed, in its own unit.
func (r Reading) Exact() Exact { return Of(r.Value) }

// In is the number in another unit of the same quantity, without rounding.
func (r Reading) In(u Unit) Exact { return Convert(r.Exact(), r.Unit, u) }

// WrittenIn is the number as typed where it was typed in that unit, else the
// converted number.
func (r Reading) WrittenIn(u Unit, limits ...Exact) string {
	if r.Unit == u || !r.Shown() {
		return r.Written
	}
	return r.In(u).Text(limits...)
}

// String is the number as typed with its unit.
func (r Reading) String() string {
	if !r.Shown() {
		return ""
	}
	return join(r.Written, r.Unit)
}

func join(number string, u Unit) string {
	if u == None || u == PH {
		return number
	}
	return number + " " + u.of(number)
}

// of is the unit behind a number: 1 point, 2 points. What is counted has a word, not a
// sign.
func (u Unit) of(number string) string {
	counted := u == Points || u == DayUnit || u == Pieces || u == Holes || u == Walls
	if number == "1" && counted {
		return strings.TrimSuffix(string(u), "s")
	}
	return string(u)
}

// Convert takes x from one unit to another of the same quantity, exactly.
func Convert(x Exact, from, to Unit) Exact {
	if from == to {
		return x
	}
	f, fo := from.scale()
	t, to0 := to.scale()
	return x.Mul(f).Add(fo).Sub(to0).Over(t)
}

// ConvertSpan is Convert for a difference: an uncertainty or a margin, which
// has no offset.
func ConvertSpan(x Exact, from, to Unit) Exact {
	f, _ := from.scale()
	t, _ := to.scale()
	return x.Mul(f).Over(t)
}

// Computed is a number computed here from typed ones, exactly.
func Computed(d decimal.Decimal, u Unit) Reading {
	return Reading{Written: d.String(), Value: d, Unit: u}
}

// FromFloat takes a computed x from one unit to another of the same quantity.
func FromFloat(x float64, from, to Unit) float64 {
	scale, offset := from.scale()
	scaleTo, offsetTo := to.scale()
	return (x*scale.Float() + offset.Float() - offsetTo.Float()) / scaleTo.Float()
}
