package record

import (
	"slices"

	"firstboard/acclimate"
	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/limits"
	"firstboard/report/lists"
)

func productsTable() table[limits.Product] {
	type product = limits.Product
	return tableOf("Products", func(j *report.Job) *[]product { return &j.Products },
		func(p *product) *evidence.Place { return &p.Place },
		slices.Concat([]column[product]{
			listed("Product", func(d *decoder) *index { return &d.products },
				func(p *product) *string { return &p.ID }).always(),
			word("Kind", append(floorings(), "adhesive", "membrane"),
				func(p *product) *string { return &p.Kind }).always(),
			text("Description", func(p *product) *string { return &p.Description }),
			text("Species", func(p *product) *string { return &p.Species }),
			word("Cut", []string{"plainsawn", "quartersawn", "riftsawn", "mixed"},
				func(p *product) *string { return &p.Cut }),
			yesNo("Below grade", func(p *product) *string { return &p.BelowGrade }),
			number("Face width", inches(), aboveZero, func(p *product) *evidence.Reading { return &p.FaceWidth }),
			number("Thickness", inches(), aboveZero, func(p *product) *evidence.Reading { return &p.Thickness }),
		}, limitColumns(), []column[product]{
			number("Movement coefficient", unitless(), notNegative,
				func(p *product) *evidence.Reading { return &p.Across }),
			text("Data sheet", func(p *product) *string { return &p.DataSheet }),
		})...,
	).asking(moreProduct)
}

// limitColumns are the columns of the limits that products state.
func limitColumns() []column[limits.Product] {
	var all []column[limits.Product]
	for _, k := range limits.Kinds() {
		for _, c := range k.Columns() {
			all = append(all, limit(c.Name, k.Units, ruleOf(k.Units[0]), c.Cell))
		}
	}
	return all
}

// ruleOf is what a limit in a unit may be.
func ruleOf(u evidence.Unit) rule {
	of, known := map[evidence.Unit]rule{
		evidence.RH: humidity(), evidence.MC: moisture(), evidence.CM: within(0, 200), evidence.PH: acidity(),
		evidence.Fahrenheit: temperature(),
	}[u]
	return lists.If(known, of, notNegative)
}

func moreProduct(d *decoder, p *limits.Product) {
	for _, k := range limits.Kinds() {
		if len(k.Columns()) == 2 {
			d.ordered(k.Least.Name, k.Least.Of(p).Number, k.Most.Of(p).Number)
		}
	}
}

// ordered faults a minimum that lies above its maximum.
func (d *decoder) ordered(column string, least, most evidence.Reading) {
	if least.Shown() && most.Shown() && least.Exact().Cmp(most.In(least.Unit)) > 0 {
		d.wrongAt(column, least.Written, "is above its maximum, %s; write the lower of the two here", most)
	}
}

func climatesTable() table[acclimate.Period] {
	type period = acclimate.Period
	return tableOf("Climates", func(j *report.Job) *[]period { return &j.Climates },
		func(p *period) *evidence.Place { return &p.Place },
		name("Climate", func(p *period) *string { return &p.Climate }).always(),
		name("Period", func(p *period) *string { return &p.Name }).always(),
		number("Temp", fahrenheit(), temperature(), func(p *period) *evidence.Reading { return &p.Temp }).must(),
		number("RH", only(evidence.RH), humidity(), func(p *period) *evidence.Reading { return &p.RH }).must(),
		text("From", func(p *period) *string { return &p.From }),
	).asking(func(d *decoder, p *period) {
		d.climates.add(p.Climate, d.nth)
	})
}
