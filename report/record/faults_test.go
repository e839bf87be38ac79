package record

import (
	"strings"
	"testing"
)

const (
	holeHead = "Area,Hole,Thickness (in),Depth (in),Sealed at,Read at,RH (%),Temp (F),Instrument\n"
	woodHead = "Area,Of,Piece,Read at,Method,Reading (%),Instrument,Set aside\n"
)

// spoiled is a table with something wrong in it, and the complaint.
type spoiled struct{ name, file, text, want string }

// check reads the folder, and the workbook that says the same.
func (c spoiled) check(t *testing.T) {
	with := map[string]string{c.file: c.text}
	wants(t, faulty(t, folderOf(t, changed(with))), c.want)
	wants(t, unplaced(faulty(t, handWritten(t, with).save(t))), unplaced(c.want))
}

// unplaced are the complaints of an error without their places.
func unplaced(text string) string {
	var all []string
	for _, line := range strings.Split(text, "\n") {
		_, complaint, ok := strings.Cut(line, `": `)
		if !ok {
			_, complaint, _ = strings.Cut(line, ": ")
		}
		all = append(all, complaint)
	}
	return lines(all...)
}

func TestFaults(t *testing.T) {
	for _, c := range []spoiled{
		{
			"a decimal comma", "slab-rh.csv", holeHead + "A1,H1,,1.6,2026-03-01 08:00,2026-03-03 08:00,\"84,7\",70,RP1\n",
			`slab-rh.csv row 2 "RH (%)": "84,7" is not a plain number; write 84.7`,
		},
		{
			"blank lines count", "slab-rh.csv", holeHead + "\n\n\n\nA1,H1,,1.6,2026-03-01 08:00,2026-03-03 08:00,x,70,RP1\n",
			`slab-rh.csv row 6 "RH (%)": "x" is not a plain number; write digits with a point, such as 84.7`,
		},
		{
			"RH out of range", "slab-rh.csv", holeHead + "A1,H1,,1.6,2026-03-01 08:00,2026-03-03 08:00,100.1,70,RP1\n",
			`slab-rh.csv row 2 "RH (%)": "100.1" is outside 0 to 100; write the number in the unit of its column, or leave the cell blank`,
		},
		{
			"a fraction", "slab-rh.csv", holeHead + "A1,H1,,1.6,2026-03-01 08:00,2026-03-03 08:00,0.847,70,RP1\n",
			`slab-rh.csv row 2 "RH (%)": "0.847" looks like a fraction of one; write 84.7`,
		},
		{
			"one is a fraction", "wood.csv", woodHead + "A1,flooring,B1,2026-03-03 08:00,pin,1,W1,\n",
			`wood.csv row 2 "Reading (%)": "1" looks like a fraction of one; write 100`,
		},
		{
			"a temperature", "slab-rh.csv", holeHead + "A1,H1,,1.6,2026-03-01 08:00,2026-03-03 08:00,80,160.1,RP1\n",
			`slab-rh.csv row 2 "Temp (F)": "160.1" is outside -40 to 160; write the number in the unit of its column, or leave the cell blank`,
		},
		{
			"read before sealed", "slab-rh.csv", holeHead + "A1,H1,,1.6,2026-03-03 08:00,2026-03-01 08:00,80,70,RP1\n",
			`slab-rh.csv row 2 "Read at": "2026-03-01 08:00" is before it was sealed, 2026-03-03 08:00; correct one of the two times`,
		},
		{
			"deeper than the area's slab", "slab-rh.csv", holeHead + "A1,H1,,4.1,2026-03-01 08:00,2026-03-03 08:00,80,70,RP1\n",
			`slab-rh.csv row 2 "Depth (in)": "4.1" is deeper than the slab, which is 4 in thick; correct the depth or the thickness`,
		},
		{
			"deeper than the slab at the hole", "slab-rh.csv",
			"Area,Hole,Thickness (mm),Depth (in),Sealed at,Read at,RH (%),Instrument\nA1,H1,76.1,3,,,,RP1\n",
			`slab-rh.csv row 2 "Depth (in)": "3" is deeper than the slab, which is 76.1 mm thick; correct the depth or the thickness`,
		},
		{
			"deeper than the slab, carbide", "slab-cm.csv",
			"Area,Spot,Depth (cm),Read at,CM (%),Instrument\nA1,S1,10.2,2026-03-01 08:00,1.8,007\n",
			`slab-cm.csv row 2 "Depth (cm)": "10.2" is deeper than the slab, which is 4 in thick; correct the depth or the thickness`,
		},
		{
			"a depth below zero", "slab-rh.csv", holeHead + "A1,H1,,-1,,,80,70,RP1\n",
			`slab-rh.csv row 2 "Depth (in)": "-1" is below 0; write a number from 0 up, or leave the cell blank`,
		},
		{
			"no such area", "slab-rh.csv", holeHead + "A2,H1,,1.6,,,80,70,RP1\n",
			`slab-rh.csv row 2 "Area": "A2" is not listed in Areas; list it there, or write one that is, such as A1`,
		},
		{
			"no such instrument", "air.csv", "Area,Read at,Temp (F),RH (%),Instrument\n,2026-03-01 08:00,70,40,T11\n",
			`air.csv row 2 "Instrument": "T11" is not listed in Instruments; list it there, or write one that is, such as T1`,
		},
		{
			"a blank hole", "slab-rh.csv", holeHead + "A1,,,1.6,,,80,70,RP1\n",
			`slab-rh.csv row 2 "Hole": is blank; fill it in, or clear the whole row`,
		},
		{
			"a date for a time", "slab-rh.csv", holeHead + "A1,H1,,1.6,2026-03-01,,80,70,RP1\n",
			`slab-rh.csv row 2 "Sealed at": "2026-03-01" is a date, and a time is asked for; write the day and the time, such as 2026-03-04 08:30`,
		},
		{
			"before 1990", "slab-rh.csv", holeHead + "A1,H1,,1.6,,1989-12-31 08:00,80,70,RP1\n",
			`slab-rh.csv row 2 "Read at": "1989-12-31 08:00" is outside the years 1990 to 2199; is the year right? write 2025-12-31 08:00`,
		},
		{
			"clocks gone forward", "air.csv", "Area,Read at,Temp (F),RH (%),Instrument\n,2026-03-08 02:30,70,40,T1\n",
			`air.csv row 2 "Read at": "2026-03-08 02:30" never was in America/Chicago, where clocks went forward over it; write the time the clock showed`,
		},
		{
			"minimum above maximum", "products.csv", "Product,Kind,Air temp min (F),Air temp max (C)\nP1,solid wood,71.61,22\n",
			`products.csv row 2 "Air temp min (F)": "71.61" is above its maximum, 22 C; write the lower of the two here`,
		},
		{
			"bounds of another test", "other-tests.csv", "Area,Test,Read at,Result,At least,At most\nA1,pull,2026-03-01 08:00,2,3,2\n",
			`other-tests.csv row 2 "At least": "3" is above its maximum, 2; write the lower of the two here`,
		},
		{
			"a limit as a fraction", "products.csv", "Product,Kind,Slab RH max (%)\nP1,solid wood,0.75\n",
			`products.csv row 2 "Slab RH max (%)": "0.75" looks like a fraction of one; write 75`,
		},
		{
			"a limit in words", "products.csv", "Product,Kind,Slab RH max (%)\nP1,solid wood,no limit\n",
			`products.csv row 2 "Slab RH max (%)": "no limit" is no limit; write the data sheet's number, none where it states none, or nothing where it was not looked up`,
		},
		{
			"a pH", "products.csv", "Product,Kind,pH max\nP1,solid wood,14.1\n",
			`products.csv row 2 "pH max": "14.1" is outside 0 to 14; write the number in the unit of its column, or leave the cell blank`,
		},
		{
			"moisture content", "products.csv", "Product,Kind,Subfloor MC max (%)\nP1,solid wood,201\n",
			`products.csv row 2 "Subfloor MC max (%)": "201" is outside 0 to 200; write the number in the unit of its column, or leave the cell blank`,
		},
		{
			"a climate", "climates.csv", "Climate,Period,Temp (C),RH (%)\nC1,winter,71.2,30\n",
			`climates.csv row 2 "Temp (C)": "71.2" is outside -40 to 71.1 C; is it in F? Then write the unit in the header, or leave the cell blank`,
		},
		{
			"set aside", "wood.csv", woodHead + "A1,subfloor,B1,2026-03-03 08:00,pin,9,W1,yes\n",
			`wood.csv row 2 "Of": area "A1" is laid on a slab and has no subfloor; correct Of, or the area's Substrate` + "\n" +
				`wood.csv row 2 "Set aside": only boards of flooring are set aside, and this row is of a subfloor; clear the cell`,
		},
		{
			"lifted before set", "slab-mver.csv",
			"Area,Dish,Set at,Retrieved at,Start mass (g),End mass (g),Test area (in2)\nA1,D1,2026-03-04 08:00,2026-03-01 08:00,30,31,70\n",
			`slab-mver.csv row 2 "Retrieved at": "2026-03-01 08:00" is before it was set, 2026-03-04 08:00; correct one of the two times`,
		},
		{
			"a check as a fraction", "instrument-checks.csv", "Instrument,Checked at,Expected,Read\nRP1,2026-03-01 08:00,75.3,0.75\n",
			`instrument-checks.csv row 2 "Read": "0.75" looks like a fraction of one; write 75`,
		},
		{
			"a check of nobody", "instrument-checks.csv", "Instrument,Checked at,Expected,Read\n,2026-03-01 08:00,75.3,75\n",
			`instrument-checks.csv row 2 "Instrument": is blank; fill it in, or clear the whole row`,
		},
		{
			"an uncertainty", "instruments.csv", "Instrument,Kind,Uncertainty\nRP1,RH probe,-2\n",
			`instruments.csv row 2 "Uncertainty": "-2" is below 0; write a number from 0 up, or leave the cell blank`,
		},
		{
			"an event without a time", "events.csv", "Area,At,What\n,,water\n",
			`events.csv row 2 "At": is blank; fill it in, or clear the whole row`,
		},
		{
			"a waiver", "sign-off.csv", "Area,Role,Name,At,Decision,Waives\nA1,owner,Owner,2026-03-10 08:00,waive,slab-rh; slab-hole\n",
			`sign-off.csv row 2 "Waives": "slab-hole" is not the id of a check; the nearest is slab-holes`,
		},
		{
			"beyond the header", "climates.csv", "Climate,Period,Temp (F),RH (%)\nC1,winter,70,30,dry\n",
			`climates.csv row 2: "dry" stands in column 5, which has no header; name the column or clear the cell`,
		},
		{
			"an exponent", "air.csv", "Read at,Temp (F),RH (%),Instrument\n2026-03-01 08:00,7e1,40,T1\n",
			`air.csv row 2 "Temp (F)": "7e1" is not a plain number; write 70`,
		},
		{
			"a text too long to copy", "climates.csv",
			"Climate,Period,Temp (F),RH (%),From\nC1,winter,70,30," + strings.Repeat("é", 32768) + "\n",
			`climates.csv row 2 "From": "` + strings.Repeat("é", 60) +
				`..." is longer than a cell of a spreadsheet can be; write at most 32767 letters`,
		},
		{
			"a mass", "slab-mver.csv", "Area,Dish,Set at,Retrieved at,Start mass (g),End mass (g),Test area (in2)\nA1,D1,,,-30,31,70\n",
			`slab-mver.csv row 2 "Start mass (g)": "-30" is below 0; write a number from 0 up, or leave the cell blank`,
		},
		{
			"a distance", "slab-rh.csv", "Area,Hole,To exterior wall (ft),Depth (in),Sealed at,Read at,RH (%),Instrument\nA1,H1,-1,,,,,RP1\n",
			`slab-rh.csv row 2 "To exterior wall (ft)": "-1" is below 0; write a number from 0 up, or leave the cell blank`,
		},
	} {
		t.Run(c.name, c.check)
	}
}
