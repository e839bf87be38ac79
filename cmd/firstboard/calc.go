package main

import (
	"encoding/json"
	"fmt"

	"github.com/urfave/cli/v2"
)

func calcCommand() *cli.Command {
	return &cli.Command{
		Name:      "calc",
		Usage:     "pocket calculations: emc, air, move, depth, mver",
		ArgsUsage: toolName + " calc emc|air|move|depth|mver [quantities with their units] [--json]",
		UsageText: toolName + " calc emc --temp 70F --rh 45%",
		Action:    choosing("calculation", "emc, air, move, depth or mver"),
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
		Name: name, Usage: use,
		ArgsUsage: fmt.Sprintf("%s calc %s %s", toolName, name, example),
		UsageText: fmt.Sprintf("%s calc %s %s", toolName, name, example),
	}
	for _, flag := range flags {
		cmd.Flags = append(cmd.Flags, &cli.StringFlag{Name: flag, Usage: flagCalled(flag).help})
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
		sayEach(c.App.Writer, a.lines, "")
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
