//! Spacers and misalignment sleeves at the joints.

use trammel_analysis::clearance;
use trammel_build::{AxleName, AxleParts, Build, PointName};
use trammel_drawings::table::Table;
use trammel_fabrication::clearance_hole::Fit;
use trammel_fabrication::spacer::{Sleeve, Spacer};
use trammel_fabrication::stock::{CutPiece, STEEL_DENSITY, StockSection};

use crate::{
    Shop, defaults,
    draft::{Draft, Made, NotMade, Sawn, place},
    hardware::Hardware,
};

const TITLE: &str = "Spacers and sleeves";
/// A ball is bored for a sleeve from this much over its bolt, mm.
const FOR_A_SLEEVE: f64 = 0.5;

pub(crate) fn drafts(build: &Build, axles: &[AxleName], shop: &Shop) -> Made {
    let mut table = Table::new(
        "Between tabs and joints, one on each side of the ball",
        &[
            "Where", "Kind", "#Length", "#Bore", "#Outside", "#Count", "#kg each",
        ],
    );
    let mut sawn = Vec::new();
    for (axle, point) in joints(build, axles) {
        let where_ = place(axle, point);
        let h = match Hardware::at(build, axle, point, shop) {
            Ok(h) => h,
            Err(why) => {
                table.row([where_, why]);
                continue;
            }
        };
        let fail = |why: String| NotMade::new(format!("{where_}: spacers"), why);
        if h.spacer <= 0.0 {
            continue;
        }
        let bore = clearance(h.thread, Fit::Close);
        let spacer = Spacer::new(h.spacer, bore, bore + 2.0 * defaults::SPACER_WALL)
            .map_err(|e| fail(e.to_string()))?;
        let [length, bore, outside] = spacer.sizes();
        let kind = kind(&h, spacer, shop);
        let count = 4;
        table.row([
            where_.clone(),
            kind,
            shop.text(length),
            shop.text(bore),
            shop.text(outside),
            count.to_string(),
            format!("{:.3}", spacer.mass(STEEL_DENSITY)),
        ]);
        let section = StockSection::round_tube(outside, (outside - bore) / 2.0)
            .map_err(|e| fail(e.to_string()))?;
        sawn.push(Sawn {
            section,
            material: trammel_build::defaults::TUBE_MATERIAL.to_owned(),
            piece: CutPiece {
                name: format!("{where_}: spacer"),
                length,
                count,
            },
        });
    }
    if table.rows().is_empty() {
        table.row(["No joint of this build has spacers.".to_owned()]);
    }
    Ok(vec![Draft {
        sawn,
        ..Draft::lists(TITLE, "list", vec![table])
    }])
}

fn joints(build: &Build, axles: &[AxleName]) -> Vec<(AxleName, PointName)> {
    let of = |axle: &AxleName| {
        let parts = build.axle_spec(*axle).map(|spec| &spec.parts.joints);
        let held = AxleParts::JOINTS
            .into_iter()
            .filter(move |p| parts.is_some_and(|j| j.contains_key(p)));
        let axle = *axle;
        held.map(move |point| (axle, point)).collect::<Vec<_>>()
    };
    axles.iter().flat_map(of).collect()
}

/// A plain spacer, or a sleeve that also fills the ball's larger bore.
fn kind(h: &Hardware, shoulder: Spacer, shop: &Shop) -> String {
    let larger = h
        .ball_bore
        .filter(|bore| *bore > h.thread.major_diameter() + FOR_A_SLEEVE);
    let sleeve = larger.and_then(|bore| Sleeve::new(shoulder, bore, h.ball_width).ok());
    sleeve.map_or_else(
        || "spacer".to_owned(),
        |s| {
            format!(
                "sleeve, spigot {} x {}",
                shop.text(s.spigot),
                shop.text(s.spigot_length)
            )
        },
    )
}
