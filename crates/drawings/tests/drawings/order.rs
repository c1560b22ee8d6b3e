use trammel_drawings::ink::{Ink, strokes};
use trammel_drawings::part::for_the_cutter;

use crate::sample::{metrics, tab};

#[test]
fn holes_are_cut_before_the_part_falls_out_of_its_plate() {
    let order: Vec<usize> = strokes(&for_the_cutter(&tab()), &metrics())
        .iter()
        .filter_map(|stroke| match &stroke.ink {
            Ink::Path { edges, .. } => Some(edges.len()),
            _ => None,
        })
        .collect();
    // A circle is one edge, the tab's outline four.
    assert_eq!(order, [1, 4]);
}
