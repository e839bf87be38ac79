package wood

import (
	"fmt"

	"firstboard/report/evidence"
)

// Corrected is the scale word of a reading that was corrected already.
const Corrected = "corrected"

// Lowest readings that a meter can give, in % MC: Wood Handbook ch. 13.
const (
	leastPin     = 6
	leastPinless = 4
)

// Moisture is what a row says of its piece: the moisture content it is judged
// by, how that came about, and, where it was corrected, how in words and by
// which publication. Lack says why it says nothing.
type Moisture struct {
	Work    evidence.Working
	Written string
	How     string
	Cite    evidence.Cite
	Lack    string
}

// Value is the moisture content itself.
func (m Moisture) Value() evidence.Exact { return m.Work.Value }

// MoistureOf reads a row. Flooring without a species of its own is of the
// flooring's.
//
// A resistance meter is read from 6 to 30 %, a dielectric one from 4 to 30 %
// (Wood Handbook ch. 13): a reading under that says nothing, one over it
// stands as read.
func MoistureOf(r Row, flooringSpecies string) Moisture {
	species := r.Species
	if evidence.Key(species) == "" && r.Of == OfFlooring {
		species = flooringSpecies
	}
	if lack := unreadable(r, species); lack != "" {
		return Moisture{Lack: lack}
	}
	if r.Method != Pin {
		return asRead(r)
	}
	return correct(r, species)
}

func asRead(r Row) Moisture {
	return Moisture{Work: evidence.Cell("reading", r.Reading), Written: r.Reading.Written}
}

func unreadable(r Row, species string) string {
	least, metered := map[string]int{Pin: leastPin, Pinless: leastPinless}[r.Method]
	scale := evidence.Key(r.Scale)
	switch {
	case !r.Reading.Shown():
		return "no reading"
	case r.Method == "":
		return "no method"
	case !metered:
		return ""
	case r.Reading.Exact().Cmp(evidence.Whole(least)) < 0:
		return fmt.Sprintf("it read %s, under the %d %% that a %s meter can read", r.Reading, least, r.Method)
	case IsPanel(species) && (scale == "" || scale == Corrected):
		return "the meter's setting for a " + evidence.Key(species) + " panel is not recorded"
	case scale == "":
		return "the scale that the " + r.Method + " meter was set to is not recorded"
	}
	return ""
}

// correct applies the temperature first and the species second, and rounds
// once, to 0.1 half to even.
func correct(r Row, species string) Moisture {
	value, how, cite := line{r.Reading.Exact(), evidence.Whole(1)}, "", temperatureCite()
	if r.TempCorrected == "no" && r.WoodTemp.Shown() && !value.wet() {
		warm, ok := forTemperature(value.at, r.WoodTemp.In(evidence.Celsius))
		if !ok {
			return Moisture{Lack: fmt.Sprintf("the wood was at %s, off the temperature table (%d to %d C)", r.WoodTemp,
				coldest, hottest)}
		}
		value, how = warm, "for wood at "+r.WoodTemp.String()
	}
	if onOtherScale(r.Scale, species) {
		if SpeciesName(species) == "" {
			return Moisture{Lack: "read on the scale of " + r.Scale + ", and the species is not recorded"}
		}
		if !value.wet() {
			turned, ok := value.forSpecies(r.Scale, species)
			if !ok {
				return Moisture{Lack: fmt.Sprintf("read on the scale of %s, and no table corrects that to %s", r.Scale,
					species)}
			}
			cite = speciesCite(how != "")
			value, how = turned, joinHow(how, "from the scale of "+r.Scale+" to "+species)
		}
	}
	if how == "" {
		return asRead(r)
	}
	work := value.about(r.Reading)
	return Moisture{
		Work: work, Written: work.Value.Fixed(1), How: fmt.Sprintf("read %s, corrected %s", r.Reading, how),
		Cite: cite,
	}
}

// onOtherScale says whether a pin reading stands on the scale of a wood other
// than its own.
func onOtherScale(scale, species string) bool {
	key := evidence.Key(scale)
	if key == Corrected || IsPanel(key) && (evidence.Key(species) == "" || IsPanel(species)) {
		return false
	}
	return SpeciesName(scale) != SpeciesName(species)
}

func temperatureCite() evidence.Cite {
	return evidence.Cite{
		Source:   "James 1988, FPL-GTR-6, Figure 5, as digitized by a third party",
		Standing: evidence.Published,
	}
}

func speciesCite(andTemperature bool) evidence.Cite {
	c := evidence.Cite{
		Source:   "FPL-GTR-6 Table 1 and VTT Publications 420 Table 5, as regressed in a public thesis",
		Standing: evidence.Published,
	}
	if andTemperature {
		c.Source = temperatureCite().Source + "; " + c.Source
	}
	return c
}

func joinHow(first, then string) string {
	if first == "" {
		return then
	}
	return first + ", then " + then
}
