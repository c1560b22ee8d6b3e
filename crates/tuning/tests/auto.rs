//! Automatic tuning: it finds what the best spot finds, keeps to its ranges, and is the same for the same seed.
#![allow(
    clippy::unwrap_used,
    clippy::panic,
    reason = "helpers of tests fail by panicking, as tests do"
)]

mod common;

use trammel_geometry::{Corner, Linkage, Vector};
use trammel_tuning::{
    Aim, Axis, Coordinate, Dimension, Emphasis, Figure, Hardpoint, Movable, Scoring, Search,
    Stations, ToeCurves, TuneFault, TuneRequest, Tuner, Variable, Ways, Wish, best_spot,
};

const ONE_DEGREE: f64 = std::f64::consts::PI / 180.0;

fn wish(figure: Figure, aim: Aim, scale: f64) -> Wish {
    Wish {
        figure,
        aim,
        scale,
        weight: 1.0,
    }
}

fn bad_corner() -> Corner {
    let mut corner = common::behind();
    corner.tie_rod.inner += Vector::new(0.0, 25.0, -18.0);
    corner
}

fn request() -> TuneRequest {
    TuneRequest {
        corner: bad_corner(),
        variables: vec![
            Dimension::RackHeight.variable(-40.0, 40.0),
            Dimension::RackWidth.variable(-60.0, 60.0),
        ],
        wishes: vec![wish(Figure::ToeChange, Aim::Near(0.0), 0.1 * ONE_DEGREE)],
        travels: (0..21)
            .map(|i| -100.0 + 225.0 * f64::from(i) / 20.0)
            .collect(),
        weights: vec![],
        lock: 38.0,
        wheelbase: 1700.0,
        seed: 5,
        generations: 0,
    }
}

#[test]
fn with_the_rack_alone_it_finds_the_best_spot() {
    let request = request();
    let mut tuner = Tuner::new(&request, None).unwrap();
    let best = &tuner.run().unwrap()[0];
    let stations = Stations::new(request.travels.clone(), vec![0.0]).unwrap();
    let spot = best_spot(
        &request.corner,
        &Search {
            movable: Movable::Inner,
            ways: Ways::FrontPlane,
            scoring: Scoring::Rms,
            stations,
            held: vec![],
            reach: 100.0,
            step: None,
        },
    )
    .unwrap();
    let off = best.exact.corner.tie_rod.inner - spot.exact.tie_rod.inner;
    assert!(off.norm() < 1e-3, "{off}");
    assert!(best.in_steps.is_none());
}

#[test]
fn the_same_seed_gives_the_same_answer_however_it_is_stepped() {
    let request = request();
    let mut at_once = Tuner::new(&request, None).unwrap();
    let all = at_once.run().unwrap().to_vec();
    let mut stepwise = Tuner::new(&request, None).unwrap();
    let mut last = 0.0;
    while !stepwise.progress().done {
        let progress = stepwise.step(17);
        assert!(progress.part >= last);
        last = progress.part;
    }
    assert_eq!(stepwise.solutions(), all);
    assert_eq!(last, 1.0);
    assert!(stepwise.explored().count() > 20);
}

#[test]
fn it_can_be_stopped_and_has_something_to_show() {
    let mut tuner = Tuner::new(&request(), None).unwrap();
    assert!(tuner.solutions().is_empty());
    let first = tuner.step(1).best.unwrap();
    let later = tuner.step(200).best.unwrap();
    assert!(later < first);
    assert_eq!(tuner.solutions().len(), 1);
}

/// The rack must stay where a limit on the tie rod's angle lets it: the answer lies on the limit, and more toe change
/// is the price.
#[test]
fn a_limit_is_kept_and_costs_something() {
    let mut request = request();
    let free = Tuner::new(&request, None).unwrap().run().unwrap()[0]
        .exact
        .clone();
    let limit = free.figures.tie_rod_angle - 2.0 * ONE_DEGREE;
    request.wishes.push(Wish {
        weight: 100.0,
        ..wish(Figure::TieRodAngle, Aim::AtMost(limit), 0.05 * ONE_DEGREE)
    });
    let held = Tuner::new(&request, None).unwrap().run().unwrap()[0]
        .exact
        .clone();
    assert!(
        held.figures.tie_rod_angle < limit + 0.1 * ONE_DEGREE,
        "{:?}",
        held.figures
    );
    assert!(held.figures.toe.rms > 5.0 * free.figures.toe.rms);
}

#[test]
fn a_rack_end_check_from_outside_takes_part() {
    let mut request = request();
    request
        .wishes
        .push(wish(Figure::RackEndFactor, Aim::AtLeast(2.0), 0.1));
    assert_eq!(Tuner::new(&request, None).err(), Some(TuneFault::NoRackEnd));
    // A stand-in that likes the joint far out: its factor grows by one for each 10 mm.
    let start = request.corner.tie_rod.inner.y;
    let factor = Box::new(move |c: &Corner| Some(1.0 + (c.tie_rod.inner.y - start) / 10.0));
    let mut tuner = Tuner::new(&request, Some(factor)).unwrap();
    let found = &tuner.run().unwrap()[0].exact;
    assert!(
        found.figures.rack_end_factor.unwrap() > 1.8,
        "{:?}",
        found.figures
    );
    assert!(found.values[1] > 8.0);
}

#[test]
fn many_wishes_many_ways_and_whole_steps() {
    let step = 25.4 / 16.0;
    let mut request = request();
    request.generations = 40;
    request.variables = vec![
        Dimension::RackHeight.variable(-40.0, 40.0).in_steps(step),
        Dimension::RackWidth.variable(-60.0, 60.0).in_steps(step),
        Dimension::One(Coordinate {
            point: Hardpoint::TieRodOuter,
            axis: Axis::Y,
        })
        .variable(-10.0, 10.0)
        .in_steps(step),
        Dimension::UpperPivotsHeight
            .variable(-25.0, 25.0)
            .in_steps(step),
        Dimension::LowerPivotsHeight
            .variable(-25.0, 25.0)
            .in_steps(step),
        Dimension::One(Coordinate {
            point: Hardpoint::UpperBallJoint,
            axis: Axis::X,
        })
        .variable(-15.0, 15.0)
        .in_steps(step),
    ];
    request.wishes = vec![
        wish(Figure::ToeChange, Aim::Near(0.0), 0.1 * ONE_DEGREE),
        wish(
            Figure::ToeChangeAtLock,
            Aim::AtMost(0.5 * ONE_DEGREE),
            0.5 * ONE_DEGREE,
        ),
        wish(
            Figure::CamberGain,
            Aim::Near(-0.8 * ONE_DEGREE / 25.0),
            0.2 * ONE_DEGREE / 25.0,
        ),
        wish(Figure::RollCentreHeight, Aim::Near(90.0), 20.0),
        wish(Figure::RollCentreMigration, Aim::AtMost(200.0), 50.0),
        wish(Figure::ScrubRadius, Aim::AtMost(80.0), 5.0),
        wish(
            Figure::Castor,
            Aim::Near(7.0 * ONE_DEGREE),
            1.0 * ONE_DEGREE,
        ),
        wish(Figure::Ackermann, Aim::AtLeast(20.0), 20.0),
        wish(Figure::TurningCircle, Aim::AtMost(9500.0), 500.0),
        wish(
            Figure::TieRodAngle,
            Aim::AtMost(20.0 * ONE_DEGREE),
            2.0 * ONE_DEGREE,
        ),
    ];
    let mut tuner = Tuner::new(&request, None).unwrap();
    let solutions = tuner.run().unwrap().to_vec();
    assert!(!solutions.is_empty() && solutions.len() <= 8);
    let start = request.corner;
    for s in &solutions {
        for (v, x) in request.variables.iter().zip(&s.exact.values) {
            assert!(*x >= v.low && *x <= v.high);
        }
        let whole = s.in_steps.as_ref().unwrap();
        for (v, x) in request.variables.iter().zip(&whole.values) {
            assert!(*x >= v.low && *x <= v.high);
        }
        let inner = whole.corner.tie_rod.inner;
        for v in [inner.y, inner.z] {
            assert!((v / step - (v / step).round()).abs() < 1e-9, "{v}");
        }
        assert!(whole.worth >= s.exact.worth * 0.9);
        assert!(s.exact.figures.toe.largest.is_finite());
    }
    let best = &solutions[0].exact;
    assert!(
        best.figures.toe.largest < 0.3 * ONE_DEGREE,
        "{:?}",
        best.figures
    );
    assert!((best.figures.castor - 7.0 * ONE_DEGREE).abs() < 2.0 * ONE_DEGREE);
    assert!(
        best.corner.upper_arm.front_pivot.z - start.upper_arm.front_pivot.z == best.values[3]
            || (best.corner.upper_arm.front_pivot.z
                - start.upper_arm.front_pivot.z
                - best.values[3])
                .abs()
                < 1e-9
    );
}

/// A wish that two places fulfil equally well: the joint a given way out or in of where a factor has its two tops.
/// Both come back.
#[test]
fn distinct_solutions_are_told_apart() {
    let mut request = request();
    request.wishes = vec![wish(Figure::RackEndFactor, Aim::Near(0.0), 1.0)];
    let start = request.corner.tie_rod.inner;
    let factor = Box::new(move |c: &Corner| {
        let d = c.tie_rod.inner - start;
        Some(((d.y / 30.0).powi(2) - 1.0).powi(2) + (d.z / 20.0).powi(2))
    });
    let mut tuner = Tuner::new(&request, Some(factor)).unwrap();
    let solutions = tuner.run().unwrap();
    let has = |y: f64| {
        solutions
            .iter()
            .any(|s| (s.exact.values[1] - y).abs() < 0.5 && s.exact.values[0].abs() < 3.0)
    };
    assert!(
        has(30.0) && has(-30.0),
        "{:?}",
        solutions
            .iter()
            .map(|s| &s.exact.values)
            .collect::<Vec<_>>()
    );
}

/// What counts more gets better, and the rest pays for it. The weights' size does not matter, only what they are to each
/// other.
#[test]
fn travels_that_count_more_keep_their_toe_better() {
    let solved = |weights: Vec<f64>| {
        let request = TuneRequest {
            weights,
            ..request()
        };
        let best = Tuner::new(&request, None).unwrap().run().unwrap()[0]
            .exact
            .clone();
        let stations = Stations::new(request.travels.clone(), vec![0.0]).unwrap();
        let linkage = Linkage::new(&best.corner).unwrap();
        let changes: Vec<f64> = ToeCurves::of(&linkage, &stations)
            .unwrap()
            .changes()
            .collect();
        let largest = |near: bool| {
            let of = request.travels.iter().zip(&changes);
            of.filter(|(t, _)| (t.abs() <= 50.0) == near)
                .fold(0.0_f64, |m, (_, c)| m.max(c.abs()))
        };
        (largest(true), largest(false), best)
    };
    let travels = request().travels;
    let alike = solved(vec![]);
    let middle = Emphasis::Middle.weights(&travels);
    let near = solved(middle.clone());
    assert!(near.0 < 0.9 * alike.0, "{} {}", near.0, alike.0);
    assert!(near.1 > alike.1, "{} {}", near.1, alike.1);
    let scaled = solved(middle.iter().map(|w| 7.0 * w).collect());
    assert!((scaled.2.values[0] - near.2.values[0]).abs() < 1e-6);
    let even = solved(Emphasis::Whole.weights(&travels));
    assert_eq!(even.2, alike.2);
}

#[test]
fn every_figure_wanted_between_two_ends_comes_to_lie_there() {
    let mut request = request();
    request.generations = 20;
    let free = Tuner::new(&request, None).unwrap().run().unwrap()[0]
        .exact
        .clone();
    let roll = free.figures.roll_centre_height;
    request
        .variables
        .push(Dimension::LowerPivotsHeight.variable(-20.0, 30.0));
    request.wishes = vec![Wish::little_toe_change()];
    let band = Figure::RollCentreHeight.within(Some(roll + 15.0), Some(roll + 17.0));
    request.wishes.extend(band);
    let held = Tuner::new(&request, None).unwrap().run().unwrap()[0]
        .exact
        .clone();
    let there = held.figures.roll_centre_height - roll;
    assert!((15.0..=17.0).contains(&there), "{there}");
    assert!(held.figures.toe.largest < 0.2 * ONE_DEGREE);
}

#[test]
fn a_dimension_moves_what_its_name_says() {
    for (dimension, axis) in [
        (Dimension::RackHeight, 2),
        (Dimension::RackWidth, 1),
        (Dimension::RackSetBack, 0),
        (Dimension::UpperPivotsHeight, 2),
        (Dimension::UpperPivotsWidth, 1),
        (Dimension::LowerPivotsHeight, 2),
        (Dimension::LowerPivotsWidth, 1),
    ] {
        let variable = dimension.variable(-1.0, 1.0);
        assert!(
            variable
                .moves
                .iter()
                .all(|(_, along)| along[axis] == 1.0 && along.norm() == 1.0)
        );
        let name = dimension.name().unwrap();
        let points: Vec<&str> = variable.moves.iter().map(|(p, _)| p.name()).collect();
        let prefix = if name.starts_with("rack") {
            "tie_rod.inner"
        } else {
            &name[..5]
        };
        assert!(
            points.iter().all(|p| p.starts_with(prefix)),
            "{name}: {points:?}"
        );
        assert_eq!(points.len(), if name.starts_with("rack") { 1 } else { 2 });
    }
    assert_eq!(Dimension::NAMED.len(), 7);
}

#[test]
fn requests_without_sense_are_refused() {
    let good = request();
    let refused = |r: TuneRequest| Tuner::new(&r, None).err().unwrap();
    for weights in [
        vec![1.0; 3],
        vec![0.0; 21],
        vec![-1.0; 21],
        vec![f64::NAN; 21],
    ] {
        let r = TuneRequest {
            weights: weights.clone(),
            ..good.clone()
        };
        assert!(
            matches!(
                refused(r),
                TuneFault::Weights { .. } | TuneFault::NotUsable { .. }
            ),
            "{weights:?}"
        );
    }
    assert!(matches!(
        refused(TuneRequest {
            variables: vec![],
            ..good.clone()
        }),
        TuneFault::Count { .. }
    ));
    assert!(matches!(
        refused(TuneRequest {
            wishes: vec![],
            ..good.clone()
        }),
        TuneFault::Count { .. }
    ));
    assert!(matches!(
        refused(TuneRequest {
            travels: vec![],
            ..good.clone()
        }),
        TuneFault::Travels(_)
    ));
    for v in [
        Dimension::RackHeight.variable(5.0, 5.0),
        Dimension::RackHeight.variable(f64::NAN, 5.0),
        Dimension::RackHeight.variable(-5.0, f64::INFINITY),
        Dimension::RackHeight.variable(-5.0, 5.0).in_steps(0.0),
        Variable {
            moves: vec![(Hardpoint::TieRodInner, Vector::zeros())],
            ..Dimension::RackHeight.variable(-1.0, 1.0)
        },
        Dimension::RackHeight.variable(-5000.0, 0.0),
    ] {
        let r = TuneRequest {
            variables: vec![v.clone()],
            ..good.clone()
        };
        assert!(matches!(refused(r), TuneFault::NotUsable { .. }), "{v:?}");
    }
    for (aim, scale) in [
        (Aim::Near(f64::NAN), 1.0),
        (Aim::Near(0.0), 0.0),
        (Aim::Near(0.0), -1.0),
    ] {
        let r = TuneRequest {
            wishes: vec![wish(Figure::Castor, aim, scale)],
            ..good.clone()
        };
        assert!(matches!(refused(r), TuneFault::NotUsable { .. }));
    }
    assert!(matches!(
        refused(TuneRequest {
            wheelbase: 0.0,
            ..good.clone()
        }),
        TuneFault::NotUsable { .. }
    ));
    assert!(matches!(
        refused(TuneRequest {
            lock: f64::NAN,
            ..good
        }),
        TuneFault::NotUsable { .. }
    ));
}

#[test]
fn when_nothing_can_be_built_it_says_why() {
    let run = |r: TuneRequest| Tuner::new(&r, None).unwrap().run().err().unwrap();
    let mut r = request();
    r.generations = 2;
    let mut flat = r.clone();
    flat.corner.lower_arm.ball_joint = flat.corner.upper_arm.ball_joint;
    assert!(matches!(run(flat), TuneFault::NotBuilt(_)));
    let far = TuneRequest {
        travels: vec![-800.0, 800.0],
        ..r.clone()
    };
    assert!(matches!(run(far), TuneFault::OutOfReach(_)));
    let no_lock = TuneRequest {
        lock: 0.0,
        wishes: vec![wish(Figure::TurningCircle, Aim::AtMost(9000.0), 100.0)],
        ..r
    };
    let fault = run(no_lock);
    assert_eq!(fault, TuneFault::NoFigure);
    assert!(!fault.to_string().contains("NaN"));
}
