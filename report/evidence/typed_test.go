package evidence_test

import (
	"math/big"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"firstboard/report/evidence"
)

func TestQuotesAreOneShortLine(t *testing.T) {
	long := strings.Repeat("é", 60)
	for typed, want := range map[string]string{
		"a\nb":     `"a\nb"`,
		long:       `"` + long + `"`,
		long + "x": `"` + long + `..."`,
	} {
		if got := evidence.Quote(typed); got != want {
			t.Errorf("%q is quoted %s, want %s", typed, got, want)
		}
	}
	if got := evidence.Saying("abc", "is no %s", "date"); got != `"abc" is no date` {
		t.Error(got)
	}
}

func TestEither(t *testing.T) {
	for want, choices := range map[string][]string{"": nil, "in": {"in"}, "in or mm": {"in", "mm"}, "in, mm or m": {"in", "mm", "m"}} {
		if got := evidence.Either(choices); got != want {
			t.Errorf("%v: %q, want %q", choices, got, want)
		}
	}
}

func TestPlainDecimals(t *testing.T) {
	for typed, want := range map[string]bool{
		"7": true, "-7.5": true, "0.125": true, "": false, "-": false, ".5": false, "7.": false,
		"1e3": false, "7,5": false, "--7": false, "1.2.3": false, "+1": false,
	} {
		if evidence.Plain(typed) != want {
			t.Errorf("%q is plain: %v", typed, !want)
		}
	}
	for typed, want := range map[string]bool{"0": true, "19": true, "": false, "1a": false, "a1": false, "/": false, ":": false} {
		if evidence.Digits(typed) != want {
			t.Errorf("%q is digits: %v", typed, !want)
		}
	}
}

// Clock times are what the standard library reads by the same layouts.
func TestParseClock(t *testing.T) {
	layouts := []string{time.DateOnly, "2006-01-02 15:04", time.DateTime}
	known := func(s string) (time.Time, bool) {
		for _, layout := range layouts {
			if at, err := time.Parse(layout, s); err == nil && at.Format(layout) == s {
				return at, true
			}
		}
		return time.Time{}, false
	}
	hold := func(t interface{ Fatalf(string, ...any) }, s string) {
		want, ok := known(s)
		if got, read := evidence.ParseClock(s); read != ok || ok && !got.Equal(want) {
			t.Fatalf("%q reads as %v (%v), want %v (%v)", s, got, read, want, ok)
		}
	}
	for _, s := range []string{
		"", "2026-03-04", "2026-3-04", "2026-02-29", "2024-02-29", "2026-13-01", "2026-00-10",
		"2026-03-00", "2026-03-04 23:59", "2026-03-04 24:00",
		"2026-03-04 10:60", "2026-03-04 10:59:59", "2026-03-04 10:59:60", "2026-03-04T10:59",
		"2026/03/04", "2026-03-04 10", "2026-03-04 10:5", "2026-0:-04", "2026-0/-04", "0002026-03 04:08",
	} {
		hold(t, s)
	}
	rapid.Check(t, func(t *rapid.T) {
		hold(t, rapid.StringMatching(`20[0-3][0-9]-[01][0-9]-[0-3][0-9]( [0-2][0-9]:[0-6][0-9](:[0-6][0-9])?)?`).Draw(t, "clock"))
	})
	for want, at := range map[string]time.Time{
		"2026-03-04 08:30":    time.Date(2026, 3, 4, 8, 30, 0, 0, time.UTC),
		"2026-03-04 08:30:01": time.Date(2026, 3, 4, 8, 30, 1, 0, time.UTC),
	} {
		if got := evidence.ClockText(at); got != want {
			t.Errorf("%v is written %s", at, got)
		}
	}
}

func TestDaysAreWrittenAsDates(t *testing.T) {
	for n, want := range map[evidence.Day]string{0: "1970-01-01", -1: "1969-12-31", 20516: "2026-03-04"} {
		if n.String() != want {
			t.Errorf("day %d is %s, want %s", int(n), n, want)
		}
	}
	if (evidence.Date{Day: 3}).Shown() || !(evidence.Date{Written: "x"}).Shown() {
		t.Error("a date is shown where something was written")
	}
}

// A number of hours is a duration, up to a hundred years.
func TestDurations(t *testing.T) {
	const century = 100 * 366 * 24
	for _, c := range []struct {
		hours evidence.Exact
		want  time.Duration
	}{
		{evidence.Ratio(1, 2), 30 * time.Minute},
		{evidence.Whole(century - 1), (century - 1) * time.Hour},
		{evidence.Whole(century), century * time.Hour},
		{evidence.Whole(century + 1), century * time.Hour},
	} {
		if got := evidence.Duration(c.hours); got != c.want {
			t.Errorf("%s h is %v, want %v", c.hours.Text(), got, c.want)
		}
	}
}

// Distances between words, as counted by hand and by their laws.
func TestChanges(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{
		{"", "", 0},
		{"abc", "", 3},
		{"", "ab", 2},
		{"kitten", "sitting", 3},
		{"flaw", "lawn", 2},
		{"abc", "abc", 0},
		{"ab", "ba", 2},
		{strings.Repeat("a", 80) + "x", strings.Repeat("a", 80) + "y", 0},
		{strings.Repeat("a", 79) + "x", strings.Repeat("a", 79) + "y", 1},
	} {
		if got := evidence.Changes([]rune(c.a), []rune(c.b)); got != c.want {
			t.Errorf("%q to %q takes %d, want %d", c.a, c.b, got, c.want)
		}
	}
}

func TestNearest(t *testing.T) {
	choices := []string{"slab", "wood over slab", "wood"}
	for typed, want := range map[string]string{"SLAB ": "slab", "wod": "wood", "wod over slab": "wood over slab"} {
		if got := evidence.Nearest(typed, choices); got != want {
			t.Errorf("%q is nearest to %q, want %q", typed, got, want)
		}
	}
	if got := evidence.Nearest("x", nil); got != "" {
		t.Errorf("nearest to nothing is %q", got)
	}
	if got := evidence.Nearest("ac", []string{"ab", "ad"}); got != "ab" {
		t.Errorf("of two alike the first is meant, not %q", got)
	}
	for _, c := range []struct{ typed, choice, want string }{
		{"slxx", "slab", "slab"}, {"sxxx", "slab", ""}, // two letters at most of a short one
		{"abcdefghxxxx", "abcdefghijkl", "abcdefghijkl"}, {"abcdefgxxxx", "abcdefghijk", ""}, // a third at most of a long one
	} {
		if got := evidence.NearMiss(c.typed, []string{c.choice}); got != c.want {
			t.Errorf("%q for %q: %q", c.typed, c.choice, got)
		}
	}
}

func TestUnitsAsHeadersCarryThem(t *testing.T) {
	for u, want := range map[evidence.Unit]string{
		evidence.RH: "RH (%)", evidence.MC: "RH (%)", evidence.CM: "RH (%)", evidence.Pounds: "RH (lb)", evidence.Grams: "RH (g)",
		evidence.PH: "RH", evidence.None: "RH", evidence.Inch: "RH (in)",
	} {
		if got := evidence.Heading("RH", u); got != want {
			t.Errorf("%s: %q, want %q", u, got, want)
		}
	}
	among := []evidence.Unit{
		evidence.Fahrenheit, evidence.Celsius, evidence.SquareFoot, evidence.SquareM, evidence.Inch, evidence.Foot,
		evidence.Millimeter, evidence.Centimeter, evidence.Meter, evidence.RH,
	}
	for text, want := range map[string]evidence.Unit{
		"°F": evidence.Fahrenheit, " c ": evidence.Celsius, "ºC": evidence.Celsius,
		"sq ft": evidence.SquareFoot, "ft²": evidence.SquareFoot, "SQ M": evidence.SquareM,
		"%": evidence.RH,
	} {
		if got, ok := evidence.UnitNamed(text, among); !ok || got != want {
			t.Errorf("%q names %q", text, got)
		}
	}
	for text, want := range map[string]evidence.Unit{
		"degrees Celsius": evidence.Celsius, "degree F": evidence.Fahrenheit, "deg. C": evidence.Celsius,
		"Centigrade": evidence.Celsius, "fahrenheit": evidence.Fahrenheit,
		"%RH": evidence.RH, "RH%": evidence.RH, "percent": evidence.RH, "pct": evidence.RH, "%mc": evidence.RH,
		"inch": evidence.Inch, "inches": evidence.Inch, `"`: evidence.Inch, "(in)": evidence.Inch,
		"in.": evidence.Inch, "foot": evidence.Foot, "feet": evidence.Foot, "'": evidence.Foot,
		"millimeters": evidence.Millimeter, "millimeter": evidence.Millimeter,
		"centimeter": evidence.Centimeter, "centimeters": evidence.Centimeter, "meter": evidence.Meter,
		"meters":  evidence.Meter,
		"[sq ft]": evidence.SquareFoot,
	} {
		if got, ok := evidence.UnitMeant(text, among); !ok || got != want {
			t.Errorf("%q means %q (%v), want %q", text, got, ok, want)
		}
	}
	for _, text := range []string{"", "furlong", "g", "lb"} {
		if got, ok := evidence.UnitMeant(text, among); ok {
			t.Errorf("%q means %q", text, got)
		}
	}
	for header, want := range map[string][2]string{
		"Temp (F)": {"Temp", "F"}, " Depth  (in) ": {"Depth", "in"}, "(C)": {"", "C"}, "Spot": {"Spot", ""}, "Of (a) b": {"Of (a) b", ""},
		"Slab (any) RH (%)": {"Slab (any) RH", "%"},
	} {
		if name, unit := evidence.Parted(header); name != want[0] || unit != want[1] {
			t.Errorf("%q is parted into %q and %q", header, name, unit)
		}
	}
	if got, ok := evidence.UnitMeant("g", []evidence.Unit{evidence.Gram}); !ok || got != evidence.Gram {
		t.Errorf("g among grams means %q", got)
	}
}

// A computed number goes from unit to unit as exact ones do.
func TestFloatsAreConvertedAsExactNumbers(t *testing.T) {
	units := []evidence.Unit{evidence.Fahrenheit, evidence.Celsius}
	for _, n := range []string{"-40", "0", "71.6"} {
		for _, from := range units {
			for _, to := range units {
				want := evidence.Typed(n, from).In(to).Float()
				x, _ := new(big.Float).SetString(n)
				f, _ := x.Float64()
				if got := evidence.FromFloat(f, from, to); got < want-1e-9 || got > want+1e-9 {
					t.Errorf("%s %s is %v %s, want %v", n, from, got, to, want)
				}
			}
		}
	}
	if got := evidence.ConvertSpan(evidence.Whole(5), evidence.Celsius, evidence.Fahrenheit).Text(); got != "9" {
		t.Errorf("5 C of span are %s F", got)
	}
}

// Rows left out are counted once a table and reason, in the order they came.
func TestRowsLeftOutAreCounted(t *testing.T) {
	var l evidence.LeftOut
	l.Add("Air", "late", 0)
	l.Add("Air", "late", 2)
	l.Add("Wood", "late", 1)
	l.Add("Air", "wet", 4)
	l.Add("Air", "late", 3)
	want := []evidence.Unused{
		{Table: "Air", Rows: 5, Why: "late"},
		{Table: "Wood", Rows: 1, Why: "late"},
		{Table: "Air", Rows: 4, Why: "wet"},
	}
	if got := l.All(); len(got) != len(want) || got[0] != want[0] || got[1] != want[1] || got[2] != want[2] {
		t.Errorf("left out are %v, want %v", got, want)
	}
}

// rowPlace is a cell that tells its row.
type rowPlace struct{ cell }

func (rowPlace) Row() (string, int) { return "Wood", 12 }

func TestRowsOfPlaces(t *testing.T) {
	for want, p := range map[string]evidence.Place{"": nil, "Air!B7": cell("Air!B7"), "Wood row 12": rowPlace{"Wood!C12"}} {
		if got := evidence.RowKey(p); got != want {
			t.Errorf("row of %v is %q, want %q", p, got, want)
		}
	}
	if got := evidence.RowOf(cell("Slab RH!J17")); got != "row 17" {
		t.Error(got)
	}
}

// A check signs its answer: its words, whether it decides, and its source where
// the answer has none.
func TestAnswersAreSigned(t *testing.T) {
	own := evidence.Cite{Source: "the product"}
	c := evidence.Check[int]{
		ID: "x", Asks: "is it?", Deciding: true, Cite: evidence.Cite{Source: "the rule"},
		Judge: func(n int) evidence.Finding {
			if n == 2 {
				return evidence.Finding{Outcome: evidence.Met, Cite: own}
			}
			return evidence.Finding{Outcome: evidence.Met}
		},
	}
	advises := c
	advises.Advises = func(n int) bool { return n > 2 }
	advice := c
	advice.Deciding = false
	for _, k := range []struct {
		check    evidence.Check[int]
		n        int
		deciding bool
		source   string
	}{
		{c, 1, true, "the rule"},
		{c, 2, true, "the product"},
		{c, 3, true, "the rule"},
		{advises, 1, true, "the rule"},
		{advises, 3, false, "the rule"},
		{advice, 1, false, "the rule"},
	} {
		over := evidence.Over(k.check, func(s string) int { return len(s) })
		for _, f := range []evidence.Finding{k.check.Find(k.n), over.Find(strings.Repeat("x", k.n))} {
			if f.ID != "x" || f.Asks != "is it?" || f.Deciding != k.deciding || f.Cite.Source != k.source {
				t.Errorf("on %d: %+v, want deciding %v by %s", k.n, f, k.deciding, k.source)
			}
		}
	}
}

// Names are ordered as a person lists them: digits before letters, the shorter
// first, numbers by their size and then as they are written.
func TestOrder(t *testing.T) {
	for _, c := range [][2]string{
		{"H1", "HA"},
		{"H1", "H1b"},
		{"H", "H1"},
		{"H9", "H10"},
		{"H2", "H010"},
		{"a1b2", "A1B10"},
		{"9", "10a"},
		{"x01", "x1a"},
	} {
		if evidence.Order(c[0], c[1]) >= 0 || evidence.Order(c[1], c[0]) <= 0 {
			t.Errorf("%s stands before %s: %d, %d", c[0], c[1], evidence.Order(c[0], c[1]), evidence.Order(c[1], c[0]))
		}
	}
	if evidence.Order("H01", "h1") == 0 || evidence.Order("H 1 ", "h 1") != 0 {
		t.Error("names that are the same stand together, and no others")
	}
}

// A count says what could not be used, where there is any.
func TestCountsSayWhatIsUnusable(t *testing.T) {
	needed := evidence.Stated("needed", evidence.Whole(1), evidence.Holes)
	for n, want := range map[int]string{
		0: "1 hole usable; 1 is asked for on 100 ft2",
		1: "1 hole usable and 1 unusable; 1 is asked for on 100 ft2",
		2: "1 hole usable and 2 unusable; 1 is asked for on 100 ft2",
	} {
		tally := evidence.Tally{
			Counted: []evidence.Working{needed}, Unusable: n, Needed: needed, Unit: evidence.Holes, One: "hole",
			Many: "holes",
		}
		if f := tally.Find(evidence.Typed("100", evidence.SquareFoot)); f.Reason != want {
			t.Errorf("got  %s\nwant %s", f.Reason, want)
		}
	}
}
