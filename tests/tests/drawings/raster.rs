//! A page as poppler sees it.

use std::path::Path;
use std::process::Command;

use crate::tools::printed;

/// Dots in an inch: 0.042 mm each.
const DPI: f64 = 600.0;
/// Darker than this is ink.
const INK: u8 = 128;

/// A grey picture of a page; y counts from below, in mm, as on the sheet.
pub struct Raster {
    width: usize,
    height: usize,
    grey: Vec<u8>,
}

impl Raster {
    /// The first page of a PDF file.
    pub fn of(pdf: &Path) -> Self {
        let to = pdf.with_extension("");
        let mut command = Command::new("pdftoppm");
        command
            .args(["-r", "600", "-gray", "-singlefile", "-f", "1", "-l", "1"])
            .arg(pdf)
            .arg(&to);
        printed(&mut command);
        let bytes = std::fs::read(to.with_extension("pgm")).expect("a picture");
        // P5, width, height, deepest grey, one white space, then the greys.
        let mut at = 0;
        let mut word = || {
            let start = at
                + bytes[at..]
                    .iter()
                    .position(|b| !b.is_ascii_whitespace())
                    .expect("a word");
            let end = start
                + bytes[start..]
                    .iter()
                    .position(u8::is_ascii_whitespace)
                    .expect("its end");
            at = end;
            String::from_utf8(bytes[start..end].to_vec()).expect("ASCII")
        };
        assert_eq!(word(), "P5");
        let (width, height) = (
            word().parse().expect("width"),
            word().parse().expect("height"),
        );
        assert_eq!(word(), "255");
        let grey = bytes[at + 1..].to_vec();
        assert_eq!(grey.len(), width * height);
        Self {
            width,
            height,
            grey,
        }
    }

    /// Width and height of the paper, mm.
    pub fn size(&self) -> [f64; 2] {
        [self.width, self.height].map(|dots| dots as f64 / DPI * 25.4)
    }

    fn dot(mm: f64) -> usize {
        (mm / 25.4 * DPI).floor().max(0.0) as usize
    }

    pub fn is_ink(&self, x: f64, y: f64) -> bool {
        let (column, row) = (Self::dot(x), self.height - 1 - Self::dot(y));
        self.grey[row * self.width + column] < INK
    }

    /// Middle of the ink on a line across, between two x.
    pub fn middle_across(&self, y: f64, from: f64, to: f64) -> f64 {
        middle(from, to, |x| self.is_ink(x, y))
    }

    /// Middle of the ink on a line up, between two y.
    pub fn middle_up(&self, x: f64, from: f64, to: f64) -> f64 {
        middle(from, to, |y| self.is_ink(x, y))
    }
}

fn middle(from: f64, to: f64, is_ink: impl Fn(f64) -> bool) -> f64 {
    let step = 0.005;
    let count = ((to - from) / step) as usize;
    let inked: Vec<f64> = (0..count)
        .map(|i| from + i as f64 * step)
        .filter(|&at| is_ink(at))
        .collect();
    assert!(!inked.is_empty(), "no ink between {from} and {to}");
    inked.iter().sum::<f64>() / inked.len() as f64
}
