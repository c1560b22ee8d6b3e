//! How the screen was left comes back in the next run: light or dark, scale, window.

#![allow(
    clippy::expect_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

mod common;

use std::path::Path;

use common::{Screen, TestHost, bench_on, click, demo, press, screen_of};
use egui::{Key, Modifiers, Vec2, ViewportId, vec2};
use trammel_persistence::ScreenState;
use trammel_screen::{Bench, Start, tokens::Tokens};

fn kept_in(folder: &Path) -> TestHost {
    let host = TestHost::default();
    host.0.borrow_mut().folder = Some(folder.to_owned());
    host
}

/// A bench in a window of a size in points of the usual scale; the harness itself keeps the size in points of the scale that is shown.
struct Window {
    screen: Screen,
    size: Vec2,
}

impl Window {
    fn open(folder: &Path, size: Vec2) -> Self {
        let screen = screen_of(Bench::new(Box::new(kept_in(folder)), Start::Demo));
        let mut window = Self { screen, size };
        window.settle();
        window
    }

    fn settle(&mut self) {
        for _ in 0..6 {
            let points = self.size / self.screen.ctx.zoom_factor();
            self.screen.set_size(points);
            self.screen.step();
        }
    }

    fn press(&mut self, key: Key) {
        self.screen.key_press_modifiers(Modifiers::COMMAND, key);
        self.settle();
    }

    fn scale(&self) -> i32 {
        (self.screen.ctx.zoom_factor() * 100.0).round() as i32
    }
}

fn background(screen: &Screen) -> egui::Color32 {
    screen.ctx.global_style().visuals.panel_fill
}

#[test]
fn light_or_dark_comes_back() {
    let folder = tempfile::tempdir().expect("a folder");
    let dark = background(&demo());
    let mut screen = bench_on(kept_in(folder.path()), Start::Demo);
    assert_eq!(background(&screen), dark);
    click(&mut screen, "Light");
    let light = background(&screen);
    assert_ne!(light, dark);
    drop(screen);
    let mut again = bench_on(kept_in(folder.path()), Start::Demo);
    assert_eq!(background(&again), light);
    press(&mut again, Modifiers::NONE, Key::D);
    assert_eq!(background(&again), dark);
    assert!(!ScreenState::load(folder.path()).light);
    assert!(Tokens::of(false).dark && !Tokens::of(true).dark);
}

/// What another window of the same user wrote stays.
#[test]
fn two_windows_do_not_forget_for_each_other() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut one = bench_on(kept_in(folder.path()), Start::Demo);
    let mut other = bench_on(kept_in(folder.path()), Start::Demo);
    press(&mut one, Modifiers::NONE, Key::D);
    other.state_mut().begin_tour();
    other.state_mut().leave();
    let kept = ScreenState::load(folder.path());
    assert!(kept.light && kept.tour_shown, "{kept:?}");
}

#[test]
fn words_grow_as_far_as_the_window_holds_them_and_come_back_as_large() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut window = Window::open(folder.path(), vec2(1280.0, 800.0));
    for (key, scale) in [
        (Key::Plus, 110),
        (Key::Equals, 120),
        (Key::Minus, 110),
        (Key::Plus, 120),
        (Key::Plus, 130),
        (Key::Plus, 130),
    ] {
        window.press(key);
        assert_eq!(window.scale(), scale, "{key:?}");
    }
    let said = window.screen.state().said().unwrap_or_default();
    assert!(said.contains("more than 130 per cent"), "{said}");
    drop(window);

    let mut window = Window::open(folder.path(), vec2(1280.0, 800.0));
    assert_eq!(window.scale(), 130);
    // A smaller window holds less; a larger one shows again what was asked for, and no more.
    window.size = vec2(1024.0, 700.0);
    window.settle();
    assert_eq!(window.scale(), 110);
    window.size = vec2(2560.0, 1440.0);
    window.settle();
    assert_eq!(window.scale(), 130);
    window.press(Key::Num0);
    assert_eq!(window.scale(), 100);
    for _ in 0..9 {
        window.press(Key::Minus);
    }
    assert_eq!(window.scale(), 60);
    assert_eq!(ScreenState::load(folder.path()).scale, 60);
}

#[test]
fn the_window_is_left_with_its_size_and_one_that_fills_the_display_with_the_size_before() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut window = Window::open(folder.path(), vec2(1500.0, 950.0));
    window.press(Key::Plus);
    window.screen.state_mut().leave();
    let left = ScreenState::load(folder.path());
    assert_eq!((left.window, left.maximised), ([1500, 950], false));

    let viewports = &mut window.screen.input_mut().viewports;
    viewports.entry(ViewportId::ROOT).or_default().maximized = Some(true);
    window.size = vec2(1920.0, 1080.0);
    window.settle();
    window.screen.state_mut().leave();
    let left = ScreenState::load(folder.path());
    assert_eq!((left.window, left.maximised), ([1500, 950], true));
}

#[test]
fn a_machine_without_a_folder_is_no_reason_to_stop() {
    let mut screen = demo();
    press(&mut screen, Modifiers::NONE, Key::D);
    press(&mut screen, Modifiers::COMMAND, Key::Plus);
    screen.state_mut().leave();
    assert_eq!(screen.state().build(), demo().state().build());
}
