// Package material holds the metals that joints are made of, with the source
// of each value.
//
//	m, ok := material.Find("7075-T6")    // one of the table
//	g, ok := m.At(30)                    // its strength in a section of 30 mm
//	m.Elastic.Modulus, m.Fatigue.At(g), m.Welded.Yield
//
//	own, err := material.Values{Name: "our 7075", Family: "aluminium", Yield: 480}.Material()
//	library, err := material.NewLibrary(own)      // the table and one's own
//
// Strengths are the smallest that the named standard allows, since a joint is
// sized by them, and depend on the section: the diameter of the bar that is
// heat-treated, or for other products the thickness that cools like it. Every
// value says how sure it is: Confirmed by looking it up in the place named,
// CommonPractice in the trade, or FromMemory of the place named.
//
// Stresses and moduli are MPa, densities kg/mm³, expansions 1/K.
//
// # Sources
//
// ISO 683-2:2018, EN 10083-2:2006 and -3:2006, EN 755-2:2016, AMS 4928, and
// MIL-HDBK-5J (2003) for strengths; MIL-HDBK-5J for elastic constants and fatigue;
// EN 1999-1-1, table 3.2b, for aluminium beside welds.
package material
