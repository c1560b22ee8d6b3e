//! What the shop's step and datum do to what is printed.

use super::*;

#[test]
fn rounding_to_a_step_on_which_everything_lies_costs_nothing() {
    for cost in rounding_costs(&good()).unwrap() {
        assert!(cost.is_nothing(), "{:?}", cost.moved);
        assert_eq!(cost.before, cost.after);
    }
}

#[test]
fn a_coarser_step_moves_points_by_no_more_than_half_of_its_diagonal_and_shows() {
    let mut build = good();
    build.shop.step = Some(ShopStep::WholeMm);
    for cost in rounding_costs(&build).unwrap() {
        assert!(
            cost.moved > 0.3 && cost.moved <= 0.5 * 3.0_f64.sqrt() + 1e-9,
            "{}",
            cost.moved
        );
        let [before, after] = cost.largest();
        assert!((before - after).abs() > 1e-6, "the toe curve moved");
    }
}

#[test]
fn a_lock_does_not_keep_a_coordinate_from_being_rounded() {
    let mut build = good();
    build.shop.step = Some(ShopStep::WholeMm);
    let free = rounding_costs(&build).unwrap();
    let lock = Edit::SetPointLock(AxleName::Front, PointName::TieRodInner, true);
    assert_eq!(rounding_costs(&lock.apply(&build).unwrap()).unwrap(), free);
}

#[test]
fn the_datum_shifts_the_coordinates_that_are_printed() {
    let m = Metrics::new().unwrap();
    let shop = ShopSpec {
        datum: Some([-10.0, 0.0, 2.0]),
        ..ShopSpec::default()
    };
    let moved = Edit::Parts(PartsEdit::Shop(Box::new(shop)))
        .apply(&good())
        .unwrap();
    let row = |build: &Build| {
        let sheets = Sheets::of(build, Paper::A4, &m);
        sheets.sheet("fixture-sheet").unwrap().tables[1].rows()[0].clone()
    };
    assert_eq!(
        row(&good())[1..4],
        ["4 1/2 (4.500)", "7 3/4 (7.750)", "12 7/8 (12.875)"]
    );
    assert_eq!(
        row(&moved)[1..4],
        ["14 1/2 (14.500)", "7 3/4 (7.750)", "10 7/8 (10.875)"]
    );
}
