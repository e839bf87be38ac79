package acclimate_test

import (
	"math"
	"strconv"
	"testing"
	"time"

	"firstboard/acclimate"
	"firstboard/testdata/published"
)

// The limits of the classes are recalled (EN ISO 13788), and so is their line:
// level to 0 C outdoors, half at 10 C, zero from 20 C. A class reaches from the
// limit of the one before to its own; its middle counts.
func TestMoistureClassesFollowTheRecalledLine(t *testing.T) {
	classes := acclimate.MoistureClasses()
	below := 0.0
	for i, row := range published.Rows(t, "iso13788-classes.csv") {
		t.Run("class "+row[0], func(t *testing.T) {
			limit, class := published.Number(t, row[1]), classes[i]
			if strconv.Itoa(class.Class) != row[0] || class.Building == "" || class.UpperPa != limit || class.LowerPa != below {
				t.Fatalf("class %d, %q, from %v to %v Pa", class.Class, class.Building, class.LowerPa, class.UpperPa)
			}
			middle := (below + limit) / 2
			below = limit
			for outdoor, want := range map[float64]float64{-15: middle, 0: middle, 5: 0.75 * middle, 10: middle / 2, 20: 0, 31: 0} {
				if got := class.Excess(outdoor); math.Abs(got-want) > 1e-9 {
					t.Errorf("at %v C outdoors the excess is %v Pa, want %v", outdoor, got, want)
				}
			}
		})
	}
}

// home is heated to 20 C, cooled to 25 C, 3 C warmer than outdoors in between,
// its coil at 10 C.
func home(class int) acclimate.Indoors {
	return acclimate.Indoors{
		HeatToC: 20, Cooled: true, CoolToC: 25, WarmerC: 3, CoilDewC: 10,
		Moisture: acclimate.MoistureClasses()[class-1],
	}
}

// The saturation pressures are the reference library's: 1228.0 Pa at 10 C,
// 2338.80 Pa at 20 C, 3169.22 Pa at 25 C.
func TestIndoorAirWorkedByHand(t *testing.T) {
	saturated := map[float64]float64{}
	for _, row := range published.Rows(t, "moist-air.csv") {
		saturated[published.Number(t, row[0])] = published.Number(t, row[3])
	}
	for _, c := range []struct {
		name             string
		class            int
		outC, vapor      float64
		wantC, wantVapor float64
	}{
		{"winter, class 2", 2, -10, 260, 20, 260 + 405},
		{"winter, class 4", 4, -10, 260, 20, 260 + 945},
		{"just freezing", 3, 0, 500, 20, 500 + 675},
		{"spring", 3, 10, 900, 20, 900 + 337.5},
		{"at the heating set point", 3, 17, 1200, 20, 1200 + 101.25},
		{"at the cooling set point", 3, 22, 2000, 25, 2000},
		{"hot and damp", 3, 30, 2000, 25, 1228.0},
		{"hot and dry", 3, 30, 900, 25, 900},
	} {
		t.Run(c.name, func(t *testing.T) {
			air, err := home(c.class).Air(acclimate.OutdoorMonth{TempC: c.outC, VaporPa: c.vapor})
			if err != nil {
				t.Fatal(err)
			}
			most, known := saturated[c.wantC]
			if !known {
				t.Fatalf("no saturation pressure is published at %v C", c.wantC)
			}
			want := 100 * c.wantVapor / most
			if air.TempC != c.wantC || math.Abs(air.RHPct-want) > 0.02 || air.Saturated || air.Cooling != (c.outC > 22) {
				t.Errorf("indoors %+v, want %v C and %.3f %%", air, c.wantC, want)
			}
		})
	}
}

func TestIndoorTemperatureFloatsBetweenTheSetPoints(t *testing.T) {
	for outdoor, want := range map[float64]float64{-40: 20, 16.5: 20, 17: 20, 19.25: 22.25, 22: 25, 22.125: 25, 40: 25} {
		air, err := home(1).Air(acclimate.OutdoorMonth{TempC: outdoor, VaporPa: 300})
		if err != nil || air.TempC != want || air.Cooling != (outdoor > 22) {
			t.Errorf("at %v C outdoors it is %v C indoors (%v), want %v", outdoor, air.TempC, err, want)
		}
		never := home(1)
		never.Cooled, never.CoolToC, never.CoilDewC = false, 0, math.NaN()
		if outdoor > 17 {
			want = outdoor + 3
		}
		if air, err := never.Air(acclimate.OutdoorMonth{TempC: outdoor, VaporPa: 300}); err != nil || air.TempC != want || air.Cooling {
			t.Errorf("at %v C outdoors it is %v C indoors without cooling (%v), want %v", outdoor, air.TempC, err, want)
		}
	}
}

// Air at 25 C holds 3169 Pa: a month with more is cut to 100 %, one with just
// less is not. Cooling would have taken it out.
func TestIndoorAirHoldsNoMoreThanItCan(t *testing.T) {
	for vapor, cut := range map[float64]bool{3160: false, 3180: true, 4200: true} {
		air, err := home(5).Air(acclimate.OutdoorMonth{TempC: 22, VaporPa: vapor})
		if err != nil || air.Saturated != cut || air.RHPct > 100 || cut && air.RHPct != 100 {
			t.Errorf("%v Pa from outdoors gives %v %% (cut: %v, %v)", vapor, air.RHPct, air.Saturated, err)
		}
		if cut && math.Abs(air.VaporPa-3169) > 1.5 {
			t.Errorf("the air holds %v Pa", air.VaporPa)
		}
	}
}

// Heating and cooling may meet.
func TestOneSetPoint(t *testing.T) {
	in := home(1)
	in.CoolToC = in.HeatToC
	for outdoor, cooling := range map[float64]bool{10: false, 17: false, 17.5: true} {
		if air, err := in.Air(acclimate.OutdoorMonth{TempC: outdoor, VaporPa: 300}); err != nil || air.TempC != 20 ||
			air.Cooling != cooling {
			t.Errorf("at %v C outdoors: %+v, %v", outdoor, air, err)
		}
	}
}

// Air that just holds its vapor is not cut.
func TestSaturatedIsMoreThanItHolds(t *testing.T) {
	most, err := acclimate.SaturationPressure(20)
	if err != nil {
		t.Fatal(err)
	}
	none := acclimate.Indoors{HeatToC: 20}
	if air, err := none.Air(acclimate.OutdoorMonth{TempC: 10, VaporPa: most}); err != nil || air.Saturated || air.RHPct != 100 {
		t.Errorf("%+v, %v", air, err)
	}
}

func TestIndoorAirOutOfRangeIsAnError(t *testing.T) {
	for _, in := range []acclimate.Indoors{
		{HeatToC: 25, Cooled: true, CoolToC: 20},
		{HeatToC: math.NaN(), Cooled: true, CoolToC: 20},
		{HeatToC: 201},
		{HeatToC: 1, Cooled: true, CoolToC: 2, CoilDewC: 201},
	} {
		if air, err := in.Air(acclimate.OutdoorMonth{TempC: 10, VaporPa: 900}); err == nil {
			t.Errorf("%+v gives %+v", in, air)
		}
	}
}

// year has two hours a month; dew points of 0 and 20 C hold 611.2 and 2338.8
// Pa (moist-air.csv), a mean of 1475.0 Pa, where the dew point of the mean 10 C
// would say 1228.
func year() []acclimate.OutdoorHour {
	var hours []acclimate.OutdoorHour
	for m := time.January; m <= time.December; m++ {
		hours = append(hours, acclimate.OutdoorHour{Month: m, TempC: float64(m), DewC: 0},
			acclimate.OutdoorHour{Month: m, TempC: float64(m) + 20, DewC: 20})
	}
	return hours
}

func TestOutdoorMonthsAreMeansOfPressures(t *testing.T) {
	hours := append(year(), acclimate.OutdoorHour{Month: time.May, TempC: 99.9, DewC: 99.9, Missing: true})
	months, err := acclimate.OutdoorMonths(hours)
	if err != nil {
		t.Fatal(err)
	}
	for i, m := range months {
		missing := 0
		if m.Month == time.May {
			missing = 1
		}
		if m.Month != time.Month(i+1) || m.TempC != float64(i+11) || math.Abs(m.VaporPa-1475.0) > 0.2 || m.Missing != missing ||
			m.Hours != 2+missing {
			t.Errorf("%+v", m)
		}
	}
}

func TestAMonthWithoutAnHourIsAnError(t *testing.T) {
	hours := year()
	hours[2].Missing, hours[3].Missing = true, true
	if _, err := acclimate.OutdoorMonths(hours); err == nil {
		t.Error("February has no hour that was measured")
	}
	if _, err := acclimate.OutdoorMonths(hours[4:]); err == nil {
		t.Error("January has no hour")
	}
	if _, err := acclimate.OutdoorMonths(append(year(), acclimate.OutdoorHour{})); err == nil {
		t.Error("an hour is of no month")
	}
}
