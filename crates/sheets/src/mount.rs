//! The plate that the rack is bolted to.

use trammel_analysis::clearance;
use trammel_build::Build;
use trammel_fabrication::clearance_hole::Fit;
use trammel_fabrication::flat_part::Quantity;
use trammel_fabrication::plate::{PlateSize, mount_plate};
use trammel_strength::thread::Thread;

use crate::{
    Shop, defaults,
    draft::{Body, Draft, Group, Made, NotMade, file_name},
    tabs::sawn,
};

const TITLE: &str = "Rack mount plate";

pub(crate) fn drafts(build: &Build, shop: &Shop) -> Made {
    let fail = |why: String| NotMade::new(TITLE, why);
    let mm = build.unit.mm();
    let typed = build.front.parts.rack_mount.as_ref();
    let [width, height, thickness, along, across] = typed.map_or(defaults::MOUNT, |m| {
        [m.width, m.height, m.thickness, m.along, m.across].map(|v| v * mm)
    });
    let name = typed
        .and_then(|m| m.thread.as_deref())
        .unwrap_or(defaults::MOUNT_BOLT);
    let thread = Thread::find(name).map_err(|e| fail(e.to_string()))?;
    let size = PlateSize {
        width,
        height,
        corner: defaults::MOUNT_CORNER,
        thickness,
        hole: clearance(thread, Fit::Normal),
        spacing: [along, across],
        count: [2, 2],
    };
    let purpose = format!("{} bolt, normal", thread.designation());
    let mut part = mount_plate(TITLE, &size, &purpose).map_err(|e| fail(e.to_string()))?;
    part.quantity = Quantity {
        as_drawn: 1,
        mirrored: 0,
    };
    part.material = trammel_build::defaults::PLATE_MATERIAL.to_owned();
    let mut notes = vec![format!(
        "Four bolts {}. Weld the plate to the frame after the mock-up: the rack's line decides the toe curve.",
        thread.designation()
    )];
    if typed.is_none() {
        notes.push(format!(
            "No mount is given: holes {} by {} apart taken. Measure the feet of your rack and give the plate in the build before you cut.",
            shop.text(along),
            shop.text(across)
        ));
    }
    Ok(vec![Draft {
        heed: Vec::new(),
        name: file_name(TITLE),
        title: TITLE.to_owned(),
        kind: "template, full size",
        group: Group::Rack,
        at: None,
        material: part.material.clone(),
        quantity: part.quantity.to_string(),
        sawn: sawn(TITLE, &part, height),
        body: Body::Flat(Box::new(part)),
        notes,
    }])
}
