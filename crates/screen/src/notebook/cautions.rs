//! The caution panel: worst first, each with its number, its reason and what would mend it.

use egui::{Color32, Pos2, Rect, RichText, ScrollArea, Sense, Shape, Stroke, Ui, pos2, vec2};
use trammel_analysis::{Caution, CautionKind, Depth, Grade};
use trammel_build::Side;

use super::{
    NotebookInput,
    accept::{self, Proposal},
    remedies,
};
use crate::{
    landmark::{self, Landmark},
    prove::settings::MarkedPart,
    request::Request,
    tokens::type_size,
    view::View,
};

pub(super) fn ui(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    view: &mut View,
    requests: &mut Vec<Request>,
) {
    let cautions = &input.results.cautions;
    let top = ui.cursor().top();
    ui.horizontal(|ui| {
        ui.label(RichText::new("Cautions").font(type_size::head()));
        ui.with_layout(egui::Layout::right_to_left(egui::Align::Center), |ui| {
            let count = heading(
                cautions.len(),
                input.prove.proof().is_some(),
                input.prove.is_current(),
            );
            let count = RichText::new(count).small().color(input.tokens.ink_soft);
            ui.add(egui::Label::new(count).truncate())
                .on_hover_text("How many cautions there are now, the worst first.");
        });
    });
    let head = ui.min_rect();
    let list = ScrollArea::vertical().id_salt("caution list").auto_shrink(false).show(ui, |ui| {
        for (index, caution) in cautions.iter().enumerate() {
            let rect = one(ui, input, caution, view, requests);
            if index == 0 {
                let seen = rect.intersect(ui.clip_rect());
                landmark::mark(ui.ctx(), Landmark::WorstCaution, seen);
            }
        }
        if cautions.is_empty() {
            landmark::mark(ui.ctx(), Landmark::WorstCaution, head);
        }
        ui.add_space(2.0);
        let small = |t: &str| RichText::new(t).small().color(input.tokens.ink_soft);
        ui.label(small(
            "These are figures against limits, not an approval. Local codes, series rules and a qualified inspector decide.",
        ));
    });
    let whole = list.inner_rect.top() - top + list.content_size.y;
    if last_height(ui.ctx()) != Some(whole) {
        ui.ctx().data_mut(|d| d.insert_temp(height_id(), whole));
        ui.ctx().request_repaint();
    }
}

/// How many cautions there are, and how much is known: none is no good news while the proof has not come.
fn heading(count: usize, proved: bool, current: bool) -> String {
    let told = match (count, proved) {
        (0, true) => "none of the checks is near its limit".to_owned(),
        (0, false) => return "being proved".to_owned(),
        (1, _) => "1".to_owned(),
        (n, _) => format!("{n}, worst first"),
    };
    match (proved, current) {
        (true, true) => told,
        (true, false) => format!("{told}; being proved again"),
        (false, _) => format!("{told}; being proved"),
    }
}

/// How high the panel's content was when it was last shown, points.
pub(super) fn last_height(context: &egui::Context) -> Option<f32> {
    context.data(|d| d.get_temp(height_id()))
}

fn height_id() -> egui::Id {
    egui::Id::unique("caution panel height")
}

fn one(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    caution: &Caution,
    view: &mut View,
    requests: &mut Vec<Request>,
) -> Rect {
    let tokens = input.tokens;
    let key = (caution.kind, caution.axle, caution.side, caution.point);
    let open = view.open_caution == Some(key);
    let colour = tokens.grade(caution.grade);
    let shown = ui.horizontal_top(|ui| {
        let (rect, _) = ui.allocate_exact_size(vec2(16.0, 18.0), Sense::hover());
        mark(ui.painter(), rect.center(), 6.0, caution.grade, colour);
        ui.vertical(|ui| {
            ui.spacing_mut().item_spacing.y = 1.0;
            let head = egui::Label::new(RichText::new(&caution.headline).font(type_size::head()))
                .wrap()
                .sense(Sense::click());
            let head = ui.add(head);
            let detail = format!("{}: {}", caution.grade.word(), caution.detail);
            let detail = RichText::new(detail).small().color(tokens.ink_soft);
            ui.add(egui::Label::new(detail).wrap());
            if let Some(accepted) = caution.accepted(input.build) {
                accept::shown(ui, input, accepted, caution.worse_than_accepted(accepted));
            }
            head
        })
        .inner
    });
    let (response, place) = (shown.inner, shown.response.rect);
    let name = format!("{}: {}", caution.grade.word(), caution.headline);
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Button, true, &name));
    let response = response
        .on_hover_cursor(egui::CursorIcon::PointingHand)
        .on_hover_text("Go there, and see why and what would mend it");
    if response.clicked() {
        view.open_caution = if open { None } else { Some(key) };
        if !open {
            go_there(caution, view, requests);
        }
    }
    if open {
        details(ui, input, caution, requests);
    }
    ui.add_space(5.0);
    place
}

fn go_there(caution: &Caution, view: &mut View, requests: &mut Vec<Request>) {
    view.axle = caution.axle;
    view.prove.marked = match caution.kind {
        CautionKind::Proof(part, _) => Some(MarkedPart {
            axle: caution.axle,
            side: caution.side.unwrap_or(Side::Left),
            part,
        }),
        _ => None,
    };
    if let Some(point) = caution.point {
        requests.push(Request::Select(Some(point)));
    }
    if let Some(worst) = caution.worst {
        requests.push(Request::Pose {
            travel: worst.travel,
            rack: worst.rack,
        });
    }
}

fn details(ui: &mut Ui, input: &NotebookInput<'_>, caution: &Caution, requests: &mut Vec<Request>) {
    let tokens = input.tokens;
    ui.indent(
        (
            "caution",
            caution.kind,
            caution.axle,
            caution.side,
            caution.point,
        ),
        |ui| {
            ui.spacing_mut().item_spacing.y = 3.0;
            ui.add(egui::Label::new(&caution.reason).wrap());
            if input.results.depth == Depth::Quick {
                let text = "What would mend it is worked out when you let go.";
                ui.label(RichText::new(text).small().color(tokens.ink_soft));
            }
            let old = matches!(caution.kind, CautionKind::Proof(..)) && !input.prove.is_current();
            remedies::ui(ui, input, &caution.remedies, old, requests);
            ui.add(
                egui::Label::new(
                    RichText::new(&caution.source)
                        .small()
                        .color(tokens.ink_soft),
                )
                .wrap(),
            );
            let accepted = caution.accepted(input.build);
            let proposal = Proposal {
                key: &caution.key(),
                figure: caution.figure.map(|f| f.value),
                accepted,
            };
            accept::ui(ui, input, &proposal, requests);
        },
    );
}

/// The shape of a grade: triangle, diamond or disc, so that colour is never the only sign.
pub(super) fn mark(painter: &egui::Painter, at: Pos2, r: f32, grade: Grade, colour: Color32) {
    let polygon =
        |points: Vec<Pos2>| painter.add(Shape::convex_polygon(points, colour, Stroke::NONE));
    match grade {
        Grade::Danger => {
            polygon(vec![
                at + vec2(0.0, -r),
                at + vec2(r, 0.8 * r),
                at + vec2(-r, 0.8 * r),
            ]);
        }
        Grade::Caution => {
            polygon(vec![
                pos2(at.x, at.y - r),
                pos2(at.x + r, at.y),
                pos2(at.x, at.y + r),
                pos2(at.x - r, at.y),
            ]);
        }
        Grade::Note => {
            painter.circle_filled(at, 0.75 * r, colour);
        }
    }
}
