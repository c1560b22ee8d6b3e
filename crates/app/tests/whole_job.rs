//! The whole job from an empty folder: a tape, a new build, both ends surveyed, tuned, proved, printed, set up, and opened again.

#![allow(
    clippy::expect_used,
    clippy::unwrap_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

use std::{
    fs,
    path::{Path, PathBuf},
    process::{Command, Output},
};

/// The hardpoints of a kart of our own that stands in a shop, left side, inches: name, x, y, z.
const FRONT: [(&str, [f64; 3]); 11] = [
    ("upper_arm.front_pivot", [4.4, 8.1, 13.3]),
    ("upper_arm.rear_pivot", [-4.7, 8.2, 13.0]),
    ("upper_arm.ball_joint", [-0.6, 21.3, 13.9]),
    ("lower_arm.front_pivot", [5.2, 6.4, 7.2]),
    ("lower_arm.rear_pivot", [-5.4, 6.5, 7.1]),
    ("lower_arm.ball_joint", [0.3, 22.4, 6.9]),
    ("tie_rod.inner", [-3.6, 6.9, 9.9]),
    ("tie_rod.outer", [-3.5, 21.4, 9.2]),
    ("wheel.centre", [0.0, 25.7, 10.25]),
    ("spring.chassis_mount", [0.1, 10.2, 19.3]),
    ("spring.arm_mount", [0.1, 16.8, 7.4]),
];

/// The rear end, built on the same fixture and straight.
fn rear() -> Vec<(String, [f64; 3])> {
    let back = |(name, [x, y, z]): &(&str, [f64; 3])| (format!("rear.{name}"), [x - 62.0, *y, *z]);
    FRONT.iter().map(back).collect()
}

/// Marks on table and frame whose places were laid out first.
const MARKS: [(&str, [f64; 3]); 8] = [
    ("A", [24.0, 0.0, 0.0]),
    ("B", [-24.0, 0.0, 0.0]),
    ("C", [0.0, 40.0, 0.0]),
    ("D", [0.0, 0.0, 30.0]),
    ("E", [-38.0, 0.0, 0.0]),
    ("F", [-86.0, 0.0, 0.0]),
    ("G", [-62.0, 40.0, 0.0]),
    ("H", [-62.0, 0.0, 30.0]),
];

/// As a tape is read: to a sixteenth.
fn read(length: f64) -> f64 {
    (length * 16.0).round() / 16.0
}

fn survey() -> String {
    let mut lines = vec!["unit, in".to_owned()];
    for (name, [x, y, z]) in MARKS {
        lines.push(format!("mark, {name}, {x}, {y}, {z}"));
    }
    let front = FRONT.iter().map(|(n, p)| ((*n).to_owned(), *p));
    for ((name, at), marks) in front
        .map(|p| (p, &MARKS[..4]))
        .chain(rear().into_iter().map(|p| (p, &MARKS[4..])))
    {
        lines.push(format!(
            "point, {name}, {}, {}, {}",
            at[0].round(),
            at[1].round(),
            at[2].round()
        ));
        for (mark, from) in marks {
            let square: f64 = at.iter().zip(from).map(|(a, b)| (a - b) * (a - b)).sum();
            lines.push(format!("tape, {mark}, {name}, {}", read(square.sqrt())));
        }
        lines.push(format!("height, {name}, {}", read(at[2])));
    }
    lines.join("\n") + "\n"
}

struct Shop {
    folder: tempfile::TempDir,
}

impl Shop {
    fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    fn run(&self, words: &[&str]) -> Output {
        Command::new(env!("CARGO_BIN_EXE_trammel"))
            .args(words)
            .current_dir(self.folder.path())
            .env_remove("DISPLAY")
            .env_remove("WAYLAND_DISPLAY")
            .output()
            .expect("the program runs")
    }

    /// Standard output of a command that ends with this.
    fn told(&self, words: &[&str], code: i32) -> String {
        let output = self.run(words);
        let err = String::from_utf8_lossy(&output.stderr).into_owned();
        assert_eq!(output.status.code(), Some(code), "{words:?}: {err}");
        String::from_utf8(output.stdout).expect("text")
    }

    fn json(&self, words: &[&str], code: i32) -> serde_json::Value {
        serde_json::from_str(&self.told(words, code)).expect("JSON")
    }
}

fn largest_toe(shop: &Shop, build: &str) -> f64 {
    let table = shop.told(&["sweep", build, "--csv", "-"], 0);
    let mut lines = table.lines();
    let heads: Vec<&str> = lines.next().expect("heads").split(',').collect();
    let column = heads.iter().position(|h| h.starts_with("toe_change"));
    let column = column.unwrap_or_else(|| panic!("{heads:?}"));
    lines
        .filter_map(|line| line.split(',').nth(column)?.parse::<f64>().ok())
        .fold(0.0, |most, toe| most.max(toe.abs()))
}

#[test]
fn from_a_tape_to_a_vehicle_that_is_set_up_and_opened_again() {
    let shop = Shop {
        folder: tempfile::tempdir().expect("folder"),
    };
    // A build of one's own, and the survey held against it and taken in.
    shop.told(&["new", "--out", "bramble.ron", "--title", "Bramble"], 0);
    let again = shop.run(&["new", "--out", "bramble.ron"]);
    assert_eq!(
        again.status.code(),
        Some(2),
        "it is not written over unasked"
    );
    fs::write(shop.path("tape.csv"), survey()).expect("written");
    let against = ["survey", "tape.csv", "--against", "bramble.ron"];
    let told = shop.told(&[&against[..], &["--out", "built.ron"]].concat(), 0);
    assert!(told.contains("As built against as drawn"), "{told}");
    let text = fs::read_to_string(shop.path("built.ron")).expect("written");
    let built = trammel_persistence::read(&text).expect("it reads");
    for (axle, spec) in [
        ("front", &built.front),
        ("rear", built.rear.as_ref().expect("a rear")),
    ] {
        let shift = if axle == "rear" { 62.0 } else { 0.0 };
        let found = spec.tie_rod.inner;
        for (is, was) in found.iter().zip([-3.6 - shift, 6.9, 9.9]) {
            assert!((is - was).abs() < 0.12, "{axle}: {found:?}");
        }
    }
    // Tuned: the build as it was found strays, the tuned one hardly.
    let strays = largest_toe(&shop, "built.ron");
    assert!(strays > 0.3, "{strays}");
    let tune = ["tune", "built.ron", "--step", "1/16", "--out", "tuned.ron"];
    shop.told(&tune, 0);
    let left = largest_toe(&shop, "tuned.ron");
    assert!(left < 0.3 && left < 0.5 * strays, "{left} of {strays}");
    // Proved, as far as anything is known of its parts; nothing says that it is enough.
    let proved = shop.run(&["prove", "tuned.ron"]);
    assert!(matches!(proved.status.code(), Some(0 | 1)));
    let words = String::from_utf8_lossy(&proved.stdout).to_lowercase();
    assert!(!words.contains(" safe"), "{words}");
    // Printed.
    shop.run(&["sheets", "tuned.ron", "--out", "sheets"]);
    for made in ["sheets.pdf", "cut-list.csv"] {
        assert!(holds(&shop.path("sheets"), made), "{made}");
    }
    shop.told(&["cards", "tuned.ron", "--out", "cards.pdf"], 0);
    assert!(
        fs::read(shop.path("cards.pdf"))
            .expect("made")
            .starts_with(b"%PDF")
    );
    // Set up: a wheel that toes in as it rises is told what to turn, and the build keeps the session.
    let readings = "unit, in\nmethod, degrees\nside, left\ntravel, toe, way\n0, 0,\nup 1, 0.22, IN\nup 2, 0.45, IN\n0, 0,\ndown 1, 0.20, OUT\ndown 2, 0.43, OUT\n0, 0,\n";
    fs::write(shop.path("readings.csv"), readings).expect("written");
    let advise = [
        "advise",
        "tuned.ron",
        "--readings",
        "readings.csv",
        "--json",
    ];
    let output = shop.run(&[&advise[..], &["--out", "set-up.ron"]].concat());
    assert!(matches!(output.status.code(), Some(0 | 1)));
    let answer: serde_json::Value = serde_json::from_slice(&output.stdout).expect("JSON");
    let side = &answer["sides"][0];
    assert_eq!(side["side"], "left", "{answer}");
    let slope = side["cause"]["slope_deg_per_25_mm"].as_f64();
    assert!(slope.is_some_and(|s| s > 0.1), "{answer}");
    // A year later: it opens, and says of itself what it said.
    let [first, second] =
        [0, 1].map(|_| shop.json(&["check", "set-up.ron", "--json"], danger(&shop)));
    assert_eq!(first, second);
    assert_eq!(first["title"], "Bramble");
    let text = fs::read_to_string(shop.path("set-up.ron")).expect("kept");
    let kept = trammel_persistence::read(&text).expect("it reads");
    assert_eq!(kept.set_up.sessions.len(), 1);
    let document = trammel_persistence::Document::read(&text).expect("it reads");
    assert_eq!(document.text_for(&kept), text, "saved again byte for byte");
}

fn danger(shop: &Shop) -> i32 {
    shop.run(&["check", "set-up.ron"])
        .status
        .code()
        .unwrap_or(-1)
}

fn holds(folder: &Path, name: &str) -> bool {
    folder.join(name).is_file()
}
