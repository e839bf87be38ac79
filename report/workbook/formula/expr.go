package formula

import (
	"math"
	"strconv"
	"strings"
)

// Expr is an expression: its text, without the equals sign, and its value: a
// float64, a string, a bool, nil for an empty cell, or Error.
type Expr struct {
	text  string
	value any
	loose bool // an operator stands at its top: brackets keep it together
}

// Error is the value of an expression that has none, as #VALUE! in a sheet.
type Error struct{}

// Cell is a reference to a cell and what that cell holds.
func Cell(reference string, value any) Expr { return Expr{text: reference, value: value} }

// Number is a constant.
func Number(x float64) Expr {
	return Expr{text: strconv.FormatFloat(x, 'f', -1, 64), value: x, loose: x < 0}
}

// Text is a constant text of at most 255 letters, the most that a formula
// holds in one.
func Text(s string) Expr {
	return Expr{text: `"` + strings.ReplaceAll(s, `"`, `""`) + `"`, value: s}
}

// String is the expression as a formula without its equals sign.
func (e Expr) String() string { return e.text }

// Value is what it gives.
func (e Expr) Value() any { return e.value }

// Float is the number it gives; ok is false where it gives none.
func (e Expr) Float() (x float64, ok bool) {
	switch v := e.value.(type) {
	case nil:
		return 0, true
	case float64:
		return v, true
	case bool:
		if v {
			return 1, true
		}
		return 0, true
	}
	return 0, false
}

// Is says whether it gives that value.
func (e Expr) Is(value any) bool { return e.value == value }

func (e Expr) inner() string {
	if e.loose {
		return "(" + e.text + ")"
	}
	return e.text
}

func operate(a Expr, sign string, b Expr, value func(x, y float64) any) Expr {
	return Expr{text: a.inner() + sign + b.inner(), value: numeric(a, b, value), loose: true}
}

// numeric is a value made of two numbers, or Error where one is none.
func numeric(a, b Expr, value func(x, y float64) any) any {
	x, okX := a.Float()
	y, okY := b.Float()
	if !okX || !okY {
		return Error{}
	}
	return value(x, y)
}

// Plus is a + b.
func (e Expr) Plus(b Expr) Expr {
	return operate(e, "+", b, func(x, y float64) any { return x + y })
}

// Minus is a - b.
func (e Expr) Minus(b Expr) Expr {
	return operate(e, "-", b, func(x, y float64) any { return x - y })
}

// Times is a x b.
func (e Expr) Times(b Expr) Expr {
	return operate(e, "*", b, func(x, y float64) any { return x * y })
}

// Over is a / b.
func (e Expr) Over(b Expr) Expr {
	return operate(e, "/", b, func(x, y float64) any {
		if y == 0 {
			return Error{}
		}
		return x / y
	})
}

// Below, AtMost, Above and AtLeast compare two numbers.
func (e Expr) Below(b Expr) Expr {
	return operate(e, "<", b, func(x, y float64) any { return x < y })
}

// AtMost is a <= b.
func (e Expr) AtMost(b Expr) Expr {
	return operate(e, "<=", b, func(x, y float64) any { return x <= y })
}

// Above is a > b.
func (e Expr) Above(b Expr) Expr { return b.Below(e) }

// Same is a = b for two numbers.
func (e Expr) Same(b Expr) Expr {
	return operate(e, "=", b, func(x, y float64) any { return x == y })
}

// Says is whether it gives that text, without regard to case; the empty text
// is given by an empty cell too.
func (e Expr) Says(word string) Expr {
	s, isText := e.value.(string)
	says := isText && strings.EqualFold(s, word) || word == "" && e.value == nil
	return Expr{text: e.inner() + "=" + Text(word).text, value: keep(e, says), loose: true}
}

// Shown is whether it gives anything but the empty text.
func (e Expr) Shown() Expr {
	blank := e.Says("")
	return Expr{text: e.inner() + `<>""`, value: keep(e, blank.value == false), loose: true}
}

// keep lets an Error through.
func keep(e Expr, value any) any {
	if _, failed := e.value.(Error); failed {
		return Error{}
	}
	return value
}

// Joined is the texts one behind the other.
func Joined(parts ...Expr) Expr {
	var texts []string
	s := ""
	for _, p := range parts {
		texts = append(texts, p.inner())
		switch v := p.value.(type) {
		case string:
			s += v
		case float64:
			s += strconv.FormatFloat(v, 'f', -1, 64)
		case nil:
		default:
			return Expr{text: strings.Join(texts, "&"), value: Error{}, loose: true}
		}
	}
	return Expr{text: strings.Join(texts, "&"), value: s, loose: true}
}

func call(name string, value any, args ...string) Expr {
	return Expr{text: name + "(" + strings.Join(args, ",") + ")", value: value}
}

// If is a choice.
func If(condition, yes, no Expr) Expr {
	value := no.value
	switch c := condition.value.(type) {
	case Error, string:
		value = Error{}
	case bool:
		if c {
			value = yes.value
		}
	case float64:
		if c != 0 {
			value = yes.value
		}
	}
	if value == nil { // a formula never gives an empty cell
		value = 0.0
	}
	return call("IF", value, condition.text, yes.text, no.text)
}

// All is whether every condition holds.
func All(conditions ...Expr) Expr {
	return logic("AND", true, func(so, next bool) bool { return so && next }, conditions)
}

// Any is whether some condition holds.
func Any(conditions ...Expr) Expr {
	return logic("OR", false, func(so, next bool) bool { return so || next }, conditions)
}

func logic(name string, start bool, join func(so, next bool) bool, conditions []Expr) Expr {
	if len(conditions) == 1 {
		return conditions[0]
	}
	var texts []string
	var value any = start
	for _, c := range conditions {
		texts = append(texts, c.text)
		x, ok := c.Float()
		so, fine := value.(bool)
		switch {
		case !ok || !fine:
			value = Error{}
		default:
			value = join(so, x != 0)
		}
	}
	return call(name, value, texts...)
}

// Round is x to so many places, half away from nought.
func (e Expr) Round(places int) Expr {
	x, ok := e.Float()
	var value any = Error{}
	if ok {
		scale := math.Pow10(places)
		value = math.Round(x*scale) / scale
	}
	return call("ROUND", value, e.text, strconv.Itoa(places))
}

// Up is the smallest whole number not below x, for x of nought or more.
func (e Expr) Up() Expr {
	x, ok := e.Float()
	var value any = Error{}
	if ok {
		value = math.Ceil(x)
	}
	return call("ROUNDUP", value, e.text, "0")
}

// Down is the whole part of x: the day of a time.
func (e Expr) Down() Expr {
	x, ok := e.Float()
	var value any = Error{}
	if ok {
		value = math.Floor(x)
	}
	return call("INT", value, e.text)
}

// Abs is x without its sign.
func (e Expr) Abs() Expr {
	x, ok := e.Float()
	var value any = Error{}
	if ok {
		value = math.Abs(x)
	}
	return call("ABS", value, e.text)
}

// Figure is what a cell holds where that is a number, else the empty text.
func (e Expr) Figure() Expr {
	var value any = ""
	if x, isNumber := e.value.(float64); isNumber {
		value = x
	}
	return call("IF", value, "ISNUMBER("+e.text+")", e.text, `""`)
}

// Abroad is the expression with every reference of its own sheet, which begins
// with $, led by that sheet.
func (e Expr) Abroad(sheet string) Expr {
	var b strings.Builder
	within, before := false, ' '
	for _, r := range e.text {
		if r == '"' {
			within = !within
		}
		letter := before >= 'A' && before <= 'Z' || before == ':' || before == '!'
		if r == '$' && !within && !letter {
			b.WriteString(sheet)
		}
		b.WriteRune(r)
		before = r
	}
	e.text = b.String()
	return e
}
