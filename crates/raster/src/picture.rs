//! A picture in memory and its PNG form.

use std::path::{Path, PathBuf};

use egui::Color32;
use thiserror::Error;

/// The longest side of a picture or texture, in pixels: what graphics hardware commonly takes, and at most 256 MB a picture.
pub const MAX_SIDE_PX: usize = 8192;

/// Why a picture can't be made or written.
#[derive(Debug, Error)]
pub enum PictureError {
    /// A side is zero or longer than [`MAX_SIDE_PX`].
    #[error(
        "a picture of {width} x {height} pixels was asked for; each side must be 1 to {MAX_SIDE_PX}; no picture is made"
    )]
    Size {
        /// Width asked for, in pixels.
        width: usize,
        /// Height asked for, in pixels.
        height: usize,
    },
    /// The PNG encoder refused the picture.
    #[error("the picture could not be turned into PNG ({0}); nothing is written")]
    Encode(#[from] png::EncodingError),
    /// The file could not be written.
    #[error("the picture could not be written to {}: {source}", path.display())]
    Write {
        /// The file that was to be written.
        path: PathBuf,
        /// What the operating system said.
        source: std::io::Error,
    },
}

/// A rectangle of pixels, rows from the top, each row from the left.
///
/// Pixels are premultiplied, in gamma space, as [`Color32`] defines them.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Picture {
    width: usize,
    height: usize,
    pixels: Vec<Color32>,
}

impl Picture {
    /// A picture of one colour. Sizes in pixels.
    ///
    /// # Errors
    /// [`PictureError::Size`] if a side is zero or longer than [`MAX_SIDE_PX`].
    pub fn new(width: usize, height: usize, fill: Color32) -> Result<Self, PictureError> {
        let sides_fit = [width, height]
            .iter()
            .all(|side| (1..=MAX_SIDE_PX).contains(side));
        if !sides_fit {
            return Err(PictureError::Size { width, height });
        }
        Ok(Self {
            width,
            height,
            pixels: vec![fill; width * height],
        })
    }

    /// Width in pixels.
    #[must_use]
    pub fn width(&self) -> usize {
        self.width
    }

    /// Height in pixels.
    #[must_use]
    pub fn height(&self) -> usize {
        self.height
    }

    /// All pixels, row by row from the top left.
    #[must_use]
    pub fn pixels(&self) -> &[Color32] {
        &self.pixels
    }

    /// The pixel in a column and row counted from the top left, or `None` outside the picture.
    #[must_use]
    pub fn pixel(&self, column: usize, row: usize) -> Option<Color32> {
        if column >= self.width {
            return None;
        }
        self.pixels.get(row * self.width + column).copied()
    }

    /// Gives every pixel one colour.
    pub fn fill(&mut self, colour: Color32) {
        self.pixels.fill(colour);
    }

    /// One row of pixels. `row` lies inside the picture.
    pub(crate) fn row_mut(&mut self, row: usize) -> &mut [Color32] {
        &mut self.pixels[row * self.width..(row + 1) * self.width]
    }

    /// Red, green, blue and **straight** alpha of every pixel, as image files hold them.
    #[must_use]
    pub fn to_rgba(&self) -> Vec<u8> {
        self.pixels.iter().copied().flat_map(straight).collect()
    }

    /// The picture as the bytes of a PNG file.
    ///
    /// # Errors
    /// [`PictureError::Encode`] if the encoder refuses it.
    pub fn to_png(&self) -> Result<Vec<u8>, PictureError> {
        let side = |px: usize| {
            u32::try_from(px).map_err(|_| PictureError::Size {
                width: self.width,
                height: self.height,
            })
        };
        let mut bytes = Vec::new();
        let mut encoder = png::Encoder::new(&mut bytes, side(self.width)?, side(self.height)?);
        encoder.set_color(png::ColorType::Rgba);
        encoder.set_depth(png::BitDepth::Eight);
        let mut writer = encoder.write_header()?;
        writer.write_image_data(&self.to_rgba())?;
        writer.finish()?;
        Ok(bytes)
    }

    /// Writes the picture to a PNG file, replacing what is there.
    ///
    /// # Errors
    /// [`PictureError::Encode`] or [`PictureError::Write`].
    pub fn write_png(&self, path: impl AsRef<Path>) -> Result<(), PictureError> {
        let path = path.as_ref();
        std::fs::write(path, self.to_png()?).map_err(|source| PictureError::Write {
            path: path.to_owned(),
            source,
        })
    }
}

/// Divides the premultiplied colour by its alpha, rounded to nearest. Light that adds without covering (a channel above
/// its alpha) has no straight form and is cut off at full.
fn straight(colour: Color32) -> [u8; 4] {
    let [r, g, b, alpha] = colour.to_array();
    if alpha == 0 {
        return [0; 4];
    }
    let full = u32::from(alpha);
    let divide = |channel: u8| {
        let value = (u32::from(channel) * 255 + full / 2) / full;
        u8::try_from(value).unwrap_or(u8::MAX)
    };
    [divide(r), divide(g), divide(b), alpha]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn straight_alpha_undoes_the_premultiplication() {
        let cases = [
            ([10, 20, 30, 255], [10, 20, 30, 255]),
            ([0, 0, 0, 0], [0, 0, 0, 0]),
            ([64, 32, 0, 128], [128, 64, 0, 128]),
            ([200, 0, 0, 100], [255, 0, 0, 100]),
        ];
        for ([r, g, b, a], expected) in cases {
            let colour = Color32::from_rgba_premultiplied(r, g, b, a);
            assert_eq!(straight(colour), expected);
        }
    }

    #[test]
    fn sizes_outside_the_limits_are_refused() {
        for (width, height) in [(0, 5), (5, 0), (MAX_SIDE_PX + 1, 1), (1, usize::MAX)] {
            let refused = Picture::new(width, height, Color32::BLACK);
            assert!(matches!(refused, Err(PictureError::Size { .. })));
        }
    }

    #[test]
    fn a_png_reads_back_as_the_same_pixels() {
        let mut picture = Picture::new(3, 2, Color32::WHITE).unwrap();
        picture.row_mut(1)[2] = Color32::from_rgb(1, 2, 3);
        picture.row_mut(0)[0] = Color32::TRANSPARENT;
        let png = picture.to_png().unwrap();
        let mut reader = png::Decoder::new(std::io::Cursor::new(png))
            .read_info()
            .unwrap();
        let mut read = vec![0; reader.output_buffer_size().unwrap()];
        let info = reader.next_frame(&mut read).unwrap();
        assert_eq!((info.width, info.height), (3, 2));
        assert_eq!(read, picture.to_rgba());
        assert_eq!(&read[20..], [1, 2, 3, 255]);
    }

    #[test]
    fn a_failed_write_names_the_file() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("missing").join("picture.png");
        let picture = Picture::new(1, 1, Color32::WHITE).unwrap();
        let error = picture.write_png(&path).unwrap_err();
        assert!(error.to_string().contains("picture.png"), "{error}");
    }
}
