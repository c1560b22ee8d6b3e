use approx::assert_relative_eq;
use proptest::prelude::*;
use trammel_fabrication::flat_part::{FlatPart, Quantity};
use trammel_fabrication::nest::{NestError, StockPlate, nest};
use trammel_fabrication::plane::{Bounds, Contour, Point, Vertex};
use trammel_fabrication::stock::{CutPiece, PlanError, SawRules, StockSection, cutting_plan};

const SAW: SawRules = SawRules {
    stock_length: 6000.0,
    kerf: 2.0,
    end_trim: 10.0,
};

fn piece(name: &str, length: f64, count: u32) -> CutPiece {
    CutPiece {
        name: name.to_owned(),
        length,
        count,
    }
}

/// Masses that steel tables print (from memory): 25.4 x 2.1 tube 1.21 kg/m, flat 40 x 5 1.57 kg/m, round 20 2.47 kg/m.
#[test]
fn masses_of_the_steel_tables() {
    let per_metre = |section: StockSection| section.mass(1000.0, 7850.0);
    assert_relative_eq!(
        per_metre(StockSection::round_tube(25.4, 2.1).unwrap()),
        1.21,
        epsilon = 5e-3
    );
    assert_relative_eq!(
        per_metre(StockSection::flat_bar(40.0, 5.0).unwrap()),
        1.57,
        epsilon = 5e-3
    );
    assert_relative_eq!(
        per_metre(StockSection::round_bar(20.0).unwrap()),
        2.47,
        epsilon = 5e-3
    );
    assert_relative_eq!(
        StockSection::square_tube(40.0, 3.0).unwrap().area(),
        40.0 * 40.0 - 34.0 * 34.0,
        epsilon = 1e-9
    );
    assert!(StockSection::round_tube(25.4, 12.7).is_err());
}

#[test]
fn kerf_counts_between_pieces_and_not_after_the_last() {
    // Three pieces of 1995: 3 x 1995 + 2 x 2 = 5989, of 5990 usable.
    let plan = cutting_plan(&[piece("a", 1995.0, 3)], &SAW).unwrap();
    assert_eq!(plan.bars.len(), 1);
    assert_eq!(plan.least_bars, 1);
    let four = cutting_plan(&[piece("a", 1996.0, 3)], &SAW).unwrap();
    assert_eq!(four.bars.len(), 2);
}

#[test]
fn a_plan_by_hand() {
    let pieces = [
        piece("short", 900.0, 2),
        piece("long", 4000.0, 2),
        piece("middle", 1900.0, 2),
    ];
    let plan = cutting_plan(&pieces, &SAW).unwrap();
    let names: Vec<Vec<&str>> = plan
        .bars
        .iter()
        .map(|bar| bar.pieces.iter().map(|p| p.0.as_str()).collect())
        .collect();
    assert_eq!(
        names,
        [
            vec!["long", "middle"],
            vec!["long", "middle"],
            vec!["short", "short"]
        ]
    );
    assert_relative_eq!(plan.used, 13_600.0);
    assert_relative_eq!(plan.bought, 18_000.0);
    assert_relative_eq!(plan.waste(), 1.0 - 13_600.0 / 18_000.0);
    assert_relative_eq!(plan.bars[0].rest, 5990.0 - 5900.0 - 4.0);
}

#[test]
fn what_no_bar_gives_is_named() {
    let refused = cutting_plan(&[piece("rail", 5991.0, 1)], &SAW).unwrap_err();
    assert!(
        matches!(&refused, PlanError::TooLong { name, .. } if name == "rail"),
        "{refused}"
    );
    assert!(matches!(
        cutting_plan(&[piece("rail", 10.0, u32::MAX)], &SAW),
        Err(PlanError::TooMany { .. })
    ));
    assert!(cutting_plan(&[piece("rail", f64::NAN, 1)], &SAW).is_err());
    assert!(cutting_plan(&[], &SAW).unwrap().bars.is_empty());
}

proptest! {
    /// Every piece is sawn once; no bar gives more than it has; never more bars than the bound of the method.
    #[test]
    fn plans_hold(lengths in prop::collection::vec(50.0..3000.0f64, 1..40)) {
        let pieces: Vec<CutPiece> = lengths.iter().map(|&length| piece("p", length, 1)).collect();
        let plan = cutting_plan(&pieces, &SAW).unwrap();
        prop_assert_eq!(plan.bars.iter().map(|bar| bar.pieces.len()).sum::<usize>(), lengths.len());
        for bar in &plan.bars {
            let sawn: f64 = bar.pieces.iter().map(|p| p.1 + SAW.kerf).sum::<f64>() - SAW.kerf;
            prop_assert!(sawn <= 5990.0 + 1e-6);
        }
        prop_assert!(plan.bars.len() as f64 <= 2.0 * f64::from(plan.least_bars));
    }
}

fn plate(name: &str, width: f64, height: f64, quantity: Quantity) -> FlatPart {
    let outline = Contour::rectangle(Point::origin(), Point::new(width, height), 0.0).unwrap();
    FlatPart {
        quantity,
        ..FlatPart::plain(name, outline, 5.0)
    }
}

const SHEET: StockPlate = StockPlate {
    width: 500.0,
    height: 300.0,
    margin: 10.0,
    gap: 5.0,
};

#[test]
fn mirrored_parts_are_turned_over() {
    let outline = Contour::new(vec![
        Vertex::straight(0.0, 0.0),
        Vertex::straight(100.0, 0.0),
        Vertex::straight(0.0, 40.0),
    ])
    .unwrap();
    let quantity = Quantity {
        as_drawn: 1,
        mirrored: 1,
    };
    let part = FlatPart {
        quantity,
        ..FlatPart::plain("wedge", outline, 5.0)
    };
    let nesting = nest(std::slice::from_ref(&part), &SHEET).unwrap();
    assert_eq!(nesting.plates, 1);
    assert_eq!(
        nesting
            .parts
            .iter()
            .filter(|n| n.placement.mirrored)
            .count(),
        1
    );
}

#[test]
fn a_part_larger_than_the_plate_is_named() {
    let many = Quantity {
        as_drawn: 1,
        mirrored: 0,
    };
    assert!(matches!(
        nest(&[plate("deck", 481.0, 100.0, many)], &SHEET),
        Err(NestError::TooLarge { .. })
    ));
    assert!(
        nest(&[plate("deck", 100.0, 480.0, many)], &SHEET).is_ok(),
        "turned it fits"
    );
    assert!(nest(&[], &SHEET).unwrap().parts.is_empty());
}

proptest! {
    /// Nothing overlaps, nothing leaves the plate.
    #[test]
    fn nested_parts_keep_apart(sizes in prop::collection::vec((10.0..280.0f64, 10.0..280.0f64, 1u32..4), 1..12)) {
        let parts: Vec<FlatPart> = sizes.iter().map(|&(w, h, n)| plate("p", w, h, Quantity { as_drawn: n, mirrored: n - 1 })).collect();
        let nesting = nest(&parts, &SHEET).unwrap();
        let placed: Vec<(usize, Bounds)> = nesting.parts.iter().map(|n| (n.plate, parts[n.part].placed(&n.placement).bounds())).collect();
        prop_assert_eq!(placed.len() as u32, parts.iter().map(|p| p.quantity.total()).sum::<u32>());
        for (i, (plate, a)) in placed.iter().enumerate() {
            prop_assert!(a.min.x > 10.0 - 1e-6 && a.min.y > 10.0 - 1e-6 && a.max.x < 490.0 + 1e-6 && a.max.y < 290.0 + 1e-6);
            for (other, b) in placed.iter().skip(i + 1).map(|(p, b)| (p, b)) {
                let apart = a.max.x + 4.999 < b.min.x || b.max.x + 4.999 < a.min.x || a.max.y + 4.999 < b.min.y || b.max.y + 4.999 < a.min.y;
                prop_assert!(plate != other || apart, "{a:?} {b:?}");
            }
        }
    }
}
