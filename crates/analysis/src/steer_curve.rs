//! An axle from lock to lock.

use trammel_build::AxleModel;
use trammel_geometry::{AxlePose, Unreachable};

/// Both wheels at one rack position.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SteerStation {
    /// Rack travel, mm.
    pub rack: f64,
    /// Both sides.
    pub pose: AxlePose,
    /// Ackermann percentage, where the wheels are steered.
    pub ackermann: Option<f64>,
}

/// An axle from right lock to left lock with both wheels at the design height.
#[derive(Clone, Debug, PartialEq)]
pub struct SteerCurve {
    /// Stations in order of rack travel, as far as they go.
    pub stations: Vec<SteerStation>,
    /// What ended it before the rack's own travel did.
    pub ends: Vec<Unreachable>,
    /// Kerb-to-kerb turning circle, mm: the larger of the two locks'.
    pub turning_circle: Option<f64>,
    /// Greatest steer angle of an inner wheel, rad.
    pub greatest_steer: f64,
}

impl SteerCurve {
    /// The curve with `half` steps each way; `wheelbase` mm.
    #[must_use]
    pub fn of(model: &AxleModel, wheelbase: f64, half: usize) -> Self {
        let mut ends = Vec::new();
        let mut side = |lock: f64| {
            let mut stations = Vec::with_capacity(half);
            for i in 1..=half.max(1) {
                let rack = lock * i as f64 / half.max(1) as f64;
                match model.axle.pose(0.0, 0.0, rack) {
                    Ok(pose) => stations.push(station(rack, pose, wheelbase)),
                    Err(end) => {
                        ends.push(end);
                        break;
                    }
                }
            }
            stations
        };
        let mut stations = side(-model.lock());
        stations.reverse();
        let left = side(model.lock());
        stations.extend(
            model
                .axle
                .pose(0.0, 0.0, 0.0)
                .ok()
                .map(|pose| station(0.0, pose, wheelbase)),
        );
        stations.extend(left);
        let locks = [stations.first(), stations.last()];
        let turning_circle = locks
            .into_iter()
            .flatten()
            .filter_map(|s| s.pose.turning_circle(wheelbase))
            .reduce(f64::max);
        let greatest_steer = stations
            .iter()
            .flat_map(|s| [s.pose.left_measures.steer, s.pose.right_measures.steer])
            .map(f64::abs)
            .fold(0.0, f64::max);
        Self {
            stations,
            ends,
            turning_circle,
            greatest_steer,
        }
    }
}

fn station(rack: f64, pose: AxlePose, wheelbase: f64) -> SteerStation {
    SteerStation {
        rack,
        pose,
        ackermann: pose.ackermann(wheelbase),
    }
}
