package evidence

import (
	"fmt"
	"strconv"
	"strings"
)

// Fixed writes e with exactly so many places, half to even.
func (e Exact) Fixed(places int) string {
	q, ok := e.scaled(places)
	if !ok {
		return e.Round(places).rat().FloatString(places)
	}
	if places == 0 {
		return strconv.FormatInt(q, 10)
	}
	sign := ""
	if q < 0 {
		sign, q = "-", -q
	}
	one := tenTo(places)
	return fmt.Sprintf("%s%d.%0*d", sign, q/one, places, q%one)
}

// Text writes e in full when it ends within 6 places, else with 2 places or
// as many more as keep it on its own side of every limit given.
func (e Exact) Text(limits ...Exact) string {
	if e.Round(shownPlaces).Equal(e) {
		return trim(e.Fixed(shownPlaces))
	}
	return e.Fixed(e.placesBeside(limits))
}

// Short writes e for people: in full where it ends within 2 places, else with
// 2 places or as many more as keep it on its own side of every limit given.
func (e Exact) Short(limits ...Exact) string { return trim(e.Fixed(e.placesBeside(limits))) }

// placesBeside is how many places keep e on its own side of every limit: 2 at
// least, and 40 at most.
func (e Exact) placesBeside(limits []Exact) int {
	const least, most = 2, 40
	for more := range most - least {
		if e.keepsSide(e.Round(least+more), limits) {
			return least + more
		}
	}
	return most
}

func (e Exact) keepsSide(rounded Exact, limits []Exact) bool {
	for _, l := range limits {
		if e.Cmp(l) != rounded.Cmp(l) {
			return false
		}
	}
	return true
}

// trim leaves out the zeros that end a number written with places.
func trim(s string) string { return strings.TrimRight(strings.TrimRight(s, "0"), ".") }
