//! Words at random, out of what the commands know and what they don't.

use std::{fs, path::Path};

use super::{pipe, trammel};

/// How many command lines are tried; set for more.
const COUNT: &str = "TRAMMEL_RANDOM_ARGUMENTS";

/// A stream of numbers that is the same on every machine (SplitMix64's mixing).
struct Dice(u64);

impl Dice {
    fn below(&mut self, n: usize) -> usize {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        usize::try_from((z ^ (z >> 31)) % n as u64).expect("less than a size")
    }

    fn of<'a>(&mut self, words: &[&'a str]) -> &'a str {
        words[self.below(words.len())]
    }
}

const COMMANDS: &[&str] = &[
    "sweep",
    "check",
    "forces",
    "prove",
    "tune",
    "map",
    "scatter",
    "lift",
    "advise",
    "survey",
    "sheets",
    "cards",
    "picture",
    "demo",
    "",
    "--help",
    "--version",
    "chekc",
];
const BUILDS: &[&str] = &[
    "demo:good",
    "demo:lifted",
    "demo:badly-placed-rack",
    "demo:measured",
    "demo:",
    "demo:none",
    "everything.ron",
    "smallest.ron",
    "broken.ron",
    "none.ron",
    "pipe",
    ".",
    "-",
    "",
    "readings.csv",
];
const OPTIONS: &[&str] = &[
    "--axle",
    "--side",
    "--travel",
    "--rack",
    "--unit",
    "--csv",
    "--json",
    "--out",
    "--force",
    "--move",
    "--limit",
    "--point",
    "--ways",
    "--weigh",
    "--score",
    "--reach",
    "--step",
    "--seed",
    "--plane",
    "--width",
    "--height",
    "--cells",
    "--picture",
    "--size",
    "--builds",
    "--by",
    "--camber",
    "--stops",
    "--readings",
    "--against",
    "--paper",
    "--measuring-sheet",
    "--format",
    "--part",
    "--at",
    "--moment-z",
    "--case",
    "--scale",
    "--light",
    "--stage",
    "--page",
    "--map",
    "--nonsense",
    "--",
    "-h",
];
const VALUES: &[&str] = &[
    "front",
    "rear",
    "left",
    "right",
    "inch",
    "mm",
    "inner",
    "outer",
    "both",
    "lay-out",
    "make",
    "points",
    "-1:1:5",
    "1:-1:3",
    "0:0:2",
    "-1e308:1e308:3",
    "NaN:1:2",
    "0",
    "-0",
    "1",
    "-1",
    "2.5",
    "1e-320",
    "1e308",
    "1e999",
    "NaN",
    "inf",
    "-inf",
    "12 5/8",
    "1/0",
    "3' 2\"",
    "30 mm",
    "5\u{2033}",
    "18446744073709551616",
    "-9223372036854775809",
    "100,0,0",
    "1,2",
    ",,",
    "400x300",
    "0x0",
    "x",
    "contact",
    "wheel-centre",
    "pdf",
    "dxf,svg",
    "csv",
    "letter",
    "a4",
    "a0",
    "out.ron",
    "out.csv",
    "out.png",
    "sheets",
    "pipe",
    ".",
    "-",
    "",
    " ",
    "none/out",
    "readings.csv",
    "survey.csv",
    "toe=0..0.1",
    "toe=..",
    "toe=1..0*-1",
    "lower_arm.front_pivot.x=0..1@0",
    "inner@1e-300",
    "all",
    "\u{202e}txt",
    "\u{1f698}",
    "a\nb",
    "%s%n",
    "=",
    "==",
    "*",
    "@",
    "..",
    "reset",
    "kept",
    "whole",
];

/// A folder with something of everything.
fn furnish(at: &Path) {
    let tests = Path::new(env!("CARGO_MANIFEST_DIR")).join("../persistence");
    for (from, to) in [
        ("tests/format1/everything.ron", "everything.ron"),
        ("tests/format1/smallest.ron", "smallest.ron"),
        ("tests/broken/deep.ron", "broken.ron"),
        ("fuzz/seeds/readings/two-dials.csv", "readings.csv"),
        ("fuzz/seeds/survey/both-sides.csv", "survey.csv"),
    ] {
        fs::copy(tests.join(from), at.join(to)).expect(from);
    }
    pipe(&at.join("pipe"));
}

fn words(dice: &mut Dice) -> Vec<&'static str> {
    let command = dice.of(COMMANDS);
    let mut words = vec![command];
    if dice.below(10) > 0 {
        words.push(if command == "survey" {
            "survey.csv"
        } else {
            dice.of(BUILDS)
        });
    }
    // What costs most is asked for in small numbers; a later word may still ask for more.
    match command {
        "scatter" => words.extend(["--builds", "50"]),
        "map" => words.extend(["--cells", "5"]),
        "picture" => words.extend(["--out", "out.png"]),
        "cards" | "sheets" => words.extend(["--out", "sheets"]),
        "lift" => words.extend(["--by", "1"]),
        "forces" => words.extend(["--at", "contact", "--force", "100,0,0"]),
        _ => {}
    }
    for _ in 0..dice.below(4) {
        words.push(dice.of(OPTIONS));
        if dice.below(4) > 0 {
            words.push(dice.of(VALUES));
        }
    }
    words
}

#[test]
fn whatever_words_are_given_there_is_an_exit_code_and_a_plain_line() {
    let count = std::env::var(COUNT)
        .ok()
        .and_then(|n| n.parse().ok())
        .unwrap_or(150_u64);
    let folder = tempfile::tempdir().expect("a folder");
    furnish(folder.path());
    let mut codes = [0_u32; 3];
    for seed in 0..count {
        let words = words(&mut Dice(seed));
        let output = trammel(folder.path(), &words);
        let said =
            String::from_utf8(output.stderr).unwrap_or_else(|_| panic!("{words:?}: no text"));
        let code = output
            .status
            .code()
            .unwrap_or_else(|| panic!("{words:?}: killed: {said}"));
        let known = usize::try_from(code).ok().and_then(|c| codes.get_mut(c));
        *known.unwrap_or_else(|| panic!("{words:?}: code {code}: {said}")) += 1;
        assert!(!said.contains("panicked"), "{words:?}: {said}");
        assert!(
            said.lines().all(|l| l.starts_with("trammel: ")),
            "{words:?}: {said}"
        );
        if code == 2 {
            assert_eq!(said.lines().count(), 1, "{words:?}: {said}");
            assert_eq!(output.stdout, b"", "{words:?}");
        }
    }
    println!("{count} command lines; ended with 0, 1, 2: {codes:?}");
    assert!(codes[0] > 0 && codes[2] > 0, "{codes:?}");
}
