package record

import (
	_ "time/tzdata" // a record's zone is known on every machine

	"firstboard/report/evidence"
	"firstboard/report/lists"
)

// schemas are the tables of a record, in the design's order.
func schemas() []schema {
	return []schema{
		jobTable(), areasTable(), productsTable(), climatesTable(), instrumentsTable(), checksTable(),
		slabRHTable(), mverTable(), slabPHTable(), slabCMTable(), otherTable(),
		airTable(), surfaceTable(), woodTable(), scanTable(),
		eventsTable(), photosTable(), signOffTable(),
	}
}

// The units that headers may carry, the design's own first.
func fahrenheit() []evidence.Unit { return []evidence.Unit{evidence.Fahrenheit, evidence.Celsius} }

func inches() []evidence.Unit {
	return []evidence.Unit{evidence.Inch, evidence.Foot, evidence.Millimeter, evidence.Centimeter, evidence.Meter}
}

func feet() []evidence.Unit {
	return []evidence.Unit{evidence.Foot, evidence.Inch, evidence.Millimeter, evidence.Centimeter, evidence.Meter}
}

func patches() []evidence.Unit {
	return []evidence.Unit{evidence.SquareFoot, evidence.SquareInch, evidence.SquareCM, evidence.SquareM}
}

func only(u evidence.Unit) []evidence.Unit { return []evidence.Unit{u} }

// unitless is for a number in no unit, or in one that its row names.
func unitless() []evidence.Unit { return nil }

// The rules of the percentages.
func humidity() rule { return percents(100) }
func moisture() rule { return percents(200) }
func acidity() rule  { return within(0, 14) }

// The products a flooring system may be made of.
func floorings() []string {
	return []string{"solid wood", "engineered wood", "bamboo", "laminate", "resilient", "carpet"}
}

// TableNames are the names of all tables a record may have, in the design's
// order.
func TableNames() []string {
	return lists.Each(schemas(), schema.title)
}
