//! Arms, tie rod, upright and spring of one corner in one view.

use egui::{Color32, Pos2, Rect, Stroke, Vec2, vec2};
use trammel_build::{AxleName, Side};
use trammel_geometry::Point;

use super::{
    Projection,
    pen::{DASHED, Pen},
    scene::{ArmJoints, Joints, SpringJoints},
    sheet::Sheet,
    symbols::{Symbols, direction},
    wheel,
};
use crate::tokens::{Tokens, weight};

/// One corner in one view.
pub(crate) struct View<'a> {
    pub sheet: &'a Sheet,
    pub projection: Projection,
    pub axle: AxleName,
    pub tokens: &'a Tokens,
}

impl View<'_> {
    fn at(&self, p: Point) -> Pos2 {
        self.sheet.screen(self.projection, p)
    }

    /// Members and wheel at rest.
    pub(crate) fn rest(&self, pen: &mut Pen, joints: &Joints) {
        let t = self.tokens;
        let outline = Stroke::new(weight::NARROW, t.ink_soft);
        pen.outline(wheel::tyre(self.sheet, self.projection, joints), outline);
        if self.projection == Projection::Side {
            let rim = wheel::rim(self.sheet, self.projection, joints);
            pen.outline(rim, Stroke::new(weight::HAIR, t.ink_faint));
        }
        for [a, b] in upright(joints) {
            pen.line(self.at(a), self.at(b), Stroke::new(weight::NARROW, t.ink));
        }
        if let Some(spring) = &joints.spring {
            self.spring(pen, joints.arm(spring.arm), spring);
        }
        self.arm(pen, &joints.lower, t.lower_arm);
        self.arm(pen, &joints.upper, t.upper_arm);
        let rod = Stroke::new(weight::WIDE, t.tie_rod);
        pen.line(self.at(joints.inner), self.at(joints.outer), rod);
    }

    fn arm(&self, pen: &mut Pen, arm: &ArmJoints, colour: Color32) {
        let stroke = Stroke::new(weight::WIDE, colour);
        pen.path(
            [arm.front, arm.ball, arm.rear].map(|p| self.at(p)).to_vec(),
            stroke,
        );
    }

    /// The linkage in another position, faint.
    pub(crate) fn moved(&self, pen: &mut Pen, joints: &Joints) {
        let t = self.tokens;
        let mut tyre = wheel::tyre(self.sheet, self.projection, joints);
        tyre.extend(tyre.first().copied());
        let thin = |colour| Stroke::new(weight::HAIR, t.ghost(colour));
        let member = |colour| Stroke::new(weight::NARROW, t.ghost(colour));
        pen.pattern(&tyre, thin(t.ink_soft), DASHED);
        for [a, b] in upright(joints) {
            pen.pattern(&[self.at(a), self.at(b)], thin(t.ink), DASHED);
        }
        for (arm, colour) in [(&joints.lower, t.lower_arm), (&joints.upper, t.upper_arm)] {
            let run = [arm.front, arm.ball, arm.rear].map(|p| self.at(p));
            pen.pattern(&run, member(colour), DASHED);
        }
        let rod = [self.at(joints.inner), self.at(joints.outer)];
        pen.pattern(&rod, member(t.tie_rod), DASHED);
        let mut symbols = self.symbols(pen);
        for (p, colour) in [
            (joints.lower.ball, t.lower_arm),
            (joints.upper.ball, t.upper_arm),
            (joints.outer, t.tie_rod),
            (joints.inner, t.tie_rod),
            (joints.centre, t.steel),
        ] {
            symbols.ghost(self.at(p), t.ghost(colour));
        }
        // The spring's own line would only blur its zig-zag.
        if let Some(s) = &joints.spring {
            symbols.ghost(self.at(s.mount), t.ghost(t.spring));
        }
    }

    fn symbols<'p>(&'p self, pen: &'p mut Pen) -> Symbols<'p> {
        Symbols {
            pen,
            tokens: self.tokens,
            size: self.sheet.symbol_size(),
        }
    }

    /// Inks the stands of the pivots, under everything else of the corner.
    pub(crate) fn stands(&self, pen: &mut Pen, joints: &Joints) {
        let stands = self.stand_places(joints);
        let mut symbols = self.symbols(pen);
        for (at, towards, colour) in stands {
            symbols.stand(at, towards, colour);
        }
    }

    /// What the stands cover, for names and signs to keep off.
    pub(crate) fn stand_rects(&self, joints: &Joints) -> Vec<Rect> {
        let deep = 15.0 * self.sheet.symbol_size();
        let places = self.stand_places(joints).into_iter();
        places
            .map(|(at, towards, _)| {
                Rect::from_center_size(at + towards * 0.5 * deep, Vec2::splat(deep))
            })
            .collect()
    }

    /// Where stands are, which way the frame lies from there, and their colour.
    fn stand_places(&self, joints: &Joints) -> Vec<(Pos2, Vec2, Color32)> {
        let t = self.tokens;
        let towards = self.frame_direction(joints.side);
        let near = 9.0 * self.sheet.symbol_size();
        let mut places = Vec::with_capacity(6);
        for (arm, colour) in [(&joints.lower, t.lower_arm), (&joints.upper, t.upper_arm)] {
            let (front, rear) = (self.at(arm.front), self.at(arm.rear));
            // Two pivots nearly behind each other share the stand of the nearer one.
            let shared = (front - rear).length() < near;
            let depth = |p| self.projection.depth(p);
            let front_is_nearer = depth(arm.front) >= depth(arm.rear);
            if !shared || !front_is_nearer {
                places.push((rear, towards, colour));
            }
            if !shared || front_is_nearer {
                places.push((front, towards, colour));
            }
        }
        if let Some(s) = &joints.spring {
            let away = square(direction(self.at(s.mount), self.at(s.chassis)));
            places.push((self.at(s.chassis), away, t.spring));
        }
        if self.axle == AxleName::Rear {
            places.push((self.at(joints.inner), towards, t.tie_rod));
        }
        places
    }

    /// Joints, over everything else of the corner.
    pub(crate) fn joints(&self, pen: &mut Pen, joints: &Joints) {
        let t = self.tokens;
        let mut symbols = self.symbols(pen);
        symbols.centre(self.at(joints.centre), t.steel);
        if let Some(s) = &joints.spring {
            symbols.hinge(self.at(s.chassis), t.spring);
            symbols.hinge(self.at(s.mount), t.spring);
        }
        for (arm, colour) in [(&joints.lower, t.lower_arm), (&joints.upper, t.upper_arm)] {
            symbols.hinge(self.at(arm.rear), colour);
            symbols.hinge(self.at(arm.front), colour);
            let foot = arm.front + (arm.rear - arm.front) * 0.5;
            let ball = self.at(arm.ball);
            symbols.ball(ball, direction(self.at(foot), ball), colour);
        }
        let (inner, outer) = (self.at(joints.inner), self.at(joints.outer));
        symbols.ball(outer, direction(inner, outer), t.tie_rod);
        symbols.ball(inner, direction(outer, inner), t.tie_rod);
        if let Some(rack) = &joints.rack
            && self.projection != Projection::Side
        {
            symbols.mark(self.at(rack.mouth), t.steel);
            symbols.mark(self.at(rack.face), t.steel);
        }
    }

    /// Which way the frame lies from a pivot: below, or in the plan towards the centre plane.
    fn frame_direction(&self, side: Side) -> Vec2 {
        match (self.projection, side) {
            (Projection::Front | Projection::Side, _) => vec2(0.0, 1.0),
            (Projection::Plan, Side::Left) => vec2(-1.0, 0.0),
            (Projection::Plan, Side::Right) => vec2(1.0, 0.0),
        }
    }

    /// A zig-zag between the mounts, and what carries the mount on the arm.
    fn spring(&self, pen: &mut Pen, arm: &ArmJoints, spring: &SpringJoints) {
        let colour = self.tokens.spring;
        let (top, foot) = (self.at(spring.chassis), self.at(spring.mount));
        let stroke = Stroke::new(weight::NARROW, colour);
        let half = self.sheet.length(20.0).max(3.5);
        pen.path(zig_zag(top, foot, half), stroke);
        let [a, b] = cross_tube(arm, spring.mount);
        let thin = Stroke::new(weight::NARROW, self.tokens.ghost(colour));
        pen.line(self.at(a), self.at(b), thin);
        pen.line(foot, self.at(a + (b - a) * 0.5), stroke);
    }
}

/// Every straight member at rest, for names to keep off.
pub(crate) fn members(joints: &Joints) -> impl Iterator<Item = [Point; 2]> {
    let (u, l) = (&joints.upper, &joints.lower);
    let arms = [
        [u.front, u.ball],
        [u.rear, u.ball],
        [l.front, l.ball],
        [l.rear, l.ball],
        [joints.inner, joints.outer],
    ];
    let rack = joints.rack.map(|r| [r.mouth, joints.inner]);
    arms.into_iter().chain(upright(joints)).chain(rack)
}

/// The upright: between the ball joints, and square from there to the outer tie-rod joint and the wheel centre.
fn upright(joints: &Joints) -> [[Point; 2]; 3] {
    let (low, high) = (joints.lower.ball, joints.upper.ball);
    let foot = |p: Point| {
        let along = high - low;
        let t = (p - low).dot(&along) / along.norm_squared().max(1e-9);
        low + along * t.clamp(0.0, 1.0)
    };
    [
        [low, high],
        [foot(joints.outer), joints.outer],
        [foot(joints.centre), joints.centre],
    ]
}

/// A tube from leg to leg of an arm, level with a mount between its hinge and its ball joint.
fn cross_tube(arm: &ArmJoints, mount: Point) -> [Point; 2] {
    let middle = arm.front + (arm.rear - arm.front) * 0.5;
    let along = arm.ball - middle;
    let t = ((mount - middle).dot(&along) / along.norm_squared().max(1e-9)).clamp(0.0, 1.0);
    [arm.front, arm.rear].map(|pivot| pivot + (arm.ball - pivot) * t)
}

/// The screen axis nearest to a direction.
fn square(way: Vec2) -> Vec2 {
    if way.x.abs() > way.y.abs() {
        vec2(way.x.signum(), 0.0)
    } else {
        vec2(0.0, way.y.signum())
    }
}

/// A spring of `half` a coil's width between two places.
fn zig_zag(from: Pos2, to: Pos2, half: f32) -> Vec<Pos2> {
    let along = to - from;
    let length = along.length();
    if length <= 12.0 || !length.is_finite() {
        return vec![from, to];
    }
    let side = along.rot90() / length * half;
    let lead = (0.16 * length).min(2.0 * half) / length;
    let pairs = (length * (1.0 - 2.0 * lead) / (1.15 * half)).clamp(3.0, 18.0) as u8;
    let teeth = 2 * pairs;
    let tooth = |n: u8| lead + (1.0 - 2.0 * lead) * (f32::from(n) + 0.5) / f32::from(teeth);
    let mut points = vec![from, from + along * lead];
    points.extend((0..teeth).map(|n| {
        let sign = if n % 2 == 0 { 1.0 } else { -1.0 };
        from + along * tooth(n) + side * sign
    }));
    points.extend([to - along * lead, to]);
    points
}
