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
		cmd.Flags = append(cmd.Flags, &cli.StringFlag{Name: flag, Usage: quantityOf(flag).help})
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
