//! Terms of laying out and tuning.

use trammel_analysis::Quantity as Q;

use super::terms;

terms! { GEOMETRY:
    TOE = "Toe", Q::Toe.meaning(), "degrees, each wheel", "A little static toe is set by the rod; what matters is that it stays.";
    TOE_CHANGE = "Toe change", Q::ToeChange.meaning(), "degrees", "Nearer to 0 is better: the wheel then keeps its direction over bumps. It is also called bump steer.";
    LARGEST_TOE_CHANGE = "Largest toe change", "The largest toe change, either way, over the whole travel with the rack at centre.", "degrees, without a sign", "Smaller is better.";
    TOE_CHANGE_AT_LOCK = "Toe change at lock", "The largest toe change over the travel with the rack at either lock.", "degrees, without a sign", "Smaller is better, once the toe change at centre is small.";
    RMS_TOE_CHANGE = "RMS toe change", "Root of the mean square of the toe change over the travel: one figure for the whole curve.", "degrees, without a sign", "Smaller is better.";
    SLOPE = "Slope of the toe curve", "Toe change for a little travel at the design height. Positive: toeing in as the wheel rises. A height error of a tie-rod joint shows here.", "degrees per inch, or per 25 mm", "Nearer to 0 is better.";
    BOWL = "Bowl of the toe curve", "What is left at equal bump and droop when the slope is taken out. Positive: toeing in both ways. A length error of the tie rod shows here.", "degrees", "Nearer to 0 is better.";
    CAMBER = "Camber", Q::Camber.meaning(), "degrees", "A lean inward that grows a little as the wheel rises keeps the tyre flat in a turn; there is no best figure for all.";
    CASTOR = "Castor", Q::Castor.meaning(), "degrees", "More makes the steering return by itself, and heavier.";
    INCLINATION = "Steering-axis inclination", Q::SteeringAxisInclination.meaning(), "degrees", "Also called kingpin inclination. Given by the upright; with the wheel's offset it sets the scrub radius.";
    SCRUB_RADIUS = "Scrub radius", Q::ScrubRadius.meaning(), "inch or mm", "Nearer to 0 kicks less at the steering wheel.";
    TRAIL = "Mechanical trail", Q::MechanicalTrail.meaning(), "inch or mm", "More makes the steering return by itself, and heavier.";
    TRACK = "Track", "Distance between the contact points of both wheels of an axle.", "inch or mm", "";
    HALF_TRACK = "Half-track", "Distance from the centre plane to the tyre's contact point.", "inch or mm", "";
    HALF_TRACK_CHANGE = "Half-track change", Q::HalfTrackChange.meaning(), "inch or mm", "Nearer to 0 scuffs the tyres less.";
    WHEEL_TRAVEL = "Wheel travel", "Rise of the wheel centre against the frame. Up, in bump, is positive; down, in droop, negative; 0 is the design height.", "inch or mm", "What is wanted, or what the spring unit's lengths allow.";
    BUMP = "Bump", "Wheel travel upwards from the design height, towards the frame.", "inch or mm", "";
    DROOP = "Droop", "Wheel travel downwards from the design height, as when the wheel hangs. Also called rebound.", "inch or mm", "";
    RIDE_HEIGHT = "Ride height", "Height of the frame above the ground at rest, with driver. Wheel travel is counted from there.", "inch or mm", "Higher clears more and makes the tie rods steeper.";
    ROLL_CENTRE = "Roll centre", Q::RollCentreHeight.meaning(), "inch or mm above the ground", "One that stays near its place over the travel is steadier; there is no best height for all.";
    ROLL_CENTRE_MIGRATION = "Roll-centre migration", "Highest less lowest roll centre over the travel.", "inch or mm", "Smaller is steadier.";
    INSTANT_CENTRE = "Instant centre", "The point about which the upright turns at this instant, seen from the front. The two arms' lines meet there.", "", "A tie rod that aims at it changes toe least.";
    SWING_ARM = "Swing-arm length", Q::SwingArmLength.meaning(), "inch or mm", "A longer one changes camber less.";
    CAMBER_GAIN = "Camber gain", "Camber change for so much travel at the design height. Negative: the top leans in as the wheel rises.", "degrees per inch, or per 25 mm", "";
    TIE_ROD_ANGLE = "Tie-rod angle", Q::TieRodAngle.meaning(), "degrees", "Smaller is better.";
    JOINT_SWIVEL = "Joint swivel", "How far a ball joint or rod end is tilted from its middle, at the worst of travel and lock. At its limit it binds and bends its shank.", "degrees", "Smaller is better; it must stay under what the joint can do.";
    BOLT_TURN = "Turn about the bolt", "How far the rod turns about its bolt from one end of its motion to the other. That costs nothing.", "degrees", "";
    MOTION_RATIO = "Motion ratio", Q::MotionRatio.meaning(), "a plain number", "Less makes the wheel softer on the same spring.";
    SPRING_LENGTH = "Spring length", Q::SpringLength.meaning(), "inch or mm", "";
    STEER_ANGLE = "Steer angle", Q::SteerAngle.meaning(), "degrees", "";
    ACKERMANN = "Ackermann", Q::Ackermann.meaning(), "per cent", "Nearer to 100 scuffs less in a slow tight turn.";
    TURNING_CIRCLE = "Turning circle", "Diameter described by the outer front wheel's contact point at full lock, rolling without slip: kerb to kerb.", "feet and inches, or m", "Smaller turns tighter.";
    LOCK_TO_LOCK = "Lock to lock", "Turns of the steering wheel from stop to stop, from the rack's travel and its travel for one turn.", "turns", "Fewer is quicker and heavier.";
    RACK_TRAVEL = "Rack travel", "How far the rack has moved along its axis. To the left is positive.", "inch or mm", "";
    BEST_SPOT = "Best spot", "The place of the tie rod's joint where the chosen score of the toe curve is least.", "", "Whole steps of the shop lie near it; the hint tells what they cost.";
    HARDPOINT = "Hardpoint", "A point of the suspension that sets how it moves: a pivot, a ball joint, a tie-rod joint, the wheel centre, a spring mount.", "inch or mm: x forward, y left, z up", "";
    UPRIGHT = "Upright", "The body that carries the wheel, both ball joints and the outer tie-rod joint. Also called spindle or knuckle.", "", "";
    BUILD_ERROR = "Build error", "How far points land from where they were drawn, as one standard deviation of each coordinate.", "inch or mm", "Smaller keeps more builds within the limit; the ranking tells which dimensions deserve a jig.";
}

/// The term of a quantity of a pose.
#[must_use]
pub fn of(quantity: Q) -> super::Term {
    match quantity {
        Q::ToeChange => TOE_CHANGE,
        Q::Toe => TOE,
        Q::Camber => CAMBER,
        Q::Castor => CASTOR,
        Q::SteeringAxisInclination => INCLINATION,
        Q::ScrubRadius => SCRUB_RADIUS,
        Q::MechanicalTrail => TRAIL,
        Q::HalfTrackChange => HALF_TRACK_CHANGE,
        Q::RollCentreHeight => ROLL_CENTRE,
        Q::SwingArmLength => SWING_ARM,
        Q::TieRodAngle => TIE_ROD_ANGLE,
        Q::MotionRatio => MOTION_RATIO,
        Q::SpringLength => SPRING_LENGTH,
        Q::SteerAngle => STEER_ANGLE,
        Q::Ackermann => ACKERMANN,
    }
}
