//! A sheet before it is laid out on paper.

use trammel_build::{AxleName, PointName};
use trammel_drawings::model::Drawing;
use trammel_drawings::table::Table;
use trammel_fabrication::flat_part::FlatPart;
use trammel_fabrication::stock::{CutPiece, StockSection};

/// Where a sheet belongs in the list.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Group {
    /// What is welded to the frame and to the arms.
    Tabs,
    /// Rack end and rack mount.
    Rack,
    /// Tie rods and toe links.
    Rods,
    /// Arms.
    Arms,
    /// Lists of the whole vehicle.
    Lists,
}

impl Group {
    /// In the order of the list.
    pub const ALL: [Self; 5] = [Self::Tabs, Self::Rack, Self::Rods, Self::Arms, Self::Lists];

    /// Its head in the list.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::Lists => "Lists",
            Self::Tabs => "Tabs",
            Self::Rack => "Rack",
            Self::Rods => "Tie rods",
            Self::Arms => "Arms",
        }
    }
}

/// What a sheet shows.
#[derive(Clone, Debug)]
pub(crate) enum Body {
    /// A flat part at full size.
    Flat(Box<FlatPart>),
    /// A drawing at full size.
    FullSize(Box<Drawing>),
    /// A drawing that shows sizes without being them: its scale in words.
    Figure(Box<Drawing>, String),
    /// Lists.
    Tables(Vec<Table>),
}

/// A length of stock that a part needs.
#[derive(Clone, Debug)]
pub(crate) struct Sawn {
    pub section: StockSection,
    pub material: String,
    pub piece: CutPiece,
}

/// A sheet before it is laid out.
#[derive(Clone, Debug)]
pub(crate) struct Draft {
    /// Name of its file, without extension.
    pub name: String,
    pub title: String,
    pub kind: &'static str,
    pub group: Group,
    pub at: Option<(AxleName, PointName)>,
    pub material: String,
    pub quantity: String,
    pub body: Body,
    pub notes: Vec<String>,
    /// What is below nought or below its least, each a sentence: on the sheet, and told besides.
    pub heed: Vec<String>,
    pub sawn: Vec<Sawn>,
}

impl Draft {
    /// A sheet of lists about the whole vehicle.
    pub(crate) fn lists(title: &str, kind: &'static str, tables: Vec<Table>) -> Self {
        Self {
            name: file_name(title),
            title: title.to_owned(),
            kind,
            group: Group::Lists,
            at: None,
            material: String::new(),
            quantity: String::new(),
            body: Body::Tables(tables),
            notes: Vec::new(),
            heed: Vec::new(),
            sawn: Vec::new(),
        }
    }
}

/// What came of one part: a sheet, or why there is none.
pub(crate) type Made = Result<Vec<Draft>, NotMade>;

/// A part that can't be made from what the build says.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct NotMade {
    pub what: String,
    pub why: String,
}

impl NotMade {
    pub(crate) fn new(what: impl Into<String>, why: impl Into<String>) -> Self {
        Self {
            what: what.into(),
            why: why.into(),
        }
    }

    pub(crate) fn text(&self) -> String {
        format!("{}: not made. {}", self.what, self.why)
    }
}

/// The file name of a thing: `Front lower arm, rear pivot` is `front-lower-arm-rear-pivot`.
pub(crate) fn file_name(title: &str) -> String {
    let words = title
        .split(|c: char| !c.is_ascii_alphanumeric())
        .filter(|word| !word.is_empty());
    words
        .map(str::to_ascii_lowercase)
        .collect::<Vec<_>>()
        .join("-")
}

/// `Front` or `Rear`, as a title starts.
pub(crate) fn axle_word(axle: AxleName) -> &'static str {
    match axle {
        AxleName::Front => "Front",
        AxleName::Rear => "Rear",
    }
}

/// `Front lower arm, rear pivot`.
pub(crate) fn place(axle: AxleName, point: PointName) -> String {
    let label = point.label();
    let mut letters = label.chars();
    let first = letters
        .next()
        .map(|c| c.to_lowercase().to_string())
        .unwrap_or_default();
    format!("{} {first}{}", axle_word(axle), letters.as_str())
}
