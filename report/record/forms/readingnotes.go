package forms

import "firstboard/slab"

// The notes of the tables that hold readings, and of those about them.

func instrumentNotes() map[string]note {
	return map[string]note{
		"Instrument":       {"a short name; the readings name the instrument by it", "M1", ""},
		"Kind":             {"what it reads; several with commas for a meter that does several", "RH probe", ""},
		"Make and model":   {"who made it, and which it is", "reusable hole probe", ""},
		"Serial":           {"its number", "R-0117", ""},
		"Calibrated on":    {"day of the last calibration", "2025-09-15", ""},
		"Due on":           {"day the next is due; blank is a year after the last", "2026-09-15", ""},
		"Certificate":      {"number of the certificate", "CAL-2209", ""},
		"Uncertainty":      {"expanded (k = 2), in the unit of its readings", "1.8", ""},
		"Uncertainty temp": {"the same of its temperatures", "0.7", "0.4"},
	}
}

func holeNotes() map[string]note {
	return map[string]note{
		"Hole":             {"your name for the hole; each reading of it is a row", "H1", ""},
		"To exterior wall": {"from the hole to the nearest one", "2.5", "0.8"},
		"Wall": {
			"which exterior wall that is, by a name of yours; two with a comma in a corner",
			"north", "",
		},
		"Thickness": {"of the slab at the hole; blank is that of the area", "5", "125"},
		"Depth": {
			"of the hole: 40 % of the thickness, 20 % where the slab dries at both faces (ASTM F2170, published)",
			"2", "50",
		},
		"Sealed at": {"day and time the hole was lined and sealed", "2026-02-27 10:15", ""},
		"RH":        {"humidity in the hole", "71.8", ""},
		"Temp":      {"of the concrete in the hole", "65.7", "18.7"},
		"Discarded": {"why the hole is not counted; a high reading is no reason", "", ""},
	}
}

func dishNotes() map[string]note {
	return map[string]note{
		"Instrument": {"the balance, as listed in Instruments", "BL1", ""},
		"Dish":       {"your name for the dish", "D1", ""},
		"Set at":     {"day and time the dish was set out", "2026-02-27 10:00", ""},
		"Retrieved at": {
			"day and time it was lifted, " + slab.Exposure().String() + " later (ASTM F1869, published)",
			"2026-03-02 04:00", "",
		},
		"Start mass": {"of the dish when it was set", "30.1", ""},
		"End mass":   {"of the dish when it was lifted", "34.1", ""},
		"Test area":  {"concrete under the dome, less the dish", "0.449", "417"},
	}
}

func otherNotes() map[string]note {
	return map[string]note{
		"Test":       {"name of a further test that somebody asks for", "drop of water gone", ""},
		"Result":     {"what it gave", "38", ""},
		"At least":   {"lowest result allowed; blank where there is none", "", ""},
		"At most":    {"highest result allowed; blank where there is none", "60", ""},
		"Unit":       {"of the three numbers", "s", ""},
		"Data sheet": {"who asks for it: a data sheet or a standard", "ASTM F3191", ""},
	}
}

func woodNotes() map[string]note {
	return map[string]note{
		"Instrument": {"the meter or oven, as listed in Instruments", "PM1", ""},
		"Of":         {"what was read", "flooring", ""},
		"Piece":      {"your name for the board or spot", "B1", ""},
		"Lot":        {"the delivery that a board came with", "L1", ""},
		"Method":     {"how it was read", "pin", ""},
		"Reading":    {"moisture content as the meter showed it", "8.2", ""},
		"Scale": {
			"what the meter was set to: a species, a gravity or a panel; or corrected, where the number is corrected already. Blank counts for nothing",
			"white oak", "",
		},
		"Species": {
			"of the piece, or plywood, OSB, particleboard, MDF; blank on flooring is the flooring's",
			"white oak", "",
		},
		"Wood temp":      {"temperature of the wood", "66", "19"},
		"Temp corrected": {"whether the meter corrected for it", "yes", ""},
		"Set aside":      {"yes for a board that was culled; say why in the note", "no", ""},
	}
}

func signOffNotes() map[string]note {
	return map[string]note{
		"Role":     {"who signs", "installer", ""},
		"Name":     {"name of who signs", "lead installer", ""},
		"At":       {"day and time of signing", "2026-03-04 17:35", ""},
		"Decision": {"accept or refuse the area, or waive checks", "accept", ""},
		"Waives":   {"ids of the checks that are waived", "", ""},
		"Document": {"where the signature itself is kept", "form F-12", ""},
		"Remarks":  {"what was agreed", "read with the tester on site", ""},
	}
}
