// Package outlook says under a verdict, and never as part of it, when, what next,
// whether it holds, and what is to be expected where an area is installed as it
// is.
package outlook
