//! How lengths are printed and stock is bought, typed or taken.

use trammel_build::{Build, LengthUnit, ShopStep};
use trammel_fabrication::nest::StockPlate;
use trammel_fabrication::shown::{LengthStyle, ShopUnit};
use trammel_fabrication::stock::SawRules;
use trammel_geometry::{Point, Vector};

use crate::defaults;

/// The shop, mm.
#[derive(Clone, Debug, PartialEq)]
pub struct Shop {
    /// Unit and step of printed lengths.
    pub style: LengthStyle,
    /// What the step is called.
    pub step: ShopStep,
    /// Where the fixture is measured from, vehicle axes.
    pub datum: Vector,
    /// Bars as bought.
    pub saw: SawRules,
    /// Plate as bought.
    pub plate: StockPlate,
}

impl Shop {
    /// The shop of a build.
    #[must_use]
    pub fn of(build: &Build) -> Self {
        let (spec, mm) = (&build.shop, build.unit.mm());
        let usual = match build.unit {
            LengthUnit::Inch => ShopStep::ThirtySecond,
            LengthUnit::Millimetre => ShopStep::HalfMm,
        };
        let step = spec.step.unwrap_or(usual);
        let both = spec.both_units.unwrap_or(false);
        let [x, y, z] = spec.datum.unwrap_or([0.0; 3]);
        let [width, height] = spec
            .plate
            .map_or([defaults::PLATE.width, defaults::PLATE.height], |p| {
                p.map(|v| v * mm)
            });
        Self {
            style: LengthStyle {
                unit: unit(step),
                both,
            },
            step,
            datum: Vector::new(x, y, z) * mm,
            saw: SawRules {
                stock_length: spec.stock_length.map_or(defaults::STOCK_LENGTH, |v| v * mm),
                kerf: spec.kerf.map_or(defaults::KERF, |v| v * mm),
                end_trim: defaults::END_TRIM,
            },
            plate: StockPlate {
                width,
                height,
                ..defaults::PLATE
            },
        }
    }

    /// A length as printed.
    #[must_use]
    pub fn text(&self, mm: f64) -> String {
        self.style.text(mm)
    }

    /// A place rounded to the step from the datum.
    #[must_use]
    pub fn rounded(&self, at: Point) -> Point {
        let from = at - self.datum;
        Point::from(from.coords.map(|v| self.style.rounded(v)) + self.datum)
    }
}

fn unit(step: ShopStep) -> ShopUnit {
    match step {
        ShopStep::Sixteenth => ShopUnit::Inch { marks: 16 },
        ShopStep::ThirtySecond => ShopUnit::Inch { marks: 32 },
        ShopStep::SixtyFourth => ShopUnit::Inch { marks: 64 },
        ShopStep::TenthMm => ShopUnit::Millimetre { tenths: 1 },
        ShopStep::HalfMm => ShopUnit::Millimetre { tenths: 5 },
        ShopStep::WholeMm => ShopUnit::Millimetre { tenths: 10 },
    }
}
