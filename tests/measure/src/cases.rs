//! The work that is measured: one case for each thing that the kernels are asked to do, each with its own figures and nothing from outside.

use std::hint::black_box;

use trammel_analysis::{Depth, Findings, ProofDepth, Study, next_moves, prove};
use trammel_build::{Build, LengthUnit};
use trammel_geometry::{Corner, Linkage, Measures, Vector, Walk};
use trammel_persistence::{read_readings, read_survey};
use trammel_setup::suggest;
use trammel_specimens::{behind, kart};
use trammel_tuning::{
    Dimension, MapFrame, Movable, Plane, ScatterRequest, Scoring, Search, Spread, Stations,
    TieRodJoint, ToeMap, TuneRequest, Tuner, Ways, Wish, best_spot, default_tolerances, scatter,
};

use crate::{calibration, newton::General};

/// Left and right wheel read with two dials.
const READINGS: &str = include_str!("../../../assets/page-of-readings.csv");

/// A joint by four tapes and a height.
const SURVEY: &str = "\
unit,mm
mark,A,0,0,0
mark,B,600,0,0
mark,C,0,600,0
mark,D,100,100,500
point,joint,200,250,300
tape,A,joint,438.7
tape,B,joint,559.0
tape,C,joint,502.5
tape,D,joint,269.3
height,joint,300
";

/// Work that can be done again and again.
pub type Work = Box<dyn FnMut()>;

/// Something to measure.
pub struct Case {
    /// Its name in baseline and tables.
    pub name: &'static str,
    /// How often it is done for one count of instructions, so that a count is some ten million.
    pub goes: u32,
    /// Gets ready for it, which is not measured.
    pub ready: fn() -> Work,
}

/// What everything is measured against.
pub const CALIBRATION: Case = Case {
    name: "calibration",
    goes: 20,
    ready: || {
        Box::new(|| {
            black_box(calibration::work(black_box(1.0)));
        })
    },
};

/// A general solver of the same problem as `SWEEP`; no work of the product's, so that it is in the table and not in the baseline.
pub const NEWTON: Case = Case {
    name: "sweep of 41 travels by a general Newton solver",
    goes: 100,
    ready: newton,
};

/// Wheel travels at which a corner is posed.
pub const SWEEP_TRAVELS: u32 = 41;
/// They go so far up and down, mm.
pub const SWEEP_END: f64 = 100.0;

/// Every case that has a place in the baseline.
pub const CASES: [Case; 15] = [
    Case {
        name: "sweep of 41 travels, joints and velocities",
        goes: 500,
        ready: joints,
    },
    Case {
        name: "sweep of 41 travels, every measure",
        goes: 500,
        ready: sweep,
    },
    Case {
        name: "pose far from the design position",
        goes: 5000,
        ready: far,
    },
    Case {
        name: "map 96 x 96 x 21, inner joint",
        goes: 1,
        ready: || map(TieRodJoint::Inner),
    },
    Case {
        name: "map 96 x 96 x 21, outer joint",
        goes: 1,
        ready: || map(TieRodJoint::Outer),
    },
    Case {
        name: "best spot, least RMS",
        goes: 10,
        ready: || best(Scoring::Rms, Movable::Inner, Ways::FrontPlane),
    },
    Case {
        name: "best spot, least largest",
        goes: 5,
        ready: || best(Scoring::Largest, Movable::Inner, Ways::FrontPlane),
    },
    Case {
        name: "best spot, both joints any way",
        goes: 1,
        ready: || best(Scoring::Largest, Movable::Both, Ways::Free),
    },
    Case {
        name: "scatter, 4,000 builds x 21",
        goes: 1,
        ready: || builds(1),
    },
    Case {
        name: "tune, rack and inner joint",
        goes: 1,
        ready: tune,
    },
    Case {
        name: "study of a build",
        goes: 20,
        ready: study,
    },
    Case {
        name: "cautions with remedies",
        goes: 5,
        ready: findings,
    },
    Case {
        name: "proof of a build, quick",
        goes: 1,
        ready: || proof(ProofDepth::Quick),
    },
    Case {
        name: "survey of a joint, with advice",
        goes: 20,
        ready: survey,
    },
    Case {
        name: "next moves from readings",
        goes: 1,
        ready: moves,
    },
];

/// The corner of the sweeps.
#[must_use]
pub fn swept() -> Corner {
    kart()
}

/// The corner of the searches: its inner joint is well away from the best place.
#[must_use]
pub fn searched() -> Corner {
    let mut corner = behind();
    corner.tie_rod.inner += Vector::new(0.0, 20.0, -15.0);
    corner
}

/// Travels evenly over the sweep.
pub fn travels() -> impl Iterator<Item = f64> {
    let last = f64::from(SWEEP_TRAVELS - 1);
    (0..SWEEP_TRAVELS).map(move |i| SWEEP_END * (2.0 * f64::from(i) / last - 1.0))
}

/// Travels that toe curves are judged at.
fn stations() -> Stations {
    Stations::even(-100.0, 125.0, 21, vec![0.0]).expect("usable")
}

fn linkage() -> Linkage {
    Linkage::new(&swept()).expect("a sound corner")
}

fn joints() -> Work {
    let linkage = linkage();
    let mut poses = Vec::with_capacity(SWEEP_TRAVELS as usize);
    Box::new(move || {
        poses.clear();
        let mut walk = Walk::new(black_box(&linkage), 0.0).expect("within reach");
        poses.extend(travels().map(|t| walk.pose(t).expect("within reach")));
        black_box(&poses);
    })
}

fn sweep() -> Work {
    let linkage = linkage();
    let mut rows: Vec<Measures> = Vec::with_capacity(SWEEP_TRAVELS as usize);
    Box::new(move || {
        rows.clear();
        let mut walk = Walk::new(black_box(&linkage), 0.0).expect("within reach");
        rows.extend(travels().map(|t| linkage.measures(&walk.pose(t).expect("within reach"))));
        black_box(&rows);
    })
}

fn newton() -> Work {
    let general = General::new(&swept());
    check_alike(&general);
    let mut bodies = Vec::with_capacity(SWEEP_TRAVELS as usize);
    Box::new(move || {
        bodies.clear();
        let mut body = general.walk_to(-SWEEP_END).expect("within reach");
        for travel in travels() {
            body = general
                .solve(body, black_box(travel))
                .expect("within reach");
            bodies.push(body);
        }
        black_box(&bodies);
    })
}

/// Both solvers give the same joints.
fn check_alike(general: &General) {
    let linkage = linkage();
    let body = general.walk_to(-SWEEP_END).expect("within reach");
    let pose = linkage.pose(-SWEEP_END, 0.0).expect("within reach");
    let off = (general.tie_rod_outer(&body) - pose.tie_rod_outer).norm();
    assert!(off < 1e-9, "the two solvers differ by {off} mm");
}

fn far() -> Work {
    let linkage = linkage();
    Box::new(move || {
        let pose = linkage.pose(black_box(60.0), black_box(30.0));
        black_box(linkage.measures(&pose.expect("within reach")));
    })
}

fn map(joint: TieRodJoint) -> Work {
    let (corner, stations) = (behind(), stations());
    let frame =
        MapFrame::new(Plane::Front, joint.place(&corner), [60.0; 2], [96, 96]).expect("usable");
    Box::new(move || {
        let mut map = ToeMap::new(black_box(&corner), joint, frame, &stations).expect("arms");
        map.complete();
        black_box(&map);
    })
}

fn best(scoring: Scoring, movable: Movable, ways: Ways) -> Work {
    let search = Search {
        movable,
        ways,
        scoring,
        stations: stations(),
        held: Vec::new(),
        reach: 100.0,
        step: None,
    };
    let corner = searched();
    Box::new(move || {
        black_box(best_spot(black_box(&corner), &search).expect("found"));
    })
}

/// Four thousand builds on so many threads.
pub fn builds(threads: usize) -> Work {
    let request = ScatterRequest {
        corner: behind(),
        tolerances: default_tolerances(Spread::Normal(1.0)),
        stations: stations(),
        builds: 4000,
        seed: 1,
        limit: 0.005,
        threads,
    };
    Box::new(move || drop(black_box(scatter(black_box(&request)).expect("swept"))))
}

fn tune() -> Work {
    let request = TuneRequest {
        corner: searched(),
        variables: [Dimension::RackHeight, Dimension::RackWidth]
            .map(|d| d.variable(-40.0, 40.0))
            .to_vec(),
        wishes: vec![Wish::little_toe_change()],
        travels: stations().travels().to_vec(),
        weights: Vec::new(),
        lock: 45.0,
        wheelbase: 1700.0,
        seed: 1,
        generations: 0,
    };
    Box::new(move || {
        let mut tuner = Tuner::new(black_box(&request), None).expect("usable");
        black_box(tuner.run().expect("found").len());
    })
}

fn demo(name: &str) -> Build {
    let all = trammel_persistence::demos();
    let demo = all.iter().find(|d| d.name == name).expect("a demo");
    trammel_persistence::read(demo.text).expect("a demo reads")
}

fn study() -> Work {
    let build = demo("lifted");
    Box::new(move || drop(black_box(Study::of(black_box(&build)).expect("posed"))))
}

fn findings() -> Work {
    let build = demo("badly-placed-rack");
    let study = Study::of(&build).expect("posed");
    Box::new(move || {
        drop(black_box(Findings::to_depth(
            black_box(&build),
            &study,
            Depth::Full,
        )));
    })
}

fn proof(depth: ProofDepth) -> Work {
    let build = demo("lifted");
    Box::new(move || drop(black_box(prove(black_box(&build), depth, &|| false))))
}

fn survey() -> Work {
    let file = read_survey(SURVEY).expect("a table");
    Box::new(move || {
        black_box(black_box(&file.survey).adjust().expect("placed"));
        black_box(suggest(&file.survey, 1.0));
    })
}

fn moves() -> Work {
    let mut build = demo("good");
    let session = read_readings(READINGS, LengthUnit::Inch).expect("a table");
    build.set_up.sessions.push(session);
    Box::new(move || drop(black_box(next_moves(black_box(&build)).expect("readings"))))
}
