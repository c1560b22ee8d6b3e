//! The painter behind `egui_kittest`'s picture tests.

use egui::{Color32, Context, FullOutput, TexturesDelta};
use egui_kittest::TestRenderer;

use crate::headless::{RenderError, side_px};
use crate::painter::Painter;
use crate::picture::Picture;
use crate::texture::TextureError;

/// Give it to `Harness::builder().renderer(..)`: pictures need no GPU and are the same bytes on every run.
///
/// A picture from which anything had to be left out is an error, so that the test fails.
#[derive(Debug, Default)]
pub struct HarnessRenderer {
    painter: Painter,
    /// The first fault in a texture update, which the harness has no way to take at that time.
    fault: Option<TextureError>,
}

impl HarnessRenderer {
    /// A renderer for one harness.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    fn picture(&self, context: &Context, output: &FullOutput) -> Result<Picture, RenderError> {
        if let Some(fault) = &self.fault {
            return Err(fault.clone().into());
        }
        let scale = context.pixels_per_point();
        let size = context.content_rect().size() * scale;
        let mut picture = Picture::new(side_px(size.x), side_px(size.y), Color32::TRANSPARENT)?;
        let primitives = context.tessellate(output.shapes.clone(), scale);
        let skipped = self.painter.paint(&mut picture, scale, &primitives);
        if skipped.is_nothing() {
            Ok(picture)
        } else {
            Err(RenderError::Incomplete(skipped))
        }
    }
}

impl TestRenderer for HarnessRenderer {
    fn handle_delta(&mut self, delta: &mut TexturesDelta) {
        if let Err(fault) = self.painter.update_textures(delta) {
            self.fault.get_or_insert(fault);
        }
    }

    fn render(
        &mut self,
        context: &Context,
        output: &FullOutput,
    ) -> Result<image::RgbaImage, String> {
        let picture = self
            .picture(context, output)
            .map_err(|error| error.to_string())?;
        let side = |px: usize| u32::try_from(px).unwrap_or(u32::MAX);
        image::RgbaImage::from_raw(
            side(picture.width()),
            side(picture.height()),
            picture.to_rgba(),
        )
        .ok_or_else(|| "the pixels do not fill the image".to_owned())
    }
}
