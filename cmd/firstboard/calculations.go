package main

import (
	"cmp"
	"errors"
	"fmt"
	"slices"

	"github.com/shopspring/decimal"
	"github.com/urfave/cli/v2"

	"firstboard/acclimate"
	"firstboard/report/evidence"
	"firstboard/report/lists"
	"firstboard/slab"
	"firstboard/wood"
)

func emc(c *cli.Context) (answer, error) {
	switch {
	case c.String("emc") != "" && c.String("rh") != "":
		return answer{}, errors.New("--rh and --emc: one is asked for by the other; give one")
	case c.String("emc") != "":
		return humidityFor(c)
	}
	x, err := floats(c, "temp", "rh")
	if err != nil {
		return answer{}, err
	}
	pct, err := wood.EMC(x[0], x[1])
	return answer{map[string]float64{"emcPct": pct}, []string{
		fmt.Sprintf("wood in air at %s and %s comes to %.1f %% moisture content", c.String("temp"), c.String("rh"),
			pct),
		"source: " + evidence.OpEMC.Cite().String() + "; real wood differs by species and by 1 to 4 points " +
			"between drying and wetting",
	}}, err
}

func humidityFor(c *cli.Context) (answer, error) {
	x, err := floats(c, "temp", "emc")
	if err != nil {
		return answer{}, err
	}
	rh, err := wood.RHFor(x[0], x[1])
	return answer{map[string]float64{"rhPct": rh}, []string{
		fmt.Sprintf("air at %s and %.1f %% RH brings wood to %s moisture content", c.String("temp"), rh,
			c.String("emc")),
		"source: " + evidence.OpEMC.Cite().String() + ", inverted",
	}}, err
}

func air(c *cli.Context) (answer, error) {
	x, noAir := floats(c, "temp", "rh")
	pa, noPressure := airPressure(c)
	if err := cmp.Or(noAir, noPressure); err != nil {
		return answer{}, err
	}
	a, err := moistAir(askedUnit(c, "temp"), x[0], x[1], pa)
	if err != nil || c.String("surface") == "" {
		return a, err
	}
	surface, err := quantity(c, "surface")
	if err != nil {
		return answer{}, err
	}
	margin, err := acclimate.SurfaceMargin(x[0], x[1], surface.Float())
	a.fields["surfaceMarginC"] = margin
	unit := askedUnit(c, "surface")
	a.lines = slices.Insert(a.lines, len(a.lines)-1, fmt.Sprintf("a surface at %s lies %.1f %s above the dew point",
		c.String("surface"), lists.If(unit == evidence.Fahrenheit, margin*1.8, margin), unit))
	return a, err
}

// airPressure is the pressure given, that of the elevation given, or that of
// the sea.
func airPressure(c *cli.Context) (float64, error) {
	switch {
	case c.String("pressure") != "" && c.String("elevation") != "":
		return 0, errors.New("--pressure and --elevation say the same thing; give one")
	case c.String("pressure") != "":
		pa, err := quantity(c, "pressure")
		return pa.Float(), err
	case c.String("elevation") != "":
		mm, err := quantity(c, "elevation")
		if err != nil {
			return 0, err
		}
		return acclimate.PressureAt(mm.Float() / 1000)
	}
	return acclimate.StandardPressure, nil
}

func moistAir(unit evidence.Unit, tempC, rhPct, pa float64) (answer, error) {
	dew, noDew := acclimate.DewPoint(tempC, rhPct)
	vapor, noVapor := acclimate.VaporPressure(tempC, rhPct)
	ratio, noRatio := acclimate.HumidityRatio(vapor, pa)
	wet, noWet := acclimate.WetBulb(tempC, rhPct, pa)
	if err := cmp.Or(noDew, noVapor, noRatio, noWet); err != nil {
		return answer{}, err
	}
	absolute, enthalpy := acclimate.AbsoluteHumidity(vapor, tempC), acclimate.Enthalpy(tempC, ratio)
	return answer{
		map[string]float64{
			"dewPointC": dew, "humidityRatioGPerKg": ratio * 1000, "wetBulbC": wet,
			"vaporPressurePa": vapor, "absoluteHumidityGPerM3": absolute, "enthalpyKJPerKg": enthalpy,
		},
		[]string{
			fmt.Sprintf("%s point %s, wet bulb %s", lists.If(dew < 0.01, "frost", "dew"), degrees(unit, dew),
				degrees(unit, wet)),
			fmt.Sprintf("humidity ratio %.2f g/kg (%.1f grains/lb), absolute humidity %.2f g/m3", ratio*1000,
				acclimate.GrainsPerPound(ratio), absolute),
			fmt.Sprintf("vapor pressure %.0f Pa, enthalpy %.1f kJ/kg, at an air pressure of %.0f Pa", vapor, enthalpy,
				pa),
			"source: " + evidence.OpDewPoint.Cite().String(),
		},
	}, nil
}

func move(c *cli.Context) (answer, error) {
	x, err := floats(c, "width", "from", "to")
	if err != nil {
		return answer{}, err
	}
	coefficient, shrinkage, source, err := across(c)
	if err != nil {
		return answer{}, err
	}
	mm, err := wood.Movement(x[0], coefficient, shrinkage, x[1], x[2])
	unit := askedUnit(c, "width")
	form := lists.If(wood.Linear(x[1], x[2]), "Wood Handbook equation 13-2 (published)",
		"outside 6 to 14 %: the handbook's shrinkage form (recalled)")
	return answer{map[string]float64{"changeMM": mm}, []string{
		fmt.Sprintf("a board %s wide changes by %s from %s to %s, to %s", c.String("width"),
			lists.If(mm > 0, "+", "")+lengthIn(unit, mm), c.String("from"), c.String("to"), lengthIn(unit, x[0]+mm)),
		"source: " + form + "; " + source + "; an installed floor moves as much as a loose board (FPL)",
	}}, err
}

// across is the coefficient of the product, or of its species and cut.
func across(c *cli.Context) (coefficient, shrinkage float64, source string, err error) {
	switch own, species := c.String("coefficient"), c.String("species"); {
	case own != "":
		d, err := decimal.NewFromString(own)
		if err != nil || !plainDecimal(own) {
			return 0, 0, "", fmt.Errorf("--coefficient %s: write a plain number, the fraction of the width per 1 %% moisture content, such as 0.00245", own)
		}
		return d.InexactFloat64(), 0, "the coefficient as typed", nil
	case species != "":
		s, err := wood.FindSpecies(species)
		if err != nil {
			return 0, 0, "", fmt.Errorf("--species: %w", err)
		}
		coefficient, shrinkage, err := s.Across(c.String("cut"))
		if err != nil {
			return 0, 0, "", fmt.Errorf("--cut: %w", err)
		}
		return coefficient, shrinkage, fmt.Sprintf("%s, %s, %s, %.5f a point (%s)", s.Common, s.Botanical,
			cmp.Or(c.String("cut"), "plainsawn as no --cut is given"), coefficient, s.Standing), nil
	}
	return 0, 0, "", errors.New("give --species and --cut, or the product's own --coefficient")
}

func depth(c *cli.Context) (answer, error) {
	thickness, err := quantity(c, "thickness")
	if err != nil {
		return answer{}, err
	}
	faces := c.String("faces")
	if faces != "" && faces != "1" && faces != "2" {
		return answer{}, fmt.Errorf("--faces %s: a slab dries from 1 or 2 faces", faces)
	}
	from := lists.If(faces == "2", "both faces", "one face")
	if thickness.Sign() <= 0 {
		return answer{}, fmt.Errorf("--thickness %s: a thickness is above 0", c.String("thickness"))
	}
	mm := evidence.Of(slab.Depth(thickness.Decimal(), faces == "2")).Float()
	return answer{map[string]float64{"depthMM": mm}, []string{
		fmt.Sprintf("a probe in %s of slab, drying from %s, goes %s deep", c.String("thickness"), from,
			lengthIn(askedUnit(c, "thickness"), mm)),
		"source: ASTM F2170, 40 % of the thickness with one drying face, 20 % with two (published)",
	}}, nil
}

func mver(c *cli.Context) (answer, error) {
	x, err := quantities(c, "gain", "area", "hours")
	if err != nil {
		return answer{}, err
	}
	gain, area, hours := x[0], x[1], x[2]
	if gain.Sign() <= 0 || area.Sign() <= 0 || hours.Sign() <= 0 {
		return answer{}, errors.New("gain, area and hours must be above 0")
	}
	pounds := slab.Rate(gain, area, hours)
	grams, lies := evidence.Convert(pounds, evidence.Pounds, evidence.Grams), slab.Exposure()
	lines := []string{
		fmt.Sprintf("the slab gives off %s lb per 1000 ft2 in 24 h (%s g per m2)", pounds.Fixed(2), grams.Fixed(1)),
	}
	if hours.Cmp(lies.Least.Number.Exact()) < 0 || hours.Cmp(lies.Most.Number.Exact()) > 0 {
		lines = append(lines, c.String("hours")+" is outside "+lies.String()+": this is no test by the method")
	}
	return answer{map[string]float64{"lbPer1000Ft2Day": pounds.Float(), "gPerM2Day": grams.Float()}, append(lines,
		"source: ASTM F1869 (recalled), by exact factors; a dish lies "+lies.String()+" (published)")}, nil
}
