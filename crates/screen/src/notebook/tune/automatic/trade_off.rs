//! What trades against what: toe change against another figure, a layout at each point.

use egui::{Button, RichText, Ui};
use trammel_tuning::{Figure, Figures};

use super::Page;
use crate::{
    cloud::{Cloud, Mark},
    terms::Told,
    tune::auto::{Shown, factor, long_name, name, sign, taken, term},
    view::View,
};

/// Height of the picture, points, and as a part of the page in sight, so that the layouts below it are in sight too.
const HEIGHTS: [f32; 2] = [116.0, 170.0];
const HEIGHT: f32 = 0.4;
/// The toe axis reaches so many times as high as the worst layout, and so many degrees at least.
const ABOVE: f64 = 2.0;
const LEAST_DEG: f64 = 0.05;

pub(super) fn ui(ui: &mut Ui, page: Page<'_>, shown: &Shown, view: &mut View) {
    if shown.solutions.is_empty() {
        return;
    }
    let others = offered(shown);
    let Some(&first) = others.first() else { return };
    let against = view.tune.auto.against;
    let against = if others.contains(&against) {
        against
    } else {
        first
    };
    chips(ui, page, &others, against, view);
    let [least, most] = HEIGHTS;
    let height = (HEIGHT * ui.clip_rect().height()).clamp(least, most);
    let cloud = cloud(page, shown, against, (view, height));
    if let Some(clicked) = cloud.ui(ui, page.input.tokens) {
        let same = view.tune.preview == Some(clicked);
        view.tune.preview = if same { None } else { Some(clicked) };
    }
}

/// Figures that every layout has, but toe change itself; the rack end first.
fn offered(shown: &Shown) -> Vec<Figure> {
    let has = |f: &Figure| {
        shown
            .solutions
            .iter()
            .all(|s| s.exact.figures.get(*f).is_some())
    };
    let rest = Figure::ALL
        .into_iter()
        .filter(|f| !matches!(f, Figure::ToeChange | Figure::RackEndFactor));
    std::iter::once(Figure::RackEndFactor)
        .chain(rest)
        .filter(has)
        .collect()
}

fn chips(ui: &mut Ui, page: Page<'_>, others: &[Figure], against: Figure, view: &mut View) {
    let tokens = page.input.tokens;
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing = egui::vec2(4.0, 3.0);
        ui.spacing_mut().button_padding = egui::vec2(6.0, 0.0);
        ui.spacing_mut().interact_size.y = 18.0;
        ui.label(
            RichText::new("Toe change against")
                .small()
                .color(tokens.ink_soft),
        );
        for &figure in others {
            let on = figure == against;
            let text = RichText::new(name(figure)).small();
            let button = if on {
                Button::new(text.color(tokens.on_accent)).fill(tokens.accent)
            } else {
                Button::new(text)
            };
            let response = ui
                .add(button.corner_radius(9.0))
                .told_with(term(figure), taken(figure));
            let label = format!("Against: {}", long_name(figure));
            response.widget_info(|| {
                egui::WidgetInfo::selected(egui::Role::RadioButton, true, on, &label)
            });
            if response.clicked() {
                view.tune.auto.against = figure;
            }
        }
    });
}

fn cloud(
    page: Page<'_>,
    shown: &Shown,
    against: Figure,
    (view, height): (&View, f32),
) -> Cloud<'static> {
    let unit = page.input.build.unit;
    let (across, up) = (factor(against, unit), 1.0_f64.to_degrees());
    let at = |f: &Figures| {
        let place = [f.get(against)? * across, f.toe.largest * up];
        place.iter().all(|v| v.is_finite()).then_some(place)
    };
    let marks: Vec<Mark> = shown
        .solutions
        .iter()
        .enumerate()
        .filter_map(|(n, s)| {
            Some(Mark {
                name: format!("Show layout {}", n + 1),
                number: (n + 1).to_string(),
                at: at(&s.exact.figures)?,
                chosen: view.tune.preview == Some(n),
            })
        })
        .collect();
    let worst = marks.iter().fold(0.0_f64, |m, k| m.max(k.at[1]));
    let top = (ABOVE * worst).max(LEAST_DEG);
    let tried = shown.explored.iter().filter_map(at);
    let faint: Vec<[f64; 2]> = tried.filter(|p| p[1] <= top).collect();
    let now = shown.start.as_ref().and_then(at).filter(|p| p[1] <= top);
    let xs = marks
        .iter()
        .map(|m| m.at[0])
        .chain(faint.iter().map(|p| p[0]));
    let xs = xs.chain(now.map(|p| p[0]));
    let (low, high) = xs.fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), x| {
        (l.min(x), h.max(x))
    });
    let room = (0.08 * (high - low)).max(0.02 * high.abs()).max(1e-3);
    let sign = sign(against, unit);
    let comma = if sign.is_empty() { "" } else { ", " };
    Cloud {
        name: "Toe change against another figure",
        height,
        x: [low - room, high + room],
        y: [-0.06 * top, 1.06 * top],
        x_label: format!("{}{comma}{sign}", long_name(against)),
        y_sign: "°",
        faint,
        now,
        marks,
    }
}
