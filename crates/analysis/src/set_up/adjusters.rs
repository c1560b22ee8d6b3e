//! What a build can adjust, in the kernel's units.

use trammel_build::{Build, StackRange, defaults};
use trammel_geometry::Vector;
use trammel_setup::{Adjuster, RodThread, Shared};
use trammel_strength::thread::Thread;

use super::NextFault;

/// Adjusters of one side, the one both sides share, and the tie rod's thread.
pub(super) struct Kernel {
    pub own: Vec<Adjuster>,
    pub shared: Option<Shared>,
    pub rod: RodThread,
    pub assumed: bool,
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
    let thread = Thread::find(
        build
            .front
            .rack_end
            .thread
            .as_deref()
            .unwrap_or(defaults::THREAD),
    )?;
    let pitch = thread.pitch();
    let rod_pitch = match build.front.parts.tie_rod.thread.as_deref() {
        Some(name) => Thread::find(name)?.pitch(),
        None => pitch,
    };
    let mm = build.unit.mm();
    let usual = |(thickness, more, fewer): (f64, u32, u32)| StackRange {
        thickness: thickness / mm,
        more,
        fewer,
    };
    let turns = match (a.rack_end, assumed) {
        (Some(r), _) => Some((r.turns_out, r.turns_in)),
        (None, true) => Some((defaults::RACK_END_TURNS, defaults::RACK_END_TURNS)),
        (None, false) => None,
    };
    let washers = a
        .washers
        .or_else(|| assumed.then(|| usual(defaults::WASHERS)));
    let shims = a.shims.or_else(|| assumed.then(|| usual(defaults::SHIMS)));
    let mut own = Vec::new();
    if let Some((out, back)) = turns {
        own.push(Adjuster::rack_end(pitch, out, back)?);
    }
    if let Some(w) = washers {
        own.push(Adjuster::outer_washer(
            w.thickness * mm,
            washers_along(build),
            w.more,
            w.fewer,
        )?);
    }
    let shared = shims
        .map(|s| Adjuster::rack_shim(s.thickness * mm, s.more, s.fewer))
        .transpose()?;
    Ok(Kernel {
        own,
        shared: shared.map(Shared),
        rod: RodThread {
            per_turn: a.rod.map_or(rod_pitch, |r| r.per_turn * mm),
            range: a.rod.map(|r| (r.shorter * mm, r.longer * mm)),
        },
        assumed,
    })
}
