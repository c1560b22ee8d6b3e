//! What a turn of the rack end and of the tie rod does, and what is threaded on a rack end: one place for proof, sheets, cards and setting up.

use trammel_build::{Build, defaults};
use trammel_strength::thread::{Thread, ThreadError};

/// The rack end's thread; the usual one where the build names none.
///
/// # Errors
/// A name that is no thread.
pub fn rack_end_thread(build: &Build) -> Result<Thread, ThreadError> {
    Thread::find(
        build
            .front
            .rack_end
            .thread
            .as_deref()
            .unwrap_or(defaults::THREAD),
    )
}

/// mm of tie rod for one turn of it: as the build says, else the pitch of its own thread, else the rack end's.
///
/// # Errors
/// A name that is no thread.
pub fn rod_per_turn(build: &Build) -> Result<f64, ThreadError> {
    if let Some(rod) = build.set_up.adjusters.rod {
        return Ok(rod.per_turn * build.unit.mm());
    }
    let thread = match build.front.parts.tie_rod.thread.as_deref() {
        Some(name) => Thread::find(name)?,
        None => rack_end_thread(build)?,
    };
    Ok(thread.pitch())
}

/// How far a bracket on the rack end can be wound each way, mm: the larger of the turns that the build gives, or the usual way.
#[must_use]
pub fn rack_end_winding(build: &Build) -> f64 {
    let turns = build.set_up.adjusters.rack_end;
    turns
        .zip(rack_end_thread(build).ok())
        .map_or(defaults::RACK_END_ADJUSTMENT_MM, |(turns, thread)| {
            turns.turns_in.max(turns.turns_out) * thread.pitch()
        })
}

/// What is threaded on a rack end between its face and a bracket, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RackEndStack {
    /// Height of the bolt's head, inside the bracket.
    pub bolt_head: f64,
    /// Thickness of the jam nut.
    pub jam_nut: f64,
    /// How far the bracket can be wound each way.
    pub winding: f64,
}

impl RackEndStack {
    /// Of a build's rack ends.
    ///
    /// # Errors
    /// A name that is no thread.
    pub fn of(build: &Build) -> Result<Self, ThreadError> {
        let major = rack_end_thread(build)?.major_diameter();
        let typed = build.front.rack_end.jam_nut;
        Ok(Self {
            bolt_head: defaults::HEAD_HEIGHT_PER_THREAD * major,
            jam_nut: typed.map_or(defaults::JAM_NUT_PER_THREAD * major, |v| {
                v * build.unit.mm()
            }),
            winding: rack_end_winding(build),
        })
    }

    /// Thread that shows between nut and rack in the middle of the adjustment.
    #[must_use]
    pub fn exposed(&self) -> f64 {
        self.winding + defaults::RACK_END_ROOM_MM
    }

    /// From the inside of a bracket's base to the joint, of what lies between rack face and joint.
    #[must_use]
    pub fn height_left(&self, free_length: f64, base: f64) -> f64 {
        free_length - self.jam_nut - self.exposed() - base
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use approx::assert_relative_eq;

    fn good() -> Build {
        let [demo, ..] = trammel_persistence::demos();
        trammel_persistence::read(demo.text).unwrap()
    }

    /// The good demo: 5/8-18 at the rack end, 1/2-20 at the tie rod.
    #[test]
    fn a_rod_turns_by_its_own_thread_and_by_the_rack_ends_where_it_has_none() {
        let mut build = good();
        assert_relative_eq!(rack_end_thread(&build).unwrap().pitch(), 25.4 / 18.0);
        assert_relative_eq!(rod_per_turn(&build).unwrap(), 25.4 / 20.0);
        build.front.parts.tie_rod.thread = None;
        assert_relative_eq!(rod_per_turn(&build).unwrap(), 25.4 / 18.0);
        build.set_up.adjusters.rod = Some(trammel_build::RodRange {
            per_turn: 0.1,
            shorter: 0.5,
            longer: 0.5,
        });
        assert_relative_eq!(rod_per_turn(&build).unwrap(), 2.54);
        build.front.rack_end.thread = Some("string".into());
        assert!(rack_end_thread(&build).is_err());
    }

    /// Nut 3/8 in, an eighth each way and a millimetre behind it, base 3/16 in: 1 7/8 in leave 1.1875 in less a millimetre.
    #[test]
    fn the_height_left_for_a_bracket_by_hand() {
        let stack = RackEndStack::of(&good()).unwrap();
        let left = stack.height_left(1.875 * 25.4, 0.1875 * 25.4);
        assert_relative_eq!(left, 1.1875 * 25.4 - 1.0, epsilon = 1e-12);
        assert_relative_eq!(stack.bolt_head, 0.390_625 * 25.4, epsilon = 1e-12);
    }
}
