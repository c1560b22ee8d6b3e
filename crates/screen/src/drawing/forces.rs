//! Force arrows to scale, with the scale's bar, and the part that is marked.

use egui::{Align2, Pos2, Rect, Stroke, Vec2, pos2, vec2};
use trammel_analysis::ProofPart;
use trammel_build::PointName;
use trammel_geometry::{ArmName, Point, Vector};

use super::{
    Projection,
    pen::Pen,
    scene::{ArmJoints, Joints},
    sheet::Sheet,
};
use crate::tokens::{Tokens, weight};

/// A force at its place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Arrow {
    /// Where it acts, vehicle axes, mm.
    pub at: Point,
    /// How far its arrow reaches, mm on the vehicle.
    pub reach: Vector,
    /// The point whose colour it has; none for the load on the wheel.
    pub of: Option<PointName>,
}

/// The forces of a corner as they are drawn.
#[derive(Clone, Debug, PartialEq)]
pub struct ForcePicture {
    /// One for each force.
    pub arrows: Vec<Arrow>,
    /// Length of the scale's bar, mm on the vehicle.
    pub bar_mm: f64,
    /// The force that it stands for.
    pub bar_text: String,
    /// The load case.
    pub title: String,
}

/// Length and half width of an arrow's head, points.
const HEAD: Vec2 = vec2(9.0, 3.6);

impl ForcePicture {
    /// The arrows in a view: each starts or ends at its joint.
    pub(crate) fn ink(
        &self,
        pen: &mut Pen,
        sheet: &Sheet,
        projection: Projection,
        tokens: &Tokens,
    ) {
        for arrow in &self.arrows {
            let colour = arrow.of.map_or(tokens.accent, |p| tokens.point(p));
            // The load pushes on the wheel and the spring on its mount: their heads are there.
            let [from, to] = match arrow.of {
                None | Some(PointName::SpringChassisMount) => [arrow.at - arrow.reach, arrow.at],
                Some(_) => [arrow.at, arrow.at + arrow.reach],
            };
            let ends = [from, to].map(|p| sheet.screen(projection, p));
            let width = if arrow.of.is_some() {
                weight::SYMBOL
            } else {
                weight::WIDE
            };
            head_and_shaft(pen, ends, Stroke::new(width, colour), tokens);
        }
    }

    /// The bar that says how long a force is drawn.
    pub(crate) fn bar(&self, pen: &mut Pen, sheet: &Sheet, table: Rect, tokens: &Tokens) -> Rect {
        let length = sheet.length(self.bar_mm);
        let text = format!("{}: forces to scale, bar {}", self.title, self.bar_text);
        let size = pen.text_size(&text);
        let room = vec2(size.x.max(length) + 14.0, size.y + 16.0);
        let at = Rect::from_min_size(
            pos2(table.left() + 8.0, table.bottom() - room.y - 8.0),
            room,
        );
        let back = tokens.wash(tokens.table, 0.9);
        pen.plate(at, back, Stroke::new(weight::HAIR, tokens.rule));
        let (left, y) = (at.left() + 7.0, at.bottom() - 7.0);
        let stroke = Stroke::new(weight::SYMBOL, tokens.ink);
        let right = left + length.min(room.x - 14.0);
        pen.line(pos2(left, y), pos2(right, y), stroke);
        for x in [left, right] {
            pen.line(pos2(x, y - 3.0), pos2(x, y + 3.0), stroke);
        }
        pen.text(at.min + vec2(7.0, 3.0), Align2::LEFT_TOP, &text, tokens.ink);
        at
    }
}

fn head_and_shaft(pen: &mut Pen, [from, to]: [Pos2; 2], stroke: Stroke, tokens: &Tokens) {
    let way = to - from;
    let length = way.length();
    // Seen end on there is nothing to draw but a dot.
    if !(length.is_finite() && length > 2.0) {
        pen.disc(from, 2.0, stroke.color);
        return;
    }
    let (along, across) = (way / length, way.rot90() / length);
    let head = HEAD * (length / (1.6 * HEAD.x)).min(1.0);
    let neck = to - along * head.x;
    let under = Stroke::new(stroke.width + 1.6, tokens.wash(tokens.table, 0.8));
    pen.line(from, neck, under);
    pen.line(from, neck, stroke);
    if !pen.clip().contains(to) {
        return;
    }
    let corners = vec![to, neck + across * head.y, neck - across * head.y];
    pen.filled(corners, stroke.color, Stroke::NONE);
}

/// Washes the part that is looked at.
pub(crate) fn mark(
    pen: &mut Pen,
    sheet: &Sheet,
    projection: Projection,
    joints: &Joints,
    part: ProofPart,
    tokens: &Tokens,
) {
    let at = |p: Point| sheet.screen(projection, p);
    let size = sheet.symbol_size();
    let stroke = Stroke::new(9.0 * size, tokens.wash(tokens.accent, 0.34));
    for [a, b] in lines(joints, part) {
        pen.line(at(a), at(b), stroke);
    }
    if let Some(p) = place(joints, part) {
        pen.disc(at(p), 13.0 * size, tokens.wash(tokens.accent, 0.22));
        pen.ring(
            at(p),
            13.0 * size,
            Stroke::new(weight::SYMBOL, tokens.accent),
        );
    }
}

/// The lines of a part; none for what sits at a point.
fn lines(joints: &Joints, part: ProofPart) -> Vec<[Point; 2]> {
    use trammel_strength::clearance::Pair;
    let rod = [joints.inner, joints.outer];
    let arm = |name: ArmName| {
        let ArmJoints { front, rear, ball } = *joints.arm(name);
        vec![[front, ball], [ball, rear]]
    };
    let spring = || joints.spring.iter().map(|s| [s.chassis, s.mount]).collect();
    match part {
        ProofPart::RackEnd => joints
            .rack
            .iter()
            .map(|rack| [rack.face, joints.inner])
            .collect(),
        ProofPart::TieRod => vec![rod],
        ProofPart::ArmTubes(name) => arm(name),
        ProofPart::Steering => joints
            .rack
            .iter()
            .map(|r| [r.mouth, joints.inner])
            .collect(),
        ProofPart::Gap(pair) => match pair {
            Pair::TieRodAndArm(name) => [vec![rod], arm(name)].concat(),
            Pair::TieRodAndTyre | Pair::TieRodAndRim => vec![rod],
            Pair::ArmAndTyre(name) | Pair::ArmAndRim(name) => arm(name),
            Pair::SpringAndTieRod => [vec![rod], spring()].concat(),
            Pair::SpringAndOtherArm | Pair::SpringAndTyre => spring(),
        },
        ProofPart::Bolt(_) | ProofPart::Bracket(_) | ProofPart::Joint(_) => Vec::new(),
    }
}

/// The place of what sits at a point.
fn place(joints: &Joints, part: ProofPart) -> Option<Point> {
    match part {
        ProofPart::Bolt(point) | ProofPart::Bracket(point) | ProofPart::Joint(point) => {
            joints.at(point)
        }
        _ => None,
    }
}
