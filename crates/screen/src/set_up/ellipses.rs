//! How well surveyed points are known, as ellipses on the drawing.

use egui::{Shape, Stroke, Ui};
use nalgebra::Matrix3;
use trammel_analysis::surveyed;
use trammel_build::Build;
use trammel_geometry::{Point, Vector};
use trammel_setup::{Ellipse, View};

use super::SetUpWork;
use crate::{
    drawing::{Projection, Views},
    tokens::{Tokens, type_size, weight},
};

/// Ellipses are this much larger than they are: a millimetre is no more than a line on the drawing.
const ENLARGED: f64 = 10.0;
/// What they are, as a view has room for it.
const WORDS: [&str; 2] = [
    "Error ellipses, 19 of 20, ten times as large",
    "Errors, ten times",
];
/// Corners of a drawn ellipse.
const CORNERS: usize = 48;

/// Draws the ellipses of the survey at hand, or of the points that were surveyed before.
pub(crate) fn ink(ui: &Ui, views: &Views, work: &SetUpWork, build: &Build, tokens: &Tokens) {
    let known = known(work, build);
    if known.is_empty() {
        return;
    }
    for (projection, cell) in views.cells() {
        let painter = ui.painter_at(cell);
        for (at, covariance) in &known {
            let line = outline(*at, covariance, projection)
                .map(|p| views.screen(projection, p))
                .collect();
            painter.add(Shape::closed_line(
                line,
                Stroke::new(weight::SYMBOL, tokens.accent),
            ));
        }
        let said = WORDS.into_iter().find_map(|text| {
            let galley = painter.layout_no_wrap(text.into(), type_size::small(), tokens.accent);
            (galley.size().x <= cell.width() - 20.0).then_some(galley)
        });
        if let Some(said) = said {
            let place = cell.left_bottom() + egui::vec2(10.0, -24.0 - said.size().y);
            painter.galley(place, said, tokens.accent);
        }
    }
}

/// Places, mm, with their covariances, mm^2.
fn known(work: &SetUpWork, build: &Build) -> Vec<(Point, Matrix3<f64>)> {
    if let Some(answer) = work.survey().filter(|_| !build.set_up.survey.is_empty())
        && let (Ok(file), Ok(found)) = (&answer.file, &answer.found)
    {
        return surveyed::hardpoints(build, &file.survey, found)
            .map(|(_, p)| (p.at, p.covariance))
            .collect();
    }
    let square = build.unit.mm() * build.unit.mm();
    let of = |(at, known): (&trammel_build::PointRef, &trammel_build::SurveyedPoint)| {
        let [xx, yy, zz] = known.variances;
        let [xy, xz, yz] = known.covariances;
        let matrix = Matrix3::new(xx, xy, xz, xy, yy, yz, xz, yz, zz) * square;
        build.point_mm(*at).map(|p| (p, matrix))
    };
    build.set_up.surveyed.iter().filter_map(of).collect()
}

fn outline(
    at: Point,
    covariance: &Matrix3<f64>,
    projection: Projection,
) -> impl Iterator<Item = Point> {
    let (view, across, up) = match projection {
        Projection::Front => (View::Front, Vector::y(), Vector::z()),
        Projection::Side => (View::Side, Vector::x(), Vector::z()),
        Projection::Plan => (View::Plan, Vector::x(), Vector::y()),
    };
    let ellipse = Ellipse::seen(covariance, view).nineteen_of_twenty();
    let (sine, cosine) = ellipse.angle.sin_cos();
    let major = (across * cosine + up * sine) * (ellipse.major * ENLARGED);
    let minor = (up * cosine - across * sine) * (ellipse.minor * ENLARGED);
    (0..CORNERS).map(move |i| {
        let turn = std::f64::consts::TAU * i as f64 / CORNERS as f64;
        at + major * turn.cos() + minor * turn.sin()
    })
}
