//! A small CPU renderer for egui's meshes: pictures without a display, a GPU or GL.
//!
//! - [`Picture`]: width, height and pixels, with a PNG writer.
//! - [`Painter`]: keeps egui's textures and paints its clipped primitives onto a picture.
//! - [`render`]: runs a user interface headless for a few frames and gives the picture of the last.
//! - `HarnessRenderer` (feature `harness`): the same painter behind `egui_kittest`'s picture tests.
//!
//! # What a picture holds
//! Corners are rounded to a grid of 1/256 pixel. A pixel belongs to a triangle when its centre lies inside, or on
//! a top or left edge, so that triangles that share an edge leave no gap and blend no pixel twice. Colours are
//! premultiplied and blended in gamma space, as egui means them. Textures are read with the filter and wrap mode
//! that egui asks for, between texels in steps of 1/256; mipmaps are left out.
//!
//! Everything that decides a pixel is integer arithmetic or single IEEE operations in a fixed order, and no pixel depends
//! on the clip rectangle other than by being inside it: the same input gives the same bytes on every run.

mod guard;
#[cfg(feature = "harness")]
mod harness;
mod headless;
mod painter;
mod picture;
mod shade;
mod texture;
mod triangle;

#[cfg(feature = "harness")]
pub use harness::HarnessRenderer;
pub use headless::{RenderError, View, render};
pub use painter::{Painter, Skipped};
pub use picture::{MAX_SIDE_PX, Picture, PictureError};
pub use texture::TextureError;
