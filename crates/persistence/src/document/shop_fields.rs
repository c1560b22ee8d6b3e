//! The shop as the fields of its file.

use trammel_build::ShopSpec;

use super::{
    item::{Entry, Item},
    pieces::{entry, numbers, texts, triples},
};

pub(super) fn shop(s: &ShopSpec) -> Item {
    let mut entries: Vec<Entry> = texts([
        ("owner", &s.owner),
        ("revision", &s.revision),
        ("issued", &s.issued),
    ]);
    entries.extend(s.step.map(|step| entry("step", Item::Word(step.word()))));
    let both = s.both_units.map(|both| if both { "true" } else { "false" });
    entries.extend(both.map(|both| entry("both_units", Item::Word(both))));
    entries.extend(triples([("datum", s.datum)]));
    entries.extend(numbers([
        ("stock_length", s.stock_length),
        ("kerf", s.kerf),
    ]));
    let plate = |sides: [f64; 2]| Item::Tuple("", sides.map(Item::Number).to_vec());
    entries.extend(s.plate.map(|sides| entry("plate", plate(sides))));
    Item::Fields(entries)
}
