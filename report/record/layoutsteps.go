package record

import (
	"firstboard/report"
)

// FirstSteps are the tables that a small job needs, one wood floor on a slab,
// in the order to fill them in.
func FirstSteps() []report.StartStep {
	return []report.StartStep{
		{Table: "Job", Says: "Name the job. The rest of the entries may stay blank."},
		{Table: "Products", Says: "A row for the flooring, and for an adhesive or a membrane. A limit is the data sheet's number, none where it states none, blank where it was not looked up."},
		{Table: "Climates", Says: "A row for each season the floor will live through: temperature, humidity, and who says so."},
		{Table: "Areas", Says: "A row for the room: size, base, flooring, climate, and the day of installing."},
		{Table: "Instruments", Says: "A row for each meter: its kind, and the day it was calibrated."},
		{Table: "Instrument checks", Says: "For a reusable probe: a check in a known humidity at most 30 days before it is read (ASTM F2170, published)."},
		{Table: "Slab RH", Says: "At least 3 holes (ASTM F2170, published), a row each time one is read. Before drilling find tendons, pipes and cables, and keep the silica dust out of your lungs."},
		{Table: "Air", Says: "A row a day at least, or a logger's rows, from 48 h before the first reading (ASTM F2170, recalled) to the day of installing. Where anything is glued, fill in Surface too."},
		{Table: "Wood", Says: "40 boards for each 1000 ft2 (NWFA guidance 2019, published): what, piece, method and reading."},
		{Says: "Then judge it: firstboard check FILE -o decision.xlsx. What a job does not need stays empty; a blank is a missing value, never zero."},
	}
}
