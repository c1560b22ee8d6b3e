//! What is in the way in the Tune stage: keep-outs by hand, keyboard and number, the joints' bolts, the clear area, and the loupe by keyboard.

#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

mod bolts;
#[path = "../common/mod.rs"]
mod common;
mod keep_outs;
mod loupe;
mod planes;
mod steady;

use common::{INNER, Screen, bench, fill as type_in, find_and_click as click, place, press, wait};
use egui::{Key, Modifiers, Pos2, Vec2, vec2};
use egui_kittest::kittest::{NodeT, Queryable};
use trammel_build::{Axis, BoltAxis, KeepOut, KeepOutCorners};
use trammel_screen::{
    Start,
    drawing::{Projection, keep_out_name},
    tune::settings::TunePage,
};

/// A demo in Tune without keep-outs and bolts, on the page for what is in the way.
fn in_the_way(name: &str) -> Screen {
    let demo = trammel_persistence::demos()
        .into_iter()
        .find(|d| d.name == name)
        .expect("a demo of that name");
    let mut build = trammel_persistence::read(demo.text).expect("a demo reads");
    build.keep_outs.clear();
    build.front.joint_bolts = trammel_build::JointBolts::default();
    let (mut screen, _) = bench(Start::Build(Box::new(build)));
    click(&mut screen, "Tune");
    click(&mut screen, "Room");
    screen.run_steps(4);
    screen
}

fn keep_outs(screen: &Screen) -> Vec<KeepOut> {
    screen.state().build().keep_outs.clone()
}

fn corners(screen: &Screen) -> KeepOutCorners {
    keep_outs(screen).first().expect("a keep-out").corners
}

fn along(screen: &Screen, axis: Axis) -> [f64; 2] {
    corners(screen).along(axis).expect("an extent")
}

fn wait_for_clear(screen: &mut Screen) {
    wait(screen, |s| s.state().tune().clear_is_current());
}

fn hand(screen: &mut Screen, from: Pos2, by: Vec2, end: impl FnOnce(&mut Screen, Pos2)) {
    let to = common::pull(screen, from, by);
    end(screen, to);
    screen.run_steps(2);
}

fn drag(screen: &mut Screen, from: Pos2, by: Vec2) {
    hand(screen, from, by, |s, to| s.drop_at(to));
}

/// A point of the first keep-out on the screen, as parts of its width and height.
fn on_keep_out(screen: &Screen, view: Projection, part: Vec2) -> Pos2 {
    let all = keep_outs(screen);
    let name = keep_out_name(all.first().expect("a keep-out"), view);
    let rect = screen.get_by_label(&name).rect();
    rect.min + part * rect.size()
}

/// Inside, off the edges and off the joints that may lie in its middle.
const MIDDLE: Vec2 = vec2(0.4, 0.6);

#[test]
#[ignore = "makes pictures for the eye"]
fn pictures() {
    for light in [false, true] {
        for name in ["badly-placed-rack", "lifted"] {
            let (mut screen, _) = bench(Start::NamedDemo(name.into()));
            screen.state_mut().set_light(light);
            click(&mut screen, "Tune");
            wait_for_clear(&mut screen);
            let theme = if light { "light" } else { "dark" };
            let save = |screen: &mut Screen, page: &str| {
                let image = screen.render().expect("painted");
                let file = format!("in-the-way-{name}-{page}-{theme}.png");
                image
                    .save(std::env::temp_dir().join(file))
                    .expect("written");
            };
            save(&mut screen, "spot");
            click(&mut screen, "Room");
            screen.state_mut().view_mut().tune.keep_out = Some(0);
            screen.get_by_label("Loupe of the toe map").focus();
            screen.run_steps(10);
            for _ in 0..14 {
                press(&mut screen, Modifiers::NONE, Key::ArrowDown);
            }
            save(&mut screen, "keep-outs");
            screen.get_by_label("Outer bolt: any way").scroll_to_me();
            screen.run_steps(60);
            press(&mut screen, Modifiers::NONE, Key::Num1);
            screen.run_steps(3);
            save(&mut screen, "bolts");
        }
    }
}
