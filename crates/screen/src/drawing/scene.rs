//! The joints of both sides, at rest and moved, in vehicle axes and mm.

use trammel_build::{AxleName, Build, PointName, PointRef, Side};
use trammel_geometry::{
    ArmName, Limit, Linkage, Measures, Point, Pose, Unreachable, Vector, Wheel,
};

use super::DrawingInput;

/// An arm's three joints.
#[derive(Clone, Copy, Debug)]
pub(crate) struct ArmJoints {
    pub front: Point,
    pub rear: Point,
    pub ball: Point,
}

/// The two ends of a spring unit.
#[derive(Clone, Copy, Debug)]
pub(crate) struct SpringJoints {
    pub arm: ArmName,
    pub chassis: Point,
    pub mount: Point,
}

/// One end of the rack.
#[derive(Clone, Copy, Debug)]
pub(crate) struct RackPlace {
    /// Unit direction out of the housing.
    pub outward: Vector,
    pub face: Point,
    pub mouth: Point,
}

/// A corner's joints in one position.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Joints {
    pub side: Side,
    pub upper: ArmJoints,
    pub lower: ArmJoints,
    pub inner: Point,
    pub outer: Point,
    pub centre: Point,
    /// Unit vector along the spin axis.
    pub spin: Vector,
    pub radius: f64,
    pub spring: Option<SpringJoints>,
    pub rack: Option<RackPlace>,
}

/// A member that ran out before the asked position.
#[derive(Clone, Copy, Debug)]
pub(crate) struct OutOfReach {
    pub side: Side,
    pub fault: Unreachable,
    /// Middle of the member where it ran out.
    pub near: Point,
}

/// A side's pose in the kernel's own left-hand frame.
#[derive(Clone, Copy, Debug)]
pub(crate) struct PosedSide {
    pub side: Side,
    pub pose: Pose,
    pub measures: Measures,
    pub linkage: Linkage,
}

impl PosedSide {
    /// From the kernel's left-hand frame into vehicle axes.
    pub(crate) fn vehicle(&self, p: Point) -> Point {
        self.side.place_in_vehicle(p)
    }
}

/// What is on the table.
#[derive(Clone, Debug)]
pub(crate) struct Scene {
    pub axle: AxleName,
    /// Left and right, as typed.
    pub rest: [Option<Joints>; 2],
    /// The same at the travel and rack position asked for, or as far as they go; none at the design position.
    pub moved: [Option<Joints>; 2],
    /// The poses behind it, at rest too.
    pub posed: [Option<PosedSide>; 2],
    pub out: Vec<OutOfReach>,
}

/// Moved by less than this counts as at rest.
const AT_REST_MM: f64 = 0.05;

const SIDES: [Side; 2] = [Side::Left, Side::Right];

impl Scene {
    pub(crate) fn new(input: &DrawingInput<'_>) -> Self {
        let rest = SIDES.map(|side| Joints::at_rest(input.build, input.axle, side));
        let mut scene = Self {
            axle: input.axle,
            rest,
            moved: [None, None],
            posed: [None, None],
            out: Vec::new(),
        };
        let Some(study) = input.study.axle(input.axle) else {
            return scene;
        };
        // A float's dust off the design position is not worth a second set of lines.
        let away = [input.travel, input.rack]
            .iter()
            .any(|t| t.abs() > AT_REST_MM);
        let places = rest.iter().zip(&mut scene.moved).zip(&mut scene.posed);
        for ((rest, moved), posed) in places {
            let Some(rest) = rest else { continue };
            let linkage = study.model.linkage(rest.side);
            let (pose, fault) = farthest(linkage, input.travel, input.rack);
            let Some(pose) = pose else { continue };
            let side = PosedSide {
                side: rest.side,
                pose,
                measures: linkage.measures(&pose),
                linkage: *linkage,
            };
            let there = rest.moved(&side);
            if let Some(fault) = fault {
                scene.out.push(OutOfReach {
                    side: rest.side,
                    fault,
                    near: there.middle_of(fault.member),
                });
            }
            *moved = away.then_some(there);
            *posed = Some(side);
        }
        scene
    }

    /// A side at rest.
    pub(crate) fn side(&self, side: Side) -> Option<&Joints> {
        self.rest.iter().flatten().find(|j| j.side == side)
    }

    /// A side's pose.
    pub(crate) fn pose(&self, side: Side) -> Option<&PosedSide> {
        self.posed.iter().flatten().find(|p| p.side == side)
    }

    /// Both bore mouths, left first, where the axle has a rack.
    pub(crate) fn mouths(&self) -> Option<[RackPlace; 2]> {
        let [left, right] = self.rest;
        Some([left?.rack?, right?.rack?])
    }
}

/// The pose asked for, or the last one on the way to it with the reason. No pose where the linkage can't even stand at its design position.
fn farthest(linkage: &Linkage, travel: f64, rack: f64) -> (Option<Pose>, Option<Unreachable>) {
    let fault = match linkage.pose(travel, rack) {
        Ok(pose) => return (Some(pose), None),
        Err(fault) => fault,
    };
    // The limit itself is the edge of the reach, so rounding may put it just outside.
    let pose = [1.0 - 1e-9, 1.0 - 1e-6, 1.0 - 1e-3, 0.0]
        .into_iter()
        .find_map(|part| match fault.limit {
            Limit::Travel(t) => linkage.pose(t * part, rack).ok(),
            Limit::Rack(r) => linkage.pose(0.0, r * part).ok(),
        });
    (pose, Some(fault))
}

impl Joints {
    pub(crate) fn at_rest(build: &Build, axle: AxleName, side: Side) -> Option<Self> {
        let spec = build.axle_spec(axle)?;
        let at = |point| build.point_mm(PointRef { axle, side, point });
        let arm = |front, rear, ball| {
            Some(ArmJoints {
                front: at(front)?,
                rear: at(rear)?,
                ball: at(ball)?,
            })
        };
        use PointName as P;
        let centre = at(P::WheelCentre)?;
        let radius = spec.wheel.loaded_radius * build.unit.mm();
        let spin = Wheel {
            centre,
            loaded_radius: radius,
            toe: spec.wheel.toe_deg.to_radians(),
            camber: spec.wheel.camber_deg.to_radians(),
        }
        .spin_axis();
        let axis = spec.rack.direction();
        Some(Self {
            side,
            upper: arm(P::UpperFrontPivot, P::UpperRearPivot, P::UpperBallJoint)?,
            lower: arm(P::LowerFrontPivot, P::LowerRearPivot, P::LowerBallJoint)?,
            inner: at(P::TieRodInner)?,
            outer: at(P::TieRodOuter)?,
            centre,
            spin: side.way_in_vehicle(spin),
            radius,
            spring: spec.spring.as_ref().and_then(|s| {
                Some(SpringJoints {
                    arm: s.arm,
                    chassis: at(P::SpringChassisMount)?,
                    mount: at(P::SpringArmMount)?,
                })
            }),
            rack: at(P::RackFace)
                .zip(at(P::RackBoreMouth))
                .map(|(face, mouth)| RackPlace {
                    outward: if side == Side::Left { axis } else { -axis },
                    face,
                    mouth,
                }),
        })
    }

    /// The same corner in another pose.
    fn moved(&self, posed: &PosedSide) -> Self {
        let at = |p| posed.vehicle(p);
        let pose = &posed.pose;
        let inner = at(pose.tie_rod_inner);
        Self {
            upper: ArmJoints {
                ball: at(pose.upper_ball_joint),
                ..self.upper
            },
            lower: ArmJoints {
                ball: at(pose.lower_ball_joint),
                ..self.lower
            },
            inner,
            outer: at(pose.tie_rod_outer),
            centre: at(pose.wheel_centre),
            spin: self.side.way_in_vehicle(pose.spin_axis),
            spring: self.spring.map(|s| SpringJoints {
                mount: pose.spring_arm_mount.map_or(s.mount, at),
                ..s
            }),
            rack: self.rack.map(|r| RackPlace {
                face: r.face + (inner - self.inner),
                ..r
            }),
            ..*self
        }
    }

    /// Where a point is, if this corner has it.
    pub(crate) fn at(&self, point: PointName) -> Option<Point> {
        use PointName as P;
        Some(match point {
            P::UpperFrontPivot => self.upper.front,
            P::UpperRearPivot => self.upper.rear,
            P::UpperBallJoint => self.upper.ball,
            P::LowerFrontPivot => self.lower.front,
            P::LowerRearPivot => self.lower.rear,
            P::LowerBallJoint => self.lower.ball,
            P::TieRodInner => self.inner,
            P::TieRodOuter => self.outer,
            P::WheelCentre => self.centre,
            P::SpringChassisMount => self.spring?.chassis,
            P::SpringArmMount => self.spring?.mount,
            P::RackFace => self.rack?.face,
            P::RackBoreMouth => self.rack?.mouth,
        })
    }

    /// Every point that this corner has.
    pub(crate) fn points(&self) -> impl Iterator<Item = (PointName, Point)> {
        PointName::ALL
            .into_iter()
            .filter_map(|name| Some((name, self.at(name)?)))
    }

    /// The arm that a spring stands on.
    pub(crate) fn arm(&self, name: ArmName) -> &ArmJoints {
        match name {
            ArmName::Upper => &self.upper,
            ArmName::Lower => &self.lower,
        }
    }

    fn middle_of(&self, member: trammel_geometry::Member) -> Point {
        use trammel_geometry::Member as M;
        match member {
            M::UpperArm => middle(self.upper.front, self.upper.ball),
            M::LowerArm => middle(self.lower.front, self.lower.ball),
            M::TieRod => middle(self.inner, self.outer),
        }
    }
}

fn middle(a: Point, b: Point) -> Point {
    a + (b - a) * 0.5
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        drawing::{KeepOutHand, test_scene},
        tokens::Tokens,
    };
    use trammel_analysis::Study;
    use trammel_geometry::{mirror_point, mirror_vector};

    fn scene(travel: f64) -> Scene {
        let build = test_scene::build();
        let study = Study::of(&build).unwrap();
        Scene::new(&DrawingInput {
            build: &build,
            study: &study,
            axle: AxleName::Front,
            travel,
            rack: 0.0,
            selected: None,
            hovered: None,
            snap: 0.0,
            fine_snap: 0.0,
            instant_centres: false,
            keep_outs: KeepOutHand::default(),
            map: None,
            marks: &[],
            forces: None,
            marked: None,
            remarks: &[],
            tokens: &Tokens::dark(),
        })
    }

    #[test]
    fn the_design_position_has_no_second_set_of_lines() {
        assert!(scene(0.0).moved.iter().all(Option::is_none));
        assert!(scene(1e-9).moved.iter().all(Option::is_none));
    }

    #[test]
    fn a_moved_wheel_stands_higher_on_both_sides_and_the_right_is_the_mirror() {
        let scene = scene(50.0);
        let [left, right] = scene.moved.map(Option::unwrap);
        let rest = scene.side(Side::Left).unwrap();
        assert!((left.centre.z - rest.centre.z - 50.0).abs() < 1e-6);
        assert!((right.centre - mirror_point(left.centre)).norm() < 1e-9);
        assert!((right.spin - mirror_vector(left.spin)).norm() < 1e-9);
        assert!(scene.out.is_empty());
    }

    #[test]
    fn out_of_reach_the_linkage_is_shown_as_far_as_it_goes() {
        let scene = scene(900.0);
        let [left, _] = scene.moved.map(Option::unwrap);
        let rest = scene.side(Side::Left).unwrap();
        let [out, _] = scene.out.as_slice() else {
            panic!("both sides run out")
        };
        let Limit::Travel(end) = out.fault.limit else {
            panic!("the rack is not what ends it")
        };
        assert!(end > 50.0 && end < 900.0, "{end}");
        assert!((left.centre.z - rest.centre.z - end).abs() < 1e-2 * end);
    }
}
