package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/shopspring/decimal"

	"firstboard/acclimate"
	"firstboard/report/evidence"
)

// tenths writes a number to 0.1, without a minus before zero.
func tenths(x float64) string { return decimal.NewFromFloat(x).StringFixed(1) }

// from says what made the climate, for its rows.
func (s *service) from() string {
	return fmt.Sprintf("derived from the weather file %s (%s): heated to %s, cooled to %s, between them as outdoors; outdoor vapor and the load of humidity class %s, its upper limit; class limits: EN ISO 13788, recalled",
		s.weather.Name, s.weather.Location, s.heatTo, s.coolTo, s.moisture)
}

// shown is a temperature in the unit of the climate.
func (s *service) shown(tempC float64) float64 {
	if s.unit == evidence.Fahrenheit {
		return tempC*1.8 + 32
	}
	return tempC
}

// print writes the months, the year's ends and target, and how they came.
func (s *service) print(w io.Writer, target acclimate.Target) {
	say(w, fmt.Sprintf("service climate %s, from the weather file %s", s.name, s.weather.Name), "")
	say(w, "its place, as the file says it: "+strings.ReplaceAll(s.weather.Location, ",", ", "), "")
	fmt.Fprintf(w, "\n%-10s%18s%25s\n", "", "outdoors", "indoors")
	fmt.Fprintf(w, "%-10s%9s%12s%9s%8s%8s\n", "month", "temp "+string(s.unit), "vapor Pa", "temp "+string(s.unit), "RH %", "EMC %")
	for i, p := range s.periods() {
		emc, _ := p.EMC() // known: the target is
		mark := ""
		if s.air[i].Saturated {
			mark = " *"
		}
		out := s.out[i]
		fmt.Fprintf(w, "%-10s%9s%12.0f%9s%8s%8s%s\n", p.Name, tenths(s.shown(out.TempC)), out.VaporPa,
			p.Temp.Written, p.RH.Written, emc.StringFixed(1), mark)
	}
	fmt.Fprintf(w, "\nEMC of the year: lowest %s %%, highest %s %%, target %s %% (midway)\n\n",
		target.Low.StringFixed(1), target.High.StringFixed(1), target.Mid)
	for _, note := range s.notes() {
		say(w, note, "")
	}
}

// notes say how the months were worked out and what they leave out.
func (s *service) notes() []string {
	class := s.in.Moisture
	notes := []string{
		fmt.Sprintf("indoor temperature: heated to %s, cooled to %s, between them free: the outdoor mean", s.heatTo, s.coolTo),
		fmt.Sprintf("indoor vapor: outdoor vapor and the load of humidity class %s, %s: %.0f Pa up to 0 C outdoors, falling to zero at 20 C", s.moisture, class.Building, class.ExcessPa),
		"class limits: EN ISO 13788, recalled; the upper limit is taken, the dampest air the class stands for: in winter the real air may be drier",
		"no plant dries or wets this air: where a cooler or a humidifier does, the designer's figures go before these",
		"EMC: Wood Handbook equation 4-5 (published)",
	}
	if missing := s.missing(); missing != "" {
		notes = append(notes, "hours left out, their dry bulb or dew point missing: "+missing)
	}
	for _, air := range s.air {
		if air.Saturated {
			return append(notes, "* more vapor than the air can hold, cut to 100 % RH: plant must dry this air, so the target above is not that of a floor")
		}
	}
	return notes
}

// missing are the hours that were left out, by months.
func (s *service) missing() string {
	var all []string
	for _, m := range s.out {
		if m.Missing > 0 {
			all = append(all, fmt.Sprintf("%s %d of %d", m.Month, m.Missing, m.Hours))
		}
	}
	return strings.Join(all, ", ")
}
