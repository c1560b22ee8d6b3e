//! Any parts, materials, load cases and accepted cautions.

use proptest::prelude::*;
use trammel_build::{
    AcceptedCaution, ArmParts, AxleParts, BoltAxis, BoltSpec, BracketSpec, Ears, Force, FrameTube,
    Hold, JointEnd, JointParts, LoadAction, LoadAxes, LoadCaseSpec, LoadCases, LoadPlace, LoadUnit,
    MaterialSpec, PointName, Pressure, RimHalf, Section, ShearPlane, SteeringSpec, Stress,
    TieRodParts, Tube, TyrePatch, WheelParts,
};

type Proving = (
    SteeringSpec,
    Vec<MaterialSpec>,
    LoadCases,
    Vec<AcceptedCaution>,
);

fn size() -> BoxedStrategy<Option<f64>> {
    prop::option::of(0.01..900.0).boxed()
}

fn name() -> BoxedStrategy<Option<String>> {
    prop::option::of("[ -~\n]{0,12}").boxed()
}

fn force() -> impl Strategy<Value = Force> {
    prop_oneof![
        (1.0..9e4).prop_map(Force::Newtons),
        (1.0..9e4).prop_map(Force::PoundsForce)
    ]
}

fn section() -> impl Strategy<Value = Section> {
    let tube = || (1.0..90.0, 0.01..0.5).prop_map(|(across, share)| (across, across * share));
    prop_oneof![
        tube().prop_map(|(a, w)| Section::Round(a, w)),
        tube().prop_map(|(a, w)| Section::Square(a, w)),
        (1.0..90.0).prop_map(Section::Bar),
    ]
}

fn tube() -> impl Strategy<Value = Option<Tube>> {
    prop::option::of((section(), name()).prop_map(|(section, material)| Tube { section, material }))
}

fn triple() -> impl Strategy<Value = [f64; 3]> {
    [-900.0..900.0, -900.0..900.0, 1.0..900.0]
}

fn joint(point: PointName) -> impl Strategy<Value = JointParts> {
    let on_rod = matches!(point, PointName::TieRodInner | PointName::TieRodOuter);
    let end =
        (name(), prop::option::of(force()), size(), size()).prop_map(|(listed, rating, a, b)| {
            JointEnd {
                listed,
                rating,
                swivel_deg: a,
                ball_width: b,
                body_width: a,
                head_diameter: b,
                length: a,
            }
        });
    let plane = prop::sample::select(vec![ShearPlane::Shank, ShearPlane::Thread]);
    let way = prop_oneof![
        Just(BoltAxis::ForeAft),
        triple().prop_map(BoltAxis::Direction)
    ];
    let bolt = (
        name(),
        size(),
        prop::option::of(plane),
        prop::option::of(way),
    )
        .prop_map(move |(thread, spacer, plane, way)| BoltSpec {
            grade: thread.clone(),
            thread,
            spacer,
            shear_plane: plane,
            direction: way.filter(|_| !on_rod),
        });
    let frame = (triple(), triple(), section()).prop_map(|(from, to, section)| FrameTube {
        from,
        to,
        section,
    });
    let ears = prop::sample::select(vec![Ears::Single, Ears::Double]);
    let bracket = (
        prop::option::of(ears),
        size(),
        name(),
        prop::option::of(frame),
        prop::option::of(triple()),
    )
        .prop_map(|(ears, v, material, tube, stands)| BracketSpec {
            ears,
            thickness: v.unwrap_or(4.0),
            width: 40.0,
            height: 30.0,
            form: v.map(|_| trammel_build::TabOutline::Tapered),
            hole: v,
            fit: v.map(|_| trammel_build::HoleFit::Loose),
            edge: v,
            gap: v,
            boxing: v,
            weld: v,
            electrode: v,
            material,
            tube,
            stands,
        });
    (
        prop::option::of(end),
        prop::option::of(bolt),
        prop::option::of(bracket),
    )
        .prop_map(|(end, bolt, bracket)| JointParts { end, bolt, bracket })
}

/// Parts of an axle.
pub(crate) fn axle_parts() -> BoxedStrategy<AxleParts> {
    let joints =
        prop::sample::subsequence(AxleParts::JOINTS.to_vec(), 0..3).prop_flat_map(|points| {
            let joints: Vec<_> = points
                .into_iter()
                .map(|point| joint(point).prop_map(move |parts| (point, parts)))
                .collect();
            joints.prop_map(|all| all.into_iter().collect())
        });
    let rod = (tube(), name(), size(), prop::option::of(force())).prop_map(
        |(tube, thread, v, side_hit)| TieRodParts {
            tube,
            grade: thread.clone(),
            adapter_material: thread.clone(),
            thread,
            adapter_length: v,
            engagement: v,
            adjustment: v,
            jam_nut: v,
            side_hit,
        },
    );
    let arm = (tube(), prop::option::of(1_u32..=2))
        .prop_map(|(tube, spring_tubes)| ArmParts { tube, spring_tubes });
    (rod, arm, size(), joints)
        .prop_map(|(tie_rod, arm, v, joints)| AxleParts {
            rack_mount: v.map(|v| trammel_build::RackMount {
                width: v,
                height: v,
                thickness: v,
                along: v,
                across: v,
                thread: Some("5/16-24".to_owned()),
            }),
            tie_rod,
            upper_arm: arm,
            lower_arm: ArmParts::default(),
            wheel: WheelParts {
                rim_diameter: v,
                rim_width: v,
                rim_thickness: v,
                tyre_diameter: v,
                tyre_width: v,
            },
            spring_diameter: v,
            joints,
        })
        .boxed()
}

fn action() -> impl Strategy<Value = LoadAction> {
    let unit = prop::sample::select(vec![
        LoadUnit::Newtons,
        LoadUnit::StaticWheelLoad,
        LoadUnit::WheelLoad,
        LoadUnit::VehicleWeight,
    ]);
    let half = prop::sample::select(vec![RimHalf::Front, RimHalf::Rear]);
    let place = prop_oneof![
        Just(LoadPlace::Contact),
        Just(LoadPlace::WheelCentre),
        (half, -1.0..1.0, -1.0..1.0).prop_map(|(half, h, o)| LoadPlace::Rim(half, h, o)),
    ];
    let axes = prop::sample::select(vec![LoadAxes::Vehicle, LoadAxes::Wheel]);
    let patch = prop_oneof![
        (1.0..90.0).prop_map(|v| TyrePatch::Pressure(Pressure::Kilopascals(v))),
        (1.0..90.0).prop_map(|v| TyrePatch::Pressure(Pressure::Psi(v))),
        (1.0..90.0).prop_map(TyrePatch::Length),
    ];
    prop_oneof![
        (triple(), unit, place, axes)
            .prop_map(|(size, unit, place, axes)| LoadAction::Force(size, unit, place, axes)),
        (0.1..1.0, patch)
            .prop_map(|(friction, patch)| LoadAction::TurnedOnTheSpot(friction, patch)),
        force().prop_map(LoadAction::AgainstStop),
    ]
}

fn load_cases() -> impl Strategy<Value = LoadCases> {
    let hold = prop::sample::select(vec![Hold::Rolling, Hold::Braked]);
    let case = (
        "[a-z]{1,8}",
        prop::collection::vec(action(), 1..3),
        hold,
        0.0..1.0,
        [-1.0..1.0, -1.0..1.0],
        [0.0..1.0, 0.0..1.0],
    )
        .prop_map(
            |(name, actions, hold, braking, travel, lock)| LoadCaseSpec {
                what: name.clone(),
                name,
                actions,
                hold,
                braking,
                cornering: 0.0,
                travel,
                lock,
            },
        );
    (
        prop::collection::vec(case, 0..2),
        prop::collection::btree_set("[a-z ]{1,9}", 0..3),
    )
        .prop_map(|(own, off)| LoadCases { own, off })
}

/// Steering, materials, load cases, accepted cautions.
pub(crate) fn proving() -> BoxedStrategy<Proving> {
    let steering = (size(), 0.0..0.5).prop_map(|(v, friction)| SteeringSpec {
        wheel_diameter: v,
        friction: Some(friction),
        stop: v,
    });
    let material = ("[ -~]{0,8}[a-z]", 1.0..900.0, size(), "[ -~\n]{0,8}").prop_map(
        |(name, v, other, source)| MaterialSpec {
            name,
            yield_strength: Stress::Megapascals(v),
            tensile: other.map(Stress::Ksi),
            modulus: other.map(Stress::Megapascals),
            source,
        },
    );
    let accepted =
        ("[a-z/]{1,12}", "[ -~\n]{0,12}[a-z]", size()).prop_map(|(caution, reason, figure)| {
            AcceptedCaution {
                caution,
                reason,
                figure,
            }
        });
    (
        steering,
        prop::collection::vec(material, 0..2),
        load_cases(),
        prop::collection::vec(accepted, 0..2),
    )
        .boxed()
}
