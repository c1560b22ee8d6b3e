//! Builds for the tests, and ways to look at what was found in them.

#![allow(
    dead_code,
    unreachable_pub,
    missing_docs,
    reason = "each test file uses its own part"
)]

use trammel_analysis::{Caution, CautionKind, Findings, Study};
use trammel_build::{
    ArmPoints, AxleSpec, Build, LengthUnit, PointName, RackEndSpec, RackSpec, RightPoints,
    TieRodPoints, TravelSpec, Triple, Vehicle, WheelSpec,
};

pub fn demo(name: &str) -> Build {
    let demo = trammel_persistence::demos()
        .into_iter()
        .find(|d| d.name == name)
        .expect("a demo of that name");
    trammel_persistence::read(demo.text).expect("a demo reads")
}

pub fn demos() -> Vec<Build> {
    trammel_persistence::demos()
        .iter()
        .map(|d| trammel_persistence::read(d.text).expect("a demo reads"))
        .collect()
}

pub fn findings(build: &Build) -> Findings {
    let study = Study::of(build).expect("a usable build");
    Findings::of(build, &study)
}

pub fn of_kind(findings: &Findings, kind: CautionKind) -> Vec<&Caution> {
    findings
        .cautions
        .iter()
        .filter(|c| c.kind == kind)
        .collect()
}

/// A corner that can be reckoned by hand, mm: level equal arms, an upright that stands plumb 500 mm out, the wheel centre 100 mm
/// further, a steering arm 100 mm straight back, a rod 300 mm across that drops `fall` mm to the rack, and next to no travel or lock.
pub fn plumb(fall: f64, free_length: f64) -> Build {
    let arm = |z: f64| ArmPoints {
        front_pivot: [150.0, 200.0, z],
        rear_pivot: [-150.0, 200.0, z],
        ball_joint: [0.0, 500.0, z],
    };
    let inner: Triple = [-100.0, 200.0, 250.0 - fall];
    let [x, y, z] = inner;
    let front = AxleSpec {
        travel: Some(TravelSpec {
            bump: 1e-3,
            droop: 1e-3,
        }),
        rack: RackSpec {
            travel: Some(1e-3),
            face: Some([x, y - free_length, z]),
            bore_mouth: Some([x, y - free_length - 50.0, z]),
            ..RackSpec::default()
        },
        rack_end: RackEndSpec {
            thread: Some("1/2-20".into()),
            grade: Some("grade 8".into()),
            ..RackEndSpec::default()
        },
        ..AxleSpec::new(
            arm(350.0),
            arm(150.0),
            TieRodPoints {
                inner,
                outer: [-100.0, 500.0, 250.0],
            },
            WheelSpec {
                centre: [0.0, 600.0, 250.0],
                loaded_radius: 250.0,
                toe_deg: 0.0,
                camber_deg: 0.0,
            },
        )
    };
    Build {
        vehicle: Vehicle {
            mass: Some(trammel_build::Mass::Kilograms(300.0)),
            ..Vehicle::default()
        },
        ..Build::new("Plumb", LengthUnit::Millimetre, front)
    }
}

/// Every point of the axle's right side written out, so that the two sides are looked at apart.
pub fn sides_apart(build: &Build) -> Build {
    let mut next = build.clone();
    for name in [
        trammel_build::AxleName::Front,
        trammel_build::AxleName::Rear,
    ] {
        let mut right = RightPoints::new();
        for point in PointName::ALL {
            let at = trammel_build::PointRef {
                axle: name,
                side: trammel_build::Side::Right,
                point,
            };
            if let Some(p) = build.point(at) {
                right.insert(point, p);
            }
        }
        match name {
            trammel_build::AxleName::Front => next.front.right = right,
            trammel_build::AxleName::Rear => {
                if let Some(rear) = &mut next.rear {
                    rear.right = right;
                }
            }
        }
    }
    next
}
