// Package drying forecasts when a hole in a concrete slab will be at its
// limit, with an interval: one-dimensional drying, fitted to the hole's own
// readings.
//
// A forecast is advice: it judges nothing. Days are floats on one axis, chosen
// by the caller; humidities are in % RH, lengths in mm.
package drying
