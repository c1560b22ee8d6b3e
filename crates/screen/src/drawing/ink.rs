//! Inks a frame, from the grid up to the names.

use egui::{Pos2, Rect, Stroke, Ui, Vec2, vec2};
use trammel_build::{LengthUnit, PointRef, Side};

use super::{
    DrawingInput, Projection, badges, bolts,
    callout::{Callouts, Near},
    construction, forces, grid, keep_outs, layout,
    linkage::{self, View},
    pen::{DOTTED, Pen},
    rack,
    scene::{OutOfReach, Scene},
    sheet::Sheet,
};
use crate::{tokens::weight, words};

/// Everything that a frame shows.
pub(crate) struct Frame<'a> {
    pub rect: Rect,
    pub sheet: Sheet,
    pub fill: Option<Projection>,
    pub scene: &'a Scene,
    pub input: &'a DrawingInput<'a>,
    /// The point under the pointer or being dragged.
    pub hot: Option<PointRef>,
    /// The view that it is handled in.
    pub hot_in: Option<Projection>,
}

impl Frame<'_> {
    /// Inks the table; `keep_off` are places of controls.
    pub(crate) fn ink(&self, ui: &Ui, keep_off: impl Iterator<Item = Rect>) {
        let tokens = self.input.tokens;
        let painter = ui.painter_at(self.rect);
        painter.rect_filled(self.rect, 0.0, tokens.table);
        let mut pen = Pen::new(painter);
        let mut callouts = Callouts::default();
        keep_off.for_each(|r| callouts.keep_off(r));
        let unit = self.input.build.unit;
        grid::grid(&mut pen, &self.sheet, self.rect, self.fill, unit, tokens);
        grid::datums(&mut pen, &self.sheet, self.fill, self.scene, tokens);
        self.map(&mut pen);
        let main = self.fill.unwrap_or(Projection::Front);
        for projection in layout::shown(self.fill) {
            let view = (projection, self.cell(projection));
            let (names, input) = (projection == main, self.input);
            keep_outs::ink::ink(&mut pen, &mut callouts, input, &self.sheet, view, names);
        }
        if let Some(point) = self.hot.or(self.input.selected) {
            self.projection_lines(&mut pen, point);
        }
        for projection in layout::shown(self.fill) {
            self.view(&mut pen, projection);
        }
        for projection in layout::shown(self.fill) {
            self.keep_off(&mut callouts, projection);
        }
        self.forces(&mut pen, &mut callouts);
        if self.input.instant_centres && self.shows(Projection::Front) {
            let side = self.input.selected.map_or(Side::Left, |p| p.side);
            construction::instant_centres(
                &mut pen,
                &mut callouts,
                &self.sheet,
                self.cell(Projection::Front),
                self.scene,
                side,
                tokens,
            );
        }
        for projection in layout::shown(self.fill) {
            self.signs(&mut pen, &mut callouts, projection);
        }
        self.names(&mut callouts);
        self.reach(&mut callouts);
        callouts.ink(&mut pen, tokens);
        pen.finish();
    }

    /// The forces of the corner in every view, with their scale.
    fn forces(&self, pen: &mut Pen, callouts: &mut Callouts) {
        let Some(picture) = self.input.forces else {
            return;
        };
        for projection in layout::shown(self.fill) {
            let clip = pen.set_clip(self.cell(projection).intersect(pen.clip()));
            picture.ink(pen, &self.sheet, projection, self.input.tokens);
            pen.set_clip(clip);
        }
        callouts.keep_off(picture.bar(pen, &self.sheet, self.rect, self.input.tokens));
    }

    /// The part that is looked at, where the linkage stands now.
    fn marked(&self, pen: &mut Pen, projection: Projection) {
        let Some(marked) = self.input.marked.filter(|m| m.axle == self.scene.axle) else {
            return;
        };
        if projection == Projection::Side && marked.side == Side::Right {
            return;
        }
        let moved = self.scene.moved.iter().flatten();
        let joints = moved
            .chain(self.scene.rest.iter().flatten())
            .find(|j| j.side == marked.side);
        if let Some(joints) = joints {
            let t = self.input.tokens;
            forces::mark(pen, &self.sheet, projection, joints, marked.part, t);
        }
    }

    /// The map in its view.
    fn map(&self, pen: &mut Pen) {
        let Some(map) = self.input.map.filter(|m| self.shows(m.projection)) else {
            return;
        };
        let [a, b] = map.corners.map(|p| self.sheet.screen(map.projection, p));
        let clip = pen.set_clip(self.cell(map.projection).intersect(pen.clip()));
        pen.picture(
            Rect::from_two_pos(a, b),
            map.texture,
            super::MapPicture::uv([a.x > b.x, a.y < b.y]),
        );
        pen.set_clip(clip);
    }

    fn shows(&self, projection: Projection) -> bool {
        self.fill.is_none_or(|f| f == projection)
    }

    fn cell(&self, projection: Projection) -> Rect {
        layout::cell(&self.sheet, self.rect, self.fill, projection)
    }

    fn linkage(&self, projection: Projection) -> View<'_> {
        View {
            sheet: &self.sheet,
            projection,
            axle: self.scene.axle,
            tokens: self.input.tokens,
        }
    }

    fn view(&self, pen: &mut Pen, projection: Projection) {
        let view = self.linkage(projection);
        let seen = |side| projection != Projection::Side || side == Side::Left;
        let rest = || self.scene.rest.iter().flatten().filter(|j| seen(j.side));
        let moved = || self.scene.moved.iter().flatten().filter(|j| seen(j.side));
        for joints in rest() {
            view.stands(pen, joints);
        }
        self.marked(pen, projection);
        rack::rack(pen, &self.sheet, projection, self.scene, self.input.tokens);
        for joints in rest() {
            view.rest(pen, joints);
        }
        // However far the linkage goes, views do not run into each other.
        let clip = pen.set_clip(self.cell(projection).intersect(pen.clip()));
        for joints in moved() {
            rack::moved(pen, &self.sheet, projection, joints, self.input.tokens);
            view.moved(pen, joints);
        }
        pen.set_clip(clip);
        for joints in rest() {
            view.joints(pen, joints);
            bolts::ink(pen, self.input, &self.sheet, projection, joints);
        }
    }

    /// Where a point is in a view, if it is shown there.
    fn at(&self, projection: Projection, point: PointRef) -> Option<Pos2> {
        if point.axle != self.scene.axle || !self.shows(projection) {
            return None;
        }
        if projection == Projection::Side && point.side == Side::Right {
            return None;
        }
        let p = self.scene.side(point.side)?.at(point.point)?;
        Some(self.sheet.screen(projection, p))
    }

    /// From view to view through a point: straight across, and between plan and side view round the mitre line.
    fn projection_lines(&self, pen: &mut Pen, point: PointRef) {
        let t = self.input.tokens;
        let [front, plan, side] = Projection::ALL.map(|p| self.at(p, point));
        let stroke = Stroke::new(weight::NARROW, t.ghost(t.accent));
        let past = 14.0;
        if let Some((f, p)) = front.zip(plan) {
            let run = [f + vec2(0.0, past), p - vec2(0.0, past)];
            pen.pattern(&run, stroke, DOTTED);
        }
        if let Some((f, s)) = front.zip(side) {
            let run = [f - vec2(past, 0.0), s + vec2(past, 0.0)];
            pen.pattern(&run, stroke, DOTTED);
        }
        if let Some((p, s)) = plan.zip(side) {
            let mitre = egui::pos2(s.x, p.y);
            let faint = Stroke::new(weight::HAIR, t.wash(t.accent, 0.45));
            pen.pattern(&[p, mitre, s], faint, DOTTED);
            let half = Vec2::splat(16.0) * vec2(1.0, -1.0);
            pen.line(mitre - half, mitre + half, faint);
        }
    }

    /// Rings round points, locks and cautions.
    fn signs(&self, pen: &mut Pen, callouts: &mut Callouts, projection: Projection) {
        let (input, t) = (self.input, self.input.tokens);
        let r = 9.5 * self.sheet.symbol_size();
        if let Some(at) = input.selected.and_then(|p| self.at(projection, p)) {
            pen.disc(at, r, t.wash(t.accent, 0.16));
            pen.ring(at, r, Stroke::new(weight::SYMBOL, t.accent));
        }
        let hot = self.hot.filter(|p| Some(*p) != input.selected);
        if let Some(at) = hot.and_then(|p| self.at(projection, p)) {
            pen.disc(at, r, t.wash(t.accent, 0.12));
            pen.ring(at, r, Stroke::new(weight::HAIR, t.ghost(t.accent)));
        }
        for (point, grade) in input.marks {
            if let Some(at) = self
                .at(projection, *point)
                .filter(|at| self.rect.contains(*at))
            {
                let place = callouts.place_sign(at, self.rect);
                badges::caution(pen, place, *grade, t);
            }
        }
        for (point, at) in self.points(projection) {
            if let Some(solid) = badges::lock(input, projection, point) {
                let place = callouts.place_sign(at, self.rect);
                badges::padlock(pen, place, solid, t);
            }
        }
    }

    /// Points of a view that are in sight.
    fn points(&self, projection: Projection) -> impl Iterator<Item = (PointRef, Pos2)> {
        let joints = self.scene.rest.iter().flatten();
        let named = joints.flat_map(|j| j.points().map(|(name, _)| (j.side, name)));
        named.filter_map(move |(side, point)| {
            let point = PointRef {
                axle: self.scene.axle,
                side,
                point,
            };
            let at = self.at(projection, point)?;
            self.rect.contains(at).then_some((point, at))
        })
    }

    /// What signs and names should not hide.
    fn keep_off(&self, callouts: &mut Callouts, projection: Projection) {
        for (_, at) in self.points(projection) {
            callouts.keep_off(Rect::from_center_size(at, Vec2::splat(15.0)));
        }
        let seen = |side| projection != Projection::Side || side == Side::Left;
        for joints in self.scene.rest.iter().flatten().filter(|j| seen(j.side)) {
            let stands = self.linkage(projection).stand_rects(joints);
            stands.into_iter().for_each(|r| callouts.keep_off(r));
            for ends in linkage::members(joints) {
                callouts.keep_off_line(ends.map(|p| self.sheet.screen(projection, p)));
            }
        }
    }

    /// The names of the point under the pointer, where the pointer is, and of the selected one in the main view.
    fn names(&self, callouts: &mut Callouts) {
        let t = self.input.tokens;
        let main = self.fill.unwrap_or(Projection::Front);
        let hot = self.hot.map(|p| (p, self.hot_in.unwrap_or(main), t.ink));
        let selected = self
            .input
            .selected
            .filter(|p| Some(*p) != self.hot)
            .map(|p| (p, main, t.accent));
        for (point, grade, text) in self.input.remarks {
            if let Some(at) = self.at(main, *point).filter(|at| self.rect.contains(*at)) {
                callouts.add(Near {
                    at,
                    text: text.clone(),
                    colour: grade.map_or(t.ink_soft, |g| t.grade(g)),
                    within: self.rect,
                });
            }
        }
        for (point, projection, colour) in [hot, selected].into_iter().flatten() {
            let Some(at) = self.at(projection, point) else {
                continue;
            };
            if self.rect.contains(at) {
                callouts.add(Near {
                    at,
                    text: name(point),
                    colour,
                    within: self.rect,
                });
            }
        }
    }

    /// Which member ran out, and where.
    fn reach(&self, callouts: &mut Callouts) {
        let projection = self.fill.unwrap_or(Projection::Front);
        for out in &self.scene.out {
            let alike = self
                .scene
                .out
                .iter()
                .filter(|o| o.fault == out.fault)
                .count()
                > 1;
            if out.side == Side::Right && (alike || projection == Projection::Side) {
                continue;
            }
            callouts.add(Near {
                at: self.sheet.screen(projection, out.near),
                text: reach_text(out, alike, self.input.build.unit),
                colour: self.input.tokens.danger,
                within: self.rect,
            });
        }
    }
}

fn name(point: PointRef) -> String {
    match point.side {
        Side::Left => point.point.label().to_owned(),
        Side::Right => format!("{}, right", point.point.label()),
    }
}

/// Such as `The left tie rod runs out at travel +2.31 in`.
fn reach_text(out: &OutOfReach, both: bool, unit: LengthUnit) -> String {
    let side = if both {
        String::new()
    } else {
        format!("{} ", out.side.word())
    };
    format!("The {side}{}", words::runs_out(&out.fault, unit))
}

#[cfg(test)]
mod tests {
    use super::*;
    use trammel_geometry::{Limit, Member, Point, Unreachable};

    #[test]
    fn a_member_that_runs_out_is_named_with_its_place_in_the_builds_unit() {
        let out = |limit| OutOfReach {
            side: Side::Left,
            fault: Unreachable {
                member: Member::TieRod,
                travel: 100.0,
                rack: 60.0,
                limit,
            },
            near: Point::origin(),
        };
        assert_eq!(
            reach_text(&out(Limit::Travel(63.5)), false, LengthUnit::Inch),
            "The left tie rod runs out at travel +2.50 in"
        );
        assert_eq!(
            reach_text(&out(Limit::Rack(-41.2)), true, LengthUnit::Millimetre),
            "The tie rod runs out at rack −41 mm"
        );
    }
}
