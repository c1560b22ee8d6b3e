//! Instant-centre lines in the front view.
//!
//! Two centres are shown and named: the trade's construction, where the planes of both arms are cut by the plane of the contact point, and the centre
//! that the upright's velocity gives, which also knows castor and the tie rod. The roll centre belongs to the second.

use egui::{Color32, Pos2, Rect, Stroke, vec2};
use trammel_build::Side;
use trammel_geometry::Point;

use super::{
    Projection,
    callout::{Callouts, Near},
    pen::{DASHED, DOTTED, Pen},
    scene::{PosedSide, Scene},
    sheet::Sheet,
};
use crate::tokens::{Tokens, weight};

/// A line in the front view: `normal . (y, z) = offset`.
#[derive(Clone, Copy, Debug)]
pub(crate) struct FrontLine {
    normal: [f64; 2],
    offset: f64,
}

impl FrontLine {
    /// The plane through three points, cut by the plane at `x`. `None` where the plane stands square to the view.
    pub(crate) fn cut(points: [Point; 3], x: f64) -> Option<Self> {
        let [a, b, c] = points;
        let n = (b - a).cross(&(c - a));
        let size = n.y.hypot(n.z);
        (size > 1e-9 * n.norm().max(f64::MIN_POSITIVE)).then(|| Self {
            normal: [n.y / size, n.z / size],
            offset: (n.dot(&a.coords) - n.x * x) / size,
        })
    }

    /// The line through two points as they are seen. `None` where they fall together.
    pub(crate) fn through(a: Point, b: Point) -> Option<Self> {
        let (dy, dz) = (b.y - a.y, b.z - a.z);
        let size = dy.hypot(dz);
        (size > 1e-9).then(|| Self {
            normal: [-dz / size, dy / size],
            offset: (-dz * a.y + dy * a.z) / size,
        })
    }

    /// The point of the line nearest to (y, z).
    pub(crate) fn nearest(&self, [y, z]: [f64; 2]) -> [f64; 2] {
        let [a, b] = self.normal;
        let off = a * y + b * z - self.offset;
        [y - a * off, z - b * off]
    }

    /// Where two lines meet; `None` where they are level to within a micrometre in a kilometre.
    pub(crate) fn meets(&self, other: &Self) -> Option<[f64; 2]> {
        let ([a, b], [c, d]) = (self.normal, other.normal);
        let sine = a * d - b * c;
        (sine.abs() > 1e-9).then(|| {
            [
                (self.offset * d - other.offset * b) / sine,
                (a * other.offset - c * self.offset) / sine,
            ]
        })
    }
}

/// Both arms' lines and the tie rod's, in the kernel's left-hand frame.
struct Lines {
    upper: Option<FrontLine>,
    lower: Option<FrontLine>,
    rod: Option<FrontLine>,
    centre: Option<[f64; 2]>,
}

impl Lines {
    fn of(posed: &PosedSide) -> Self {
        let (corner, pose) = (posed.linkage.corner(), &posed.pose);
        let x = pose.contact.x;
        let (u, l) = (&corner.upper_arm, &corner.lower_arm);
        let upper = FrontLine::cut([u.front_pivot, u.rear_pivot, pose.upper_ball_joint], x);
        let lower = FrontLine::cut([l.front_pivot, l.rear_pivot, pose.lower_ball_joint], x);
        Self {
            upper,
            lower,
            rod: FrontLine::through(pose.tie_rod_inner, pose.tie_rod_outer),
            centre: upper.zip(lower).and_then(|(u, l)| u.meets(&l)),
        }
    }
}

/// Draws them for one side.
pub(crate) fn instant_centres(
    pen: &mut Pen,
    callouts: &mut Callouts,
    sheet: &Sheet,
    cell: Rect,
    scene: &Scene,
    side: Side,
    tokens: &Tokens,
) {
    let Some(posed) = scene.pose(side) else {
        return;
    };
    let before = pen.set_clip(cell.intersect(pen.clip()));
    let mut draw = Draw {
        pen,
        callouts,
        sheet,
        cell,
        posed,
        tokens,
    };
    draw.arms_and_rod(&Lines::of(posed));
    draw.velocity_centre();
    draw.roll_centre();
    pen.set_clip(before);
}

struct Draw<'a> {
    pen: &'a mut Pen,
    callouts: &'a mut Callouts,
    sheet: &'a Sheet,
    cell: Rect,
    posed: &'a PosedSide,
    tokens: &'a Tokens,
}

impl Draw<'_> {
    /// Place on the screen of (y, z) in the kernel's left-hand frame.
    fn at(&self, [y, z]: [f64; 2]) -> Pos2 {
        let p = self
            .posed
            .vehicle(Point::new(self.posed.pose.contact.x, y, z));
        self.sheet.screen(Projection::Front, p)
    }

    fn arms_and_rod(&mut self, lines: &Lines) {
        let pose = self.posed.pose;
        let t = self.tokens;
        let arms = [
            (
                lines.upper,
                pose.upper_ball_joint,
                t.upper_arm,
                "upper arm's plane",
            ),
            (
                lines.lower,
                pose.lower_ball_joint,
                t.lower_arm,
                "lower arm's plane",
            ),
            (lines.rod, pose.tie_rod_outer, t.tie_rod, "tie rod's line"),
        ];
        for (line, outer, colour, name) in arms {
            let Some(line) = line else { continue };
            let from = line.nearest([outer.y, outer.z]);
            let to = match lines.centre {
                Some(centre) => line.nearest(centre),
                // Parallel arms meet nowhere: the lines run off to the other side.
                None => line.nearest([outer.y - 20.0 * pose.contact.y.abs().max(100.0), outer.z]),
            };
            self.line(from, to, colour);
            self.name_line(from, to, name, colour);
        }
        if let Some(centre) = lines.centre {
            self.mark(centre, t.ink_soft, "instant centre by the arms' planes");
        }
    }

    fn velocity_centre(&mut self) {
        let Some(centre) = self.posed.measures.instant_centre else {
            return;
        };
        let (contact, t) = (self.posed.pose.contact, self.tokens);
        let place = [centre.y, centre.z];
        let stroke = Stroke::new(weight::HAIR, t.accent);
        let ends = [self.at([contact.y, contact.z]), self.at(place)];
        self.pen.pattern(&ends, stroke, DOTTED);
        self.mark(place, t.accent, "instant centre by velocity");
    }

    fn roll_centre(&mut self) {
        let contact = self.posed.pose.contact;
        let height = contact.z + self.posed.measures.roll_centre_height;
        let (from, at) = (self.at([contact.y, contact.z]), self.at([0.0, height]));
        let t = self.tokens;
        self.pen
            .pattern(&[from, at], Stroke::new(weight::HAIR, t.accent), DOTTED);
        let r = 4.6 * self.sheet.symbol_size();
        let stroke = Stroke::new(weight::NARROW, t.accent);
        self.pen.disc(at, r, t.table);
        self.pen.ring(at, r, stroke);
        self.pen
            .line(at - vec2(r + 3.0, 0.0), at + vec2(r + 3.0, 0.0), stroke);
        self.pen
            .line(at - vec2(0.0, r + 3.0), at + vec2(0.0, r + 3.0), stroke);
        if self.cell.contains(at) {
            self.callouts.add(Near {
                at,
                text: "roll centre".to_owned(),
                colour: t.accent,
                within: self.cell,
            });
        }
    }

    fn line(&mut self, from: [f64; 2], to: [f64; 2], colour: Color32) {
        let ends = [self.at(from), self.at(to)];
        let stroke = Stroke::new(weight::NARROW, self.tokens.ghost(colour));
        self.pen.pattern(&ends, stroke, DASHED);
    }

    /// The name of a line along its visible part.
    fn name_line(&mut self, from: [f64; 2], to: [f64; 2], name: &str, colour: Color32) {
        let cut = super::pen::clip_segment(self.cell.shrink(20.0), self.at(from), self.at(to));
        if let Some((a, b, _)) = cut.filter(|(a, b, _)| (*a - *b).length() > 60.0) {
            self.callouts.add(Near {
                at: a + (b - a) * 0.72,
                text: name.to_owned(),
                colour,
                within: self.cell,
            });
        }
    }

    fn mark(&mut self, place: [f64; 2], colour: Color32, name: &str) {
        let at = self.at(place);
        let r = 3.4 * self.sheet.symbol_size();
        let stroke = Stroke::new(weight::NARROW, colour);
        if self.cell.contains(at) {
            self.pen.disc(at, r, self.tokens.table);
            self.pen.ring(at, r, stroke);
            self.pen.disc(at, 1.3, colour);
            self.callouts.add(Near {
                at,
                text: name.to_owned(),
                colour,
                within: self.cell,
            });
        } else {
            self.beyond(at, colour, name);
        }
    }

    /// A centre off the table: its name where the way to it leaves.
    fn beyond(&mut self, at: Pos2, colour: Color32, name: &str) {
        let contact = self.posed.pose.contact;
        let from = self.at([contact.y, contact.z]);
        let room = self.cell.shrink(10.0);
        let Some((_, edge, _)) = super::pen::clip_segment(room, from, at) else {
            return;
        };
        self.callouts.add(Near {
            at: edge,
            text: format!("to the {name}"),
            colour,
            within: self.cell,
        });
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn arm_planes_cut_where_the_drawing_board_says() {
        // Both arms square to the view: the construction is plain trigonometry. Upper line through (0, 400) and (500, 420), lower line through (0, 200) and
        // (500, 170): heights 400 + 0.04 y and 200 - 0.06 y meet at y = -2000, z = 320.
        let arm = |z0: f64, z1: f64| {
            [
                Point::new(100.0, 0.0, z0),
                Point::new(-100.0, 0.0, z0),
                Point::new(0.0, 500.0, z1),
            ]
        };
        let upper = FrontLine::cut(arm(400.0, 420.0), 7.0).unwrap();
        let lower = FrontLine::cut(arm(200.0, 170.0), 7.0).unwrap();
        let [y, z] = upper.meets(&lower).unwrap();
        assert!((y + 2000.0).abs() < 1e-6, "{y}");
        assert!((z - 320.0).abs() < 1e-6, "{z}");
    }

    #[test]
    fn an_arm_tilted_fore_and_aft_is_cut_at_the_contact_point() {
        // Hinge rising 1 in 10 to the front: at x = 50 the line lies 5 higher than at x = 0.
        let arm = [
            Point::new(100.0, 0.0, 410.0),
            Point::new(-100.0, 0.0, 390.0),
            Point::new(0.0, 500.0, 400.0),
        ];
        let [_, z] = FrontLine::cut(arm, 50.0).unwrap().nearest([250.0, 400.0]);
        assert!((z - 405.0).abs() < 1e-9, "{z}");
    }

    #[test]
    fn parallel_lines_meet_nowhere() {
        let a = FrontLine::through(Point::new(0.0, 0.0, 0.0), Point::new(0.0, 10.0, 1.0)).unwrap();
        let b = FrontLine::through(Point::new(0.0, 0.0, 5.0), Point::new(0.0, 10.0, 6.0)).unwrap();
        assert!(a.meets(&b).is_none());
        assert!(FrontLine::through(Point::origin(), Point::new(9.0, 0.0, 0.0)).is_none());
    }
}
