// Package design reads design files: one frame's linkage and the joints to
// size, written by hand in TOML. This is the reference of the format.
//
//	name = "Moraine 150"
//
//	[points]                                  # mm, design position
//	main      = [  12,  36]
//	axle      = [-436,  12]
//	shock-arm = [-110, 214]
//	shock-top = [ 176, 262]
//
//	[links]
//	frame    = ["main", "shock-top"]          # the fixed one
//	swingarm = ["main", "axle", "shock-arm"]  # pinned to frame at main
//
//	[shock]
//	mounts = ["shock-top", "shock-arm"]
//	stroke = 55
//
//	[rear]
//	axle = "axle"
//
// [Parse] reads a file, [File.Variant] gives the design of the base or of a
// variant, [File.Locate] finds what kinematics and joints say of it in the file.
//
// # Values
//
//	file     = { key "=" value | "[" table "]" | "[[" table "]]" } .   TOML 1.0, UTF-8
//	quantity = number | '"' number unit '"' .     450    "450 lbf/in"
//	point    = "[" quantity "," quantity [ "," quantity ] "]" .        x forward, y up, z to the right
//	pair     = "[" quantity "," quantity "]" .
//	share    = '"' number "%" '"' .               "30%"
//	gear     = '"' teeth "x" teeth '"' .          "32x21", chainring x cog
//	name     = a text without control characters, not empty .
//
// A number alone is in the unit that the key's line gives; package units lists
// what else may be written, and a text without a unit, with a decimal comma or
// with a unit of another kind is refused. Whole numbers and decimals are the
// same where a number is meant; dates, true and false are none. Names and keys
// are compared letter by letter. A byte-order mark and CRLF are read over. A
// file holds at most 4 MiB and nests at most 100 levels.
//
// The origin is the crank axis, on the frame, at the design position: the
// suspension fully extended. Keys marked * must be given where their table is.
//
// # The file
//
//	name             name     of the design; default: the file's
//	[points]         any number of NAME = point, mm
//	[links]          any number of NAME = [names of points]; frame is the fixed one
//	[[slider]] [shock] [rear] [front] [drivetrain] [brake] [mass] [spring]
//	[[load_case]] [[joint]] [material.NAME] [[require]] [tolerance] [variant.NAME]
//
// A file with a linkage needs [points], [links], [shock] and [rear]. A file
// may hold [[joint]] tables alone. A point that two or more links name is a pin
// between them.
//
// # [[slider]]: a point of one link runs on a straight line of another
//
//	point *          name     of a point of link
//	link *           name     of the link that slides
//	guide *          [name, name]  two points of the link on
//	on *             name     of the link that holds the guide
//
// # [shock]
//
//	mounts *         [name, name]  points of two links, pin to pin
//	stroke *         mm       shortening from the design position, less than the shock is long
//	yoke             mm       part of the pin-to-pin length that is not the shock; default 0
//
// # [rear]
//
//	axle *           name     of the point that carries the wheel
//	link             name     of its link; default: the first moving one that names the point
//	wheel_radius     mm       without it there is no ground
//
// # [front]
//
//	axle *           pair     mm, fork fully extended
//	wheel_radius *   mm
//	head_angle *     deg      steering axis from the ground line's backward direction, 0 to 90
//	fork_offset      mm       without it there is no trail
//	fork_travel      mm       default 0
//	fork_follow               share of the rear's travel that the fork follows, 0 (default) to 1
//
// # [drivetrain]
//
//	chainring *      teeth
//	cogs             [teeth]  those of the cassette; without it any cog will do
//	gear *           gear     where one is asked for
//	chain_pitch      mm       default 12.7
//	crank            name     of the point of the crank axis; default: the origin, on the frame
//	crank_link       name     of its link, where several name the point
//
// # [drivetrain.idler]: the upper run passes cog, idler, chainring
//
//	point *          name
//	link             name     of the link that carries it; default: the first moving one that names the point
//	teeth *          teeth
//	over             true (default): the chain passes over it; false: under
//
// # [brake]
//
//	carrier *        name     of the moving link that holds the caliper
//
// # [mass]
//
//	total *          kg       bike and rider
//	unsprung_rear    kg       default 0
//	centre *         pair     mm, of the total
//
// # [spring]
//
//	kind *           "coil" or "air"
//
// with kind = "coil":
//
//	rate *           N/mm
//	preload          mm       compressed at the design position; default 0
//
// with kind = "air", gauge pressures at the design position:
//
//	piston_area *       mm2
//	volume *            mm3   more than the piston sweeps
//	pressure *          MPa
//	exponent *                1 slow to 1.4 fast, for both chambers
//	negative_area       mm2   the negative chamber: all three or none
//	negative_volume     mm3
//	negative_pressure   MPa
//
// # [spring.bumper]: force·(x/length)^power over the last length of stroke
//
//	length *         mm       at most the stroke
//	force *          N        at full stroke
//	power                     default 2
//
// # [[load_case]]
//
//	name *           name     unique
//	travel *         mm, or a share of full travel: "30%"
//	force            pair     N, on the wheel at the axle; default: vertical, what balances the spring
//	chain_tension    N        in the upper run; needs [drivetrain] and [front]
//	pedal_force      N        square to the crank, in place of chain_tension; needs crank_length
//	crank_length     mm
//	gear             gear     default: that of [drivetrain]
//	brake_force      N        at the ground, backward; needs [brake] and [front]
//	lateral          N        at the ground, to the right; default 0
//	cycles                    over the life
//
// # [[require]]: bounds of a summary figure; one of the two at least
//
//	figure *         name     of a summary figure
//	min              in the unit of the figure's name
//	max
//
// # [tolerance]: how far the parts may be off, ± about what is drawn
//
//	hole             mm       holes of moving links, along each axis; default 0.05
//	frame_hole       mm       holes of the frame; default 0.1
//	shock_length     mm       at full extension; default 0.5
//	spread           "normal" (default) or "uniform" between the limits
//	sigma_of_limit            a limit is so many standard deviations of the normal spread; default 3
//
// # [tolerance.links]: a limit of a link's own, under its name
//
//	seatstay = 0.3   mm       in place of hole, or of frame_hole
//
// # [material.NAME]: a material of one's own, which joints may name
//
//	family *         "steel", "aluminium" or "titanium"
//	yield *          MPa      strength at yield, the smallest that the part may have
//	ultimate         MPa
//	modulus          MPa      default: the family's, as for the next three
//	poisson
//	density          kg/m3
//	expansion        1/K
//	fatigue          MPa      amplitude that a polished bar bears, fully reversed; needs ultimate
//	fatigue_cycles            so often; default 1e7, aluminium 5e8
//	welded_yield     MPa      beside a weld
//	welded_ultimate  MPa
//	hardness_min     HB       of a steel hardened through
//	hardness_max     HB
//	section_up_to    mm       thickest section that the values hold for; default any
//	source           name     where the values are from
//
// # [[joint]]
//
//	name *           name     unique
//	kind *           "spline", "bolt", "pin", "bearing", "press_fit", "bushing", "member", "key" or "fatigue"
//
// and the keys of its kind, below. What a joint carries is told in one of three ways:
// in its own table, in a list of [[joint.load]], each with a name and the same keys, or
// by the linkage, in every load case. Which of these keys a kind has stands with it.
//
// # Loads
//
//	force            pair     N, across the axis: on the bolt, on the middle part of a pin, of the shaft on its bearings
//	axial            N        along the axis; a bolt's pulls head and nut apart, a member's is tension
//	axial_low        N        the other end of the axial load's cycle; default 0
//	moment           pair     N m, about the two axes across; a member's in and out of the plane
//	torque           N m      about the axis
//	stress           MPa      nominal, one end of a cycle
//	stress_low       MPa      the other; default 0
//	swing            deg      whole angle from end to end; default 0, or what the linkage turns
//	cycles                    over the life; default: not asked
//	frequency                 swings there and back a second; default: not told
//	reversed                  true: the force across changes its direction; default false
//
// # Loads from the linkage
//
//	at               name     of a point
//	link             name     of a link there, or "shock"
//	through          [name]   points of that link: the torque is the moment about at of the pins' forces there
//	against          name     of the link that link swings against; default: the only other one at the pin
//	ends             [name, name]  points of link; default: its two pins
//	share                     of what the linkage carries there; default 1 for a torque and for a pair at a span, else 0.5: one of two sides
//	offset           mm       of the force from the joint's middle, towards +z; default 0
//	stress_per_force          MPa/N, of the place over the pin's force
//
// With at and link a joint takes the force that the pin exerts on the link, the swing of
// the two links over the whole travel, and the cycles of the load case. A member
// between two ends takes the force at the second along the line of both, and the
// moment that it has about the first. Beside these, axial, moment, swing, frequency and
// the like may be given, for what a plane linkage does not know: they come to every load
// case.
//
// # [[joint]] of kind spline
//
// Loads: torque. From the linkage: at *, link *, through *, share. Package spline tells
// the ranges and the defaults.
//
//	standard *             "ISO 4156", "ANSI B92.1", "DIN 5480" or "ISO 14"
//	module                 mm   needed in ISO 4156 and DIN 5480
//	diametral_pitch        1/in needed in ANSI B92.1: 20 of 20/40
//	reference_diameter     mm   needed in DIN 5480
//	minor_diameter         mm   needed in ISO 14
//	major_diameter         mm   needed in ISO 14
//	teeth *
//	pressure_angle         deg  needed in ISO 4156 and ANSI B92.1
//	root                   "flat" or "fillet"
//	fit                    "side" or "major" (ANSI B92.1), "sliding", "close" or "fixed" (ISO 14)
//	length *               mm   engaged
//	bore                   mm   of a hollow shaft; default 0, solid
//	hub_outer_diameter *   mm
//	shaft_material *       a name of package material, or of the file
//	hub_material *
//	application_factor     Ka
//	distribution_factor    Km
//	misalignment           mm/mm, gives Km
//	cycles *               give Kf
//	rocking_cycles         give Kw
//	reversed               true or false (default)
//	seat                   "flexible" or "fixed"
//	piloted                true or false (default)
//	clamped                true or false (default)
//	crowned                true or false (default)
//	shaft_class            tolerance class or grade
//	shaft_fit              fit letter
//	hub_class
//	hub_fit
//	shaft_process          "broached", "hobbed", "shaped" or "rolled" (DIN 5480)
//	hub_process
//	tolerance_length       mm
//	shaft_pin              mm   measuring pin
//	hub_pin                mm
//	bending_moment         N m  on the shaft under the teeth
//	free_length            mm   of splined shaft outside the hub, for its stiffness
//	grip                   "pinch", "taper" or "press": what presses the hub on
//	grip_force             N    of a pinch or taper
//	taper_angle            deg  between cone and axis
//	interference           mm   of a press fit, on the diameter
//	temperature_rise       K    of a press fit
//	grip_diameter          mm
//	grip_length            mm
//	friction               of the grip
//	propose                true: propose splines that would serve in its place, as size --propose does; default false
//	largest_diameter       mm   of the proposals' hubs; default: its own hub_outer_diameter
//	largest_length         mm   of their engagement; default: its own length
//	least_bore             mm   of their shafts; default: its own bore
//	required_safety        that every check of theirs must reach; default 1
//	series                 [standard] to choose them from; default all
//
// # [[joint]] of kind bolt
//
// Loads: force, axial, axial_low, moment, torque, cycles, reversed. From the linkage:
// at *, link *, share, offset.
//
//	diameter *             mm   of the ISO metric thread
//	pitch                  mm   default: coarse
//	bore                   mm   of a hollow axle; default 0, solid
//	class *                strength class or alloy, such as "10.9"
//	head                   "hex" (default) or "socket"
//	head_diameter          mm   of the seat; default: the hexagon's
//	hole                   mm   clearance hole; default: ISO 273, medium
//	shank_diameter         mm   of the part without thread; default: the diameter
//	shank_length           mm   of that part within the stack; default 0
//	rolled_after_treatment true: thread rolled after heat treatment; default false
//	stack *                list of tables, from the head down, below
//	nut_diameter           mm   seat of the nut; default: head_diameter
//	tapped_material        of the part that the bolt is screwed into; default: a nut
//	engagement             mm   of the thread in that part; needed with it
//	boss                   mm   outside diameter of that part around the thread; default wide
//	thread_friction        [least, largest]; default 0.08 to 0.16
//	head_friction          [least, largest]; default 0.08 to 0.16
//	tightening_torque      N m  on the drawing; default: the largest that every part bears
//	tool_scatter           of the wrench; default 0.06
//	yield_share            of the yield strength that tightening may use; default 0.9, aluminium 0.65
//	load_factor            where the axial load enters; default 0.5
//	roughness              "fine", "medium" (default) or "rough"
//	slip_faces             that share the force across; default 1
//	slip_friction          the least; default 0.1
//	temperatures           [°C] of use; default -20, 20, 60
//
// # Each part of a bolt's stack
//
//	name                   name of the part; default: its material
//	outer_diameter *       mm   of what bears
//	inner_diameter         mm   default: the hole
//	length *               mm   along the bolt
//	material *             a name of package metal
//	pressure               MPa  that its faces bear; default: by the material
//
// # [joint.across] of a bolt: how its axle is borne where the faces slip
//
//	planes *               2, a fork, or 1, two plates
//	middle *               mm   thickness of the middle part
//	outer *                mm   thickness of each outer part
//	gap                    mm   each side; default 0
//	thread_in_planes       true: the thread reaches into a shear plane; default false
//
// # [[joint]] of kind pin
//
// Loads: force, moment, swing, cycles. From the linkage: at *, link *, against, share,
// offset; link is then that of the middle part.
//
//	diameter *             mm
//	bore                   mm   of a hollow pin; default 0, solid
//	material *             a name of package metal
//	planes                 2 (default), an eye in a fork, or 1, two plates
//	gap                    mm   each side; default 0
//	design_factor          on ultimate strength; default 2
//	middle *               table of the eye, below
//	outer *                table of one leg
//
// # middle and outer of a pin
//
//	thickness *            mm   along the pin
//	hole                   mm   default: the pin's diameter
//	width *                mm   across the hole
//	edge_distance *        mm   from the hole's middle to the free end
//	round                  true: the end is round about the hole; default false
//	material *             a name of package metal
//	along                  pair: direction from the hole to the part's body; default: every force pulls at the free end
//
// # [[joint]] of kind bearing
//
// Loads: force, axial, moment, swing, cycles. From the linkage: at *, link *, against,
// share; link is then that of the shaft.
//
//	size                   of the built-in table, such as "6902"; without it bore, outer_diameter and width
//	type                   "deep groove" or "angular contact"; default: the size's, or deep groove
//	bore                   mm
//	outer_diameter         mm
//	width                  mm
//	balls                  in a row
//	ball_diameter          mm
//	pitch_diameter         mm   default: mean of bore and outer_diameter
//	contact_angle          deg  of angular contact
//	rows                   1 or 2
//	full_complement        true: no cage; default false
//	filling_slot           true or false (default)
//	dynamic_rating         N    C of one bearing, as the catalogue has it
//	static_rating          N    C0 of one bearing
//	rating_factor          f0
//	span                   mm   between two bearings' middles; default: one bearing
//	offset                 mm   of the force from the middle, towards +z
//	arrangement            "back to back" or "face to face"
//	locating               1 or 2: the bearing that takes the axial load
//	preload                N
//	static_factor          default 2
//	reliability            percent; default 90
//	life_factor            lubrication and dirt; default 1
//	chamfer                mm   of the rings
//	shaft_fillet           mm   at the shoulder
//
// # [[joint]] of kind press_fit
//
// Loads: torque, axial. From the linkage: at *, link *, through *, share. A fit that
// carries nothing has torque = 0.
//
//	diameter *             mm   nominal, of the joint
//	length *               mm   joined
//	hole *                 tolerance class of the outer part, such as "N7", or "bearing": an inner ring's bore
//	shaft *                tolerance class of the inner part, such as "p6", or "bearing": an outer ring
//	outer_diameter         mm   of the outer part, the smallest where it is not round; needed but with ring "inner"
//	largest_outer_diameter mm   default: outer_diameter
//	bore                   mm   of the inner part; default 0, solid; with ring "outer" its raceway
//	hub_material *         a name of package metal, of the outer part
//	shaft_material *       of the inner part
//	hub_rz                 roughness in µm; default 0, smooth
//	shaft_rz
//	friction               default 0.12
//	temperatures           [°C]; default -20, 20, 60
//	ring                   "outer" or "inner": the part that is a bearing's ring
//	raceway                mm   of that ring
//	clearance              [least, largest] mm, radial, of the bearing before the fit
//
// # [[joint]] of kind bushing
//
// Loads: force, axial, moment, swing, cycles, frequency. From the linkage: at *, link *,
// against, share.
//
//	bore *                 mm
//	length *               mm   of one bushing
//	flange_diameter        mm   default: no flange
//	liner                  of the built-in table, such as "PTFE on steel"; without it the next four
//	static_pressure        MPa
//	swinging_pressure      MPa
//	pressure_speed         MPa·m/s
//	wear_rate              mm3/(N m)
//	wear_allowed           mm   default 0.05
//	span                   mm   between two bushings' middles; default: one bushing
//	offset                 mm   of the force from the middle, towards +z
//
// # [[joint]] of kind member
//
// Loads: axial, moment, torque. From the linkage: link *, ends, share.
//
//	shape *                "round" or "rectangle"
//	diameter               mm   of round
//	height                 mm   of rectangle, in the plane of the linkage
//	width                  mm   of rectangle, across it
//	corner_radius          mm   of rectangle; default 0
//	wall                   mm   default: solid
//	end_wall               mm   of a butted round tube; default: wall
//	end_length             mm   over which it stands at each end
//	length                 mm   pin to pin; default: the distance of the ends in the linkage
//	in_plane_factor        default 1, hinged
//	out_of_plane_factor    default 1; 0.7 where bolted clevises hold the ends
//	hole                   mm   at the pins; default 0
//	offset                 mm   of the centroid from the line of the pins; default 0
//	bow                    mm   default: a thousandth of the length
//	material               a name of package material; without it yield and modulus
//	yield                  MPa
//	modulus                MPa
//	welded                 true or false (default)
//	heat_affected_yield    MPa  default: on record for the material
//	application_factor     default 1
//
// # [[joint]] of kind key: what carries a torque by its shape
//
// Loads: torque, cycles, reversed. From the linkage: at *, link *, through *, share.
//
//	type *                 "parallel", "cross pin", "square" or "taper square"
//	diameter               mm   of the shaft; not of a square
//	hub_diameter *         mm   outside
//	length                 mm   engaged; not of a cross pin
//	shaft_material *       a name of package metal
//	hub_material *
//	key_material           of the key or pin; not of a square
//	width                  mm   of a parallel key; default: DIN 6885-1, for the next two too
//	height                 mm
//	shaft_depth            mm   of its slot in the shaft
//	pressure               MPa  that its flanks may have; default 100 in steel, 60 in aluminium
//	pin_diameter           mm   of a cross pin
//	side                   mm   of a square, across the flats; of a taper in the middle of its length
//	half_angle             deg  of a taper, half of the angle between opposite faces
//	press_on               N    of a taper: least preload of the bolt that seats it
//	friction               of a taper; default 0.15
//
// # [[joint]] of kind fatigue: one place of a part
//
// Loads: stress, stress_low, cycles. From the linkage: at *, link *, share,
// stress_per_force *; the stress goes from 0 to that of the load case.
//
//	material               a name of package material; without it family, yield and ultimate
//	family                 "steel", "aluminium" or "titanium"
//	yield                  MPa
//	ultimate               MPa
//	endurance              MPa  amplitude of a polished bar, fully reversed
//	endurance_cycles
//	loading                "bending" (default), "axial" or "torsion"
//	surface                "polished", "ground", "machined" (default), "hot rolled", "forged", "anodised" or "hard anodised"
//	surface_factor         ka
//	diameter               mm   of the place
//	size_factor            kb
//	reliability            percent; default 90
//	stress_concentration   Kt; default 1, or that of the shoulder
//	large_diameter         mm   beside a shoulder
//	notch_radius           mm
//	notch_sensitivity      q
//	mean_stress            "goodman" (default), "gerber", "morrow", "swt" or "walker"
//	true_strength          MPa  of Morrow
//	walker_exponent        of Walker
//	category               MPa  range of a weld at 2e6 cycles; makes the place a weld
//	slope                  of a weld; default 3
//
// # [variant.NAME]: tables laid over those of the file
//
// Tables are merged key by key, values and lists replaced, lists of tables as a
// whole. A point, link or key that the file lacks is refused; a whole optional
// table may be added.
//
// # Diagnostics
//
// Every mistake of a file is told in one go, each once, those of variants too.
// Paths are those of the file: links.rocker[1], load_case[0].force,
// variant.low.points.main. What only follows from another mistake is not told.
//
//	too-large           more than 4 MiB
//	empty-file          nothing but blanks
//	not-utf8            a byte that does not belong to UTF-8
//	too-deep            nested past 100 levels
//	syntax              not TOML
//	duplicate-key       a key or table given twice
//	unknown-key         a key that its table does not have
//	unknown-table       a table that there is not
//	missing-key         a key that its table needs
//	missing-table       a table that the linkage, a load case or a joint needs
//	missing-value       a value that another one needs
//	wrong-type          a value of another type than its key takes
//	wrong-length        a list of another length
//	bad-quantity        a text that is no number with a unit
//	wrong-unit          a unit that is not known, or of another kind
//	bad-gear            a gear that is not written as one
//	not-finite          nan, inf, or past the largest number
//	out-of-range        a number that cannot be
//	unknown-value       a word that its key does not know
//	empty-name          a name without a letter
//	control-character   a name that does not print as it is
//	duplicate-name      a name given to two things, or twice in one list
//	reserved-name       a name that stands for something else
//	not-in-base         a variant that changes what the file has not
//	no-such-variant     a variant that the file has not
//	no-such-point       a point that there is not
//	no-such-link        a link that there is not
//	no-such-gear        a gear that the sprockets do not give
//	no-such-figure      a requirement of a figure that there is not
//	missing-frame       no link is the fixed one
//	short-link          a link of fewer than two points
//	same-place          two points of one link in one place
//	loose-point         a point that no link names
//	not-listed          a link that does not name the point it should carry
//	same-link           a guide on the link that slides on it
//	slider-pinned       a sliding point that is pinned to its guide's link
//	zero-length         a shock, a guide or the arm of a tie from a point to itself
//	rigid-shock         a shock within one link
//	too-long            a stroke, yoke or bumper longer than what holds it
//	axle-on-frame       a rear axle that does not move
//	axle-behind         a front axle that is not ahead of the rear one
//	fixed-carrier       a caliper on the frame
//	below-ground        a centre of mass below the ground
//	one-spring          not exactly one of coil and air
//	empty-chamber       an air chamber that the stroke would empty
//	one-drive           chain tension and pedal force at once
//	one-load            loads of a joint's own and a tie at once
//	does-not-fit        a value of a material that another excludes
//	no-bound            a requirement without min and max
//	mobility            a linkage that has not one degree of freedom
//	dead-point          a linkage that cannot go on
//	failed              anything else
//
// What joints find wrong carries codes of package check.
package design
