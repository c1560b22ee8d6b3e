//! One side over its travel.

use trammel_geometry::{Linkage, Measures, Pose, ToeScore, Unreachable, Walk};

/// A pose on a curve.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Station {
    /// The pose.
    pub pose: Pose,
    /// Its measures.
    pub measures: Measures,
    /// Toe less toe at the design height, same rack position, rad.
    pub toe_change: f64,
}

/// A side over its travel at one rack position, as far as it goes.
#[derive(Clone, Debug, PartialEq)]
pub struct TravelCurve {
    /// Rack travel, mm.
    pub rack: f64,
    /// Poses in order of travel, from droop to bump; empty when the rack position itself is out of reach.
    pub stations: Vec<Station>,
    /// What ended it in droop, if it did not reach the end asked for.
    pub droop_end: Option<Unreachable>,
    /// What ended it in bump.
    pub bump_end: Option<Unreachable>,
    /// Scores of its toe curve.
    pub score: ToeScore,
}

impl TravelCurve {
    /// The curve of `linkage` from `droop` (mm, negative) to `bump` (mm) in `count` equal steps plus the design height, rack at `rack` mm.
    #[must_use]
    pub fn of(linkage: &Linkage, droop: f64, bump: f64, rack: f64, count: usize) -> Self {
        let mut curve = Self {
            rack,
            stations: Vec::with_capacity(count + 1),
            droop_end: None,
            bump_end: None,
            score: ToeScore::of(&[], 0.0),
        };
        let start = Walk::new(linkage, rack).and_then(|mut walk| walk.pose(0.0));
        let design = match start {
            Ok(pose) => pose,
            Err(end) => {
                curve.droop_end = Some(end);
                curve.bump_end = Some(end);
                return curve;
            }
        };
        let at_design = linkage.measures(&design);
        let steps = count.max(2);
        let half = |end: f64| {
            // As many steps each way as its share of the travel.
            let n = ((steps as f64) * end.abs() / (bump - droop).abs().max(1e-9))
                .ceil()
                .max(1.0) as usize;
            let mut stations = Vec::with_capacity(n);
            let stop = extend(linkage, rack, end, n, at_design.toe, &mut stations);
            (stations, stop)
        };
        let (mut down, droop_end) = half(droop);
        let (up, bump_end) = half(bump);
        down.reverse();
        curve.stations = down;
        curve.stations.push(Station {
            pose: design,
            measures: at_design,
            toe_change: 0.0,
        });
        curve.stations.extend(up);
        curve.droop_end = droop_end;
        curve.bump_end = bump_end;
        let points: Vec<_> = curve
            .stations
            .iter()
            .map(|s| (s.pose.travel, s.toe_change))
            .collect();
        curve.score = ToeScore::of(&points, at_design.toe_rate);
        curve
    }
}

/// Poses from the design height, itself left out, to `end` mm; what stopped it, if anything did. The last pose before a stop is put at the stop.
fn extend(
    linkage: &Linkage,
    rack: f64,
    end: f64,
    n: usize,
    toe: f64,
    into: &mut Vec<Station>,
) -> Option<Unreachable> {
    let mut walk = Walk::new(linkage, rack).ok()?;
    for i in 1..=n {
        match walk.pose(end * i as f64 / n as f64) {
            Ok(pose) => into.push(station(linkage, pose, toe)),
            Err(stop) => {
                if let trammel_geometry::Limit::Travel(at) = stop.limit {
                    // A hair inside the limit, where the pose is still regular.
                    into.extend(
                        linkage
                            .pose(at * (1.0 - 1e-6), rack)
                            .ok()
                            .map(|pose| station(linkage, pose, toe)),
                    );
                }
                return Some(stop);
            }
        }
    }
    None
}

fn station(linkage: &Linkage, pose: Pose, toe_at_design: f64) -> Station {
    let measures = linkage.measures(&pose);
    Station {
        pose,
        measures,
        toe_change: measures.toe - toe_at_design,
    }
}
