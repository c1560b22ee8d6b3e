//! Tabs of arm pivots, spring mounts and tie-rod joints, with their boxing plates.

use trammel_build::{
    AxleName, BoltAxis, Build, FrameTube, PointName, PointRef, Section, Side, TabOutline,
};
use trammel_fabrication::flat_part::{FlatPart, Quantity};
use trammel_fabrication::stock::{CutPiece, StockSection};
use trammel_fabrication::tab::{Foot, Tab, TabForm, TabSize, boxing_plate, gusset, wants_boxing};
use trammel_geometry::{Point, Vector};

use crate::{
    Shop, defaults,
    draft::{Body, Draft, Group, Made, NotMade, Sawn, file_name, place},
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
    flat(build, axle, point, &hardware, &shop)
}

/// Sheets of one joint's tabs.
pub(crate) fn drafts(build: &Build, axle: AxleName, point: PointName, shop: &Shop) -> Made {
    let title = format!("{}: tab", place(axle, point));
    let fail = |why: String| NotMade::new(title.clone(), why);
    let hardware = Hardware::at(build, axle, point, shop).map_err(fail)?;
    let part = flat(build, axle, point, &hardware, shop).map_err(fail)?;
    let mut made = vec![draft(
        &title,
        (axle, point),
        part.clone(),
        hardware.taken.clone(),
    )];
    made.extend(boxing(&title, (axle, point), &hardware, shop).map_err(fail)?);
    Ok(made)
}

fn flat(
    build: &Build,
    axle: AxleName,
    point: PointName,
    h: &Hardware,
    shop: &Shop,
) -> Result<FlatPart, String> {
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
    let mut notes = vec![pair_note(h, shop), h.mating(shop), weld_note(h, shop)];
    let foot = foot(build, (axle, point), tube, foot_width, h, shop, &mut notes);
    let size = TabSize {
        form,
        foot,
        foot_width,
        height: h.height,
        lean: 0.0,
        hole: h.hole,
        edge: h.edge,
        thickness: h.thickness,
    };
    let tab = Tab::new(size).map_err(|e| e.to_string())?;
    let mut part = tab
        .part(place(axle, point), h.purpose.clone())
        .map_err(|e| e.to_string())?;
    part.quantity = Quantity {
        as_drawn: 2 * h.ears,
        mirrored: 0,
    };
    part.material.clone_from(&h.material);
    if build.has_own_right_point(axle, point) {
        notes.push("The right side has a place of its own for this joint: check the height there before you cut.".to_owned());
    }
    part.notes.splice(0..0, notes);
    Ok(part)
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

fn pair_note(h: &Hardware, shop: &Shop) -> String {
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

/// What the foot stands on, and what the tube's place says of the height.
fn foot(
    build: &Build,
    (axle, point): (AxleName, PointName),
    tube: Option<FrameTube>,
    width: f64,
    h: &Hardware,
    shop: &Shop,
    notes: &mut Vec<String>,
) -> Foot {
    let Some(tube) = tube else {
        return Foot::Flat;
    };
    let mm = build.unit.mm();
    let at = |t: [f64; 3]| Point::new(t[0], t[1], t[2]) * mm;
    let (from, to) = (at(tube.from), at(tube.to));
    let across = tube.section.across() * mm;
    let (Some(hole), Some(along)) = (
        build.point_mm(PointRef::left(axle, point)),
        (to - from).try_normalize(1e-9),
    ) else {
        return Foot::Flat;
    };
    let foot = from + along * along.dot(&(hole - from));
    let height = (hole - foot).norm() - across / 2.0;
    if (height - h.height).abs() > shop.style.step() / 2.0 {
        notes.push(format!(
            "By the tube's line the hole stands {} over its face, and the bracket says {}. Mock it up before you cut.",
            shop.text(height),
            shop.text(h.height)
        ));
    }
    let Section::Round(..) = tube.section else {
        notes.push(format!(
            "Foot flat, on a face of square tube {}.",
            shop.text(across)
        ));
        return Foot::Flat;
    };
    round_foot(bolt(build, axle, point), along, across, width, shop, notes)
}

/// On a round tube: coped where the tube runs square through the tab.
fn round_foot(
    bolt: Vector,
    along: Vector,
    across: f64,
    width: f64,
    shop: &Shop,
    notes: &mut Vec<String>,
) -> Foot {
    let with_bolt = bolt
        .try_normalize(1e-9)
        .map_or(1.0, |b| b.dot(&along).abs());
    let angle = with_bolt.clamp(0.0, 1.0).acos().to_degrees();
    let tube = shop.text(across);
    if angle > 45.0 {
        notes.push(format!("Foot flat, along a round tube of {tube}."));
        return Foot::Flat;
    }
    if width >= across {
        notes.push(format!(
            "The tab is wider than its round tube of {tube}: the foot is drawn flat; fit it to the tube by hand."
        ));
        return Foot::Flat;
    }
    if angle > 5.0 {
        notes.push(format!("The tube stands {angle:.0}\u{b0} off square to the tab: the cope is drawn square; ease it by hand."));
    } else {
        notes.push(format!("Foot coped to a round tube of {tube}."));
    }
    Foot::Coped {
        tube_diameter: across,
    }
}

/// Which way the bolt stands: as typed, or along the arm's pivots.
fn bolt(build: &Build, axle: AxleName, point: PointName) -> Vector {
    let Some(spec) = build.axle_spec(axle) else {
        return Vector::x();
    };
    let typed = spec
        .parts
        .joints
        .get(&point)
        .and_then(|p| p.bolt.as_ref()?.direction);
    let on_rod = match point {
        PointName::TieRodInner => spec.joint_bolts.inner,
        PointName::TieRodOuter => spec.joint_bolts.outer,
        _ => None,
    };
    if let Some(direction) = typed.or(on_rod) {
        return BoltAxis::direction(direction);
    }
    let arm = match point {
        PointName::UpperFrontPivot | PointName::UpperRearPivot => &spec.upper_arm,
        _ => &spec.lower_arm,
    };
    let at = |t: [f64; 3]| Vector::new(t[0], t[1], t[2]);
    at(arm.front_pivot) - at(arm.rear_pivot)
}

fn draft(title: &str, at: (AxleName, PointName), part: FlatPart, taken: Vec<String>) -> Draft {
    Draft {
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
