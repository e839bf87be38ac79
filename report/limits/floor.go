package limits

import (
	"firstboard/acclimate"
	"firstboard/slab"
	"firstboard/wood"
)

// Floor is the flooring system of an area, the limits in force for it, and what
// they are held against.
type Floor struct {
	System
	Limits InForce
	Slab   slab.Floor
	Wood   wood.Floor
	Room   acclimate.Room
}
