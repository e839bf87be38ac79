package record

import (
	"cmp"
	"slices"
	"strings"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/lists"
)

func areasTable() table[report.Area] {
	type area = report.Area
	return tableOf("Areas", func(j *report.Job) *[]area { return &j.Areas },
		func(a *area) *evidence.Place { return &a.Place },
		listed("Area", func(d *decoder) *index { return &d.areas },
			func(a *area) *string { return &a.ID }).always(),
		text("Name", func(a *area) *string { return &a.Name }),
		size(func(a *area) *evidence.Reading { return &a.Size }).must(),
		word("Substrate", []string{"slab", "wood", "wood over slab"},
			func(a *area) *string { return &a.Substrate }).always(),
		number("Slab thickness", inches(), aboveZero, func(a *area) *evidence.Reading { return &a.Thickness }),
		number("Drying faces", unitless(), oneOrTwo, func(a *area) *evidence.Reading { return &a.DryingFaces }),
		word("Slab kind", []string{"on grade", "below grade", "suspended", "metal deck", "screed"},
			func(a *area) *string { return &a.SlabKind }),
		word("Made of", []string{"normal", "lightweight", "gypsum", "calcium sulfate"},
			func(a *area) *string { return &a.MadeOf }),
		word("Under slab", []string{"retarder", "none", "unknown"}, func(a *area) *string { return &a.UnderSlab }),
		number("Exterior walls", unitless(), count, func(a *area) *evidence.Reading { return &a.ExteriorWalls }),
		name("Zone", func(a *area) *string { return &a.Zone }),
		date("Placed on", anyYear(), func(a *area) *evidence.Date { return &a.PlacedOn }),
		date("Enclosed on", anyYear(), func(a *area) *evidence.Date { return &a.EnclosedOn }),
		yesNo("Radiant heat", func(a *area) *string { return &a.RadiantHeat }),
		clockOrDay("Heat on since", anyYear(), func(a *area) *evidence.Time { return &a.HeatOnSince }),
		word("HVAC", []string{"permanent", "temporary", "none"}, func(a *area) *string { return &a.HVAC }),
		word("Below", []string{"conditioned room", "unconditioned room", "crawl space", "open"},
			func(a *area) *string { return &a.Below }),
		yesNo("Ground cover", func(a *area) *string { return &a.GroundCover }),
		product("Flooring", floorings(), func(a *area) *string { return &a.Flooring }).always(),
		product("Adhesive", []string{"adhesive"}, func(a *area) *string { return &a.Adhesive }),
		product("Membrane", []string{"membrane"}, func(a *area) *string { return &a.Membrane }),
		word("Installation", []string{"nail-down", "glue-down", "floating", "stretch-in", "loose-lay"},
			func(a *area) *string { return &a.Installation }),
		later("Climate", "Climates", func(a *area) *string { return &a.Climate },
			func(d *decoder, typed string) { d.find(&d.climates, typed) }).always(),
		date("Covered on", anyYear(), func(a *area) *evidence.Date { return &a.CoveredOn }),
		date("Install on", anyYear(), func(a *area) *evidence.Date { return &a.InstallOn }).must(),
		number("Width across boards", feet(), aboveZero,
			func(a *area) *evidence.Reading { return &a.AcrossBoards }),
	).asking(moreArea)
}

// size is the column of an area's size. A comma before three figures may part
// thousands or stand for the point, and a size may be either.
func size(field func(*report.Area) *evidence.Reading) column[report.Area] {
	col := number("Size", []evidence.Unit{evidence.SquareFoot, evidence.SquareM}, aboveZero, field)
	read := col.read
	col.read = func(d *decoder, c *grid.Cell, a *report.Area) {
		typed := strings.TrimSpace(c.Text)
		if whole, part, comma := strings.Cut(typed, ","); comma && c.Kind == grid.TextCell &&
			evidence.Digits(whole) && evidence.Digits(part) && len(part) == 3 {
			d.wrong(typed, "has three figures behind its comma; is it %s? Write it without a comma, or fewer figures",
				whole+part)
			return
		}
		read(d, c, a)
	}
	return col
}

func moreArea(d *decoder, a *report.Area) {
	d.thick("Slab thickness", a.Thickness)
	d.faces(a)
	d.poured(a)
	if !a.InstallOn.Shown() {
		return
	}
	const mend = "is after Install on, %s; correct one of the two days"
	if a.CoveredOn.Shown() && a.CoveredOn.Day > a.InstallOn.Day {
		d.wrongAt("Covered on", a.CoveredOn.Written, mend, a.InstallOn.Written)
	}
	if a.EnclosedOn.Shown() && a.EnclosedOn.Day > a.InstallOn.Day {
		d.wrongAt("Enclosed on", a.EnclosedOn.Written, mend, a.InstallOn.Written)
	}
	d.lastInstall(*a)
}

// lastInstall notes the last day of installing.
func (d *decoder) lastInstall(a report.Area) {
	if a.InstallOn.Shown() && (!d.installs.Shown() || a.InstallOn.Day > d.installs.Day) {
		d.installs = a.InstallOn
	}
}

// faces faults two drying faces on a slab that dries at one.
func (d *decoder) faces(a *report.Area) {
	if !a.DryingFaces.Shown() || a.DryingFaces.Value.IntPart() != 2 || a.Substrate == "wood" {
		return
	}
	switch {
	case a.SlabKind == "" || a.SlabKind == "on grade" || a.SlabKind == "below grade" || a.SlabKind == "metal deck":
		d.faultAt("Drying faces", "a slab of the kind %s dries at one face; write 1, or correct Slab kind",
			cmp.Or(a.SlabKind, "on grade (as a blank Slab kind is)"))
	case a.UnderSlab == "retarder":
		d.faultAt("Drying faces", "a slab over a vapor retarder dries at one face; write 1, or correct Under slab")
	}
}

// poured faults what differs between areas of one zone: they are one slab.
func (d *decoder) poured(a *report.Area) {
	if a.Zone == "" {
		return
	}
	at, known := d.zones[evidence.Key(a.Zone)]
	if !known {
		d.zones[evidence.Key(a.Zone)] = d.nth
		return
	}
	first := d.job.Areas[at]
	for _, same := range []struct{ column, here, there string }{
		{"Substrate", a.Substrate, first.Substrate},
		{"Slab thickness", a.Thickness.Written, first.Thickness.Written},
		{"Drying faces", a.DryingFaces.Written, first.DryingFaces.Written},
		{"Slab kind", a.SlabKind, first.SlabKind},
		{"Made of", a.MadeOf, first.MadeOf},
		{"Under slab", a.UnderSlab, first.UnderSlab},
	} {
		if same.here != same.there {
			d.faultAt(same.column, "%s differs from that of area %s, %s, and both are in zone %s, on one pour; correct one of them, or Zone",
				written(same.here), evidence.Quote(first.ID), written(same.there), evidence.Quote(a.Zone))
		}
	}
}

// written is an entry in quotes, or that it is none.
func written(entry string) string {
	return lists.If(entry == "", "a blank", evidence.Quote(entry))
}

// product is a column that names a product of certain kinds.
func product(title string, kinds []string, field func(*report.Area) *string) column[report.Area] {
	return later(title, "Products", field, func(d *decoder, typed string) {
		at, listed := d.find(&d.products, typed)
		if !listed {
			return
		}
		if kind := d.job.Products[at].Kind; kind != "" && !slices.Contains(kinds, kind) {
			d.wrong(typed, "is of the kind %s; write a product of the kind %s", kind, evidence.Either(kinds))
		}
	})
}

// find is the row of a list that an identifier names; where it is known to have
// none, that is a fault.
func (d *decoder) find(in *index, typed string) (at int, listed bool) {
	if in.lacks(typed) {
		d.complain(in.complaint(typed))
	}
	return in.find(typed)
}
