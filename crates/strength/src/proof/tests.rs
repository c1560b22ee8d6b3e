use super::*;
use approx::assert_relative_eq;
use nalgebra::Vector3;
use trammel_geometry::{ArmName, Corner, Linkage};

use crate::arm_tubes::ArmTubes;
use crate::bolt::{Bolt, ShearPlaneAt, ShearPlanes};
use crate::bracket::{Bracket, BracketSize};
use crate::check::Check;
use crate::clearance::{Clearances, Pair, Thicknesses};
use crate::grade::Grade;
use crate::loads::tests::{linkage, scene};
use crate::loads::{Fineness, Reach, default_cases};
use crate::material::Material;
use crate::rack_end::{BoreMouth, RackEnd, RackEndGeometry, ThreadMaking};
use crate::rod_end::{Joint, ListedRodEnd};
use crate::section::Profile;
use crate::source::{Limit, Source};
use crate::statics::Equilibrium;
use crate::thread::Thread;
use crate::tie_rod::TieRodBar;
use crate::weld::Fillet;

fn named(name: &str, kind: PartKind) -> Part {
    Part {
        name: name.to_owned(),
        kind,
    }
}

fn rack_end(thread: &str) -> PartKind {
    let geometry = RackEndGeometry::on_axis(Vector3::new(0.02, 1.0, 0.0), 38.0)
        .unwrap()
        .with_bore_mouth(62.0)
        .unwrap();
    let grade = Grade::find("grade 5").unwrap();
    let thread = Thread::find(thread).unwrap();
    PartKind::RackEnd(RackEndPart {
        end: RackEnd::new(geometry, thread, &grade, &BoreMouth::ThreadThrough).unwrap(),
        making: ThreadMaking::Rolled,
        toe_limit: Limit {
            value: 0.1_f64.to_radians(),
            unit: "rad",
            source: Source::COMMON_PRACTICE,
        },
        engagement: Some(14.0),
        bar_diameter: Some(25.0),
    })
}

fn bracket() -> Bracket {
    let size = BracketSize {
        ears: ShearPlanes::Double,
        thickness: 5.0,
        width: 35.0,
        height: 40.0,
        bolt: 12.0,
        hole: 12.2,
        edge: 18.0,
        gap: 30.0,
        boxing: 0.0,
    };
    let strength = Material::find("A36").unwrap().strength(5.0).unwrap();
    Bracket::new(size, strength, Some(Fillet::new(4.0, 70.0).unwrap())).unwrap()
}

fn parts() -> Vec<Part> {
    let dom = Material::find("1020 dom stress relieved").unwrap();
    let strength = dom.strength(2.4).unwrap();
    let tube = Profile::round_tube(25.4, 2.413).unwrap();
    let grade = Grade::find("grade 8").unwrap();
    let bolt_strength = grade.strength(12.7).unwrap();
    let bolt = Bolt::new(
        ShearPlaneAt::Shank(12.7),
        bolt_strength,
        ShearPlanes::Single,
        [6.0, 16.0, 3.0],
    )
    .unwrap();
    let at_outer = Mounted::new(JointPlace::TieRodOuter, Body::Upright, Vector3::z()).unwrap();
    let pivot = Mounted::new(
        JointPlace::FrontPivot(ArmName::Lower),
        Body::Chassis,
        Vector3::x(),
    )
    .unwrap()
    .standing(Vector3::y())
    .unwrap();
    let rod_end = Joint::default()
        .with_rating(20_000.0)
        .unwrap()
        .with_misalignment(ListedRodEnd::all()[4].misalignment().unwrap())
        .unwrap();
    let rod = TieRodBar::new(tube, strength, 321.2, 1800.0).unwrap();
    let arm = ArmTubes::new(tube, strength, 2.0).unwrap();
    vec![
        named("rack end", rack_end("1/2-20")),
        named("tie rod", PartKind::TieRod(rod)),
        named("lower arm", PartKind::ArmTubes(ArmName::Lower, arm)),
        named("upper arm", PartKind::ArmTubes(ArmName::Upper, arm)),
        named("outer bolt", PartKind::Bolt(at_outer, bolt)),
        named("front lower ears", PartKind::Bracket(pivot, bracket())),
        named(
            "outer rod end",
            PartKind::Joint(JointPlace::TieRodOuter, Some(at_outer), rod_end),
        ),
    ]
}

fn proof_of(linkage: &Linkage, parts: &[Part]) -> Proof {
    let cases = default_cases();
    prove(&Setup {
        linkage,
        scene: scene(),
        reach: Reach::new(70.0, 70.0, 35.0).unwrap(),
        fineness: Fineness {
            travels: 9,
            racks: 7,
            refined: true,
        },
        parts,
        cases: &cases,
        clearances: None,
        wanted_factor: 2.0,
    })
}

#[test]
fn every_part_is_checked_under_every_case_and_the_worst_comes_first() {
    let parts = parts();
    let proof = proof_of(&linkage(), &parts);
    assert_eq!(proof.omissions, []);
    for part in &parts {
        for case in default_cases() {
            let here =
                |row: &&Row| row.part == part.name && row.load_case.as_ref() == Some(&case.name);
            assert!(
                proof.rows.iter().any(|row| here(&row)),
                "{} {}",
                part.name,
                case.name
            );
        }
    }
    let standings: Vec<f64> = proof.rows.iter().filter_map(Row::standing).collect();
    assert!(standings.is_sorted_by(|a, b| a <= b));
    let first_without = proof.rows.iter().position(|row| row.factor.is_none());
    assert!(first_without.is_none_or(|at| at == standings.len()));
    for row in &proof.rows {
        assert!(
            row.value.is_finite() && row.limit.value.is_finite(),
            "{row:?}"
        );
    }
    // What no load changes is there once.
    let once = |check| proof.rows.iter().filter(|row| row.check == check).count();
    assert_eq!(once(Check::ThreadEngagement), 1);
    assert_eq!(once(Check::WallLeft), 1);
}

/// No pose of a fine grid is worse than the one that was found, but for the refinement's last step.
#[test]
fn the_worst_pose_is_worst() {
    let linkage = linkage();
    let parts = [named("rack end", rack_end("1/2-20"))];
    let proof = proof_of(&linkage, &parts);
    let case = default_cases()
        .into_iter()
        .find(|case| case.name == "rock, rearward")
        .unwrap();
    let row = proof
        .rows
        .iter()
        .find(|row| {
            row.check == Check::RackFaceYield && row.load_case.as_deref() == Some("rock, rearward")
        })
        .unwrap();
    let PartKind::RackEnd(part) = &parts[0].kind else {
        unreachable!()
    };
    let mut worst = 0.0_f64;
    for i in 0..=70 {
        for j in 0..=70 {
            let (travel, rack) = (-35.0 + 1.5 * f64::from(i), -35.0 + f64::from(j));
            let pose = linkage.pose(travel, rack).unwrap();
            let load = scene().load(&case, &linkage, &pose, 1.0).unwrap();
            let forces = Equilibrium::at(&linkage, &pose)
                .unwrap()
                .under(&load)
                .unwrap();
            let stress = part.end.under(forces.force_on_inner_joint, rack).unwrap();
            worst = worst.max(stress.rack_face.von_mises());
        }
    }
    assert!(row.value >= worst * (1.0 - 1e-6), "{} {worst}", row.value);
    assert_relative_eq!(row.value, worst, max_relative = 1e-2);
}

/// A right corner, worked out as its mirror image, is proved as its left twin.
#[test]
fn a_mirrored_corner_has_the_same_rows() {
    let right: Corner = linkage().corner().mirrored();
    let twin = Linkage::new(&right.mirrored()).unwrap();
    let (here, there) = (proof_of(&linkage(), &parts()), proof_of(&twin, &parts()));
    assert_eq!(here, there);
}

/// A stouter thread is never worse: '3/8 or 1/2?' is answered by numbers.
#[test]
fn a_stouter_thread_stands_better() {
    let face = |thread| {
        let proof = proof_of(&linkage(), &[named("rack end", rack_end(thread))]);
        let row = proof
            .rows
            .into_iter()
            .find(|row| row.check == Check::RackFaceYield);
        row.unwrap().factor.unwrap()
    };
    assert!(face("1/2-20") > 2.0 * face("3/8-24"));
}

#[test]
fn what_is_missing_is_said() {
    let corner = *linkage().corner();
    let springless = Linkage::new(&Corner {
        spring: None,
        ..corner
    })
    .unwrap();
    let proof = proof_of(&springless, &parts());
    assert_eq!(proof.omissions.len(), default_cases().len());
    assert!(
        proof.omissions[0]
            .why
            .to_string()
            .contains("no spring is given")
    );
    assert!(proof.rows.iter().all(|row| row.load_case.is_none()));
    // A case that the linkage never reaches.
    let mut cases = default_cases();
    cases.truncate(1);
    cases[0].window.travel = [1.0, 1.0];
    let parts = parts();
    let setup = Setup {
        linkage: &linkage(),
        scene: scene(),
        reach: Reach::new(4000.0, 0.0, 0.0).unwrap(),
        fineness: Fineness::default(),
        parts: &parts,
        cases: &cases,
        clearances: None,
        wanted_factor: 2.0,
    };
    assert_eq!(prove(&setup).omissions[0].why, Why::NoPose);
    let unsteered = crate::loads::Scene {
        steering: None,
        ..scene()
    };
    let cases = default_cases();
    let proof = prove(&Setup {
        scene: unsteered,
        reach: Reach::new(50.0, 50.0, 30.0).unwrap(),
        cases: &cases,
        ..setup
    });
    assert_eq!(proof.omissions.len(), 1);
    assert_eq!(
        proof.omissions[0].load_case.as_deref(),
        Some("against the steering stop")
    );
}

/// The bracket's own directions: pull along its height, across along its bolt, whatever the frame's are.
#[test]
fn mounts_that_are_none_are_refused() {
    let at = JointPlace::Spring;
    assert!(Mounted::new(at, Body::Chassis, Vector3::zeros()).is_err());
    let mounted = Mounted::new(at, Body::Chassis, Vector3::x()).unwrap();
    assert!(mounted.standing(Vector3::x()).is_err());
    assert!(mounted.standing(Vector3::new(f64::NAN, 1.0, 0.0)).is_err());
    assert!(mounted.standing(Vector3::new(5.0, 1.0, 0.0)).is_ok());
}

/// Every pair is there once, at a pose no grid pose of which is tighter.
#[test]
fn gaps_are_found_over_travel_and_lock() {
    let linkage = linkage();
    let sizes = Thicknesses {
        tie_rod: 19.05,
        upper_arm: 25.4,
        lower_arm: 25.4,
        spring: 60.0,
        tyre_diameter: 545.0,
        tyre_width: 175.0,
        rim_diameter: 254.0,
        rim_width: 150.0,
        rim_thickness: 4.0,
    };
    let clearances = Clearances::new(sizes, 10.0).unwrap();
    let proof = prove(&Setup {
        linkage: &linkage,
        scene: scene(),
        reach: Reach::new(70.0, 70.0, 35.0).unwrap(),
        fineness: Fineness::default(),
        parts: &[],
        cases: &[],
        clearances: Some(clearances),
        wanted_factor: 2.0,
    });
    assert_eq!(proof.rows.len(), Pair::ALL.len());
    for pair in Pair::ALL {
        let row = proof
            .rows
            .iter()
            .find(|row| row.part == pair.to_string())
            .unwrap();
        let mut least = f64::INFINITY;
        for (travel, rack) in [
            (-70.0, -35.0),
            (-70.0, 35.0),
            (70.0, 35.0),
            (0.0, 20.0),
            (33.0, -35.0),
        ] {
            let pose = linkage.pose(travel, rack).unwrap();
            least = least.min(
                clearances
                    .gap(pair, linkage.corner(), &pose)
                    .unwrap()
                    .distance,
            );
        }
        assert!(row.value <= least + 2e-3, "{pair} {} {least}", row.value);
        assert_eq!(row.factor.unwrap(), row.value / 10.0);
    }
}

/// What no load changes is looked at in every pose: the ball swivels as far as the rod leans out of the plane across its bolt.
#[test]
fn a_rod_ends_swivel_is_looked_at_over_travel_and_lock() {
    let (linkage, parts) = (linkage(), parts());
    let proof = proof_of(&linkage, &parts);
    let rows: Vec<&Row> = proof
        .rows
        .iter()
        .filter(|row| row.check == Check::Misalignment)
        .collect();
    let &[row] = rows.as_slice() else {
        panic!("one row: {rows:?}");
    };
    assert_eq!(
        (row.part.as_str(), &row.load_case),
        ("outer rod end", &None)
    );
    let at = row.pose.unwrap();
    assert!(at.travel.abs() > 60.0, "{at:?}");
    assert_relative_eq!(row.standing().unwrap(), row.factor.unwrap());
    // Asked there alone it says the same.
    let setup = Setup {
        linkage: &linkage,
        scene: scene(),
        reach: Reach::new(70.0, 70.0, 35.0).unwrap(),
        fineness: Fineness::default(),
        parts: &parts,
        cases: &[],
        clearances: None,
        wanted_factor: 2.0,
    };
    let pose = linkage.pose(at.travel, at.rack).unwrap();
    let alone = stance_at(&setup, &pose);
    assert_eq!(
        (alone.len(), alone[0].check, &alone[0].part),
        (1, row.check, &row.part)
    );
    assert_relative_eq!(alone[0].value, row.value, max_relative = 1e-9);
}

/// Strength wants the user's factor; lengths, angles and allowed stresses hold their own margin.
#[test]
fn each_check_wants_its_own_factor() {
    let proof = proof_of(&linkage(), &parts());
    let wanted = |check| {
        let row = proof.rows.iter().find(|row| row.check == check);
        row.map(|row| row.wanted)
    };
    for check in [
        Check::RackFaceYield,
        Check::Buckling,
        Check::ArmTubeYield,
        Check::BoltShear,
        Check::TabBearing,
    ] {
        assert_eq!(wanted(check), Some(2.0), "{check}");
        let standing = proof
            .rows
            .iter()
            .find(|row| row.check == check)
            .and_then(Row::standing);
        let factor = proof
            .rows
            .iter()
            .find(|row| row.check == check)
            .and_then(|row| row.factor);
        assert_eq!(standing, factor.map(|factor| factor / 2.0), "{check}");
    }
    for check in [
        Check::RackEndToe,
        Check::ThreadEngagement,
        Check::WallLeft,
        Check::JointRating,
        Check::WeldThroat,
        Check::Misalignment,
    ] {
        assert_eq!(wanted(check), Some(1.0), "{check}");
    }
}

/// The spring's force on the arm is what keeps it in balance with its pivots and its ball joint.
#[test]
fn an_arms_tubes_carry_its_spring() {
    let linkage = linkage();
    let pose = linkage.pose(25.0, -10.0).unwrap();
    let case = default_cases().remove(0);
    let load = scene().load(&case, &linkage, &pose, 1.0).unwrap();
    let equilibrium = Equilibrium::at(&linkage, &pose).unwrap();
    let forces = equilibrium.under(&load).unwrap();
    let all = parts();
    let PartKind::ArmTubes(arm, tubes) = &all[2].kind else {
        unreachable!()
    };
    let (joints, on) = (
        crate::statics::Joints::at(&linkage, &pose),
        forces.arm(*arm),
    );
    let spring = crate::arm_tubes::SpringOnArm {
        mount: joints.spring.unwrap().arm_mount,
        force: on.ball_joint_on_upright - on.front_pivot - on.rear_pivot,
    };
    let mut wanted = vec![];
    tubes.check(joints.arm(*arm), on, Some(spring), |f| {
        wanted.push((f.check, f.value));
    });
    let situation = super::part::Situation {
        linkage: &linkage,
        pose: &pose,
        rod: equilibrium.tie_rod(),
        forces: &forces,
        turned: &Turned::at(&linkage, &pose),
    };
    let mut found = vec![];
    all[2]
        .kind
        .check(&situation, |f| found.push((f.check, f.value)))
        .unwrap();
    assert_eq!(found.len(), wanted.len());
    for ((check, value), (same, by_balance)) in found.into_iter().zip(wanted) {
        assert_eq!(check, same);
        assert_relative_eq!(value, by_balance, max_relative = 1e-9);
    }
}

/// At one pose every check of a part has one row under a case: the worse of its findings in both senses.
#[test]
fn one_row_for_each_check_at_a_pose() {
    let (linkage, parts) = (linkage(), parts());
    let setup = Setup {
        linkage: &linkage,
        scene: scene(),
        reach: Reach::new(70.0, 70.0, 35.0).unwrap(),
        fineness: Fineness::default(),
        parts: &parts,
        cases: &[],
        clearances: None,
        wanted_factor: 2.0,
    };
    let case = default_cases()
        .into_iter()
        .find(|case| case.senses().len() == 2)
        .unwrap();
    let pose = linkage.pose(0.0, 12.0).unwrap();
    let rows = prove_at(&setup, &case, &pose);
    let equilibrium = Equilibrium::at(&linkage, &pose).unwrap();
    let PartKind::TieRod(rod) = &parts[1].kind else {
        unreachable!()
    };
    let mut worst = [0.0_f64; 2];
    for &sense in case.senses() {
        let load = scene().load(&case, &linkage, &pose, sense).unwrap();
        let tension = equilibrium.under(&load).unwrap().tie_rod_tension;
        // The rod is pushed in one sense and pulled in the other.
        rod.check(tension, |finding| match finding.check {
            Check::AxialYield => worst[0] = worst[0].max(finding.value),
            Check::Buckling => worst[1] = worst[1].max(finding.value),
            _ => {}
        });
    }
    for (check, value) in [(Check::AxialYield, worst[0]), (Check::Buckling, worst[1])] {
        let of_rod: Vec<&Row> = rows
            .iter()
            .filter(|row| row.part == "tie rod" && row.check == check)
            .collect();
        assert_eq!(of_rod.len(), 1, "{check}");
        assert!(value > 0.0, "{check}");
        assert_relative_eq!(of_rod[0].value, value, max_relative = 1e-12);
    }
    for row in &rows {
        let same = rows
            .iter()
            .filter(|other| other.part == row.part && other.check == row.check);
        assert_eq!(same.count(), 1, "{} {}", row.part, row.check);
    }
}

/// Seven rack travels by nine wheel travels, each without a spring: sixty-three poses of one omission.
#[test]
fn an_omission_counts_its_poses() {
    let springless = Linkage::new(&Corner {
        spring: None,
        ..*linkage().corner()
    })
    .unwrap();
    let mut cases = default_cases();
    cases.truncate(1);
    cases[0].window.travel = [-1.0, 1.0];
    cases[0].window.lock = [0.0, 1.0];
    let proof = prove(&Setup {
        linkage: &springless,
        scene: scene(),
        reach: Reach::new(50.0, 50.0, 30.0).unwrap(),
        fineness: Fineness {
            travels: 9,
            racks: 7,
            refined: true,
        },
        parts: &parts(),
        cases: &cases,
        clearances: None,
        wanted_factor: 2.0,
    });
    let poses: Vec<usize> = proof.omissions.iter().map(|o| o.poses).collect();
    assert_eq!(poses, [63]);
}

fn setup_of<'a>(
    linkage: &'a Linkage,
    parts: &'a [Part],
    cases: &'a [crate::loads::LoadCase],
    fineness: Fineness,
) -> Setup<'a> {
    Setup {
        linkage,
        scene: scene(),
        reach: Reach::new(70.0, 70.0, 35.0).unwrap(),
        fineness,
        parts,
        cases,
        clearances: None,
        wanted_factor: 2.0,
    }
}

/// Looked at again at the pose that it names, a row's part is as bad as the row says.
#[test]
fn a_row_says_what_its_part_has_at_its_pose() {
    let (linkage, parts, cases) = (linkage(), parts(), default_cases());
    let fineness = Fineness {
        travels: 5,
        racks: 5,
        refined: true,
    };
    let setup = setup_of(&linkage, &parts, &cases, fineness);
    let mut looked_at = 0;
    for row in prove(&setup).rows {
        let (Some(name), Some(at)) = (&row.load_case, row.pose) else {
            continue;
        };
        let case = cases.iter().find(|case| case.name == *name).unwrap();
        let pose = linkage.pose(at.travel, at.rack).unwrap();
        let there = prove_at(&setup, case, &pose);
        let again = there
            .iter()
            .find(|other| other.part == row.part && other.check == row.check)
            .unwrap();
        assert_relative_eq!(again.value, row.value, max_relative = 1e-9);
        looked_at += 1;
    }
    assert!(looked_at > 100, "{looked_at}");
}

/// Without refining, the worst pose of the grid is what is told; refining from a coarse grid finds worse, and nothing better.
#[test]
fn refining_only_finds_worse() {
    let (linkage, parts, cases) = (linkage(), parts(), default_cases());
    let standings = |refined| {
        let fineness = Fineness {
            travels: 3,
            racks: 3,
            refined,
        };
        let setup = setup_of(&linkage, &parts, &cases, fineness);
        let mut rows = prove(&setup).rows;
        rows.sort_by(|a, b| {
            let key = |row: &Row| format!("{} {:?} {:?}", row.part, row.check, row.load_case);
            key(a).cmp(&key(b))
        });
        (setup.reach, rows)
    };
    let ((_, coarse), (_, refined)) = (standings(false), standings(true));
    assert_eq!(coarse.len(), refined.len());
    let mut found = 0;
    for (before, after) in coarse.iter().zip(&refined) {
        let name = format!("{} {} {:?}", after.part, after.check, after.load_case);
        let (Some(was), Some(is)) = (before.standing(), after.standing()) else {
            continue;
        };
        assert!(is <= was * (1.0 + 1e-12), "{name}: {was} {is}");
        if is < 0.999 * was {
            found += 1;
        }
    }
    assert!(found > 5, "{found}");
    // What is told without refining is no better than at any pose of the grid.
    let setup = setup_of(&linkage, &parts, &cases, Fineness::default());
    for row in coarse.iter().filter(|row| row.load_case.is_some()) {
        let case = cases
            .iter()
            .find(|case| row.load_case.as_ref() == Some(&case.name))
            .unwrap();
        for region in crate::loads::regions(&linkage, &case.window, &setup.reach)
            .unwrap()
            .into_iter()
            .flatten()
        {
            let fineness = Fineness {
                travels: 3,
                racks: 3,
                refined: false,
            };
            for pose in region.poses(&linkage, fineness) {
                let there = prove_at(&setup, case, &pose);
                let standing = there
                    .iter()
                    .find(|other| other.part == row.part && other.check == row.check)
                    .and_then(Row::standing);
                if let (Some(told), Some(there)) = (row.standing(), standing) {
                    assert!(told <= there * (1.0 + 1e-9), "{} {}", row.part, row.check);
                }
            }
        }
    }
}

/// A bracket on the chassis takes the joint's force in its own directions: bolt along x, standing along y, so its width is along z. A bolt takes what is across it.
#[test]
fn a_mount_splits_its_force_by_its_own_directions() {
    let linkage = linkage();
    let pose = linkage.pose(30.0, 20.0).unwrap();
    let case = default_cases().remove(1);
    let load = scene().load(&case, &linkage, &pose, 1.0).unwrap();
    let equilibrium = Equilibrium::at(&linkage, &pose).unwrap();
    let forces = equilibrium.under(&load).unwrap();
    let situation = super::part::Situation {
        linkage: &linkage,
        pose: &pose,
        rod: equilibrium.tie_rod(),
        forces: &forces,
        turned: &Turned::at(&linkage, &pose),
    };
    let told = |kind: &PartKind| {
        let mut found = vec![];
        kind.check(&situation, |f| found.push((f.check, f.value)))
            .unwrap();
        found
    };
    let at = forces.lower.front_pivot;
    assert!(at.iter().all(|part| part.abs() > 10.0), "{at}");
    let pivot = Mounted::new(
        JointPlace::FrontPivot(ArmName::Lower),
        Body::Chassis,
        Vector3::x() * 3.0,
    )
    .unwrap()
    .standing(Vector3::new(0.7, 2.0, 0.0))
    .unwrap();
    let mut wanted = vec![];
    let force = crate::bracket::BracketForce {
        pull: at.y,
        along: at.z,
        across: at.x,
    };
    bracket().check(&force, |f| wanted.push((f.check, f.value)));
    let found = told(&PartKind::Bracket(pivot, bracket()));
    assert_eq!(found.len(), wanted.len());
    for ((check, value), (same, by_hand)) in found.into_iter().zip(wanted) {
        assert_eq!(check, same);
        assert_relative_eq!(value, by_hand, max_relative = 1e-12);
    }
    let parts = parts();
    let PartKind::Bolt(_, bolt) = &parts[4].kind else {
        unreachable!()
    };
    let mut wanted = vec![];
    bolt.check(at.y.hypot(at.z), |f| wanted.push(f.value));
    let found: Vec<f64> = told(&PartKind::Bolt(pivot, *bolt))
        .into_iter()
        .map(|(_, value)| value)
        .collect();
    for (value, by_hand) in found.into_iter().zip(wanted) {
        assert_relative_eq!(value, by_hand, max_relative = 1e-12);
    }
}

/// How far a ball swivels is known of the rod's ends only: the arms' joints have no rod that leans.
#[test]
fn swivel_is_looked_at_on_the_rod_only() {
    let linkage = linkage();
    let pose = linkage.pose(0.0, 0.0).unwrap();
    let joint = Joint::default()
        .with_misalignment(ListedRodEnd::all()[4].misalignment().unwrap())
        .unwrap();
    let rows_at = |place| {
        let mounted = Mounted::new(place, Body::Upright, Vector3::z()).unwrap();
        let parts = [named("joint", PartKind::Joint(place, Some(mounted), joint))];
        stance_at(&setup_of(&linkage, &parts, &[], Fineness::default()), &pose).len()
    };
    assert_eq!(rows_at(JointPlace::TieRodOuter), 1);
    assert_eq!(rows_at(JointPlace::TieRodInner), 1);
    assert_eq!(rows_at(JointPlace::BallJoint(ArmName::Lower)), 0);
}

/// The rack end goes out with the rack, whichever way the rack's axis was drawn.
#[test]
fn the_bore_mouth_knows_how_far_the_rack_is_out() {
    let PartKind::RackEnd(part) = rack_end("1/2-20") else {
        unreachable!()
    };
    let corner = *linkage().corner();
    for (axis, rack) in [(1.0, 20.0), (-1.0, -20.0)] {
        let turned = Linkage::new(&Corner {
            rack_axis: corner.rack_axis.map(|v| v * axis),
            ..corner
        })
        .unwrap();
        let pose = turned.pose(10.0, rack).unwrap();
        let case = default_cases().remove(2);
        let load = scene().load(&case, &turned, &pose, 1.0).unwrap();
        let equilibrium = Equilibrium::at(&turned, &pose).unwrap();
        let forces = equilibrium.under(&load).unwrap();
        let situation = super::part::Situation {
            linkage: &turned,
            pose: &pose,
            rod: equilibrium.tie_rod(),
            forces: &forces,
            turned: &Turned::at(&turned, &pose),
        };
        let mut mouth = None;
        PartKind::RackEnd(part)
            .check(&situation, |f| {
                if f.check == Check::BoreMouthYield {
                    mouth = Some(f.value);
                }
            })
            .unwrap();
        // 62 mm with the rack at its centre and 20 more: the same as a rack at its centre with a mouth 82 mm off.
        let geometry = part.end.geometry().with_bore_mouth(82.0).unwrap();
        let grade = Grade::find("grade 5").unwrap();
        let thread = Thread::find("1/2-20").unwrap();
        let end = RackEnd::new(geometry, thread, &grade, &BoreMouth::ThreadThrough).unwrap();
        let still = end.under(forces.force_on_inner_joint, 0.0).unwrap();
        assert_relative_eq!(
            mouth.unwrap(),
            still.bore_mouth.unwrap().stress().unwrap().von_mises(),
            max_relative = 1e-9
        );
    }
}
