//! The bracket that carries the inner tie-rod joint on the rack end.

use trammel_build::{Build, JamNutAt, JointEnd, PointName, defaults};
use trammel_strength::{
    joint_room::{EndBracket, EndRoom},
    rod_end::ListedRodEnd,
    thread::Thread,
};

use super::{Note, ProofPart, joints::Place};
use crate::RackEndStack;

impl Place<'_> {
    /// Room round the rack-end bolt's head and the jam nut; `None` where no bracket stands on a rack end.
    pub(super) fn end_room(
        &self,
        end: &JointEnd,
        listed: Option<&ListedRodEnd>,
        notes: &mut Vec<Note>,
    ) -> Result<Option<EndRoom>, String> {
        let (Some(place), Some(bracket)) = (self.view.rack_end, self.parts.bracket.as_ref()) else {
            return Ok(None);
        };
        if self.point != PointName::TieRodInner {
            return Ok(None);
        }
        let about = ProofPart::Joint(self.point).label();
        let free_length = place.free_length();
        if free_length <= 0.0 {
            let text = "The joint stands inboard of the rack's face: the room of its bracket is not checked.";
            notes.push(Note::left_out(about, text));
            return Ok(None);
        }
        let bolt = self.parts.bolt.as_ref().and_then(|b| b.thread.as_deref());
        let bolt = bolt.and_then(|name| Thread::find(name).ok());
        let head = end.head_diameter.map(|v| self.mm(v));
        let head = head
            .or(listed.map(ListedRodEnd::head_diameter))
            .or_else(|| {
                let taken = defaults::JOINT_HEAD_PER_BOLT * bolt?.major_diameter();
                let text =
                    format!("A head {taken:.1} mm across taken for the room on the rack end.");
                notes.push(Note::taken(about.clone(), text));
                Some(taken)
            });
        let Some(head_diameter) = head else {
            let text = "Its head's diameter is not given: the room on the rack end is not checked.";
            notes.push(Note::left_out(about, text));
            return Ok(None);
        };
        let body = end.body_width.map(|v| self.mm(v));
        let stack = RackEndStack::of(self.build).map_err(|e| e.to_string())?;
        let spec = EndBracket {
            free_length,
            height: self.mm(bracket.height),
            thickness: self.mm(bracket.thickness),
            bolt_head: stack.bolt_head,
            jam_nut: stack.jam_nut,
            wound_in: stack.winding,
            nut_room: defaults::RACK_END_ROOM_MM,
            head_diameter,
            body_width: body.or(listed.map(ListedRodEnd::body_width)),
        };
        EndRoom::new(spec, place.outward)
            .map(Some)
            .map_err(|e| e.to_string())
    }
}

/// What the jam nut on a rack end is tightened against, in words.
pub(super) fn jam_nut_words(at: Option<JamNutAt>) -> &'static str {
    match at {
        Some(JamNutAt::Rack) => "tightened against the rack's face",
        Some(JamNutAt::Joint) => "tightened against the joint",
        None => "taken as tightened against the rack's face (the build does not say)",
    }
}

/// Height that the bracket should have, from its base to the hole, in the build's unit: what the rack end leaves for it.
pub(super) fn height_left(build: &Build, free_length: f64) -> Option<f64> {
    let joint = build.front.parts.joints.get(&PointName::TieRodInner)?;
    let base = joint.bracket.as_ref()?.thickness * build.unit.mm();
    let height = RackEndStack::of(build).ok()?.height_left(free_length, base);
    Some(build.unit.from_mm(height)).filter(|v| *v > 0.0)
}
