//! Textures: kept as egui updates them, read as the graphics hardware would.

use std::collections::{BTreeSet, HashMap};
use std::sync::Arc;

use egui::epaint::ImageDelta;
use egui::{
    Color32, ImageData, TextureFilter, TextureId, TextureOptions, TextureWrapMode, TexturesDelta,
};
use thiserror::Error;

use crate::picture::MAX_SIDE_PX;
use crate::triangle::floor;

/// What is wrong with a texture update. The texture stays as it was.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum TextureError {
    /// The image's size is zero or too large, or its pixels don't fill it.
    #[error(
        "the image for texture {id:?} has {pixels} pixels and a size of {size:?}; expected sides of 1 to {MAX_SIDE_PX} and as many \
         pixels as they hold; the texture stays as it was"
    )]
    Image {
        /// The texture to be updated.
        id: TextureId,
        /// Width and height that the image states.
        size: [usize; 2],
        /// Pixels that it holds.
        pixels: usize,
    },
    /// A part was to be updated of a texture that is not there.
    #[error(
        "a part of texture {id:?} was to be updated, but no such texture is held; the update is left out"
    )]
    Unknown {
        /// The texture to be updated.
        id: TextureId,
    },
    /// The part to be updated does not lie inside the texture.
    #[error(
        "a part of {part:?} at {at:?} of texture {id:?} was to be updated, but the texture measures {texture:?}; it stays as it was"
    )]
    Outside {
        /// The texture to be updated.
        id: TextureId,
        /// Column and row of the part.
        at: [usize; 2],
        /// Width and height of the part.
        part: [usize; 2],
        /// Width and height of the texture.
        texture: [usize; 2],
    },
}

/// One texture. `texels` holds exactly `width * height`, neither zero.
#[derive(Clone, Debug)]
pub(crate) struct Texture {
    width: usize,
    height: usize,
    texels: Vec<Color32>,
    options: TextureOptions,
}

/// Where a texel value is read: positions in texels from the texture's top left.
#[derive(Clone, Copy, Debug)]
pub(crate) struct TexelPoint {
    pub(crate) x: f64,
    pub(crate) y: f64,
}

impl Texture {
    pub(crate) fn size(&self) -> [f64; 2] {
        [self.width as f64, self.height as f64]
    }

    /// The filter for a triangle that spans this many texels a pixel, squared.
    pub(crate) fn filter(&self, texels_per_px_squared: f64) -> TextureFilter {
        if texels_per_px_squared > 1.0 {
            self.options.minification
        } else {
            self.options.magnification
        }
    }

    /// The texel colour at a point; each channel from 0 to 1.
    #[inline]
    pub(crate) fn read(&self, at: TexelPoint, filter: TextureFilter) -> [f32; 4] {
        match filter {
            TextureFilter::Nearest => {
                let texel = self.texel(floor(at.x), floor(at.y));
                texel.map(|channel| f32::from(channel) / 255.0)
            }
            TextureFilter::Linear => self.read_linear(at),
        }
    }

    /// Bilinear, with the shares of the four texels rounded to 1/256.
    #[inline]
    fn read_linear(&self, at: TexelPoint) -> [f32; 4] {
        const FULL: f32 = 255.0 * 65536.0;
        let in_steps = |texels: f64| floor((texels - 0.5) * 256.0 + 0.5);
        let (x, y) = (in_steps(at.x), in_steps(at.y));
        let (left, top) = (x >> 8, y >> 8);
        let (right_share, lower_share) = ((x & 255) as u32, (y & 255) as u32);
        if right_share == 0 && lower_share == 0 {
            // The same value as below, where the other three shares are zero.
            return self
                .texel(left, top)
                .map(|channel| f32::from(channel) / 255.0);
        }
        let upper = [self.texel(left, top), self.texel(left + 1, top)];
        let lower = [self.texel(left, top + 1), self.texel(left + 1, top + 1)];
        std::array::from_fn(|i| {
            let across = |row: &[[u8; 4]; 2]| {
                u32::from(row[0][i]) * (256 - right_share) + u32::from(row[1][i]) * right_share
            };
            let sum = across(&upper) * (256 - lower_share) + across(&lower) * lower_share;
            // At most 24 bits: exact.
            sum as f32 / FULL
        })
    }

    #[inline]
    fn texel(&self, x: i64, y: i64) -> [u8; 4] {
        let column = self.wrap(x, self.width);
        let row = self.wrap(y, self.height);
        self.texels[row * self.width + column].to_array()
    }

    /// The index of a texel along an axis, below `count`.
    #[inline]
    fn wrap(&self, index: i64, count: usize) -> usize {
        let count = count as i64;
        let inside = match self.options.wrap_mode {
            TextureWrapMode::ClampToEdge => index.clamp(0, count - 1),
            TextureWrapMode::Repeat => index.rem_euclid(count),
            TextureWrapMode::MirroredRepeat => {
                let there_and_back = index.rem_euclid(2 * count);
                there_and_back.min(2 * count - 1 - there_and_back)
            }
        };
        inside as usize
    }
}

/// All textures that egui has sent and not freed.
#[derive(Clone, Debug, Default)]
pub(crate) struct Textures {
    held: HashMap<TextureId, Texture>,
    /// Freed by the frame that is still to be painted, which may show them.
    leaving: BTreeSet<TextureId>,
}

impl Textures {
    pub(crate) fn get(&self, id: TextureId) -> Option<&Texture> {
        self.held.get(&id)
    }

    /// Carries out an update and empties it, whatever happens. What it frees stays until the next update.
    pub(crate) fn update(&mut self, delta: &mut TexturesDelta) -> Result<(), TextureError> {
        for id in std::mem::take(&mut self.leaving) {
            self.held.remove(&id);
        }
        let mut outcome = Ok(());
        for (id, changes) in delta.set.drain() {
            for change in changes {
                outcome = outcome.and(self.set(id, change));
            }
        }
        self.leaving.extend(delta.free.drain());
        outcome
    }

    fn set(&mut self, id: TextureId, change: ImageDelta) -> Result<(), TextureError> {
        let ImageData::Color(image) = change.image;
        let [width, height] = image.size;
        let sides_fit = image
            .size
            .iter()
            .all(|side| (1..=MAX_SIDE_PX).contains(side));
        if !sides_fit || image.pixels.len() != width * height {
            return Err(TextureError::Image {
                id,
                size: image.size,
                pixels: image.pixels.len(),
            });
        }
        let Some(at) = change.pos else {
            let texture = Texture {
                width,
                height,
                texels: Arc::unwrap_or_clone(image).pixels,
                options: change.options,
            };
            self.held.insert(id, texture);
            return Ok(());
        };
        let texture = self.held.get_mut(&id).ok_or(TextureError::Unknown { id })?;
        texture.options = change.options;
        texture.set_part(id, at, image.size, &image.pixels)
    }
}

impl Texture {
    fn set_part(
        &mut self,
        id: TextureId,
        at: [usize; 2],
        part: [usize; 2],
        texels: &[Color32],
    ) -> Result<(), TextureError> {
        let texture = [self.width, self.height];
        let fits = (0..2).all(|i| {
            at[i]
                .checked_add(part[i])
                .is_some_and(|end| end <= texture[i])
        });
        if !fits {
            return Err(TextureError::Outside {
                id,
                at,
                part,
                texture,
            });
        }
        for (row, source) in texels.chunks_exact(part[0]).enumerate() {
            let start = (at[1] + row) * self.width + at[0];
            self.texels[start..start + part[0]].copy_from_slice(source);
        }
        Ok(())
    }
}
