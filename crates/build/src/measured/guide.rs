//! What to measure on a part, and from where to where: the words of the form and of the printed sheet.

/// A figure of a part.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Measure {
    /// What it is called.
    pub what: &'static str,
    /// From where to where.
    pub how: &'static str,
}

const fn measure(what: &'static str, how: &'static str) -> Measure {
    Measure { what, how }
}

/// Of a spindle, in the order of [`super::SpindlePart`] without the way its arm points.
pub const SPINDLE: [Measure; 7] = [
    measure(
        "Ball-joint spacing",
        "From the centre of the lower ball joint to that of the upper one: edge to edge of both tapers or balls on the same side.",
    ),
    measure(
        "Inclination",
        "Between the line through both ball joints and the wheel's plane, seen from the front; top leaning inboard is positive.",
    ),
    measure(
        "Spindle height",
        "Up the steering axis from the lower ball joint's centre to where the spindle's line crosses it.",
    ),
    measure(
        "Out to the wheel",
        "From there out along the spindle to the wheel's centre plane: half way between the rim's flanges.",
    ),
    measure(
        "Arm length",
        "From the steering axis to the centre of the steering arm's hole, fore and aft, square to the axis.",
    ),
    measure(
        "Arm height",
        "Up the steering axis from the lower ball joint's centre to the ball centre of the joint in that hole.",
    ),
    measure(
        "Arm outboard",
        "How far that hole is outboard of the steering axis; inboard is negative.",
    ),
];

/// Of a rack, in the order of [`super::RackPart`] without its thread.
pub const RACK: [Measure; 4] = [
    measure(
        "Joint to joint",
        "Between the ball centres of the inner tie-rod joints, rack at its centre; not between bolt heads.",
    ),
    measure(
        "Travel each way",
        "From the centre to a stop: half the way from stop to stop.",
    ),
    measure(
        "Travel a turn",
        "Travel of the bar for one turn of the pinion; take three turns and a third of it.",
    ),
    measure(
        "Hard teeth to",
        "From the centre to where the hardened teeth end, found with a file; nothing is cut, drilled or welded inboard of it.",
    ),
];

/// Of a spring unit, in the order of [`super::SpringPart`].
pub const SPRING: [Measure; 3] = [
    measure("Open", "Between the centres of its eyes, fully extended."),
    measure(
        "Closed",
        "Between the centres of its eyes, on the bump stop.",
    ),
    measure(
        "Rate",
        "Of the spring: as it is marked, or by a scale: load for the second inch less load for the first.",
    ),
];

/// Of a joint, in the order of [`super::JointPart`].
pub const JOINT: [Measure; 3] = [
    measure(
        "Ball width",
        "Across the ball's flats, where the bolt goes through.",
    ),
    measure(
        "Swivel",
        "Either way from square, before the body meets the bolt or tab.",
    ),
    measure(
        "Rating",
        "Radial rating of its maker's sheet; no reading gives it. Without the maker's sheet leave it empty.",
    ),
];
