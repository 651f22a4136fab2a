package material

// constants is where the elastic constants are from, but for the families'.
var constants = Origin{"MIL-HDBK-5J, chapters 2, 3 and 5", FromMemory}

// elastic makes constants from the units of tables: MPa, kg/m³, 1e-6/K.
func elastic(modulus, shear, poisson, kgM3, micro float64, o Origin) Elastic {
	return Elastic{modulus, shear, poisson, kgM3 * 1e-9, micro * 1e-6, o}
}

// families is the constants of a family, for metals that have none of their own:
// they scatter little within one.
var families = map[Family]Elastic{
	Steel:     elastic(207000, 80000, 0.30, 7850, 11.5, Origin{"usual for steels", FromMemory}),
	Aluminium: elastic(70000, 26300, 0.33, 2750, 23.2, Origin{"usual for wrought aluminium", FromMemory}),
	Titanium:  elastic(114000, 43000, 0.31, 4430, 8.8, constants),
}

// Constants that several metals share.
var (
	alloySteel  = elastic(207000, 80000, 0.30, 7850, 11.5, typical)
	al6061Plate = elastic(68300, 26200, 0.33, 2710, 23.4, constants)
	al6061      = elastic(68900, 26000, 0.33, 2700, 23.4, constants)
)
