package record

import (
	"slices"

	"firstboard/report"
	"firstboard/report/evidence"
)

func areasTable() table[report.Area] {
	type area = report.Area
	return table[area]{
		name: "Areas", more: moreArea,
		rows:  func(j *report.Job) *[]area { return &j.Areas },
		place: func(a *area) *evidence.Place { return &a.Place },
		columns: []column[area]{
			listed("Area", func(d *decoder) *index { return &d.areas }, func(a *area) *string { return &a.ID }).always(),
			text("Name", func(a *area) *string { return &a.Name }),
			number("Size", sizes(), aboveZero, func(a *area) *evidence.Reading { return &a.Size }).must(),
			word("Substrate", []string{"slab", "wood", "wood over slab"}, func(a *area) *string { return &a.Substrate }).always(),
			number("Slab thickness", inches(), aboveZero, func(a *area) *evidence.Reading { return &a.Thickness }),
			number("Drying faces", unitless(), oneOrTwo, func(a *area) *evidence.Reading { return &a.DryingFaces }),
			word("Slab kind", []string{"on grade", "below grade", "suspended", "metal deck", "screed"}, func(a *area) *string { return &a.SlabKind }),
			word("Made of", []string{"normal", "lightweight", "gypsum", "calcium sulfate"}, func(a *area) *string { return &a.MadeOf }),
			word("Under slab", []string{"retarder", "none", "unknown"}, func(a *area) *string { return &a.UnderSlab }),
			number("Exterior walls", unitless(), count, func(a *area) *evidence.Reading { return &a.ExteriorWalls }),
			name("Zone", func(a *area) *string { return &a.Zone }),
			date("Placed on", anyYear, func(a *area) *evidence.Date { return &a.PlacedOn }),
			date("Enclosed on", anyYear, func(a *area) *evidence.Date { return &a.EnclosedOn }),
			yesNo("Radiant heat", func(a *area) *string { return &a.RadiantHeat }),
			clockOrDay("Heat on since", anyYear, func(a *area) *evidence.Time { return &a.HeatOnSince }),
			word("HVAC", []string{"permanent", "temporary", "none"}, func(a *area) *string { return &a.HVAC }),
			word("Below", []string{"conditioned room", "unconditioned room", "crawl space", "open"}, func(a *area) *string { return &a.Below }),
			yesNo("Ground cover", func(a *area) *string { return &a.GroundCover }),
			product("Flooring", floorings(), func(a *area) *string { return &a.Flooring }).always(),
			product("Adhesive", []string{"adhesive"}, func(a *area) *string { return &a.Adhesive }),
			product("Membrane", []string{"membrane"}, func(a *area) *string { return &a.Membrane }),
			word("Installation", []string{"nail-down", "glue-down", "floating", "stretch-in", "loose-lay"}, func(a *area) *string { return &a.Installation }),
			climate(func(a *area) *string { return &a.Climate }).always(),
			date("Covered on", anyYear, func(a *area) *evidence.Date { return &a.CoveredOn }),
			date("Install on", anyYear, func(a *area) *evidence.Date { return &a.InstallOn }).must(),
			number("Width across boards", feet(), aboveZero, func(a *area) *evidence.Reading { return &a.AcrossBoards }),
		},
	}
}

func moreArea(d *decoder, a *report.Area) {
	if a.DryingFaces.Shown() && a.DryingFaces.Value.IntPart() == 2 && (a.SlabKind == "on grade" || a.SlabKind == "metal deck") {
		d.faultAt("Drying faces", "a slab of the kind %s dries at one face; write 1, or mend Slab kind", a.SlabKind)
	}
	if a.CoveredOn.Shown() && a.InstallOn.Shown() && a.CoveredOn.Day > a.InstallOn.Day {
		d.faultAt("Covered on", "%s", saying(a.CoveredOn.Written, "is after Install on, %s; write the day the membrane went down, or mend Install on", a.InstallOn.Written))
	}
}

// product is a column that names a product of certain kinds. Products come
// after areas, so it is looked up when both are read.
func product(title string, kinds []string, field func(*report.Area) *string) column[report.Area] {
	col := name(title, field)
	col.takes.Of = "Products"
	store := col.read
	col.read = func(d *decoder, c *report.Cell, a *report.Area) {
		store(d, c, a)
		typed := c.Text
		d.later(func() { d.product(typed, kinds) })
	}
	return col
}

func (d *decoder) product(typed string, kinds []string) {
	at, ok := d.products.find(typed)
	if !ok {
		d.fault("%s", d.products.complaint(typed))
		return
	}
	if kind := d.job.Products[at].Kind; kind != "" && !slices.Contains(kinds, kind) {
		d.fault("%s", saying(typed, "is of the kind %s; write a product of the kind %s", kind, either(kinds)))
	}
}

// climate is the column that names an area's climate, looked up as late.
func climate(field func(*report.Area) *string) column[report.Area] {
	col := name("Climate", field)
	col.takes.Of = "Climates"
	store := col.read
	col.read = func(d *decoder, c *report.Cell, a *report.Area) {
		store(d, c, a)
		typed := c.Text
		d.later(func() {
			if _, ok := d.climates.find(typed); !ok {
				d.fault("%s", d.climates.complaint(typed))
			}
		})
	}
	return col
}
