// Package slab judges a concrete slab: its level, what lies under it and its
// age; relative humidity in sealed holes, calcium chloride dishes, the surface's
// pH, carbide samples, other tests, and scans.
//
// It does not say how wet a slab will be later, and a scan is never a moisture
// content. Limits come to it resolved: whose they are is decided in report.
package slab
