//! Painting egui's primitives onto a picture.

use std::fmt;

use egui::epaint::{Primitive, Vertex};
use egui::{ClippedPrimitive, Color32, Mesh, Rect, TextureId, TexturesDelta};

use crate::guard::{Corner, within_guard};
use crate::picture::Picture;
use crate::shade::{Shade, blend_single};
use crate::texture::{Texture, TextureError, Textures};
use crate::triangle::{Coverage, GridPoint, PixelRect};

/// What could not be painted. Everything else is on the picture.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[must_use = "a picture from which something was left out should be reported"]
pub struct Skipped {
    /// Triangles with an index that has no vertex, or with fewer than three indices.
    pub broken_triangles: usize,
    /// Triangles with a position or texture position that is not a finite number.
    pub not_finite_triangles: usize,
    /// Meshes whose texture was never sent.
    pub meshes_without_texture: usize,
    /// The texture that the last of those meshes asked for.
    pub missing_texture: Option<TextureId>,
    /// Callbacks that draw with the graphics hardware themselves.
    pub callbacks: usize,
}

impl Skipped {
    /// Was everything painted?
    #[must_use]
    pub fn is_nothing(&self) -> bool {
        *self == Self::default()
    }
}

impl fmt::Display for Skipped {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let counts = [
            (
                self.broken_triangles,
                "triangles with indices beyond their vertices",
            ),
            (
                self.not_finite_triangles,
                "triangles with positions that are not finite numbers",
            ),
            (
                self.meshes_without_texture,
                "meshes whose texture was never sent",
            ),
            (self.callbacks, "callbacks that need graphics hardware"),
        ];
        let parts: Vec<_> = counts
            .iter()
            .filter(|(count, _)| *count > 0)
            .map(|(count, what)| format!("{what}: {count}"))
            .collect();
        if parts.is_empty() {
            return f.write_str("nothing");
        }
        f.write_str(&parts.join("; "))?;
        match self.missing_texture {
            Some(id) => write!(f, "; missing texture: {id:?}"),
            None => Ok(()),
        }
    }
}

/// Keeps egui's textures and paints its primitives.
#[derive(Clone, Debug, Default)]
pub struct Painter {
    textures: Textures,
}

impl Painter {
    /// A painter that holds no texture yet.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// Carries out egui's texture changes and empties `delta`. Every frame's changes must come here, in order, painted or not.
    ///
    /// A texture that the frame frees is kept until the next call, because the frame itself may still show it.
    ///
    /// # Errors
    /// The first change that could not be carried out; the others are.
    pub fn update_textures(&mut self, delta: &mut TexturesDelta) -> Result<(), TextureError> {
        self.textures.update(delta)
    }

    /// Paints over what is on the picture. `pixels_per_point` scales egui's points.
    ///
    /// Malformed input is left out and counted, never a panic.
    pub fn paint(
        &self,
        picture: &mut Picture,
        pixels_per_point: f32,
        primitives: &[ClippedPrimitive],
    ) -> Skipped {
        let mut skipped = Skipped::default();
        for ClippedPrimitive {
            clip_rect,
            primitive,
        } in primitives
        {
            let mesh = match primitive {
                Primitive::Mesh(mesh) => mesh,
                Primitive::Callback(_) => {
                    skipped.callbacks += 1;
                    continue;
                }
            };
            let Some(texture) = self.textures.get(mesh.texture_id) else {
                skipped.meshes_without_texture += 1;
                skipped.missing_texture = Some(mesh.texture_id);
                continue;
            };
            let clip = clip_in_pixels(*clip_rect, pixels_per_point, picture);
            let mut canvas = Canvas {
                picture,
                clip,
                pixels_per_point,
            };
            canvas.paint_mesh(mesh, texture, &mut skipped);
        }
        skipped
    }
}

/// The clip rectangle rounded to whole pixels, as egui's own painters round it, within the picture.
fn clip_in_pixels(clip: Rect, pixels_per_point: f32, picture: &Picture) -> PixelRect {
    // `as` brings infinities to the ends of the range and NaN to zero.
    let side = |point: f32, length: usize| {
        ((point * pixels_per_point).round() as i64).clamp(0, length as i64)
    };
    PixelRect {
        columns: side(clip.min.x, picture.width())..side(clip.max.x, picture.width()),
        rows: side(clip.min.y, picture.height())..side(clip.max.y, picture.height()),
    }
}

/// The part of a picture that a mesh may touch.
struct Canvas<'a> {
    picture: &'a mut Picture,
    clip: PixelRect,
    pixels_per_point: f32,
}

impl Canvas<'_> {
    fn paint_mesh(&mut self, mesh: &Mesh, texture: &Texture, skipped: &mut Skipped) {
        for indices in mesh.indices.chunks(3) {
            let &[a, b, c] = indices else {
                skipped.broken_triangles += 1;
                continue;
            };
            let vertex = |index: u32| mesh.vertices.get(usize::try_from(index).ok()?);
            let (Some(a), Some(b), Some(c)) = (vertex(a), vertex(b), vertex(c)) else {
                skipped.broken_triangles += 1;
                continue;
            };
            let corners = [a, b, c].map(|vertex| self.corner(vertex));
            let is_finite = |corner: &Corner| {
                corner
                    .px
                    .iter()
                    .chain(&corner.uv)
                    .all(|value| value.is_finite())
            };
            if !corners.iter().all(is_finite) {
                skipped.not_finite_triangles += 1;
                continue;
            }
            within_guard(corners, |corners| self.paint_triangle(&corners, texture));
        }
    }

    fn corner(&self, vertex: &Vertex) -> Corner {
        let scale = f64::from(self.pixels_per_point);
        Corner {
            px: [vertex.pos.x, vertex.pos.y].map(|point| f64::from(point) * scale),
            uv: [vertex.uv.x, vertex.uv.y].map(f64::from),
            colour: vertex.color.to_array().map(f64::from),
        }
    }

    fn paint_triangle(&mut self, corners: &[Corner; 3], texture: &Texture) {
        let grid = corners.map(|corner| GridPoint::nearest(corner.px[0], corner.px[1]));
        let Some(coverage) = Coverage::new(grid) else {
            return;
        };
        let rows = coverage.rows(&self.clip);
        if rows.is_empty() {
            return;
        }
        let shade = Shade::new(grid.map(GridPoint::in_px), corners, texture);
        let single = shade.single_colour();
        for row in rows {
            let columns = coverage.columns(row, &self.clip);
            let Some(pixels) = self.pixels(row, columns.start, columns.end) else {
                continue;
            };
            match single {
                Some(colour) => blend_single(pixels, colour),
                None => shade.blend_row(pixels, columns.start, row),
            }
        }
    }

    /// The pixels of a row from a column up to another, `None` if there are none.
    fn pixels(&mut self, row: i64, start: i64, end: i64) -> Option<&mut [Color32]> {
        if start >= end {
            return None;
        }
        let row = self.picture.row_mut(usize::try_from(row).ok()?);
        row.get_mut(usize::try_from(start).ok()?..usize::try_from(end).ok()?)
    }
}
