//! Rod ends and spherical joints: dimensions of an open standard, load against a rating, misalignment.
//!
//! The standard's sheets give dimensions and angles; **its loads could not be seen**, so a rating is the user's, from the maker's sheet. Without a rating the
//! load is shown against nothing.

mod table;

use std::fmt;

use nalgebra::{Unit, Vector3};

use crate::check::{Check, Finding, newtons};
use crate::joint_room::{
    BodyRoom, END_ROOM, EndRoom, HEIGHT_AGREES, LEAST_ROOM, NutRoom, ROOM, STAND_OFF,
};
use crate::number::{BadNumber, positive};
use crate::source::{Limit, Source};
use crate::thread::{Thread, ThreadError};
use crate::units::INCH;

/// A male rod end of SAE AS81935, in inches as printed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ListedRodEnd {
    name: &'static str,
    bore: f64,
    head_diameter: f64,
    thread: &'static str,
    ball_width: f64,
    body_width: f64,
    misalignment_deg: Option<f64>,
    source: Source,
}

impl ListedRodEnd {
    /// Every size of the table: the wide series, then the narrow one.
    #[must_use]
    pub fn all() -> &'static [Self] {
        table::ROD_ENDS
    }

    /// Its name: `AS81935/1-06`.
    #[must_use]
    pub fn name(&self) -> &'static str {
        self.name
    }

    /// Bore of the ball, mm.
    #[must_use]
    pub fn bore(&self) -> f64 {
        self.bore * INCH
    }

    /// Diameter of the head, mm.
    #[must_use]
    pub fn head_diameter(&self) -> f64 {
        self.head_diameter * INCH
    }

    /// Thread of the shank.
    ///
    /// # Errors
    /// A thread that the table of threads hasn't got.
    pub fn thread(&self) -> Result<Thread, ThreadError> {
        Thread::find(self.thread)
    }

    /// Width of the ball, mm.
    #[must_use]
    pub fn ball_width(&self) -> f64 {
        self.ball_width * INCH
    }

    /// Width of the body, mm.
    #[must_use]
    pub fn body_width(&self) -> f64 {
        self.body_width * INCH
    }

    /// Angle each way that the ball may swivel, rad; `None` where the sheet's figure was not seen.
    #[must_use]
    pub fn misalignment(&self) -> Option<Limit> {
        self.misalignment_deg.map(|degrees| Limit {
            value: degrees.to_radians(),
            unit: "rad",
            source: self.source,
        })
    }

    /// The sheet of the standard.
    #[must_use]
    pub fn source(&self) -> Source {
        self.source
    }
}

impl fmt::Display for ListedRodEnd {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name)
    }
}

/// A rod end or ball joint in place.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Joint {
    rating: Option<f64>,
    misalignment: Option<Limit>,
    body: Option<BodyRoom>,
    nut: Option<f64>,
    end: Option<EndRoom>,
}

/// How a joint's angle is found.
pub const SWIVEL: Source = Source {
    document: "angle between the shank and the plane across the bolt; the rod may turn about itself",
    clause: "",
    standing: crate::source::Standing::CommonPractice,
};

impl Joint {
    /// The same with the rating of the maker's sheet, N.
    ///
    /// # Errors
    /// A rating that is not finite and above zero.
    pub fn with_rating(self, newtons: f64) -> Result<Self, BadNumber> {
        let rating = Some(positive("the joint's rating", newtons)?);
        Ok(Self { rating, ..self })
    }

    /// The same with an angle each way that it may swivel, rad, from the maker's sheet or a listed rod end.
    ///
    /// # Errors
    /// An angle that is not finite and above zero.
    pub fn with_misalignment(self, limit: Limit) -> Result<Self, BadNumber> {
        positive("the joint's misalignment", limit.value)?;
        Ok(Self {
            misalignment: Some(limit),
            ..self
        })
    }

    /// The same with its body between its ears.
    #[must_use]
    pub fn with_body(self, body: BodyRoom) -> Self {
        Self {
            body: Some(body),
            ..self
        }
    }

    /// The same with its jam nut before the ears.
    ///
    /// # Errors
    /// A length that is not finite or below zero.
    pub fn with_nut(self, nut: &NutRoom) -> Result<Self, BadNumber> {
        Ok(Self {
            nut: Some(nut.gap()?),
            ..self
        })
    }

    /// The same in a bracket on a rack end.
    #[must_use]
    pub fn with_end(self, end: EndRoom) -> Self {
        Self {
            end: Some(end),
            ..self
        }
    }

    /// The check that no load and no pose changes.
    pub fn check_once(&self, mut found: impl FnMut(Finding)) {
        if let Some(gap) = self.nut {
            found(Finding::above(Check::NutRoom, gap, LEAST_ROOM, ROOM));
        }
        let Some(end) = &self.end else { return };
        let nut = end.nut_gap();
        found(Finding::above(Check::EndNutRoom, nut, LEAST_ROOM, END_ROOM));
        let off = end.height_off();
        if off > HEIGHT_AGREES.value {
            found(Finding::below(
                Check::StandOff,
                off,
                HEIGHT_AGREES,
                STAND_OFF,
            ));
        }
    }

    /// What its rating says under this load, N.
    pub fn check(&self, load: f64, mut found: impl FnMut(Finding)) {
        if let Some(rating) = self.rating {
            let limit = newtons(rating, Source::USER);
            let load = load.abs();
            found(Finding::below(
                Check::JointRating,
                load,
                limit,
                Source::USER,
            ));
        }
    }

    /// How far it swivels and what room that leaves its body, with the rod and the joint's bolt in these directions.
    pub fn check_stance(
        &self,
        rod: Unit<Vector3<f64>>,
        bolt: Unit<Vector3<f64>>,
        mut found: impl FnMut(Finding),
    ) {
        let swivel = swivel(rod, bolt);
        if let Some(limit) = self.misalignment {
            found(Finding::below(Check::Misalignment, swivel, limit, SWIVEL));
        }
        let mut room = |check, gap, how| found(Finding::above(check, gap, LEAST_ROOM, how));
        if let Some(body) = self.body {
            room(Check::BodyRoom, body.gap(swivel), ROOM);
        }
        if let Some(end) = &self.end {
            room(Check::EndHeadRoom, end.head_gap(rod, bolt), END_ROOM);
        }
    }
}

/// Angle, rad, between a rod's direction and the plane across the joint's bolt: how far the ball swivels if the rod may turn about itself.
#[must_use]
pub fn swivel(rod: Unit<Vector3<f64>>, bolt: Unit<Vector3<f64>>) -> f64 {
    rod.dot(&bolt).clamp(-1.0, 1.0).asin().abs()
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    /// SAE AS81935/1A, dash 06: bore .3750, head 1.025, 3/8-24, ball .500, body .416 in, 8 degrees; /4B dash 10: .6250, 1.763, 5/8-18, .625, .510 (sheets seen).
    #[test]
    fn sizes_as_printed() {
        let find = |name: &str| {
            *ListedRodEnd::all()
                .iter()
                .find(|end| end.name() == name)
                .unwrap()
        };
        let wide = find("AS81935/1-06");
        assert_relative_eq!(wide.bore(), 9.525);
        assert_relative_eq!(wide.ball_width(), 12.7);
        assert_relative_eq!(wide.misalignment().unwrap().value.to_degrees(), 8.0);
        assert_eq!(wide.thread().unwrap().designation(), "3/8-24 UNF");
        let narrow = find("AS81935/4-10");
        assert_relative_eq!(narrow.head_diameter(), 1.763 * 25.4);
        assert_eq!(narrow.misalignment(), None);
        assert_eq!(narrow.to_string(), "AS81935/4-10");
    }

    #[test]
    fn every_size_is_a_joint() {
        for end in ListedRodEnd::all() {
            assert!(end.thread().is_ok(), "{end}");
            assert!(
                end.body_width() < end.ball_width() && end.bore() < end.head_diameter(),
                "{end}"
            );
        }
    }

    #[test]
    fn load_and_angle_against_what_is_known() {
        let leaned = |angle: f64| Unit::new_normalize(Vector3::new(0.0, angle.cos(), angle.sin()));
        let upright = Vector3::z_axis();
        let all = |joint: &Joint, angle: f64| {
            let mut found = vec![];
            joint.check(-4000.0, |f| found.push(f));
            joint.check_stance(leaned(angle), upright, |f| found.push(f));
            found
        };
        assert!(all(&Joint::default(), 0.1).is_empty());
        let angle = ListedRodEnd::all()[0].misalignment().unwrap();
        let joint = Joint::default()
            .with_rating(20_000.0)
            .unwrap()
            .with_misalignment(angle)
            .unwrap();
        let found = all(&joint, angle.value / 2.0);
        assert_eq!(found.len(), 2);
        assert_eq!(found[0].factor(), Some(5.0));
        assert_relative_eq!(found[1].factor().unwrap(), 2.0, max_relative = 1e-12);
        // Each figure is kept by what is told later, and a body and a nut bring their own rooms.
        let body = BodyRoom::new(12.7, 10.4, 26.0, 3.0).unwrap();
        let nut = NutRoom {
            length: 40.0,
            engagement: 12.0,
            adjustment: 3.0,
            jam_nut: 6.0,
            obstacle: 15.0,
        };
        let joint = joint.with_body(body).with_nut(&nut).unwrap();
        let found = all(&joint, angle.value / 2.0);
        let checks: Vec<Check> = found.iter().map(|f| f.check).collect();
        assert_eq!(
            checks,
            [Check::JointRating, Check::Misalignment, Check::BodyRoom]
        );
        assert_relative_eq!(
            found[2].value,
            body.gap(angle.value / 2.0),
            max_relative = 1e-9
        );
        let mut once = vec![];
        joint.check_once(|f| once.push((f.check, f.value)));
        assert_eq!(once, [(Check::NutRoom, 4.0)]);
        assert!(Joint::default().with_rating(0.0).is_err());
        assert!(
            Joint::default()
                .with_misalignment(Limit {
                    value: f64::NAN,
                    ..angle
                })
                .is_err()
        );
    }

    #[test]
    fn a_rod_square_to_its_bolt_does_not_swivel_the_ball() {
        let unit = Unit::new_normalize;
        assert_eq!(swivel(unit(Vector3::y()), unit(Vector3::x())), 0.0);
        let tilted = unit(Vector3::new(0.0, 1.0, 0.2));
        assert_relative_eq!(
            swivel(tilted, unit(Vector3::z())),
            0.2_f64.atan(),
            max_relative = 1e-12
        );
        assert_eq!(swivel(tilted, unit(Vector3::x())), 0.0);
    }

    /// By hand: rack face to joint 57.15, base 6.35, nut 8, wound in 4, 1 beside the nut: a height of 37.8 fits; 1.6 either way still does.
    #[test]
    fn a_bracket_s_height_is_told_when_it_does_not_fit_its_room() {
        use crate::joint_room::{EndBracket, tests::end};
        let once = |height: f64| {
            let bracket = EndBracket { height, ..end() };
            let room = EndRoom::new(bracket, Vector3::y()).unwrap();
            let mut found = vec![];
            Joint::default()
                .with_end(room)
                .check_once(|f| found.push((f.check, (f.value * 100.0).round() / 100.0)));
            found
        };
        assert_eq!(once(37.8), [(Check::EndNutRoom, 1.0)]);
        assert_eq!(once(36.5), [(Check::EndNutRoom, 2.3)]);
        assert_eq!(
            once(35.8),
            [(Check::EndNutRoom, 3.0), (Check::StandOff, 2.0)]
        );
        assert_eq!(
            once(39.8),
            [(Check::EndNutRoom, -1.0), (Check::StandOff, 2.0)]
        );
    }
}
