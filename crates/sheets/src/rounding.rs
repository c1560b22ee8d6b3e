//! What rounding costs: every coordinate as the fixture sheet prints it, at the shop's step, and the toe curve that comes of it.

use trammel_analysis::{AxleStudy, TravelCurve};
use trammel_build::{AxleName, Build, Edit, PointName, PointRef, Side};
use trammel_geometry::Point;

use crate::{
    Shop,
    draft::{Body, Draft, Group, Made, NotMade, axle_word, file_name},
    plot::toe_curves,
};

/// The toe curve of one wheel as designed and with rounded coordinates.
#[derive(Clone, Debug, PartialEq)]
pub struct RoundingCost {
    /// Axle.
    pub axle: AxleName,
    /// Side.
    pub side: Side,
    /// As designed.
    pub before: TravelCurve,
    /// With every printed coordinate at the shop's step.
    pub after: TravelCurve,
    /// Greatest distance of a point from where it was designed, mm.
    pub moved: f64,
}

impl RoundingCost {
    /// Largest toe change, as designed and rounded, rad.
    #[must_use]
    pub fn largest(&self) -> [f64; 2] {
        [self.before.score.largest, self.after.score.largest]
    }

    /// Root of the mean square toe change, as designed and rounded, rad.
    #[must_use]
    pub fn rms(&self) -> [f64; 2] {
        [self.before.score.rms, self.after.score.rms]
    }

    /// Whether every coordinate lies on the step already.
    #[must_use]
    pub fn is_nothing(&self) -> bool {
        self.moved < 1e-6
    }

    /// In one sentence.
    #[must_use]
    pub fn text(&self, shop: &Shop) -> String {
        let wheel = format!("{} {} wheel", axle_word(self.axle), self.side.word());
        if self.is_nothing() {
            return format!(
                "{wheel}: nothing. Every coordinate lies on {} already; largest toe change {:.3}\u{b0}.",
                shop.step.label(),
                self.largest()[0].to_degrees()
            );
        }
        let [before, after] = self.largest().map(f64::to_degrees);
        let [rms_before, rms_after] = self.rms().map(f64::to_degrees);
        format!(
            "{wheel}, to {}: largest toe change {before:.3}\u{b0} becomes {after:.3}\u{b0}, RMS {rms_before:.3}\u{b0} becomes {rms_after:.3}\u{b0}; no point moves by more than {:.2} mm.",
            shop.step.label(),
            self.moved
        )
    }
}

/// The points that decide toe and are printed.
pub(crate) const POINTS: [PointName; 9] = [
    PointName::UpperFrontPivot,
    PointName::UpperRearPivot,
    PointName::UpperBallJoint,
    PointName::LowerFrontPivot,
    PointName::LowerRearPivot,
    PointName::LowerBallJoint,
    PointName::TieRodInner,
    PointName::TieRodOuter,
    PointName::WheelCentre,
];

/// What rounding costs at every wheel whose curve differs: the left ones, and right ones with points of their own.
///
/// # Errors
/// In words, why the rounded build can't be posed.
pub fn rounding_costs(build: &Build) -> Result<Vec<RoundingCost>, String> {
    let shop = Shop::of(build);
    let axles = [AxleName::Front, AxleName::Rear];
    let there = axles.into_iter().filter(|a| build.axle_spec(*a).is_some());
    let mut costs = Vec::new();
    for axle in there {
        let (rounded, moved) = rounded(build, axle, &shop)?;
        let study = |build: &Build| AxleStudy::of(build, axle).map_err(|e| e.to_string());
        let (before, after) = (study(build)?, study(&rounded)?);
        let own = build.axle_spec(axle).is_some_and(|s| !s.right.is_empty());
        let sides: &[Side] = if own {
            &[Side::Left, Side::Right]
        } else {
            &[Side::Left]
        };
        for side in sides {
            costs.push(RoundingCost {
                axle,
                side: *side,
                before: before.curve(*side).clone(),
                after: after.curve(*side).clone(),
                moved,
            });
        }
    }
    Ok(costs)
}

/// The build with an axle's points rounded, and how far the farthest went.
fn rounded(build: &Build, axle: AxleName, shop: &Shop) -> Result<(Build, f64), String> {
    let mm = build.unit.mm();
    let mut moves = Vec::new();
    let mut farthest: f64 = 0.0;
    for point in POINTS {
        for side in [Side::Left, Side::Right] {
            if side == Side::Right && !build.has_own_right_point(axle, point) {
                continue;
            }
            let at = PointRef { axle, side, point };
            let Some(here) = build.point_mm(at) else {
                continue;
            };
            let there: Point = shop.rounded(here);
            farthest = farthest.max((there - here).norm());
            moves.push((at, [there.x / mm, there.y / mm, there.z / mm]));
        }
    }
    let mut free = build.clone();
    // Locks hold points against hand and tuning, not against the saw.
    free.locked.clear();
    let rounded = Edit::MovePoints(moves)
        .apply(&free)
        .map_err(|e| e.to_string())?;
    Ok((rounded, farthest))
}

/// A sheet for each wheel.
pub(crate) fn drafts(costs: &[RoundingCost], shop: &Shop) -> Made {
    let draft = |cost: &RoundingCost| {
        let title = format!(
            "What rounding costs, {} {}",
            cost.axle.word(),
            cost.side.word()
        );
        if cost.before.stations.len() < 2 {
            return Err(NotMade::new(title, "The wheel's curve can't be drawn."));
        }
        Ok(Draft {
            heed: Vec::new(),
            name: file_name(&title),
            kind: "toe curve",
            group: Group::Lists,
            at: None,
            material: String::new(),
            quantity: String::new(),
            body: Body::Figure(
                Box::new(toe_curves(&title, &cost.before, &cost.after, shop)),
                "-".to_owned(),
            ),
            notes: vec![
                cost.text(shop),
                format!(
                    "Rounded are all coordinates as the fixture sheet prints them, from its datum, to {}. The tie rod is wound to its static toe again afterwards.",
                    shop.step.label()
                ),
                "Rack at its centre. Joints' play, bending and the errors of marking out come on top.".to_owned(),
            ],
            sawn: Vec::new(),
            title,
        })
    };
    costs.iter().map(draft).collect()
}
