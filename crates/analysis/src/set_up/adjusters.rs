//! What a build can adjust, in the kernel's units.

use trammel_build::{Build, Side, StackRange, defaults};
use trammel_geometry::Vector;
use trammel_setup::{Adjuster, RodThread, Shared};

use super::NextFault;
use crate::{rack_end_thread, rod_per_turn};

/// Adjusters of one side, the one both sides share, and the tie rod's thread.
pub(super) struct Kernel {
    /// Left and right.
    pub own: [Vec<Adjuster>; 2],
    pub shared: Option<Shared>,
    pub rod: RodThread,
    pub assumed: bool,
}

impl Kernel {
    /// The adjusters of one side.
    pub(super) fn of(&self, side: Side) -> &[Adjuster] {
        let [left, right] = &self.own;
        match side {
            Side::Left => left,
            Side::Right => right,
        }
    }
}

/// Which way washers under the outer joint move it.
pub(super) fn washers_along(build: &Build) -> Vector {
    let bolt = build
        .set_up
        .adjusters
        .washers_along
        .or(build.front.joint_bolts.outer);
    bolt.map_or_else(Vector::z, trammel_build::BoltAxis::direction)
}

/// As the build says; where it says nothing at all, the usual ones.
pub(super) fn adjusters(build: &Build) -> Result<Kernel, NextFault> {
    let a = &build.set_up.adjusters;
    let assumed = a.rack_end.is_none() && a.washers.is_none() && a.shims.is_none();
    let pitch = rack_end_thread(build)?.pitch();
    let mm = build.unit.mm();
    let usual = |(thickness, more, fewer): (f64, u32, u32)| StackRange {
        thickness: thickness / mm,
        more,
        fewer,
        only: None,
    };
    let turns = match (a.rack_end, assumed) {
        (Some(r), _) => Some((r.turns_out, r.turns_in, r.only)),
        (None, true) => Some((defaults::RACK_END_TURNS, defaults::RACK_END_TURNS, None)),
        (None, false) => None,
    };
    let washers = a
        .washers
        .or_else(|| assumed.then(|| usual(defaults::WASHERS)));
    let shims = a.shims.or_else(|| assumed.then(|| usual(defaults::SHIMS)));
    let mut own: Vec<(Adjuster, Option<Side>)> = Vec::new();
    if let Some((out, back, only)) = turns {
        own.push((Adjuster::rack_end(pitch, out, back)?, only));
    }
    if let Some(w) = washers {
        let along = washers_along(build);
        let washers = Adjuster::outer_washer(w.thickness * mm, along, w.more, w.fewer)?;
        own.push((washers, w.only));
    }
    let mut shared = None;
    if let Some(s) = shims {
        let shims = Adjuster::rack_shim(s.thickness * mm, s.more, s.fewer)?;
        match s.only {
            None => shared = Some(Shared(shims)),
            Some(_) => own.push((shims, s.only)),
        }
    }
    let of = |side| {
        let here = own
            .iter()
            .filter(|(_, only)| only.is_none_or(|s| s == side));
        here.map(|(a, _)| *a).collect()
    };
    Ok(Kernel {
        own: [of(Side::Left), of(Side::Right)],
        shared,
        rod: RodThread {
            per_turn: rod_per_turn(build)?,
            range: a.rod.map(|r| (r.shorter * mm, r.longer * mm)),
        },
        assumed,
    })
}
