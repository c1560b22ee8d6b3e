//! The fixture sheet: every hardpoint from the user's datum, and the distances to tape across the frame.

use trammel_analysis::TravelCurve;
use trammel_build::{AxleName, Build, PointName, PointRef, Side, defaults as usual, signed};
use trammel_drawings::table::Table;
use trammel_geometry::{Corner, Linkage, Point, Vector};

use crate::{
    Shop, defaults,
    draft::{Draft, Made, axle_word},
};

const TITLE: &str = "Fixture sheet";

pub(crate) fn drafts(build: &Build, axles: &[AxleName], shop: &Shop) -> Made {
    let mut tables = vec![datum(build, shop)];
    for axle in axles {
        tables.push(points(build, *axle, shop));
    }
    for axle in axles {
        tables.push(diagonals(build, *axle, shop));
    }
    Ok(vec![Draft::lists(TITLE, "coordinates", tables)])
}

fn datum(build: &Build, shop: &Shop) -> Table {
    let mut table = Table::new("Datum", &["What"]);
    let d = shop.datum;
    table.row(["x ahead, y to the left of the centreline, z up; all from the datum. A right-hand point has the same figures with y to the right, unless it is listed.".to_owned()]);
    table.row([format!(
        "The datum stands {} ahead of, {} left of and {} above the point on the ground under the front wheel centres, in the centre plane.",
        shop.text(d.x),
        shop.text(d.y),
        shop.text(d.z)
    )]);
    table.row([format!("Printed to {}; left over is what the fraction leaves, in thousandths of an inch or hundredths of a mm.", shop.step.label())]);
    let limit = build
        .limits
        .toe_change_deg
        .unwrap_or(usual::TOE_CHANGE_LIMIT_DEG);
    table.row([format!(
        "Within, at the check distances: how far the left point may be out along the tape before it alone costs {:.2}\u{b0} of toe change, a tenth of the limit (a judgement, no source); never wider than {}.",
        limit * defaults::TOE_SHARE,
        within_text(defaults::WIDEST_TOLERANCE, shop)
    )]);
    table
}

fn points(build: &Build, axle: AxleName, shop: &Shop) -> Table {
    let mut table = Table::new(
        format!("{} axle: hardpoints", axle_word(axle)),
        &[
            "Point",
            "#x",
            "#y",
            "#z height",
            "#Left over x, y, z",
            "As built x, y, z",
        ],
    );
    for point in PointName::ALL {
        for side in [Side::Left, Side::Right] {
            if side == Side::Right && !build.has_own_right_point(axle, point) {
                continue;
            }
            let Some(at) = build.point_mm(PointRef { axle, side, point }) else {
                continue;
            };
            let from = at.coords - shop.datum;
            let name = match side {
                Side::Left => point.label().to_owned(),
                Side::Right => format!("{}, right", point.label()),
            };
            let left_over = from.iter().map(|v| left_over(*v, shop)).collect::<Vec<_>>();
            table.row([
                name,
                shop.text(from.x),
                shop.text(from.y),
                shop.text(from.z),
                left_over.join("  "),
                "_____  _____  _____".to_owned(),
            ]);
        }
    }
    table
}

fn left_over(v: f64, shop: &Shop) -> String {
    let rest = v - shop.style.rounded(v);
    match shop.style.unit {
        trammel_fabrication::shown::ShopUnit::Inch { .. } => signed(rest / 25.4 * 1000.0, 0),
        trammel_fabrication::shown::ShopUnit::Millimetre { .. } => signed(rest * 100.0, 0),
    }
}

/// A tolerance in the unit that leads: thousandths of an inch, or tenths of a millimetre.
fn within_text(within: f64, shop: &Shop) -> String {
    match shop.style.unit {
        trammel_fabrication::shown::ShopUnit::Inch { .. } => format!("{:.3} in", within / 25.4),
        trammel_fabrication::shown::ShopUnit::Millimetre { .. } => format!("{within:.1} mm"),
    }
}

/// What is taped: the same point left to right, and each to the next one's other side.
const PAIRS: [(PointName, PointName); 11] = [
    (PointName::UpperFrontPivot, PointName::UpperFrontPivot),
    (PointName::UpperRearPivot, PointName::UpperRearPivot),
    (PointName::LowerFrontPivot, PointName::LowerFrontPivot),
    (PointName::LowerRearPivot, PointName::LowerRearPivot),
    (PointName::TieRodInner, PointName::TieRodInner),
    (PointName::SpringChassisMount, PointName::SpringChassisMount),
    (PointName::UpperFrontPivot, PointName::UpperRearPivot),
    (PointName::LowerFrontPivot, PointName::LowerRearPivot),
    (PointName::UpperFrontPivot, PointName::LowerFrontPivot),
    (PointName::UpperRearPivot, PointName::LowerRearPivot),
    (PointName::TieRodInner, PointName::LowerFrontPivot),
];

fn diagonals(build: &Build, axle: AxleName, shop: &Shop) -> Table {
    let mut table = Table::new(
        format!(
            "{} axle: check distances, left point to right point",
            axle_word(axle)
        ),
        &[
            "From left",
            "To right",
            "#Distance",
            "#Within",
            "The other way",
            "As built",
        ],
    );
    let sense = Sense::of(build, axle);
    for (from, to) in PAIRS {
        let at = |side, point| build.point_mm(PointRef { axle, side, point });
        let (Some(left), Some(right)) = (at(Side::Left, from), at(Side::Right, to)) else {
            continue;
        };
        let distance = right - left;
        let way = distance.try_normalize(1e-9).unwrap_or(Vector::y());
        let within = sense.as_ref().map_or(f64::NAN, |s| s.tolerance(from, way));
        let other = match (from == to, at(Side::Left, to), at(Side::Right, from)) {
            (false, Some(a), Some(b)) => shop.text((b - a).norm()),
            _ => String::new(),
        };
        table.row([
            from.label().to_owned(),
            to.label().to_owned(),
            shop.text(distance.norm()),
            format!("\u{b1}{}", within_text(within, shop)),
            other,
            "____________".to_owned(),
        ]);
    }
    table
}

/// How the left wheel's toe change answers to a point's place.
struct Sense {
    corner: Corner,
    travel: [f64; 2],
    share: f64,
    largest: f64,
}

/// Steps of a curve, and the error that is tried, mm.
const STEPS: usize = 16;
const TRIED: f64 = 0.5;

impl Sense {
    fn of(build: &Build, axle: AxleName) -> Option<Self> {
        let model = build.axle(axle).ok()?;
        let limit = build
            .limits
            .toe_change_deg
            .unwrap_or(usual::TOE_CHANGE_LIMIT_DEG);
        let corner = *model.axle.left.corner();
        let travel = [model.travel.droop, model.travel.bump];
        Some(Self {
            largest: largest(&corner, travel)?,
            corner,
            travel,
            share: defaults::TOE_SHARE * limit.to_radians(),
        })
    }

    /// How far a point may be out along `way`, either way, mm.
    fn tolerance(&self, point: PointName, way: Vector) -> f64 {
        let cost = [-TRIED, TRIED]
            .into_iter()
            .filter_map(|by| {
                let mut corner = self.corner;
                *slot(&mut corner, point)? += way * by;
                Some((largest(&corner, self.travel)? - self.largest).abs())
            })
            .fold(0.0, f64::max);
        if cost <= 0.0 {
            return defaults::WIDEST_TOLERANCE;
        }
        (self.share / cost * TRIED).min(defaults::WIDEST_TOLERANCE)
    }
}

fn largest(corner: &Corner, [droop, bump]: [f64; 2]) -> Option<f64> {
    let linkage = Linkage::new(corner).ok()?;
    Some(
        TravelCurve::of(&linkage, droop, bump, 0.0, STEPS)
            .score
            .largest,
    )
}

fn slot(corner: &mut Corner, point: PointName) -> Option<&mut Point> {
    match point {
        PointName::UpperFrontPivot => Some(&mut corner.upper_arm.front_pivot),
        PointName::UpperRearPivot => Some(&mut corner.upper_arm.rear_pivot),
        PointName::LowerFrontPivot => Some(&mut corner.lower_arm.front_pivot),
        PointName::LowerRearPivot => Some(&mut corner.lower_arm.rear_pivot),
        PointName::TieRodInner => Some(&mut corner.tie_rod.inner),
        _ => None,
    }
}
