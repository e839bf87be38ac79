package main

import (
	"bytes"
	"encoding/json"
	"math"
	"strings"
	"testing"
)

// calculate runs `firstboard calc` and gives its exit code and streams.
func calculate(args string) (code int, out, faults string) {
	var stdout, stderr bytes.Buffer
	words := strings.Split(args, " ")
	for i := range words {
		words[i] = strings.ReplaceAll(words[i], "_", " ")
	}
	code = run(append([]string{toolName, "calc"}, words...), &stdout, &stderr)
	return code, stdout.String(), stderr.String()
}

// Worked and printed values: Wood Handbook Table 4-2 (70 F, 45 %: 8.5), its
// 232 mm board (1.7 mm), red oak (0.055 in), the emission worked in slab, the
// depth of ASTM F2170, and the reference library's moist air.
func TestCalcJSON(t *testing.T) {
	for _, c := range []struct {
		args, field     string
		want, tolerance float64
	}{
		{"emc --temp 70F --rh 45% --json", "emcPct", 8.5, 0.06},
		{"emc --json --temp 21.1111C --rh 45%", "emcPct", 8.5, 0.06},
		{"emc --temp 70F --emc 8.5% --json", "rhPct", 45, 0.5},
		{"air --temp 20C --rh 50% --json", "dewPointC", 9.2724, 0.001},
		{"air --temp 20C --rh 50% --json", "vaporPressurePa", 1169.40, 0.02},
		{"air --temp -10C --rh 50% --json", "dewPointC", -17.5814, 0.001},
		{"air --temp -10C --rh 50% --json", "wetBulbC", -11.6376, 0.0015},
		{"air --temp -10C --rh 50% --json", "humidityRatioGPerKg", 0.79868, 0.00001},
		{"air --temp -10C --rh 50% --json", "enthalpyKJPerKg", -8.07735, 0.00005},
		{"air --temp 10C --rh 40% --json", "absoluteHumidityGPerM3", 3.759, 0.001},
		{"air --temp 70F --rh 45% --surface 47.7F --json", "surfaceMarginC", 0, 0.05},
		{"move --width 232mm --coefficient 0.00245 --from 8% --to 11% --json", "changeMM", 1.7052, 1e-9},
		{"move --width 5in --species red_oak --cut plainsawn --from 6% --to 9% --json", "changeMM", 0.055 * 25.4, 0.0005 * 25.4},
		{"move --width 5in --species Oak,_northern_red --from 9% --to 6% --json", "changeMM", -0.055 * 25.4, 0.0005 * 25.4},
		{"depth --thickness 6in --faces 1 --json", "depthMM", 60.96, 1e-9},
		{"depth --thickness 150mm --faces 2 --json", "depthMM", 30, 1e-9},
		{"mver --gain 4.0g --area 0.449ft2 --hours 66h --json", "lbPer1000Ft2Day", 7.14, 0.005},
		{"mver --gain 4.0g --area 0.449ft2 --hours 66h --json", "gPerM2Day", 7.141924 * 4.88243, 0.0005},
	} {
		t.Run(c.args+" "+c.field, func(t *testing.T) {
			code, out, faults := calculate(c.args)
			var fields map[string]float64
			if err := json.Unmarshal([]byte(out), &fields); code != exitGo || err != nil {
				t.Fatalf("exit %d, %v, %s%s", code, err, out, faults)
			}
			if got, has := fields[c.field]; !has || math.Abs(got-c.want) > c.tolerance {
				t.Errorf("%s = %v, want %v within %v", c.field, got, c.want, c.tolerance)
			}
		})
	}
}

func TestCalcTextNamesItsSource(t *testing.T) {
	for args, words := range map[string][]string{
		"emc --temp 70F --rh 45%":                                                  {"8.5 %", "Wood Handbook"},
		"air --temp 70F --rh 45% --elevation 5280ft":                               {"dew point 47.7 F", "grains/lb", "ASHRAE"},
		"air --temp 20F --rh 45%":                                                  {"frost point"},
		"move --width 5in --species red_oak --cut plainsawn --from 6% --to 9%":     {"+0.055 in", "Quercus", "published"},
		"move --width 5in --species Teak --cut plainsawn --from 4% --to 9%":        {"outside 6 to 14 %", "recalled"},
		"move --width 2_1/4in --species red_oak --from 9% --to 6%":                 {"2 1/4in wide", "-0.025 in", "plainsawn as no --cut is given"},
		"move --width 2-1/4_in --species red_oak --cut riftsawn --from 9% --to 6%": {"-0.025 in", "riftsawn, 0.00369"},
		"depth --thickness 6in --faces 2":                                          {"both faces", "1.200 in", "ASTM F2170"},
		"mver --gain 4.0g --area 0.449ft2 --hours 59.9h":                           {"59.9h is outside 60 to 72 h"},
		"mver --gain 4.0g --area 0.449ft2 --hours 72.1h":                           {"72.1h is outside 60 to 72 h"},
		"mver --gain 4.0g --area 0.449ft2 --hours 66h":                             {"7.14 lb", "ASTM F1869"},
	} {
		code, out, faults := calculate(args)
		for _, w := range words {
			if folded := strings.Join(strings.Fields(out), " "); code != exitGo || !strings.Contains(folded, w) {
				t.Errorf("calc %s (exit %d) lacks %q:\n%s%s", args, code, w, out, faults)
			}
		}
	}
}

func TestCalcRefuses(t *testing.T) {
	for args, words := range map[string]string{
		"emc --temp 70 --rh 45%":                                              "70F or 70C",
		"emc --temp 70F --rh 45":                                              "45%",
		"emc --temp 70F":                                                      "--rh is missing",
		"emc --temp 70F --rh 145%":                                            "0 to 100",
		"emc --temp nanF --rh 45%":                                            "plain number",
		"emc --temp 1e2F --rh 45%":                                            "no unit here",
		"emc --temp 70K --rh 45%":                                             "no unit here",
		"emc --temp 300F --rh 45%":                                            "(300 F) is outside -1.1 to 132.2 C (30 to 270 F)",
		"emc 70F 45%":                                                         "stands alone",
		"air --temp 500F --rh 45%":                                            "(500 F)",
		"air --temp 70F --rh 45% --pressure 84kPa":                            "give it in Pa;",
		"emc --temp 70F --rh 45% --emc 8%":                                    "give one",
		"move --width 1/3in --coefficient 0.003 --from 6% --to 9%":            "plain number",
		"move --width 1/4mm --coefficient 0.003 --from 6% --to 9%":            "plain number",
		"move --width 5in --species sugar_mapel --from 6% --to 9%":            "such as \"sugar maple\"",
		"air --temp 70F --rh 0%":                                              "no dew point",
		"air --temp 70F --rh 45% --pressure 84000Pa --elevation 10ft":         "give one",
		"air --temp 70F --rh 45% --elevation 99999ft":                         "11000 m",
		"move --width 5in --from 6% --to 9%":                                  "--coefficient",
		"move --width 5in --species cardboard --from 6% --to 9%":              "no species",
		"move --width 5in --species red_oak --cut slab --from 6% --to 9%":     "quartersawn, riftsawn or mixed",
		"move --width 5in --species Teak --cut quartersawn --from 6% --to 9%": "no coefficient",
		"move --width 5in --coefficient 0.5 --from 6% --to 9%":                "fraction of the width",
		"move --width 0in --coefficient 0.003 --from 6% --to 9%":              "not above 0",
		"depth --thickness 6 --faces 1":                                       "6in, 6ft, 6mm, 6cm or 6m",
		"depth --thickness 6in --faces 3":                                     "1 or 2",
		"depth --thickness -6in":                                              "above 0",
		"mver --gain 0g --area 0.449ft2 --hours 66h":                          "above 0",
		"mver --gain 4g --area 0.449 --hours 66h":                             "0.449ft2",
		"weigh": "choose emc",
	} {
		code, out, faults := calculate(args)
		if code != exitUnusable || out != "" || !strings.Contains(faults, words) {
			t.Errorf("calc %s: exit %d, %q, want exit %d and %q; printed %q", args, code, faults, exitUnusable, words, out)
		}
	}
}
