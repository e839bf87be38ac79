// Package outlook says what is to be expected where an area is installed as it
// is: the damage that a condition over its limit is known for.
package outlook
