package report

// Cautions are what a person must know before acting on a decision or a plan.
// They travel with both.
func Cautions() []Caution {
	return []Caution{
		{"What comes first", []string{
			"Local codes, the manufacturers' instructions and licensed practice come before anything written here.",
			"A result speaks only for the places and times tested (ASTM F2170, published).",
		}},
		{"Drilling into a slab", []string{
			"On a post-tensioned slab locate the tendons and have the engineer's agreement in writing before the first hole: a cut tendon can kill.",
			"Find reinforcement, heating pipes and cables before drilling.",
			"Silica dust harms the lungs for good: use a shroud and a HEPA vacuum, and wear a fitted respirator.",
			"Do not drill through the slab: the vapor retarder below must not be pierced.",
		}},
		{"Old floors", []string{
			"Old flooring, adhesives and levelers may hold asbestos, and old paint lead. " +
				"Do not sand, scrape or drill them until a licensed person has sampled them.",
		}},
		{"Wet cement and chemicals", []string{
			"Wet cement burns skin and eyes: wear gloves and goggles, and wash at once.",
			"Calcium chloride irritates and draws water: keep it off skin and out of the test area after weighing.",
			"A carbide test makes flammable gas under pressure: follow its manufacturer's instructions, " +
				"release it outdoors, away from flame and sparks.",
		}},
		{"Electricity, heat and air", []string{
			"Keep cords and power tools off wet slabs, and plug them into a ground-fault circuit interrupter (GFCI).",
			"A direct-fired heater gives off carbon monoxide and water: vent it, and do not work beside it in a closed room.",
			"A crawl space can hold bad air, live wiring and sharp metal: ventilate it, and do not enter alone.",
		}},
	}
}
