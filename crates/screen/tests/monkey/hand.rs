//! The monkey's hand: one random event after the other, from a fixed start.

use std::{
    path::{Path, PathBuf},
    sync::Arc,
};

use egui::{
    Event, Key, Modifiers, MouseWheelUnit, PointerButton, Pos2, TouchPhase, Vec2, pos2, vec2,
};
use trammel_screen::host::Picked;

use crate::common::{Screen, TestHost, pages::Turn};

/// Random numbers by splitmix64 (G. Steele and others, 2014; constants from memory): any even spread would do.
pub struct Dice(pub u64);

impl Dice {
    pub fn below(&mut self, n: usize) -> usize {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        ((z ^ (z >> 31)) >> 33) as usize % n
    }

    pub fn part(&mut self) -> f64 {
        self.below(1_000_001) as f64 / 1e6
    }

    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.part()
    }

    pub fn one_of<T: Copy>(&mut self, of: &[T]) -> T {
        of[self.below(of.len())]
    }
}

/// What is typed: lengths as people write them, numbers, words, and what no field expects.
const TEXTS: [&str; 24] = [
    "12 5/8",
    "-3",
    "1' 2\"",
    "abc",
    "1e9",
    "320 mm",
    "0",
    "−1/16",
    "3/0",
    "1e308",
    "-1e308",
    "1e-300",
    "nan",
    "INF",
    "",
    " ",
    "٣",
    "Ærø – ж",
    "\u{202e}drow",
    "0.125",
    "7",
    "45",
    "M10x1.5",
    "why not",
];

/// What is pasted.
const PASTES: [&str; 6] = [
    "point,x (in),y (in),z (in)\ntie_rod.inner,-4,7.5,9\ntie_rod.outer,-4,20,9\n",
    include_str!("../../../../assets/page-of-readings.csv"),
    "unit, in\nmark, A, 6, 0, 0\nmark, B, -10, 0, 0\nmark, C, -4, 20, 0\ntape, A, tie_rod.inner, 14.48\n",
    "a\tb\tc\n1\t2\t3\n",
    "\u{0}\u{1}\u{7f}\r\r\n\n",
    "999999999999999999999999999999,,,,,,,\n\"",
];

/// A file that is dropped.
#[derive(Debug)]
struct Dropped(PathBuf);

impl egui::DroppedFile for Dropped {
    fn path(&self) -> &Path {
        &self.0
    }

    fn bytes(&self) -> Result<Vec<u8>, String> {
        std::fs::read(&self.0).map_err(|e| e.to_string())
    }
}

pub struct Hand {
    pub dice: Dice,
    size: Vec2,
    at: Pos2,
    held: bool,
    host: TestHost,
    folder: PathBuf,
    files: Vec<PathBuf>,
}

impl Hand {
    /// A hand with files to drop, in a folder of its own.
    pub fn new(seed: u64, host: TestHost, folder: &Path) -> Self {
        let write = |name: &str, text: &str| {
            let path = folder.join(name);
            std::fs::write(&path, text).expect("the folder can be written");
            path
        };
        let demos = trammel_persistence::demos();
        let mut files: Vec<_> = (demos.iter())
            .map(|d| write(&format!("{}.ron", d.name), d.text))
            .collect();
        files.push(write("half.ron", &demos[0].text[..demos[0].text.len() / 2]));
        files.push(write("words.txt", "no build at all"));
        files.push(write("readings.csv", PASTES[1]));
        files.push(folder.join("not there.ron"));
        files.push(folder.to_owned());
        Self {
            dice: Dice(seed),
            size: vec2(1280.0, 800.0),
            at: pos2(640.0, 400.0),
            held: false,
            host,
            folder: folder.to_owned(),
            files,
        }
    }

    fn place(&mut self) -> Pos2 {
        let part = vec2(self.dice.part() as f32, self.dice.part() as f32);
        (self.size * part).to_pos2()
    }

    /// Where something is that can be clicked, or anywhere.
    fn target(&mut self, screen: &Screen) -> Pos2 {
        use egui_kittest::kittest::NodeT;
        if self.dice.below(3) == 0 {
            return self.place();
        }
        let all: Vec<Pos2> = (screen.root().children_recursive())
            .filter(|n| {
                let node = n.accesskit_node();
                !node.is_disabled() && node.data().supports_action(egui::accesskit::Action::Click)
            })
            .map(|n| n.rect().center())
            .filter(|p| p.x >= 0.0 && p.y >= 0.0 && p.x < self.size.x && p.y < self.size.y)
            .collect();
        if all.is_empty() {
            self.place()
        } else {
            self.dice.one_of(&all)
        }
    }

    fn modifiers(&mut self) -> Modifiers {
        self.dice.one_of(&[
            Modifiers::NONE,
            Modifiers::NONE,
            Modifiers::NONE,
            Modifiers::SHIFT,
            Modifiers::COMMAND,
            Modifiers::ALT,
            Modifiers::COMMAND.plus(Modifiers::SHIFT),
        ])
    }

    fn button(&self, screen: &Screen, button: PointerButton, pressed: bool) {
        screen.event(Event::PointerButton {
            pos: self.at,
            button,
            pressed,
            modifiers: Modifiers::NONE,
        });
    }

    fn go_to(&mut self, screen: &Screen, at: Pos2) {
        self.at = at;
        screen.hover_at(at);
    }

    /// One event, and its frames.
    pub fn act(&mut self, screen: &mut Screen) {
        match self.dice.below(100) {
            0..14 => {
                let at = self.target(screen);
                self.go_to(screen, at);
            }
            14..24 => self.drag_on(screen),
            24..44 => self.click(screen),
            44..50 => self.wheel(screen),
            50..74 => self.key(screen),
            74..82 => screen.event(Event::Text(self.dice.one_of(&TEXTS).into())),
            82..84 => screen.event(Event::Paste(self.dice.one_of(&PASTES).into())),
            84 => screen.event(if self.dice.below(2) == 0 {
                Event::Copy
            } else {
                Event::Cut
            }),
            85 => self.drop_file(screen),
            86 => self.answer(),
            87..89 => self.resize(screen),
            89..91 => {
                let light = self.dice.below(2) == 0;
                screen.state_mut().set_light(light);
            }
            91 => screen.event(if self.dice.below(2) == 0 {
                Event::PointerGone
            } else {
                Event::WindowFocused(false)
            }),
            _ => {
                let all = Turn::all();
                let turn = self.dice.one_of(&all);
                if !self.held {
                    turn.to(screen.state_mut());
                }
            }
        }
        screen.step();
    }

    /// Presses, moves on, or lets go.
    fn drag_on(&mut self, screen: &mut Screen) {
        if !self.held {
            let at = self.target(screen);
            self.go_to(screen, at);
            screen.step();
            self.button(screen, PointerButton::Primary, true);
            self.held = true;
            screen.step();
        }
        let far = if self.dice.below(6) == 0 { 1.0 } else { 0.1 };
        let to = self.at + (self.place() - self.at) * far;
        self.go_to(screen, to);
        if self.dice.below(3) == 0 {
            screen.step();
            self.let_go(screen);
        }
    }

    pub fn let_go(&mut self, screen: &Screen) {
        if self.held {
            self.button(screen, PointerButton::Primary, false);
            self.held = false;
        }
    }

    fn click(&mut self, screen: &mut Screen) {
        self.let_go(screen);
        let at = self.target(screen);
        self.go_to(screen, at);
        screen.step();
        let times = self.dice.one_of(&[1, 1, 1, 1, 2, 3]);
        let button = self.dice.one_of(&[
            PointerButton::Primary,
            PointerButton::Primary,
            PointerButton::Primary,
            PointerButton::Primary,
            PointerButton::Secondary,
            PointerButton::Middle,
        ]);
        for _ in 0..times {
            self.button(screen, button, true);
            self.button(screen, button, false);
        }
    }

    fn wheel(&mut self, screen: &Screen) {
        let unit = self.dice.one_of(&[
            MouseWheelUnit::Point,
            MouseWheelUnit::Line,
            MouseWheelUnit::Page,
        ]);
        let delta = vec2(
            self.dice.between(-20.0, 20.0) as f32,
            self.dice.between(-100.0, 100.0) as f32,
        );
        screen.event(Event::MouseWheel {
            unit,
            delta,
            phase: TouchPhase::Move,
            modifiers: self.modifiers(),
            source: egui::MouseWheelSource::Wheel,
        });
    }

    fn key(&mut self, screen: &Screen) {
        let common = [
            Key::Tab,
            Key::Enter,
            Key::Escape,
            Key::Space,
            Key::ArrowUp,
            Key::ArrowDown,
            Key::ArrowLeft,
            Key::ArrowRight,
            Key::Z,
            Key::U,
            Key::Backspace,
        ];
        let (key, modifiers) = match self.dice.below(5) {
            0 => (Key::Z, Modifiers::COMMAND),
            1 | 2 => (self.dice.one_of(&common), self.modifiers()),
            _ => (self.dice.one_of(Key::ALL), self.modifiers()),
        };
        screen.key_press_modifiers(modifiers, key);
    }

    fn drop_file(&mut self, screen: &mut Screen) {
        let at = self.dice.below(self.files.len());
        let path = self.files[at].clone();
        screen
            .input_mut()
            .dropped_files
            .push(Arc::new(Dropped(path)));
    }

    /// The desktop's dialog answers, asked or not.
    fn answer(&mut self) {
        let at = self.dice.below(self.files.len() + 2);
        let given = match self.files.get(at) {
            Some(path) => Picked::Path(path.clone()),
            None if at == self.files.len() => Picked::Path(self.folder.join("new.ron")),
            None => Picked::Nothing,
        };
        self.host.0.borrow_mut().answer = Some(given);
    }

    fn resize(&mut self, screen: &mut Screen) {
        self.size = self.dice.one_of(&[
            vec2(1280.0, 800.0),
            vec2(1024.0, 700.0),
            vec2(1920.0, 1080.0),
            vec2(2560.0, 1440.0),
            vec2(800.0, 600.0),
            vec2(400.0, 300.0),
            vec2(120.0, 90.0),
        ]);
        screen.set_size(self.size);
        if self.dice.below(4) == 0 {
            screen.set_pixels_per_point(self.dice.one_of(&[1.0, 1.25, 2.0]));
        }
    }
}
