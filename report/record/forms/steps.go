package forms

import (
	"fmt"

	"firstboard/acclimate"
	"firstboard/report/grid"
	"firstboard/report/instruments"
	"firstboard/slab"
	"firstboard/wood"
)

// FirstSteps are the tables to fill in, in order, for the three floors that
// most jobs have: wood on a slab, wood on wood, resilient on a slab.
func FirstSteps() []grid.StartStep {
	return []grid.StartStep{
		{Table: "Job", Says: "Name the job, and its time zone. The rest of the entries may stay blank."},
		{Table: "Products", Says: "A row for the flooring, and one for its adhesive or membrane. Take each limit from the data sheet and name that sheet in Data sheet. " +
			"Write none where the sheet states no such limit: a blank says that the limit was not looked up, and then the floor is no GO."},
		{Table: "Climates", Says: "A row for each season the floor will live through: temperature, humidity, and who says so."},
		{Table: "Areas", Says: "A row for each room: its size, what the flooring is laid on (slab, wood, or wood over slab), the products, the climate, and the day of installing. " +
			"On a slab: its thickness and kind, how many walls are exterior, and what lies under it (write unknown where nobody knows). On wood over a crawl space: Below, and Ground cover."},
		{Table: "Instruments", Says: "A row for each meter: its kind (several with commas), and the day it was calibrated."},
		{Table: "Instrument checks", Says: fmt.Sprintf("For a reusable probe: a check in a known humidity "+
			"at most %d days before it is read (ASTM F2170, published). "+
			"For a pin or pinless meter without a certificate: its check block, within %d days before the boards.",
			instruments.ProbeDays, instruments.BlockDays)},
		{Table: "Slab RH", Says: fmt.Sprintf("Wood or resilient on a slab: at least %d holes (ASTM F2170, published), "+
			"one within %s of each exterior wall, a row each time one is read. "+
			"Before drilling find tendons, pipes and cables, and keep the silica dust out of your lungs.",
			slab.FirstHoles, slab.NearWall())},
		{Table: "Slab pH", Says: fmt.Sprintf("Where anything is glued to the slab and the adhesive states a pH: "+
			"%d spots at least. Where a data sheet asks for it instead of holes or beside them: Slab MVER or Slab CM.", slab.PHSpots)},
		{Table: "Air", Says: fmt.Sprintf("Every floor: a row a day at least, or a logger's rows (firstboard log), "+
			"from %s before the first reading (ASTM F2170, recalled) to the day of installing. Where anything is glued, fill in Surface too.",
			acclimate.DefaultHeld())},
		{Table: "Wood", Says: fmt.Sprintf("Wood flooring: %d boards for each %[3]d ft2; a wood subfloor: %[2]d spots for each %[3]d ft2 "+
			"(NWFA guidance 2019, published). For each: what, piece, method, reading, "+
			"and in Scale the species or panel setting of the meter, or corrected: a reading whose scale is not known counts for nothing. Resilient flooring needs none of this.",
			wood.PerFlooring, wood.PerSubfloor, wood.PartFT2)},
		{Says: "Then judge it: firstboard check FILE -o decision.xlsx. What a job does not need stays empty; a blank is a missing value, never zero."},
	}
}
