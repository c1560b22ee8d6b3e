//! The two tubes of an A-arm as struts and beams.
//!
//! The arm is a triangle: a tube from each pivot to the ball joint, in one plane.
//! - In the plane it is a truss: the ball joint's force pulls and pushes along the tubes. Between spring mount and pivots the spring's part in the
//!   plane is added, as if it acted at the ball joint.
//! - Across the plane only an arm with a spring is loaded: it bends like a beam on its pivots, most at the spring's mount, by the ball joint's
//!   cross force times the distance between mount and ball joint, seen across the pivot axis. The tube or tubes that carry the mount share that moment; all of it
//!   is taken as bending.
//!
//! Checked are the sum of axial and bending stress, and for a pushed tube `P/Pcr + M/(Sy W (1 - P/Pe))` against one, with pinned ends over its whole length.
//! Offsets of pivots and ball joint from the tubes' centre lines, cross braces and welds are not in it.

use nalgebra::{Point3, Vector3};

use crate::check::{Check, Finding, mpa};
use crate::column::{Column, Ends};
use crate::material::MaterialStrength;
use crate::number::{BadNumber, positive};
use crate::section::Profile;
use crate::source::{Limit, Source};
use crate::statics::{ArmForces, ArmJoints};
use crate::tie_rod::BEAM;

/// Compression and bending together.
pub const BEAM_COLUMN: Source = Source::from_memory(
    "Timoshenko & Gere, Theory of Elastic Stability",
    "beam-columns, moment grown by 1/(1 - P/Pe); straight-line interaction as in AISC chapter H",
);

/// Part of Euler's load up to which the growth of the moment is worked out; above it the tube has gone anyway.
const GROWTH_UP_TO: f64 = 0.9;
/// Smallest sine between the tubes, and of the arm's plane, that is divided by.
const LEAST_SINE: f64 = 1e-9;

/// The tubes of an arm: both alike.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ArmTubes {
    profile: Profile,
    strength: MaterialStrength,
    share: f64,
}

/// The spring on the arm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpringOnArm {
    /// Its mount, mm.
    pub mount: Point3<f64>,
    /// Its force on the arm, N.
    pub force: Vector3<f64>,
}

impl ArmTubes {
    /// Tubes of this profile and material, of which `carrying` (1 or 2) carry the spring's mount.
    ///
    /// # Errors
    /// A number of carrying tubes below one or above two.
    pub fn new(
        profile: Profile,
        strength: MaterialStrength,
        carrying: f64,
    ) -> Result<Self, BadNumber> {
        let what = "the number of tubes that carry the spring's mount";
        positive(what, carrying)?;
        if !(1.0..=2.0).contains(&carrying) {
            return Err(BadNumber {
                what,
                found: carrying,
                expected: "1 or 2",
            });
        }
        Ok(Self {
            profile,
            strength,
            share: 1.0 / carrying,
        })
    }

    /// The checks of both tubes under these forces; nothing for an arm that has no plane.
    pub fn check(
        &self,
        joints: &ArmJoints,
        forces: &ArmForces,
        spring: Option<SpringOnArm>,
        mut found: impl FnMut(Finding),
    ) {
        let Some(plane) = Plane::of(joints) else {
            return;
        };
        let at_ball = -forces.ball_joint_on_upright;
        let on_spring = spring.map_or_else(Vector3::zeros, |spring| spring.force);
        let bending = spring.map_or(0.0, |spring| {
            let between = plane.reach(joints.ball_joint) - plane.reach(spring.mount);
            (at_ball.dot(&plane.normal) * between).abs() * self.share
        });
        let outer = plane.tensions(at_ball);
        let inner = plane.tensions(at_ball + on_spring);
        for (tube, length) in plane.lengths.into_iter().enumerate() {
            for tension in [outer, inner].map(|tensions| tensions[tube]) {
                self.check_tube(tension, bending, length, &mut found);
            }
        }
    }

    fn check_tube(&self, tension: f64, bending: f64, length: f64, found: &mut impl FnMut(Finding)) {
        let yields = self.strength.yield_mpa();
        let modulus = self.profile.least_modulus();
        let stress = tension.abs() / self.profile.area() + bending / modulus;
        let limit = mpa(yields, self.strength.source);
        found(Finding::below(Check::ArmTubeYield, stress, limit, BEAM));
        let Ok(column) = Column::new(self.profile, self.strength, length, Ends::Pinned) else {
            return;
        };
        let push = (-tension).max(0.0);
        let growth = 1.0 / (1.0 - (push / column.euler_load()).min(GROWTH_UP_TO));
        let used = push / column.critical_load().0 + bending * growth / (yields * modulus);
        let whole = Limit {
            value: 1.0,
            unit: "of what it bears",
            source: self.strength.source,
        };
        found(Finding::below(
            Check::StrutAndBeam,
            used,
            whole,
            BEAM_COLUMN,
        ));
    }
}

/// The arm's plane at a pose.
struct Plane {
    normal: Vector3<f64>,
    /// In the plane, square to the pivot axis, towards the ball joint.
    outward: Vector3<f64>,
    pivot: Point3<f64>,
    /// From ball joint to front and rear pivot, unit.
    tubes: [Vector3<f64>; 2],
    lengths: [f64; 2],
    sine: f64,
}

impl Plane {
    fn of(joints: &ArmJoints) -> Option<Self> {
        let axis = (joints.front_pivot - joints.rear_pivot).try_normalize(LEAST_SINE)?;
        let normal = axis
            .cross(&(joints.ball_joint - joints.rear_pivot))
            .try_normalize(LEAST_SINE)?;
        let to_pivots =
            [joints.front_pivot, joints.rear_pivot].map(|pivot| pivot - joints.ball_joint);
        let lengths = to_pivots.map(|tube| tube.norm());
        let tubes = [to_pivots[0] / lengths[0], to_pivots[1] / lengths[1]];
        let sine = tubes[0].cross(&tubes[1]).dot(&normal);
        (sine.abs() > LEAST_SINE).then_some(Self {
            normal,
            outward: normal.cross(&axis),
            pivot: joints.rear_pivot,
            tubes,
            lengths,
            sine,
        })
    }

    /// Distance from the pivot axis, seen in the plane.
    fn reach(&self, point: Point3<f64>) -> f64 {
        (point - self.pivot).dot(&self.outward)
    }

    /// Tension in the front and rear tube that holds a force at the ball joint.
    fn tensions(&self, force: Vector3<f64>) -> [f64; 2] {
        let [front, rear] = self.tubes;
        [
            -force.cross(&rear).dot(&self.normal) / self.sine,
            -front.cross(&force).dot(&self.normal) / self.sine,
        ]
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::material::Material;
    use approx::assert_relative_eq;

    fn tubes(carrying: f64) -> ArmTubes {
        let strength = Material::own("test", 300.0, None, 207_000.0)
            .unwrap()
            .strength(2.0)
            .unwrap();
        ArmTubes::new(Profile::round_tube(20.0, 2.0).unwrap(), strength, carrying).unwrap()
    }

    /// Pivots at +-100, ball joint 240 mm out: tubes of 260 mm.
    fn arm() -> ArmJoints {
        ArmJoints {
            front_pivot: Point3::new(100.0, 200.0, 100.0),
            rear_pivot: Point3::new(-100.0, 200.0, 100.0),
            ball_joint: Point3::new(0.0, 440.0, 100.0),
        }
    }

    fn forces(on_upright: [f64; 3]) -> ArmForces {
        ArmForces {
            ball_joint_on_upright: Vector3::from(on_upright),
            front_pivot: Vector3::zeros(),
            rear_pivot: Vector3::zeros(),
            axial_total: Vector3::zeros(),
        }
    }

    fn worst(
        tubes: &ArmTubes,
        on_upright: [f64; 3],
        spring: Option<SpringOnArm>,
        check: Check,
    ) -> f64 {
        let mut worst = 0.0_f64;
        tubes.check(&arm(), &forces(on_upright), spring, |f| {
            if f.check == check {
                worst = worst.max(f.value);
            }
        });
        worst
    }

    /// By hand: A = pi (400 - 256)/4 = 113.097 mm^2. The upright pushes the arm inwards with 2400 N: each tube carries 2400/2 x 260/240 = 1300 N, 11.494 MPa.
    /// 1000 N along the pivots: 1000/2 x 260/100 = 1300 N, one tube pulled and one pushed.
    #[test]
    fn truss_by_hand() {
        for force in [[0.0, 2400.0, 0.0], [1000.0, 0.0, 0.0]] {
            let stress = worst(&tubes(2.0), force, None, Check::ArmTubeYield);
            assert_relative_eq!(stress, 1300.0 / 113.097, max_relative = 1e-5);
        }
        let plane = Plane::of(&arm()).unwrap();
        let [front, rear] = plane.tensions(Vector3::new(0.0, -2400.0, 0.0));
        assert_relative_eq!(front, -1300.0, max_relative = 1e-12);
        assert_relative_eq!(rear, -1300.0, max_relative = 1e-12);
        // 1000 N forward on the arm: the rear tube is pulled.
        let [front, rear] = plane.tensions(Vector3::new(1000.0, 0.0, 0.0));
        assert_relative_eq!(front, -1300.0, max_relative = 1e-12);
        assert_relative_eq!(rear, 1300.0, max_relative = 1e-12);
    }

    /// Spring 140 mm out, upright on the arm: 1000 N of road at the ball joint bend by 1000 x 100 = 100000 N mm at the mount; W = pi (20^4 - 16^4)/640 = 463.70:
    /// 215.66 MPa on one tube, half of it on two.
    #[test]
    fn beam_by_hand() {
        let spring = SpringOnArm {
            mount: Point3::new(0.0, 340.0, 130.0),
            force: Vector3::new(0.0, 0.0, -1714.0),
        };
        let on_upright = [0.0, 0.0, -1000.0];
        for (carrying, stress) in [(1.0, 215.66), (2.0, 107.83)] {
            let found = worst(
                &tubes(carrying),
                on_upright,
                Some(spring),
                Check::ArmTubeYield,
            );
            assert_relative_eq!(found, stress, max_relative = 1e-4);
        }
        // Without any push along the tubes, what is used is the bending stress over the yield strength.
        let used = worst(&tubes(1.0), on_upright, Some(spring), Check::StrutAndBeam);
        assert_relative_eq!(used, 215.66 / 300.0, max_relative = 1e-4);
        // The spring's part in the plane loads the tubes between mount and pivots only.
        let leaning = SpringOnArm {
            force: Vector3::new(0.0, 2400.0, -1714.0),
            ..spring
        };
        let found = worst(&tubes(2.0), on_upright, Some(leaning), Check::ArmTubeYield);
        assert_relative_eq!(found, 107.83 + 11.494, max_relative = 1e-4);
    }

    /// The upright pushes the arm inwards with 2400 N and each tube with 1300 N towards its buckling load; pulled outwards none buckles. A spring that leans
    /// outwards pulls the tubes behind its mount, one that leans inwards pushes them.
    #[test]
    fn only_a_push_buckles() {
        let tube = tubes(2.0);
        let column = Column::new(tube.profile, tube.strength, 260.0, Ends::Pinned).unwrap();
        let pushed = worst(&tube, [0.0, 2400.0, 0.0], None, Check::StrutAndBeam);
        assert_relative_eq!(
            pushed,
            1300.0 / column.critical_load().0,
            max_relative = 1e-9
        );
        assert_eq!(
            worst(&tube, [0.0, -2400.0, 0.0], None, Check::StrutAndBeam),
            0.0
        );
        let leaning = |outwards: f64| {
            let spring = SpringOnArm {
                mount: Point3::new(0.0, 340.0, 130.0),
                force: Vector3::new(0.0, outwards, -1714.0),
            };
            worst(
                &tube,
                [0.0, 0.0, -1000.0],
                Some(spring),
                Check::StrutAndBeam,
            )
        };
        let bent = 107.83 / 300.0;
        assert_relative_eq!(leaning(2400.0), bent, max_relative = 1e-4);
        assert!(leaning(-2400.0) > bent + 1300.0 / column.critical_load().0);
    }

    /// A pushed tube uses its buckling load, and its bending grows with the push.
    #[test]
    fn a_push_makes_bending_grow() {
        let tube = tubes(1.0);
        let column = Column::new(tube.profile, tube.strength, 260.0, Ends::Pinned).unwrap();
        let push = 0.25 * column.euler_load();
        let mut used = 0.0;
        tube.check_tube(-push, 50_000.0, 260.0, &mut |f: Finding| used = f.value);
        let bending = 50_000.0 / (300.0 * tube.profile.least_modulus());
        let expected = push / column.critical_load().0 + bending / 0.75;
        assert_relative_eq!(used, expected, max_relative = 1e-12);
    }

    #[test]
    fn no_plane_no_findings() {
        let mut flat = arm();
        flat.ball_joint = Point3::new(10.0, 200.0, 100.0);
        let mut count = 0;
        tubes(1.0).check(&flat, &forces([1.0; 3]), None, |_| count += 1);
        assert_eq!(count, 0);
        let (profile, strength) = (tubes(1.0).profile, tubes(1.0).strength);
        assert!(ArmTubes::new(profile, strength, 3.0).is_err());
        assert!(ArmTubes::new(profile, strength, f64::NAN).is_err());
    }
}
