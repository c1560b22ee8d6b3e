//! What was taken where a build says nothing, and what is not in a proof.

use trammel_build::AxleName;

/// Kind of a note.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum NoteKind {
    /// Something was not checked.
    LeftOut,
    /// A figure was taken that the build does not give.
    Taken,
}

/// A note beside the results.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Note {
    /// Kind.
    pub kind: NoteKind,
    /// The part that it is about, such as `tie rod`.
    pub about: String,
    /// One sentence.
    pub text: String,
}

impl Note {
    pub(super) fn left_out(about: impl Into<String>, text: impl Into<String>) -> Self {
        Self {
            kind: NoteKind::LeftOut,
            about: about.into(),
            text: text.into(),
        }
    }

    /// The same with its axle named where it is the rear.
    pub(super) fn of(mut self, axle: AxleName) -> Self {
        if axle == AxleName::Rear && self.about != "vehicle" {
            self.about = format!("rear {}", self.about);
        }
        self
    }

    pub(super) fn taken(about: impl Into<String>, text: impl Into<String>) -> Self {
        Self {
            kind: NoteKind::Taken,
            about: about.into(),
            text: text.into(),
        }
    }
}

/// What no row knows, to be shown with every proof.
#[must_use]
pub fn not_in_it() -> &'static [&'static str] {
    &[
        "Loads are quasi-static multiples of the weight; how fast a hit is, and what tyre and spring take of it, is not in them.",
        "Fatigue life is not worked out; one caution compares the rack end's thread with its endurance limit.",
        "Weld quality, residual stress and softening from heat, corrosion, wear and bent parts are not in it.",
        "The frame, the upright, hub, spindle and brake, the pinion and the column are not checked.",
        "The two pivots of an arm are taken to share the force along their common axis by halves; statics can't tell.",
        "A jam nut's clamping, and the support of a nut tight against the rack face, are not counted.",
    ]
}

/// Cautions that stand beside every proof and on every sheet.
pub const USUAL_CAUTIONS: [&str; 7] = [
    "Steering failure kills. A factor here says which limit was compared with which load, nothing more.",
    "Never weld or heat hardened bolts, rod ends or rack bars.",
    "Double shear first; where a rod end hangs on one tab, put a large washer outside it.",
    "Positive stops on frame or upright, set before any joint binds or steering arm and tie rod come into line.",
    "Lock every fastener, and see thread past every nut.",
    "Bent steering and suspension parts are replaced, never straightened.",
    "Have the finished vehicle inspected by a qualified person; local codes and the rules of your series go before this sheet.",
];
