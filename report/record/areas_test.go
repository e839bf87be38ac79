package record

import "testing"

const areaHead = "Area,Size (ft2),Substrate,Slab thickness (in),Flooring,Climate,Install on"

func TestAreaFaults(t *testing.T) {
	for _, c := range []spoiled{
		{
			"a time for a date", "areas.csv", areaHead + "\nA1,1240,slab,4,P1,C1,2026-03-12 08:30\n",
			`areas.csv row 2 "Install on": "2026-03-12 08:30" has a time in it, and a date is asked for; write 2026-03-12`,
		},
		{
			"another order of the day", "areas.csv", areaHead + "\nA1,1240,slab,4,P1,C1,3/12/2026\n",
			`areas.csv row 2 "Install on": "3/12/2026" is not a date; write it as year-month-day: 2026-03-12 or 2026-12-03`,
		},
		{
			"no such day", "areas.csv", areaHead + "\nA1,1240,slab,4,P1,C1,2026-02-30\n",
			`areas.csv row 2 "Install on": "2026-02-30" is not a date; write it as year-month-day, such as 2026-03-04`,
		},
		{
			"after 2199", "areas.csv", areaHead + "\nA1,1240,slab,4,P1,C1,2200-01-01\n",
			`areas.csv row 2 "Install on": "2200-01-01" is after 2199; is the year right?`,
		},
		{
			"a size of zero", "areas.csv", areaHead + "\nA1,0,slab,4,P1,C1,2026-03-12\n",
			`areas.csv row 2 "Size (ft2)": "0" is not above 0; write a number above 0, or leave the cell blank`,
		},
		{
			"a word", "areas.csv", areaHead + "\nA1,1240,slap,4,P1,C1,2026-03-12\n",
			`areas.csv row 2 "Substrate": "slap" is not a word for this column; write slab, wood or wood over slab`,
		},
		{
			"listed twice", "areas.csv", areaHead + "\nA1,1240,slab,4,P1,C1,2026-03-12\n a1 ,900,slab,4,P1,C1,2026-03-12\n",
			`areas.csv row 3 "Area": " a1 " is listed twice; keep one row of it or rename one`,
		},
		{
			"no such climate", "areas.csv", areaHead + "\nA1,1240,slab,4,P1,C9,2026-03-12\n",
			`areas.csv row 2 "Climate": "C9" is not listed in Climates; list it there, or write one that is, such as C1`,
		},
		{
			"no such product", "areas.csv", areaHead + "\nA1,1240,slab,4,P9,C1,2026-03-12\n",
			`areas.csv row 2 "Flooring": "P9" is not listed in Products; list it there, or write one that is, such as P1`,
		},
		{
			"a product of another kind", "areas.csv", areaHead + ",Adhesive\nA1,1240,slab,4,P1,C1,2026-03-12,M1\n",
			`areas.csv row 2 "Adhesive": "M1" is of the kind membrane; write a product of the kind adhesive`,
		},
		{
			"a flooring that is none", "areas.csv", areaHead + "\nA1,1240,slab,4,G1,C1,2026-03-12\n",
			`areas.csv row 2 "Flooring": "G1" is of the kind adhesive; write a product of the kind solid wood, engineered wood, bamboo, laminate, resilient or carpet`,
		},
		{
			"two faces on the ground", "areas.csv", areaHead + ",Drying faces,Slab kind\nA1,1240,slab,4,P1,C1,2026-03-12,2,on grade\n",
			`areas.csv row 2 "Drying faces": a slab of the kind on grade dries at one face; write 1, or correct Slab kind`,
		},
		{
			"three faces", "areas.csv", areaHead + ",Drying faces\nA1,1240,slab,4,P1,C1,2026-03-12,3\n",
			`areas.csv row 2 "Drying faces": "3" is not 1 or 2; write one of the two`,
		},
		{
			"covered after", "areas.csv", areaHead + ",Covered on\nA1,1240,slab,4,P1,C1,2026-03-12,2026-03-13\n",
			`areas.csv row 2 "Covered on": "2026-03-13" is after Install on, 2026-03-12; correct one of the two days`,
		},
	} {
		t.Run(c.name, c.check)
	}
}
