//! The figures that a candidate is judged by.

use trammel_geometry::{Axle, Corner, Linkage, Walk, mirror_vector};

use super::{figure::Figure, request::RackEndFactor};
use crate::{Score, Stations, ToeCurves};

/// Figures of a candidate. What does not apply (no rack, no check of the rack end) is `None`.
#[derive(Clone, Debug, PartialEq)]
pub struct Figures {
    /// Toe curve's scores at centre.
    pub toe: Score,
    /// The same at either lock, the worse of the two.
    pub toe_at_lock: Option<Score>,
    /// See [`Figure::CamberGain`].
    pub camber_gain: f64,
    /// See [`Figure::RollCentreHeight`].
    pub roll_centre_height: f64,
    /// See [`Figure::RollCentreMigration`].
    pub roll_centre_migration: f64,
    /// See [`Figure::ScrubRadius`].
    pub scrub_radius: f64,
    /// See [`Figure::Castor`].
    pub castor: f64,
    /// See [`Figure::Ackermann`].
    pub ackermann: Option<f64>,
    /// See [`Figure::TurningCircle`].
    pub turning_circle: Option<f64>,
    /// See [`Figure::TieRodAngle`].
    pub tie_rod_angle: f64,
    /// See [`Figure::RackEndFactor`].
    pub rack_end_factor: Option<f64>,
}

/// A candidate's figures with the toe changes that the search works on.
#[derive(Clone, Debug)]
pub(crate) struct Judged {
    pub figures: Figures,
    pub changes: Vec<f64>,
    pub changes_at_lock: Vec<f64>,
}

/// What figures are worked out from, apart from the corner.
pub(crate) struct Judge {
    pub stations: Stations,
    pub at_lock: Option<Stations>,
    pub lock: f64,
    pub wheelbase: f64,
    pub rack_end: Option<RackEndFactor>,
}

impl Figures {
    /// One of them, if it applies.
    #[must_use]
    pub fn get(&self, figure: Figure) -> Option<f64> {
        match figure {
            Figure::ToeChange => Some(self.toe.largest),
            Figure::ToeChangeAtLock => self.toe_at_lock.map(|s| s.largest),
            Figure::CamberGain => Some(self.camber_gain),
            Figure::RollCentreHeight => Some(self.roll_centre_height),
            Figure::RollCentreMigration => Some(self.roll_centre_migration),
            Figure::ScrubRadius => Some(self.scrub_radius),
            Figure::Castor => Some(self.castor),
            Figure::Ackermann => self.ackermann,
            Figure::TurningCircle => self.turning_circle,
            Figure::TieRodAngle => Some(self.tie_rod_angle),
            Figure::RackEndFactor => self.rack_end_factor,
        }
    }
}

impl Judge {
    /// `None` when the corner can't be built or doesn't reach travel and lock.
    pub(crate) fn judge(&self, corner: &Corner) -> Option<Judged> {
        let linkage = Linkage::new(corner).ok()?;
        let curves = ToeCurves::of(&linkage, &self.stations).ok()?;
        let at_lock = match &self.at_lock {
            Some(stations) => Some(ToeCurves::of(&linkage, stations).ok()?),
            None => None,
        };
        let design = linkage.measures(&linkage.pose(0.0, 0.0).ok()?);
        let (migration, tie_rod_angle) = self.over_travel(&linkage)?;
        let steered = self.steered(corner, linkage);
        let figures = Figures {
            toe: curves.score(),
            toe_at_lock: at_lock.as_ref().map(ToeCurves::score),
            camber_gain: design.camber_rate,
            roll_centre_height: design.roll_centre_height,
            roll_centre_migration: migration,
            scrub_radius: design.scrub_radius,
            castor: design.castor,
            ackermann: steered.map(|s| s.0),
            turning_circle: steered.map(|s| s.1),
            tie_rod_angle,
            rack_end_factor: self.rack_end.as_ref().and_then(|f| f(corner)),
        };
        Some(Judged {
            figures,
            changes: curves.changes().collect(),
            changes_at_lock: at_lock.iter().flat_map(ToeCurves::changes).collect(),
        })
    }

    /// Roll centre's range, and the largest tie-rod angle.
    fn over_travel(&self, linkage: &Linkage) -> Option<(f64, f64)> {
        let mut walk = Walk::new(linkage, 0.0).ok()?;
        let (mut low, mut high, mut angle) = (f64::INFINITY, f64::NEG_INFINITY, 0.0_f64);
        for &travel in self.stations.travels() {
            let measures = linkage.measures(&walk.pose(travel).ok()?);
            low = low.min(measures.roll_centre_height);
            high = high.max(measures.roll_centre_height);
            angle = angle.max(measures.tie_rod_angle_front.abs());
        }
        Some((high - low, angle))
    }

    /// Ackermann percentage and turning circle at lock, the mean of both ways: a tilted rack steers them a little
    /// differently.
    fn steered(&self, corner: &Corner, left: Linkage) -> Option<(f64, f64)> {
        if !(self.lock > 0.0) {
            return None;
        }
        // The mirror of a symmetrical car's right corner is its left one, with the rack running the other way.
        let right = Corner {
            rack_axis: corner.rack_axis.map(mirror_vector),
            ..*corner
        };
        let axle = Axle {
            left,
            right_mirrored: Linkage::new(&right).ok()?,
        };
        let way = |rack: f64| {
            let pose = axle.pose(0.0, 0.0, rack).ok()?;
            Some((
                pose.ackermann(self.wheelbase)?,
                pose.turning_circle(self.wheelbase)?,
            ))
        };
        let (one, other) = (way(self.lock)?, way(-self.lock)?);
        Some((0.5 * (one.0 + other.0), one.1.max(other.1)))
    }
}
