//! How toe was measured, and the toe of what the instruments show.

use super::Way;

/// Where the board stands that a laser on the hub shines at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Board {
    /// Ahead of the wheel.
    Ahead,
    /// Behind it.
    Behind,
}

/// Which way a spot of light went.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SpotWay {
    /// Towards the vehicle's centre line.
    Inboard,
    /// Away from it.
    Outboard,
    /// Towards the front.
    Ahead,
    /// Towards the rear.
    Back,
}

/// How toe was measured. Lengths in mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Method {
    /// Two dial indicators, or two tapes from a straight edge, on a plate on the hub.
    TwoDials {
        /// Between the contacts.
        spacing: f64,
        /// Which way the plate goes at a contact when its number grows: IN towards the vehicle.
        grows: Way,
    },
    /// One dial at the plate's front, its rear held by a roller.
    OneDial {
        /// Between roller and dial.
        spacing: f64,
        /// Which way the plate's front goes when the number grows.
        grows: Way,
    },
    /// A tape between both wheels, across the fronts and across the rears of the tyres. It reads both wheels together: each is given half.
    Tape {
        /// From the front marks to the rear ones on one tyre, at the height of the tape.
        across: f64,
    },
    /// A laser on the hub, a board square to the vehicle.
    Laser {
        /// From wheel centre to board.
        distance: f64,
        /// Where the board stands.
        board: Board,
    },
    /// A mirror flat on the hub, a light beside the vehicle, a board beside the light: the spot goes twice the angle.
    Mirror {
        /// From mirror to board.
        distance: f64,
    },
    /// Degrees as an instrument shows them.
    Degrees,
}

/// What the instruments show, mm or degrees.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Raw {
    /// Two numbers: front and rear.
    Pair {
        /// At the front.
        front: f64,
        /// At the rear.
        rear: f64,
    },
    /// One dial.
    Dial(f64),
    /// A spot's way from where it was first marked; the number is not negative.
    Spot(f64, SpotWay),
    /// Degrees with a word; the number is not negative.
    Degrees(f64, Way),
}

/// Why what was typed is no toe.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub enum MethodFault {
    /// A setting of the method is not usable.
    #[error("{what} is {value} mm; expected a length above nought")]
    Setting {
        /// Which.
        what: &'static str,
        /// What was given.
        value: f64,
    },
    /// The numbers are of another method.
    #[error("{expected}")]
    Kind {
        /// What this method needs.
        expected: &'static str,
    },
    /// A sign where a word is wanted.
    #[error(
        "{value} has a sign and a word; write the number without a sign, the word alone says which way"
    )]
    Signed {
        /// What was given.
        value: f64,
    },
    /// A number is none, or no toe has that size.
    #[error("{value} is no usable reading")]
    NotUsable {
        /// What was given.
        value: f64,
    },
}

impl Method {
    /// The tape's method at a height above the ground: the marks are as far apart as the tyre's circle is wide there. `radius` of the tyre
    /// unloaded at its marks, `axle_height` and `height` above ground, mm. `None` when the tape would pass above or below the tyre.
    #[must_use]
    pub fn tape_at(radius: f64, axle_height: f64, height: f64) -> Option<Self> {
        let half = radius * radius - (height - axle_height).powi(2);
        (half > 0.0 && radius > 0.0).then(|| Self::Tape {
            across: 2.0 * half.sqrt(),
        })
    }

    /// Toe that the instruments show, rad, toe-in positive; for dials and spots against where they were set, not absolute.
    ///
    /// # Errors
    /// [`MethodFault`] when the numbers don't belong to this method or are not usable.
    pub fn toe(&self, raw: Raw) -> Result<f64, MethodFault> {
        self.check()?;
        raw.check()?;
        let toe = match (*self, raw) {
            (Self::TwoDials { spacing, grows }, Raw::Pair { front, rear }) => {
                grows.signed((front - rear) / spacing).atan()
            }
            (Self::OneDial { spacing, grows }, Raw::Dial(front)) => {
                grows.signed(front / spacing).atan()
            }
            (Self::Tape { across }, Raw::Pair { front, rear }) => {
                let sine = 0.5 * (rear - front) / across;
                if !(sine.abs() < 0.5) {
                    return Err(MethodFault::NotUsable {
                        value: rear - front,
                    });
                }
                sine.asin()
            }
            (Self::Laser { distance, board }, Raw::Spot(moved, to)) => {
                let inward = match to {
                    SpotWay::Inboard => moved,
                    SpotWay::Outboard => -moved,
                    SpotWay::Ahead | SpotWay::Back => return Err(self.wrong_kind()),
                };
                let inward = if board == Board::Ahead {
                    inward
                } else {
                    -inward
                };
                (inward / distance).atan()
            }
            (Self::Mirror { distance }, Raw::Spot(moved, to)) => {
                let ahead = match to {
                    SpotWay::Ahead => moved,
                    SpotWay::Back => -moved,
                    SpotWay::Inboard | SpotWay::Outboard => return Err(self.wrong_kind()),
                };
                0.5 * (ahead / distance).atan()
            }
            (Self::Degrees, Raw::Degrees(size, way)) => way.signed(size).to_radians(),
            _ => return Err(self.wrong_kind()),
        };
        Ok(toe)
    }

    /// Standard deviation of the toe that one reading shows, rad, near straight ahead, from that of one number, mm or degrees.
    #[must_use]
    pub fn deviation(&self, of_number: f64) -> f64 {
        let pair = of_number * std::f64::consts::SQRT_2;
        match *self {
            Self::TwoDials { spacing, .. } => pair / spacing,
            Self::OneDial { spacing, .. } => of_number / spacing,
            Self::Tape { across } => 0.5 * pair / across,
            Self::Laser { distance, .. } => of_number / distance,
            Self::Mirror { distance } => 0.5 * of_number / distance,
            Self::Degrees => of_number.to_radians(),
        }
    }

    /// What a number of this method is usually good for, mm or degrees (common practice, no source).
    #[must_use]
    pub fn usual_deviation(&self) -> f64 {
        match self {
            Self::TwoDials { .. } | Self::OneDial { .. } => 0.02,
            Self::Tape { .. } | Self::Laser { .. } | Self::Mirror { .. } => 1.0,
            Self::Degrees => 0.05,
        }
    }

    /// Whether it reads both wheels together.
    #[must_use]
    pub fn reads_both_wheels(&self) -> bool {
        matches!(self, Self::Tape { .. })
    }

    /// What it is called.
    #[must_use]
    pub fn name(&self) -> &'static str {
        match self {
            Self::TwoDials { .. } => "two dials",
            Self::OneDial { .. } => "one dial",
            Self::Tape { .. } => "tape",
            Self::Laser { .. } => "laser",
            Self::Mirror { .. } => "mirror",
            Self::Degrees => "degrees",
        }
    }

    /// Refuses settings that are no lengths.
    ///
    /// # Errors
    /// [`MethodFault::Setting`].
    pub fn check(&self) -> Result<(), MethodFault> {
        let (what, value) = match *self {
            Self::TwoDials { spacing, .. } | Self::OneDial { spacing, .. } => ("spacing", spacing),
            Self::Tape { across } => ("the way across the tyre", across),
            Self::Laser { distance, .. } | Self::Mirror { distance } => ("distance", distance),
            Self::Degrees => return Ok(()),
        };
        if value > 0.0 && value <= 1e5 {
            Ok(())
        } else {
            Err(MethodFault::Setting { what, value })
        }
    }

    fn wrong_kind(&self) -> MethodFault {
        let expected = match self {
            Self::TwoDials { .. } => "two dials need a front and a rear number",
            Self::OneDial { .. } => "one dial needs one number",
            Self::Tape { .. } => "the tape needs a front and a rear number",
            Self::Laser { .. } => "a laser needs how far the spot went, and inboard or outboard",
            Self::Mirror { .. } => "a mirror needs how far the spot went, and ahead or back",
            Self::Degrees => "degrees need the word IN or OUT",
        };
        MethodFault::Kind { expected }
    }
}

impl Raw {
    fn check(self) -> Result<(), MethodFault> {
        let (numbers, worded) = match self {
            Self::Pair { front, rear } => ([front, rear], false),
            Self::Dial(v) => ([v, 0.0], false),
            Self::Spot(v, _) | Self::Degrees(v, _) => ([v, 0.0], true),
        };
        let usable = |v: &f64| v.abs() <= 1e5;
        if let Some(&value) = numbers.iter().find(|v| !usable(v)) {
            return Err(MethodFault::NotUsable { value });
        }
        match self {
            Self::Degrees(value, _) if value > 45.0 => Err(MethodFault::NotUsable { value }),
            Self::Degrees(value, _) | Self::Spot(value, _) if worded && value < 0.0 => {
                Err(MethodFault::Signed { value })
            }
            _ => Ok(()),
        }
    }
}
