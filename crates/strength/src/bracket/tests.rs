use super::*;
use crate::material::Material;
use crate::units::{INCH, KSI, POUND_FORCE};
use approx::assert_relative_eq;
use proptest::prelude::*;

const KIP: f64 = 1000.0 * POUND_FORCE;

fn steel(yields: f64, tensile: f64) -> MaterialStrength {
    Material::own("test", yields * KSI, Some(tensile * KSI), 207_000.0)
        .unwrap()
        .strength(5.0)
        .unwrap()
}

fn ears() -> BracketSize {
    BracketSize {
        ears: ShearPlanes::Double,
        thickness: 5.0,
        width: 40.0,
        height: 50.0,
        bolt: 12.0,
        hole: 12.5,
        edge: 20.0,
        gap: 26.0,
        boxing: 0.0,
    }
}

fn value(bracket: &Bracket, force: BracketForce, wanted: Check) -> Finding {
    let mut found = None;
    bracket.check(&force, |f| {
        if f.check == wanted {
            found = Some(f);
        }
    });
    found.unwrap()
}

fn pulled(pull: f64) -> BracketForce {
    BracketForce {
        pull,
        ..BracketForce::default()
    }
}

/// Shigley 9th ed., example 8-6: members of 54 ksi, 1 in thick, two bolts of 3/4 in, 1 1/8 in from the edge, factor 1.5: bearing 54, edge shear 93.5, net
/// tension 90 kip (4 in wide). One bolt's half of it: a plate 2 in wide.
#[test]
fn splice_as_printed() {
    let size = BracketSize {
        ears: ShearPlanes::Single,
        thickness: INCH,
        width: 2.0 * INCH,
        height: 3.0 * INCH,
        bolt: 0.75 * INCH,
        hole: 0.75 * INCH,
        edge: 1.125 * INCH,
        gap: 0.0,
        boxing: 0.0,
    };
    let bracket = Bracket::new(size, steel(54.0, 80.0), None).unwrap();
    for (check, kips) in [
        (Check::TabBearing, 54.0),
        (Check::TabShearOut, 93.5),
        (Check::TabNetSection, 90.0),
    ] {
        let factor = value(&bracket, pulled(kips * KIP / 2.0), check)
            .factor()
            .unwrap();
        assert!((factor - 1.5).abs() < 1e-3, "{check} {factor}");
    }
}

/// Shigley's solutions, problem 8-40: 3/8 in bolts, members of 32 ksi, 1/4 in thick, 4 kip on two bolts: bearing 1.50, tension 3.25 (2 in wide, one hole).
#[test]
fn lap_joint_as_printed() {
    let size = BracketSize {
        ears: ShearPlanes::Single,
        thickness: 0.25 * INCH,
        width: 2.0 * INCH,
        height: INCH,
        bolt: 0.375 * INCH,
        hole: 0.375 * INCH,
        edge: INCH,
        gap: 0.0,
        boxing: 0.0,
    };
    let bracket = Bracket::new(size, steel(32.0, 60.0), None).unwrap();
    let bearing = value(&bracket, pulled(2.0 * KIP), Check::TabBearing);
    assert!((bearing.factor().unwrap() - 1.50).abs() < 0.005);
    let tension = value(&bracket, pulled(4.0 * KIP), Check::TabNetSection);
    assert!((tension.factor().unwrap() - 3.25).abs() < 0.005);
}

/// Brockenbrough, Structural Steel Designer's Handbook, p. 3.42 (AISC J3.10): 7/8 in bolt, hole 15/16, edge 1 1/2 in. A web of 0.245 in and 65 ksi tears
/// out at 14.7 kip (computed 14.78); a 3/8 in plate of 58 ksi far from its edge bears 34.3 kip; near it, 20.2 kip.
#[test]
fn tear_out_as_printed() {
    let bracket = |thickness: f64, tensile: f64, edge: f64| {
        let size = BracketSize {
            ears: ShearPlanes::Single,
            thickness: thickness * INCH,
            width: 6.0 * INCH,
            height: INCH,
            bolt: 0.875 * INCH,
            hole: 15.0 / 16.0 * INCH,
            edge: edge * INCH,
            gap: 0.0,
            boxing: 0.0,
        };
        let bracket = Bracket::new(size, steel(36.0, tensile), None).unwrap();
        value(&bracket, pulled(1.0), Check::TabTearOut).limit.value / KIP
    };
    assert!((bracket(0.245, 65.0, 1.5) - 14.78).abs() < 0.005);
    assert!((bracket(0.375, 58.0, 3.0) - 34.3).abs() < 0.05);
    assert!((bracket(0.375, 58.0, 1.5) - 20.2).abs() < 0.05);
}

/// Two ears tear out at twice what one plate of them does (AISC J3.10, by hand): 12.5 mm hole 20 mm from the edge, 1.2 x 13.75 x 5 x 58 ksi x 0.75 = 24.743 kN each.
#[test]
fn two_ears_tear_out_together() {
    let limit = |count, gap| {
        let size = BracketSize {
            ears: count,
            gap,
            ..ears()
        };
        let bracket = Bracket::new(size, steel(36.0, 58.0), None).unwrap();
        value(&bracket, pulled(1.0), Check::TabTearOut).limit.value
    };
    let one = limit(ShearPlanes::Single, 0.0);
    assert_relative_eq!(one, 0.75 * 1.2 * 13.75 * 5.0 * 399.896, max_relative = 1e-5);
    assert_relative_eq!(limit(ShearPlanes::Double, 26.0), 2.0 * one);
}

/// Gere, problem 1.8-5: 1800 lb, 20 ksi, plate of 5/16 in: bolt of 0.288 in (printed) for bearing.
#[test]
fn bearing_as_printed() {
    let size = BracketSize {
        ears: ShearPlanes::Single,
        thickness: 5.0 / 16.0 * INCH,
        bolt: 0.288 * INCH,
        hole: 0.288 * INCH,
        ..ears()
    };
    let bracket = Bracket::new(size, steel(20.0, 60.0), None).unwrap();
    let factor = value(&bracket, pulled(1800.0 * POUND_FORCE), Check::TabBearing).factor();
    assert_relative_eq!(factor.unwrap(), 1.0, max_relative = 2e-3);
}

/// By hand: two ears 40 x 5, hole 50 mm up. 1000 N along: 50000/(2 x 5 x 1600/6) = 18.75 MPa; 1000 N across: 50000/(2 x 40 x 25/6) = 150 MPa; pull 2.5 MPa.
/// Boxed with 4 mm between ears 26 apart: area 504; centroid (400 x 20 + 104 x 2)/504 = 16.2857; I along 53333.33 + 400 x 3.7143^2 + 138.67 + 104 x 14.2857^2
/// = 80214.86, modulus 80214.86/23.7143 = 3382.55; I across 2 (416.67 + 200 x 15.5^2) + 4 x 26^3/12 = 102792; modulus 102792/18 = 5710.67.
#[test]
fn bending_at_the_base_by_hand() {
    let plain = Bracket::new(ears(), steel(36.0, 58.0), None).unwrap();
    let boxed_size = BracketSize {
        boxing: 4.0,
        ..ears()
    };
    let boxed = Bracket::new(boxed_size, steel(36.0, 58.0), None).unwrap();
    let force = |along, across| BracketForce {
        pull: 0.0,
        along,
        across,
    };
    let stress = |bracket, force| value(bracket, force, Check::TabBending).value;
    assert_relative_eq!(
        stress(&plain, force(1000.0, 0.0)),
        18.75,
        max_relative = 1e-9
    );
    assert_relative_eq!(
        stress(&plain, force(0.0, -1000.0)),
        150.0,
        max_relative = 1e-9
    );
    assert_relative_eq!(stress(&plain, pulled(-1000.0)), 2.5, max_relative = 1e-9);
    assert_relative_eq!(
        stress(&boxed, force(1000.0, 0.0)),
        50_000.0 / 3382.55,
        max_relative = 1e-5
    );
    assert_relative_eq!(
        stress(&boxed, force(0.0, 1000.0)),
        50_000.0 / 5710.67,
        max_relative = 1e-5
    );
    assert_relative_eq!(stress(&boxed, pulled(504.0)), 1.0, max_relative = 1e-12);
}

/// Two ears 40 x 5 welded on both faces, 3 mm leg, E70: 1000 N across at 50 mm: 50000/400 = 125 N/mm with 1000/160 = 6.25 in shear; over a throat of 2.121 mm 59.01 MPa;
/// allowed 144.79 MPa.
#[test]
fn weld_by_hand() {
    let weld = Fillet::new(3.0, 70.0).unwrap();
    let bracket = Bracket::new(ears(), steel(36.0, 58.0), Some(weld)).unwrap();
    let force = BracketForce {
        across: 1000.0,
        ..BracketForce::default()
    };
    let throat = value(&bracket, force, Check::WeldThroat);
    assert_relative_eq!(
        throat.value,
        125.0_f64.hypot(6.25) / 2.121,
        max_relative = 1e-9
    );
    assert_relative_eq!(throat.limit.value, 144.790, max_relative = 1e-5);
}

#[test]
fn brackets_that_are_none_are_refused() {
    let strength = steel(36.0, 58.0);
    for bad in [
        BracketSize {
            thickness: 0.0,
            ..ears()
        },
        BracketSize {
            width: f64::NAN,
            ..ears()
        },
        BracketSize {
            thickness: 1e200,
            width: 1e200,
            ..ears()
        },
        BracketSize {
            hole: 11.0,
            ..ears()
        },
        BracketSize {
            hole: 41.0,
            ..ears()
        },
        BracketSize {
            edge: 6.0,
            ..ears()
        },
        BracketSize {
            boxing: -1.0,
            ..ears()
        },
        BracketSize {
            boxing: 40.0,
            ..ears()
        },
        BracketSize {
            boxing: 4.0,
            ears: ShearPlanes::Single,
            ..ears()
        },
        BracketSize {
            boxing: 4.0,
            gap: 0.0,
            ..ears()
        },
    ] {
        assert!(Bracket::new(bad, strength, None).is_err(), "{bad:?}");
    }
}

proptest! {
    /// Boxing never weakens a pair of ears across their planes, and thicker plates never weaken anything.
    #[test]
    fn more_metal_is_never_worse(pull in -5e3..5e3_f64, along in -5e3..5e3_f64, across in -5e3..5e3_f64, boxing in 1.0..8.0_f64, by in 1.0..3.0_f64) {
        let force = BracketForce { pull, along, across };
        let weld = Some(Fillet::new(4.0, 70.0).unwrap());
        let strength = steel(36.0, 58.0);
        let all = |size| {
            let mut found = vec![];
            Bracket::new(size, strength, weld).unwrap().check(&force, |f| found.push(f));
            found
        };
        let sideways = BracketForce { across, ..BracketForce::default() };
        let bending = |size| value(&Bracket::new(size, strength, weld).unwrap(), sideways, Check::TabBending).value;
        let boxed = bending(BracketSize { boxing, ..ears() });
        prop_assert!(boxed <= bending(ears()));
        let thicker = BracketSize { thickness: 5.0 * by, ..ears() };
        for (before, after) in all(ears()).iter().zip(all(thicker)) {
            let (before, after) = (before.factor().unwrap_or(1e9), after.factor().unwrap_or(1e9));
            prop_assert!(after >= before * (1.0 - 1e-12));
        }
    }
}
