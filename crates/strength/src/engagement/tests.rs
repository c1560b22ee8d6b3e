use super::*;
use crate::units::INCH;
use approx::assert_relative_eq;
use proptest::prelude::*;

fn thread(typed: &str) -> Thread {
    Thread::find(typed).unwrap()
}

fn usual(typed: &str) -> Stripping {
    Stripping::usual(thread(typed))
}

/// FED-STD-H28/2B formulas with classes 2A/2B, inches: areas per inch (4a) and (2a), length (14), and (16) for a 120 ksi bolt in 60 ksi. Computed
/// by an open thread library (screw-thread-lib 0.0.6), not printed in the standard.
#[test]
fn engagement_as_another_library_has_it() {
    let rows = [
        ("1/4-20", 0.36796, 0.53898, 0.17296, 0.23616),
        ("1/4-28", 0.37351, 0.52132, 0.19477, 0.27909),
        ("1/2-13", 0.77894, 1.12349, 0.36434, 0.50521),
        ("1/2-20", 0.79909, 1.08208, 0.40034, 0.59128),
        ("3/4-10", 1.21340, 1.72316, 0.55128, 0.77639),
        ("3/4-16", 1.23264, 1.65860, 0.60514, 0.89946),
    ];
    for (typed, external, internal, length, weak) in rows {
        let stripping = usual(typed);
        assert!(
            (stripping.external_area_per_length() / INCH - external).abs() < 1.1e-5,
            "{typed}"
        );
        assert!(
            (stripping.internal_area_per_length() / INCH - internal).abs() < 1.1e-5,
            "{typed}"
        );
        assert!(
            (stripping.length() / INCH - length).abs() < 1.1e-5,
            "{typed}"
        );
        let into_weak = stripping.length_into(120.0, 60.0).unwrap();
        assert!(
            (into_weak / INCH - weak).abs() < 2e-5,
            "{typed} {}",
            into_weak / INCH
        );
    }
}

#[test]
fn a_stronger_tapped_part_shortens_nothing() {
    let stripping = usual("1/2-20");
    assert_eq!(stripping.length_into(800.0, 1600.0), Ok(stripping.length()));
    assert!(stripping.length_into(800.0, 0.0).is_err());
    assert!(stripping.length_into(f64::NAN, 400.0).is_err());
    assert!(stripping.length_into(1e300, 1e-300).is_err());
}

/// The formulas of ASME B1.1 give the printed limits of the six sizes within one unit of the last place.
#[test]
fn unified_formulas_give_the_printed_limits() {
    for (designation, printed) in ThreadLimits::printed_sizes() {
        let ours = ThreadLimits::class_2_by_formula(thread(designation))
            .sizes()
            .map(|size| size / INCH);
        for (index, last_place) in [1e-4, 1e-4, 1e-3, 1e-4].into_iter().enumerate() {
            assert!(
                (ours[index] - printed[index]).abs() < last_place,
                "{designation} {index}: {ours:?}"
            );
        }
    }
}

/// M12 6g/6H as ISO 965-2 has it (from memory): 11.701, 10.679, 10.441, 11.063. M10: 9.732, 8.862, 8.676, 9.206.
#[test]
fn metric_formulas_come_near_the_printed_limits() {
    for (typed, printed) in [
        ("M12", [11.701, 10.679, 10.441, 11.063]),
        ("M10", [9.732, 8.862, 8.676, 9.206]),
    ] {
        for (ours, printed) in ThreadLimits::usual(thread(typed))
            .sizes()
            .into_iter()
            .zip(printed)
        {
            assert!((ours - printed).abs() < 0.012, "{typed}: {ours} {printed}");
        }
    }
}

#[test]
fn where_limits_come_from_is_told() {
    assert!(matches!(
        ThreadLimits::usual(thread("1/2-20")).basis(),
        LimitBasis::Printed(_)
    ));
    assert!(matches!(
        ThreadLimits::usual(thread("3/8-24")).basis(),
        LimitBasis::Formula(_)
    ));
    assert!(matches!(
        ThreadLimits::usual(thread("M12")).basis(),
        LimitBasis::Formula(_)
    ));
    let given = ThreadLimits::given(11.7, 10.68, 10.44, 11.06).unwrap();
    assert_eq!(given.basis(), LimitBasis::Given);
}

#[test]
fn limits_that_make_no_thread_are_refused() {
    assert!(ThreadLimits::given(11.7, 10.7, 11.8, 11.0).is_err());
    assert!(ThreadLimits::given(f64::NAN, 10.7, 10.4, 11.0).is_err());
    assert!(ThreadLimits::given(11.7, 10.7, 10.4, 0.0).is_err());
    let of_another_size = ThreadLimits::given(11.7, 8.0, 10.4, 11.0).unwrap();
    assert!(Stripping::with_limits(thread("M12"), &of_another_size).is_err());
}

/// In like steel the exact length is shorter than one diameter for every thread, which is why one diameter serves the trade.
#[test]
fn one_diameter_covers_stripping_in_like_steel() {
    for &thread in Thread::all() {
        let length = Stripping::usual(thread).length();
        let share = length / length_in_steel(thread);
        assert!((0.6..0.9).contains(&share), "{thread}: {share}");
    }
}

#[test]
fn rules_of_the_trade_by_hand() {
    let half = thread("1/2-20");
    assert_relative_eq!(length_in_steel(half), 12.7);
    assert_relative_eq!(length_of_least_threads(half), 3.81);
    assert_relative_eq!(threads_in(half, 12.7), 10.0);
    assert_relative_eq!(wall_left(22.0, half).unwrap(), 4.65);
    assert_relative_eq!(least_wall(half), 3.175);
    assert!(wall_left(10.0, half).unwrap() < 0.0);
    assert!(wall_left(f64::NAN, half).is_err());
}

proptest! {
    /// The tolerance's looseness can only lengthen the engagement.
    #[test]
    fn looser_threads_need_more(slack in 0.0..0.3_f64) {
        let m12 = thread("M12");
        let with = |slack: f64| {
            let limits = ThreadLimits::given(12.0 - slack, 10.863 - slack, 10.106 + slack, 10.863 + slack).unwrap();
            Stripping::with_limits(m12, &limits).unwrap().length()
        };
        prop_assert!(with(slack + 0.02) > with(slack));
    }
}

/// M6x0.75: grade 6 of ISO 965-1 gives the internal minor diameter 190 micrometres over 6 - 1.0825 x 0.75 = 5.188 (from memory): 5.378.
#[test]
fn fine_pitches_have_a_formula_of_their_own() {
    let [_, _, minor, _] = ThreadLimits::usual(thread("M6x0.75")).sizes();
    assert!((minor - 5.378).abs() < 1.5e-3, "{minor}");
}

/// By hand with ISO 965-1's formulas (from memory). M8x1, where every power is one: 8 - (15 + 11 + 180 - 3.15)/1000; internal minor, 230 from 1 mm on, 8 - 1.082532 + 0.230. M12x1.75:
/// 15 + 19.25 + 180 x 1.452206 - 3.15/1.322876 = 293.266 below 12.
#[test]
fn metric_formulas_by_hand() {
    let [fine, _, minor, _] = ThreadLimits::usual(thread("M8x1")).sizes();
    assert!((fine - 7.797_15).abs() < 1e-6, "{fine}");
    assert!((minor - 7.147_468).abs() < 1e-5, "{minor}");
    let [coarse, ..] = ThreadLimits::usual(thread("M12")).sizes();
    assert!((coarse - 11.706_734).abs() < 1e-5, "{coarse}");
}
