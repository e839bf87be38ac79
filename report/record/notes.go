package record

// note is what goes into a column, in a few words, where its name does not say
// it all.
func note(table, column string) string {
	if s := notes()[table+"/"+column]; s != "" {
		return s
	}
	return notes()[column]
}

// notes are by table and column, or by column for every table that has it.
func notes() map[string]string {
	return map[string]string{
		"Area":       "The area's name, as on sheet Areas.",
		"Instrument": "The meter's name, as on sheet Instruments.",
		"Read at":    "Day and time of the reading: 2026-03-04 08:30.",
		"By":         "Who read it.",
		"X":          "Distance from the area's corner along one wall, for the plan.",
		"Y":          "Distance from the same corner along the other wall.",
		"Note":       "Anything a reviewer should know.",

		"Job/Item":  "What the entry is. Only Job is needed.",
		"Job/Entry": "Time zone: area and city, such as America/Chicago. Acceptance: simple or guarded.",

		"Areas/Area":           "A short name: A1. An area is accepted or refused as a whole.",
		"Areas/Size":           "Floor size.",
		"Areas/Base":           "What the covering is laid on.",
		"Areas/Slab thickness": "Of the slab where a hole states none of its own.",
		"Areas/Drying faces":   "1 where the slab dries upward only, 2 where it dries both ways.",
		"Areas/Exterior wall":  "Blank is a yes.",
		"Areas/Heat run from":  "Since when the floor heating has run at working output.",
		"Areas/Below":          "What lies under a wood base.",
		"Areas/Covering":       "A product of sheet Products.",
		"Areas/Fixing":         "Blank is judged as glued.",
		"Areas/Climate":        "A climate of sheet Climates: the one the floor will live in.",
		"Areas/Covered on":     "The day membrane or underlay closed the slab.",
		"Areas/Lay on":         "The planned first day of laying.",
		"Areas/Run":            "The room's dimension across the boards.",

		"Products/Product":        "A short name, as it is used on sheet Areas.",
		"Products/Face width":     "Of a board.",
		"Products/Slab RH max":    "As the data sheet states it. none: the sheet states none. Blank: nobody looked.",
		"Products/Emission max":   "Per 1000 ft2 (lb) or per m2 (g) in 24 h. none: the sheet states none. Blank: nobody looked.",
		"Products/Difference max": "Flooring less subfloor. none: the sheet states none. Blank: nobody looked.",
		"Products/Data sheet":     "Title and date. A limit without one counts as typed, not as the maker's.",

		"Climates/Climate": "A short name, as it is used on sheet Areas.",
		"Climates/Period":  "A season or month.",
		"Climates/Temp":    "Seasonal mean indoors, once people live there.",
		"Climates/RH":      "Seasonal mean indoors, 0 to 100.",
		"Climates/From":    "Who says so.",

		"Instruments/Instrument":  "A short name, as it is used in the readings.",
		"Instruments/Due on":      "Blank: 365 days after calibration.",
		"Instruments/Uncertainty": "Expanded (k = 2), in the unit the meter reads.",

		"Instrument checks/Expected": "What the standard should read. May stay blank where Standard is a salt and a temperature: NaCl at 23 C.",
		"Instrument checks/Read":     "What the instrument read in it.",

		"Slab RH/Hole":             "The hole's name. One row each reading: earlier rows are its drying history.",
		"Slab RH/To exterior wall": "One hole is asked for within 3 ft (0.9144 m).",
		"Slab RH/Depth":            "40 % of the thickness (one drying face) or 20 % (two).",
		"Slab RH/Sealed at":        "When the hole was sealed: 2026-03-03 08:00.",
		"Slab RH/RH":               "As the probe showed it, 0 to 100.",
		"Slab RH/Temp":             "Of the concrete.",
		"Slab RH/Discarded":        "Why a hole is out of use. A high reading is no reason.",

		"Slab emission/Test area": "The concrete under the dome less the dish.",
		"Air/Area":                "Blank: the whole site.",
		"Events/Area":             "Blank: the whole site.",
		"Wood/Piece":              "The board's or panel's name.",
		"Wood/Lot":                "The delivery, where there are several.",
		"Wood/Scale":              "The meter's setting: a species, a gravity, a panel setting, or corrected.",
		"Wood/Temp corrected":     "Whether the meter itself corrected for the wood's temperature.",
		"Wood/Set aside":          "yes: a culled board. Say why in Note.",
		"Scan/Reading":            "A number to compare with, never a moisture content.",
		"Scan/Over":               "bare, or the covering in place.",
		"Sign-off/Waives":         "Ids of the checks that are waived, such as slab-rh.",
	}
}
