// Package acclimate judges the air: over the readings of slab and wood, of the
// service climate the floor will live in, and of the flooring that is to
// settle in it.
//
// It computes the target equilibrium moisture content from the service
// climate, and a service climate from a year of outdoor air. It does not
// forecast when a lot will have settled.
package acclimate
