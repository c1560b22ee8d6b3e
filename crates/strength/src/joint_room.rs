//! Room at a rod end: its body between the ears or before the washer, its jam nut before the ears, and what a bracket on a rack end has round it.
//!
//! - **Body**: a disc as thick as the body and as wide as the head. Swivelled by an angle t it reaches `W/2 cos t + D/2 sin t` from the ball's middle along
//!   the bolt; the ear or washer stands at half the ball's width and the spacer. A head that is rounded off has more room than that.
//! - **Jam nut**: with the rod end screwed in as far as its adjustment goes, the nut's near face stands at `length - engagement - adjustment - nut` from the
//!   ball's centre. The ears, the bolt's head and the joint's own head reach to the largest of their radii.
//! - **Bracket on the rack end**: its base is held on the rack-end bolt, whose head lies inside between the ears; the jam nut sits between base and rack face. The joint's
//!   body is the disc of above, which leans with the rod; the bolt's head is a plane across the rack. The head goes with the bracket, so its gap is the same over
//!   the whole adjustment; the nut has least room with the bracket wound fully in, whether it is tightened against the rack's face or against the base.

use nalgebra::{Unit, Vector3};

use crate::number::{BadNumber, not_negative, positive};
use crate::source::{Limit, Source, Standing};

/// How the room is found.
pub const ROOM: Source = Source {
    document: "joint body as a disc, ear or washer as a plane at the ball's face",
    clause: "",
    standing: Standing::CommonPractice,
};
/// How the room on a rack end is found.
pub const END_ROOM: Source = Source {
    document: "joint body as a disc that leans with the rod, bolt head as a plane across the rack, jam nut as a plate on its line",
    clause: "",
    standing: Standing::CommonPractice,
};
/// How the height of a bracket on a rack end is held against its room.
pub const STAND_OFF: Source = Source {
    document: "rack face to joint, less jam nut, adjustment, room behind it and base",
    clause: "",
    standing: Standing::CommonPractice,
};
/// How far a bracket's height may be from what its rack end leaves for it, mm (1/16 in).
pub const HEIGHT_AGREES: Limit = Limit {
    value: 1.6,
    unit: "mm",
    source: Source::COMMON_PRACTICE,
};
/// Least room wanted, mm (1/32 in).
pub const LEAST_ROOM: Limit = Limit {
    value: 0.8,
    unit: "mm",
    source: Source::COMMON_PRACTICE,
};

/// A joint's body on its ball, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BodyRoom {
    half_room: f64,
    half_body: f64,
    head_radius: f64,
}

impl BodyRoom {
    /// Widths of ball and body along the bolt, diameter of the head, spacer on each side of the ball.
    ///
    /// # Errors
    /// A length that is not finite and above zero; a spacer below zero.
    pub fn new(
        ball_width: f64,
        body_width: f64,
        head_diameter: f64,
        spacer: f64,
    ) -> Result<Self, BadNumber> {
        positive("the ball's width", ball_width)?;
        positive("the body's width", body_width)?;
        positive("the head's diameter", head_diameter)?;
        not_negative("the spacer beside the ball", spacer)?;
        Ok(Self {
            half_room: ball_width / 2.0 + spacer,
            half_body: body_width / 2.0,
            head_radius: head_diameter / 2.0,
        })
    }

    /// Gap to the nearer ear or washer with the joint swivelled by this angle, rad; negative when they meet.
    #[must_use]
    pub fn gap(&self, swivel: f64) -> f64 {
        let (sin, cos) = swivel.abs().sin_cos();
        self.half_room - (self.half_body * cos + self.head_radius * sin)
    }
}

/// A rod end screwed into its adapter, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NutRoom {
    /// From the ball's centre to the end of the shank.
    pub length: f64,
    /// Thread in the adapter at the middle of the adjustment.
    pub engagement: f64,
    /// How far it goes in or out from there.
    pub adjustment: f64,
    /// Thickness of the jam nut.
    pub jam_nut: f64,
    /// How far ears, bolt head and joint head reach from the ball's centre towards the nut.
    pub obstacle: f64,
}

impl NutRoom {
    /// Gap before the jam nut with the rod end screwed in as far as it goes.
    ///
    /// # Errors
    /// A length that is not finite or below zero.
    pub fn gap(&self) -> Result<f64, BadNumber> {
        let length = positive("the rod end's length", self.length)?;
        let used = not_negative("the thread engaged", self.engagement)?
            + not_negative("the adjustment", self.adjustment)?
            + not_negative("the jam nut's thickness", self.jam_nut)?;
        Ok(length - used - not_negative("the ear's reach", self.obstacle)?)
    }
}

/// A bracket on a rack end, along the rack, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EndBracket {
    /// From the rack's face to the joint's centre.
    pub free_length: f64,
    /// From the inside face of the base to the joint's centre.
    pub height: f64,
    /// Thickness of the base.
    pub thickness: f64,
    /// Height of the rack-end bolt's head.
    pub bolt_head: f64,
    /// Thickness of the jam nut.
    pub jam_nut: f64,
    /// How far the bracket can be wound in from the middle of its adjustment.
    pub wound_in: f64,
    /// Room that the nut is to keep then.
    pub nut_room: f64,
    /// Diameter of the joint's head.
    pub head_diameter: f64,
    /// Width of the joint's body along its bolt; as thick as its head is wide where it is not known.
    pub body_width: Option<f64>,
}

/// A checked bracket on a rack end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EndRoom {
    spec: EndBracket,
    inward: Unit<Vector3<f64>>,
}

impl EndRoom {
    /// Of a bracket on a rack that goes outboard in this direction, any length.
    ///
    /// # Errors
    /// A length that is not finite, or below zero; a thickness or diameter of nought; a direction without length.
    pub fn new(spec: EndBracket, outboard: Vector3<f64>) -> Result<Self, BadNumber> {
        not_negative("the free length of the rack end", spec.free_length)?;
        positive("the bracket's height", spec.height)?;
        positive("the bracket's thickness", spec.thickness)?;
        positive("the bolt head's height", spec.bolt_head)?;
        positive("the jam nut's thickness", spec.jam_nut)?;
        not_negative("the adjustment", spec.wound_in)?;
        not_negative("the room beside the jam nut", spec.nut_room)?;
        positive("the head's diameter", spec.head_diameter)?;
        if let Some(width) = spec.body_width {
            positive("the body's width", width)?;
        }
        Ok(Self {
            spec,
            inward: -crate::number::direction("the rack axis", outboard)?,
        })
    }

    /// From the bolt's head to the joint's body, with the rod and the joint's bolt in these directions; negative when they meet.
    #[must_use]
    pub fn head_gap(&self, rod: Unit<Vector3<f64>>, bolt: Unit<Vector3<f64>>) -> f64 {
        let radius = self.spec.head_diameter / 2.0;
        let half_body = self.spec.body_width.map_or(radius, |w| w / 2.0);
        // The body's own axis: the bolt's direction, leaned as far as the rod asks.
        let leaned = bolt.into_inner() - rod.into_inner() * bolt.dot(&rod);
        let along = leaned
            .try_normalize(1e-9)
            .map_or(1.0, |axis| axis.dot(&self.inward).abs().min(1.0));
        let reach = radius * (1.0 - along * along).sqrt() + half_body * along;
        self.spec.height - self.spec.bolt_head - reach
    }

    /// Beside the jam nut, with the bracket wound fully in; negative when there is no room for it.
    #[must_use]
    pub fn nut_gap(&self) -> f64 {
        let s = &self.spec;
        s.free_length - s.height - s.thickness - s.jam_nut - s.wound_in
    }

    /// The height that leaves the nut its room.
    #[must_use]
    pub fn height_left(&self) -> f64 {
        self.spec.height + self.nut_gap() - self.spec.nut_room
    }

    /// How far the bracket's height is from that.
    #[must_use]
    pub fn height_off(&self) -> f64 {
        (self.spec.height - self.height_left()).abs()
    }
}

#[cfg(test)]
pub(crate) mod tests {
    use super::*;
    use approx::assert_relative_eq;

    /// By hand: ball 12.7, body 10.566, head 26.035 (AS81935/1-06). Straight: (12.7 - 10.566)/2 = 1.067. Swivelled by 4 degrees: 6.35 - 5.283 cos 4 - 13.0175
    /// sin 4 = 0.1718; a 3 mm spacer adds 3.
    #[test]
    fn body_by_hand() {
        let room = BodyRoom::new(12.7, 10.566, 26.035, 0.0).unwrap();
        assert_relative_eq!(room.gap(0.0), 1.067, epsilon = 1e-12);
        assert_relative_eq!(room.gap(4.0_f64.to_radians()), 0.171_814, epsilon = 1e-5);
        assert_eq!(room.gap(0.1), room.gap(-0.1));
        assert!(room.gap(0.2) < 0.0);
        let spaced = BodyRoom::new(12.7, 10.566, 26.035, 3.0).unwrap();
        assert_relative_eq!(spaced.gap(0.1), room.gap(0.1) + 3.0, epsilon = 1e-12);
        assert!(BodyRoom::new(0.0, 1.0, 1.0, 0.0).is_err());
        assert!(BodyRoom::new(1.0, 1.0, 1.0, -1.0).is_err());
    }

    /// The standard's swivel of a wide rod end is where its body meets the plane of the ball's face, or before: AS81935/1-06 has 8 degrees, its square-edged
    /// disc meets at 4.7. The disc errs on the strict side.
    #[test]
    fn the_disc_errs_on_the_strict_side_of_the_standard() {
        for end in crate::rod_end::ListedRodEnd::all() {
            let Some(limit) = end.misalignment() else {
                continue;
            };
            let room = BodyRoom::new(end.ball_width(), end.body_width(), end.head_diameter(), 0.0)
                .unwrap();
            assert!(room.gap(limit.value) < 0.5, "{end}");
        }
    }

    #[test]
    fn nut_by_hand() {
        let room = NutRoom {
            length: 54.0,
            engagement: 20.0,
            adjustment: 6.0,
            jam_nut: 8.0,
            obstacle: 17.0,
        };
        assert_relative_eq!(room.gap().unwrap(), 3.0);
        let bad = NutRoom {
            adjustment: f64::NAN,
            ..room
        };
        assert!(bad.gap().is_err());
    }

    pub(crate) fn end() -> EndBracket {
        EndBracket {
            free_length: 57.15,
            height: 30.0,
            thickness: 6.35,
            bolt_head: 8.0,
            jam_nut: 8.0,
            wound_in: 4.0,
            nut_room: 1.0,
            head_diameter: 34.0,
            body_width: Some(14.0),
        }
    }

    /// By hand: 57.15 - 30 - 6.35 - 8 - 4 = 8.8 beside the nut, so a height of 37.8 would leave 1. Head 30 - 8 - 17 = 5 with the bolt across the rack, whichever way
    /// the rod swings about it; 30 - 8 - 7 = 15 with a bolt along it. Rod leaned 30 degrees along an upright bolt: the disc leans as much and reaches 17 cos 30 + 7 sin 30.
    #[test]
    fn end_bracket_by_hand() {
        let unit = |x, y, z| Unit::new_normalize(Vector3::new(x, y, z));
        let room = EndRoom::new(end(), Vector3::y() * 3.0).unwrap();
        assert_relative_eq!(room.nut_gap(), 8.8, epsilon = 1e-12);
        assert_relative_eq!(room.height_left(), 37.8, epsilon = 1e-12);
        assert_relative_eq!(room.height_off(), 7.8, epsilon = 1e-12);
        let fore_aft = unit(1.0, 0.0, 0.0);
        for rod in [unit(0.0, 1.0, 0.0), unit(0.0, 1.0, -0.4)] {
            assert_relative_eq!(room.head_gap(rod, fore_aft), 5.0, epsilon = 1e-12);
        }
        let along = room.head_gap(unit(1.0, 0.0, 0.0), unit(0.0, 1.0, 0.0));
        assert_relative_eq!(along, 15.0, epsilon = 1e-12);
        let (sin, cos) = 30.0_f64.to_radians().sin_cos();
        let leaned = room.head_gap(unit(0.0, cos, sin), unit(0.0, 0.0, 1.0));
        assert_relative_eq!(leaned, 22.0 - 17.0 * cos - 7.0 * sin, epsilon = 1e-12);
        let ball = EndBracket {
            body_width: None,
            ..end()
        };
        let ball = EndRoom::new(ball, Vector3::y()).unwrap();
        let steep = ball.head_gap(unit(0.0, 1.0, 1.0), unit(0.0, 0.0, 1.0));
        assert!(steep <= 22.0 - 17.0, "{steep}");
        for bad in [
            EndBracket {
                jam_nut: 0.0,
                ..end()
            },
            EndBracket {
                free_length: -1.0,
                ..end()
            },
            EndBracket {
                wound_in: f64::NAN,
                ..end()
            },
        ] {
            assert!(EndRoom::new(bad, Vector3::y()).is_err());
        }
        assert!(EndRoom::new(end(), Vector3::zeros()).is_err());
    }
}
