// Package limits resolves which limits govern an area: those that the products of
// its flooring system state, or the defaults where nobody states one.
//
// [Kinds] is the one table of what there is to be looked up.
package limits
