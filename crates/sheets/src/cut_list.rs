//! The cut list by stock section, with its cutting plan, and flat parts laid on plates.

use trammel_drawings::table::Table;
use trammel_fabrication::flat_part::FlatPart;
use trammel_fabrication::nest::{NestError, nest};
use trammel_fabrication::stock::{CutPiece, STEEL_DENSITY, StockSection, cutting_plan};

use crate::{
    Shop,
    draft::{Draft, Made, Sawn, file_name},
};

const TITLE: &str = "Cut list";

/// Pieces of one section and material.
struct Stock<'a> {
    section: StockSection,
    material: &'a str,
    pieces: Vec<&'a CutPiece>,
}

fn by_stock<'a>(sawn: &'a [Sawn], shop: &Shop) -> Vec<(String, Stock<'a>)> {
    let mut stocks: Vec<(String, Stock<'a>)> = Vec::new();
    for s in sawn {
        let name = format!("{}, {}", s.section.name(|v| shop.text(v)), s.material);
        match stocks.iter_mut().find(|(known, _)| *known == name) {
            Some((_, stock)) => stock.pieces.push(&s.piece),
            None => stocks.push((
                name,
                Stock {
                    section: s.section,
                    material: &s.material,
                    pieces: vec![&s.piece],
                },
            )),
        }
    }
    stocks.sort_by(|a, b| a.0.cmp(&b.0));
    stocks
}

pub(crate) fn drafts(sawn: &[Sawn], plates: &[Plates], shop: &Shop) -> Made {
    let stocks = by_stock(sawn, shop);
    let mut tables: Vec<Table> = stocks
        .iter()
        .map(|(name, stock)| pieces(name, stock, shop))
        .collect();
    tables.push(plan(&stocks, shop));
    tables.push(nested(plates, shop));
    Ok(vec![Draft::lists(TITLE, "cut list", tables)])
}

fn pieces(name: &str, stock: &Stock<'_>, shop: &Shop) -> Table {
    let mut table = Table::new(name, &["Piece", "#Length", "#Count", "#kg"]);
    let mut total = 0.0;
    for piece in &stock.pieces {
        let mass = stock.section.mass(piece.length, STEEL_DENSITY) * f64::from(piece.count);
        total += mass;
        table.row([
            piece.name.clone(),
            shop.text(piece.length),
            piece.count.to_string(),
            format!("{mass:.2}"),
        ]);
    }
    table.row([
        "all".to_owned(),
        String::new(),
        String::new(),
        format!("{total:.2}"),
    ]);
    table
}

fn plan(stocks: &[(String, Stock<'_>)], shop: &Shop) -> Table {
    let mut table = Table::new(
        "Cutting plan",
        &["Section", "#Bar", "Pieces in order", "#Left over"],
    );
    table.row([
        "all".to_owned(),
        String::new(),
        format!(
            "bars of {}, kerf {}, {} off each bar's end; flat parts counted as sawn from flat bar",
            shop.text(shop.saw.stock_length),
            shop.text(shop.saw.kerf),
            shop.text(shop.saw.end_trim)
        ),
        String::new(),
    ]);
    for (name, stock) in stocks {
        let wanted: Vec<CutPiece> = stock.pieces.iter().map(|p| (*p).clone()).collect();
        match cutting_plan(&wanted, &shop.saw) {
            Ok(plan) => {
                for (bar, number) in plan.bars.iter().zip(1..) {
                    table.row([
                        name.clone(),
                        number.to_string(),
                        in_order(&bar.pieces, shop),
                        shop.text(bar.rest),
                    ]);
                }
                table.row([
                    String::new(),
                    String::new(),
                    format!(
                        "waste {:.0} % of what is bought of {}",
                        100.0 * plan.waste(),
                        stock.material
                    ),
                    String::new(),
                ]);
            }
            Err(fault) => table.row([
                name.clone(),
                String::new(),
                fault.to_string(),
                String::new(),
            ]),
        }
    }
    table
}

/// `4 x 62.5, 2 x 412.0`.
fn in_order(pieces: &[(String, f64)], shop: &Shop) -> String {
    let mut runs: Vec<(String, usize)> = Vec::new();
    for (_, length) in pieces {
        let text = shop.text(*length);
        match runs.last_mut() {
            Some((known, count)) if *known == text => *count += 1,
            _ => runs.push((text, 1)),
        }
    }
    let runs: Vec<String> = runs
        .into_iter()
        .map(|(text, count)| format!("{count} x {text}"))
        .collect();
    runs.join(", ")
}

/// Flat parts of one material and thickness on plates.
#[derive(Clone, Debug)]
pub(crate) struct Plates {
    /// Name of its files, without the plate's number.
    pub name: String,
    pub material: String,
    pub thickness: f64,
    /// Parts as they lie, plate by plate; or why they don't go on one.
    pub plates: Result<Vec<Vec<FlatPart>>, NestError>,
    pub used: f64,
}

/// Lays flat parts on plates of the shop's size, by material and thickness.
pub(crate) fn on_plates(parts: &[FlatPart], shop: &Shop) -> Vec<Plates> {
    let mut kinds: Vec<(String, f64, Vec<FlatPart>)> = Vec::new();
    for part in parts {
        let same = |kind: &&mut (String, f64, Vec<FlatPart>)| {
            kind.0 == part.material && (kind.1 - part.thickness).abs() < 1e-6
        };
        match kinds.iter_mut().find(same) {
            Some(kind) => kind.2.push(part.clone()),
            None => kinds.push((part.material.clone(), part.thickness, vec![part.clone()])),
        }
    }
    kinds
        .into_iter()
        .map(|(material, thickness, parts)| lay(material, thickness, &parts, shop))
        .collect()
}

fn lay(material: String, thickness: f64, parts: &[FlatPart], shop: &Shop) -> Plates {
    let name = file_name(&format!("nested {thickness:.1} mm {material}"));
    let nesting = nest(parts, &shop.plate);
    let used = nesting.as_ref().map_or(0.0, |n| n.used);
    let plates = nesting.map(|n| {
        let mut plates = vec![Vec::new(); n.plates];
        for nested in &n.parts {
            if let (Some(part), Some(plate)) =
                (parts.get(nested.part), plates.get_mut(nested.plate))
            {
                plate.push(part.placed(&nested.placement));
            }
        }
        plates
    });
    Plates {
        name,
        material,
        thickness,
        plates,
        used,
    }
}

fn nested(plates: &[Plates], shop: &Shop) -> Table {
    let mut table = Table::new(
        format!(
            "Flat parts nested on plates {} x {}; kerf not taken off",
            shop.text(shop.plate.width),
            shop.text(shop.plate.height)
        ),
        &["Material", "#Thickness", "#Parts", "#Plates", "#Used"],
    );
    for p in plates {
        match &p.plates {
            Ok(laid) => table.row([
                p.material.clone(),
                shop.text(p.thickness),
                laid.iter().map(Vec::len).sum::<usize>().to_string(),
                laid.len().to_string(),
                format!("{:.0} %", 100.0 * p.used),
            ]),
            Err(fault) => table.row([fault.to_string(), shop.text(p.thickness)]),
        }
    }
    table
}
