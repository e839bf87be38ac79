package evidence

import (
	"cmp"
	"time"
)

// Op is one step of a working.
type Op string

// The steps. A leaf is OpTyped, OpMoment or OpStated; every other step works on
// its arguments in their order.
const (
	OpTyped    Op = "typed"     // a number in a cell of the record
	OpMoment   Op = "moment"    // a day or a time in a cell, in hours of its own clock since 1970
	OpStated   Op = "stated"    // a number of a rule, a table or a publication
	OpSum      Op = "sum"       // of its arguments
	OpLess     Op = "less"      // the first less the second
	OpTimes    Op = "times"     // the first times the second
	OpOver     Op = "over"      // the first over the second
	OpUnsigned Op = "unsigned"  // without its sign
	OpRound    Op = "round"     // to Places, half to even
	OpUp       Op = "up"        // to the next whole number
	OpHighest  Op = "highest"   // of its arguments
	OpLowest   Op = "lowest"    // of its arguments
	OpMean     Op = "mean"      // of its arguments
	OpCount    Op = "count"     // of its arguments
	OpInside   Op = "inside"    // how many from the third on lie from the first to the second
	OpNearest  Op = "nearest"   // of pairs of a value and its room to a limit, the value with the least room
	OpHours    Op = "hours"     // from the first moment to the second
	OpDays     Op = "days"      // the same in days of the calendar
	OpConvert  Op = "convert"   // to Unit
	OpEMC      Op = "EMC"       // of wood in air of a temperature in F and a relative humidity in %
	OpDewPoint Op = "dew point" // of air of a temperature in F and a relative humidity in %
)

// Working is a figure and how it came about: a tree whose leaves are cells of
// the record and numbers of the rules. The same tree gives the exact value, the
// words that explain it, and a formula of a spreadsheet. The zero value is no
// figure.
type Working struct {
	Op     Op
	Args   []Working
	Value  Exact
	Unit   Unit
	Places int    // of OpRound
	Label  string // what a leaf is, or what a step gives
	Place  Place  // of a leaf that was typed
}

// Shown says whether there is a figure.
func (w Working) Shown() bool { return w.Op != "" }

// Called is the same figure under a name of its own.
func (w Working) Called(label string) Working { w.Label = label; return w }

// Cell is a number as somebody typed it; a number with no place is one of the
// rules.
func Cell(label string, r Reading) Working {
	if r.Place == nil {
		return Stated(label, r.Exact(), r.Unit)
	}
	return Working{Op: OpTyped, Label: label, Value: r.Exact(), Unit: r.Unit, Place: r.Place}
}

// Stated is a number of a rule, a table or a publication.
func Stated(label string, x Exact, u Unit) Working {
	return Working{Op: OpStated, Label: label, Value: x, Unit: u}
}

// Moment is a time that somebody typed.
func Moment(label string, t Time) Working {
	return Working{Op: OpMoment, Label: label, Value: clockHours(t.First), Unit: Hour, Place: t.Place}
}

// OnDay is a day that somebody typed.
func OnDay(label string, d Date) Working {
	return Working{Op: OpMoment, Label: label, Value: Whole(24 * int(d.Day)), Unit: Hour, Place: d.Place}
}

// clockHours are the hours that a clock showed since 1970 began.
func clockHours(t time.Time) Exact {
	_, offset := t.Zone()
	return Ratio(t.Unix()+int64(offset), 3600)
}

// Total is the sum of figures of one unit.
func Total(args ...Working) Working {
	var sum Exact
	for _, a := range args {
		sum = sum.Add(a.Value)
	}
	return Working{Op: OpSum, Args: args, Value: sum, Unit: unitOf(args)}
}

// Less is a less b.
func Less(a, b Working) Working {
	return Working{Op: OpLess, Args: []Working{a, b}, Value: a.Value.Sub(b.Value), Unit: a.Unit}
}

// Times is a times b, in the unit given.
func Times(a, b Working, u Unit) Working {
	return Working{Op: OpTimes, Args: []Working{a, b}, Value: a.Value.Mul(b.Value), Unit: u}
}

// DividedBy is a over b, which is not zero, in the unit given.
func DividedBy(a, b Working, u Unit) Working {
	return Working{Op: OpOver, Args: []Working{a, b}, Value: a.Value.Over(b.Value), Unit: u}
}

// Unsigned is a without its sign.
func Unsigned(a Working) Working {
	return Working{Op: OpUnsigned, Args: []Working{a}, Value: a.Value.Abs(), Unit: a.Unit}
}

// Rounded is a to so many places, half to even.
func Rounded(a Working, places int) Working {
	return Working{Op: OpRound, Args: []Working{a}, Value: a.Value.Round(places), Unit: a.Unit, Places: places}
}

// RoundedUp is the smallest whole number not below a.
func RoundedUp(a Working) Working {
	return Working{Op: OpUp, Args: []Working{a}, Value: Whole(a.Value.Ceil()), Unit: a.Unit}
}

// Highest is the highest of at least one figure.
func Highest(args ...Working) Working { return extreme(OpHighest, 1, args) }

// Lowest is the lowest of at least one figure.
func Lowest(args ...Working) Working { return extreme(OpLowest, -1, args) }

func extreme(op Op, side int, args []Working) Working {
	if len(args) == 1 {
		return args[0]
	}
	w := Working{Op: op, Args: args, Value: args[0].Value, Unit: unitOf(args)}
	for _, a := range args[1:] {
		if a.Value.Cmp(w.Value) == side {
			w.Value, w.Unit = a.Value, a.Unit
		}
	}
	return w
}

// MeanOf is the exact mean of at least one figure.
func MeanOf(args ...Working) Working {
	w := Total(args...)
	w.Op, w.Value = OpMean, w.Value.Over(Whole(len(args)))
	return w
}

// CountOf is how many figures there are.
func CountOf(u Unit, args ...Working) Working {
	return Working{Op: OpCount, Args: args, Value: Whole(len(args)), Unit: u}
}

// Inside is how many figures lie from least to most, both included.
func Inside(u Unit, least, most Working, args ...Working) Working {
	n := 0
	for _, a := range args {
		if a.Value.Cmp(least.Value) >= 0 && a.Value.Cmp(most.Value) <= 0 {
			n++
		}
	}
	return Working{Op: OpInside, Args: append([]Working{least, most}, args...), Value: Whole(n), Unit: u}
}

// HoursBetween is the time that passed from one moment to another: passed tells
// whether the shortest or the longest counts where a clock went back.
func HoursBetween(from, to Time, passed func(from, to Time) time.Duration) Working {
	return hoursOf(Moment("from", from), Moment("to", to), Hours(passed(from, to)))
}

// HoursBefore is the time from a moment until a day begins on the clock of a
// place.
func HoursBefore(from Time, to Date, zone *time.Location) Working {
	return hoursOf(Moment("from", from), OnDay("to", to), Hours(to.Day.Begins(zone).Sub(from.First)))
}

// hoursOf is a time between two moments as clocks show them, with the hours by
// which the clocks were moved between them.
func hoursOf(from, to Working, passed Exact) Working {
	w := Working{Op: OpHours, Args: []Working{from, to}, Value: to.Value.Sub(from.Value), Unit: Hour}
	if moved := passed.Sub(w.Value); moved.Sign() != 0 {
		return Total(w, Stated("hours that the clocks were moved", moved, Hour))
	}
	return w
}

// DaysBetween is the days of the calendar from one moment to another.
func DaysBetween(from, to Working) Working {
	days := func(w Working) int { return w.Value.Over(Whole(24)).floor() }
	return Working{Op: OpDays, Args: []Working{from, to}, Value: Whole(days(to) - days(from)), Unit: DayUnit}
}

// Converted is a in another unit of the same quantity, without rounding.
func Converted(a Working, to Unit) Working {
	if a.Unit == to {
		return a
	}
	return Working{Op: OpConvert, Args: []Working{a}, Value: Convert(a.Value, a.Unit, to), Unit: to}
}

// Cite is where the equation of a step of physics stands, nothing of any other step.
func (op Op) Cite() Cite {
	switch op {
	case OpEMC:
		return Cite{"Wood Handbook equation 4-5", Published}
	case OpDewPoint:
		return Cite{"Hyland-Wexler, ASHRAE Handbook Fundamentals 2017 chapter 1", Published}
	}
	return Cite{}
}

// Physics is a step of floating-point physics, its value as it was rounded.
func Physics(op Op, value Exact, u Unit, args ...Working) Working {
	return Working{Op: op, Args: args, Value: value, Unit: u}
}

// nearest is the value with the least room to its own limit.
func nearest(values, rooms []Working) Working {
	w := Working{Op: OpNearest, Args: make([]Working, 0, 2*len(values))}
	least := 0
	for i := range values {
		w.Args = append(w.Args, values[i], rooms[i])
		if rooms[i].Value.Cmp(rooms[least].Value) < 0 {
			least = i
		}
	}
	w.Value, w.Unit = values[least].Value, cmp.Or(values[least].Unit, rooms[least].Unit)
	return w
}

func unitOf(args []Working) Unit {
	if len(args) == 0 {
		return None
	}
	return args[0].Unit
}
