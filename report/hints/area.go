package hints

import (
	"firstboard/acclimate"
	"firstboard/report/evidence"
	"firstboard/report/instruments"
)

// Area is an area that was judged.
type Area struct {
	ID   string
	Size evidence.Reading
	instruments.Readings
	Air     []acclimate.Air // of the whole record
	Points  Points          // the same
	Outcome func(check string) evidence.Outcome
}
