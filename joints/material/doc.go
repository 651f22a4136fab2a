// Package material holds the metals that joints are made of, with the source
// of each value.
//
// Values are the smallest that the named standard allows, since a joint is
// sized by them, and depend on the section: the diameter of the bar that is
// heat-treated, or for other products the thickness that cools like it. Every
// value says how sure it is: Confirmed by looking it up in the place named,
// CommonPractice in the trade, or FromMemory of the place named.
package material
