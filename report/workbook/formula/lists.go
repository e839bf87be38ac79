package formula

import (
	"slices"
	"strings"
)

// List is a range of cells or a list of expressions.
type List struct {
	text  string
	cells []Expr
}

// Range is a range of cells by its reference.
func Range(reference string, cells []Expr) List { return List{reference, cells} }

// Of is a list of expressions.
func Of(exprs ...Expr) List {
	var texts []string
	for _, e := range exprs {
		texts = append(texts, e.text)
	}
	return List{strings.Join(texts, ","), exprs}
}

// Empty says whether the list holds no expression at all.
func (l List) Empty() bool { return len(l.cells) == 0 }

// numbers are the numbers of a list, which leaves texts and empty cells out.
func (l List) numbers() (xs []float64, failed bool) {
	for _, c := range l.cells {
		switch v := c.value.(type) {
		case float64:
			xs = append(xs, v)
		case Error:
			return nil, true
		}
	}
	return xs, false
}

func (l List) fold(name string, none any, value func(xs []float64) float64) Expr {
	xs, failed := l.numbers()
	switch {
	case failed:
		return call(name, Error{}, l.text)
	case len(xs) == 0:
		return call(name, none, l.text)
	}
	return call(name, value(xs), l.text)
}

// Max is the highest number, 0 where there is none.
func (l List) Max() Expr { return l.fold("MAX", 0.0, slices.Max[[]float64]) }

// Min is the lowest number, 0 where there is none.
func (l List) Min() Expr { return l.fold("MIN", 0.0, slices.Min[[]float64]) }

// Sum is the sum of the numbers.
func (l List) Sum() Expr { return l.fold("SUM", 0.0, sum) }

func sum(xs []float64) float64 {
	total := 0.0
	for _, x := range xs {
		total += x
	}
	return total
}

// Average is their mean.
func (l List) Average() Expr {
	return l.fold("AVERAGE", Error{}, func(xs []float64) float64 { return sum(xs) / float64(len(xs)) })
}

// Median is their middle.
func (l List) Median() Expr {
	return l.fold("MEDIAN", Error{}, func(xs []float64) float64 {
		xs = slices.Sorted(slices.Values(xs))
		n := len(xs)
		return (xs[(n-1)/2] + xs[n/2]) / 2
	})
}

// Count is how many numbers there are.
func (l List) Count() Expr {
	return l.fold("COUNT", 0.0, func(xs []float64) float64 { return float64(len(xs)) })
}

// Times is how often a range gives a word.
func (l List) Times(word string) Expr {
	n := 0.0
	for _, c := range l.cells {
		if s, isText := c.value.(string); isText && strings.EqualFold(s, word) {
			n++
		}
	}
	return call("COUNTIF", n, l.text, Text(word).text)
}

// At is the cell of the range that stands where what is found in keys; Error
// where it is not found.
func (l List) At(what Expr, keys List) Expr {
	i := slices.IndexFunc(keys.cells, func(k Expr) bool { return k.value == what.value })
	var value any = Error{}
	if i >= 0 && i < len(l.cells) {
		value = l.cells[i].value
	}
	return call("INDEX", value, l.text, "MATCH("+what.text+","+keys.text+",0)")
}

// LastBefore is the highest number of a range of numbers that lies below x, 0
// where none does.
func (l List) LastBefore(x Expr) Expr {
	return l.pick(x, "SUMPRODUCT(MAX(("+l.text+"<"+x.inner()+")*"+l.text+"))", 0, func(at, limit, best float64) bool {
		return at < limit && at > best
	})
}

// far is above every day a record can hold.
const far = 10000000

// FirstFrom is the lowest number of a range of numbers that is not below x;
// 10,000,000 and more where none is.
func (l List) FirstFrom(x Expr) Expr {
	return l.pick(x, "SUMPRODUCT(MIN(("+l.text+"<"+x.inner()+")*10000000+"+l.text+"))", far, func(at, limit, best float64) bool {
		return at >= limit && at < best
	})
}

func (l List) pick(x Expr, text string, start float64, nearer func(at, limit, best float64) bool) Expr {
	limit, ok := x.Float()
	xs, failed := l.numbers()
	if !ok || failed || len(xs) != len(l.cells) {
		return Expr{text: text, value: Error{}}
	}
	best := start
	for _, at := range xs {
		if nearer(at, limit, best) {
			best = at
		}
	}
	if start == far && best == far {
		best = far + slices.Min(xs)
	}
	return Expr{text: text, value: best}
}

// HighestWhere is the highest number of a range where another range of numbers
// gives x; never below 0.
func (l List) HighestWhere(keys List, x Expr) Expr {
	text := "SUMPRODUCT(MAX((" + keys.text + "=" + x.inner() + ")*" + l.text + "))"
	want, ok := x.Float()
	xs, failed := l.numbers()
	at, failedToo := keys.numbers()
	if !ok || failed || failedToo || len(xs) != len(at) {
		return Expr{text: text, value: Error{}}
	}
	best := 0.0
	for i := range xs {
		if at[i] == want {
			best = max(best, xs[i])
		}
	}
	return Expr{text: text, value: best}
}

// Steps is the sum of the steps whose limits x has reached, to a tenth of a
// second: what a clock has been put forward by then.
func Steps(x Expr, limits, steps List) Expr {
	text := "SUMPRODUCT((" + x.inner() + "+0.000001>=" + limits.text + ")*" + steps.text + ")"
	at, ok := x.Float()
	ls, failed := limits.numbers()
	ss, failedToo := steps.numbers()
	if !ok || failed || failedToo || len(ls) != len(ss) {
		return Expr{text: text, value: Error{}}
	}
	total := 0.0
	for i, l := range ls {
		if at+0.000001 >= l {
			total += ss[i]
		}
	}
	return Expr{text: text, value: total}
}

// Entries is how many cells of a range are not empty.
func (l List) Entries() Expr {
	n := 0.0
	for _, c := range l.cells {
		if c.value != nil {
			n++
		}
	}
	return call("COUNTA", n, l.text)
}
