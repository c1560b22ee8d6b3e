//! How the shop prints and saws: what sheets need and no curve does.

use crate::{
    BuildFault, Triple,
    check::{POSITIVE, check_place, figure, is_positive},
};

/// The step that the shop works to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ShopStep {
    /// 1/16 in.
    Sixteenth,
    /// 1/32 in.
    ThirtySecond,
    /// 1/64 in.
    SixtyFourth,
    /// 0.1 mm.
    TenthMm,
    /// 0.5 mm.
    HalfMm,
    /// 1 mm.
    WholeMm,
}

impl ShopStep {
    /// Finest last, inches first.
    pub const ALL: [Self; 6] = [
        Self::Sixteenth,
        Self::ThirtySecond,
        Self::SixtyFourth,
        Self::WholeMm,
        Self::HalfMm,
        Self::TenthMm,
    ];

    /// The word in files.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Sixteenth => "sixteenth",
            Self::ThirtySecond => "thirty_second",
            Self::SixtyFourth => "sixty_fourth",
            Self::TenthMm => "tenth_mm",
            Self::HalfMm => "half_mm",
            Self::WholeMm => "whole_mm",
        }
    }

    /// On screen and on sheets.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::Sixteenth => "1/16 in",
            Self::ThirtySecond => "1/32 in",
            Self::SixtyFourth => "1/64 in",
            Self::TenthMm => "0.1 mm",
            Self::HalfMm => "0.5 mm",
            Self::WholeMm => "1 mm",
        }
    }
}

/// The shop. Everything may be left out; lengths in the build's unit.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct ShopSpec {
    /// Whose sheets they are.
    pub owner: Option<String>,
    /// Revision on the sheets.
    pub revision: Option<String>,
    /// Date of issue as it is to be printed.
    pub issued: Option<String>,
    /// Step that printed lengths are rounded to; its unit leads on the sheets.
    pub step: Option<ShopStep>,
    /// Whether the other unit stands behind in brackets; not where it is left out.
    pub both_units: Option<bool>,
    /// Where the fixture is measured from, vehicle axes: a table edge and the centreline; the origin where it is left out.
    pub datum: Option<Triple>,
    /// Length of bars and tubes as bought.
    pub stock_length: Option<f64>,
    /// What a saw cut takes.
    pub kerf: Option<f64>,
    /// Sides of the plate that flat parts are nested on.
    pub plate: Option<[f64; 2]>,
}

impl ShopSpec {
    pub(crate) fn check(&self) -> Option<BuildFault> {
        let datum = self
            .datum
            .and_then(|d| check_place("shop.datum".into(), d).err());
        if datum.is_some() {
            return datum;
        }
        let [plate, up] = self.plate.map_or([None, None], |p| p.map(Some));
        let sizes = [
            ("stock_length", self.stock_length),
            ("kerf", self.kerf),
            ("plate", plate),
            ("plate", up),
        ];
        sizes.into_iter().find_map(|(name, value)| {
            let found = value.filter(|v| !is_positive(*v))?;
            Some(figure(format!("shop.{name}"), found, POSITIVE))
        })
    }

    pub(crate) fn each_length(&mut self, length: &impl Fn(&mut f64)) {
        self.datum.iter_mut().flatten().for_each(length);
        self.plate.iter_mut().flatten().for_each(length);
        [&mut self.stock_length, &mut self.kerf]
            .into_iter()
            .flatten()
            .for_each(length);
    }
}
