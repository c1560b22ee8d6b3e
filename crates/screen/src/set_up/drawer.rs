//! The drawer of measured parts: what is asked of it, and a part to begin with.

use trammel_build::{
    Build, JointPart, LengthUnit, Part, PartKind, RackPart, SpindlePart, SpringPart, SteeringArm,
    defaults,
};
use trammel_persistence::Drawer;

/// What is asked of the drawer.
#[derive(Clone, Debug, PartialEq)]
pub enum PartAsk {
    /// Keep the drawer so, in the user's folder.
    Keep(Drawer),
    /// Put a part into the build.
    Put(Box<Part>),
}

/// Kinds of parts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NewPart {
    /// An upright.
    Spindle,
    /// A rack.
    Rack,
    /// A spring unit.
    Spring,
    /// A joint.
    Joint,
}

impl NewPart {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::Spindle, Self::Rack, Self::Spring, Self::Joint];

    /// Its word.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::Spindle => "Spindle",
            Self::Rack => "Rack",
            Self::Spring => "Spring",
            Self::Joint => "Joint",
        }
    }

    /// A part to write over, with the build's own figures where it has them.
    #[must_use]
    pub fn begun(self, build: &Build) -> Part {
        let unit = build.unit;
        let tidy = |mm: f64| match unit {
            LengthUnit::Inch => (unit.from_mm(mm) * 16.0).round() / 16.0,
            LengthUnit::Millimetre => mm.round(),
        };
        let kind = match self {
            Self::Spindle => PartKind::Spindle(SpindlePart {
                ball_joint_spacing: tidy(200.0),
                inclination_deg: 10.0,
                spindle_height: tidy(90.0),
                wheel_out: tidy(90.0),
                arm_length: tidy(90.0),
                arm: SteeringArm::Behind,
                arm_height: tidy(90.0),
                arm_out: 0.0,
            }),
            Self::Rack => {
                let rack = &build.front.rack;
                PartKind::Rack(RackPart {
                    joint_to_joint: 2.0 * build.front.tie_rod.inner[1].abs(),
                    travel: rack
                        .travel
                        .unwrap_or_else(|| tidy(defaults::RACK_TRAVEL_MM)),
                    travel_per_turn: rack
                        .travel_per_turn
                        .unwrap_or_else(|| tidy(defaults::RACK_TRAVEL_PER_TURN_MM)),
                    end_thread: build
                        .front
                        .rack_end
                        .thread
                        .clone()
                        .unwrap_or_else(|| defaults::THREAD.to_owned()),
                    hard_to: None,
                })
            }
            Self::Spring => {
                let spring = build.front.spring;
                PartKind::Spring(SpringPart {
                    open: spring
                        .and_then(|s| s.open_length)
                        .unwrap_or_else(|| tidy(400.0)),
                    closed: spring
                        .and_then(|s| s.closed_length)
                        .unwrap_or_else(|| tidy(300.0)),
                    rate: spring.and_then(|s| s.rate),
                })
            }
            Self::Joint => PartKind::Joint(JointPart {
                ball_width: tidy(19.0),
                swivel_deg: defaults::JOINT_ANGLE_LIMIT_DEG,
                rating: None,
            }),
        };
        Part {
            name: format!("{} of {}", self.label(), build.title),
            unit,
            notes: String::new(),
            kind,
        }
    }
}
