package main

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/urfave/cli/v2"

	"firstboard/acclimate"
	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/lists"
	"firstboard/report/record"
	"firstboard/report/record/weather"
)

func climateCommand() *cli.Command {
	return &cli.Command{
		Name:  "climate",
		Usage: "a service climate by months from an open weather file (EPW)",
		ArgsUsage: toolName + " climate FILE.epw --name NAME [--heat-to 68F] [--cool-to 75F|off] [--warmer 3C]\n" +
			"      [--moisture 1..5] [--coil 55F] [--into RECORD -o NEW] [--force]",
		UsageText: toolName + " climate town.epw --name home --moisture 2 --into job -o job-2",
		Description: "Indoors is a little warmer than the outdoor monthly mean, held between the set\n" +
			"points, with the outdoor vapor and the middle of a humidity class; while the\n" +
			"cooling runs, its coil holds the dew point down. NEW is a copy of RECORD\n" +
			"with the climate in it: a workbook if it ends in .xlsx, else a new folder. RECORD\n" +
			"is never changed. Exit code: 0 done, 2 the command, the weather file or the\nrecord is unusable, 3 the output could not be written.",
		Flags: []cli.Flag{
			&cli.StringFlag{Name: "name", Usage: "`NAME` of the climate, as areas name it"},
			usualFlag("heat-to", "68F", "`TEMP` that heating keeps"),
			usualFlag("cool-to", "75F", "`TEMP` that cooling keeps, or off where there is none"),
			usualFlag("warmer", "3C", "`DEGREES` warmer than outdoors between them"),
			usualFlag("moisture", "2", "humidity `CLASS` of EN ISO 13788, 1 (dry goods) to 5 (swimming pool)"),
			usualFlag("coil", "55F", "`TEMP` of the dew point that the cooling coil holds at most"),
			&cli.StringFlag{Name: "into", Usage: "`RECORD` to copy with the climate in it"},
			outputFlag("write the copy to `NEW`, a folder or FILE.xlsx"),
			forceFlag("replace a workbook that exists"),
		},
		Action: climate,
	}
}

// service is a service climate on its way from a weather file.
type service struct {
	name           string
	heatTo, coolTo string // as typed, and whether they were given
	warmer, coil   string
	moisture       string
	unit           evidence.Unit // of its temperatures
	in             acclimate.Indoors
	weather        weather.File
	out            [12]acclimate.OutdoorMonth
	air            [12]acclimate.IndoorAir
}

func climate(c *cli.Context) error {
	s, err := asked(c)
	if err != nil {
		return fmt.Errorf("climate: %w", err)
	}
	if s.weather, err = weather.Read(c.Args().First()); err != nil {
		return exit{exitUnusable, err}
	}
	if err := s.reckon(); err != nil {
		return exit{exitUnusable, fmt.Errorf("%s: %w", s.weather.Name, err)}
	}
	rec, err := s.into(c.String("into"))
	if err != nil {
		return exit{exitUnusable, err}
	}
	target := acclimate.TargetOf(s.periods())
	if target.Lack != "" {
		return exit{exitUnusable, fmt.Errorf("%s: %s; give other set points", s.weather.Name, target.Lack)}
	}
	if path := c.String("into"); path != "" {
		if err := writeRecord(c, path, rec, rec.Tables); err != nil {
			return err
		}
	}
	s.print(c.App.Writer, target)
	if c.String("output") != "" {
		printWritten(c, rec)
	}
	return nil
}

// asked reads the command line.
func asked(c *cli.Context) (*service, error) {
	s := &service{
		name:   evidence.Tidy(c.String("name")),
		heatTo: given(c, "heat-to"), coolTo: given(c, "cool-to"), moisture: given(c, "moisture"),
		warmer: given(c, "warmer"), coil: given(c, "coil"),
	}
	switch {
	case c.NArg() == 1 && c.Args().First() == "":
		return s, errors.New("the weather file's name is empty; name an .epw file")
	case c.NArg() != 1:
		return s, fmt.Errorf("one weather file is read at a time, and %d were given", c.NArg())
	case s.name == "":
		return s, errors.New("--name is missing; name the climate as the areas of the record do, such as --name home")
	case c.String("into") == "" && c.String("output") != "":
		return s, errors.New("-o is for a copy of a record; name the record with --into")
	case c.String("into") != "" && c.String("output") == "", c.IsSet("into") && c.String("into") == "":
		return s, errors.New("--into takes a record and writes a copy of it; name both, as in --into job -o job-2")
	}
	if err := s.building(c); err != nil {
		return s, err
	}
	s.unit = askedUnit(c, "heat-to")
	var err error
	s.in.Moisture, err = moistureClass(c.String("moisture"))
	return s, err
}

// building reads how the building is heated and cooled.
func (s *service) building(c *cli.Context) error {
	heat, noHeat := quantity(c, "heat-to")
	warmer, noWarmer := warmth(c, "warmer")
	if err := cmp.Or(noHeat, noWarmer); err != nil {
		return err
	}
	s.in.HeatToC, s.in.WarmerC = heat.Float(), warmer.Float()
	if s.in.Cooled = !strings.EqualFold(strings.TrimSpace(c.String("cool-to")), "off"); !s.in.Cooled {
		return nil
	}
	cool, noCool := quantity(c, "cool-to")
	if noCool != nil {
		noCool = fmt.Errorf("%w; without cooling it is --cool-to off", noCool)
	}
	coil, noCoil := quantity(c, "coil")
	if err := cmp.Or(noCool, noCoil); err != nil {
		return err
	}
	s.in.CoolToC, s.in.CoilDewC = cool.Float(), coil.Float()
	if s.in.HeatToC > s.in.CoolToC {
		return fmt.Errorf("--heat-to %s lies above --cool-to %s; heating must end before cooling begins",
			c.String("heat-to"), c.String("cool-to"))
	}
	return nil
}

// warmth reads a difference of temperatures, in C.
func warmth(c *cli.Context, flag string) (evidence.Exact, error) {
	x, err := quantity(c, flag)
	if err != nil {
		return x, err
	}
	if askedUnit(c, flag) == evidence.Fahrenheit {
		x = x.Sub(evidence.Convert(evidence.Exact{}, evidence.Fahrenheit, evidence.Celsius))
	}
	if x.Sign() < 0 {
		return x, fmt.Errorf("--%s %s: a free building is no colder than outdoors; write 0C or more", flag,
			c.String(flag))
	}
	return x, nil
}

// given is a flag's value, and says so where it is the usual one.
func given(c *cli.Context, flag string) string {
	return c.String(flag) + lists.If(c.IsSet(flag), "", " (not given: practice)")
}

func moistureClass(typed string) (acclimate.MoistureClass, error) {
	class, known := lists.First(acclimate.MoistureClasses(),
		func(class acclimate.MoistureClass) bool { return strconv.Itoa(class.Class) == typed })
	if !known {
		return class, fmt.Errorf("--moisture %s: the humidity classes are 1 to 5; write one of them", typed)
	}
	return class, nil
}

// reckon works out the months.
func (s *service) reckon() (err error) {
	if s.out, err = acclimate.OutdoorMonths(s.weather.Hours); err != nil {
		return err
	}
	for i, m := range s.out {
		if s.air[i], err = s.in.Air(m); err != nil {
			return fmt.Errorf("%s: %w", m.Month, err)
		}
	}
	return nil
}

// into reads the record with the climate's periods added to it. It refuses a
// record that has a climate of that name, and a climate too damp to be one: its
// target would let wet boards pass. The record's unit becomes the climate's.
func (s *service) into(path string) (record.Record, error) {
	if path == "" {
		return record.Record{}, nil
	}
	for i, air := range s.air {
		if air.Saturated {
			return record.Record{}, fmt.Errorf("%s: in %s more vapor comes in than the indoor air can hold, and plant must dry it; a record takes the designer's figures for such a climate, not these", s.weather.Name, s.out[i].Month)
		}
	}
	rec, err := record.ReadWith(path, "Climates", s.below)
	if err != nil {
		return record.Record{}, err
	}
	for _, p := range rec.Job.Climates[:len(rec.Job.Climates)-len(s.out)] {
		if evidence.Same(p.Climate, s.name) {
			return record.Record{}, fmt.Errorf("%s: the climate %q is in the record already; give this one another --name, or take its rows out of a copy of the record", p.Place, p.Climate)
		}
	}
	return rec, nil
}

// below is the table of climates with this one's rows below its own, in its
// columns and its unit.
func (s *service) below(t grid.Table) grid.Table {
	units := []evidence.Unit{evidence.Fahrenheit, evidence.Celsius}
	if s.unit == evidence.Celsius {
		slices.Reverse(units)
	}
	temp, unit := record.Heading(t, "Temp", units...)
	rh, _ := record.Heading(t, "RH", evidence.RH)
	s.unit = unit
	rows := lists.Each(s.periods(), func(p acclimate.Period) []string {
		return []string{p.Climate, p.Name, p.Temp.Written, p.RH.Written, p.From}
	})
	return t.With([]string{"Climate", "Period", temp, rh, "From"}, rows...)
}

// periods are the months as a record holds them, rounded once, to 0.1: the EMC
// shown is the one that the record will give.
func (s *service) periods() []acclimate.Period {
	var all []acclimate.Period
	from := fmt.Sprintf("derived from the weather file %s (%s): %s; %s; %s; class limits: EN ISO 13788, recalled",
		s.weather.Name, s.weather.Location, s.temperatures(), s.vapor(), s.cooling())
	for i, air := range s.air {
		all = append(all, acclimate.Period{
			Climate: s.name, Name: s.out[i].Month.String(), From: from,
			Temp: evidence.Typed(tenths(s.shown(air.TempC)), s.unit),
			RH:   evidence.Typed(tenths(air.RHPct), evidence.RH),
		})
	}
	return all
}
