//! Thousands of random events: nothing panics, nothing unusable is left, every state saves and reads back equal.

mod common;

use egui::{Key, Modifiers, Pos2, pos2};
use trammel_persistence::{read, write};
use trammel_screen::Start;

const KEYS: [Key; 28] = [
    Key::ArrowUp,
    Key::ArrowDown,
    Key::ArrowLeft,
    Key::ArrowRight,
    Key::PageUp,
    Key::PageDown,
    Key::Tab,
    Key::Enter,
    Key::Escape,
    Key::R,
    Key::Space,
    Key::T,
    Key::L,
    Key::M,
    Key::U,
    Key::I,
    Key::X,
    Key::D,
    Key::F,
    Key::Num1,
    Key::Num2,
    Key::Num0,
    Key::Z,
    Key::Backspace,
    Key::F1,
    Key::F2,
    Key::F3,
    Key::F4,
];
const TEXTS: [&str; 8] = [
    "12 5/8", "-3", "1' 2\"", "abc", "1e9", "320 mm", "0", "−1/16",
];

/// Random numbers by splitmix64 (G. Steele and others, 2014; constants from memory): any even spread would do.
struct Monkey(u64);

impl Monkey {
    fn below(&mut self, n: usize) -> usize {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        ((z ^ (z >> 31)) >> 33) as usize % n
    }

    fn place(&mut self) -> Pos2 {
        pos2(self.below(1280) as f32, self.below(800) as f32)
    }

    fn act(&mut self, screen: &mut common::Screen) {
        match self.below(12) {
            0..4 => {
                let (from, to) = (self.place(), self.place());
                screen.hover_at(from);
                screen.step();
                screen.drag_at(from);
                screen.step();
                screen.hover_at(from + (to - from) * 0.1);
                screen.step();
                if self.below(8) == 0 {
                    screen.key_press(Key::Escape);
                    screen.step();
                }
                screen.drop_at(from + (to - from) * 0.12);
            }
            4..6 => {
                let at = self.place();
                screen.drag_at(at);
                screen.step();
                screen.drop_at(at);
            }
            6..10 => {
                let key = KEYS[self.below(KEYS.len())];
                let modifiers = if key == Key::Z {
                    Modifiers::COMMAND
                } else if self.below(4) == 0 {
                    Modifiers::SHIFT
                } else {
                    Modifiers::NONE
                };
                screen.key_press_modifiers(modifiers, key);
            }
            10 => screen.event(egui::Event::Text(TEXTS[self.below(TEXTS.len())].into())),
            _ => screen.event(egui::Event::MouseWheel {
                unit: egui::MouseWheelUnit::Point,
                delta: egui::vec2(0.0, self.below(200) as f32 - 100.0),
                phase: egui::TouchPhase::Move,
                modifiers: Modifiers::NONE,
                source: egui::MouseWheelSource::Wheel,
            }),
        }
        screen.step();
    }
}

#[test]
fn random_events_break_nothing() {
    for (seed, demo) in [(1, "good"), (2, "lifted"), (3, "badly-placed-rack")] {
        let mut screen = common::bench(Start::NamedDemo(demo.into())).0;
        let mut monkey = Monkey(seed);
        for event in 0..1000 {
            monkey.act(&mut screen);
            let bench = screen.state();
            assert!(
                bench.results().study.is_some() && bench.results().fault.is_none(),
                "{demo}, event {event}: {:?}",
                bench.results().fault
            );
            if event % 10 == 0 {
                let text = write(bench.build());
                assert_eq!(
                    read(&text).as_ref(),
                    Ok(bench.build()),
                    "{demo}, event {event}"
                );
            }
            let curve = &screen
                .state()
                .results()
                .study
                .as_ref()
                .expect("studied")
                .front
                .left;
            assert!(
                curve
                    .stations
                    .iter()
                    .all(|s| s.toe_change.is_finite() && s.measures.roll_centre_height.is_finite())
            );
        }
    }
}

#[test]
fn undo_back_to_the_start_is_the_start() {
    let mut screen = common::bench(Start::Demo).0;
    let start = screen.state().build().clone();
    let mut monkey = Monkey(9);
    for _ in 0..200 {
        monkey.act(&mut screen);
    }
    for _ in 0..4 {
        common::press(&mut screen, Modifiers::NONE, Key::Escape);
    }
    for _ in 0..1000 {
        if screen.state().undo_name().is_none() {
            break;
        }
        common::press(&mut screen, Modifiers::COMMAND, Key::Z);
    }
    assert_eq!(screen.state().build(), &start);
}

#[test]
fn random_events_in_tune_break_nothing() {
    let mut screen = common::bench(Start::NamedDemo("lifted".into())).0;
    let mut monkey = Monkey(5);
    for event in 0..700 {
        if event % 20 == 0 {
            screen.state_mut().go(trammel_screen::view::Stage::Tune);
        }
        if event % 50 == 0 {
            let pages = trammel_screen::tune::settings::TunePage::ALL;
            screen.state_mut().view_mut().tune.page = pages[event / 50 % pages.len()];
        }
        monkey.act(&mut screen);
        let bench = screen.state();
        assert!(
            bench.results().study.is_some() && bench.results().fault.is_none(),
            "event {event}"
        );
        if event % 10 == 0 {
            let text = write(bench.build());
            assert_eq!(read(&text).as_ref(), Ok(bench.build()), "event {event}");
        }
    }
}

#[test]
fn random_events_in_prove_break_nothing() {
    let mut screen = common::bench(Start::NamedDemo("lifted".into())).0;
    let mut monkey = Monkey(11);
    for event in 0..500 {
        if event % 20 == 0 {
            screen.state_mut().go(trammel_screen::view::Stage::Prove);
        }
        if event % 50 == 0 {
            let pages = trammel_screen::prove::settings::ProvePage::ALL;
            screen.state_mut().view_mut().prove.page = pages[event / 50 % pages.len()];
        }
        monkey.act(&mut screen);
        let bench = screen.state();
        assert!(
            bench.results().study.is_some() && bench.results().fault.is_none(),
            "event {event}"
        );
        if event % 10 == 0 {
            let text = write(bench.build());
            assert_eq!(read(&text).as_ref(), Ok(bench.build()), "event {event}");
        }
    }
}
