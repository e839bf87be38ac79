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
// level to 0 C outdoors, half at 10 C, zero from 20 C.
func TestMoistureClassesFollowTheRecalledLine(t *testing.T) {
	classes := acclimate.MoistureClasses()
	for i, row := range published.Rows(t, "iso13788-classes.csv") {
		t.Run("class "+row[0], func(t *testing.T) {
			limit, class := published.Number(t, row[1]), classes[i]
			if strconv.Itoa(class.Class) != row[0] || class.Building == "" {
				t.Fatalf("class %d, %q", class.Class, class.Building)
			}
			for outdoor, want := range map[float64]float64{-15: limit, 0: limit, 5: 0.75 * limit, 10: limit / 2, 20: 0, 31: 0} {
				if got := class.Excess(outdoor); math.Abs(got-want) > 1e-9 {
					t.Errorf("at %v C outdoors the excess is %v Pa, want %v", outdoor, got, want)
				}
			}
		})
	}
}

func home(class int) acclimate.Indoors {
	return acclimate.Indoors{HeatToC: 20, CoolToC: 25, Moisture: acclimate.MoistureClasses()[class-1]}
}

// The saturation pressures are the reference library's: 2338.80 Pa at 20 C,
// 3169.22 Pa at 25 C.
func TestIndoorAirWorkedByHand(t *testing.T) {
	saturated := map[float64]float64{}
	for _, row := range published.Rows(t, "moist-air.csv") {
		saturated[published.Number(t, row[0])] = published.Number(t, row[3])
	}
	for _, c := range []struct {
		name             string
		class            int
		outC, vapor      float64
		wantC, wantExtra float64
	}{
		{"winter, class 2", 2, -10, 260, 20, 540},
		{"winter, class 4", 4, -10, 260, 20, 1080},
		{"just freezing", 3, 0, 500, 20, 810},
		{"spring", 3, 10, 900, 20, 405},
		{"at the heating set point", 3, 20, 1200, 20, 0},
		{"hot", 3, 30, 2000, 25, 0},
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
			want := 100 * (c.vapor + c.wantExtra) / most
			if air.TempC != c.wantC || math.Abs(air.RHPct-want) > 0.01 || air.Saturated {
				t.Errorf("indoors %v C and %.3f %% (cut: %v), want %v C and %.3f %%", air.TempC, air.RHPct, air.Saturated, c.wantC, want)
			}
		})
	}
}

func TestIndoorTemperatureFloatsBetweenTheSetPoints(t *testing.T) {
	for outdoor, want := range map[float64]float64{-40: 20, 19.9: 20, 20: 20, 22.3: 22.3, 25: 25, 25.1: 25, 40: 25} {
		air, err := home(1).Air(acclimate.OutdoorMonth{TempC: outdoor, VaporPa: 300})
		if err != nil || air.TempC != want {
			t.Errorf("at %v C outdoors it is %v C indoors (%v), want %v", outdoor, air.TempC, err, want)
		}
	}
}

// Air at 25 C holds 3169 Pa: a month with more is cut to 100 %, one with just
// less is not.
func TestIndoorAirHoldsNoMoreThanItCan(t *testing.T) {
	for vapor, cut := range map[float64]bool{3160: false, 3180: true, 4200: true} {
		air, err := home(5).Air(acclimate.OutdoorMonth{TempC: 30, VaporPa: vapor})
		if err != nil || air.Saturated != cut || air.RHPct > 100 || cut && air.RHPct != 100 {
			t.Errorf("%v Pa from outdoors gives %v %% (cut: %v, %v)", vapor, air.RHPct, air.Saturated, err)
		}
		if cut && math.Abs(air.VaporPa-3169) > 1.5 {
			t.Errorf("the air holds %v Pa", air.VaporPa)
		}
	}
}

func TestIndoorAirOutOfRangeIsAnError(t *testing.T) {
	out := acclimate.OutdoorMonth{TempC: 10, VaporPa: 900}
	for _, in := range []acclimate.Indoors{
		{HeatToC: 25, CoolToC: 20},
		{HeatToC: math.NaN(), CoolToC: 20},
		{HeatToC: 201, CoolToC: 300},
	} {
		if air, err := in.Air(out); err == nil {
			t.Errorf("heated to %v and cooled to %v C gives %+v", in.HeatToC, in.CoolToC, air)
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
		if m.Month != time.Month(i+1) || m.TempC != float64(i+11) || math.Abs(m.VaporPa-1475.0) > 0.2 || m.Missing != missing || m.Hours != 2+missing {
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
