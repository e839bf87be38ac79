package record

import (
	"firstboard/acclimate"
	"firstboard/report"
	"firstboard/report/evidence"
)

func productsTable() table[report.Product] {
	type product = report.Product
	return table[product]{
		name: "Products", more: moreProduct,
		rows:  func(j *report.Job) *[]product { return &j.Products },
		place: func(p *product) *evidence.Place { return &p.Place },
		columns: []column[product]{
			listed("Product", func(d *decoder) *index { return &d.products }, func(p *product) *string { return &p.ID }).always(),
			word("Kind", append(floorings(), "adhesive", "membrane"), func(p *product) *string { return &p.Kind }).always(),
			text("Description", func(p *product) *string { return &p.Description }),
			text("Species", func(p *product) *string { return &p.Species }),
			word("Cut", []string{"plainsawn", "quartersawn", "riftsawn", "mixed"}, func(p *product) *string { return &p.Cut }),
			yesNo("Below grade", func(p *product) *string { return &p.BelowGrade }),
			number("Face width", inches(), aboveZero, func(p *product) *evidence.Reading { return &p.FaceWidth }),
			number("Thickness", inches(), aboveZero, func(p *product) *evidence.Reading { return &p.Thickness }),
			limit("Slab RH max", in(evidence.RH), humidity(), func(p *product) *report.Stated { return &p.SlabRH }),
			limit("MVER max", []evidence.Unit{evidence.Pounds, evidence.Grams}, notNegative, func(p *product) *report.Stated { return &p.MVER }),
			limit("CM max", in(evidence.CM), within(0, 200), func(p *product) *report.Stated { return &p.CM }),
			limit("pH min", in(evidence.PH), acidity(), func(p *product) *report.Stated { return &p.PHMin }),
			limit("pH max", in(evidence.PH), acidity(), func(p *product) *report.Stated { return &p.PHMax }),
			limit("Subfloor MC max", in(evidence.MC), moisture(), func(p *product) *report.Stated { return &p.SubfloorMC }),
			limit("Flooring MC min", in(evidence.MC), moisture(), func(p *product) *report.Stated { return &p.FlooringMin }),
			limit("Flooring MC max", in(evidence.MC), moisture(), func(p *product) *report.Stated { return &p.FlooringMax }),
			limit("Difference max", in(evidence.Points), notNegative, func(p *product) *report.Stated { return &p.Difference }),
			limit("Air temp min", fahrenheit(), temperature(), func(p *product) *report.Stated { return &p.AirTempMin }),
			limit("Air temp max", fahrenheit(), temperature(), func(p *product) *report.Stated { return &p.AirTempMax }),
			limit("Air RH min", in(evidence.RH), humidity(), func(p *product) *report.Stated { return &p.AirRHMin }),
			limit("Air RH max", in(evidence.RH), humidity(), func(p *product) *report.Stated { return &p.AirRHMax }),
			limit("Surface temp max", fahrenheit(), temperature(), func(p *product) *report.Stated { return &p.SurfaceTemp }),
			number("Movement coefficient", unitless(), notNegative, func(p *product) *evidence.Reading { return &p.Across }),
			text("Data sheet", func(p *product) *string { return &p.DataSheet }),
		},
	}
}

func moreProduct(d *decoder, p *report.Product) {
	d.ordered("pH min", p.PHMin.Number, p.PHMax.Number)
	d.ordered("Flooring MC min", p.FlooringMin.Number, p.FlooringMax.Number)
	d.ordered("Air temp min", p.AirTempMin.Number, p.AirTempMax.Number)
	d.ordered("Air RH min", p.AirRHMin.Number, p.AirRHMax.Number)
}

// ordered faults a minimum that lies above its maximum.
func (d *decoder) ordered(column string, least, most evidence.Reading) {
	if least.Shown() && most.Shown() && least.Exact().Cmp(most.In(least.Unit)) > 0 {
		d.wrongAt(column, least.Written, "is above its maximum, %s; write the lower of the two here", most)
	}
}

func climatesTable() table[acclimate.Period] {
	type period = acclimate.Period
	return table[period]{
		name: "Climates",
		columns: []column[period]{
			name("Climate", func(p *period) *string { return &p.Climate }).always(),
			name("Period", func(p *period) *string { return &p.Name }).always(),
			number("Temp", fahrenheit(), temperature(), func(p *period) *evidence.Reading { return &p.Temp }).must(),
			number("RH", in(evidence.RH), humidity(), func(p *period) *evidence.Reading { return &p.RH }).must(),
			text("From", func(p *period) *string { return &p.From }),
		},
		rows:  func(j *report.Job) *[]period { return &j.Climates },
		place: func(p *period) *evidence.Place { return &p.Place },
		more: func(d *decoder, p *period) {
			d.climates.add(p.Climate, d.nth)
		},
	}
}
