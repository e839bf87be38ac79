package main

import (
	"encoding/json"
	"errors"
	"fmt"

	"github.com/shopspring/decimal"
	"github.com/urfave/cli/v2"

	"firstboard/acclimate"
	"firstboard/report/evidence"
	"firstboard/slab"
	"firstboard/wood"
)

func calcCommand() *cli.Command {
	return &cli.Command{
		Name:         "calc",
		Usage:        "pocket calculations: emc, air, move, depth, mver",
		ArgsUsage:    toolName + " calc emc|air|move|depth|mver [quantities with their units] [--json]",
		UsageText:    toolName + " calc emc --temp 70F --rh 45%",
		OnUsageError: usage,
		Action: func(c *cli.Context) error {
			if c.NArg() > 0 {
				return fmt.Errorf("calc: no calculation %q; choose emc, air, move, depth or mver", c.Args().First())
			}
			return errors.New("calc: choose emc, air, move, depth or mver")
		},
		Subcommands: []*cli.Command{
			calculation("emc", "equilibrium moisture content of wood in air, or with --emc the humidity that brings it there",
				"--temp 70F --rh 45%", emc, "temp", "rh", "emc"),
			calculation("air", "dew point, wet bulb and moisture of air, and with --surface its margin",
				"--temp 70F --rh 45% --elevation 5280ft", air, "temp", "rh", "pressure", "elevation", "surface"),
			calculation("move", "change of a board's width with its moisture content",
				`--width 5in --species "red oak" --cut plainsawn --from 6% --to 9%`, move, "width", "species", "cut",
				"coefficient", "from", "to"),
			calculation("depth", "depth of a probe in a slab", "--thickness 6in --faces 1", depth, "thickness",
				"faces"),
			calculation("mver", "moisture emission of a slab from a dish's gain",
				"--gain 4.0g --area 0.449ft2 --hours 66h", mver, "gain", "area", "hours"),
		},
	}
}

// answer is a calculation's result: fields for programs and lines for people.
type answer struct {
	fields map[string]float64
	lines  []string
}

func calculation(name, use, example string, compute func(*cli.Context) (answer, error), flags ...string) *cli.Command {
	cmd := &cli.Command{
		Name: name, Usage: use, OnUsageError: usage,
		ArgsUsage: fmt.Sprintf("%s calc %s %s", toolName, name, example),
		UsageText: fmt.Sprintf("%s calc %s %s", toolName, name, example),
	}
	for _, flag := range flags {
		cmd.Flags = append(cmd.Flags, &cli.StringFlag{Name: flag, Usage: quantityHelp(flag)})
	}
	cmd.Flags = append(cmd.Flags, &cli.BoolFlag{Name: "json", Usage: "print one JSON object, unrounded"})
	cmd.Action = func(c *cli.Context) error {
		if c.NArg() > 0 {
			return fmt.Errorf("calc %s: %q stands alone; every quantity follows its flag, such as %s", name,
				c.Args().First(), example)
		}
		a, err := compute(c)
		if err != nil {
			return fmt.Errorf("calc %s: %w", name, err)
		}
		if c.Bool("json") {
			return json.NewEncoder(c.App.Writer).Encode(a.fields)
		}
		for _, line := range a.lines {
			say(c.App.Writer, line, "")
		}
		return nil
	}
	return cmd
}

// quantityHelp says what a flag of a calculation takes.
func quantityHelp(flag string) string {
	switch flag {
	case "temp":
		return "`TEMP` of the air, such as 70F or 21.5C"
	case "rh":
		return "relative humidity `RH` of the air, such as 45%"
	case "emc":
		return "moisture content `MC` that the wood is to come to, such as 8%; the answer is the humidity"
	case "surface":
		return "`TEMP` of a surface, such as 62F; the answer tells how far it lies above the dew point"
	case "pressure":
		return "`PRESSURE` of the air, such as 84000Pa; that of sea level where neither it nor an elevation is given"
	case "elevation":
		return "`HEIGHT` above sea level, such as 5280ft, which gives the pressure"
	case "width":
		return "`WIDTH` of the board across the grain, such as 5in"
	case "species":
		return "`NAME` of the wood as the Wood Handbook or the trade has it, such as \"red oak\""
	case "cut":
		return "`CUT` of the board: plainsawn, quartersawn, riftsawn or mixed"
	case "coefficient":
		return "change `COEFFICIENT` from the product's data sheet: the part of the width for 1 % MC, such as 0.00245"
	case "from", "to":
		return "moisture content `MC` that the change runs " + flag + ", such as 6%"
	case "thickness":
		return "`THICKNESS` of the slab, such as 4in"
	case "faces":
		return "`NUMBER` of faces that the slab dries from: 1 (on a retarder, a deck or the ground) or 2"
	case "gain":
		return "`MASS` that the dish gained, such as 4.0g"
	case "area":
		return "`SIZE` of the concrete under the dome less the dish, such as 0.449ft2"
	case "hours":
		return "`TIME` from setting to retrieving, such as 66h"
	}
	return ""
}

// floats reads several quantities as float64 in their base units.
func floats(c *cli.Context, flags []string, measures []measure) ([]float64, error) {
	var all []float64
	for i, flag := range flags {
		x, err := quantity(c, flag, measures[i])
		if err != nil {
			return nil, err
		}
		all = append(all, x.Float())
	}
	return all, nil
}

func emc(c *cli.Context) (answer, error) {
	if c.String("emc") != "" {
		return humidityFor(c)
	}
	x, err := floats(c, []string{"temp", "rh"}, []measure{temperature(), share()})
	if err != nil {
		return answer{}, err
	}
	pct, err := wood.EMC(x[0], x[1])
	if err != nil {
		return answer{}, err
	}
	return answer{map[string]float64{"emcPct": pct}, []string{
		fmt.Sprintf("wood in air at %s and %s comes to %.1f %% moisture content", c.String("temp"), c.String("rh"),
			pct),
		"source: Wood Handbook equation 4-5 (published); real wood differs by species and by 1 to 4 points between drying and wetting",
	}}, nil
}

func humidityFor(c *cli.Context) (answer, error) {
	x, err := floats(c, []string{"temp", "emc"}, []measure{temperature(), share()})
	if err != nil {
		return answer{}, err
	}
	rh, err := wood.RHFor(x[0], x[1])
	return answer{map[string]float64{"rhPct": rh}, []string{
		fmt.Sprintf("air at %s and %.1f %% RH brings wood to %s moisture content", c.String("temp"), rh,
			c.String("emc")),
		"source: Wood Handbook equation 4-5 (published), inverted",
	}}, err
}

func air(c *cli.Context) (answer, error) {
	x, err := floats(c, []string{"temp", "rh"}, []measure{temperature(), share()})
	if err != nil {
		return answer{}, err
	}
	pa, err := airPressure(c)
	if err != nil {
		return answer{}, err
	}
	a, err := moistAir(askedUnit(c, "temp", temperature()), x[0], x[1], pa)
	if err != nil || c.String("surface") == "" {
		return a, err
	}
	surface, err := quantity(c, "surface", temperature())
	if err != nil {
		return answer{}, err
	}
	margin, err := acclimate.SurfaceMargin(x[0], x[1], surface.Float())
	a.fields["surfaceMarginC"] = margin
	a.lines = append(a.lines[:len(a.lines)-1:len(a.lines)-1],
		fmt.Sprintf("a surface at %s lies %s above the dew point", c.String("surface"),
			span(askedUnit(c, "surface", temperature()), margin)), a.lines[len(a.lines)-1])
	return a, err
}

// airPressure is the pressure given, that of the elevation given, or that of
// the sea.
func airPressure(c *cli.Context) (float64, error) {
	switch {
	case c.String("pressure") != "" && c.String("elevation") != "":
		return 0, errors.New("--pressure and --elevation say the same thing; give one")
	case c.String("pressure") != "":
		pa, err := quantity(c, "pressure", pressure())
		return pa.Float(), err
	case c.String("elevation") != "":
		mm, err := quantity(c, "elevation", length())
		if err != nil {
			return 0, err
		}
		return acclimate.PressureAt(mm.Float() / 1000)
	}
	return acclimate.StandardPressure, nil
}

func moistAir(unit evidence.Unit, tempC, rhPct, pa float64) (answer, error) {
	dew, err := acclimate.DewPoint(tempC, rhPct)
	if err != nil {
		return answer{}, err
	}
	vapor, err := acclimate.VaporPressure(tempC, rhPct)
	if err != nil {
		return answer{}, err
	}
	ratio, err := acclimate.HumidityRatio(vapor, pa)
	if err != nil {
		return answer{}, err
	}
	wet, err := acclimate.WetBulb(tempC, rhPct, pa)
	if err != nil {
		return answer{}, err
	}
	absolute, enthalpy := acclimate.AbsoluteHumidity(vapor, tempC), acclimate.Enthalpy(tempC, ratio)
	point := "dew point"
	if dew < 0.01 {
		point = "frost point"
	}
	return answer{
		map[string]float64{
			"dewPointC": dew, "humidityRatioGPerKg": ratio * 1000, "wetBulbC": wet,
			"vaporPressurePa": vapor, "absoluteHumidityGPerM3": absolute, "enthalpyKJPerKg": enthalpy,
		},
		[]string{
			fmt.Sprintf("%s %s, wet bulb %s", point, degrees(unit, dew), degrees(unit, wet)),
			fmt.Sprintf("humidity ratio %.2f g/kg (%.1f grains/lb), absolute humidity %.2f g/m3", ratio*1000,
				acclimate.GrainsPerPound(ratio), absolute),
			fmt.Sprintf("vapor pressure %.0f Pa, enthalpy %.1f kJ/kg, at an air pressure of %.0f Pa", vapor, enthalpy,
				pa),
			"source: Hyland-Wexler, ASHRAE Handbook Fundamentals 2017 chapter 1 (published)",
		},
	}, nil
}

func move(c *cli.Context) (answer, error) {
	x, err := floats(c, []string{"width", "from", "to"}, []measure{length(), share(), share()})
	if err != nil {
		return answer{}, err
	}
	coefficient, shrinkage, source, err := across(c)
	if err != nil {
		return answer{}, err
	}
	mm, err := wood.Movement(x[0], coefficient, shrinkage, x[1], x[2])
	if err != nil {
		return answer{}, err
	}
	unit := askedUnit(c, "width", length())
	form := "Wood Handbook equation 13-2 (published)"
	if !wood.Linear(x[1], x[2]) {
		form = "outside 6 to 14 %: the handbook's shrinkage form (recalled)"
	}
	return answer{map[string]float64{"changeMM": mm}, []string{
		fmt.Sprintf("a board %s wide changes by %s from %s to %s, to %s", c.String("width"), signed(unit, mm),
			c.String("from"), c.String("to"), lengthIn(unit, x[0]+mm)),
		"source: " + form + "; " + source + "; an installed floor moves as much as a loose board (FPL)",
	}}, nil
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
		return coefficient, shrinkage, fmt.Sprintf("%s, %s, %.5f a point (%s)", s.Common, s.Botanical, coefficient,
			s.Standing), nil
	}
	return 0, 0, "", errors.New("give --species and --cut, or the product's own --coefficient")
}

func depth(c *cli.Context) (answer, error) {
	thickness, err := quantity(c, "thickness", length())
	if err != nil {
		return answer{}, err
	}
	faces := c.String("faces")
	if faces != "" && faces != "1" && faces != "2" {
		return answer{}, fmt.Errorf("--faces %s: a slab dries from 1 or 2 faces", faces)
	}
	from := "one face"
	if faces == "2" {
		from = "both faces"
	}
	if thickness.Sign() <= 0 {
		return answer{}, fmt.Errorf("--thickness %s: a thickness is above 0", c.String("thickness"))
	}
	mm := evidence.Of(slab.Depth(thickness.Decimal(), faces == "2")).Float()
	return answer{map[string]float64{"depthMM": mm}, []string{
		fmt.Sprintf("a probe in %s of slab, drying from %s, stands %s deep", c.String("thickness"), from,
			lengthIn(askedUnit(c, "thickness", length()), mm)),
		"source: ASTM F2170, 40 % of the thickness with one drying face, 20 % with two (published)",
	}}, nil
}

func mver(c *cli.Context) (answer, error) {
	gain, err := quantity(c, "gain", mass())
	if err != nil {
		return answer{}, err
	}
	area, err := quantity(c, "area", testArea())
	if err != nil {
		return answer{}, err
	}
	hours, err := quantity(c, "hours", duration())
	if err != nil {
		return answer{}, err
	}
	if gain.Sign() <= 0 || area.Sign() <= 0 || hours.Sign() <= 0 {
		return answer{}, errors.New("gain, area and hours must be above 0")
	}
	pounds := slab.Rate(gain, area, hours)
	grams := evidence.Convert(pounds, evidence.Pounds, evidence.Grams)
	return answer{map[string]float64{"lbPer1000Ft2Day": pounds.Float(), "gPerM2Day": grams.Float()}, []string{
		fmt.Sprintf("the slab gives off %s lb per 1000 ft2 in 24 h (%s g per m2)", pounds.Fixed(2), grams.Fixed(1)),
		"source: ASTM F1869 (recalled), by exact factors; a dish lies 60 to 72 h (published)",
	}}, nil
}
