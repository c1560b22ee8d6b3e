//! What if: rack height, ride height and arm lengths tried out with sliders, and the family of toe curves along one of them. Nothing of it is in the
//! build until it is applied.

use egui::Context;
use trammel_analysis::{Raise, TravelCurve, WhatIf};
use trammel_build::{AxleName, Build, Side};
use trammel_geometry::Corner;

use crate::background::Background;

/// Curves of a family.
const CURVES: usize = 9;

/// A slider.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Slide {
    /// Rack and inner joints up and down.
    Rack,
    /// The frame up and down.
    Lift,
    /// Length of the upper arm.
    Upper,
    /// Length of the lower arm.
    Lower,
}

impl Slide {
    /// In the order of the list.
    pub const ALL: [Self; 4] = [Self::Rack, Self::Lift, Self::Upper, Self::Lower];

    /// Its name on the screen.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::Rack => "Rack height",
            Self::Lift => "Lift of the frame",
            Self::Upper => "Upper arm length",
            Self::Lower => "Lower arm length",
        }
    }

    /// What it does.
    #[must_use]
    pub fn meaning(self) -> &'static str {
        match self {
            Self::Rack => "Rack and inner joints go up or down; the tie rods' length is set again.",
            Self::Lift => {
                "The frame goes up or down on the same arms, as on the page Ride height; static toe is set again."
            }
            Self::Upper | Self::Lower => {
                "Upright and wheel stay where they are; the arm's pivots go back along the arm or come nearer."
            }
        }
    }

    /// The words for either way, more first.
    #[must_use]
    pub fn ways(self) -> [&'static str; 2] {
        match self {
            Self::Rack | Self::Lift => ["up", "down"],
            Self::Upper | Self::Lower => ["longer", "shorter"],
        }
    }

    /// How far it goes either way, mm.
    #[must_use]
    pub fn reach(self) -> f64 {
        match self {
            Self::Rack => 50.8,
            Self::Lift | Self::Upper | Self::Lower => 76.2,
        }
    }

    /// Its part of what is tried out.
    pub fn of(self, what: &mut WhatIf) -> &mut f64 {
        match self {
            Self::Rack => &mut what.rack_height,
            Self::Lift => &mut what.lift,
            Self::Upper => &mut what.upper_arm,
            Self::Lower => &mut what.lower_arm,
        }
    }
}

/// What is asked.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Ask {
    pub build: Build,
    pub axle: AxleName,
    pub side: Side,
    pub what: WhatIf,
    /// The slider along which the family is drawn.
    pub along: Slide,
    /// What becomes of camber and stops when the frame is raised.
    pub how: Raise,
}

/// What would be, and the family about it.
#[derive(Clone, Debug)]
pub(crate) struct Looked {
    /// With everything as the sliders have it; why not, in words.
    pub now: Result<(Corner, TravelCurve), String>,
    /// The same with one slider all along its way.
    pub family: Vec<TravelCurve>,
}

impl Looked {
    fn of(ask: &Ask) -> Self {
        let look = |what: &WhatIf| what.look(&ask.build, ask.axle, ask.side, &ask.how);
        let along = |i: usize| {
            let mut what = ask.what;
            let part = i as f64 / (CURVES - 1) as f64;
            *ask.along.of(&mut what) = (2.0 * part - 1.0) * ask.along.reach();
            look(&what).ok().map(|w| w.curve)
        };
        Self {
            now: look(&ask.what)
                .map(|w| (*w.model.linkage(ask.side).corner(), w.curve))
                .map_err(|fault| fault.to_string()),
            family: (0..CURVES).filter_map(along).collect(),
        }
    }
}

/// The look with its worker.
#[derive(Default)]
pub(crate) struct WhatIfWork {
    worker: Option<Background<Ask, (Ask, Looked)>>,
    asked: Option<Ask>,
    shown: Option<(Ask, Looked)>,
}

impl WhatIfWork {
    /// Asks for what is not known yet, and takes what has come.
    pub(crate) fn go_on(&mut self, ctx: &Context, ask: Ask) {
        if self.worker.is_none() {
            self.worker = Background::start("what if", ctx, |ask: Ask| {
                let looked = Looked::of(&ask);
                (ask, looked)
            });
        }
        let Some(worker) = &self.worker else { return };
        self.shown = worker.newest().or(self.shown.take());
        if self.asked.as_ref() != Some(&ask) {
            worker.hand_in(ask.clone());
            self.asked = Some(ask);
        }
    }

    /// The newest look.
    pub(crate) fn shown(&self) -> Option<&Looked> {
        self.shown.as_ref().map(|(_, looked)| looked)
    }

    /// Whether what is shown is of the build and the sliders as they stand.
    pub(crate) fn is_current(&self) -> bool {
        self.shown
            .as_ref()
            .is_some_and(|(ask, _)| self.asked.as_ref() == Some(ask))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use trammel_analysis::Stops;
    use trammel_tuning::Reset;

    #[test]
    fn every_slider_has_a_family_from_one_end_to_the_other() {
        for demo in trammel_persistence::demos() {
            let build = trammel_persistence::read(demo.text).unwrap();
            for along in Slide::ALL {
                let looked = Looked::of(&Ask {
                    build: build.clone(),
                    axle: AxleName::Front,
                    side: Side::Left,
                    what: WhatIf::default(),
                    along,
                    how: Raise {
                        by: 0.0,
                        reset: Reset::ToeAndCamber,
                        stops: Stops::Kept,
                    },
                });
                let scores: Vec<f64> = looked.family.iter().map(|c| c.score.largest).collect();
                assert!(scores.len() > 4, "{} {along:?}: {scores:?}", demo.name);
                let apart = scores.windows(2).all(|w| (w[0] - w[1]).abs() > 1e-6);
                assert!(apart, "{} {along:?}: {scores:?}", demo.name);
            }
        }
    }
}
