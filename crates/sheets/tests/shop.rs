//! How the shop prints and saws, and the rack's mount plate.

#![allow(clippy::expect_used, reason = "a test stops where it fails")]

use trammel_build::{AxleName, Build, Edit, EditFault, LengthUnit, PartsEdit, RackMount, ShopSpec};

/// A demo in inches.
fn demo() -> Build {
    let [first, ..] = trammel_persistence::demos();
    trammel_persistence::read(first.text).expect("it reads")
}

fn shop(spec: ShopSpec) -> Edit {
    Edit::Parts(PartsEdit::Shop(Box::new(spec)))
}

fn mount(width: f64) -> Edit {
    Edit::Parts(PartsEdit::RackMount(Some(Box::new(RackMount {
        width,
        height: 3.0,
        thickness: 0.25,
        along: 3.0,
        across: 2.0,
        thread: None,
    }))))
}

#[test]
fn the_shops_lengths_go_along_when_the_unit_is_converted() {
    let typed = ShopSpec {
        datum: Some([10.0, 0.0, -2.0]),
        stock_length: Some(240.0),
        plate: Some([48.0, 24.0]),
        ..ShopSpec::default()
    };
    let build = shop(typed).apply(&demo()).expect("usable");
    let build = mount(4.0).apply(&build).expect("usable");
    let mm = Edit::ConvertUnit(LengthUnit::Millimetre)
        .apply(&build)
        .expect("usable");
    assert_eq!(mm.shop.datum, Some([254.0, 0.0, -50.8]));
    assert_eq!(mm.shop.stock_length, Some(6096.0));
    assert_eq!(mm.shop.plate, Some([1219.2, 609.6]));
    let mount = mm
        .axle_spec(AxleName::Front)
        .and_then(|a| a.parts.rack_mount.clone());
    assert_eq!(mount.expect("it is there").width, 101.6);
}

#[test]
fn figures_that_no_shop_has_are_refused() {
    let build = demo();
    let with = |spec: ShopSpec| shop(spec);
    for (edit, path) in [
        (
            with(ShopSpec {
                kerf: Some(-1.0),
                ..ShopSpec::default()
            }),
            "shop.kerf",
        ),
        (
            with(ShopSpec {
                stock_length: Some(0.0),
                ..ShopSpec::default()
            }),
            "shop.stock_length",
        ),
        (
            with(ShopSpec {
                plate: Some([100.0, f64::NAN]),
                ..ShopSpec::default()
            }),
            "shop.plate",
        ),
        (
            with(ShopSpec {
                datum: Some([f64::NAN; 3]),
                ..ShopSpec::default()
            }),
            "shop.datum",
        ),
        (mount(0.0), "front.parts.rack_mount.width"),
    ] {
        let fault = edit.apply(&build).expect_err(path);
        assert!(
            matches!(&fault, EditFault::Unusable(f) if f.path() == path),
            "{path}: {fault}"
        );
    }
}
