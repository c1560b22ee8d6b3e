//! What is taken for the shop's figures and for parts that a build leaves out, mm. Each says where it comes from.

use trammel_fabrication::nest::StockPlate;

/// Bolt of arm pivots and spring mounts (common practice, no source: 3/8 in fine thread is usual).
pub const BOLT: &str = "3/8-24";
/// Thread of a tie rod (common practice, no source).
pub const ROD_THREAD: &str = "1/2-20";
/// Bolts of the rack's feet (common practice, no source).
pub const MOUNT_BOLT: &str = "5/16-24";
/// Thickness of tabs (3/16 in flat bar: common practice, no source).
pub const TAB_THICKNESS: f64 = 4.762_5;
/// Width of tabs (1 1/2 in flat bar: common practice, no source).
pub const TAB_WIDTH: f64 = 38.1;
/// Width of tabs for bolts thicker than [`WIDE_FROM`] (1 3/4 in flat bar: so that a half-inch bolt has its edge distance).
pub const WIDE_TAB_WIDTH: f64 = 44.45;
/// Thread above which a tab is taken wider.
pub const WIDE_FROM: f64 = 12.0;
/// From the tube's face to the hole where neither bracket nor tube is given (1 1/2 in: a judgement, no source).
pub const TAB_HEIGHT: f64 = 38.1;
/// Width of a ball or bush over its bolt where none is given: AS81935/1 has 1.25 to 1.33.
pub const BALL_PER_BOLT: f64 = 1.33;
/// Thickness of a washer under head or nut (common practice, no source).
pub const WASHER: f64 = 1.6;
/// Diameter of the rack bar (1 in: common practice, no source).
pub const RACK_BAR: f64 = 25.4;
/// Ball centre to the end of the shank over the thread (AS81935/1-08 has 2.44 in for 1/2 in, from memory; the shorter common ones 4.25 threads).
pub const SHANK_PER_THREAD: f64 = 4.25;
/// Thread of a rod end in its adapter over its diameter (common practice, no source: one and a half).
pub const ENGAGED_PER_THREAD: f64 = 1.5;
/// Adjustment of each end of a tie rod (1/4 in: common practice, no source).
pub const ROD_ADJUSTMENT: f64 = 6.35;
/// What an adapter adds to the tube (1/2 in: common practice, no source).
pub const ADAPTER: f64 = 12.7;
/// Thread that has to be left in an adapter, in diameters (handbook practice in steel: one).
pub const LEAST_DIAMETERS: f64 = 1.0;
/// Tubes of arms and rods: outer diameter and wall (1 in and 7/8 in by 0.083 in: common practice, no source).
pub const ARM_TUBE: [f64; 2] = [25.4, 2.108_2];
/// The same of a tie rod.
pub const ROD_TUBE: [f64; 2] = [22.225, 2.108_2];
/// Outside diameter of an arm's bush over its tube where none is given, at least (common practice, no source: 1 1/4 in on 1 in).
pub const BUSH_PER_TUBE: f64 = 1.25;
/// Diameter of the round housing of a ball joint that an arm's tubes are welded to (1 1/2 in: a judgement, no source).
pub const HOUSING: f64 = 38.1;
/// Sides and thickness of a rack mount plate, and distances of its holes (a judgement, no source).
pub const MOUNT: [f64; 5] = [107.95, 82.55, 4.762_5, 76.2, 50.8];
/// Corner radius of a mount plate (common practice, no source).
pub const MOUNT_CORNER: f64 = 6.0;
/// Wall of a spacer around its bolt (common practice, no source).
pub const SPACER_WALL: f64 = 3.0;
/// Play of a pair of tabs beyond joint and spacers (none: shims take it up).
pub const PAIR_PLAY: f64 = 0.0;
/// Corner cut off a boxing plate for the weld (common practice, no source).
pub const BOXING_CORNER: f64 = 6.0;
/// Length of bars and tubes as bought (20 ft: common practice, no source).
pub const STOCK_LENGTH: f64 = 6096.0;
/// What a saw cut takes (a band saw with its wander: common practice, no source).
pub const KERF: f64 = 2.0;
/// Cut off a bar's end before anything is measured (common practice, no source).
pub const END_TRIM: f64 = 5.0;
/// Plate that flat parts are nested on (4 ft by 2 ft: common practice, no source).
pub const PLATE: StockPlate = StockPlate {
    width: 1219.2,
    height: 609.6,
    margin: 10.0,
    gap: 8.0,
};
/// Part of the toe limit that one point's error may use up (a judgement, no source: a tenth, since a dozen points share it).
pub const TOE_SHARE: f64 = 0.1;
/// Widest tolerance of a diagonal that is asked for, whatever toe says (a judgement, no source: about 1/8 in).
pub const WIDEST_TOLERANCE: f64 = 3.0;
