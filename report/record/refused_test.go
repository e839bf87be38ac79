package record

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// Each refusal of the reading rules, in a folder and in its twin.
func TestRefused(t *testing.T) {
	const (
		air   = "Read at,Temp (F),RH (%),Instrument\n"
		phs   = "Area,Spot,Read at,pH,Instrument\n"
		dated = areaHead + ",Placed on,Enclosed on\nA1,1240,slab,4,P1,C1,2026-03-12,"
	)
	for _, c := range []spoiled{
		{
			"a fraction of a third", "slab-rh.csv", holeHead + "A1,H1,,1 1/3,,,80,70,RP1\n",
			`slab-rh.csv row 2 "Depth (in)": "1 1/3" is not a plain number or a fraction; write digits with a point or a fraction, such as 2.25 or 2 1/4`,
		},
		{
			"a fraction with its mark", "slab-rh.csv", holeHead + "A1,H1,,\"1 5/8\"\"\",,,80,70,RP1\n",
			`slab-rh.csv row 2 "Depth (in)": "1 5/8\"" is not a plain number or a fraction; write 1 5/8`,
		},
		{
			"a fraction of a percent", "slab-rh.csv", holeHead + "A1,H1,,1.6,,,80 1/2,70,RP1\n",
			`slab-rh.csv row 2 "RH (%)": "80 1/2" is not a plain number; write digits with a point, such as 84.7`,
		},
		{
			"the wrong year", "air.csv", air + "2062-03-04 08:00,70,40,T1\n2062-03-05 08:00,70,40,T1\n",
			`air.csv rows 2 to 3 "Read at": "2062-03-04 08:00" is more than 366 days after the last Install on, 2026-03-12; is the year right? write 2026-03-04 08:00`,
		},
		{
			"367 days after", "air.csv", air + "2027-03-13 23:59,70,40,T1\n2027-03-14 00:00,70,40,T1\n",
			`air.csv row 3 "Read at": "2027-03-14 00:00" is more than 366 days after the last Install on, 2026-03-12; is the year right? write 2026-03-14 00:00`,
		},
		{
			"air by a probe", "air.csv", air + "2026-03-04 08:00,70,40,RP1\n",
			`air.csv row 2 "Instrument": "RP1" is listed in Instruments as RH probe, which cannot have taken this; name an instrument of the kind air, or correct its Kind`,
		},
		{
			"boards by a thermometer", "wood.csv", woodHead + "A1,flooring,B1,2026-03-03 08:00,pin,9,S1,\n",
			`wood.csv row 2 "Instrument": "S1" is listed in Instruments as surface, which cannot have taken this; name an instrument of the kind pin, or correct its Kind`,
		},
		{
			"surfaces by a pin meter", "surface.csv",
			"Area,Spot,Read at,Temp (F),Instrument\nA1,S1,2026-03-03 08:00,66,W1\nA1,S2,2026-03-03 08:00,66,T1\n",
			`surface.csv row 2 "Instrument": "W1" is listed in Instruments as pin, which cannot have taken this; name an instrument of the kind surface, air or other, or correct its Kind`,
		},
		{
			"pH by an air meter", "slab-ph.csv", phs + "A1,S1,2026-03-03 08:00,9,T1\n",
			`slab-ph.csv row 2 "Instrument": "T1" is listed in Instruments as air, which cannot have taken this; name an instrument of the kind pH, or correct its Kind`,
		},
		{
			"CM by an air meter", "slab-cm.csv", "Area,Spot,Read at,CM (%),Instrument\nA1,S1,2026-03-03 08:00,2,T1\n",
			`slab-cm.csv row 2 "Instrument": "T1" is listed in Instruments as air, which cannot have taken this; name an instrument of the kind CM, or correct its Kind`,
		},
		{
			"a dish without a balance", "slab-mver.csv",
			"Area,Dish,Set at,Retrieved at,Start mass (g),End mass (g),Test area (in2),Instrument\nA1,D1,,,30,31,70,T1\n",
			`slab-mver.csv row 2 "Instrument": "T1" is listed in Instruments as air, which cannot have taken this; name an instrument of the kind balance, or correct its Kind`,
		},
		{
			"a subfloor on a slab", "wood.csv", woodHead + "A1,joist,J1,2026-03-03 08:00,pin,9,W1,\n",
			`wood.csv row 2 "Of": area "A1" is laid on a slab and has no joist; correct Of, or the area's Substrate`,
		},
		{
			"enclosed after", "areas.csv", dated + ",2026-03-13\n",
			`areas.csv row 2 "Enclosed on": "2026-03-13" is after Install on, 2026-03-12; correct one of the two days`,
		},
		{
			"two faces, kind blank", "areas.csv", areaHead + ",Drying faces\nA1,1240,slab,4,P1,C1,2026-03-12,2\n",
			`areas.csv row 2 "Drying faces": a slab of the kind on grade (as a blank Slab kind is) dries at one face; write 1, or correct Slab kind`,
		},
		{
			"two faces below grade", "areas.csv", areaHead + ",Drying faces,Slab kind\nA1,1240,slab,4,P1,C1,2026-03-12,2,below grade\n",
			`areas.csv row 2 "Drying faces": a slab of the kind below grade dries at one face; write 1, or correct Slab kind`,
		},
		{
			"two faces over a retarder", "areas.csv",
			areaHead + ",Drying faces,Slab kind,Under slab\nA1,1240,slab,4,P1,C1,2026-03-12,2,suspended,retarder\n",
			`areas.csv row 2 "Drying faces": a slab over a vapor retarder dries at one face; write 1, or correct Under slab`,
		},
		{
			"zones that differ", "areas.csv", areaHead +
				",Zone,Slab kind\nA1,1240,slab,4,P1,C1,2026-03-12,Z,on grade\nA2,1240,slab,5,P1,C1,2026-03-12,z,\n",
			`areas.csv row 3 "Slab thickness (in)": "5" differs from that of area "A1", "4", and both are in zone "z", on one pour; correct one of them, or Zone` + "\n" +
				`areas.csv row 3 "Slab kind": a blank differs from that of area "A1", "on grade", and both are in zone "z", on one pour; correct one of them, or Zone`,
		},
		{
			"a meter of no kind", "instruments.csv", "Instrument,Kind\nT9,\"air, wind\"\n",
			`instruments.csv row 2 "Kind": "wind" is not a word for this column; write RH probe, RH probe single-use, air, surface, pin, pinless, oven, balance, pH, CM or other`,
		},
		{
			"a fraction read by one of several kinds", "instrument-checks.csv",
			"Instrument,Checked at,Expected,Read\nT1,2026-03-01 08:00,0.75,75\n",
			`instrument-checks.csv row 2 "Expected": "0.75" looks like a fraction of one; write 75`,
		},
		{
			"walls in words", "areas.csv", areaHead + ",Exterior walls\nA1,1240,slab,4,P1,C1,2026-03-12,1.5\n",
			`areas.csv row 2 "Exterior walls": "1.5" is not a count; write a whole number: 0, 1, 2 and so on`,
		},
		{
			"mm under inches", "slab-rh.csv", holeHead + "A1,H1,,40,,,80,70,RP1\nA1,H2,,41,,,80,70,RP1\nA1,H3,,38,,,80,70,RP1\n",
			`slab-rh.csv rows 2 to 4 "Depth (in)": "40" is deeper than the slab, which is 4 in thick; are these mm? Then name the column Depth (mm); else correct the depth or the thickness`,
		},
		{
			"the same in rows apart", "air.csv",
			air + "2026-03-04 08:00,70,0.40,T1\n2026-03-04 09:00,70,40,T1\n2026-03-04 10:00,70,0.42,T1\n2026-03-04 11:00,70,0.43,T1\n",
			`air.csv rows 2 and 4 to 5 "RH (%)": "0.40" looks like a fraction of one; write 40`,
		},
		{
			"a unit spelled out", "climates.csv", "Climate,Period,Temp (Fahrenheit),RH (%)\nC1,winter,70,30\n",
			`climates.csv row 1 "Temp (Fahrenheit)": writes its unit "F"; write Temp (F) or Temp (C)`,
		},
		{
			"a column misspelt", "climates.csv", "Climate,Perod,Temp (F),RH (%)\nC1,winter,70,30\n",
			`climates.csv row 1 "Perod": is not known here; the nearest is "Period"`,
		},
		{
			"a title above the header", "climates.csv", "The climates\nby the designer\nClimate,Period,Temp (F),RH (%)\nC2,winter,70,30\n",
			`climates.csv row 3: the header is in row 3; delete the rows above it`,
		},
	} {
		t.Run(c.name, c.check)
	}
	slabs := map[string]string{
		"areas.csv":   dated + ",\n" + "A2,1240,slab,4,P1,C1,2026-03-12,2026-03-01,\n",
		"slab-rh.csv": holeHead + "A2,H1,,1.6,2026-02-27 08:00,2026-02-28 23:59,80,70,RP1\nA2,H1,,1.6,2026-02-28 08:00,2026-03-01 00:00,80,70,RP1\n",
	}
	wants(t, faulty(t, folderOf(t, changed(slabs))),
		`slab-rh.csv row 2 "Read at": "2026-02-28 23:59" is before the slab was placed, 2026-03-01 (Areas, Placed on); correct one of the two`)
}

// A record of the first edition is refused with the new name of each thing.
func TestFirstEdition(t *testing.T) {
	path := folderOf(t, changed(map[string]string{
		"areas.csv":         "Area,Size (ft2),Base,Slab kind,Covering,Fixing,Climate,Lay on,Run (ft)\nA1,1240,slab,on ground,P1,glued,C1,2026-03-12,20\n",
		"products.csv":      "Product,Kind,Emission max (lb)\nP1,textile,3\n",
		"slab-emission.csv": "Area,Dish,Set at,Lifted at\n",
		"events.csv":        "Area,At,What,Words\n,2026-03-01 08:00,wetted,flood\n",
		"sign-off.csv":      "Area,Role,Name,At,Decision,Paper\nA1,covering maker,M,2026-03-01 08:00,accept,F-1\n",
	}))
	wants(t, faulty(t, path), lines(
		`slab-emission.csv: is now "slab-mver.csv"; rename it`,
		`areas.csv row 1 "Base": "Base" is now "Substrate"; write Substrate`,
		`areas.csv row 1 "Covering": "Covering" is now "Flooring"; write Flooring`,
		`areas.csv row 1 "Fixing": "Fixing" is now "Installation"; write Installation`,
		`areas.csv row 1 "Lay on": "Lay on" is now "Install on"; write Install on`,
		`areas.csv row 1 "Run (ft)": "Run" is now "Width across boards"; write Width across boards (ft), Width across boards (in), Width across boards (mm), Width across boards (cm) or Width across boards (m)`,
		`areas.csv row 2 "Slab kind": "on ground" is now "on grade"; write that`,
		`products.csv row 1 "Emission max (lb)": "Emission max" is now "MVER max"; write MVER max (lb) or MVER max (g)`,
		`products.csv row 2 "Kind": "textile" is now "carpet"; write that`,
		`events.csv row 1 "Words": "Words" is now "Remarks"; write Remarks`,
		`events.csv row 2 "What": "wetted" is now "water"; write that`,
		`sign-off.csv row 1 "Paper": "Paper" is now "Document"; write Document`,
		`sign-off.csv row 2 "Role": "covering maker" is now "flooring manufacturer"; write that`,
	))
}

// What looks like a table and is none is refused, unless it is another thing.
func TestLookAlikes(t *testing.T) {
	for file, text := range map[string]string{
		"slab_rh.csv": "", "slab-rh (2).csv": "", "slabs-rh.csv": "", "events2.csv": "", "Copy of areas.csv": "", "air log.csv": "",
		"slab-rh.csv.bak": "",
		"events":          "", "Slab RH.xlsx": "", "slab-rh.ods": "", "events.csv.gz": "", "air.JSON": "",
		"more holes.log":       "Area,Hole,Depth (in),Sealed at\n",
		"instrument check.csv": "", "slab rh.txt": "", "office.csv": "Area,Spot,pH\n", "meter.csv": "Read at;RH (%);Note\n",
	} {
		got := faulty(t, folderOf(t, changed(map[string]string{file: text})))
		if !strings.HasPrefix(got, file+": looks like the table ") || strings.Contains(got, "\n") {
			t.Errorf("%s: %s", file, got)
		}
	}
	for _, file := range []string{
		"contacts.csv", "notes.csv", "readme.txt", "surface.pdf", "air-a1.jpg", "woodland.csv", "roof.csv",
		"events.md", "job 12 decision.xlsx", "photos.zip",
	} {
		if rec := sound(t, map[string]string{file: "Name,Phone\n"}); len(rec.NotRead) != 1 || rec.NotRead[0] != file {
			t.Errorf("%s: not read are %q", file, rec.NotRead)
		}
	}
	for _, sheet := range []string{"Slab RH (2)", "Slabs RH", "Slab-RH", "Old events", "Meters"} {
		p := handWritten(t, map[string]string{"slab-ph.csv": "Area,Spot,Read at,pH\n"})
		p.swap(t, "xl/workbook.xml", `name="Slab pH"`, `name="`+sheet+`"`)
		if got := faulty(t, p.save(t)); !strings.HasPrefix(got, sheet+": looks like the table ") || strings.Contains(got, "\n") {
			t.Errorf("%s: %s", sheet, got)
		}
	}
	for _, sheet := range []string{"As judged Slab pH", "Area A1", "Decision", "Contacts"} {
		text := "Area,Spot,Read at,pH\n"
		if sheet == "Contacts" {
			text = "Name,Phone\n"
		}
		p := handWritten(t, map[string]string{"slab-ph.csv": text})
		readBook(t, p.swap(t, "xl/workbook.xml", `name="Slab pH"`, `name="`+sheet+`"`))
	}
}

// Where a table could not be read, names that it may list are no faults.
func TestOneCauseIsToldOnce(t *testing.T) {
	all := changed(map[string]string{"slab-rh.csv": holeHead + "A1,H1,,1.6,,,80,70,RP1\n"})
	all["area.csv"] = all["areas.csv"]
	delete(all, "areas.csv")
	wants(t, faulty(t, folderOf(t, all)),
		`area.csv: looks like the table Areas and is not read; rename it "areas.csv", or give it a name and a header unlike any table's`)
	all = changed(map[string]string{
		"areas.csv":   "Our areas\n" + files()["areas.csv"],
		"slab-rh.csv": holeHead + "A1,H1,,1.6,,,80,70,RP1\n",
	})
	wants(t, faulty(t, folderOf(t, all)), `areas.csv row 2: the header is in row 2; delete the rows above it`)
	all = changed(map[string]string{"instruments.csv": "Meter,Kind\nRP1,RH probe\n", "slab-rh.csv": holeHead + "A1,H1,,1.6,,,80,70,RP1\n"})
	wants(t, faulty(t, folderOf(t, all)), lines(
		`instruments.csv row 1 "Meter": is not known here; the nearest is "Kind"; else take it out`,
		`instruments.csv row 1 "Instrument": is missing; add a column Instrument`,
	))
}

func TestNoRegularFile(t *testing.T) {
	folder := folderOf(t, files())
	for _, name := range []string{"slab-rh.csv", "photos"} {
		if err := os.Mkdir(filepath.Join(folder, name), 0o755); err != nil {
			t.Fatal(err)
		}
	}
	wants(t, faulty(t, folder), "slab-rh.csv: looks like the table Slab RH and is no regular file; put the file itself there, named slab-rh.csv")
}

// A stray quote swallows rows, and leaves a line break that no entry has.
func TestLineBreaks(t *testing.T) {
	text := airHead + "2026-03-04 08:00,70,40,T1,\"5 ft\n2026-03-04 09:00,70,99,T1,\"\n"
	wants(t, faulty(t, folderOf(t, changed(map[string]string{"air.csv": text}))),
		`air.csv row 2 "Note": "5 ft\n2026-03-04 09:00,70,99,T1," holds a line break, as a stray quote gives one that swallows rows; write the entry on one line`)
}

// A size with three figures behind its comma may be either of two.
func TestCommaInASize(t *testing.T) {
	area := func(size string) map[string]string {
		return changed(map[string]string{"areas.csv": strings.ReplaceAll(areaHead, ",", ";") + "\nA1;" + size +
			";slab;4;P1;C1;2026-03-12\n"})
	}
	wants(t, faulty(t, folderOf(t, area("4,700"))),
		`areas.csv row 2 "Size (ft2)": "4,700" has three figures behind its comma; is it 4700? Write it without a comma, or fewer figures`)
	rec, err := Read(folderOf(t, area("4,75")))
	if err != nil || rec.Job.Areas[0].Size.Written != "4.75" {
		t.Error(err)
	}
}

// A sheet without its cells, or with rows outside them, may lack any row.
func TestSheetDataStandsAlone(t *testing.T) {
	row := "<row>" + inlines("2026-03-04 08:30", "70", "40", "T1") + "</row>"
	const damage = `mill.xlsx: the workbook is damaged: the sheet "Air" does not read to its end: ` + airSheet + ": "
	for _, c := range []struct{ old, with, want string }{
		{"<sheetData>", "<other>", "it has a row outside its sheetData"},
		{"<sheetData/>", "", "it lacks its sheetData"},
		{"</sheetData>", "</sheetData>" + row, "it has a row outside its sheetData"},
		{"</sheetData>", "</sheetData><x><y>" + row + "</y></x>", "it has a row outside its sheetData"},
		{"</sheetData>", "</sheetData><sheetData></sheetData>", "it has sheetData twice"},
	} {
		p := airBook(t, row)
		switch c.with {
		case "<other>":
			p.swap(t, airSheet, "<sheetData>", c.with).swap(t, airSheet, "</sheetData>", "</other>")
		case "":
			p[airSheet] = `<worksheet xmlns="` + mainSpace + `"><cols/></worksheet>`
		default:
			p.swap(t, airSheet, c.old, c.with)
		}
		wants(t, faulty(t, p.save(t)), damage+c.want+again)
	}
	readBook(t, airBook(t, row).swap(t, airSheet, "</sheetData>",
		`</sheetData><controls><from xmlns="urn:drawing"><row>1</row></from></controls>`))
}
