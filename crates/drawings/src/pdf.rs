//! PDF at exactly full size: a millimetre is 72 / 25.4 points, the fonts are embedded, text can be searched for. The same pages give the same bytes.
//!
//! Nothing in the file can keep a printer from scaling it; the check bars on the paper are the proof.

mod ink;

use krilla::geom::{PathBuilder, Rect};
use krilla::metadata::Metadata;
use krilla::page::PageSettings;
use krilla::paint::FillRule;
use krilla::surface::Surface;
use krilla::text::Font;
use krilla::{Data, Document};
use trammel_fabrication::plane::{Bounds, Point, Vector};

use crate::DrawingError;
use crate::ink::{Stroke, strokes};
use crate::metrics::{BOLD, Metrics, PLAIN};
use crate::sheet::{Page, Placed, SheetSet};

/// Points in a millimetre: 72 to the inch.
const POINTS: f64 = 72.0 / 25.4;

/// The fonts as the PDF embeds them.
struct Fonts {
    plain: Font,
    bold: Font,
}

/// Where a millimetre of a drawing comes to lie on its page: shifted, y turned down.
#[derive(Clone, Copy)]
struct OnPage {
    shift: Vector,
    height: f64,
}

impl OnPage {
    #[expect(
        clippy::cast_possible_truncation,
        reason = "a page is written in single precision: 0.0001 mm at its far corner"
    )]
    fn xy(self, point: Point) -> (f32, f32) {
        let at = point + self.shift;
        (
            (at.x * POINTS) as f32,
            ((self.height - at.y) * POINTS) as f32,
        )
    }
}

/// All pages as one PDF file.
///
/// # Errors
/// A coordinate that is no finite number, a font that can't be read, a page that the writer refuses.
pub fn write(set: &SheetSet, metrics: &Metrics) -> Result<Vec<u8>, DrawingError> {
    let failed = |found: String| DrawingError::Pdf {
        drawing: set.title.clone(),
        found,
    };
    let font = |data: &'static [u8]| {
        Font::new(Data::from(data), 0).ok_or_else(|| DrawingError::Font {
            found: "not taken by the PDF writer".to_owned(),
        })
    };
    let fonts = Fonts {
        plain: font(PLAIN)?,
        bold: font(BOLD)?,
    };
    let mut document = Document::new();
    document.set_metadata(
        Metadata::new()
            .title(set.title.clone())
            .creator("Trammel".to_owned())
            .language("en-GB".to_owned()),
    );
    for sheet in &set.pages {
        let [width, height] = sheet.paper.size();
        #[expect(
            clippy::cast_possible_truncation,
            reason = "a page is written in single precision"
        )]
        let settings = PageSettings::from_wh((width * POINTS) as f32, (height * POINTS) as f32);
        let settings = settings.ok_or_else(|| failed("a page without a size".to_owned()))?;
        let mut page = document.start_page_with(settings);
        let mut surface = page.surface();
        draw(sheet, &fonts, metrics, &mut surface)?;
        surface.finish();
        page.finish();
    }
    document
        .finish()
        .map_err(|error| failed(format!("{error:?}")))
}

fn draw(
    page: &Page,
    fonts: &Fonts,
    metrics: &Metrics,
    surface: &mut Surface<'_>,
) -> Result<(), DrawingError> {
    let [_, height] = page.paper.size();
    for placed in &page.placed {
        let strokes = strokes(&placed.drawing, metrics);
        if !strokes.iter().all(|stroke| stroke.ink.is_finite()) {
            return Err(DrawingError::NotFinite {
                drawing: placed.drawing.title.clone(),
            });
        }
        let on_page = OnPage {
            shift: placed.shift,
            height,
        };
        let clipped = clip(placed, height, surface);
        for Stroke { ink, .. } in &strokes {
            ink::draw(ink, on_page, fonts, metrics, surface);
        }
        if clipped {
            surface.pop();
        }
    }
    Ok(())
}

/// Draws only what lies in the piece's window from here on.
fn clip(placed: &Placed, height: f64, surface: &mut Surface<'_>) -> bool {
    let Some(Bounds { min, max }) = placed.window else {
        return false;
    };
    let on_page = OnPage {
        shift: Vector::zeros(),
        height,
    };
    let ((left, bottom), (right, top)) = (on_page.xy(min), on_page.xy(max));
    let Some(rect) = Rect::from_ltrb(left, top, right, bottom) else {
        return false;
    };
    let mut path = PathBuilder::new();
    path.push_rect(rect);
    let Some(path) = path.finish() else {
        return false;
    };
    surface.push_clip_path(&path, &FillRule::NonZero);
    true
}
