//! Every check, worst first: part, check, load case, value, limit, factor, and what would mend it.

use egui::{Align, CollapsingHeader, Color32, Layout, Rect, RichText, Sense, Ui, vec2};
use trammel_analysis::{Grade, ProofRow};
use trammel_build::{AxleName, PointRef, Side};

use super::{
    super::{NotebookInput, accept, cautions::mark, remedies, tune::choice},
    notes, small, steering,
};
use crate::{
    prove::settings::{Listing, MarkedPart, Plotted, ProvePage, RowKey},
    request::Request,
    terms::{self, Told},
    tokens::type_size,
    view::View,
    words::{factor, figure, length},
};

const LISTINGS: [(Listing, &str, &str); 2] = [
    (
        Listing::Worst,
        "worst case",
        "One row for each check of a part: the load case under which it is worst.",
    ),
    (
        Listing::EveryCase,
        "every case",
        "A row for each check of a part under each load case.",
    ),
];

pub(super) fn ui(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    let Some(proof) = input.prove.proof() else {
        small(ui, input.tokens, "The build is being proved.");
        return;
    };
    let help = "Which rows are listed.";
    if let Some(listing) = choice(
        ui,
        input.tokens,
        "List",
        help,
        &LISTINGS,
        view.prove.listing,
    ) {
        view.prove.listing = listing;
    }
    if !input.prove.is_current() {
        let text = "These are the figures of the build as it was; it is being proved again.";
        ui.add(egui::Label::new(RichText::new(text).small().color(input.tokens.caution)).wrap());
    }
    let rows = listed(&proof.rows, view.prove.listing);
    if rows.is_empty() {
        small(ui, input.tokens, "Nothing was checked: see below why.");
    }
    // Those that miss their factor, and the next nearest; the rest are folded away.
    let missed = rows.iter().filter(|row| row.grade().is_some()).count();
    let (near, far) = rows.split_at(rows.len().min(missed.max(LEAST_LISTED)));
    for row in near {
        one(ui, input, row, view, requests);
    }
    if !far.is_empty() {
        let title = format!("{} more keep their wanted factor", far.len());
        CollapsingHeader::new(title)
            .id_salt("kept rows")
            .show_unindented(ui, |ui| {
                for row in far {
                    one(ui, input, row, view, requests);
                }
            });
    }
    if let Some(figures) = &proof.steering {
        steering::ui(ui, input, figures);
    }
    notes::ui(ui, input, proof);
}

/// So many rows are listed at least.
const LEAST_LISTED: usize = 8;

/// The rows that are listed; they are worst first, so the first of a kind is its worst.
fn listed(rows: &[ProofRow], listing: Listing) -> Vec<&ProofRow> {
    let mut listed: Vec<&ProofRow> = Vec::new();
    for row in rows {
        let same = |known: &&ProofRow| {
            (known.axle, known.side, known.part, known.check)
                == (row.axle, row.side, row.part, row.check)
        };
        if listing == Listing::EveryCase || !listed.iter().any(same) {
            listed.push(row);
        }
    }
    listed
}

/// The word beside a factor.
fn word(row: &ProofRow) -> &'static str {
    match (row.grade(), row.factor) {
        (Some(grade), _) => grade.word(),
        (None, Some(_)) => "kept",
        (None, None) => "no load",
    }
}

fn part_name(row: &ProofRow) -> String {
    let mut name = row.part.label();
    if row.axle == AxleName::Rear {
        name = format!("rear {name}");
    }
    if let Some(side) = row.side {
        name = format!("{} {name}", side.word());
    }
    let mut letters = name.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}

fn one(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    row: &ProofRow,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    let key = RowKey::of(row);
    let open = view.prove.open_row.as_ref() == Some(&key);
    let head = format!("{}: {}", part_name(row), row.check);
    let case = row.load_case.as_deref().unwrap_or("whatever the load");
    let response = line(ui, input, row, case, open);
    let name = format!("{head}, {case}, {}", word(row));
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Button, true, &name));
    let help = "Go to its worst pose, mark the part, and see why and what would mend it";
    if response
        .on_hover_cursor(egui::CursorIcon::PointingHand)
        .on_hover_text(help)
        .clicked()
    {
        if open {
            view.prove.open_row = None;
            view.prove.marked = None;
        } else {
            view.prove.open_row = Some(key);
            go_there(row, view, requests);
        }
    }
    if open {
        ui.indent(("row", &head, case), |ui| {
            details(ui, input, row, requests);
            plot_it(ui, row, view);
        });
    }
}

/// Three lines with the shape of the grade before and the factor behind them.
fn line(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    row: &ProofRow,
    case: &str,
    open: bool,
) -> egui::Response {
    let tokens = input.tokens;
    let (rect, response) = ui.allocate_exact_size(vec2(ui.available_width(), 47.0), Sense::click());
    if !ui.is_rect_visible(rect) {
        return response;
    }
    if open || response.hovered() {
        let fill = tokens.wash(tokens.panel_raised, if open { 1.0 } else { 0.5 });
        ui.painter().rect_filled(rect, 3.0, fill);
    }
    let at = egui::pos2(rect.left() + 8.0, rect.top() + 11.0);
    shape(ui, at, row, tokens.ink_soft, input);
    let right = 74.0;
    let words = Rect::from_min_max(
        rect.min + vec2(20.0, 2.0),
        rect.max - vec2(right + 4.0, 0.0),
    );
    let shown = row.shown(input.build.unit);
    let limit = shown.with_unit(&figure(shown.limit));
    let figures = format!("{} against {limit} · {case}", figure(shown.value));
    lines(ui, words, Layout::top_down(Align::Min), |ui| {
        let part = RichText::new(part_name(row)).size(13.0).color(tokens.ink);
        ui.add(egui::Label::new(part).truncate().selectable(false));
        let check = RichText::new(row.check.to_string()).small();
        let check = check.color(tokens.ink);
        ui.add(egui::Label::new(check).truncate().selectable(false));
        let figures = RichText::new(figures).small().color(tokens.ink_soft);
        ui.add(egui::Label::new(figures).truncate().selectable(false))
            .told(terms::PROOF_FACTOR);
    });
    let numbers = Rect::from_min_max(
        egui::pos2(rect.right() - right, rect.top() + 2.0),
        rect.max - vec2(4.0, 0.0),
    );
    let colour = row.grade().map_or(tokens.ink, |g| tokens.grade(g));
    lines(ui, numbers, Layout::top_down(Align::Max), |ui| {
        let factor = row.factor.map_or_else(|| "—".to_owned(), factor);
        let factor = RichText::new(factor).font(type_size::head()).color(colour);
        ui.add(egui::Label::new(factor).selectable(false))
            .told(terms::PROOF_FACTOR);
        let text = RichText::new(word(row)).small().color(colour);
        ui.add(egui::Label::new(text).selectable(false));
    });
    response
}

fn lines(ui: &mut Ui, rect: Rect, layout: Layout, lines: impl FnOnce(&mut Ui)) {
    let mut child = ui.new_child(egui::UiBuilder::new().max_rect(rect).layout(layout));
    child.spacing_mut().item_spacing.y = 1.0;
    lines(&mut child);
}

/// The shape of the grade; a ring while the wanted factor is kept.
fn shape(ui: &Ui, at: egui::Pos2, row: &ProofRow, soft: Color32, input: &NotebookInput<'_>) {
    match row.grade() {
        Some(grade) => mark(ui.painter(), at, 6.0, grade, input.tokens.grade(grade)),
        None => {
            ui.painter()
                .circle_stroke(at, 4.0, egui::Stroke::new(1.2, soft));
        }
    }
}

fn go_there(row: &ProofRow, view: &mut View, requests: &mut Vec<Request>) {
    let side = row.side.unwrap_or(Side::Left);
    view.axle = row.axle;
    view.prove.marked = Some(MarkedPart {
        axle: row.axle,
        side,
        part: row.part,
    });
    if row.load_case.is_some() {
        view.prove.case.clone_from(&row.load_case);
    }
    if let Some(point) = row.part.point() {
        requests.push(Request::Select(Some(PointRef {
            axle: row.axle,
            side,
            point,
        })));
    }
    if let Some(pose) = row.pose {
        requests.push(Request::Pose {
            travel: pose.travel,
            rack: pose.rack,
        });
    }
}

fn details(ui: &mut Ui, input: &NotebookInput<'_>, row: &ProofRow, requests: &mut Vec<Request>) {
    ui.spacing_mut().item_spacing.y = 3.0;
    ui.add(egui::Label::new(row.reason).wrap());
    small(ui, input.tokens, stands(row, input));
    if let Some(remark) = &row.remark {
        small(ui, input.tokens, remark.as_str());
    }
    remedies::ui(
        ui,
        input,
        &row.remedies,
        !input.prove.is_current(),
        requests,
    );
    if row.grade() > Some(Grade::Note) && row.remedies.is_empty() && input.prove.is_current() {
        let text = "Nothing that the build can express was found to mend this row; a worse load case of the same check may list some.";
        small(ui, input.tokens, text);
    }
    if let Some(accepted) = &row.accepted {
        accept::shown(ui, input, accepted, row.worse_than_accepted());
    }
    small(
        ui,
        input.tokens,
        format!("Limit: {}. Formula: {}.", row.source, row.method),
    );
    ui.add_space(4.0);
}

/// The way to the curve of its factor.
fn plot_it(ui: &mut Ui, row: &ProofRow, view: &mut View) {
    if !row.has_a_curve() {
        return;
    }
    let help = "Its factor over travel or rack, under this load case where one is named.";
    if ui
        .small_button("Plot its factor")
        .on_hover_text(help)
        .clicked()
    {
        view.prove.plotted = Plotted::Factor(row.part, row.check);
        view.prove.page = ProvePage::Forces;
    }
}

/// Which factor was wanted, and where it is worst.
fn stands(row: &ProofRow, input: &NotebookInput<'_>) -> String {
    let unit = input.build.unit;
    let place = row.pose.map_or_else(
        || "The same at every pose.".to_owned(),
        |pose| {
            format!(
                "Worst at {} of wheel travel, rack {}.",
                length(pose.travel, unit),
                length(pose.rack, unit)
            )
        },
    );
    format!("Wanted factor {}. {place}", factor(row.wanted))
}
