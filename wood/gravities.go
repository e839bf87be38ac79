package wood

// gravities are the specific gravities of the species in the table of
// dimensional change: oven-dry mass, volume at 12 % MC, from memory of Wood
// Handbook Tables 5-3 (North America) and 5-5 (imported; green volume).
func gravities() map[string]float64 {
	return map[string]float64{
		"Alder, red": 0.41, "Ash, black": 0.49, "Ash, green": 0.56, "Ash, Oregon": 0.55,
		"Ash, white": 0.60, "Aspen, quaking": 0.38, "Baldcypress": 0.46, "Basswood, American": 0.37,
		"Beech, American": 0.64, "Birch, paper": 0.55, "Birch, sweet": 0.65, "Birch, yellow": 0.62,
		"Butternut": 0.38, "Cedar, western redcedar": 0.32, "Cedar, yellow": 0.44, "Cherry, black": 0.50,
		"Chestnut, American": 0.43, "Cottonwood, black": 0.35, "Cottonwood, eastern": 0.40,
		"Douglas-fir": 0.48, "Douglas-fir, Coast": 0.48, "Douglas-fir, Coast-type": 0.48,
		"Douglas-fir, Interior north": 0.48, "Douglas-fir, Interior west": 0.50,
		"Elm, American": 0.50, "Elm, rock": 0.63, "Elm, slippery": 0.53, "Fir, white": 0.39,
		"Hackberry": 0.53, "Heart pine (longleaf)": 0.59, "Hemlock, western": 0.45,
		"Hickory, mockernut (true)": 0.72, "Hickory, pecan": 0.66, "Hickory, pignut (true)": 0.75,
		"Hickory, true": 0.72, "Ipe": 0.92, "Iroko": 0.54, "Jarrah": 0.67,
		"Brazilian cherry (jatoba)": 0.71, "Jatoba (Brazilian cherry)": 0.71,
		"Larch, western": 0.52, "Locust, black": 0.69, "Magnolia, cucumbertree": 0.48,
		"Magnolia, southern": 0.50, "Mahogany, Honduran": 0.45, "Maple, bigleaf": 0.48, "Maple, black": 0.57,
		"Maple, red": 0.54, "Maple, silver": 0.47, "Maple, sugar (hard maple)": 0.63, "Merbau": 0.64,
		"Oak, black": 0.61, "Pine, eastern white": 0.35, "Pine, loblolly": 0.51, "Pine, longleaf": 0.59,
		"Pine, ponderosa": 0.40, "Pine, shortleaf": 0.51, "Pine, slash": 0.59, "Purpleheart": 0.67,
		"Red oak, commercial": 0.63, "Red oak: water, laurel, willow": 0.63, "Redwood, old-growth": 0.40,
		"Redwood, second-growth": 0.35, "Santos mahogany": 0.74, "Sassafras": 0.46,
		"Southern yellow pine": 0.55, "Spruce, Sitka": 0.40, "Sweetgum": 0.52, "Sycamore, American": 0.49,
		"Teak": 0.55, "Tupelo, black": 0.50, "Tupelo, water": 0.50, "Walnut, black": 0.55,
		"White oak, commercial": 0.68, "White oak, live": 0.88, "White oak, overcup": 0.63,
		"Willow, black": 0.39, "Yellow-poplar": 0.42,
	}
}
