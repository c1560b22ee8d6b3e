//! Long help of the commands that tune, the forms of their output in it.

pub(crate) const TUNE_ABOUT: &str = "\
Move joints until the wheel keeps its toe, and say what that took.

Without --move and --limit: the best spot of --point (the inner tie-rod joint), going --ways (up,
down, in and out in the front view), the tie rod's length reset so that static toe stays. The rack
goes with its joint in every direction but its own. Where that spot lies in a keep-out of the
build, the best one clear of them is taken. Where both joints move, or one goes fore and aft too,
many places are equally good: all within 0.001 degrees of the least (for the slope, in 25 mm)
count as equal, and the one with the least movement is taken.

With --move, --limit or --weigh: a global search over what is named (without --move the inner
joint's y and z), then an exact finish. What may move is a coordinate, or one of
  rack_height, rack_width (each side), rack_set_back         the rack with its joints
  upper_pivots_height, upper_pivots_width, lower_pivots_...  both pivots of an arm
counted up, outboard and forward. FROM..TO need not be alike either way; @STEP rounds to steps of
its own instead of --step. Figures that --limit can hold, angles in degrees, lengths in the build's
unit:
  toe_change, toe_change_at_lock    largest over the travel
  camber_gain                       change per unit of length at ride height, in bump
  roll_centre_height, roll_centre_migration, scrub_radius, castor, turning_circle
  ackermann                         per cent at lock
  tie_rod_angle                     largest in the front view, rack at centre
  rack_end_factor                   on a coarse grid of poses; `check` looks closer

Locked coordinates stay where they are; without --move they are left out, with it they are refused.
Lengths are in the build's unit, or with a unit of their own such as '20 mm'.

Ends with 0, with 1 if a limit is not met or the place lies in a keep-out (the build is written all
the same), with 2 if the input can't be used.

With --json, one object (lengths in the build's unit; null where there is no such figure):
  title, unit (mm, inch), axle, side, method (best_spot, clear_spot, search), seed
  moves      list of { coordinate, from, to, by, with_rack (moved because the rack goes along) }
  tie_rod_length   { from, to }
  before, after    { largest_deg, rms_deg, slope_deg (per unit of length) }: over the travel, rack
             at centre; after is that of the build as written
  exact      the same for the place before it was rounded to steps
  least      the same for the least there is within reach, where a nearer place was taken
  figures    list of { name, before, exact (before rounding), after }; of a search only
  limits     list of { name, from, to, value, met }
  others     other good solutions of a search, list of { worth, largest_deg, in_steps
             { worth, largest_deg }, values }
  keep_out   name of the keep-out that the place lies in
  rule       the joint by the two-line rule, { joint, y, z, off_by }
  out        the file written";

pub(crate) const MAP_ABOUT: &str = "\
Score every place of a tie-rod joint over a rectangle, the tie rod's length reset at each.

The picture shows bands of equal toe change with contour lines in degrees on logarithmic levels,
the joint as it is (a cross), the lowest place (a ring), places that can't be built or can't reach
the travel (hatched), and the build's keep-outs (outlined).

Columns of the table: x, y, z (the joint's place, vehicle axes, the build's unit), largest_deg,
rms_deg, slope_deg (toe-in in bump positive, per unit of length), state (scored, not_built,
out_of_reach), keep_out (name of the first that holds the place, or nothing). Rows go from low to
high, each from the first column to the last.";

pub(crate) const SCATTER_ABOUT: &str = "\
Make up many builds, each with every point off by as much as the shop is, and sweep each.

How exactly points are made is in the build's `tolerances`; without it every point is taken as
marked out by tape (a standard deviation of 1/32 in for each coordinate: common practice, no
source). Static toe is put right in each by the tie rod. The wheel centre counts only where the
build names it.

With --json, one object (angles in degrees, lengths in the build's unit):
  title, unit, axle, side, builds, seed, limit_deg
  swept, failed      builds that reach the whole travel, and those that don't
  within_limit       share of all builds whose largest toe change is at most the limit, 0 to 1
  largest_deg        { p5, p25, p50, p75, p95 } of the builds' largest toe change
  band       list over travel of { travel, drawn_deg, mean_deg, deviation_deg, p5, p25, p50, p75, p95 }
  ranking    list, most first, of { coordinate, deviation, share (first-order part of the variance),
             deg_per_length (root mean square over the travel) }
  explained          part of the variance that straight lines explain, 0 to 1";

pub(crate) const LIFT_ABOUT: &str = "\
Raise the frame on the same arms, uprights and rack, and show what that does.

All points are described anew with the origin on the new ground; static toe is put back by the tie
rods. The centre of gravity is raised with the frame. Locks do not hold a lift: every joint keeps
its place on its part.

The table has a row for each eighth of the way, of the corner that --axle and --side name: the left
front one by itself. A lift changes the toe curve little and the rack
end's load much, the trade says: the table
and the sentence below it say whether that holds here.

With --json, one object (angles in degrees, lengths in the build's unit):
  title, unit, axle, side, by, camber (reset, as_it_comes), stops (kept, move_along)
  rows       list of { by, tie_rod_angle_deg, inner_swivel_deg, outer_swivel_deg, toe_change_deg,
             rack_end_factor, camber_deg (as it comes), half_track, fault (why there is no row) }
             for the corner of --axle and --side
  verdict    the first row held against the last, in words
  out        the file written";
