//! Meshes by hand, a painter with a white texture, and the bundled font.
#![allow(clippy::unwrap_used, reason = "helpers of tests fail as tests do")]
#![allow(dead_code, reason = "each test file uses its own part")]

use std::sync::Arc;

use egui::epaint::{ImageDelta, Primitive, Vertex};
use egui::{
    ClippedPrimitive, Color32, ColorImage, Context, FontData, FontDefinitions, FontFamily, Mesh,
    Pos2, Rect, TextureId, TextureOptions, TexturesDelta, pos2,
};
use trammel_raster::{Painter, Picture};

pub(crate) const HALF_WHITE: Color32 = Color32::from_rgba_premultiplied(128, 128, 128, 128);

/// A painter whose texture 0 is one white texel.
pub(crate) fn painter() -> Painter {
    let mut painter = Painter::new();
    let white = ColorImage::filled([1, 1], Color32::WHITE);
    send(
        &mut painter,
        TextureId::default(),
        ImageDelta::full(white, TextureOptions::LINEAR),
    );
    painter
}

pub(crate) fn send(painter: &mut Painter, id: TextureId, delta: ImageDelta) {
    let mut textures = TexturesDelta::default();
    textures.push(id, delta);
    painter.update_textures(&mut textures).unwrap();
}

/// Triangles of one colour; every three points make one.
pub(crate) fn triangles(points: &[(f32, f32)], colour: Color32) -> Mesh {
    Mesh {
        indices: (0..points.len() as u32).collect(),
        vertices: points
            .iter()
            .map(|&(x, y)| Vertex::untextured(pos2(x, y), colour))
            .collect(),
        texture_id: TextureId::default(),
    }
}

/// A rectangle of two triangles.
pub(crate) fn rectangle(min: (f32, f32), max: (f32, f32), colour: Color32) -> Mesh {
    let (a, b, c, d) = (min, (max.0, min.1), max, (min.0, max.1));
    triangles(&[a, b, c, a, c, d], colour)
}

/// A rectangle that shows a whole texture.
pub(crate) fn textured(rect: Rect, texture_id: TextureId) -> Mesh {
    let mut mesh = Mesh::with_texture(texture_id);
    mesh.add_rect_with_uv(
        rect,
        Rect::from_min_max(Pos2::ZERO, pos2(1.0, 1.0)),
        Color32::WHITE,
    );
    mesh
}

pub(crate) fn clipped(mesh: Mesh, clip_rect: Rect) -> ClippedPrimitive {
    ClippedPrimitive {
        clip_rect,
        primitive: Primitive::Mesh(mesh),
    }
}

/// The mesh on a transparent picture, at one pixel a point, where nothing may be left out.
pub(crate) fn paint_with(painter: &Painter, width: usize, height: usize, mesh: Mesh) -> Picture {
    let mut picture = Picture::new(width, height, Color32::TRANSPARENT).unwrap();
    let skipped = painter.paint(&mut picture, 1.0, &[clipped(mesh, Rect::EVERYTHING)]);
    assert!(skipped.is_nothing(), "{skipped}");
    picture
}

pub(crate) fn paint(width: usize, height: usize, mesh: Mesh) -> Picture {
    paint_with(&painter(), width, height, mesh)
}

/// Rows of the picture: `#` where `colour` is, `.` where nothing is, `?` for anything else.
pub(crate) fn rows(picture: &Picture, colour: Color32) -> Vec<String> {
    let sign = |pixel: &Color32| match *pixel {
        found if found == colour => '#',
        Color32::TRANSPARENT => '.',
        _ => '?',
    };
    picture
        .pixels()
        .chunks(picture.width())
        .map(|row| row.iter().map(sign).collect())
        .collect()
}

/// The bundled font for both families: egui's own are not built in.
pub(crate) fn set_fonts(context: &Context) {
    let bytes = include_bytes!("../../../../assets/fonts/DejaVuSans.ttf");
    let mut fonts = FontDefinitions::empty();
    fonts
        .font_data
        .insert("sans".to_owned(), Arc::new(FontData::from_static(bytes)));
    for family in [FontFamily::Proportional, FontFamily::Monospace] {
        fonts.families.insert(family, vec!["sans".to_owned()]);
    }
    context.set_fonts(fonts);
}
