//! Member forces, arrows and the plot.

use egui::Role;
use egui_kittest::kittest::Queryable;
use trammel_build::{Mass, defaults};
use trammel_screen::{
    drawing::ForcePicture,
    prove::{
        forces::Member,
        settings::{Over, Plotted, ProvePage},
    },
};

use crate::{
    common::{Screen, click},
    hand::{prove, use_it},
};

fn picture(screen: &Screen) -> &ForcePicture {
    screen.state().prove().picture().expect("arrows")
}

/// The load on the wheel, in the unit of the scale's bar.
fn load(picture: &ForcePicture) -> [f64; 3] {
    let arrow = picture.arrows.iter().find(|a| a.of.is_none());
    let bar: f64 = picture
        .bar_text
        .split(' ')
        .next()
        .and_then(|n| n.parse().ok())
        .expect("a number");
    (arrow.expect("the load").reach * (bar / picture.bar_mm)).into()
}

#[test]
fn at_rest_the_load_arrow_is_the_weight_on_the_wheel_to_scale() {
    let screen = prove("good", ProvePage::Forces);
    let build = screen.state().build();
    let mass = build.vehicle.mass.map_or(defaults::MASS_KG, Mass::kg);
    let share = build.vehicle.front_share.unwrap_or(defaults::FRONT_SHARE);
    let pounds = mass * share / 2.0 / defaults::KILOGRAMS_PER_POUND;
    let [x, y, z] = load(picture(&screen));
    assert!(
        x.abs() < 1e-6 * pounds && y.abs() < 1e-6 * pounds,
        "{x} {y}"
    );
    assert!((z - pounds).abs() < 1e-6 * pounds, "{z} {pounds}");
    assert_eq!(picture(&screen).title, "at rest");
}

#[test]
fn arrows_are_taken_off_and_put_on() {
    let mut screen = prove("good", ProvePage::Forces);
    click(&mut screen, "Arrows");
    assert!(screen.state().prove().picture().is_none());
    click(&mut screen, "Arrows");
    assert!(screen.state().prove().picture().is_some());
}

#[test]
fn another_load_case_is_chosen_and_the_arrows_follow() {
    let mut screen = prove("good", ProvePage::Forces);
    let quiet = load(picture(&screen))[2];
    use_it(&mut screen, Role::ComboBox, "Load case");
    click(&mut screen, "landing");
    assert_eq!(picture(&screen).title, "landing");
    assert!(load(picture(&screen))[2] > 2.0 * quiet);
}

/// A rock at the front of the rim: the arrow stands where it hits, ahead of the wheel centre, and not at the centre or on the ground.
#[test]
fn a_hit_on_the_rim_is_drawn_where_it_hits() {
    let mut screen = prove("good", ProvePage::Forces);
    let build = screen.state().build().clone();
    let hits = trammel_analysis::effective_load_cases(&build);
    let on_rim = |case: &trammel_build::LoadCaseSpec| {
        case.actions.iter().find_map(|a| match a {
            trammel_build::LoadAction::Force(
                _,
                _,
                trammel_build::LoadPlace::Rim(_, height, _),
                _,
            ) => Some(*height),
            _ => None,
        })
    };
    let (case, height) = hits
        .iter()
        .find_map(|(case, _)| Some((case.name.clone(), on_rim(case)?)))
        .expect("a usual case hits the rim");
    screen.state_mut().view_mut().prove.case = Some(case);
    screen.run_steps(2);
    let rim = build.front.parts.wheel.rim_diameter.expect("a rim") * 25.4 / 2.0;
    let [x, _, z] = build.front.wheel.centre.map(|v| v * 25.4);
    let ahead = rim * (1.0 - height * height).sqrt();
    let on_wheel = picture(&screen).arrows.iter().filter(|a| a.of.is_none());
    let off = on_wheel
        .clone()
        .map(|a| (a.at.x - x - ahead).hypot(a.at.z - z - rim * height));
    let nearest = off.fold(f64::INFINITY, f64::min);
    // A camber of a degree turns the rim's lowest point outwards, and half a rim's width stands out.
    assert!(nearest < 3.0, "{nearest}");
    // The weight that stands on the wheel has an arrow of its own, on the ground.
    assert!(on_wheel.clone().any(|a| a.at.z.abs() < 1.0));
}

#[test]
fn a_name_of_the_table_is_plotted_over_travel_or_rack() {
    let mut screen = prove("good", ProvePage::Forces);
    use_it(&mut screen, Role::Button, "Plot: Spring unit");
    assert_eq!(
        screen.state().view().prove.plotted,
        Plotted::Force(Member::Spring)
    );
    use_it(&mut screen, Role::RadioButton, "Over: rack");
    assert_eq!(screen.state().view().prove.over, Over::Rack);
    let before = screen.state().view().rack;
    let plot = screen.get_by_label("Force over the motion").rect();
    let at = plot.center() + egui::vec2(70.0, 0.0);
    screen.hover_at(at);
    screen.step();
    screen.drag_at(at);
    screen.step();
    screen.drop_at(at);
    screen.run_steps(3);
    assert!(
        screen.state().view().rack > before,
        "a click in the plot goes there"
    );
}

#[test]
fn a_wheel_turned_on_the_spot_is_resisted_either_way() {
    let mut screen = prove("good", ProvePage::Forces);
    screen.state_mut().view_mut().prove.case = Some("parked steering".into());
    screen.run_steps(2);
    let tension = |s: &Screen| {
        let row = s
            .state()
            .prove()
            .forces_here()
            .expect("asked")
            .expect("known");
        row.forces.tie_rod_tension
    };
    let one = tension(&screen);
    click(&mut screen, "Turned: the other way");
    assert!(one * tension(&screen) < 0.0, "{one} {}", tension(&screen));
}

#[test]
fn the_forces_of_a_right_side_of_its_own_mirror_the_left_ones() {
    let mut screen = prove("good", ProvePage::Forces);
    let (axle, point) = (
        trammel_build::AxleName::Front,
        trammel_build::PointName::TieRodInner,
    );
    screen.state_mut().view_mut().selected = Some(trammel_build::PointRef {
        axle,
        side: trammel_build::Side::Right,
        point,
    });
    crate::common::press(&mut screen, egui::Modifiers::NONE, egui::Key::M);
    let left = load(picture(&screen));
    click(&mut screen, "Side: right");
    let right = load(picture(&screen));
    for (l, r) in left.into_iter().zip([right[0], -right[1], right[2]]) {
        assert!((l - r).abs() < 1e-6, "{left:?} {right:?}");
    }
}

/// Of a hit on the left wheel the right rod brings nothing; the rear axle has no rack.
#[test]
fn both_rods_on_the_rack_stand_below_the_members() {
    let mut screen = prove("good", ProvePage::Forces);
    assert!(screen.query_by_label("Rack, from the right rod").is_some());
    let here = |s: &Screen| s.state().prove().steering_here();
    let [left, right] = here(&screen).expect("a rack").rack;
    assert!((left + right).abs() < 1e-6 * left.abs(), "alike at rest");
    click(&mut screen, "Rear axle");
    screen.run_steps(4);
    assert!(here(&screen).is_none());
    assert!(screen.query_by_label("Rack, from the right rod").is_none());
}
