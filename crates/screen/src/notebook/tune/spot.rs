//! What is mapped, the reason for the toe change in words, and what turns and washers do.

use egui::{Grid, RichText, Ui};
use trammel_analysis::Study;
use trammel_build::LengthUnit;
use trammel_geometry::{Corner, Vector};
use trammel_tuning::{Cause, Plane, RodSide, Scoring, TieRodJoint};

use super::{
    super::{NotebookInput, steady::steady},
    choice,
};
use crate::{
    request::Request,
    terms::{self, Told},
    tokens::type_size,
    tune::{
        advice::{Advice, Remedy, Turn, washer},
        hint::{LEAST_ERROR, figure},
        mapped_point, moves, place_in_words, plane,
        settings::{MapRack, SpotWays},
    },
    view::View,
    words::{decimal, length, signed},
};

pub(super) fn ui(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    study: &Study,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    ui.spacing_mut().item_spacing.y = 4.0;
    choices(ui, input, study, view, requests);
    let Some(advice) = input.tune.advice() else {
        return;
    };
    if let Some(axle) = study.axle(view.axle) {
        let corner = axle.model.linkage(view.side).corner();
        steady(ui, "best spot", advice.waiting, 0.0, |ui| {
            best(ui, input, corner, view, advice);
        });
    }
    clear_area(ui, input, view);
    reasons(ui, input, advice);
    remedies(ui, input, advice);
}

fn choices(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    study: &Study,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    let tokens = input.tokens;
    let joints = [
        (
            TieRodJoint::Inner,
            "inner",
            "The joint on the rack end, or on the chassis where there is no rack.",
        ),
        (TieRodJoint::Outer, "outer", "The joint on the upright."),
    ];
    let help = "The joint whose places the map shows. The tie rod's length is reset at each place, so that static toe holds.";
    if let Some(joint) = choice(ui, tokens, "Joint", help, &joints, view.tune.joint) {
        view.tune.joint = joint;
        requests.push(Request::Select(Some(mapped_point(view))));
    }
    let planes = plane::ALL.map(|p| (p, plane::view(p).word(), plane::meaning(p)));
    let help = "The view that the map lies in. It is the view that fills the table, unless all three are shown.";
    if let Some(plane) = choice(ui, tokens, "Map in", help, &planes, view.tune.plane) {
        view.tune.plane = plane;
    }
    let scores = [
        (
            Scoring::Largest,
            "largest",
            "The largest toe change over the travel.",
        ),
        (
            Scoring::Rms,
            "RMS",
            "Root of the mean square of the toe change over the travel.",
        ),
        (
            Scoring::Slope,
            "slope",
            "Toe change for a little travel at the design height.",
        ),
    ];
    let help = "What a place is judged by.";
    if let Some(scoring) = choice(ui, tokens, "Judged by", help, &scores, view.tune.scoring) {
        view.tune.scoring = scoring;
    }
    if study.axle(view.axle).is_some_and(|a| a.model.lock() > 0.0) {
        let racks = MapRack::ALL.map(|r| (r, r.label(), r.meaning()));
        let help = "The rack position at which places are judged.";
        if let Some(rack) = choice(ui, tokens, "Rack", help, &racks, view.tune.racks) {
            view.tune.racks = rack;
        }
    }
    let moving = [
        (
            false,
            "this joint",
            "The chosen joint moves to its best spot, the other one stays.",
        ),
        (
            true,
            "both",
            "Both joints may move. Many places are then equally good; the one with the least movement is taken.",
        ),
    ];
    let help = "Which joints move to the best spot.";
    if let Some(both) = choice(ui, tokens, "Moves", help, &moving, view.tune.both) {
        view.tune.both = both;
    }
    let ways = SpotWays::ALL.map(|w| (w, w.label(view.tune.plane), w.meaning()));
    let help = "Which ways the joint may move to its best spot.";
    if let Some(way) = choice(ui, tokens, "May move", help, &ways, view.tune.ways) {
        view.tune.ways = way;
    }
}

/// The exact best spot in numbers, and how far off the rule of thumb is.
fn best(ui: &mut Ui, input: &NotebookInput<'_>, corner: &Corner, view: &mut View, advice: &Advice) {
    let (unit, tokens) = (input.build.unit, input.tokens);
    let small = |text: String| RichText::new(text).small().color(tokens.ink_soft);
    if advice.waiting {
        ui.label(small("The best spot is being looked for.".to_owned()));
    }
    let Ok(best) = &advice.best else { return };
    let places = if unit == LengthUnit::Inch { 3 } else { 1 };
    let number = |mm: f64| decimal(unit.from_mm(mm), places);
    let found = Corner {
        tie_rod: best.exact.tie_rod,
        ..*corner
    };
    let flat = view.tune.plane == Plane::Front;
    let fore_and_aft = match view.tune.ways {
        SpotWays::Free => true,
        SpotWays::Plane => !flat,
        SpotWays::Height | SpotWays::Width => false,
    };
    for &joint in advice.moving {
        let at = view.side.place_in_vehicle(joint.place(&found));
        let name = match (advice.moving.len(), joint) {
            (1, _) => "Exact best",
            (_, TieRodJoint::Inner) => "Exact best, inner",
            (_, TieRodJoint::Outer) => "Exact best, outer",
        };
        let x = if fore_and_aft {
            format!("x {}, ", number(at.x))
        } else {
            String::new()
        };
        let text = format!(
            "{name}: {x}y {}, z {} {} · {}",
            number(at.y),
            number(at.z),
            unit.sign(),
            figure(&best.exact.score, view.tune.scoring, unit)
        );
        ui.label(text).on_hover_text("The place where the chosen score is least. Whole steps of the shop are in the hint on the drawing.");
    }
    if let Some(score) = &best.without_keep_outs {
        let text = format!(
            "It is the best clear of the keep-outs. Without them: {}.",
            figure(score, view.tune.scoring, unit)
        );
        ui.add(egui::Label::new(small(text)).wrap());
    }
    if advice.moving.len() > 1 || fore_and_aft {
        let text =
            "Of all places within 0.001° of the least there is, the one with the least movement.";
        ui.label(small(text.to_owned())).on_hover_text(format!(
            "The least within reach is {}, but further away.",
            figure(&best.least, view.tune.scoring, unit)
        ));
    }
    if best.at_end_of_reach {
        ui.label(small(format!(
            "It lies at the end of the {} that were searched; a better place may lie beyond.",
            length(150.0, unit)
        )));
    }
    // The rule is one of the front view.
    if let Some(rule) = advice.rule.as_ref().filter(|_| flat) {
        let by = view.tune.joint.place(&found) - rule.place(view.tune.joint);
        rule_row(ui, input, view, Vector::new(0.0, by.y, by.z));
    }
}

/// The two-line rule's switch, and how far the rule is off.
fn rule_row(ui: &mut Ui, input: &NotebookInput<'_>, view: &mut View, by: Vector) {
    let (unit, tokens) = (input.build.unit, input.tokens);
    let way =
        moves::in_words(by, unit).map_or_else(String::new, |w| format!(" (from the rule: {w})"));
    ui.horizontal_wrapped(|ui| {
        let help = "Front view: the inner joint on the line through the arms' inner pivots, the outer on the line through the ball joints, the rod aimed at the instant centre. Common practice, no source.";
        let mut on = view.tune.rule;
        if ui.checkbox(&mut on, "Two-line rule").on_hover_text(help).changed() {
            view.tune.rule = on;
        }
        let text = format!("misses the best spot by {}{way}", length(by.norm(), unit));
        ui.label(RichText::new(text).small().color(tokens.ink_soft));
    });
}

/// Whether the valley crosses the area where rack end and joint keep within their limits.
fn clear_area(ui: &mut Ui, input: &NotebookInput<'_>, view: &mut View) {
    let (unit, tokens) = (input.build.unit, input.tokens);
    ui.horizontal_wrapped(|ui| {
        let help = "The part of the map where the rack end keeps its wanted factor and the joint its swivel limit, looked at on a coarse grid. The rack is taken to rise and fall with its joint; width lengthens or shortens the rack end.";
        let mut on = view.tune.clear_area;
        if ui.checkbox(&mut on, "Clear area").on_hover_text(help).changed() {
            view.tune.clear_area = on;
        }
        let text = match input.tune.clear().filter(|_| on) {
            None if on => "is being worked out".to_owned(),
            None => String::new(),
            Some(clear) => match input.tune.map().lowest(|part| clear.keeps(part)) {
                Some((part, score)) => {
                    let at = view.side.place_in_vehicle(input.tune.map().place_at(part));
                    let place = place_in_words(input.tune.map().plane(), at, unit);
                    format!("best inside it about {}° at {place}", decimal(f64::from(score), 2))
                }
                None => "no place in the map keeps every limit".to_owned(),
            },
        };
        ui.label(RichText::new(text).small().color(tokens.ink_soft)).on_hover_text(help);
    });
}

/// Why toe changes, for this car.
fn reasons(ui: &mut Ui, input: &NotebookInput<'_>, advice: &Advice) {
    let Some(cause) = &advice.cause else { return };
    let tokens = input.tokens;
    ui.add_space(4.0);
    let side = match cause.side {
        RodSide::Ahead => "tie rod ahead of the steering axis",
        RodSide::Behind => "tie rod behind the steering axis",
    };
    ui.horizontal_wrapped(|ui| {
        ui.label(RichText::new("Why toe changes").font(type_size::head()));
        ui.label(RichText::new(side).small().color(tokens.ink_soft))
            .on_hover_text(cause.side.rule());
    });
    for (name, text, help) in reason_lines(cause, input.build.unit) {
        ui.horizontal_wrapped(|ui| {
            ui.label(RichText::new(name).strong()).on_hover_text(help);
            ui.add(egui::Label::new(text).wrap()).on_hover_text(help);
        });
    }
}

fn reason_lines(cause: &Cause, unit: LengthUnit) -> [(&'static str, String, &'static str); 2] {
    let height = match cause.height(LEAST_ERROR) {
        Some(height) => format!(
            "{height}, by {}: {}",
            length(cause.height_error.abs(), unit),
            height.cure(cause.joint)
        ),
        None => "no height error that a tape shows".to_owned(),
    };
    let rod = match cause.length(LEAST_ERROR) {
        Some(error) => format!(
            "{error}, by {}: {}",
            length(cause.length_error.abs(), unit),
            error.cure(cause.joint)
        ),
        None => "no length error that a tape shows".to_owned(),
    };
    [
        (
            "Slope",
            height,
            "A height error tilts the toe curve: toe goes one way in bump and the other in droop.",
        ),
        (
            "Bowl",
            rod,
            "A length error bends the toe curve: toe goes the same way in bump and in droop.",
        ),
    ]
}

fn remedies(ui: &mut Ui, input: &NotebookInput<'_>, advice: &Advice) {
    let (unit, tokens) = (input.build.unit, input.tokens);
    if advice.remedies.is_empty() {
        return;
    }
    ui.add_space(4.0);
    let soft = |text: &str| RichText::new(text).small().color(tokens.ink_soft);
    ui.label(RichText::new("What one turn or washer does").font(type_size::head()));
    Grid::new("remedies")
        .num_columns(3)
        .spacing(egui::vec2(10.0, 2.0))
        .show(ui, |ui| {
            ui.label("");
            ui.label(soft("largest")).on_hover_text(
                "Largest toe change once the tie rod's adjuster has put static toe back.",
            );
            ui.label(soft("static toe")).on_hover_text(
                "What the wheel's static toe does before it is put back. In is positive.",
            );
            ui.end_row();
            for remedy in &advice.remedies {
                row(ui, remedy, unit);
            }
        });
    let plain = "Winding the tie rod in or out sets static toe. It does not cure toe change: that takes moving a joint.";
    ui.add(egui::Label::new(soft(plain)).wrap());
}

fn row(ui: &mut Ui, remedy: &Remedy, unit: LengthUnit) {
    let washer = length(washer(unit), unit);
    let what = match remedy.what {
        Turn::RackEndOut => "Rack end, one turn out".to_owned(),
        Turn::OuterWasher => format!("Washer, {washer}, lifts the outer joint"),
        Turn::RackShim => format!("Shim, {washer}, under the rack"),
        Turn::RodLonger => "Tie rod, one turn longer".to_owned(),
    };
    let effect = &remedy.effect;
    let degrees = |rad: f64| decimal(rad.to_degrees(), 2);
    // The adjuster moves no joint: what it leaves behind is the curve as turned.
    let after = if remedy.what == Turn::RodLonger {
        &effect.as_turned
    } else {
        &effect.toe_reset
    };
    ui.label(what);
    ui.label(format!(
        "{}° → {}°",
        degrees(effect.before.score().largest),
        degrees(after.score().largest)
    ))
    .told(terms::LARGEST_TOE_CHANGE);
    ui.label(format!("{}°", signed(effect.static_toe.to_degrees(), 2)))
        .told(terms::STATIC_TOE);
    ui.end_row();
}
