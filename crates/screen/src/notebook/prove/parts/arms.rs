//! Tubes of the A-arms.

use egui::Ui;
use trammel_build::{ArmParts, AxleName, AxleParts, Edit, PartsEdit};
use trammel_geometry::ArmName;

use super::{super::super::form::Form, choice, stock};

const TUBES: [(Option<u32>, &str, &str); 3] = [
    (None, "not said", "Taken as one."),
    (
        Some(1),
        "one tube",
        "The spring's mount sits on one of the arm's two tubes.",
    ),
    (
        Some(2),
        "both tubes",
        "The spring's mount is carried by both tubes of the arm.",
    ),
];

pub(super) fn ui(ui: &mut Ui, form: &mut Form<'_>, parts: &AxleParts, axle: AxleName) {
    for (name, title, what) in [
        (ArmName::Upper, "Upper arm", "upper-arm tube"),
        (ArmName::Lower, "Lower arm", "lower-arm tube"),
    ] {
        super::super::head(ui, title);
        let arm = parts.arm(name);
        let edit = |arm: ArmParts| Edit::Parts(PartsEdit::Arm(axle, name, Box::new(arm)));
        if let Some(tube) = stock::tube(ui, form, what, arm.tube.as_ref()) {
            form.edit(edit(ArmParts {
                tube,
                ..arm.clone()
            }));
        }
        if arm.tube.is_none() {
            continue;
        }
        let word = format!("{title}: spring on");
        let help = "How many of the arm's tubes carry the spring's mount.";
        let tokens = form.tokens;
        if let Some(spring_tubes) = choice(ui, tokens, &word, help, &TUBES, arm.spring_tubes) {
            form.edit(edit(ArmParts {
                spring_tubes,
                ..arm.clone()
            }));
        }
    }
}
