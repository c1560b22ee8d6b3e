use super::*;
use approx::assert_relative_eq;
use nalgebra::Rotation3;
use proptest::prelude::*;

fn thread(typed: &str) -> Thread {
    Thread::find(typed).unwrap()
}

fn grade(typed: &str) -> Grade {
    Grade::find(typed).unwrap()
}

fn left(free_length: f64) -> RackEndGeometry {
    RackEndGeometry::on_axis(Vector3::y(), free_length).unwrap()
}

/// A rod force of this size at this angle above the rack axis.
fn rod_force(size: f64, angle_deg: f64) -> Vector3<f64> {
    let angle = angle_deg.to_radians();
    Vector3::new(0.0, angle.cos(), angle.sin()) * size
}

/// By hand. 1/2-20, 40 mm free, 2 kN at 10 degrees: d = 12.7 - 1.226869 x 1.27 = 11.14187635; pi d^3/32 = 135.7922;
/// bending 2000 sin 10 x 40 = 13891.85 N mm -> 102.3023 MPa; area pi/4 (12.7 - 0.974279 x 1.27)^2 = 103.1956: axial 1969.615 N -> 19.0862 MPa;
/// shear 347.2964 N over 97.5004 -> 3.56200 MPa; together sqrt(121.3885^2 + 3 x 3.56200^2) = 121.5452.
#[test]
fn half_inch_fine_by_hand() {
    let end = RackEnd::new(
        left(40.0),
        thread("1/2-20"),
        &grade("grade 8"),
        &BoreMouth::LoadsOnly,
    )
    .unwrap();
    let face = end.under(rod_force(2000.0, 10.0), 0.0).unwrap().rack_face;
    assert_relative_eq!(face.loads.bending, 13_891.854, max_relative = 1e-7);
    assert_relative_eq!(face.loads.axial, 1_969.615_5, max_relative = 1e-7);
    assert_relative_eq!(face.loads.shear, 347.296_36, max_relative = 1e-7);
    assert_eq!(face.loads.torsion, 0.0);
    assert_eq!(
        end.geometry().loads_at_face(rod_force(2000.0, 10.0)),
        face.loads
    );
    assert_relative_eq!(face.stress.bending, 102.3023, max_relative = 1e-6);
    assert_relative_eq!(face.stress.axial, 19.0862, max_relative = 2.5e-6);
    assert_relative_eq!(face.stress.shear, 3.562_00, max_relative = 1e-6);
    assert_relative_eq!(face.von_mises(), 121.5452, max_relative = 1e-6);
    // SAE J429 grade 8: 130 ksi = 896.318 MPa.
    assert_relative_eq!(
        face.factor().unwrap(),
        896.318 / 121.5452,
        max_relative = 2e-6
    );
}

/// A shop's rule of thumb for 2 kN and 40 mm: half-inch fine about 120 MPa at 10 degrees and 217 at 20, M10 about 300 and 550 (simple beam and
/// axial, no shear).
#[test]
fn the_shops_figures() {
    for (typed, angle, about) in [
        ("1/2-20", 10.0, 120.0),
        ("1/2-20", 20.0, 217.0),
        ("M10", 10.0, 300.0),
        ("M10", 20.0, 550.0),
    ] {
        let end = RackEnd::new(
            left(40.0),
            thread(typed),
            &grade("8.8"),
            &BoreMouth::LoadsOnly,
        )
        .unwrap();
        let stress = end
            .under(rod_force(2000.0, angle), 0.0)
            .unwrap()
            .rack_face
            .stress;
        assert_relative_eq!(stress.bending + stress.axial, about, max_relative = 0.03);
    }
}

/// A dropped joint, by hand. e = y, r = 50 e - 12 z, F = (60, 2000, -300): r x F = (50 x -300 + 12 x 2000, -12 x 60, -50 x 60)
/// = (9000, -720, -3000). Torsion -720, bending sqrt(9000^2 + 3000^2) = 9486.833, shear sqrt(60^2 + 300^2) = 305.941.
#[test]
fn a_bracket_brings_torsion() {
    let geometry = left(50.0)
        .with_offset(Vector3::new(0.0, 33.0, -12.0))
        .unwrap();
    let end = RackEnd::new(
        geometry,
        thread("M12x1.25"),
        &grade("8.8"),
        &BoreMouth::LoadsOnly,
    )
    .unwrap();
    let loads = end
        .under(Vector3::new(60.0, 2000.0, -300.0), 0.0)
        .unwrap()
        .rack_face
        .loads;
    assert_relative_eq!(loads.torsion, -720.0, max_relative = 1e-12);
    assert_relative_eq!(loads.bending, 9486.833, max_relative = 1e-7);
    assert_relative_eq!(loads.shear, 305.941, max_relative = 1e-6);
    assert_eq!(loads.axial, 2000.0);
    // The mouth is further in on the same axis: the same torsion, and 80 mm of lever: (80 x -300 + 12 x 2000, -80 x 60) = (0, -4800).
    let geometry = geometry.with_bore_mouth(80.0).unwrap();
    let end = RackEnd::new(
        geometry,
        thread("M12x1.25"),
        &grade("8.8"),
        &BoreMouth::LoadsOnly,
    )
    .unwrap();
    let stress = end.under(Vector3::new(60.0, 2000.0, -300.0), 0.0).unwrap();
    let mouth = stress.bore_mouth.unwrap().loads();
    assert_relative_eq!(mouth.torsion, -720.0, max_relative = 1e-12);
    assert_relative_eq!(mouth.bending, 4800.0, max_relative = 1e-12);
}

#[test]
fn the_bore_mouth_is_what_it_is_said_to_be() {
    let geometry = left(40.0).with_bore_mouth(70.0).unwrap();
    let force = rod_force(1500.0, 15.0);
    let at = |mouth: BoreMouth, rack: f64| {
        RackEnd::new(geometry, thread("M12"), &grade("8.8"), &mouth)
            .unwrap()
            .under(force, rack)
            .unwrap()
    };
    // 70 mm at centre, 30 mm more with the rack out: 1500 sin 15 x 100.
    let moment = 1500.0 * 15.0_f64.to_radians().sin() * 100.0;
    let loads_only = at(BoreMouth::LoadsOnly, 30.0);
    assert_relative_eq!(
        loads_only.bore_mouth.unwrap().loads().bending,
        moment,
        max_relative = 1e-12
    );
    assert_eq!(loads_only.bore_mouth.unwrap().stress(), None);
    assert_eq!(loads_only.least_factor().unwrap().1, Section::RackFace);

    let bar = RoundSection::solid(22.0).unwrap();
    let unknown = at(
        BoreMouth::Bar {
            section: bar,
            grade: None,
        },
        30.0,
    )
    .bore_mouth
    .unwrap();
    assert_relative_eq!(
        unknown.stress().unwrap().bending,
        moment / 1045.364,
        max_relative = 1e-6
    );
    assert_eq!(unknown.factor(), None);
    let known = at(
        BoreMouth::Bar {
            section: bar,
            grade: Some(grade("1045 cold drawn")),
        },
        30.0,
    );
    assert_eq!(
        known.least_factor().unwrap().1,
        Section::RackFace,
        "the bar is far stronger than the thread"
    );

    let through = at(BoreMouth::ThreadThrough, 30.0);
    let (mouth, face) = (through.bore_mouth.unwrap(), through.rack_face);
    assert_relative_eq!(
        mouth.stress().unwrap().bending,
        face.stress.bending * 100.0 / 40.0,
        max_relative = 1e-12
    );
    assert_eq!(through.least_factor().unwrap().1, Section::BoreMouth);
}

/// With the rack 35 mm in, the mouth is 35 mm from the joint and cuts the 40 mm of thread, not the bar.
#[test]
fn a_rack_far_in_puts_the_thread_in_the_mouth() {
    let geometry = left(40.0).with_bore_mouth(70.0).unwrap();
    let bar = BoreMouth::Bar {
        section: RoundSection::solid(22.0).unwrap(),
        grade: None,
    };
    let end = RackEnd::new(geometry, thread("M12"), &grade("8.8"), &bar).unwrap();
    let stress = end.under(rod_force(1500.0, 15.0), -35.0).unwrap();
    let mouth = stress.bore_mouth.unwrap().stress().unwrap();
    assert_relative_eq!(
        mouth.bending,
        stress.rack_face.stress.bending * 35.0 / 40.0,
        max_relative = 1e-12
    );
    // 10 mm in, the mouth is 60 mm from the joint, on the bar: pi 22^3/32 = 1045.364 mm^3.
    let stress = end.under(rod_force(1500.0, 15.0), -10.0).unwrap();
    let mouth = stress.bore_mouth.unwrap().stress().unwrap();
    let moment = 1500.0 * 15.0_f64.to_radians().sin() * 60.0;
    assert_relative_eq!(mouth.bending, moment / 1045.364, max_relative = 1e-6);
}

#[test]
fn without_load_or_bore_mouth_nothing_is_made_up() {
    let end = RackEnd::new(
        left(40.0),
        thread("M12"),
        &grade("8.8"),
        &BoreMouth::ThreadThrough,
    )
    .unwrap();
    let stress = end.under(Vector3::zeros(), 10.0).unwrap();
    assert_eq!(stress.bore_mouth, None);
    assert_eq!(stress.least_factor(), None);
    assert_eq!(
        end.greatest_rod_angle(Vector3::zeros(), 2.0),
        Ok(Allowance::Always)
    );
    assert_eq!(
        end.greatest_free_length(Vector3::zeros(), 2.0),
        Ok(Allowance::Always)
    );
}

#[test]
fn bad_numbers_are_refused() {
    assert!(RackEndGeometry::on_axis(Vector3::zeros(), 40.0).is_err());
    assert!(RackEndGeometry::on_axis(Vector3::y(), -1.0).is_err());
    assert!(RackEndGeometry::on_axis(Vector3::y(), f64::NAN).is_err());
    assert!(
        left(40.0)
            .with_offset(Vector3::new(f64::NAN, 0.0, 0.0))
            .is_err()
    );
    assert!(left(40.0).with_bore_mouth(f64::INFINITY).is_err());
    let end = RackEnd::new(
        left(40.0),
        thread("M12"),
        &grade("8.8"),
        &BoreMouth::LoadsOnly,
    )
    .unwrap();
    assert!(end.under(Vector3::new(0.0, f64::NAN, 0.0), 0.0).is_err());
    assert!(end.under(Vector3::y(), f64::NAN).is_err());
    assert!(end.greatest_free_length(Vector3::y(), 0.0).is_err());
    assert!(end.greatest_rod_angle(Vector3::y(), f64::NAN).is_err());
    assert!(
        end.under(Vector3::new(1e308, 1e308, -1e308), 0.0).is_err(),
        "overflow is not a stress"
    );
    let too_small = RackEnd::new(
        left(40.0),
        thread("M6"),
        &grade("grade 8"),
        &BoreMouth::LoadsOnly,
    );
    assert!(matches!(
        too_small,
        Err(RackEndError::Grade(GradeError::SizeNotCovered { .. }))
    ));
}

/// The question of the trade, answered by numbers: 4 kN at 15 degrees, 40 mm free, wanted factor 1.5.
#[test]
fn comparison_of_threads_and_grades() {
    let threads = ["3/8-24", "1/2-20", "M12"].map(thread);
    let grades = ["grade 5", "grade 8"].map(grade);
    let rows = compare(left(40.0), &threads, &grades, rod_force(4000.0, 15.0), 1.5);
    assert_eq!(rows.len(), 6);
    let factor = |row: usize| {
        rows[row]
            .outcome
            .as_ref()
            .unwrap()
            .rack_face
            .factor()
            .unwrap()
    };
    assert!(
        factor(0) < 1.0 && factor(1) > factor(0),
        "3/8 grade 5 yields"
    );
    assert_relative_eq!(factor(1) / factor(0), 130.0 / 92.0, max_relative = 1e-12);
    assert!(
        factor(3) > 2.0 * factor(1),
        "half inch against three eighths"
    );
    let Allowance::UpTo(length) = rows[1].outcome.as_ref().unwrap().free_length else {
        panic!("a length")
    };
    assert!(length < 40.0, "too long as it is");
    let covered = compare(
        left(40.0),
        &[thread("M6")],
        &grades,
        rod_force(4000.0, 15.0),
        1.5,
    );
    assert!(covered.iter().all(|row| row.outcome.is_err()));
}

#[test]
fn steep_limits_of_the_allowances() {
    let end = RackEnd::new(
        left(40.0),
        thread("M12"),
        &grade("8.8"),
        &BoreMouth::LoadsOnly,
    )
    .unwrap();
    assert_eq!(
        end.greatest_rod_angle(rod_force(1e6, 5.0), 1.0),
        Ok(Allowance::Never)
    );
    assert_eq!(
        end.greatest_free_length(rod_force(1e6, 5.0), 1.0),
        Ok(Allowance::Never)
    );
    assert_eq!(
        end.greatest_rod_angle(rod_force(1.0, 5.0), 1.0),
        Ok(Allowance::Always)
    );
    assert_eq!(
        end.greatest_free_length(rod_force(1000.0, 0.0), 1.0),
        Ok(Allowance::Always)
    );
}

/// 40 mm of 1/2-20, grade 8, the joint this far off the rack's line, mm.
fn off_axis(offset: Vector3<f64>) -> RackEnd {
    RackEnd::new(
        left(40.0).with_offset(offset).unwrap(),
        thread("1/2-20"),
        &grade("grade 8"),
        &BoreMouth::LoadsOnly,
    )
    .unwrap()
}

/// A bracket whose moment opposes the lever's in one plane and stands alone in the other. By hand: e = y, a = (30, 0, 5), F = (0, 2000, 100): the
/// lever brings 100 L about x, the bracket -5 x 2000 about x and 30 x 2000 about z. However long the end, 60 N m are left: 442 MPa in 1/2-20 (W = 135.79).
#[test]
fn no_length_mends_a_moment_that_the_lever_does_not_touch() {
    let end = off_axis(Vector3::new(30.0, 0.0, 5.0));
    let force = Vector3::new(0.0, 2000.0, 100.0);
    // 896.3 MPa over 2.5 leave 358.5, over 1.5 597.5.
    assert_eq!(end.greatest_free_length(force, 2.5), Ok(Allowance::Never));
    let longer = end.greatest_free_length(force, 1.5).unwrap();
    assert!(
        matches!(longer, Allowance::UpTo(free) if free > 100.0),
        "{longer:?}"
    );
}

/// By hand: 5 mm of drop and 2 kN bring 10 N m at the face whatever the length, 73.6 MPa in 1/2-20, and the lever adds to it. 896.3 MPa over 15 leave 59.8.
#[test]
fn no_length_mends_a_moment_that_the_lever_adds_to() {
    let end = off_axis(Vector3::new(0.0, 0.0, -5.0));
    let force = Vector3::new(0.0, 2000.0, 100.0);
    assert_eq!(end.greatest_free_length(force, 15.0), Ok(Allowance::Never));
}

/// The factor that is left at an angle allows just that angle, steep ones too, with the joint off the axis.
#[test]
fn steep_angles_off_the_axis_are_found() {
    let end = off_axis(Vector3::new(0.0, 0.0, -4.0));
    for degrees in [12.0_f64, 45.0, 62.0, 75.0] {
        let there = end.under(rod_force(1500.0, degrees), 0.0).unwrap();
        let wanted = there.rack_face.factor().unwrap();
        let found = end.greatest_rod_angle(rod_force(1500.0, 20.0), wanted);
        let Ok(Allowance::UpTo(angle)) = found else {
            panic!("{found:?} for {degrees}")
        };
        assert_relative_eq!(angle.to_degrees(), degrees, max_relative = 1e-6);
    }
}

fn vector(size: f64) -> impl Strategy<Value = Vector3<f64>> {
    prop::array::uniform3(-size..size).prop_map(Vector3::from)
}

proptest! {
    /// Turning the whole frame changes no figure; a mirror image only the torsion's sign.
    #[test]
    fn frame_and_side_do_not_matter(
        free in 5.0..90.0_f64, offset in vector(30.0), reach in 30.0..120.0_f64, force in vector(4000.0), rack in -30.0..30.0_f64, turn in vector(3.0),
    ) {
        let run = |axis: Vector3<f64>, offset: Vector3<f64>, force: Vector3<f64>| {
            let geometry = RackEndGeometry::on_axis(axis, free).unwrap().with_offset(offset).unwrap().with_bore_mouth(reach).unwrap();
            let end = RackEnd::new(geometry, thread("M14x1.5"), &grade("8.8"), &BoreMouth::ThreadThrough).unwrap();
            let stress = end.under(force, rack).unwrap();
            let mouth = stress.bore_mouth.unwrap();
            [stress.rack_face.loads.torsion, stress.rack_face.von_mises(), mouth.loads().torsion, mouth.stress().unwrap().von_mises(), mouth.loads().axial]
        };
        let here = run(Vector3::y(), offset, force);
        let rotation = Rotation3::from_scaled_axis(turn);
        let turned = run(rotation * Vector3::y() * 7.0, rotation * offset, rotation * force);
        let mirror = |v: Vector3<f64>| Vector3::new(v.x, -v.y, v.z);
        let mut mirrored = run(-Vector3::y(), mirror(offset), mirror(force));
        mirrored[0] = -mirrored[0];
        mirrored[2] = -mirrored[2];
        for (index, &value) in here.iter().enumerate() {
            let close = 1e-9 * (1.0 + force.norm() * 150.0);
            prop_assert!((turned[index] - value).abs() < close);
            prop_assert!((mirrored[index] - value).abs() < close);
        }
    }

    /// Stress follows the force in proportion, pull or push.
    #[test]
    fn stress_is_in_proportion(force in vector(3000.0), by in -5.0..5.0_f64) {
        let end = RackEnd::new(left(45.0), thread("1/2-20"), &grade("grade 5"), &BoreMouth::LoadsOnly).unwrap();
        let once = end.under(force, 0.0).unwrap().rack_face.von_mises();
        let scaled = end.under(force * by, 0.0).unwrap().rack_face.von_mises();
        prop_assert!((scaled - by.abs() * once).abs() <= 1e-9 * once);
    }

    /// A rack end cut to the greatest free length has just the wanted factor, offset or not; a longer one less.
    #[test]
    fn greatest_free_length_is_just_enough(force in vector(6000.0), offset in vector(15.0), wanted in 0.8..4.0_f64) {
        let geometry = left(40.0).with_offset(offset).unwrap();
        let cut = |free: f64| RackEnd::new(geometry.with_free_length(free).unwrap(), thread("1/2-20"), &grade("grade 8"), &BoreMouth::LoadsOnly).unwrap();
        let factor = |free: f64| cut(free).under(force, 0.0).unwrap().rack_face.factor().unwrap();
        match cut(40.0).greatest_free_length(force, wanted).unwrap() {
            Allowance::UpTo(free) => {
                prop_assert!((factor(free) / wanted - 1.0).abs() < 1e-9);
                prop_assert!(factor(free + 0.1) < wanted);
            }
            Allowance::Never => {
                for free in 0..60 {
                    prop_assert!(factor(f64::from(free) * 2.0) < wanted);
                }
            }
            Allowance::Always => prop_assert!(false, "a random force always bends"),
        }
    }

    /// At the greatest angle the rod leaves just the wanted factor and below it more, on the axis (closed form) as off it (search).
    #[test]
    fn greatest_rod_angle_is_just_enough(size in 200.0..30_000.0_f64, free in 0.0..80.0_f64, drop in prop::sample::select(vec![0.0, -4.0, 9.0]), wanted in 0.8..3.0_f64) {
        let geometry = left(free).with_offset(Vector3::new(0.0, 0.0, drop)).unwrap();
        let end = RackEnd::new(geometry, thread("1/2-20"), &grade("grade 8"), &BoreMouth::LoadsOnly).unwrap();
        let factor = |angle: f64| end.under(rod_force(size, angle.to_degrees()), 0.0).unwrap().rack_face.factor().unwrap();
        let steps = |to: f64| (0..=60).map(move |step| to * f64::from(step) / 60.0);
        match end.greatest_rod_angle(rod_force(-size, 12.0), wanted).unwrap() {
            Allowance::UpTo(angle) => {
                prop_assert!((factor(angle) / wanted - 1.0).abs() < 1e-6, "{} {}", factor(angle), wanted);
                prop_assert!(steps(angle).all(|less| factor(less) > wanted * (1.0 - 1e-6)));
            }
            Allowance::Never => prop_assert!(factor(0.0) < wanted),
            Allowance::Always => prop_assert!(steps(1.57).all(|any| factor(any) > wanted * (1.0 - 1e-6))),
        }
    }
}
