//! Builds to test with: the good demo with every number moved a little and every optional part there or not.
#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "helpers of tests fail as tests do"
)]

use proptest::prelude::*;
use trammel_build::{
    Axis, AxleName, AxleSpec, BoltAxis, Build, Coordinate, Hit, HitPoint, JointBolts, KeepOut,
    KeepOutCorners, LengthUnit, Limits, MadeBy, Mass, PointName, RackEndSpec, RackSpec, SpringRate,
    Tolerances, Triple, Vehicle,
};
use trammel_persistence::{demos, read};

/// The good demo.
pub(crate) fn good() -> Build {
    read(demos()[0].text).unwrap_or_else(|fault| panic!("{fault}"))
}

fn moved(t: Triple) -> BoxedStrategy<Triple> {
    let near = |v: f64| {
        let thousandths = (-200_i32..200).prop_map(move |n| v + f64::from(n) / 1000.0);
        prop_oneof![v - 0.2..v + 0.2, thousandths]
    };
    (near(t[0]), near(t[1]), near(t[2]))
        .prop_map(|(x, y, z)| [x, y, z])
        .boxed()
}

fn positive() -> BoxedStrategy<Option<f64>> {
    prop::option::of(prop_oneof![
        0.1..100.0,
        Just(1.0),
        Just(1e-7),
        Just(999_999.9)
    ])
    .boxed()
}

fn text() -> BoxedStrategy<String> {
    prop_oneof![
        Just(String::new()),
        "[a-z 0-9/\"\\\\\n\t\r,()\u{e4}\u{2033}-]{0,40}",
        any::<String>(),
    ]
    .boxed()
}

fn axle(base: AxleSpec) -> BoxedStrategy<AxleSpec> {
    let arms = (
        moved(base.upper_arm.front_pivot),
        moved(base.upper_arm.ball_joint),
        moved(base.lower_arm.rear_pivot),
        moved(base.tie_rod.inner),
        moved(base.wheel.centre),
    );
    let spring = (any::<bool>(), any::<bool>(), 0.1..500.0);
    let right =
        prop::collection::btree_set(prop::sample::select(PointName::ALL[..9].to_vec()), 0..4);
    (arms, spring, any::<bool>(), right, -2.0..2.0)
        .prop_map(move |(arms, spring, travel, right, toe)| {
            let mut a = base.clone();
            (
                a.upper_arm.front_pivot,
                a.upper_arm.ball_joint,
                a.lower_arm.rear_pivot,
                a.tie_rod.inner,
                a.wheel.centre,
            ) = arms;
            a.wheel.toe_deg = toe;
            a.travel = a.travel.filter(|_| travel);
            let (has_spring, pounds, rate) = spring;
            a.spring = a.spring.filter(|_| has_spring);
            if let Some(s) = &mut a.spring {
                s.rate = Some(if pounds {
                    SpringRate::PoundsPerInch(rate)
                } else {
                    SpringRate::NewtonsPerMillimetre(rate)
                });
            }
            for point in right {
                if let Some([x, y, z]) = a.typed_point(point) {
                    a.right.insert(point, [x + 0.0625, -y, z]);
                }
            }
            a
        })
        .boxed()
}

fn rack() -> BoxedStrategy<RackSpec> {
    let triple = || prop::option::of(moved([-3.5, 5.3, 8.75]));
    (
        prop::option::of(moved([0.0, 1.0, 0.0])),
        positive(),
        positive(),
        triple(),
        triple(),
    )
        .prop_map(
            |(axis, travel, travel_per_turn, face, bore_mouth)| RackSpec {
                axis,
                travel,
                travel_per_turn,
                face,
                bore_mouth,
            },
        )
        .boxed()
}

fn figures() -> BoxedStrategy<(RackEndSpec, Vehicle, Hit, Limits)> {
    let end = (
        prop::option::of(text()),
        prop::option::of(text()),
        positive(),
    );
    let mass = prop::option::of((any::<bool>(), 1.0..2000.0));
    let at = prop::option::of(any::<bool>());
    let direction = prop::option::of(moved([-1.0, 0.3, 0.3]));
    (
        end,
        mass,
        at,
        direction,
        positive(),
        prop::option::of(0.01..0.99),
    )
        .prop_map(
            |((thread, grade, engagement), mass, at, direction, positive, front_share)| {
                let end = RackEndSpec {
                    thread,
                    grade,
                    engagement,
                    jam_nut: positive,
                };
                let vehicle = Vehicle {
                    wheelbase: positive,
                    mass: mass.map(|(pounds, v)| {
                        if pounds {
                            Mass::Pounds(v)
                        } else {
                            Mass::Kilograms(v)
                        }
                    }),
                    front_share,
                    centre_of_gravity_height: engagement,
                };
                let hit = Hit {
                    weights: positive,
                    direction,
                    at: at.map(|c| {
                        if c {
                            HitPoint::Contact
                        } else {
                            HitPoint::WheelCentre
                        }
                    }),
                };
                let limits = Limits {
                    toe_change_deg: positive,
                    rack_end_factor: engagement,
                    ..Limits::default()
                };
                (end, vehicle, hit, limits)
            },
        )
        .boxed()
}

fn locks() -> BoxedStrategy<std::collections::BTreeSet<Coordinate>> {
    let coordinate = (
        any::<bool>(),
        prop::sample::select(PointName::ALL.to_vec()),
        0_usize..3,
    )
        .prop_map(|(rear, point, axis)| Coordinate {
            axle: if rear {
                AxleName::Rear
            } else {
                AxleName::Front
            },
            point,
            axis: Axis::ALL[axis],
        });
    prop::collection::btree_set(coordinate, 0..5).boxed()
}

fn bolts() -> BoxedStrategy<JointBolts> {
    let axis = || {
        prop::option::of(prop_oneof![
            prop::sample::select(BoltAxis::PLAIN.to_vec()),
            moved([0.0, 0.4, 1.0]).prop_map(BoltAxis::Direction),
        ])
    };
    (axis(), axis())
        .prop_map(|(inner, outer)| JointBolts { inner, outer })
        .boxed()
}

fn keep_outs() -> BoxedStrategy<Vec<KeepOut>> {
    let corners = (
        any::<bool>(),
        moved([1.0, 2.0, 3.0]),
        moved([5.0, 6.0, 7.0]),
    )
        .prop_map(|(front, a, b)| match front {
            true => KeepOutCorners::Front([a[0], a[1]], [b[0], b[1]]),
            false => KeepOutCorners::Box(a, b),
        });
    let name = "[ -~\n]{0,12}[a-z]";
    let one = (name, corners).prop_map(|(name, corners)| KeepOut { name, corners });
    prop::collection::vec(one, 0..3).boxed()
}

fn tolerances() -> BoxedStrategy<Tolerances> {
    let made = || {
        let plain = vec![MadeBy::JigDrilled, MadeBy::Tape, MadeBy::HandHeld];
        prop_oneof![
            prop::sample::select(plain),
            (0.0..9.0).prop_map(MadeBy::Deviation)
        ]
    };
    let point =
        (any::<bool>(), prop::sample::select(PointName::ALL.to_vec())).prop_map(|(rear, point)| {
            match rear {
                true => (AxleName::Rear, point),
                false => (AxleName::Front, point),
            }
        });
    (
        positive(),
        positive(),
        prop::option::of(made()),
        prop::collection::btree_map(point, made(), 0..4),
    )
        .prop_map(|(jig_drilled, tape, usual, points)| Tolerances {
            jig_drilled,
            tape,
            hand_held: tape,
            usual,
            points,
        })
        .boxed()
}

/// Any build that can be used whole.
pub(crate) fn any_build() -> BoxedStrategy<Build> {
    let base = good();
    let rear = base.rear.clone().unwrap_or_else(|| base.front.clone());
    let rest = (text(), text(), any::<bool>(), locks());
    let shop = (bolts(), keep_outs(), tolerances());
    (
        axle(base.front),
        prop::option::of(axle(rear)),
        rack(),
        figures(),
        rest,
        shop,
    )
        .prop_map(
            |(mut front, rear, rack, figures, (title, notes, inch, locked), shop)| {
                let (joint_bolts, keep_outs, tolerances) = shop;
                front.joint_bolts = joint_bolts;
                let (rack_end, vehicle, hit, limits) = figures;
                front.rack = rack;
                front.rack_end = rack_end;
                Build {
                    title,
                    unit: if inch {
                        LengthUnit::Inch
                    } else {
                        LengthUnit::Millimetre
                    },
                    front,
                    rear,
                    vehicle,
                    hit,
                    limits,
                    keep_outs,
                    set_up: trammel_build::SetUp::default(),
                    tolerances,
                    locked,
                    notes,
                }
            },
        )
        .prop_filter("a build that can be used", |b| b.faults().is_empty())
        .boxed()
}
