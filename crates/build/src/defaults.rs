//! What is taken for figures that a build leaves out. Each says where it comes from.

/// kg in a pound: exact by definition (International yard and pound agreement, 1959).
pub const KILOGRAMS_PER_POUND: f64 = 0.453_592_37;
/// Standard acceleration of free fall, m/s^2: exact by definition (3rd CGPM, 1901).
pub const STANDARD_GRAVITY_M_S2: f64 = 9.806_65;
/// Newtons in a pound-force: the two above.
pub const NEWTONS_PER_POUND_FORCE: f64 = KILOGRAMS_PER_POUND * STANDARD_GRAVITY_M_S2;

/// Wheel travel each way when neither stops nor spring lengths are given, mm (common practice, no source: light
/// karts have 100 to 150 mm in all).
pub const TRAVEL_EACH_WAY_MM: f64 = 76.2;
/// Rack travel each way, mm (1 1/2 in: common practice, no source).
pub const RACK_TRAVEL_MM: f64 = 38.1;
/// Rack travel for one pinion turn, mm (2 in: common practice, no source; 40 to 80 is usual).
pub const RACK_TRAVEL_PER_TURN_MM: f64 = 50.8;
/// Distance from rack face to the inner tie-rod joint along the rack, mm (1 1/2 in: common practice, no source).
pub const FREE_LENGTH_MM: f64 = 38.1;
/// Rack-end thread (common practice, no source).
pub const THREAD: &str = "1/2-20";
/// Rack-end grade (common practice, no source: SAE J429 grade 5 is the usual least).
pub const GRADE: &str = "grade 5";
/// Wheelbase, mm (common practice, no source).
pub const WHEELBASE_MM: f64 = 1600.0;
/// All-up mass with driver, kg (common practice, no source: about 650 lb of vehicle and a driver of 175 lb).
pub const MASS_KG: f64 = 375.0;
/// Part of the weight on the front axle (common practice, no source).
pub const FRONT_SHARE: f64 = 0.45;
/// Height of the centre of gravity, mm (common practice, no source).
pub const CENTRE_OF_GRAVITY_HEIGHT_MM: f64 = 480.0;

/// Size of the hit in vehicle weights (a judgement, no source: one weight straight back on one wheel).
pub const HIT_WEIGHTS: f64 = 1.0;
/// Direction of the hit: straight back.
pub const HIT_DIRECTION: [f64; 3] = [-1.0, 0.0, 0.0];

/// Toe change that calls for a caution, degrees (common practice, no source: 1/8 in over a 21 in tyre is 0.34).
pub const TOE_CHANGE_LIMIT_DEG: f64 = 0.3;
/// Steepest tie rod at the rack, degrees (common practice, no source).
pub const TIE_ROD_ANGLE_LIMIT_DEG: f64 = 15.0;
/// Swivel of a plain rod end, degrees (a plain rod end takes 12 to 18; the low end is taken).
pub const JOINT_ANGLE_LIMIT_DEG: f64 = 12.0;
/// Wanted factor against yield in the rack end (common practice, no source).
pub const RACK_END_FACTOR: f64 = 2.0;
/// Least angle between tie rod and steering arm before lock-over is near, degrees (common practice, no source).
pub const LOCK_OVER_LIMIT_DEG: f64 = 25.0;

/// Standard deviation of a coordinate of a point drilled through a jig, mm (1/64 in: common practice, no source).
pub const JIG_DRILLED_DEVIATION_MM: f64 = 0.4;
/// The same of a point marked out by tape and square, mm (1/32 in: common practice, no source).
pub const TAPE_DEVIATION_MM: f64 = 0.8;
/// The same of a point held by hand while it is tacked, mm (1/16 in: common practice, no source).
pub const HAND_HELD_DEVIATION_MM: f64 = 1.6;

/// Turns that a rack end is taken to have either way where a build doesn't say (common practice, no source).
pub const RACK_END_TURNS: f64 = 3.0;
/// Washers under the outer joint where a build doesn't say: thickness, mm (1/16 in), how many more, how many fewer (common practice, no
/// source).
pub const WASHERS: (f64, u32, u32) = (1.5875, 3, 0);
/// Shims under the rack where a build doesn't say: thickness, mm (1/32 in), how many more, how many fewer (common practice, no source).
pub const SHIMS: (f64, u32, u32) = (0.79375, 4, 0);
/// Wanted factor against yield, buckling and rupture in parts other than the rack end (common practice, no source).
pub const STRENGTH_FACTOR: f64 = 2.0;
/// Wanted gap between parts that pass each other, mm (about 3/8 in: common practice, no source).
pub const CLEARANCE_MM: f64 = 10.0;
/// Toe that the rack end's bending may cost, degrees (a judgement, no source: a third of the toe change that calls for a caution).
pub const RACK_END_TOE_LIMIT_DEG: f64 = 0.1;
/// Greatest force asked of the driver at the rim of the steering wheel, N (UN R79 for cars, without failure; from memory).
pub const HAND_FORCE_N: f64 = 150.0;
/// Greatest force with which a hit may tear at the rim of the steering wheel, N (UN R79's 300 N with a failed assistance, from memory, taken for want of
/// better: what two hands hold for a moment).
pub const KICK_BACK_N: f64 = 300.0;
/// Diameter of the steering wheel, mm (common practice, no source: 11 to 13 in is usual).
pub const STEERING_WHEEL_DIAMETER_MM: f64 = 300.0;
/// Material of tubes that say none: the weakest drawn tube of the table, to err on the strict side.
pub const TUBE_MATERIAL: &str = "1015 DOM tube, stress relieved";
/// Material of tabs that say none.
pub const PLATE_MATERIAL: &str = "ASTM A36 plate and bar";
/// Grade of bolts and rod-end shanks that say none (common practice, no source: SAE J429 grade 5 is the usual least).
pub const BOLT_GRADE: &str = "grade 5";
/// Tensile class of the electrode, ksi (E70 and ER70 are usual).
pub const ELECTRODE_KSI: f64 = 70.0;
/// Leg of a fillet weld over the thickness of the tab (common practice, no source).
pub const WELD_LEG_SHARE: f64 = 0.75;
/// Room of a bolt in its hole, mm (1/64 in, a close fit; common practice, no source).
pub const HOLE_PLAY_MM: f64 = 0.4;
/// Thickness of a jam nut over its thread (ASME B18.2.2, from memory: 5/16 in for 1/2 in).
pub const JAM_NUT_PER_THREAD: f64 = 0.625;
/// Height of a bolt's head over its thread (ASME B18.2.1, from memory: 5/16 in for 1/2 in).
pub const HEAD_HEIGHT_PER_THREAD: f64 = 0.625;
/// Width of a bolt's head across flats over its thread (ASME B18.2.1, from memory: 3/4 in for 1/2 in, 15/16 in for 5/8 in).
pub const HEAD_WIDTH_PER_THREAD: f64 = 1.5;
/// Diameter of a joint's head over its bolt where none is given (AS81935/1 has 2.0 to 2.7; the usual sizes about 2.67).
pub const JOINT_HEAD_PER_BOLT: f64 = 2.67;
/// How far a rack-end bracket can be wound each way where its turns are not given, mm (1/8 in: a judgement, no source).
pub const RACK_END_ADJUSTMENT_MM: f64 = 3.175;
/// Room between jam nut and rack end that is left when it is wound in, mm (a judgement, no source).
pub const RACK_END_ROOM_MM: f64 = 1.0;
/// Force of a rock across the middle of a tie rod, N (a judgement, no source: about 200 lbf).
pub const SIDE_HIT_N: f64 = 900.0;
/// Diameter of the rim, mm (10 in, usual on donor wheels; common practice, no source).
pub const RIM_DIAMETER_MM: f64 = 254.0;
/// Width of the rim, mm (common practice, no source).
pub const RIM_WIDTH_MM: f64 = 140.0;
/// Thickness of the rim's metal, mm (common practice, no source).
pub const RIM_THICKNESS_MM: f64 = 3.0;
/// Width of the tyre, mm (7 in: common practice, no source).
pub const TYRE_WIDTH_MM: f64 = 178.0;
/// Outer diameter of an unloaded tyre over twice its loaded radius (a judgement, no source).
pub const TYRE_GROWTH: f64 = 1.05;
/// Diameter of the spring unit over its coil, mm (common practice, no source).
pub const SPRING_DIAMETER_MM: f64 = 70.0;
/// Diameter of tubes in clearance checks where no tube is given, mm (1 in for arms, 7/8 in for rods: common practice, no source).
pub const ARM_TUBE_ROOM_MM: f64 = 25.4;
/// The same of a tie rod.
pub const TIE_ROD_ROOM_MM: f64 = 22.2;
