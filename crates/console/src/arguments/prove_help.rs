//! Long help of the commands that prove, the forms of their output in it.

pub(crate) const FORCES_ABOUT: &str = "\
Write every force of one corner under a force on its wheel as CSV, one row for each pose.

Quasi-static equilibrium of the upright and of both arms, parts rigid and weightless, joints
without friction; the build needs the corner's spring unit, which carries the wheel. The force acts
on the upright: a force at the contact point is that of a braked wheel, one at the hub that of a
wheel that rolls.

Columns, forces in N in vehicle axes (x forward, y left, z up), lengths in the unit asked for,
moments in N times that unit; cells of a corner without a rack are empty:
  travel, rack                   the pose
  tie_rod_tension                pulled positive
  spring_force                   pressed positive
  upper_ball_joint_x, _y, _z     arm on upright
  lower_ball_joint_x, _y, _z     arm on upright
  upper_front_pivot_x, _y, _z    chassis on arm
  upper_rear_pivot_x, _y, _z     chassis on arm
  lower_front_pivot_x, _y, _z    chassis on arm
  lower_rear_pivot_x, _y, _z     chassis on arm
  rack_force                     this corner's rod on the rack along it, to the left positive
  rack_end_bending               moment at the rack face, without sign
  rack_end_torsion               moment about the rack's axis there, right-handed outboard
  rack_end_axial                 along the rack there, pulled out positive
  rack_end_shear                 across the rack there, without sign
The two pivots of an arm are given half each of the force along their common axis: statics can't
tell its share.

The rows go rack position by rack position. Poses out of reach are left out, and one line on
standard error says how many; when not one pose is reached the command ends with 2.";

pub(crate) const PROVE_ABOUT: &str = "\
Check every part that the build describes under every load case at its worst pose.

A row says which value was compared with which limit, and where the limit comes from. The worst
pose is searched over travel and lock, for each check by itself. No row says that a part is good
enough: loads are quasi-static; impact speed, fatigue life, weld quality and residual stress are
not in it. What was left out, and what was taken where the build says nothing, is listed.

Ends with 0, with 1 if any row is a danger, with 2 if the build can't be used.

With --json, one object (null where there is no such figure; lengths in the build's unit):
  title, unit (mm, inch)
  rows       list, worst first, of
    axle, side (null when it holds for both alike), part, check, load_case
    travel, rack   the pose where it is worst; the left wheel's where both sides are alike
    value, limit   the number and what it was compared with
    unit       of both: MPa, N, mm, inch, deg; empty for a share
    bound      at_most, at_least: which side of the limit is wanted
    factor     limit over value, or value over limit where more is wanted
    wanted     the factor that is wanted
    grade      danger, caution; null where the wanted factor is kept
    source     of the limit; method: of the formula
    reason     why it matters
    remark     what was assumed, or at which adjustment; null where figures say all
    remedies   list of { text, value (the factor then), applicable }
    key        what an acceptance in the build file goes by
    accepted   the builder's reason; worse_since_accepted
  steering   { turns, parked_hand_force_n, parked_pinion_torque_n_mm, kick_back_n,
             kick_back_pinion_torque_n_mm, over_centre_deg }; null without a rack
  notes      list of { kind (left_out, taken), about, text }
  not_checked, cautions   lists of text that stand beside every proof";
