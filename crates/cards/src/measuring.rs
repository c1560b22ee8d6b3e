//! The sheet to measure parts by: what to measure, from where to where, and columns to write in.

use trammel_build::{LengthUnit, measuring_guide as guide};
use trammel_drawings::{
    metrics::Metrics,
    pdf,
    sheet::{self, Content, MADE_WITH, Paper, SheetSet, TitleBlock},
    table::{self, Table},
};

use crate::{CardFault, sketches};

/// Before the figures (common practice, no source).
const RULES: [&str; 5] = [
    "Measure between centres of balls and holes, never between bolt heads: put a straight rod of the hole's size through, or take edge to edge of both on the same side.",
    "A burned tape starts at 1 in or 100 mm: write down what it shows and where it started, take off later.",
    "Joints without play, bolts tight; a part that is bent is replaced, not measured.",
    "Measure every figure twice, the second time from the other end. Write the worse of how well both agree.",
    "Left and right each for itself, also when they should be a pair: what differs is found here and not on the vehicle.",
];

/// The tables of the sheet.
#[must_use]
pub fn measuring_tables(unit: LengthUnit) -> Vec<Table> {
    let mut rules = Table::new("Before measuring", &["#", "What to heed"]);
    for (text, n) in RULES.iter().zip(1..) {
        rules.row([n.to_string(), (*text).to_owned()]);
    }
    let pair = [
        "Figure",
        "From where to where",
        "Unit",
        "Left as read",
        "Right as read",
    ];
    let one = [
        "Figure",
        "From where to where",
        "Unit",
        "First reading",
        "Second reading",
    ];
    let length = unit.sign();
    let (rate, force) = match unit {
        LengthUnit::Inch => ("lb/in", "lbf"),
        LengthUnit::Millimetre => ("N/mm", "N"),
    };
    let mut spindle = table("Spindle", &pair, &guide::SPINDLE, |what| match what {
        "Inclination" => "degrees",
        _ => length,
    });
    spindle.row(
        [
            "Steering arm",
            "Whether its hole is ahead of the steering axis or behind it.",
            "word",
        ]
        .map(str::to_owned),
    );
    let mut rack = table("Rack", &one, &guide::RACK, |_| length);
    rack.row(
        [
            "End thread",
            "Diameter and pitch by a thread gauge, such as 1/2-20 or M12x1.25.",
            "word",
        ]
        .map(str::to_owned),
    );
    let spring = table("Spring unit", &pair, &guide::SPRING, |what| match what {
        "Rate" => rate,
        _ => length,
    });
    let joint = table("Joint", &one, &guide::JOINT, |what| match what {
        "Swivel" => "degrees",
        "Rating" => force,
        _ => length,
    });
    vec![rules, spindle, rack, spring, joint]
}

fn table(
    title: &str,
    heads: &[&str],
    figures: &[guide::Measure],
    unit: impl Fn(&str) -> &'static str,
) -> Table {
    let mut table = Table::new(title, heads);
    for m in figures {
        table.row([m.what.to_owned(), m.how.to_owned(), unit(m.what).to_owned()]);
    }
    table
}

/// The sheet as a PDF; the same words as the form of the drawer.
///
/// # Errors
/// [`CardFault::Drawing`].
pub fn measuring_pdf(unit: LengthUnit, paper: Paper) -> Result<Vec<u8>, CardFault> {
    let metrics = Metrics::new()?;
    let title = "Sheet to measure parts by";
    let block = TitleBlock {
        title: title.to_owned(),
        supplementary: "drawer of measured parts".to_owned(),
        kind: "measuring sheet".to_owned(),
        units: unit.sign().to_owned(),
        scale: "-".to_owned(),
        made_with: MADE_WITH.to_owned(),
        ..TitleBlock::default()
    };
    let content = Content {
        caution: vec![
            "A part of unknown heat treatment is not welded, cut or drilled until it is known."
                .to_owned(),
        ],
        ..Content::default()
    };
    let tables = table::lay_out(paper, &block, &measuring_tables(unit), &content, &metrics);
    let sketches = Content {
        drawing: sketches::drawing(),
        notes: vec![
            "Not to scale. Balls and eyes are measured at their centres; the words are in the tables."
                .to_owned(),
        ],
        ..content
    };
    let sketched = TitleBlock {
        title: "Where each figure is taken".to_owned(),
        ..block
    };
    let set = SheetSet {
        title: title.to_owned(),
        pages: [
            tables,
            sheet::lay_out(paper, &sketched, &sketches, &metrics),
        ]
        .concat(),
    };
    Ok(pdf::write(&set, &metrics)?)
}
