package acclimate

import (
	"fmt"
	"math"
	"time"

	"firstboard/wood"
)

// OutdoorHour is one hour of a weather file. Missing says that its
// temperature or its dew point was not measured: it then counts for nothing.
type OutdoorHour struct {
	Month       time.Month
	TempC, DewC float64
	Missing     bool
}

// OutdoorMonth is the outdoor air of one month: the plain means of its hours'
// dry bulb, C, and vapor pressure, Pa, and how many hours it had and lacked.
type OutdoorMonth struct {
	Month          time.Month
	TempC, VaporPa float64
	Hours, Missing int
}

// OutdoorMonths gives the means of the twelve months from the hours of a year
// in any order.
//
// An hour's vapor pressure is the saturation pressure at its dew point
// (SaturationPressure: over ice below 0.01 C; a station that counts it over
// water there has up to a tenth more at -10 C). The mean is of the pressures,
// not the pressure at the mean dew point, which is lower. A month without an
// hour that was measured is an error, and so is an hour of no month.
func OutdoorMonths(hours []OutdoorHour) ([12]OutdoorMonth, error) {
	var months [12]OutdoorMonth
	for _, h := range hours {
		if h.Month < time.January || h.Month > time.December {
			return months, fmt.Errorf("month %d is none of the twelve", int(h.Month))
		}
		m := &months[h.Month-time.January]
		m.Hours++
		if h.Missing {
			m.Missing++
			continue
		}
		vapor, err := SaturationPressure(h.DewC)
		if err != nil {
			return months, fmt.Errorf("%s: dew point: %w", h.Month, err)
		}
		m.TempC += h.TempC
		m.VaporPa += vapor
	}
	for i := range months {
		m := &months[i]
		m.Month = time.January + time.Month(i)
		n := float64(m.Hours - m.Missing)
		if n == 0 {
			return months, fmt.Errorf("%s: no hour was measured", m.Month)
		}
		m.TempC /= n
		m.VaporPa /= n
	}
	return months, nil
}

// MoistureClass is an internal humidity class: how much moisture the use of a
// building adds to its air, from one vapor pressure to another.
//
// Source: EN ISO 13788, internal humidity classes; recalled, not read. One
// public program draws the lines to 100 Pa (class 5: 200 Pa) at 20 C instead
// of zero.
type MoistureClass struct {
	Class            int    // 1 to 5
	Building         string // what it stands for
	LowerPa, UpperPa float64
}

// MoistureClasses are the five classes with the limits of each, the indoor
// vapor pressure less the outdoor one at 0 C outdoors and below, Pa. Class 5 has
// no upper limit; 1360 Pa is used as its cap.
func MoistureClasses() []MoistureClass {
	return []MoistureClass{
		{1, "unoccupied, dry-goods storage", 0, 270},
		{2, "offices, dwellings with normal occupancy and ventilation", 270, 540},
		{3, "unknown occupancy", 540, 810},
		{4, "sports halls, kitchens, canteens", 810, 1080},
		{5, "laundry, brewery, swimming pool", 1080, 1360},
	}
}

// MiddlePa is the middle of the class at 0 C outdoors and below, Pa.
func (m MoistureClass) MiddlePa() float64 { return (m.LowerPa + m.UpperPa) / 2 }

// Excess gives how much more vapor pressure the indoor air has than the
// outdoor air, Pa, from the outdoor monthly mean temperature, C: the middle of
// the class up to 0 C, zero from 20 C, a straight line between.
//
// Source: EN ISO 13788, the figure of the classes; recalled.
func (m MoistureClass) Excess(outdoorC float64) float64 {
	const warm = 20
	return m.MiddlePa() * math.Min(1, math.Max(0, (warm-outdoorC)/warm))
}

// Indoors is how a building is heated, cooled and used. Between the set
// points, C, it is warmer than outdoors by WarmerC. While its cooling runs, the
// coil holds the dew point at CoilDewC at most.
type Indoors struct {
	HeatToC  float64
	Cooled   bool
	CoolToC  float64
	WarmerC  float64
	CoilDewC float64
	Moisture MoistureClass
}

// IndoorAir is the mean indoor air of a month. Saturated says that more vapor
// came in than the air can hold, so that its humidity was cut to 100 %.
type IndoorAir struct {
	TempC, VaporPa, RHPct float64
	Cooling, Saturated    bool
}

// Air gives the mean indoor air of a month from the outdoor air: the outdoor
// mean temperature and WarmerC, held between the set points, and the outdoor
// vapor pressure with the class's excess, while the cooling runs at most the
// saturation pressure at CoilDewC, and always at most that at the indoor
// temperature. The cooling runs in a month that would be warmer than CoolToC.
//
// Source: the balance of EN ISO 13788 with its monthly means; recalled. What
// the coil does, and how much warmer a free building is: common practice, no
// source. The temperatures are -100 to 200 C, heating at or below cooling. Out
// of range is an error.
func (in Indoors) Air(out OutdoorMonth) (IndoorAir, error) {
	if in.Cooled && !(in.HeatToC <= in.CoolToC) {
		return IndoorAir{}, fmt.Errorf("heating to %.4g C lies above cooling to %.4g C", in.HeatToC, in.CoolToC)
	}
	air := IndoorAir{
		TempC:   math.Max(out.TempC+in.WarmerC, in.HeatToC),
		VaporPa: out.VaporPa + in.Moisture.Excess(out.TempC),
	}
	if air.Cooling = in.Cooled && out.TempC+in.WarmerC > in.CoolToC; air.Cooling {
		coil, err := SaturationPressure(in.CoilDewC)
		if err != nil {
			return IndoorAir{}, fmt.Errorf("the dew point that the coil holds: %w", err)
		}
		air.TempC, air.VaporPa = in.CoolToC, math.Min(air.VaporPa, coil)
	}
	most, err := SaturationPressure(air.TempC)
	if err != nil {
		return IndoorAir{}, err
	}
	air.Saturated = air.VaporPa > most
	air.VaporPa = math.Min(air.VaporPa, most)
	air.RHPct = 100 * air.VaporPa / most
	return air, nil
}

// YearlyEMC is the mean over the months of the equilibrium moisture content of
// wood in the indoor air, % MC.
func YearlyEMC(months [12]IndoorAir) (float64, error) {
	sum := 0.0
	for _, m := range months {
		emc, err := wood.EMC(m.TempC, m.RHPct)
		if err != nil {
			return 0, err
		}
		sum += emc
	}
	return sum / 12, nil
}
