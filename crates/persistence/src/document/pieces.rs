//! What the fields of every part of a build are made of.

use trammel_build::{BoltAxis, Force, Triple};

use super::item::{Entry, Item};

pub(super) fn entry(name: &'static str, item: Item) -> Entry {
    Entry { name, item }
}

pub(super) fn numbers<const N: usize>(fields: [(&'static str, Option<f64>); N]) -> Vec<Entry> {
    fields
        .into_iter()
        .filter_map(|(name, v)| v.map(|v| entry(name, Item::Number(v))))
        .collect()
}

pub(super) fn triples<const N: usize>(fields: [(&'static str, Option<Triple>); N]) -> Vec<Entry> {
    fields
        .into_iter()
        .filter_map(|(name, v)| v.map(|v| entry(name, Item::Triple(v))))
        .collect()
}

pub(super) fn bolt_axis(axis: BoltAxis) -> Item {
    match axis {
        BoltAxis::ForeAft => Item::Word("fore_aft"),
        BoltAxis::Vertical => Item::Word("vertical"),
        BoltAxis::Lateral => Item::Word("lateral"),
        BoltAxis::Direction(t) => Item::Tuple("direction", t.map(Item::Number).to_vec()),
    }
}

type Texts<'a, const N: usize> = [(&'static str, &'a Option<String>); N];

pub(super) fn texts<const N: usize>(fields: Texts<'_, N>) -> Vec<Entry> {
    fields
        .into_iter()
        .filter_map(|(name, v)| v.clone().map(|v| entry(name, Item::Text(v))))
        .collect()
}

pub(super) fn force(f: Force) -> Item {
    match f {
        Force::Newtons(v) => Item::Measure("n", v),
        Force::PoundsForce(v) => Item::Measure("lbf", v),
    }
}
