//! Running a user interface without a window.

use egui::{Context, Pos2, RawInput, Rect, Ui, Vec2, ViewportId};
use thiserror::Error;

use crate::painter::{Painter, Skipped};
use crate::picture::{Picture, PictureError};
use crate::texture::TextureError;

/// Time that passes between two frames, in seconds: long, so that animations are over after a few.
const FRAME_S: f64 = 0.25;

/// Why a user interface could not be turned into a picture.
#[derive(Debug, Error)]
pub enum RenderError {
    /// The size is not one that a picture can have.
    #[error(transparent)]
    Picture(#[from] PictureError),
    /// The scale is not a positive number.
    #[error("{0} pixels per point were asked for; expected a number above 0; no picture is made")]
    Scale(f32),
    /// A texture could not be taken over.
    #[error(transparent)]
    Texture(#[from] TextureError),
    /// Something on the screen could not be painted.
    #[error("the picture would be incomplete, so none is made; left out were {0}")]
    Incomplete(Skipped),
}

/// How a screen is looked at.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct View {
    /// Size of the content in points, before the user's own zoom.
    pub size_points: Vec2,
    /// Pixels in a point: 1 for an ordinary display, 2 for a fine one.
    pub pixels_per_point: f32,
    /// Frames that run before the one that is painted, so that layouts settle; 3 suit most screens.
    pub settle_frames: u32,
}

/// Runs `ui` frame by frame without a window, 0.25 s apart, and gives the picture of the last frame.
///
/// `setup` runs once before the first frame and sets fonts, theme and style. Where `ui` paints nothing the
/// theme's panel colour shows. The same closures give the same bytes.
///
/// # Errors
/// A size or scale that no picture can have, or content that can't be painted: see [`RenderError`].
pub fn render(
    view: &View,
    setup: impl FnOnce(&Context),
    mut ui: impl FnMut(&mut Ui),
) -> Result<Picture, RenderError> {
    let scale = view.pixels_per_point;
    if !(scale.is_finite() && scale > 0.0) {
        return Err(RenderError::Scale(scale));
    }
    let [width, height] =
        [view.size_points.x, view.size_points.y].map(|side| side_px(side * scale));
    let mut picture = Picture::new(width, height, egui::Color32::TRANSPARENT)?;
    let context = Context::default();
    setup(&context);
    let mut painter = Painter::new();
    for frame in 0..view.settle_frames {
        let mut output = context.run_ui(input(view, &context, frame), &mut ui);
        painter.update_textures(&mut output.textures_delta)?;
    }
    let last = input(view, &context, view.settle_frames);
    let mut output = context.run_ui(last, &mut ui);
    painter.update_textures(&mut output.textures_delta)?;
    let primitives = context.tessellate(output.shapes, output.pixels_per_point);
    picture.fill(context.global_style().visuals.panel_fill);
    let skipped = painter.paint(&mut picture, output.pixels_per_point, &primitives);
    if skipped.is_nothing() {
        Ok(picture)
    } else {
        Err(RenderError::Incomplete(skipped))
    }
}

/// Rounded to whole pixels; `as` turns what is below zero or NaN into 0, which no picture takes.
pub(crate) fn side_px(px: f32) -> usize {
    px.round() as usize
}

fn input(view: &View, context: &Context, frame: u32) -> RawInput {
    let mut input = RawInput {
        screen_rect: Some(Rect::from_min_size(
            Pos2::ZERO,
            view.size_points / context.zoom_factor(),
        )),
        time: Some(f64::from(frame) * FRAME_S),
        focused: true,
        ..RawInput::default()
    };
    let viewport = input.viewports.entry(ViewportId::ROOT).or_default();
    viewport.native_pixels_per_point = Some(view.pixels_per_point);
    input
}
