package acclimate_test

import (
	"math"
	"testing"
	"time"

	"firstboard/acclimate"
)

// town is a place by its monthly means, in F, January first: dry bulb and dew
// point. The dry bulbs are the U.S. Climate Normals 1991 to 2020 (NOAA), from
// memory, within 1 F; the dew points are those usual there, from memory, within
// 2 F.
type town struct {
	dryF, dewF [12]float64
}

func chicago() town {
	return town{
		[12]float64{25.2, 28.8, 39.0, 49.7, 60.6, 70.6, 75.4, 73.8, 66.3, 54.0, 41.3, 30.5},
		[12]float64{17, 19.5, 28, 37, 48, 58.5, 63.5, 63, 55.5, 43.5, 33, 23},
	}
}

func phoenix() town {
	return town{
		[12]float64{56.8, 59.9, 66.3, 73.2, 82.0, 91.4, 95.5, 94.4, 89.2, 77.4, 65.1, 55.8},
		[12]float64{32, 33, 34, 33, 36, 41, 56, 59, 52, 43, 36, 32},
	}
}

func newOrleans() town {
	return town{
		[12]float64{54.3, 58.0, 63.8, 70.1, 77.1, 82.4, 83.9, 84.1, 80.9, 72.5, 62.4, 56.6},
		[12]float64{44.5, 48, 54, 60, 67, 72.5, 74.5, 74.5, 71, 61, 52, 47},
	}
}

// hours are a year of the place, its days 5 C warmer and its nights 5 C colder
// than the mean.
func (p town) hours() []acclimate.OutdoorHour {
	var all []acclimate.OutdoorHour
	celsius := func(f float64) float64 { return (f - 32) / 1.8 }
	for at := time.Date(2021, 1, 1, 0, 0, 0, 0, time.UTC); at.Year() == 2021; at = at.Add(time.Hour) {
		m := at.Month() - 1
		swing := 5 * math.Sin(2*math.Pi*float64(at.Hour())/24)
		all = append(all, acclimate.OutdoorHour{Month: at.Month(), TempC: celsius(p.dryF[m]) + swing, DewC: celsius(p.dewF[m])})
	}
	return all
}

// Wood Handbook: recommended average moisture content of interior wood, 8 % in
// most of the United States, 6 % in the dry southwest, 11 % on damp southern
// coasts (read). They are from before cooling was usual.
func TestYearlyEMCMeetsTheHandbooksInteriorAverages(t *testing.T) {
	for _, c := range []struct {
		name   string
		place  town
		cooled bool
		want   float64
	}{
		{"Chicago", chicago(), true, 8},
		{"Chicago without cooling", chicago(), false, 8},
		{"Phoenix", phoenix(), true, 6},
		{"Phoenix without cooling", phoenix(), false, 6},
		{"New Orleans without cooling", newOrleans(), false, 11},
	} {
		t.Run(c.name, func(t *testing.T) {
			out, err := acclimate.OutdoorMonths(c.place.hours())
			if err != nil {
				t.Fatal(err)
			}
			in := acclimate.Indoors{
				HeatToC: 20, Cooled: c.cooled, CoolToC: 43 / 1.8, WarmerC: 3, CoilDewC: 23 / 1.8,
				Moisture: acclimate.MoistureClasses()[1],
			}
			var air [12]acclimate.IndoorAir
			for i, m := range out {
				if air[i], err = in.Air(m); err != nil {
					t.Fatal(err)
				}
			}
			if got, err := acclimate.YearlyEMC(air); err != nil || math.Abs(got-c.want) > 1.5 {
				t.Errorf("the yearly mean is %.2f %% (%v), the handbook's %v %%", got, err, c.want)
			}
		})
	}
}

// At 70 F the handbook prints 7.7 % at 40 % RH and 9.2 % at 50 %.
func TestYearlyEMCIsTheMeanOfTheMonths(t *testing.T) {
	var air [12]acclimate.IndoorAir
	for i := range air {
		air[i] = acclimate.IndoorAir{TempC: 38 / 1.8, RHPct: 40 + 10*float64(i%2)}
	}
	if got, err := acclimate.YearlyEMC(air); err != nil || math.Abs(got-8.45) > 0.06 {
		t.Errorf("the yearly mean is %v %% (%v)", got, err)
	}
	air[11].RHPct = math.NaN()
	if got, err := acclimate.YearlyEMC(air); err == nil {
		t.Errorf("a month without humidity gives %v %%", got)
	}
}
