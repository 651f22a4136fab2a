package design

import "gudgeon/cmd/internal/units"

// key is one key of a table of the file.
type key struct {
	name     string
	unit     units.Kind // of a quantity or a pair
	required bool
	positive bool    // 0 would read as not given: refuse what is not greater
	most     float64 // of its size, in the plain unit, where libraries would tell it in another; 0: no bound
	example  string  // a value as it stands in a file
	by       string  // what needs it, where that is not the table
}

// The keys of the file's tables. doc.go tells what each means; a test holds
// the two together. [points], [links], [material] and
// [variant] have keys of the user's; those of [[joint]] stand in jointkeys.go.
var (
	fileKeys = []key{
		{name: "name", example: `"Tarn 153"`},
		{name: "points"}, {name: "links"}, {name: "slider"},
		{name: "shock"}, {name: "rear"}, {name: "front"},
		{name: "drivetrain"}, {name: "brake"}, {name: "mass"},
		{name: "spring"}, {name: "load_case"}, {name: "joint"},
		{name: "material"}, {name: "require"}, {name: "tolerance"}, {name: "variant"},
	}
	sliderKeys = []key{
		{name: "point", required: true, example: `"carriage"`},
		{name: "link", required: true, example: `"swinger"`},
		{name: "guide", required: true, example: `["rail-low", "rail-high"]`},
		{name: "on", required: true, example: `"frame"`},
	}
	shockKeys = []key{
		{name: "mounts", required: true, example: `["shock-frame", "shock-rocker"]`},
		{name: "stroke", unit: units.Length, required: true, example: "60"},
		{name: "yoke", unit: units.Length, example: "45"},
	}
	rearKeys = []key{
		{name: "axle", required: true, example: `"axle"`},
		{name: "link", example: `"seatstay"`},
		{name: "wheel_radius", unit: units.Length, positive: true, example: "372"},
	}
	frontKeys = []key{
		{name: "axle", unit: units.Length, required: true, example: "[812, 14]"},
		{name: "wheel_radius", unit: units.Length, required: true, example: "374"},
		{name: "head_angle", unit: units.Angle, required: true, example: "64.5"},
		{name: "fork_offset", unit: units.Length, example: "44"},
		{name: "fork_travel", unit: units.Length, example: "160"},
		{name: "fork_follow", example: "0"},
	}
	drivetrainKeys = []key{
		{name: "chainring", required: true, example: "32"},
		{name: "cogs", example: "[10, 12, 14, 16]"},
		{name: "gear", required: true, example: `"32x21"`},
		{name: "chain_pitch", unit: units.Length, positive: true, example: "12.7"},
		{name: "crank", example: `"bb"`},
		{name: "crank_link", example: `"swinger"`},
		{name: "idler"},
	}
	idlerKeys = []key{
		{name: "point", required: true, example: `"idler"`},
		{name: "link", example: `"swingarm"`},
		{name: "teeth", required: true, example: "16"},
		{name: "over", example: "true"},
	}
	brakeKeys = []key{
		{name: "carrier", required: true, example: `"seatstay"`},
	}
	massKeys = []key{
		{name: "total", unit: units.Mass, required: true, example: "100"},
		{name: "unsprung_rear", unit: units.Mass, example: "3.2"},
		{name: "centre", unit: units.Length, required: true, example: "[60, 700]"},
	}
	coilKeys = []key{
		{name: "kind", required: true, example: `"coil"`},
		{name: "rate", unit: units.Stiffness, required: true, example: `"450 lbf/in"`},
		{name: "preload", unit: units.Length, example: "2"},
		{name: "bumper"},
	}
	airKeys = []key{
		{name: "kind", required: true, example: `"air"`},
		{name: "piston_area", unit: units.Area, required: true, example: "1100"},
		{name: "volume", unit: units.Volume, required: true, example: "230000"},
		{name: "pressure", unit: units.Pressure, required: true, example: `"11 bar"`},
		{name: "exponent", required: true, example: "1.35"},
		{name: "negative_area", unit: units.Area, positive: true, example: "950"},
		{name: "negative_volume", unit: units.Volume, positive: true, example: "60000"},
		{name: "negative_pressure", unit: units.Pressure, positive: true, example: `"11 bar"`},
		{name: "bumper"},
	}
	bumperKeys = []key{
		{name: "length", unit: units.Length, required: true, example: "9"},
		{name: "force", unit: units.Force, required: true, example: "1800"},
		{name: "power", positive: true, example: "2"},
	}
	loadCaseKeys = []key{
		{name: "name", required: true, example: `"landing"`},
		{name: "travel", unit: units.Length, required: true, example: `"100%"`},
		{name: "force", unit: units.Force, example: "[0, 4200]"},
		{name: "chain_tension", unit: units.Force, example: "1900"},
		{name: "pedal_force", unit: units.Force, example: "700"},
		{name: "crank_length", unit: units.Length, positive: true, example: "170"},
		{name: "gear", example: `"32x45"`},
		{name: "brake_force", unit: units.Force, example: "450"},
		{name: "lateral", unit: units.Force, example: "0"},
		{name: "cycles", positive: true, example: "2000"},
	}
	materialKeys = []key{
		{name: "family", required: true, example: `"aluminium"`},
		{name: "yield", unit: units.Pressure, required: true, example: "480"},
		{name: "ultimate", unit: units.Pressure, positive: true, example: "540"},
		{name: "modulus", unit: units.Pressure, positive: true, example: "71000"},
		{name: "poisson", positive: true, example: "0.33"},
		{name: "density", positive: true, example: "2800"},
		{name: "expansion", positive: true, example: "23e-6"},
		{name: "fatigue", unit: units.Pressure, positive: true, example: "150"},
		{name: "fatigue_cycles", positive: true, example: "5e8"},
		{name: "welded_yield", unit: units.Pressure, positive: true, example: "110"},
		{name: "welded_ultimate", unit: units.Pressure, positive: true, example: "170"},
		{name: "hardness_min", positive: true, example: "300"},
		{name: "hardness_max", positive: true, example: "340"},
		{name: "section_up_to", unit: units.Length, positive: true, example: "60"},
		{name: "source", example: `"test bars of heat 12"`},
	}
	requireKeys = []key{
		{name: "figure", required: true, example: `"progression_percent"`},
		{name: "min", example: "5"},
		{name: "max", example: "30"},
	}
)

// find returns the key of a name, nil where the list has none.
func find(keys []key, name string) *key {
	for i := range keys {
		if keys[i].name == name {
			return &keys[i]
		}
	}
	return nil
}
