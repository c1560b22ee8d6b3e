//! A bracket's figures, and what each measure is held against while it is edited.

use egui::{Grid, RichText, Ui};
use trammel_build::{
    AxleName, BracketSpec, Edit, HoleFit, JointParts, PartsEdit, PointName, TabOutline, defaults,
};
use trammel_fabrication::minimums::{MinimumCheck, check};
use trammel_sheets::{Shop, bracket_at, flat_part_at, tab_points};

use super::super::{
    NotebookInput,
    form::{Field, Form, Takes},
    tune::choice,
};
use crate::{
    request::Request,
    terms::{self, Told},
    tokens::type_size,
};

pub(super) fn ui(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    axle: AxleName,
    point: PointName,
    requests: &mut Vec<Request>,
) {
    let Some(spec) = input.build.axle_spec(axle) else {
        return;
    };
    let parts = spec.parts.joints.get(&point).cloned().unwrap_or_default();
    let mm = input.build.unit.mm();
    let bracket = bracket_at(input.build, axle, point);
    let edit = |bracket: BracketSpec| {
        let parts = JointParts {
            bracket: Some(bracket),
            ..parts.clone()
        };
        Edit::Parts(PartsEdit::Joint(axle, point, Box::new(parts)))
    };
    let mut form = Form {
        unit: input.build.unit,
        tokens: input.tokens,
        requests,
    };
    form.group(ui, "Bracket", |form, ui| {
        form.fields(ui, &bracket, edit, &fields(&bracket, mm));
    });
    if !tab_points(input.build, axle).contains(&point) {
        return;
    }
    minimums(ui, input, axle, point);
    if let Some(form) = outline(ui, input, &bracket) {
        let form = Some(form);
        requests.push(Request::Edit(edit(BracketSpec {
            form,
            ..bracket.clone()
        })));
    }
    if let Some(fit) = fit(ui, input, &bracket) {
        // A hole of a class goes before a typed one.
        let (fit, hole) = (Some(fit), None);
        requests.push(Request::Edit(edit(BracketSpec {
            fit,
            hole,
            ..bracket.clone()
        })));
    }
    let weld = defaults::WELD_LEG_SHARE;
    let text = format!(
        "Weld leg where none is typed: {weld} of the thickness. What holds here says nothing of strength: see the proof."
    );
    ui.label(RichText::new(text).small().color(input.tokens.ink_soft));
}

fn fields(b: &BracketSpec, mm: f64) -> [Field<BracketSpec>; 5] {
    let needed = Takes::Length { default_mm: None };
    [
        Field {
            label: "Tab width",
            value: Some(b.width),
            takes: needed,
            help: "Width of the flat bar, at the foot.",
            set: |b, v| b.width = v.unwrap_or(b.width),
        },
        Field {
            label: "Tab height",
            value: Some(b.height),
            takes: needed,
            help: "From the face of the tube to the hole's centre.",
            set: |b, v| b.height = v.unwrap_or(b.height),
        },
        Field {
            label: "Tab thickness",
            value: Some(b.thickness),
            takes: needed,
            help: "Thickness of each tab.",
            set: |b, v| b.thickness = v.unwrap_or(b.thickness),
        },
        Field {
            label: "Edge distance",
            value: b.edge,
            takes: Takes::length_or(b.width * mm / 2.0),
            help: "From the hole's centre to the edge above and beside it.",
            set: |b, v| b.edge = v,
        },
        Field {
            label: "Gap of the pair",
            value: b.gap,
            takes: Takes::MaybeLength,
            help: "Between the ears, inside; ball and spacers where it is left out.",
            set: |b, v| b.gap = v,
        },
    ]
}

fn outline(ui: &mut Ui, input: &NotebookInput<'_>, b: &BracketSpec) -> Option<TabOutline> {
    let options = [
        (
            Some(TabOutline::Straight),
            "straight",
            "As wide as its foot, square at the end",
        ),
        (
            Some(TabOutline::Radiused),
            "round end",
            "Upright sides and a round end about the hole",
        ),
        (
            Some(TabOutline::Tapered),
            "tapered",
            "From a wider foot to a round end about the hole",
        ),
    ];
    let help = "How the sides of the tab go";
    let chosen = b.form.or(Some(match b.edge {
        Some(edge) if edge < b.width / 2.0 => TabOutline::Tapered,
        _ => TabOutline::Radiused,
    }));
    choice(ui, input.tokens, "Outline", help, &options, chosen).flatten()
}

fn fit(ui: &mut Ui, input: &NotebookInput<'_>, b: &BracketSpec) -> Option<HoleFit> {
    let options = [
        (
            Some(HoleFit::Reamed),
            "reamed",
            "Drilled under, reamed to the bolt",
        ),
        (Some(HoleFit::Close), "close", "The standard's close class"),
        (
            Some(HoleFit::Normal),
            "normal",
            "The standard's normal class",
        ),
        (Some(HoleFit::Loose), "loose", "The standard's loose class"),
    ];
    let help = "How the bolt fits its hole";
    let usual = b.hole.is_none().then_some(HoleFit::Close);
    let chosen = if b.hole.is_some() {
        None
    } else {
        b.fit.or(usual)
    };
    let picked = choice(ui, input.tokens, "Fit", help, &options, chosen).flatten();
    if let Some(hole) = b.hole {
        let text = format!(
            "The hole is typed: {}.",
            Shop::of(input.build)
                .style
                .drill(hole * input.build.unit.mm())
        );
        ui.label(RichText::new(text).small().color(input.tokens.ink_soft));
    }
    picked
}

/// Every measure against the least that is wanted, with its source.
fn minimums(ui: &mut Ui, input: &NotebookInput<'_>, axle: AxleName, point: PointName) {
    let part = match flat_part_at(input.build, axle, point) {
        Ok(part) => part,
        Err(why) => {
            ui.label(RichText::new(why).color(input.tokens.danger));
            return;
        }
    };
    ui.label(RichText::new("Least measures").font(type_size::head()));
    let shop = Shop::of(input.build);
    Grid::new("least measures")
        .num_columns(3)
        .spacing(egui::vec2(10.0, 2.0))
        .show(ui, |ui| {
            for found in check(&part) {
                row(ui, input, &shop, &found);
            }
        });
}

fn row(ui: &mut Ui, input: &NotebookInput<'_>, shop: &Shop, found: &MinimumCheck) {
    let (colour, word) = if found.holds() {
        (input.tokens.ink, "has")
    } else {
        (input.tokens.danger, "TOO SMALL")
    };
    ui.label(RichText::new(found.what.word()).size(12.0));
    let text = format!("{word} {}", shop.text(found.value));
    ui.label(RichText::new(text).size(12.0).color(colour))
        .told(terms::LEAST_MEASURE);
    let least = format!("least {}", shop.text(found.least));
    ui.label(RichText::new(least).size(12.0).color(input.tokens.ink_soft))
        .told_with(terms::LEAST_MEASURE, &format!("{}.", found.source));
    ui.end_row();
}
