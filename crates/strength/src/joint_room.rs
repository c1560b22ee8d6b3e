//! Room at a rod end: its body between the ears or before the washer, and its jam nut before the ears.
//!
//! - **Body**: a disc as thick as the body and as wide as the head. Swivelled by an angle t it reaches `W/2 cos t + D/2 sin t` from the ball's middle along
//!   the bolt; the ear or washer stands at half the ball's width and the spacer. A head that is rounded off has more room than that.
//! - **Jam nut**: with the rod end screwed in as far as its adjustment goes, the nut's near face stands at `length - engagement - adjustment - nut` from the
//!   ball's centre. The ears, the bolt's head and the joint's own head reach to the largest of their radii.

use crate::number::{BadNumber, not_negative, positive};
use crate::source::{Limit, Source, Standing};

/// How the room is found.
pub const ROOM: Source = Source {
    document: "joint body as a disc, ear or washer as a plane at the ball's face",
    clause: "",
    standing: Standing::CommonPractice,
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

#[cfg(test)]
mod tests {
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
}
