//! What a turn and a flat of this vehicle's threads do.

use trammel_analysis::rod_per_turn;
use trammel_build::{AxleName, Build, Side};
use trammel_drawings::table::Table;
use trammel_setup::{TurnEffect, turn_effect};

use crate::CardFault;

/// Most flats of the table.
const FLATS: u32 = 12;

pub(crate) fn tables(build: &Build) -> Result<Vec<Table>, CardFault> {
    let axle = build.axle(AxleName::Front)?;
    let per_turn = rod_per_turn(build)?;
    let corner = axle.linkage(Side::Left).corner();
    let tyre = 2.0 * corner.wheel.loaded_radius;
    let effect = turn_effect(corner, per_turn, tyre)?;
    Ok(vec![
        words(build, &effect, per_turn),
        flats(build, corner, per_turn, tyre)?,
    ])
}

fn words(build: &Build, effect: &TurnEffect, per_turn: f64) -> Table {
    let unit = build.unit;
    let mut table = Table::new("One turn of the tie rod, one wheel", &["What", "#Figure"]);
    let way = if effect.per_turn > 0.0 { "IN" } else { "OUT" };
    for (what, figure) in [
        (
            "Length of rod for one turn",
            format!("{:.4} {}", unit.from_mm(per_turn), unit.sign()),
        ),
        (
            "Toe for one turn longer",
            format!("{:.3} degrees {way}", effect.per_turn.to_degrees().abs()),
        ),
        (
            "The same across the tyre's diameter",
            format!(
                "{:.3} {} {way}",
                unit.from_mm(effect.per_turn_at_tyre.abs()),
                unit.sign()
            ),
        ),
        (
            "Toe for one flat longer",
            format!("{:.3} degrees {way}", effect.per_flat.to_degrees().abs()),
        ),
        (
            "The same across the tyre's diameter",
            format!(
                "{:.4} {} {way}",
                unit.from_mm(effect.per_flat_at_tyre.abs()),
                unit.sign()
            ),
        ),
    ] {
        table.row([what.to_owned(), figure]);
    }
    table
}

fn flats(
    build: &Build,
    corner: &trammel_geometry::Corner,
    per_turn: f64,
    tyre: f64,
) -> Result<Table, CardFault> {
    let unit = build.unit;
    let mut table = Table::new(
        "Flats of the tie rod, one wheel (longer; shorter is the other way)",
        &["#Flats", "#Turns", "#Toe, degrees", "#At the tyre", "Way"],
    );
    for n in 1..=FLATS {
        let effect = turn_effect(corner, per_turn * f64::from(n) / 6.0, tyre)?;
        let way = if effect.per_turn > 0.0 { "IN" } else { "OUT" };
        table.row([
            n.to_string(),
            format!("{:.2}", f64::from(n) / 6.0),
            format!("{:.3}", effect.per_turn.to_degrees().abs()),
            format!(
                "{:.3} {}",
                unit.from_mm(effect.per_turn_at_tyre.abs()),
                unit.sign()
            ),
            way.to_owned(),
        ]);
    }
    Ok(table)
}
