package wood

import (
	"fmt"
	"strconv"

	"firstboard/report/evidence"
)

// Corrected is the scale word of a reading that was corrected already.
const Corrected = "corrected"

// Moisture is what a row says of its piece: the moisture content it is judged
// by, and, where that was corrected, how, in words, and by which publication.
// Lack says why it says nothing.
type Moisture struct {
	Value   evidence.Exact
	Written string
	How     string
	Cite    evidence.Cite
	Lack    string
}

// MoistureOf reads a row. Flooring without a species of its own is of the
// flooring's.
//
// A resistance meter is read from 6 to 30 %, a dielectric one from 4 to 30 %
// (Wood Handbook ch. 13): a reading under that says nothing, one over it
// stands as read.
func MoistureOf(r Row, coveringSpecies string) Moisture {
	species := r.Species
	if species == "" && r.Of == OfFlooring {
		species = coveringSpecies
	}
	switch lack := unreadable(r, species); {
	case lack != "":
		return Moisture{Lack: lack}
	case r.Method != Pin:
		return asRead(r)
	}
	return correct(r, species)
}

func asRead(r Row) Moisture {
	return Moisture{Value: r.Reading.Exact(), Written: r.Reading.Written}
}

func unreadable(r Row, species string) string {
	lowest, bounded := map[string]int{Pin: driest, Pinless: 4}[r.Method]
	scale := evidence.Key(r.Scale)
	switch {
	case !r.Reading.Shown():
		return "no reading"
	case r.Method == "":
		return "no method"
	case bounded && r.Reading.Exact().Cmp(evidence.Whole(lowest)) < 0:
		return fmt.Sprintf("it read %s, under the %d %% that a %s meter can read", r.Reading, lowest, r.Method)
	case r.Method == Pinless && scale == "":
		return "a pinless meter's setting is not recorded"
	case IsPanel(species) && (scale == "" || scale == Corrected):
		return "the meter's setting for a " + evidence.Key(species) + " panel is not recorded"
	}
	return ""
}

// correct applies the temperature first and the species second, and rounds
// once, to 0.1 half to even.
func correct(r Row, species string) Moisture {
	value, how, cite := r.Reading.Exact(), "", temperatureCite()
	high := value.Cmp(evidence.Whole(wettest)) > 0
	if r.TempCorrected == "no" && r.WoodTemp.Shown() && !high {
		warm, ok := ForTemperature(value, r.WoodTemp.In(evidence.Celsius))
		if !ok {
			return Moisture{Lack: fmt.Sprintf("the wood was at %s, off the temperature table (-20 to 50 C)", r.WoodTemp)}
		}
		value, how = warm, "for wood at "+r.WoodTemp.String()
	}
	if onOtherScale(r.Scale, species) {
		if SpeciesName(species) == "" {
			return Moisture{Lack: "read on the scale of " + r.Scale + ", and the species is not recorded"}
		}
		if value.Cmp(evidence.Whole(wettest)) <= 0 {
			of, ok := ForSpecies(value.Float(), r.Scale, species)
			if !ok {
				return Moisture{Lack: fmt.Sprintf("read on the scale of %s, and no table corrects that to %s", r.Scale, species)}
			}
			cite = speciesCite(how != "")
			value, how = fromFloat(of), joinHow(how, "from the scale of "+r.Scale+" to "+species)
		}
	}
	if how == "" {
		return asRead(r)
	}
	return Moisture{
		Value: value.Round(1), Written: value.Fixed(1),
		How: fmt.Sprintf("read %s, corrected %s", r.Reading, how), Cite: cite,
	}
}

// onOtherScale says whether a pin reading stands on the scale of a wood other
// than its own. A blank scale says the meter was set to that wood.
func onOtherScale(scale, species string) bool {
	key := evidence.Key(scale)
	if key == "" || key == Corrected || IsPanel(key) && (species == "" || IsPanel(species)) {
		return false
	}
	return SpeciesName(scale) != SpeciesName(species)
}

func temperatureCite() evidence.Cite {
	return evidence.Cite{Source: "James 1988, FPL-GTR-6, Figure 5, as digitised by a third party", Standing: evidence.Published}
}

func speciesCite(andTemperature bool) evidence.Cite {
	c := evidence.Cite{Source: "FPL-GTR-6 Table 1 and VTT Publications 420 Table 5, as regressed in a public thesis", Standing: evidence.Published}
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

// fromFloat is where a float64 of the species correction becomes a decimal.
func fromFloat(x float64) evidence.Exact {
	n, _ := strconv.ParseInt(strconv.FormatFloat(x*1e9, 'f', 0, 64), 10, 64)
	return evidence.Ratio(n, 1e9)
}
