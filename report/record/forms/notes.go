package forms

// note is what goes into a field, and an entry for it. The metric one is
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
			"Climate": {says: "a short name; Areas names the climate by it", example: "C1"},
			"Period":  {says: "a season, or a month: a row for each", example: "winter"},
			"Temp":    {says: "mean temperature of the air in it", example: "70", metric: "21"},
			"RH":      {says: "mean humidity of the air in it", example: "32"},
			"From":    {says: "who says so", example: "designer, mechanical schedule, 2025-04"},
		},
		"Instruments": instrumentNotes(),
		"Instrument checks": {
			"Checked at": {says: "day and time it was held to a standard", example: "2026-02-09 15:40"},
			"Standard":   {says: "what it was held to; NaCl at 23 C fills a blank Expected", example: "NaCl at 23 C"},
			"Expected":   {says: "what it should have read", example: "75.4"},
			"Read":       {says: "what it did read", example: "75.8"},
		},
		"Slab RH":   holeNotes(),
		"Slab MVER": dishNotes(),
		"Slab pH": {
			"pH":         {says: "pH of the surface", example: "9.6"},
			"Instrument": {says: "the pH meter, as listed in Instruments", example: "PH1"},
		},
		"Slab CM": {
			"CM":         {says: "moisture by the carbide method, % of mass", example: "1.8"},
			"Instrument": {says: "the carbide instrument, as listed in Instruments", example: "CM1"},
		},
		"Other tests": otherNotes(),
		"Air": {
			"Area":       {says: "the area, as listed in Areas; blank is the whole site", example: "A1"},
			"Instrument": {says: "the air instrument, as listed in Instruments", example: "AL1"},
			"Temp":       {says: "temperature of the air", example: "70.9", metric: "21.6"},
			"RH":         {says: "humidity of the air", example: "40.1"},
		},
		"Surface": {
			"Temp":       {says: "temperature of the surface", example: "66.9", metric: "19.4"},
			"Instrument": {says: "the surface thermometer, as listed in Instruments", example: "IR1"},
		},
		"Wood": woodNotes(),
		"Scan": {
			"Reading": {says: "relative number of the meter; never a moisture content", example: "44"},
			"Over":    {says: "bare, or the flooring in place; blank is bare", example: "bare"},
		},
		"Events": {
			"Area":    {says: "the area, as listed in Areas; blank is the whole site", example: "A1"},
			"At":      {says: "day and time it happened", example: "2026-02-12 11:30"},
			"What":    {says: "what happened; water starts the tests anew", example: "other"},
			"Remarks": {says: "what happened, in words", example: "building closed in"},
		},
		"Photos": {
			"File":     {says: "name of the picture", example: "a1-h1.jpg"},
			"Taken at": {says: "day and time it was taken", example: "2026-03-02 09:11"},
			"Of":       {says: "what it shows", example: "reading at hole H1"},
		},
		"Sign-off": signOffNotes(),
	}
}

func commonNotes() map[string]note {
	return map[string]note{
		"Area":       {says: "the area, as listed in Areas", example: "A1"},
		"Spot":       {says: "your name for the spot", example: "S1"},
		"X":          {says: "how far along the area, from a corner you choose", example: "6", metric: "1.8"},
		"Y":          {says: "how far across the area, from the same corner", example: "2.5", metric: "0.8"},
		"Depth":      {says: "how deep below the top it was read", example: "0.25", metric: "6"},
		"Read at":    {says: "day and time it was read", example: "2026-03-02 09:10"},
		"Instrument": {says: "the instrument, as listed in Instruments", example: "M1"},
		"By":         {says: "who did it", example: "tester"},
		"Note":       {says: "anything worth keeping", example: "by the window"},
	}
}

func jobNotes() map[string]note {
	return map[string]note{
		"Item":               {says: "what the entry beside it is", example: "Job"},
		"Entry":              {says: "your entry; leave it blank where there is none", example: "Mill, building C"},
		"Job":                {says: "name of the job", example: "Mill, building C"},
		"Site":               {says: "where it is", example: "ground floor"},
		"Prepared by":        {says: "who keeps this record", example: "tester"},
		"Company":            {says: "whose work it is", example: "the flooring company"},
		"General contractor": {says: "who accepts the areas", example: "the general contractor"},
		"Time zone": {
			says:    "area and city of the clock, so that waits over a clock change come out right",
			example: "America/Chicago",
		},
		"Elevation":            {says: "of the site above the sea", example: "620", metric: "190"},
		"Acceptance":           {says: "simple: readings count as read; guarded: the instrument's uncertainty counts against them; blank is simple", example: "simple"},
		"Acceptance agreed by": {says: "who agreed to it", example: "tester and the general contractor"},
		"Acceptance agreed on": {says: "on which day", example: "2026-02-02"},
		"Probe wait":           {says: "hours between sealing a hole and reading it", example: ""},
		"Depth tolerance":      {says: "how far a hole may be off its depth", example: ""},
		"Held conditions":      {says: "hours the air must have been in range before a reading", example: ""},
		"Largest air gap":      {says: "hours that air readings may lie apart", example: ""},
		"Air excursion":        {says: "hours that air may leave its range and be excused", example: ""},
		"Slab reading life":    {says: "days that a slab reading counts", example: ""},
		"Wood reading life":    {says: "days that a wood reading counts", example: ""},
		"Air reading life":     {says: "hours that an air or surface reading counts", example: ""},
		"Dew margin":           {says: "how far a surface must be above the dew point", example: ""},
		"Target tolerance":     {says: "how far a lot's mean may be off the target", example: ""},
		"Heat run":             {says: "hours the floor heating must have run before the first reading", example: ""},
	}
}

func areaNotes() map[string]note {
	return map[string]note{
		"Area":           {says: "a short name; every other table names the area by it", example: "A1"},
		"Name":           {says: "what people call it", example: "Gallery"},
		"Size":           {says: "floor area; it sets how many tests are asked for", example: "560", metric: "52"},
		"Substrate":      {says: "what the flooring is installed on", example: "slab"},
		"Slab thickness": {says: "of the slab", example: "5", metric: "125"},
		"Drying faces":   {says: "faces the slab dries at: 2 only where it is suspended and open below; blank is 1", example: "1"},
		"Slab kind": {
			says:    "where the slab lies; below grade where soil stands against it",
			example: "on grade",
		},
		"Made of": {says: "what it is made of; blank is normal concrete", example: "normal"},
		"Under slab": {
			says:    "whether a vapor retarder lies below; unknown where nobody knows, never blank",
			example: "retarder",
		},
		"Exterior walls": {says: "how many walls of the area are exterior: 0, 1, 2", example: "1"},
		"Zone": {
			says:    "areas on one pour that share their slab tests: the same name in each",
			example: "",
		},
		"Placed on":    {says: "day the concrete was placed; nothing is read before it", example: "2025-10-22"},
		"Enclosed on":  {says: "day the building was closed in", example: "2025-11-14"},
		"Radiant heat": {says: "whether the floor itself is heated; blank is no", example: "no"},
		"Heat on since": {
			says:    "when the heating began to run at its design setpoint",
			example: "2026-02-20 08:00",
		},
		"HVAC": {
			says:    "what keeps the air in range; temporary until the permanent system runs",
			example: "permanent",
		},
		"Below":        {says: "what lies below a wood substrate", example: "conditioned room"},
		"Ground cover": {says: "whether the ground of a crawl space is covered", example: "yes"},
		"Flooring":     {says: "the flooring, as listed in Products", example: "FLOOR"},
		"Adhesive":     {says: "the adhesive, as listed in Products", example: "GLUE"},
		"Membrane":     {says: "the membrane, as listed in Products", example: "SHEET"},
		"Installation": {says: "how it is installed; blank is judged as glue-down", example: "glue-down"},
		"Climate":      {says: "the climate the floor will live in, as listed in Climates", example: "C1"},
		"Covered on": {
			says:    "day the membrane went down; readings of the slab after it are history",
			example: "2026-03-04",
		},
		"Install on":          {says: "day the first board is to be installed", example: "2026-03-05"},
		"Width across boards": {says: "width of the room across the boards", example: "20", metric: "6.1"},
	}
}

func productNotes() map[string]note {
	return map[string]note{
		"Product":     {says: "a short name; Areas names the product by it", example: "FLOOR"},
		"Kind":        {says: "what it is; it decides which checks are asked", example: "solid wood"},
		"Description": {says: "what it is in words", example: "plank, tongue and groove"},
		"Species":     {says: "of the wood", example: "white oak"},
		"Cut":         {says: "how the boards were sawn", example: "plainsawn"},
		"Below grade": {says: "whether its manufacturer allows it below grade", example: "no"},
		"Face width":  {says: "of a board; blank is judged as wide", example: "5", metric: "127"},
		"Thickness":   {says: "of a board or sheet", example: "0.75", metric: "19"},
		"Slab RH max": {says: "highest humidity in the slab that the data sheet allows", example: "75"},
		"MVER max": {
			says:    "highest moisture emission it allows in 24 h: lb over 1000 ft2, or g over 1 m2",
			example: "3", metric: "15",
		},
		"CM max":          {says: "highest carbide reading it allows", example: "none"},
		"pH min":          {says: "lowest pH of the slab it allows", example: "7"},
		"pH max":          {says: "highest pH of the slab it allows", example: "10"},
		"Subfloor MC max": {says: "highest moisture content of a wood subfloor it allows", example: "12"},
		"Flooring MC min": {says: "lowest moisture content of a board it allows", example: "6"},
		"Flooring MC max": {says: "highest moisture content of a board it allows", example: "9"},
		"Difference max":  {says: "most that boards and subfloor may differ", example: "2"},
		"Air temp min":    {says: "lowest air temperature it allows", example: "60", metric: "16"},
		"Air temp max":    {says: "highest air temperature it allows", example: "80", metric: "27"},
		"Air RH min":      {says: "lowest humidity of the air it allows", example: "30"},
		"Air RH max":      {says: "highest humidity of the air it allows", example: "55"},
		"Surface temp max": {
			says: "highest surface temperature of a heated floor it allows", example: "82",
			metric: "28",
		},
		"Movement coefficient": {
			says:    "change of a board's width for each point of moisture content",
			example: "0.00365",
		},
		"Data sheet": {
			says:    "title and date of the sheet that the limits were read in; asked for wherever a limit decides",
			example: "plank installing sheet, 2025-05",
		},
	}
}
