package alike

import (
	"firstboard/report/evidence"
	"firstboard/report/lists"
)

// renamed is what a record of the first edition calls something, and what it is
// called now.
type renamed struct{ was, now string }

// ColumnNow is the new name of a column of a table, or empty where it has none.
func ColumnNow(table, typed string) string { return nowCalled(typed, columnsNow(table)) }

// WordNow is that of a fixed word.
func WordNow(typed string) string { return nowCalled(typed, wordsNow()) }

// TableNow is that of a table.
func TableNow(typed string) string {
	return nowCalled(typed, []renamed{{"Slab emission", "Slab MVER"}})
}

func nowCalled(typed string, names []renamed) string {
	r, _ := lists.First(names, func(r renamed) bool { return evidence.Same(r.was, typed) })
	return r.now
}

// columnsNow are the columns of a table that have new names.
func columnsNow(table string) []renamed {
	switch table {
	case "Areas":
		return []renamed{
			{"Base", "Substrate"},
			{"Exterior wall", "Exterior walls"},
			{"Heated", "Radiant heat"},
			{"Heat run from", "Heat on since"},
			{"Conditioned by", "HVAC"},
			{"Covering", "Flooring"},
			{"Fixing", "Installation"},
			{"Lay on", "Install on"},
			{"Run", "Width across boards"},
		}
	case "Products":
		return []renamed{{"Emission max", "MVER max"}, {"Across coefficient", "Movement coefficient"}}
	case "Instruments":
		return []renamed{{"Maker and model", "Make and model"}}
	case "Slab MVER":
		return []renamed{{"Lifted at", "Retrieved at"}}
	case "Events":
		return []renamed{{"Words", "Remarks"}}
	case "Sign-off":
		return []renamed{{"Paper", "Document"}, {"Words", "Remarks"}}
	}
	return nil
}

// wordsNow are the fixed words that are written otherwise now.
func wordsNow() []renamed {
	return []renamed{
		{"on ground", "on grade"},
		{"calcium sulphate", "calcium sulfate"},
		{"heated room", "conditioned room"},
		{"unheated room", "unconditioned room"},
		{"nailed", "nail-down"},
		{"glued", "glue-down"},
		{"stretched", "stretch-in"},
		{"loose", "loose-lay"},
		{"flat", "plainsawn"},
		{"quarter", "quartersawn"},
		{"textile", "carpet"},
		{"wetted", "water"},
		{"air plant off", "HVAC off"},
		{"roof open", "building open"},
		{"leveller placed", "leveler placed"},
		{"covering maker", "flooring manufacturer"},
		{"adhesive maker", "adhesive manufacturer"},
		{"membrane maker", "membrane manufacturer"},
	}
}
