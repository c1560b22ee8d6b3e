//! Keep-outs as the kernel of tuning has them.

use trammel_build::{Axis, AxleName, Build, KeepOutCorners};
use trammel_geometry::Point;
use trammel_tuning::Block;

/// Where no tie-rod joint of an axle may be: every keep-out that counts for it and its twin on the other side, mm. A corner
/// sees the same whether it is the left one or the right one in the mirror.
#[must_use]
pub fn blocks(build: &Build, axle: AxleName) -> Vec<Block> {
    let mm = build.unit.mm();
    let block = |corners: KeepOutCorners| {
        let mut low = Point::from([f64::NEG_INFINITY; 3]);
        let mut high = Point::from([f64::INFINITY; 3]);
        for axis in Axis::ALL {
            if let Some([a, b]) = corners.along(axis) {
                low[axis.index()] = mm * a.min(b);
                high[axis.index()] = mm * a.max(b);
            }
        }
        Block { low, high }
    };
    let all = build.keep_outs.iter().map(|k| k.corners);
    let counting = all.filter(|corners| corners.counts_for(axle));
    let twins = counting.flat_map(|corners| [corners, corners.mirrored()]);
    let mut blocks: Vec<Block> = Vec::new();
    for block in twins.map(block) {
        if !blocks.contains(&block) {
            blocks.push(block);
        }
    }
    blocks
}
