package wood_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"firstboard/report/evidence"
	"firstboard/wood"
)

// The ranges of meters (Wood Handbook ch. 13), the settings they need, and what
// a scale says of a wood.
func TestWhatAReadingSays(t *testing.T) {
	const lacks = ""
	for _, c := range []struct{ method, reading, scale, species, want string }{
		{"pin", "5.9", "red oak", "red oak", lacks},
		{"pin", "6", "red oak", "red oak", "6"},
		{"pin", "6.10", "red oak", "red oak", "6.10"},
		{"pin", "30", "red oak", "red oak", "30"},
		{"pin", "30.1", "red oak", "red oak", "30.1"},
		{"pinless", "3.9", "gravity 0.56", "red oak", lacks},
		{"pinless", "4", "gravity 0.56", "red oak", "4"},
		{"pinless", "45", "gravity 0.56", "red oak", "45"},
		{"oven-dry", "0", "", "red oak", "0"},
		{"oven-dry", "3.9", "", "plywood", "3.9"},
		{"", "8", "red oak", "red oak", lacks},
		{"pin", "", "red oak", "red oak", lacks},

		{"pin", "8", "", "red oak", lacks},
		{"pinless", "8", " ", "red oak", lacks},
		{"pin", "8", "corrected", "red oak", "8"},
		{"pin", "8", "corrected", "", "8"},
		{"pinless", "8", "corrected", "hickory", "8"},
		{"pin", "8", "plywood", "plywood", "8"},
		{"pin", "8", "plywood", "", "8"},
		{"pin", "8", "OSB", "osb", "8"},
		{"pin", "8", "corrected", "plywood", lacks},
		{"pin", "8", "", "plywood", lacks},
		{"pinless", "8", "corrected", "particleboard", lacks},
		{"pinless", "8", "gravity 0.6", "MDF", "8"},
		{"pin", "8", "douglas fir", "plywood", lacks},
		{"pin", "8", "plywood", "red oak", lacks},
		{"pin", "8", "red oak", "", lacks},

		{"pin", "8", "maple", "Hard Maple", "8"},
		{"pin", "8", "Maple, sugar (hard maple)", "maple", "8"},
		{"pin", "8", "walnut", "black walnut", "8"},
		{"pin", "8", "Brazilian cherry", "jatoba", "8"},
		{"pin", "8", "hickory", "Hickory, true", "8"},
		{"pin", "8", "Oak, northern red", "red oak", "8"},
		{"pin", "8", "Douglas-fir (coast)", "doug fir", "8"},
		{"pin", "8", "red oak", "hickory", lacks},
		{"pin", "8", "red oak", "white oak", lacks},
		{"pin", "8", "white oak", "red oak", lacks},
		{"pin", "8", "red oak", "black ash", lacks},
		{"pin", "25.1", "red oak", "white oak", "25.1"},
	} {
		r := board("B1", 0, c.reading)
		r.Method, r.Scale, r.Species = c.method, c.scale, c.species
		m := wood.MoistureOf(r, "")
		if m.Written != c.want || (m.Lack == "") != (c.want != lacks) {
			t.Errorf("%s %s on %q of %q: %q (%s), want %q", c.method, c.reading, c.scale, c.species, m.Written, m.Lack, c.want)
		}
		if c.want != lacks && (m.Work.Op != evidence.OpTyped || m.Value().Cmp(r.Reading.Exact()) != 0 || m.How != "") {
			t.Errorf("%s stands as read, and is %v", c.reading, m)
		}
	}
	r := board("B1", 0, "8")
	r.Method, r.Scale, r.Species = wood.Pin, "", "plywood"
	if m := wood.MoistureOf(r, ""); m.Lack != "the meter's setting for a plywood panel is not recorded" {
		t.Errorf("plywood without a scale: %s", m.Lack)
	}
}

// Flooring without a species is of the flooring's; a subfloor is not.
func TestFlooringIsOfItsOwnSpecies(t *testing.T) {
	r := board("B1", 0, "8")
	r.Method, r.Scale, r.Species = wood.Pin, "maple", " "
	if m := wood.MoistureOf(r, "hard maple"); m.Lack != "" {
		t.Errorf("a board of the flooring: %s", m.Lack)
	}
	if m := wood.Gather([]wood.Row{r}, "hard maple", r.ReadAt.First).Rows[0].Moisture(); m.Lack != "" {
		t.Errorf("a gathered board of the flooring: %s", m.Lack)
	}
	if m := r.Moisture(); m.Lack == "" {
		t.Error("a row that was not gathered has no species but its own")
	}
	r.Of = wood.OfSubfloor
	if m := wood.MoistureOf(r, "hard maple"); m.Lack == "" {
		t.Error("a subfloor is not of the flooring's species")
	}
}

// The correction by species, at the ends of its fit: from the table's own
// coefficients (FPL-GTR-6 Table 1, as regressed).
func TestPinReadingsOfAnotherScale(t *testing.T) {
	of := func(shown float64) string {
		logR := (math.Log10(shown) - 1.7003) / -0.12007 // Douglas-fir
		return strconv.FormatFloat(math.Pow(10, 1.7078-0.12209*logR), 'f', 1, 64)
	}
	for _, c := range []struct{ reading, want string }{
		{"6.9", ""}, {"7", of(7)}, {"9.3", of(9.3)}, {"12.0", of(12)}, {"18.55", of(18.55)}, {"25", of(25)}, {"25.1", "25.1"},
	} {
		r := board("B1", 0, c.reading)
		r.Method, r.Scale, r.Species = wood.Pin, "Douglas-fir", "red oak"
		m := wood.MoistureOf(r, "")
		if m.Written != c.want {
			t.Errorf("%s on the scale of Douglas-fir is %q of red oak (%s), want %q", c.reading, m.Written, m.Lack, c.want)
		}
		if m.How != "" {
			holdsTree(t, r, m)
			if strings.Contains(m.Cite.Source, "Figure 5") {
				t.Errorf("no temperature was corrected, and its source is %s", m.Cite.Source)
			}
		}
	}
}

// holdsTree checks that a corrected value is a line of the reading's own cell,
// rounded to 0.1, whose slope is that of the tables close by.
func holdsTree(t *testing.T, r wood.Row, m wood.Moisture) {
	t.Helper()
	w := m.Work
	if w.Op != evidence.OpRound || w.Places != 1 || w.Args[0].Op != evidence.OpSum || w.Value.Fixed(1) != m.Written || m.Cite.Source == "" {
		t.Fatalf("the tree of %s is %v", r.Reading, w)
	}
	start, times := w.Args[0].Args[0], w.Args[0].Args[1]
	if cell := times.Args[1]; cell.Op != evidence.OpTyped || cell.Place != r.Reading.Place {
		t.Errorf("the reading's cell is %v", cell)
	}
	step := evidence.Ratio(1, 1000)
	if r.Reading.Exact().Cmp(evidence.Whole(8)) < 0 {
		step = evidence.Ratio(-1, 1000) // under 7 the table says nothing
	}
	near := r
	near.Reading.Value = r.Reading.Value.Sub(step.Decimal())
	line := start.Value.Add(times.Args[0].Value.Mul(near.Reading.Exact()))
	if off := line.Sub(unrounded(near)).Abs(); off.Cmp(evidence.Ratio(1, 100_000)) > 0 {
		t.Errorf("0.001 from %s the line is %s off the tables", r.Reading, off.Text())
	}
}

// unrounded is what the tables give, by the functions that print them.
func unrounded(r wood.Row) evidence.Exact {
	x := r.Reading.Exact()
	if r.TempCorrected == "no" {
		x, _ = wood.ForTemperature(x, r.WoodTemp.In(evidence.Celsius))
	}
	if !evidence.Same(r.Scale, r.Species) {
		mc, _ := wood.ForSpecies(x.Float(), r.Scale, r.Species)
		x = evidence.Ratio(int64(math.Round(mc*1e9)), 1e9)
	}
	return x
}

// The temperature comes first, the species second; one rounding.
func TestPinReadingsOfColdAndWarmWood(t *testing.T) {
	for _, c := range []struct{ reading, temp, said, scale, want string }{
		{"18", "120", "no", "red oak", "14.1"}, // the example printed with the figure: 14
		{"18", "120", "yes", "red oak", "18"},
		{"18", "120", "", "red oak", "18"},
		{"18", "", "no", "red oak", "18"},
		{"12", "-4", "no", "red oak", "20.1"}, // -20 C
		{"12", "122", "no", "red oak", "8.9"}, // 50 C
		{"12", "-4.1", "no", "red oak", ""},   // off the table
		{"12", "122.1", "no", "red oak", ""},  // off the table
		{"6", "-4", "no", "red oak", "10.7"},  // the first column
		{"25", "-4", "no", "red oak", "42.7"}, // the last column
		{"25.1", "-4", "no", "red oak", "25.1"},
		{"25.1", "-10", "no", "red oak", "25.1"},
		{"12.4", "86", "no", "corrected", "11.3"}, // 30 C: -1.1 at 12 and 13
		{"8", "95", "no", "red oak", "6.8"},       // 35 C: -1.2
		{"24", "-4", "no", "douglas fir", "40.7"}, // over 25 once it is corrected: no table goes on
		{"24", "60", "no", "douglas fir", "25.3"}, // 1.4 points at 15 C and 0.2 at 20 C make 1.27: the same
		{"8", "122", "no", "douglas fir", ""},     // 5.6 once it is corrected
	} {
		r := board("B1", 0, c.reading)
		r.Method, r.Scale, r.Species, r.TempCorrected = wood.Pin, c.scale, "red oak", c.said
		if c.temp != "" {
			r.WoodTemp = evidence.Typed(c.temp, evidence.Fahrenheit)
		}
		m := wood.MoistureOf(r, "")
		if m.Written != c.want || (m.Lack == "") != (c.want != "") {
			t.Errorf("%s at %s F on %s: %q (%s), want %q", c.reading, c.temp, c.scale, m.Written, m.Lack, c.want)
		}
	}
}

func TestBothCorrectionsAreOneLine(t *testing.T) {
	for _, reading := range []string{"9.3", "12.25", "16.7", "21.05"} {
		for _, temp := range []string{"41.5", "63", "77.77", "103"} {
			r := board("B1", 0, reading)
			r.Method, r.Scale, r.Species, r.TempCorrected = wood.Pin, "Douglas-fir", "red oak", "no"
			r.WoodTemp = evidence.Typed(temp, evidence.Fahrenheit)
			m := wood.MoistureOf(r, "")
			if m.Lack != "" || m.Written != unrounded(r).Fixed(1) {
				t.Errorf("%s at %s F: %s (%s), want %s", reading, temp, m.Written, m.Lack, unrounded(r).Fixed(1))
				continue
			}
			holdsTree(t, r, m)
			if source := m.Cite.Source; !strings.Contains(source, "Figure 5") || !strings.Contains(source, "Table 1") {
				t.Errorf("its source is %s", source)
			}
			if !strings.Contains(m.How, "for wood at "+temp+" F, then from the scale of Douglas-fir to red oak") {
				t.Errorf("it says %q", m.How)
			}
		}
	}
}

// Every name of the trade stands for a name that stands for no other.
func TestSynonyms(t *testing.T) {
	names := map[string]string{}
	for _, s := range wood.Synonyms() {
		if names[s.Name] != "" || wood.SpeciesName(s.Means) != s.Means || wood.SpeciesName(s.Name) != s.Means {
			t.Errorf("%s means %s and %s", s.Name, s.Means, names[s.Name])
		}
		names[s.Name] = s.Means
	}
	for name, common := range map[string]string{
		"maple": "Maple, sugar (hard maple)", "hickory": "Hickory, true", "walnut": "Walnut, black", "red oak": "Red oak, commercial",
		"northern red oak": "Red oak, commercial", "white oak": "White oak, commercial", "Brazilian cherry": "Brazilian cherry (jatoba)",
		"jatoba": "Jatoba (Brazilian cherry)", "Acer saccharum": "Maple, sugar (hard maple)",
	} {
		if s, err := wood.FindSpecies(name); err != nil || s.Common != common {
			t.Errorf("%s is %s (%v), want %s", name, s.Common, err, common)
		}
	}
	if s, err := wood.FindSpecies("nosuchwood"); err == nil {
		t.Errorf("nosuchwood is %s", s.Common)
	}
}
