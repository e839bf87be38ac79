package evidence

import (
	"slices"
	"testing"
)

// FuzzUnitMeant: a text is one of the units that are offered, or none; and a unit's
// own spelling is that unit.
func FuzzUnitMeant(f *testing.F) {
	among := []Unit{Fahrenheit, Celsius, Inch, Foot, Millimeter, Centimeter, Meter, SquareFoot, SquareM, Percent}
	for _, text := range []string{"F", "°F", "deg C", "ft²", "sq ft", "in.", "%", " mm ", "", "\x00", "µ"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		u, ok := UnitMeant(text, among)
		if ok && !slices.Contains(among, u) {
			t.Errorf("%q is %q", text, u)
		}
		if again, same := UnitMeant(string(u), among); ok && (!same || again != u) {
			t.Errorf("%q is %q, and that is %q", text, u, again)
		}
	})
}
