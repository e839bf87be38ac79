package forms

import "firstboard/slab"

// The notes of the tables that hold readings, and of those about them.

func instrumentNotes() map[string]note {
	return map[string]note{
		"Instrument": {says: "a short name; the readings name the instrument by it", example: "M1"},
		"Kind": {
			says:    "what it reads; several with commas for a meter that does several",
			example: "RH probe",
		},
		"Make and model":   {says: "who made it, and which it is", example: "reusable hole probe"},
		"Serial":           {says: "its number", example: "R-0117"},
		"Calibrated on":    {says: "day of the last calibration", example: "2025-09-15"},
		"Due on":           {says: "day the next is due; blank is a year after the last", example: "2026-09-15"},
		"Certificate":      {says: "number of the certificate", example: "CAL-2209"},
		"Uncertainty":      {says: "expanded (k = 2), in the unit of its readings", example: "1.8"},
		"Uncertainty temp": {says: "the same of its temperatures", example: "0.7", metric: "0.4"},
	}
}

func holeNotes() map[string]note {
	return map[string]note{
		"Hole":             {says: "your name for the hole; each reading of it is a row", example: "H1"},
		"To exterior wall": {says: "from the hole to the nearest one", example: "2.5", metric: "0.8"},
		"Wall": {
			says:    "which exterior wall that is, by a name of yours; two with a comma in a corner",
			example: "north",
		},
		"Thickness": {says: "of the slab at the hole; blank is that of the area", example: "5", metric: "125"},
		"Depth": {
			says:    "of the hole: 40 % of the thickness, 20 % where the slab dries at both faces (ASTM F2170, published)",
			example: "2", metric: "50",
		},
		"Sealed at": {says: "day and time the hole was lined and sealed", example: "2026-02-27 10:15"},
		"RH":        {says: "humidity in the hole", example: "71.8"},
		"Temp":      {says: "of the concrete in the hole", example: "65.7", metric: "18.7"},
		"Discarded": {says: "why the hole is not counted; a high reading is no reason", example: ""},
	}
}

func dishNotes() map[string]note {
	return map[string]note{
		"Instrument": {says: "the balance, as listed in Instruments", example: "BL1"},
		"Dish":       {says: "your name for the dish", example: "D1"},
		"Set at":     {says: "day and time the dish was set out", example: "2026-02-27 10:00"},
		"Retrieved at": {
			says:    "day and time it was lifted, " + slab.Exposure().String() + " later (ASTM F1869, published)",
			example: "2026-03-02 04:00",
		},
		"Start mass": {says: "of the dish when it was set", example: "30.1"},
		"End mass":   {says: "of the dish when it was lifted", example: "34.1"},
		"Test area":  {says: "concrete under the dome, less the dish", example: "0.449", metric: "417"},
	}
}

func otherNotes() map[string]note {
	return map[string]note{
		"Test":       {says: "name of a further test that somebody asks for", example: "drop of water gone"},
		"Result":     {says: "what it gave", example: "38"},
		"At least":   {says: "lowest result allowed; blank where there is none", example: ""},
		"At most":    {says: "highest result allowed; blank where there is none", example: "60"},
		"Unit":       {says: "of the three numbers", example: "s"},
		"Data sheet": {says: "who asks for it: a data sheet or a standard", example: "ASTM F3191"},
	}
}

func woodNotes() map[string]note {
	return map[string]note{
		"Instrument": {says: "the meter or oven, as listed in Instruments", example: "PM1"},
		"Of":         {says: "what was read", example: "flooring"},
		"Piece":      {says: "your name for the board or spot", example: "B1"},
		"Lot":        {says: "the delivery that a board came with", example: "L1"},
		"Method":     {says: "how it was read", example: "pin"},
		"Reading":    {says: "moisture content as the meter showed it", example: "8.2"},
		"Scale":      {says: "what the meter was set to: a species, a gravity or a panel; or corrected, where the number is corrected already. Blank counts for nothing", example: "white oak"},
		"Species": {
			says:    "of the piece, or plywood, OSB, particleboard, MDF; blank on flooring is the flooring's",
			example: "white oak",
		},
		"Wood temp":      {says: "temperature of the wood", example: "66", metric: "19"},
		"Temp corrected": {says: "whether the meter corrected for it", example: "yes"},
		"Set aside":      {says: "yes for a board that was culled; say why in the note", example: "no"},
	}
}

func signOffNotes() map[string]note {
	return map[string]note{
		"Role":     {says: "who signs", example: "installer"},
		"Name":     {says: "name of who signs", example: "lead installer"},
		"At":       {says: "day and time of signing", example: "2026-03-04 17:35"},
		"Decision": {says: "accept or refuse the area, or waive checks", example: "accept"},
		"Waives":   {says: "ids of the checks that are waived", example: ""},
		"Document": {says: "where the signature itself is kept", example: "form F-12"},
		"Remarks":  {says: "what was agreed", example: "read with the tester on site"},
	}
}
