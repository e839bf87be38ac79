package main

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"firstboard/acclimate"
	"firstboard/report/evidence"
	"firstboard/report/lists"
)

// tenths writes a number to 0.1, without a minus before zero.
func tenths(x float64) string { return decimal.NewFromFloat(x).StringFixed(1) }

// shown is a temperature in the unit of the climate.
func (s *service) shown(tempC float64) float64 { return tempIn(s.unit, tempC) }

// print writes the months, the year's ends and target, and how they came.
func (s *service) print(w io.Writer, target acclimate.Target) {
	say(w, fmt.Sprintf("service climate %s, from the weather file %s", s.name, s.weather.Name), "")
	say(w, "its place, as the file says it: "+strings.ReplaceAll(s.weather.Location, ",", ", "), "")
	fmt.Fprintf(w, "\n%-9s%12s%17s\n", "", "outdoors", "indoors")
	fmt.Fprintf(w, "%-9s%6s%6s%6s%6s%5s\n", "", "temp", "vapor", "temp", "RH", "EMC")
	fmt.Fprintf(w, "%-9s%6s%6s%6s%6s%5s\n", "month", s.unit, "Pa", s.unit, "%", "%")
	for i, p := range s.periods() {
		emc, _ := p.EMC() // known: the target is
		mark, out := lists.If(s.air[i].Saturated, " *", lists.If(s.air[i].Cooling, " c", "")), s.out[i]
		fmt.Fprintf(w, "%-9s%6s%6.0f%6s%6s%5s%s\n", p.Name, tenths(s.shown(out.TempC)), out.VaporPa,
			p.Temp.Written, p.RH.Written, emc.Value.Fixed(1), mark)
	}
	fmt.Fprintf(w, "\nEMC of the year: lowest %s %%, highest %s %%, target %s %% (midway)\n\n",
		target.Low.Value.Fixed(1), target.High.Value.Fixed(1), target.Written())
	sayEach(w, s.notes(), "")
}

// temperatures, vapor and cooling say how the months were worked out.
func (s *service) temperatures() string {
	cooled := lists.If(s.in.Cooled, "cooled to "+s.coolTo, "not cooled")
	return fmt.Sprintf("heated to %s, %s, in between %s warmer than outdoors", s.heatTo, cooled, s.warmer)
}

func (s *service) vapor() string {
	return "outdoor vapor and the middle of humidity class " + s.moisture
}

func (s *service) cooling() string {
	return lists.If(s.in.Cooled, "while the cooling runs its coil holds the dew point at or under "+s.coil,
		"nothing dries the air")
}

// notes say how the months were worked out and what they leave out.
func (s *service) notes() []string {
	class := s.in.Moisture
	mean, _ := acclimate.YearlyEMC(s.air) // known: the target is
	notes := []string{
		"indoor temperature: " + s.temperatures(),
		fmt.Sprintf("indoor vapor: %s, %s: %.0f Pa up to 0 C outdoors, falling to zero at 20 C; class limits: EN ISO 13788, recalled",
			s.vapor(), class.Building, class.MiddlePa()),
		s.cooling(),
		"how much warmer, the set points and the coil: common practice, no source; where a humidifier or a dryer runs, the designer's figures go before these",
		"EMC: " + evidence.OpEMC.Cite().String(),
		"mean EMC of the year: " + tenths(mean) +
			" %; interior averages of the Wood Handbook (published): 8 % in most of the United States, 6 % in the dry southwest, 11 % on damp southern coasts; they are from before cooling was usual: compare them with --cool-to off",
	}
	lacking := lists.Where(s.out[:], func(m acclimate.OutdoorMonth) bool { return m.Missing > 0 })
	if len(lacking) > 0 {
		notes = append(notes, "hours left out, their dry bulb or dew point missing: "+
			strings.Join(lists.Each(lacking, func(m acclimate.OutdoorMonth) string {
				return fmt.Sprintf("%s %d of %d", m.Month, m.Missing, m.Hours)
			}), ", "))
	}
	if slices.ContainsFunc(s.air[:], func(a acclimate.IndoorAir) bool { return a.Cooling && !a.Saturated }) {
		notes = append(notes, "c a month in which the cooling runs")
	}
	if slices.ContainsFunc(s.air[:], func(a acclimate.IndoorAir) bool { return a.Saturated }) {
		notes = append(notes, "* more vapor than the air can hold, cut to 100 % RH: plant must dry this air, so the target above is not that of a floor")
	}
	return notes
}
