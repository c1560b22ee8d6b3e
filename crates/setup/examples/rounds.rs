//! A thousand mis-built karts set up in three rounds: writes the table and the picture of the documentation.
//!
//! `cargo run -p trammel-setup --example rounds -- 1000` writes `crates/setup/rounds.svg` and prints the table.
#![allow(clippy::print_stdout, reason = "the table is what it is for")]
#![allow(
    clippy::unwrap_used,
    reason = "a tool for the documentation: it may stop"
)]

#[path = "../tests/common/mod.rs"]
mod common;

use common::kart::{Shop, shares};
use std::{f64::consts::SQRT_2, fmt::Write as _};
use trammel_specimens::{ahead, behind};

fn main() {
    let karts = std::env::args()
        .nth(1)
        .and_then(|n| n.parse().ok())
        .unwrap_or(1000);
    let dials = Shop {
        build: 0.8,
        reading: 0.02 * SQRT_2 / 250.0,
        travel: 1.0,
        moving: 0.05,
        limit: 0.3_f64.to_radians(),
    };
    let tape = Shop {
        reading: 0.5 * SQRT_2 / 533.0,
        ..dials
    };
    let fine = |shop: Shop| Shop {
        limit: 0.15_f64.to_radians(),
        ..shop
    };
    let rows = [
        ("dials, limit 0.3 deg, 0.8 mm", dials),
        ("tape, limit 0.3 deg, 0.8 mm", tape),
        ("dials, limit 0.15 deg, 0.8 mm", fine(dials)),
    ];
    println!(
        "| readings, limit, build error | tie rod | as built | 1 round | 2 rounds | 3 rounds |"
    );
    println!("|---|---|---|---|---|---|");
    let mut lines = Vec::new();
    for (name, shop) in rows {
        for (side, corner) in [("behind", behind()), ("ahead", ahead())] {
            let found = shares(&corner, &shop, karts);
            let cells = found.map(|s| format!("{:.1} %", 100.0 * s)).join(" | ");
            println!("| {name} | {side} | {cells} |");
            lines.push((format!("{name}, {side}"), found));
        }
    }
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/rounds.svg");
    std::fs::write(path, picture(&lines, karts)).unwrap();
}

/// Lines of share against rounds.
fn picture(lines: &[(String, [f64; 4])], karts: u64) -> String {
    let colours = [
        "#1f5f8b", "#1f5f8b", "#3b8d4a", "#3b8d4a", "#b5651d", "#b5651d",
    ];
    let x = |round: usize| 70.0 + 130.0 * round as f64;
    let y = |share: f64| 360.0 - 310.0 * share;
    let mut s = String::from(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 820 430\" font-family=\"sans-serif\" font-size=\"13\">\n<rect width=\"820\" height=\"430\" fill=\"white\"/>\n",
    );
    writeln!(s, "<text x=\"70\" y=\"28\" font-size=\"15\">Share of {karts} mis-built karts with both wheels within the limit</text>").unwrap();
    for tenth in (0..=10).step_by(2) {
        let (at, label) = (y(f64::from(tenth) / 10.0), tenth * 10);
        writeln!(s, "<line x1=\"70\" x2=\"460\" y1=\"{at}\" y2=\"{at}\" stroke=\"#dddddd\"/><text x=\"62\" y=\"{}\" text-anchor=\"end\">{label} %</text>", at + 4.0).unwrap();
    }
    for (round, name) in ["as built", "1 round", "2 rounds", "3 rounds"]
        .iter()
        .enumerate()
    {
        writeln!(
            s,
            "<text x=\"{}\" y=\"385\" text-anchor=\"middle\">{name}</text>",
            x(round)
        )
        .unwrap();
    }
    for (i, ((name, found), colour)) in lines.iter().zip(colours).enumerate() {
        let dash = if i % 2 == 1 {
            " stroke-dasharray=\"6 4\""
        } else {
            ""
        };
        let points: Vec<String> = found
            .iter()
            .enumerate()
            .map(|(r, v)| format!("{:.1},{:.1}", x(r), y(*v)))
            .collect();
        writeln!(
            s,
            "<polyline fill=\"none\" stroke=\"{colour}\" stroke-width=\"2\"{dash} points=\"{}\"/>",
            points.join(" ")
        )
        .unwrap();
        let at = 60.0 + 24.0 * i as f64;
        writeln!(s, "<line x1=\"490\" x2=\"525\" y1=\"{at}\" y2=\"{at}\" stroke=\"{colour}\" stroke-width=\"2\"{dash}/><text x=\"533\" y=\"{}\">{name}</text>", at + 4.0).unwrap();
    }
    s.push_str("</svg>\n");
    s
}
