//! As built against as drawn: what moved, by how much, and what each does to toe.

use trammel_geometry::{Corner, Linkage, Vector, greatest_first};
use trammel_tuning::{Hardpoint, Stations, ToeCurves};

/// A hardpoint that is not where it was drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moved {
    /// Which.
    pub point: Hardpoint,
    /// As built less as drawn, mm.
    pub by: Vector,
    /// What it alone does to the toe change, rad: the largest over the stations, with its sign. `None` where the corner can't be swept
    /// with it.
    pub toe_change: Option<f64>,
}

/// The hardpoints of two corners that differ by more than `least` mm, those that do most to toe first.
#[must_use]
pub fn moved(drawn: &Corner, built: &Corner, stations: &Stations, least: f64) -> Vec<Moved> {
    let curves = |corner: &Corner| ToeCurves::of(&Linkage::new(corner).ok()?, stations).ok();
    let before = curves(drawn);
    let effect = |point: Hardpoint| {
        let mut one = *drawn;
        *point.of(&mut one) = *point.of(&mut built.clone());
        let after = curves(&one)?;
        let apart = after
            .changes()
            .zip(before.as_ref()?.changes())
            .map(|(a, b)| a - b);
        apart.max_by(|a, b| a.abs().total_cmp(&b.abs()))
    };
    let mut all: Vec<Moved> = Hardpoint::ALL
        .into_iter()
        .map(|point| {
            (
                point,
                *point.of(&mut built.clone()) - *point.of(&mut drawn.clone()),
            )
        })
        .filter(|(_, by)| by.norm() > least)
        .map(|(point, by)| Moved {
            point,
            by,
            toe_change: effect(point),
        })
        .collect();
    let size = |m: &Moved| m.toe_change.map_or(f64::INFINITY, f64::abs);
    greatest_first(&mut all, size);
    all
}
