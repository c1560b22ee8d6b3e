//! The bracket on the rack end that carries the inner tie-rod joint.

use trammel_analysis::{RackEndStack, clearance};
use trammel_build::{AxleName, Build, PointName, Side, defaults as usual};
use trammel_fabrication::clearance_hole::Fit;
use trammel_fabrication::flat_part::Quantity;
use trammel_fabrication::rack_bracket::{
    BracketFit, BracketSize, EndBolt, Joint, Making, RackBracket, fit,
};
use trammel_strength::thread::Thread;

use crate::{
    Shop,
    draft::{Body, Draft, Group, Made, NotMade, file_name},
    hardware::Hardware,
    tabs::sawn,
};

const TITLE: &str = "Rack-end bracket";
const AT: (AxleName, PointName) = (AxleName::Front, PointName::TieRodInner);

/// Sheets of base and ears.
pub(crate) fn drafts(build: &Build, shop: &Shop) -> Made {
    let fail = |why: String| NotMade::new(TITLE, why);
    let hardware = Hardware::at(build, AT.0, AT.1, shop).map_err(fail)?;
    let room = Room::of(build, &hardware).map_err(fail)?;
    let (bracket, found) = room.bracket(&hardware, shop).map_err(fail)?;
    let parts = bracket.parts(TITLE).map_err(|e| fail(e.to_string()))?;
    let notes = notes(&room, &hardware, &found, shop);
    let heed = heed(&found, shop);
    let count = |name: &str| if name.contains("ear") { 4 } else { 2 };
    let drafts = parts.into_iter().map(|mut part| {
        part.quantity = Quantity {
            as_drawn: count(&part.name),
            mirrored: 0,
        };
        part.material.clone_from(&hardware.material);
        let title = part.name.clone();
        Draft {
            heed: heed.clone(),
            name: file_name(&title),
            kind: "template, full size",
            group: Group::Rack,
            at: Some(AT),
            material: part.material.clone(),
            quantity: part.quantity.to_string(),
            sawn: sawn(&title, &part, hardware.width),
            body: Body::Flat(Box::new(part)),
            notes: notes.clone(),
            title,
        }
    });
    Ok(drafts.collect())
}

/// What there is between rack face and joint, mm.
struct Room {
    thread: Thread,
    /// From the rack's face to the joint, along the rack.
    free: f64,
    /// What the joint stands off the rack's line.
    aside: f64,
    stack: RackEndStack,
    engagement: f64,
    thread_depth: f64,
    taken: Vec<String>,
}

impl Room {
    fn of(build: &Build, h: &Hardware) -> Result<Self, String> {
        let spec = &build.front.rack_end;
        let mm = build.unit.mm();
        let model = build.axle(AxleName::Front).map_err(|e| e.to_string())?;
        let rack = model.rack.ok_or("the build has no rack")?;
        let end = rack.end(Side::Left);
        let mut taken = h.taken.clone();
        let name = spec.thread.as_deref().unwrap_or(usual::THREAD);
        if spec.thread.is_none() {
            taken.push(format!("No rack-end thread is given: {name} taken."));
        }
        let thread = Thread::find(name).map_err(|e| e.to_string())?;
        let major = thread.major_diameter();
        let stack = RackEndStack::of(build).map_err(|e| e.to_string())?;
        let engagement = spec.engagement.map_or(major, |v| v * mm);
        let least = engagement + stack.winding;
        Ok(Self {
            thread,
            free: end.free_length(),
            aside: end.bracket_offset().norm(),
            stack,
            engagement,
            thread_depth: spec.bore_depth.map_or(least, |v| v * mm).max(engagement),
            taken,
        })
    }

    fn bracket(&self, h: &Hardware, shop: &Shop) -> Result<(RackBracket, BracketFit), String> {
        let stand_off = self.stack.height_left(self.free, h.thickness);
        let head_height = self.stack.bolt_head;
        let least = head_height + h.head_diameter / 2.0;
        if stand_off < least {
            return Err(format!(
                "The inner joint stands {} from the rack's face, and a bracket wants {} there: jam nut, thread showing, base, bolt head and half of the joint's head. \
                 The joint's own shank, or a longer end, has to carry it.",
                shop.text(self.free),
                shop.text(self.free - stand_off + least)
            ));
        }
        let bracket = RackBracket::new(
            BracketSize {
                width: h.width,
                thickness: h.thickness,
                gap: h.gap,
                stand_off,
                edge: h.edge,
                ear_hole: h.hole,
                base_hole: clearance(self.thread, Fit::Close),
            },
            Making::Welded,
        )
        .map_err(|e| e.to_string())?;
        let joint = Joint {
            ball_width: h.ball_width,
            head_diameter: h.head_diameter,
            washer: h.spacer,
        };
        let bolt = EndBolt {
            head_height,
            head_width: usual::HEAD_WIDTH_PER_THREAD * self.thread.major_diameter(),
            jam_nut: self.stack.jam_nut,
            engagement: self.engagement,
            exposed: self.stack.exposed(),
            adjustment: self.stack.winding,
            thread_depth: self.thread_depth,
        };
        let found = fit(&bracket, &joint, &bolt).map_err(|e| e.to_string())?;
        Ok((bracket, found))
    }
}

/// What is left of each room after everything, mm; below nought it does not go.
fn left_over(fit: &BracketFit) -> [(&'static str, f64); 5] {
    [
        ("joint to bolt head", fit.joint_to_bolt_head),
        ("bolt head between the ears", fit.head_between_ears),
        ("jam nut to rack", fit.nut_to_rack),
        ("thread engaged", fit.least_engagement),
        ("bolt's end to end of thread", fit.bolt_end_to_thread_end),
    ]
}

fn heed(fit: &BracketFit, shop: &Shop) -> Vec<String> {
    let short = left_over(fit).into_iter().filter(|(_, mm)| *mm < 0.0);
    short
        .map(|(what, mm)| format!("DOES NOT GO: {what} {}.", shop.text(mm)))
        .collect()
}

fn notes(room: &Room, h: &Hardware, fit: &BracketFit, shop: &Shop) -> Vec<String> {
    let text = |mm: f64| shop.text(mm);
    let left: Vec<String> = left_over(fit)
        .map(|(what, mm)| format!("{what} {}", text(mm)))
        .to_vec();
    let mut notes = vec![
        format!(
            "One base and two ears for each side, from one flat bar; measure every hole from the datum edge. Gap between the ears {}, play beside joint and spacers {}.",
            text(h.gap),
            text(fit.play)
        ),
        format!(
            "Left after everything, over {} of adjustment each way: {}. Thread showing outside the jam nut when wound out {}.",
            text(room.stack.winding),
            left.join("; "),
            text(fit.most_exposed)
        ),
        format!(
            "Rack-end bolt {}, {} under its head. {}",
            room.thread.designation(),
            text(fit.bolt_length),
            h.mating(shop)
        ),
        format!(
            "Weld the ears to the base all round, leg {}, E{:.0}.",
            text(h.weld),
            h.electrode
        ),
    ];
    if room.aside > shop.style.step() / 2.0 {
        notes.push(format!(
            "The joint stands {} off the rack's own line: turn the bracket's ears that way, and prove the rack end with it.",
            text(room.aside)
        ));
    }
    notes.extend(room.taken.iter().cloned());
    notes
}
