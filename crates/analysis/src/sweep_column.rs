//! The columns of a sweep table: names that tools rely on, and meanings.

use trammel_build::LengthUnit;

use crate::sweep_row::SweepRow;

/// A column of a [`crate::SweepTable`]. Angles in degrees, lengths in the table's unit; signs as in the project's conventions, each wheel
/// measured in its own sense.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum SweepColumn {
    /// Wheel travel.
    Travel,
    /// Rack travel.
    Rack,
    /// Toe.
    Toe,
    /// Camber.
    Camber,
    /// Castor angle.
    Castor,
    /// Steering-axis inclination.
    SteeringAxisInclination,
    /// Scrub radius.
    ScrubRadius,
    /// Mechanical trail.
    MechanicalTrail,
    /// Half-track change.
    HalfTrackChange,
    /// Roll-centre height.
    RollCentreHeight,
    /// Steer angle.
    Steer,
    /// Tie-rod angle at the rack.
    TieRodAngle,
    /// Toe change.
    ToeChange,
    /// Tie-rod angle, front view.
    TieRodAngleFront,
    /// Tie-rod angle, plan view.
    TieRodAnglePlan,
    /// Front-view swing-arm length.
    SwingArmLength,
    /// Instant centre, lateral.
    InstantCentreY,
    /// Instant centre, height.
    InstantCentreZ,
    /// Spring length.
    SpringLength,
    /// Motion ratio.
    MotionRatio,
    /// Wheel rate.
    WheelRate,
    /// Steer angle of the other wheel.
    OtherWheelSteer,
    /// Ackermann percentage.
    Ackermann,
    /// Angle between tie rod and steering arm.
    SteeringMargin,
    /// Angle between upper arm and upright.
    UpperArmMargin,
    /// Rise of the wheel per path of the lower ball joint.
    LiftMargin,
}

impl SweepColumn {
    /// How many there are.
    pub const COUNT: usize = 26;

    /// All of them, in the order of the table.
    pub const ALL: [Self; Self::COUNT] = [
        Self::Travel,
        Self::Rack,
        Self::Toe,
        Self::Camber,
        Self::Castor,
        Self::SteeringAxisInclination,
        Self::ScrubRadius,
        Self::MechanicalTrail,
        Self::HalfTrackChange,
        Self::RollCentreHeight,
        Self::Steer,
        Self::TieRodAngle,
        Self::ToeChange,
        Self::TieRodAngleFront,
        Self::TieRodAnglePlan,
        Self::SwingArmLength,
        Self::InstantCentreY,
        Self::InstantCentreZ,
        Self::SpringLength,
        Self::MotionRatio,
        Self::WheelRate,
        Self::OtherWheelSteer,
        Self::Ackermann,
        Self::SteeringMargin,
        Self::UpperArmMargin,
        Self::LiftMargin,
    ];

    /// Its name in the header: tools read these.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Travel => "travel",
            Self::Rack => "rack",
            Self::Toe => "toe_deg",
            Self::Camber => "camber_deg",
            Self::Castor => "castor_deg",
            Self::SteeringAxisInclination => "steering_axis_inclination_deg",
            Self::ScrubRadius => "scrub_radius",
            Self::MechanicalTrail => "mechanical_trail",
            Self::HalfTrackChange => "half_track_change",
            Self::RollCentreHeight => "roll_centre_height",
            Self::Steer => "steer_deg",
            Self::TieRodAngle => "tie_rod_angle_deg",
            Self::ToeChange => "toe_change_deg",
            Self::TieRodAngleFront => "tie_rod_angle_front_deg",
            Self::TieRodAnglePlan => "tie_rod_angle_plan_deg",
            Self::SwingArmLength => "swing_arm_length",
            Self::InstantCentreY => "instant_centre_y",
            Self::InstantCentreZ => "instant_centre_z",
            Self::SpringLength => "spring_length",
            Self::MotionRatio => "motion_ratio",
            Self::WheelRate => "wheel_rate_n_per_mm",
            Self::OtherWheelSteer => "other_wheel_steer_deg",
            Self::Ackermann => "ackermann_percent",
            Self::SteeringMargin => "steering_margin_deg",
            Self::UpperArmMargin => "upper_arm_margin_deg",
            Self::LiftMargin => "lift_margin",
        }
    }

    /// What it means and which way its sign goes, in a few words.
    #[must_use]
    pub fn meaning(self) -> &'static str {
        match self {
            Self::Travel => "wheel travel from the design height, up positive",
            Self::Rack => "rack travel from its centre, to the left positive",
            Self::Toe => "toe of this wheel, toe-in positive",
            Self::Camber => "camber, top leaning in negative",
            Self::Castor => "castor angle, top leaning back positive",
            Self::SteeringAxisInclination => "steering-axis inclination, top leaning in positive",
            Self::ScrubRadius => "scrub radius, steering axis inboard of contact positive",
            Self::MechanicalTrail => "mechanical trail, steering axis ahead of contact positive",
            Self::HalfTrackChange => "sideways move of the contact point, outward positive",
            Self::RollCentreHeight => "roll-centre height above this pose's ground",
            Self::Steer => "steer angle of this wheel, to the vehicle's left positive",
            Self::TieRodAngle => {
                "angle between tie rod and rack (rear: toe link and straight across)"
            }
            Self::ToeChange => "toe less toe at the design height, same rack position",
            Self::TieRodAngleFront => {
                "its part from the front, outer joint above the rack's line positive"
            }
            Self::TieRodAnglePlan => "its part from above, outer joint forward positive",
            Self::SwingArmLength => "front-view swing-arm length, centre inboard positive",
            Self::InstantCentreY => "front-view instant centre, y in vehicle axes",
            Self::InstantCentreZ => "the same, z",
            Self::SpringLength => "distance between the spring unit's mounts",
            Self::MotionRatio => "spring shortening per wheel travel",
            Self::WheelRate => "spring rate times motion ratio squared, N/mm",
            Self::OtherWheelSteer => {
                "steer of the other wheel at this travel and rack, left positive"
            }
            Self::Ackermann => "Ackermann percentage with both wheels at this travel",
            Self::SteeringMargin => "angle between tie rod and steering arm, 0 = in line",
            Self::UpperArmMargin => "angle between upper arm and upright, 0 = in line",
            Self::LiftMargin => {
                "rise of the wheel per path of the lower ball joint, 0 = at its end"
            }
        }
    }

    /// Its value in a row; travel and rack are what was asked for, not read from the pose.
    pub(crate) fn of(self, row: &SweepRow, unit: LengthUnit) -> Option<f64> {
        let m = &row.measures;
        let length = |mm: f64| unit.from_mm(mm);
        let angle_of_sine = |sine: f64| sine.clamp(-1.0, 1.0).asin().to_degrees();
        let value = match self {
            Self::Travel | Self::Rack => return None,
            Self::Toe => m.toe.to_degrees(),
            Self::Camber => m.camber.to_degrees(),
            Self::Castor => m.castor.to_degrees(),
            Self::SteeringAxisInclination => m.steering_axis_inclination.to_degrees(),
            Self::ScrubRadius => length(m.scrub_radius),
            Self::MechanicalTrail => length(m.mechanical_trail),
            Self::HalfTrackChange => length(m.half_track_change),
            Self::RollCentreHeight => length(m.roll_centre_height),
            Self::Steer => row.steer.to_degrees(),
            Self::TieRodAngle => m.tie_rod_angle.to_degrees(),
            Self::ToeChange => row.toe_change.to_degrees(),
            Self::TieRodAngleFront => m.tie_rod_angle_front.to_degrees(),
            Self::TieRodAnglePlan => m.tie_rod_angle_plan.to_degrees(),
            Self::SwingArmLength => length(m.instant_centre?.swing_arm_length),
            Self::InstantCentreY => length(m.instant_centre?.y * row.outboard),
            Self::InstantCentreZ => length(m.instant_centre?.z),
            Self::SpringLength => length(m.spring?.length),
            Self::MotionRatio => m.spring?.motion_ratio,
            Self::WheelRate => m.spring?.wheel_rate(row.spring_rate?),
            Self::OtherWheelSteer => row.other_steer?.to_degrees(),
            Self::Ackermann => row.ackermann?,
            Self::SteeringMargin => angle_of_sine(row.margins.steering),
            Self::UpperArmMargin => angle_of_sine(row.margins.upper_arm),
            Self::LiftMargin => row.margins.lift,
        };
        // Minus nought would only puzzle.
        value.is_finite().then_some(value + 0.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_are_one_each_and_start_as_promised() {
        let names: Vec<_> = SweepColumn::ALL.iter().map(|c| c.name()).collect();
        let promised = "travel,rack,toe_deg,camber_deg,castor_deg,steering_axis_inclination_deg,scrub_radius,mechanical_trail,half_track_change,roll_centre_height,steer_deg,tie_rod_angle_deg";
        assert!(names.join(",").starts_with(promised));
        let mut unique = names.clone();
        unique.sort_unstable();
        unique.dedup();
        assert_eq!(unique.len(), names.len());
    }
}
