//! Colours that mean different things are apart to every eye, or something else says it too; words stand out from their ground.

use egui::Color32;
use trammel_screen::{tokens::Tokens, tune::ramp};

use crate::eyes::{Eye, contrast, over};
use crate::none;

/// Least CIEDE2000 difference of colours of things that stand side by side: some ten times what is just seen.
const APART: f64 = 10.0;
/// The same where a shape, a dash or a word beside it says it too.
const APART_WITH_SHAPE: f64 = 5.0;

fn both() -> [Tokens; 2] {
    [Tokens::dark(), Tokens::light()]
}

fn hold_apart(t: &Tokens, named: &[(&str, Color32)], least: f64, faults: &mut Vec<String>) {
    for (i, (a_name, a)) in named.iter().enumerate() {
        for (b_name, b) in named.get(i + 1..).unwrap_or_default() {
            for eye in Eye::ALL {
                let found = eye.difference(*a, *b);
                if found < least {
                    let theme = if t.dark { "dark" } else { "light" };
                    faults.push(format!(
                        "{theme}, {eye:?}: {a_name} and {b_name} {found:.1}, wanted {least}"
                    ));
                }
            }
        }
    }
}

/// Grounds that words stand on, by name.
type Grounds<'a> = &'a [(&'a str, Color32)];

/// Members are told apart by their ends and places too: fixed pivots stand on a hatched base, the spring is a zigzag, the rack a bar.
#[test]
fn members_are_apart_to_every_eye() {
    let mut faults = Vec::new();
    for t in both() {
        let members = [
            ("upper arm", t.upper_arm),
            ("lower arm", t.lower_arm),
            ("tie rod", t.tie_rod),
            ("spring", t.spring),
            ("steel", t.steel),
        ];
        hold_apart(&t, &members, APART_WITH_SHAPE, &mut faults);
    }
    none(faults);
}

/// Curves that share a plot have no shape but their line; those of what is not built yet are dashed.
#[test]
fn curves_of_one_plot_are_apart_to_every_eye() {
    let mut faults = Vec::new();
    for t in both() {
        let steered = [("left wheel", t.tie_rod), ("right wheel", t.lower_arm)];
        let learned = [
            ("as drawn", t.tie_rod),
            ("most likely", t.lower_arm),
            ("read", t.ink),
        ];
        for plain in [&steered[..], &learned] {
            hold_apart(&t, plain, APART, &mut faults);
        }
        for (name, dashed) in [
            ("layout shown", t.spring),
            ("after the move", t.upper_arm),
            ("before", t.ink_soft),
        ] {
            for plain in [("toe", t.tie_rod), ("most likely", t.lower_arm)] {
                hold_apart(&t, &[plain, (name, dashed)], APART_WITH_SHAPE, &mut faults);
            }
        }
    }
    none(faults);
}

/// Grades are a triangle, a diamond and a disc, and their word is in the line: colour comes third.
#[test]
fn grades_are_apart_to_every_eye() {
    let mut faults = Vec::new();
    for t in both() {
        let grades = [
            ("danger", t.danger),
            ("caution", t.caution),
            ("note", t.note),
        ];
        hold_apart(&t, &grades, APART_WITH_SHAPE, &mut faults);
        let bars = [
            ("kept", over(t.within_bar(), t.panel)),
            ("not kept", over(t.wash(t.danger, 0.45), t.panel)),
        ];
        hold_apart(&t, &bars, APART_WITH_SHAPE, &mut faults);
    }
    none(faults);
}

/// The map's bands go from light to dark in one direction, so their order can be read by every eye.
#[test]
fn bands_of_the_map_go_one_way_to_every_eye() {
    const BANDS: usize = 8;
    for t in both() {
        for eye in Eye::ALL {
            let all: Vec<f64> = (0..=BANDS)
                .map(|i| eye.lightness(ramp::colour(t.dark, i as f32 / BANDS as f32)))
                .collect();
            let way = (all[BANDS] - all[0]).signum();
            for pair in all.windows(2) {
                let step = (pair[1] - pair[0]) * way;
                assert!(step > 3.0, "{}, {eye:?}: {all:.1?}", t.dark);
            }
        }
    }
}

/// WCAG 2.2, success criterion 1.4.3: 4.5 for running text. Nothing on the screen is large text in its sense but the scores, which are ink.
#[test]
fn words_stand_out_from_their_ground() {
    let mut faults = Vec::new();
    for t in both() {
        let theme = if t.dark { "dark" } else { "light" };
        let button = over(t.panel_raised.gamma_multiply(0.55), t.panel);
        let everywhere = [
            ("table", t.table),
            ("panel", t.panel),
            ("deep panel", t.panel_deep),
            ("raised panel", t.panel_raised),
            ("button", button),
        ];
        let on_panels = [
            ("table", t.table),
            ("panel", t.panel),
            ("deep panel", t.panel_deep),
        ];
        let words: [(&str, Color32, Grounds<'_>); 12] = [
            ("ink", t.ink, &everywhere),
            ("soft ink", t.ink_soft, &everywhere),
            ("hint", t.ink_hint, &on_panels[..2]),
            ("accent", t.accent, &everywhere),
            ("danger", t.danger, &on_panels),
            ("caution", t.caution, &on_panels),
            ("note", t.note, &on_panels),
            ("upper arm", t.upper_arm, &on_panels[..2]),
            ("lower arm", t.lower_arm, &on_panels[..2]),
            ("tie rod", t.tie_rod, &on_panels[..2]),
            ("spring", t.spring, &on_panels[..2]),
            ("steel", t.steel, &on_panels[..2]),
        ];
        for (name, colour, grounds) in words {
            for (ground_name, ground) in grounds {
                let found = contrast(colour, *ground);
                if found < 4.5 {
                    faults.push(format!("{theme}: {name} on {ground_name} {found:.2}"));
                }
            }
        }
        for (name, text, ground) in [
            ("chip", t.on_accent, t.accent),
            ("paper", t.paper_ink, t.paper),
        ] {
            let found = contrast(text, ground);
            if found < 4.5 {
                faults.push(format!("{theme}: text of {name} {found:.2}"));
            }
        }
        for i in 0..=32 {
            let under = ramp::colour(t.dark, i as f32 / 32.0);
            let found = contrast(ramp::ink_on(under), under);
            if found < 4.5 {
                faults.push(format!("{theme}: label of the map at {i}/32 {found:.2}"));
            }
        }
    }
    none(faults);
}

/// WCAG 2.2, 1.4.11: 3.0 for what is needed to know a control or its state: the ring of the focus, the mark of what is chosen, marks of grades.
#[test]
fn rings_and_marks_stand_out_from_their_ground() {
    let mut faults = Vec::new();
    for t in both() {
        for (ground_name, ground) in [
            ("table", t.table),
            ("panel", t.panel),
            ("deep panel", t.panel_deep),
            ("raised", t.panel_raised),
        ] {
            for (name, colour) in [
                ("accent", t.accent),
                ("danger", t.danger),
                ("caution", t.caution),
                ("note", t.note),
            ] {
                let found = contrast(colour, ground);
                if found < 3.0 {
                    faults.push(format!("{}: {name} on {ground_name} {found:.2}", t.dark));
                }
            }
        }
    }
    none(faults);
}
