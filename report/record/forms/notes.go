package forms

// note is what goes into a field, and an entry for it; the metric one is
// given where the two differ.
type note struct{ says, example, metric string }

// noteBook are the notes by table and name; those under no table hold where a
// table has none of its own.
type noteBook map[string]map[string]note

func (b noteBook) noteOn(table, name string) note {
	if n, ok := b[table][name]; ok {
		return n
	}
	return b[""][name]
}

func notes() noteBook {
	return noteBook{
		"":         commonNotes(),
		"Job":      jobNotes(),
		"Areas":    areaNotes(),
		"Products": productNotes(),
		"Climates": {
			"Climate": {"a short name; Areas names the climate by it", "C1", ""},
			"Period":  {"a season, or a month: a row for each", "winter", ""},
			"Temp":    {"mean temperature of the air in it", "70", "21"},
			"RH":      {"mean humidity of the air in it", "32", ""},
			"From":    {"who says so", "designer, mechanical schedule, 2025-04", ""},
		},
		"Instruments": instrumentNotes(),
		"Instrument checks": {
			"Checked at": {"day and time it was held to a standard", "2026-02-09 15:40", ""},
			"Standard":   {"what it was held to; NaCl at 23 C fills a blank Expected", "NaCl at 23 C", ""},
			"Expected":   {"what it should have read", "75.4", ""},
			"Read":       {"what it did read", "75.8", ""},
		},
		"Slab RH":   holeNotes(),
		"Slab MVER": dishNotes(),
		"Slab pH": {
			"pH":         {"pH of the surface", "9.6", ""},
			"Instrument": {"the pH meter, as listed in Instruments", "PH1", ""},
		},
		"Slab CM": {
			"CM":         {"moisture by the carbide method, % of mass", "1.8", ""},
			"Instrument": {"the carbide instrument, as listed in Instruments", "CM1", ""},
		},
		"Other tests": otherNotes(),
		"Air": {
			"Area":       {"the area, as listed in Areas; blank is the whole site", "A1", ""},
			"Instrument": {"the air instrument, as listed in Instruments", "AL1", ""},
			"Temp":       {"temperature of the air", "70.9", "21.6"},
			"RH":         {"humidity of the air", "40.1", ""},
		},
		"Surface": {
			"Temp":       {"temperature of the surface", "66.9", "19.4"},
			"Instrument": {"the surface thermometer, as listed in Instruments", "IR1", ""},
		},
		"Wood": woodNotes(),
		"Scan": {
			"Reading": {"relative number of the meter; never a moisture content", "44", ""},
			"Over":    {"bare, or the flooring in place; blank is bare", "bare", ""},
		},
		"Events": {
			"Area":    {"the area, as listed in Areas; blank is the whole site", "A1", ""},
			"At":      {"day and time it happened", "2026-02-12 11:30", ""},
			"What":    {"what happened; water starts the tests over", "other", ""},
			"Remarks": {"what happened, in words", "building closed in", ""},
		},
		"Photos": {
			"File":     {"name of the picture", "a1-h1.jpg", ""},
			"Taken at": {"day and time it was taken", "2026-03-02 09:11", ""},
			"Of":       {"what it shows", "reading at hole H1", ""},
		},
		"Sign-off": signOffNotes(),
	}
}

func commonNotes() map[string]note {
	return map[string]note{
		"Area":       {"the area, as listed in Areas", "A1", ""},
		"Spot":       {"your name for the spot", "S1", ""},
		"X":          {"how far along the area, from a corner you choose", "6", "1.8"},
		"Y":          {"how far across the area, from the same corner", "2.5", "0.8"},
		"Depth":      {"how deep below the top it was read", "0.25", "6"},
		"Read at":    {"day and time it was read", "2026-03-02 09:10", ""},
		"Instrument": {"the instrument, as listed in Instruments", "M1", ""},
		"By":         {"who did it", "tester", ""},
		"Note":       {"anything worth keeping", "by the window", ""},
	}
}

func jobNotes() map[string]note {
	return map[string]note{
		"Item":               {"what the entry beside it is", "Job", ""},
		"Entry":              {"your entry; leave it blank where there is none", "Mill, building C", ""},
		"Job":                {"name of the job", "Mill, building C", ""},
		"Site":               {"where it is", "ground floor", ""},
		"Prepared by":        {"who keeps this record", "tester", ""},
		"Company":            {"whose work it is", "the flooring company", ""},
		"General contractor": {"who accepts the areas", "the general contractor", ""},
		"Time zone": {
			"area and city of the clock, so that waits over a clock change come out right",
			"America/Chicago", "",
		},
		"Elevation": {"of the site above the sea", "620", "190"},
		"Acceptance": {
			"simple: readings count as read; guarded: the instrument's uncertainty counts against them; blank is simple",
			"simple", "",
		},
		"Acceptance agreed by": {"who agreed to it", "tester and the general contractor", ""},
		"Acceptance agreed on": {"on which day", "2026-02-02", ""},
		"Probe wait":           {"hours between sealing a hole and reading it", "", ""},
		"Depth tolerance":      {"how far a hole may be off its depth", "", ""},
		"Held conditions":      {"hours the air must have been in range before a reading", "", ""},
		"Largest air gap":      {"hours that air readings may lie apart", "", ""},
		"Air excursion":        {"hours that air may leave its range and be excused", "", ""},
		"Slab reading life":    {"days that a slab reading counts", "", ""},
		"Wood reading life":    {"days that a wood reading counts", "", ""},
		"Air reading life":     {"hours that an air or surface reading counts", "", ""},
		"Dew margin":           {"how far a surface must be above the dew point", "", ""},
		"Target tolerance":     {"how far a lot's mean may be off the target", "", ""},
		"Heat run":             {"hours the floor heating must have run before the first reading", "", ""},
	}
}

func areaNotes() map[string]note {
	return map[string]note{
		"Area":           {"a short name; every other table names the area by it", "A1", ""},
		"Name":           {"what people call it", "Gallery", ""},
		"Size":           {"floor area; it sets how many tests are asked for", "560", "52"},
		"Substrate":      {"what the flooring is installed on", "slab", ""},
		"Slab thickness": {"of the slab", "5", "125"},
		"Drying faces": {
			"faces the slab dries at: 2 only where it is suspended and open below; blank is 1",
			"1", "",
		},
		"Slab kind": {"where the slab lies; below grade where soil stands against it", "on grade", ""},
		"Made of":   {"what it is made of; blank is normal concrete", "normal", ""},
		"Under slab": {
			"whether a vapor retarder lies below; unknown where nobody knows, never blank",
			"retarder", "",
		},
		"Exterior walls": {"how many walls of the area are exterior: 0, 1, 2", "1", ""},
		"Zone":           {"areas on one pour that share their slab tests: the same name in each", "", ""},
		"Placed on":      {"day the concrete was placed; nothing is read before it", "2025-10-22", ""},
		"Enclosed on":    {"day the building was closed in", "2025-11-14", ""},
		"Radiant heat":   {"whether the floor itself is heated; blank is no", "no", ""},
		"Heat on since":  {"when the heating began to run at its design setpoint", "2026-02-20 08:00", ""},
		"HVAC": {
			"what keeps the air in range; temporary until the permanent system runs",
			"permanent", "",
		},
		"Below":        {"what lies below a wood substrate", "conditioned room", ""},
		"Ground cover": {"whether the ground of a crawl space is covered", "yes", ""},
		"Flooring":     {"the flooring, as listed in Products", "FLOOR", ""},
		"Adhesive":     {"the adhesive, as listed in Products", "GLUE", ""},
		"Membrane":     {"the membrane, as listed in Products", "SHEET", ""},
		"Installation": {"how it is installed; blank is judged as glue-down", "glue-down", ""},
		"Climate":      {"the climate the floor will live in, as listed in Climates", "C1", ""},
		"Covered on": {
			"day the membrane went down; readings of the slab after it are history",
			"2026-03-04", "",
		},
		"Install on":          {"day the first board is to be installed", "2026-03-05", ""},
		"Width across boards": {"width of the room across the boards", "20", "6.1"},
	}
}

func productNotes() map[string]note {
	return map[string]note{
		"Product":     {"a short name; Areas names the product by it", "FLOOR", ""},
		"Kind":        {"what it is; it decides which checks are asked", "solid wood", ""},
		"Description": {"what it is in words", "plank, tongue and groove", ""},
		"Species":     {"of the wood", "white oak", ""},
		"Cut":         {"how the boards were sawn", "plainsawn", ""},
		"Below grade": {"whether its manufacturer allows it below grade", "no", ""},
		"Face width":  {"of a board; blank is judged as wide", "5", "127"},
		"Thickness":   {"of a board or sheet", "0.75", "19"},
		"Slab RH max": {"highest humidity in the slab that the data sheet allows", "75", ""},
		"MVER max": {
			"highest moisture emission it allows in 24 h: lb over 1000 ft2, or g over 1 m2",
			"3", "15",
		},
		"CM max":               {"highest carbide reading it allows", "none", ""},
		"pH min":               {"lowest pH of the slab it allows", "7", ""},
		"pH max":               {"highest pH of the slab it allows", "10", ""},
		"Subfloor MC max":      {"highest moisture content of a wood subfloor it allows", "12", ""},
		"Flooring MC min":      {"lowest moisture content of a board it allows", "6", ""},
		"Flooring MC max":      {"highest moisture content of a board it allows", "9", ""},
		"Difference max":       {"most that boards and subfloor may differ", "2", ""},
		"Air temp min":         {"lowest air temperature it allows", "60", "16"},
		"Air temp max":         {"highest air temperature it allows", "80", "27"},
		"Air RH min":           {"lowest humidity of the air it allows", "30", ""},
		"Air RH max":           {"highest humidity of the air it allows", "55", ""},
		"Surface temp max":     {"highest surface temperature of a heated floor it allows", "82", "28"},
		"Movement coefficient": {"change of a board's width for each point of moisture content", "0.00365", ""},
		"Data sheet": {
			"title and date of the sheet that the limits were read in; asked for wherever a limit decides",
			"plank installing sheet, 2025-05", "",
		},
	}
}
