package record

import (
	"slices"
	"strings"
	_ "time/tzdata"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/grid"
)

func eventsTable() table[report.Event] {
	type event = report.Event
	whats := []string{"water", "HVAC off", "building open", "leveler placed", "other"}
	return tableOf("Events", func(j *report.Job) *[]event { return &j.Events },
		func(e *event) *evidence.Place { return &e.Place },
		area(func(e *event) *string { return &e.Area }),
		clock("At", anyYear(), func(e *event) *evidence.Time { return &e.At }).always(),
		word("What", whats, func(e *event) *string { return &e.What }).always(),
		text("Remarks", func(e *event) *string { return &e.Remarks }),
	)
}

func photosTable() table[report.Photo] {
	type photo = report.Photo
	return tableOf("Photos", func(j *report.Job) *[]photo { return &j.Photos },
		func(p *photo) *evidence.Place { return &p.Place },
		area(func(p *photo) *string { return &p.Area }),
		text("File", func(p *photo) *string { return &p.File }).must(),
		clock("Taken at", anyYear(), func(p *photo) *evidence.Time { return &p.TakenAt }),
		text("Of", func(p *photo) *string { return &p.Of }),
	)
}

func signOffTable() table[report.SignOff] {
	type signature = report.SignOff
	roles := []string{
		"installer", "general contractor", "owner", "designer", "tester",
		"flooring manufacturer", "adhesive manufacturer", "membrane manufacturer",
	}
	return tableOf("Sign-off", func(j *report.Job) *[]signature { return &j.SignOffs },
		func(s *signature) *evidence.Place { return &s.Place },
		area(func(s *signature) *string { return &s.Area }).always(),
		word("Role", roles, func(s *signature) *string { return &s.Role }).always(),
		text("Name", func(s *signature) *string { return &s.Name }).must(),
		clock("At", anyYear(), func(s *signature) *evidence.Time { return &s.At }).must(),
		word("Decision", []string{"accept", "refuse", "waive"},
			func(s *signature) *string { return &s.Decision }).always(),
		column[signature]{Column{Name: "Waives"}, readWaives},
		text("Document", func(s *signature) *string { return &s.Document }),
		text("Remarks", func(s *signature) *string { return &s.Remarks }),
	)
}

func readWaives(d *decoder, c *grid.Cell, s *report.SignOff) {
	apart := func(r rune) bool { return strings.ContainsRune(",; \t\r\n\u00a0", r) }
	for _, typed := range strings.FieldsFunc(words(c), apart) {
		id := strings.ToLower(typed)
		if !slices.Contains(report.Order(), id) {
			d.wrong(typed, "is not the id of a check; the nearest is %s", evidence.Nearest(typed, report.Order()))
			continue
		}
		s.Waives = append(s.Waives, id)
	}
}
