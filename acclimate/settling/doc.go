// Package settling forecasts when a lot of flooring will be within tolerance
// of its target: first-order drying or wetting toward the equilibrium moisture
// content (EMC) of the air it lies in, fitted to the lot's own visits.
//
// A forecast is advice: it judges nothing. Days are floats on one axis, chosen
// by the caller; moisture contents are in % of oven-dry mass.
package settling
