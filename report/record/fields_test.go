package record

import (
	"fmt"
	"reflect"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/limits"
	"firstboard/report/record/sheet"
)

// full is the small record with every column of every table in use.
func full() map[string]string {
	return map[string]string{
		"job.csv": "Item,Entry\nJob,Mill\nSite,Mill Road\nPrepared by,P. Tester\nCompany,Floors\nGeneral contractor,Builders\n" +
			"time  zone,America/Chicago\nElevation (m),210.0\nAcceptance,Guarded\nAcceptance agreed by,all\nAcceptance agreed on,2026-01-05\n" +
			"Probe wait (h),72\nDepth tolerance (%),5\nHeld conditions (h),49\nLargest air gap (h),25\nAir excursion (h),1.5\n" +
			"Slab reading life (days),20\nWood reading life (days),6\nAir reading life (h),47\nDew margin (F),6\nDew margin (°C),4\nTarget tolerance (points),1.5\nHeat run (h),96\n",
		"areas.csv": "Area,Name,Size (m²),Substrate,Slab thickness (mm),Drying faces,Slab kind,Made of,Under slab,Exterior walls,Zone,Placed on,Enclosed on,Radiant heat,Heat on since,HVAC,Below,Ground cover,Flooring,Adhesive,Membrane,Installation,Climate,Covered on,Install on,Width across boards (ft)\n" +
			"A1,Hall,95,Wood  over slab,100,2,suspended,Lightweight,unknown,2,Z1,1962-05-01,2025-12-01,YES,2026-02-01,temporary,crawl space,no,p1,g1,m1,glue-down,c1,2026-03-10,2026-03-12,30\n",
		"products.csv": "Product,Kind,Description,Species,Cut,Below grade,Face width (in),Thickness (mm),Slab RH max (%),MVER max (g),CM max (%),pH min,pH max,Subfloor MC max (%),Flooring MC min (%),Flooring MC max (%),Difference max (points),Air temp min (F),Air temp max (F),Air RH min (%),Air RH max (%),Surface temp max (C),Movement coefficient,Data sheet\n" +
			"P1,solid wood,plank,red oak,Plainsawn,No,3 1/4,19,75.0,None,,5,9,12,6,9,4,60,80,30,50,27,0.00369,Plank sheet 2025-01\nG1,adhesive,,,,,,,,,,,,,,,,,,,,,,\nM1,membrane,,,,,,,,,,,,,,,,,,,,,,\n",
		"climates.csv": "Climate,Period,Temp (C),RH (%),From\nC1,winter,21,30,owner\n",
		"instruments.csv": "Instrument,Kind,Make and model,Serial,Calibrated on,Due on,Certificate,Uncertainty,Uncertainty temp (C)\n" +
			"RP1,\"rh  probe, Air,surface,pH,CM,oven,balance\",Probe 1,007,2026-01-02,2027-01-02,C-1,1.5,0.3\n",
		"instrument-checks.csv": "Instrument,Checked at,Standard,Expected,Read,By\nrp1,2026-02-01 09:00,salt,75.3,75.9,PT\n",
		"slab-rh.csv": "Area,Hole,X (ft),Y (ft),To exterior wall (ft),Wall,Thickness (in),Depth (in),Sealed at,Read at,RH (%),Temp (F),Instrument,Discarded,By,Note\n" +
			"a1,H1,-1,2,3,\"north, East  wall\",4-1/8,13/16,2026-03-01 08:00,2026-03-03 08:00:30,74.10,64.2,rp1,Wrong Depth,PT,near door\n",
		"slab-mver.csv": "Area,Dish,X (m),Y (m),Set at,Retrieved at,Start mass (g),End mass (g),Test area (cm2),Instrument,By,Note\n" +
			"A1,D1,1,2,2026-03-01 08:00,2026-03-03 20:00,30.01,31.02,450,RP1,PT,dry\n",
		"slab-ph.csv":     "Area,Spot,Read at,pH,Instrument,By,Note\nA1,S1,2026-03-01 08:00,9.5,RP1,PT,wet\n",
		"slab-cm.csv":     "Area,Spot,Depth (in),Read at,CM (%),Instrument,By,Note\nA1,S1,1,2026-03-01 08:00,0.8,RP1,PT,dust\n",
		"other-tests.csv": "Area,Test,Spot,Read at,Result,At least,At most,Unit,Instrument,Data sheet,By,Note\nA1,pull,S1,2026-03-01 08:00,2.5,1,3,MPa,RP1,Glue sheet,PT,ok\n",
		"air.csv":         "Area,Read at,Temp (F),RH (%),Instrument,By,Note\n,2026-03-01 08:00,70,41.0,RP1,PT,open\n",
		"surface.csv":     "Area,Spot,Read at,Temp (C),Instrument,By,Note\nA1,S1,2026-03-01 08:00,20,RP1,PT,shade\n",
		"wood.csv": "Area,Of,Piece,Lot,X (ft),Y (ft),Read at,Method,Depth (in),Reading (%),Scale,Species,Wood temp (F),Temp corrected,Set aside,Instrument,By,Note\n" +
			"A1,Flooring,B1,L1,1,2,2026-03-01 08:00,Oven-dry,1/4,8.10,corrected,red oak,68,no,yes,RP1,PT,cupped\n",
		"scan.csv":     "Area,Spot,X (ft),Y (ft),Read at,Reading,Over,Instrument,By,Note\nA1,S1,1,2,2026-03-01 08:00,450,bare,RP1,PT,corner\n",
		"events.csv":   "Area,At,What,Remarks\nA1,2026-02-01 08:00,HVAC off,filters\n",
		"photos.csv":   "Area,File,Taken at,Of\nA1,p1.jpg,2026-02-01 08:00,hole H1\n",
		"sign-off.csv": "Area,Role,Name,At,Decision,Waives,Document,Remarks\nA1,Flooring Manufacturer,C. Manufacturer,2026-03-11 08:00,waive,\"slab-rh, Slab-Wait;calibration  air-held\",letter 7,at risk\n",
	}
}

// shown is a row as the test reads it: each field that holds anything.
func shown(row any) string {
	var b strings.Builder
	v := reflect.ValueOf(row)
	for i := range v.NumField() {
		if !v.Type().Field(i).IsExported() {
			continue
		}
		text := ""
		switch x := v.Field(i).Interface().(type) {
		case evidence.Date:
			text = x.Written
		case evidence.Time:
			text = x.Written
		case limits.Stated:
			if text = x.Number.String(); x.None {
				text = "none"
			}
		default:
			text = fmt.Sprint(x)
		}
		if text != "" && text != "false" && text != "[]" {
			fmt.Fprintf(&b, "%s=%s|", v.Type().Field(i).Name, text)
		}
	}
	return b.String()
}

func TestEveryColumn(t *testing.T) {
	rec := sound(t, full())
	j := rec.Job
	for _, c := range []struct {
		row  any
		want string
	}{
		{j.Areas[0], "ID=A1|Name=Hall|Size=95 m2|Substrate=wood over slab|Thickness=100 mm|DryingFaces=2|SlabKind=suspended|MadeOf=lightweight|UnderSlab=unknown|ExteriorWalls=2|Zone=Z1|PlacedOn=1962-05-01|EnclosedOn=2025-12-01|RadiantHeat=yes|HeatOnSince=2026-02-01|HVAC=temporary|Below=crawl space|GroundCover=no|Flooring=p1|Adhesive=g1|Membrane=m1|Installation=glue-down|Climate=c1|CoveredOn=2026-03-10|InstallOn=2026-03-12|AcrossBoards=30 ft|Place=areas.csv row 2|"},
		{j.Products[0], "ID=P1|Kind=solid wood|Description=plank|Species=red oak|Cut=plainsawn|BelowGrade=no|FaceWidth=3.25 in|Thickness=19 mm|SlabRH=75.0 % RH|MVER=none|PHMin=5|PHMax=9|SubfloorMC=12 % MC|FlooringMin=6 % MC|FlooringMax=9 % MC|Difference=4 points|AirTempMin=60 F|AirTempMax=80 F|AirRHMin=30 % RH|AirRHMax=50 % RH|SurfaceTemp=27 C|Across=0.00369|DataSheet=Plank sheet 2025-01|Place=products.csv row 2|"},
		{j.Climates[0], "Climate=C1|Name=winter|Temp=21 C|RH=30 % RH|From=owner|Place=climates.csv row 2|"},
		{j.Instruments["rp1"], "ID=RP1|Kinds=[RH probe air surface pH CM oven balance]|Model=Probe 1|Serial=007|CalibratedOn=2026-01-02|DueOn=2027-01-02|Certificate=C-1|Uncertainty=1.5|UncertaintyTemp=0.3 C|Place=instruments.csv row 2|"},
		{j.Checks[0], "Instrument=rp1|CheckedAt=2026-02-01 09:00|Standard=salt|Expected=75.3|Read=75.9|By=PT|Place=instrument-checks.csv row 2|"},
		{j.Holes[0], "Area=a1|Hole=H1|X=-1 ft|Y=2 ft|ToWall=3 ft|Walls=[north East wall]|Thickness=4.125 in|Depth=0.8125 in|SealedAt=2026-03-01 08:00|ReadAt=2026-03-03 08:00:30|RH=74.10 % RH|Temp=64.2 F|Instrument=rp1|Discarded=wrong depth|By=PT|Note=near door|Place=slab-rh.csv row 2|"},
		{j.Dishes[0], "Area=A1|Dish=D1|X=1 m|Y=2 m|SetAt=2026-03-01 08:00|RetrievedAt=2026-03-03 20:00|Start=30.01 g|End=31.02 g|TestArea=450 cm2|Instrument=RP1|By=PT|Note=dry|Place=slab-mver.csv row 2|"},
		{j.PHs[0], "Area=A1|Spot=S1|ReadAt=2026-03-01 08:00|PH=9.5|Instrument=RP1|By=PT|Note=wet|Place=slab-ph.csv row 2|"},
		{j.Carbides[0], "Area=A1|Spot=S1|Depth=1 in|ReadAt=2026-03-01 08:00|CM=0.8 % CM|Instrument=RP1|By=PT|Note=dust|Place=slab-cm.csv row 2|"},
		{j.Others[0], "Area=A1|Test=pull|Spot=S1|ReadAt=2026-03-01 08:00|Result=2.5|AtLeast=1|AtMost=3|Unit=MPa|Instrument=RP1|DataSheet=Glue sheet|By=PT|Note=ok|Place=other-tests.csv row 2|"},
		{j.Air[0], "ReadAt=2026-03-01 08:00|Temp=70 F|RH=41.0 % RH|Instrument=RP1|By=PT|Note=open|Place=air.csv row 2|"},
		{j.Surfaces[0], "Area=A1|Spot=S1|ReadAt=2026-03-01 08:00|Temp=20 C|Instrument=RP1|By=PT|Note=shade|Place=surface.csv row 2|"},
		{j.Wood[0], "Area=A1|Of=flooring|Piece=B1|Lot=L1|X=1 ft|Y=2 ft|ReadAt=2026-03-01 08:00|Method=oven-dry|Depth=0.25 in|Reading=8.10 % MC|Scale=corrected|Species=red oak|WoodTemp=68 F|TempCorrected=no|SetAside=true|Instrument=RP1|By=PT|Note=cupped|Place=wood.csv row 2|"},
		{j.Scans[0], "Area=A1|Spot=S1|X=1 ft|Y=2 ft|ReadAt=2026-03-01 08:00|Reading=450|Over=bare|Instrument=RP1|By=PT|Note=corner|Place=scan.csv row 2|"},
		{j.Events[0], "Area=A1|At=2026-02-01 08:00|What=HVAC off|Remarks=filters|Place=events.csv row 2|"},
		{j.Photos[0], "Area=A1|File=p1.jpg|TakenAt=2026-02-01 08:00|Of=hole H1|Place=photos.csv row 2|"},
		{j.SignOffs[0], "Area=A1|Role=flooring manufacturer|Name=C. Manufacturer|At=2026-03-11 08:00|Decision=waive|Waives=[slab-rh slab-wait calibration air-held]|Document=letter 7|Remarks=at risk|Place=sign-off.csv row 2|"},
	} {
		if got := shown(c.row); got != c.want {
			t.Errorf("got\n%s\nwant\n%s", got, c.want)
		}
	}
	if !j.Products[0].CM.Blank() || j.Products[0].MVER.Blank() {
		t.Error("a blank limit and a limit of none are not told apart")
	}
}

func TestJobItems(t *testing.T) {
	j := sound(t, full()).Job
	got := []string{
		j.Name, j.Site, j.PreparedBy, j.Company, j.GeneralContractor, j.ZoneName, j.Zone.String(),
		j.Elevation.String(), fmt.Sprint(j.Guarded), j.AcceptanceAgreedBy, j.AcceptanceAgreedOn.Written,
	}
	for _, s := range j.Settings.Items() {
		got = append(got, s.Value.String()+" "+fmt.Sprint(s.Value.Place))
	}
	want := []string{
		"Mill", "Mill Road", "P. Tester", "Floors", "Builders", "America/Chicago", "America/Chicago",
		"210.0 m", "true", "all", "2026-01-05",
	}
	for i, s := range []string{"72 h", "5 %", "49 h", "25 h", "1.5 h", "20 days", "6 days", "47 h", "6 F", "4 C", "1.5 points", "96 h"} {
		want = append(want, fmt.Sprintf("%s job.csv row %d", s, i+12))
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff(report.DefaultSettings(), sound(t, nil).Job.Settings, placesAside()); diff != "" {
		t.Error(diff)
	}
}

// A workbook and a folder of the same tables say the same.
func TestFullTwin(t *testing.T) {
	path := folderOf(t, full())
	want, err := Read(path)
	if err != nil {
		t.Fatal(err)
	}
	got, err := Read(twin(t, path))
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want.Job, got.Job, placesAside()); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff(want.Tables, got.Tables, placesAside()); diff != "" {
		t.Error(diff)
	}
}

// The copied tables keep every cell as it was typed, under its row's number.
func TestTables(t *testing.T) {
	rec := sound(t, map[string]string{"slab-rh.csv": " area ,Hole,Depth (in),Sealed at,Read at,RH (%),Instrument,Note\n\nA1,007,1.60,2026-03-01 08:00,,74.10,RP1, as is \n,,,,,,,\n\nA1,H2,,,,,RP1,3\n"})
	word := func(s string) grid.Cell { return grid.Cell{Kind: grid.TextCell, Text: s} }
	want := grid.Table{
		Name: "Slab RH", Header: []string{"area", "Hole", "Depth (in)", "Sealed at", "Read at", "RH (%)", "Instrument", "Note"},
		Rows: []grid.Row{
			{Number: 3, Cells: []grid.Cell{
				word("A1"), word("007"),
				{Kind: grid.NumberCell, Text: "1.60", Places: 2},
				{Kind: grid.TimeCell, Text: "2026-03-01 08:00"},
				{},
				{Kind: grid.NumberCell, Text: "74.10", Places: 2},
				word("RP1"), word(" as is "),
			}},
			{Number: 6, Cells: []grid.Cell{word("A1"), word("H2"), {}, {}, {}, {}, word("RP1"), word("3")}},
		},
	}
	if diff := cmp.Diff(want, rec.Tables[5]); diff != "" {
		t.Error(diff)
	}
	place := rec.Job.Holes[1].Place.(*sheet.Place)
	if diff := cmp.Diff(&sheet.Place{In: &sheet.Holder{File: "slab-rh.csv", Table: "Slab RH"}, Number: 6}, place); diff != "" {
		t.Error(diff)
	}
	if table, row := place.Row(); table != "Slab RH" || row != 6 {
		t.Errorf("the row is %d of %s", row, table)
	}
	if got := rec.Job.Holes[0].RH.Place.(*sheet.Place).Column; got != 6 {
		t.Errorf("the reading stands in column %d", got)
	}
}
