// Package wood judges moisture readings of flooring, subfloor and joists, and
// computes what wood does in air: its equilibrium moisture content.
//
// It corrects a resistance meter's reading where a publication says how, and
// refuses where none does. It does not say which limit governs: limits come to
// it resolved.
package wood
