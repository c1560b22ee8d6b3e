//! Tabs of arm pivots, spring mounts and tie-rod joints, with their boxing plates.

use trammel_build::{AxleName, BracketSpec, Build, PointName, PointRef, Side, TabOutline};
use trammel_fabrication::flat_part::{FlatPart, Quantity};
use trammel_fabrication::stock::{CutPiece, StockSection};
use trammel_fabrication::tab::{Tab, TabForm, TabSize, boxing_plate, gusset, wants_boxing};
use trammel_geometry::Point;

use crate::{
    Shop, defaults,
    draft::{Body, Draft, Group, Made, NotMade, Sawn, file_name, place},
    feet::Feet,
    hardware::Hardware,
};

/// The joints of an axle that stand on tabs: those of the frame and the arms, and an outer tie-rod joint that has a bracket. The inner joint of a rack stands on the
/// rack end.
#[must_use]
pub fn tab_points(build: &Build, axle: AxleName) -> Vec<PointName> {
    let Some(spec) = build.axle_spec(axle) else {
        return Vec::new();
    };
    let bracketed = |point| {
        spec.parts
            .joints
            .get(&point)
            .is_some_and(|p| p.bracket.is_some())
    };
    let mut points = vec![
        PointName::UpperFrontPivot,
        PointName::UpperRearPivot,
        PointName::LowerFrontPivot,
        PointName::LowerRearPivot,
    ];
    if spec.spring.is_some() {
        points.extend([PointName::SpringChassisMount, PointName::SpringArmMount]);
    }
    if axle == AxleName::Rear {
        points.push(PointName::TieRodInner);
    }
    if bracketed(PointName::TieRodOuter) {
        points.push(PointName::TieRodOuter);
    }
    points
}

/// The tab of one joint, for editing it live.
///
/// # Errors
/// In words, why there is none.
pub fn flat_part_at(build: &Build, axle: AxleName, point: PointName) -> Result<FlatPart, String> {
    let shop = Shop::of(build);
    let hardware = Hardware::at(build, axle, point, &shop)?;
    let parts = flat(build, axle, point, &hardware, &shop)?;
    parts
        .into_iter()
        .next()
        .ok_or_else(|| "the joint has no tab".to_owned())
}

/// The bracket of a joint in the build's unit: as typed, or the one that its sheet takes.
#[must_use]
pub fn bracket_at(build: &Build, axle: AxleName, point: PointName) -> BracketSpec {
    let mm = build.unit.mm();
    let typed = build
        .axle_spec(axle)
        .and_then(|spec| spec.parts.joints.get(&point)?.bracket.clone());
    // Rounded far below what a shop can measure, so that a converted length shows no dust.
    let taken = |v: f64| (v / mm * 1e6).round() / 1e6;
    let shop = Shop::of(build);
    let width = Hardware::at(build, axle, point, &shop).map_or(defaults::TAB_WIDTH, |h| h.width);
    typed.unwrap_or_else(|| {
        BracketSpec::new(
            taken(defaults::TAB_THICKNESS),
            taken(width),
            taken(defaults::TAB_HEIGHT),
        )
    })
}

/// Sheets of one joint's tabs.
pub(crate) fn drafts(build: &Build, axle: AxleName, point: PointName, shop: &Shop) -> Made {
    let title = format!("{}: tab", place(axle, point));
    let fail = |why: String| NotMade::new(title.clone(), why);
    let hardware = Hardware::at(build, axle, point, shop).map_err(fail)?;
    let parts = flat(build, axle, point, &hardware, shop).map_err(fail)?;
    let mut made: Vec<Draft> = parts
        .into_iter()
        .map(|part| {
            let title = format!("{}: tab", part.name);
            draft(&title, (axle, point), part, hardware.taken.clone())
        })
        .collect();
    made.extend(boxing(&title, (axle, point), &hardware, shop).map_err(fail)?);
    Ok(made)
}

/// The tabs of one joint that differ: one where all of its ears are alike.
fn flat(
    build: &Build,
    axle: AxleName,
    point: PointName,
    h: &Hardware,
    shop: &Shop,
) -> Result<Vec<FlatPart>, String> {
    let spec = build.axle_spec(axle).ok_or("the build has no such axle")?;
    let bracket = spec
        .parts
        .joints
        .get(&point)
        .and_then(|p| p.bracket.as_ref());
    let form = form(bracket.and_then(|b| b.form), h);
    let foot_width = if form == TabForm::Radiused {
        2.0 * h.edge
    } else {
        h.width
    };
    let tube = bracket.and_then(|b| b.tube);
    let feet = Feet::of(build, (axle, point), tube, foot_width, h, shop);
    let alike = feet.ears.len() == 1;
    let mut parts = Vec::new();
    for ear in &feet.ears {
        let size = TabSize {
            form,
            foot: ear.foot,
            foot_width,
            height: ear.height,
            lean: 0.0,
            hole: h.hole,
            edge: h.edge,
            thickness: h.thickness,
        };
        let tab = Tab::new(size).map_err(|e| e.to_string())?;
        let name = match ear.which {
            "" => place(axle, point),
            which => format!("{}, {which}", place(axle, point)),
        };
        let mut part = tab
            .part(name, h.purpose.clone())
            .map_err(|e| e.to_string())?;
        part.quantity = ear.quantity;
        part.material.clone_from(&h.material);
        let mut notes = vec![
            pair_note(h, shop, alike && ear.quantity.mirrored == 0),
            h.mating(shop),
            weld_note(h, shop),
        ];
        notes.extend(feet.notes.iter().cloned());
        if build.has_own_right_point(axle, point) {
            notes.push("The right side has a place of its own for this joint: check the height there before you cut.".to_owned());
        }
        part.notes.splice(0..0, notes);
        parts.push(part);
    }
    Ok(parts)
}

fn form(typed: Option<TabOutline>, h: &Hardware) -> TabForm {
    match typed {
        Some(TabOutline::Straight) => TabForm::Straight,
        Some(TabOutline::Radiused) => TabForm::Radiused,
        Some(TabOutline::Tapered) => TabForm::Tapered,
        None if h.edge < h.width / 2.0 - 1e-6 => TabForm::Tapered,
        None => TabForm::Radiused,
    }
}

fn pair_note(h: &Hardware, shop: &Shop, alike: bool) -> String {
    if !alike {
        return format!(
            "The tube runs askew: the ears differ or are turned over, see the quantity. Gap of a pair {}.",
            shop.text(h.gap)
        );
    }
    let each = match h.ears {
        1 => "1 for the left joint and 1 for the right".to_owned(),
        _ => format!(
            "a pair for the left joint and a pair for the right; gap of a pair {}",
            shop.text(h.gap)
        ),
    };
    format!("Alike on both sides: {each}.")
}

fn weld_note(h: &Hardware, shop: &Shop) -> String {
    format!(
        "Edge distance {}. Fillet weld round the foot, leg {}, E{:.0}: tack it, run the travel, then weld.",
        shop.text(h.edge),
        shop.text(h.weld),
        h.electrode
    )
}

fn draft(title: &str, at: (AxleName, PointName), part: FlatPart, taken: Vec<String>) -> Draft {
    Draft {
        heed: Vec::new(),
        name: file_name(title),
        title: title.to_owned(),
        kind: "template, full size",
        group: Group::Tabs,
        at: Some(at),
        material: part.material.clone(),
        quantity: part.quantity.to_string(),
        sawn: sawn(title, &part, part.bounds().width()),
        body: Body::Flat(Box::new(part)),
        notes: taken,
    }
}

/// What is sawn for a part from flat bar of this width, mm.
pub(crate) fn sawn(title: &str, part: &FlatPart, bar: f64) -> Vec<Sawn> {
    let bounds = part.bounds();
    let across = (bounds.width() - bar).abs() < (bounds.height() - bar).abs();
    let length = if across {
        bounds.height()
    } else {
        bounds.width()
    };
    let section = StockSection::flat_bar(bar, part.thickness);
    section
        .map(|section| Sawn {
            section,
            material: part.material.clone(),
            piece: CutPiece {
                name: title.to_owned(),
                length,
                count: part.quantity.total(),
            },
        })
        .into_iter()
        .collect()
}

/// Boxing plate and gusset, where they are wanted.
fn boxing(
    title: &str,
    at: (AxleName, PointName),
    h: &Hardware,
    shop: &Shop,
) -> Result<Vec<Draft>, String> {
    let tall = wants_boxing(h.height, h.width);
    if h.ears < 2 || !(tall || h.boxing.is_some()) {
        return Ok(Vec::new());
    }
    let thickness = h.boxing.unwrap_or(h.thickness);
    // Up to where the joint's head passes.
    let height = (h.height - h.head_diameter / 2.0 - defaults::WASHER).max(h.height / 2.0);
    let base = place(at.0, at.1);
    let two = Quantity {
        as_drawn: 2,
        mirrored: 0,
    };
    let corner = defaults::BOXING_CORNER.min(h.gap.min(height) / 3.0);
    let plate = boxing_plate(
        format!("{base}, boxing plate"),
        h.gap,
        height,
        corner,
        thickness,
    )
    .map_err(|e| e.to_string())?;
    let mut parts = vec![("boxing plate", plate)];
    if tall {
        let legs = [h.height / 2.0, h.height * 0.75];
        let cut = (legs[0] / 4.0).min(defaults::BOXING_CORNER);
        let gusset = gusset(format!("{base}, gusset"), legs, cut, cut, thickness)
            .map_err(|e| e.to_string())?;
        parts.push(("gusset", gusset));
    }
    let why = format!(
        "For the tab {title}: {} high, {} wide. A boxing plate or a gusset, not both.",
        shop.text(h.height),
        shop.text(h.width)
    );
    let drafts = parts.into_iter().map(|(word, mut part)| {
        part.quantity = two;
        part.material.clone_from(&h.material);
        Draft {
            heed: Vec::new(),
            title: format!("{base}: {word}"),
            name: file_name(&format!("{base}: {word}")),
            ..draft(title, at, part, vec![why.clone()])
        }
    });
    Ok(drafts.collect())
}

/// The left joint and the right one of a point, mm.
pub(crate) fn pair(build: &Build, axle: AxleName, point: PointName) -> Option<[Point; 2]> {
    let at = |side| build.point_mm(PointRef { axle, side, point });
    Some([at(Side::Left)?, at(Side::Right)?])
}
