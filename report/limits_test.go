package report_test

import (
	"slices"
	"testing"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/limits"
)

// limitsOf are the limits in force after changes.
func limitsOf(changes ...func(*report.Job)) limits.InForce {
	j := small()
	for _, c := range changes {
		c(&j)
	}
	return report.Judge(j)[0].Site.Limits
}

func flooring(change func(*limits.Product)) func(*report.Job) {
	return func(j *report.Job) { change(&j.Products[0]) }
}

func adhesive(change func(*limits.Product)) func(*report.Job) {
	return func(j *report.Job) { change(&j.Products[1]) }
}

func withMembrane(p limits.Product) func(*report.Job) {
	return func(j *report.Job) {
		p.ID, p.Kind = "MEM", "membrane"
		j.Products, j.Areas[0].Membrane = append(slices.Clone(j.Products), p), "MEM"
	}
}

// Which limit governs: a number, none, a blank that brings the default, a
// membrane that stands between, the strictest else, and the default where
// nobody brings one.
func TestWhichLimitGoverns(t *testing.T) {
	rh := func(s limits.Stated) func(*limits.Product) { return func(p *limits.Product) { p.SlabRH = s } }
	pct := func(n float64) limits.Stated { return says(n, evidence.RH) }
	for _, c := range []struct {
		what    string
		changes []func(*report.Job)
		want    string // "75 of nobody"
	}{
		{"none and a number", nil, "85 of GLUE"},
		{"the stricter of two", do(flooring(rh(pct(80)))), "80 of ENG"},
		{"the stricter of two, the other way", do(flooring(rh(pct(90)))), "85 of GLUE"},
		{"a blank brings the default", do(flooring(rh(limits.Stated{}))), "75 of "},
		{"a number under the default", do(flooring(rh(limits.Stated{})), adhesive(rh(pct(70)))), "70 of GLUE"},
		{"none by anybody", do(adhesive(rh(none()))), "75 of "},
		{"a membrane replaces both", do(flooring(rh(pct(70))), withMembrane(limits.Product{SlabRH: pct(95)})), "95 of MEM"},
		{"a membrane that states none", do(withMembrane(limits.Product{SlabRH: none()})), "85 of GLUE"},
		{"a blank of a membrane brings the default", do(withMembrane(limits.Product{})), "75 of "},
	} {
		b := limitsOf(c.changes...).SlabRH.Most
		if got := b.Number.Written + " of " + b.Whose; got != c.want {
			t.Errorf("%s: %s, want %s", c.what, got, c.want)
		}
	}
	l := limitsOf(withMembrane(limits.Product{SlabRH: none(), PHMin: says(6, evidence.PH)}))
	if l.PH.Least.Whose != "MEM" || l.PH.Most.Whose != "GLUE" {
		t.Errorf("each end by itself: %s and %s", l.PH.Least.Whose, l.PH.Most.Whose)
	}
	if l := limitsOf(adhesive(func(p *limits.Product) { p.MVER = limits.Stated{} })); l.MVER.Shown() {
		t.Errorf("emission has no default, and %s governs", l.MVER)
	}
}

// Only the flooring's blank brings a default for what lies under and over it.
func TestOnlyTheFlooringBringsTheseDefaults(t *testing.T) {
	f, mc := evidence.Fahrenheit, evidence.MC
	low := adhesive(func(p *limits.Product) {
		p.SubfloorMC, p.Difference, p.SurfaceTemp = says(14, mc), says(5, evidence.Points), says(95, f)
	})
	none := flooring(func(p *limits.Product) { p.SubfloorMC, p.Difference, p.SurfaceTemp = none(), none(), none() })
	for _, c := range []struct {
		changes []func(*report.Job)
		want    [3]string
	}{
		{do(low), [3]string{"12", "2", "80"}},
		{do(low, none), [3]string{"14", "5", "95"}},
		{do(none), [3]string{"12", "2", "80"}},
		{do(none, flooring(func(p *limits.Product) { p.FaceWidth = num(2.9, evidence.Inch) })), [3]string{"12", "4", "80"}},
		{
			do(none, flooring(func(p *limits.Product) { p.Kind, p.FaceWidth = "resilient", num(3, evidence.Inch) })),
			[3]string{"12", "2", "85"},
		},
	} {
		l := limitsOf(c.changes...)
		got := [3]string{l.Subfloor.Figures(), l.Difference.Figures(), l.SurfaceMax.Figures()}
		if got != c.want {
			t.Errorf("got %v, want %v", got, c.want)
		}
	}
}

// The air's bounds each by themselves, the strictest stated, else the
// flooring's default.
func TestAirBounds(t *testing.T) {
	kind := func(k string) func(*report.Job) { return flooring(func(p *limits.Product) { p.Kind = k }) }
	strict := adhesive(func(p *limits.Product) {
		p.AirTempMin, p.AirRHMax = says(65, evidence.Fahrenheit), says(42, evidence.RH)
	})
	for _, c := range []struct {
		changes []func(*report.Job)
		want    string
	}{
		{nil, "60 to 80, 35 to 45"},
		{do(strict), "65 to 80, 35 to 42"},
		{do(strict, flooring(func(p *limits.Product) { p.AirTempMin = says(62, evidence.Fahrenheit) })), "65 to 80, 35 to 42"},
		{do(kind("bamboo")), "60 to 80, 35 to 45"},
		{do(kind("carpet")), "65 to 95, 65"},
		{do(kind("resilient")), "65 to 85, 65"},
		{do(kind("laminate")), "65 to 85, 65"},
	} {
		l := limitsOf(c.changes...)
		if got := l.AirTemp.Figures() + ", " + l.AirRH.Figures(); got != c.want {
			t.Errorf("got %s, want %s", got, c.want)
		}
	}
	if l := limitsOf(func(j *report.Job) { j.Climates = nil }); l.AirRH.Lack == "" {
		t.Error("without a service climate the humidity of the air is known")
	}
}

// Every limit has a column, a place among the limits in force, and checks of
// the catalog that read it.
func TestLimitKindsAreWhole(t *testing.T) {
	seen := map[string]bool{}
	for _, k := range limits.Kinds() {
		if k.What == "" || len(k.Columns()) == 0 {
			t.Errorf("%+v is not whole", k.What)
		}
		for _, c := range k.Columns() {
			if seen[c.Name] {
				t.Errorf("%s stands twice", c.Name)
			}
			seen[c.Name] = true
		}
		for _, id := range k.Checks {
			if !slices.Contains(report.Order(), id) {
				t.Errorf("%s names a check %s", k.What, id)
			}
		}
	}
	if len(seen) != 14 {
		t.Errorf("%d columns", len(seen))
	}
}

// A margin changed in one unit counts in the other where it is the stricter.
func TestDewMargins(t *testing.T) {
	set := func(f, c float64) func(*report.Job) {
		return func(j *report.Job) {
			j.Settings.DewMarginF, j.Settings.DewMarginC = num(f, evidence.Fahrenheit), num(c, evidence.Celsius)
		}
	}
	for _, c := range []struct {
		f, c float64
		want string
	}{
		{5, 3, "5 and 3"},
		{5, 2, "5 and 2"},
		{5, 4, "7.2 and 4"},
		{9, 3, "9 and 5"},
		{4, 3, "4 and 3"},
		{9, 1, "9 and 1"},
		{5.4, 3, "5.4 and 3"},
	} {
		j := small()
		set(c.f, c.c)(&j)
		room := report.Judge(j)[0].Site.Room
		if got := room.DewF.Number.Exact().Short() + " and " + room.DewC.Number.Exact().Short(); got != c.want {
			t.Errorf("%v F and %v C give %s, want %s", c.f, c.c, got, c.want)
		}
	}
}
