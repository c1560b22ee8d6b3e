//! Where the loupe stands.

use egui::{Align2, Pos2, Rect, pos2, vec2};

use super::{CAPTION, MARGIN};

/// Where the loupe stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Place {
    /// With its frame and caption.
    pub outer: Rect,
    /// The map.
    pub map: Rect,
    /// Columns of the map run to the left, rows down, as the drawing has them.
    pub turned: [bool; 2],
}

/// Sizes tried, largest first, for the lower inboard corner, where a corner of a car leaves most room.
const SIZES: [f32; 4] = [1.0, 0.92, 0.84, 0.76];

/// The lower inboard corner of the table if it hides nothing of what is at `busy` there, else the corner where it hides least.
///
/// A large one takes most of the table.
pub(crate) fn place(table: Rect, busy: &[Pos2], large: bool) -> Option<Place> {
    let (share, least, most) = if large {
        (0.7, 240.0, 1000.0)
    } else {
        (0.42, 240.0, 560.0)
    };
    let widest = (share * table.width())
        .clamp(least, most)
        .min(table.width() - 24.0);
    let widest = if large {
        widest.min(1.2 * table.height())
    } else {
        widest
    };
    let size = |part: f32| {
        let width = part * widest;
        let height = (width - 2.0 * MARGIN) * 0.5625 + 2.0 * MARGIN + CAPTION;
        vec2(width, height)
    };
    if widest < 200.0 || size(1.0).y > 0.75 * table.height() {
        return None;
    }
    let inner = table.shrink(12.0).with_min_y(table.top() + 40.0);
    let hidden = |rect: &Rect| {
        busy.iter()
            .filter(|p| rect.expand(9.0).contains(**p))
            .count()
    };
    let at = |corner: Align2, part: f32| corner.align_size_within_rect(size(part), inner);
    let corners = [
        Align2::LEFT_BOTTOM,
        Align2::LEFT_TOP,
        Align2::RIGHT_BOTTOM,
        Align2::RIGHT_TOP,
    ];
    let usual = SIZES.map(|part| at(Align2::LEFT_BOTTOM, part));
    let outer = usual
        .into_iter()
        .find(|r| hidden(r) == 0)
        .or_else(|| corners.map(|c| at(c, 1.0)).into_iter().min_by_key(hidden))?;
    let map = outer.shrink(MARGIN);
    Some(Place {
        outer,
        map: map.with_max_y(map.bottom() - CAPTION),
        turned: [false; 2],
    })
}

/// A rectangle on the other side of a table.
fn across(rect: Rect, table: Rect) -> Rect {
    let shift = 2.0 * (table.center().x - rect.center().x);
    rect.translate(vec2(shift, 0.0))
}

impl Place {
    /// The same on the other side of the table, for a right corner.
    pub(crate) fn mirrored(self, table: Rect) -> Self {
        Self {
            outer: across(self.outer, table),
            map: across(self.map, table),
            turned: self.turned,
        }
    }

    fn turn(&self, [x, y]: [f32; 2]) -> [f32; 2] {
        let [left, down] = self.turned;
        [
            if left { 1.0 - x } else { x },
            if down { 1.0 - y } else { y },
        ]
    }

    /// On the screen, of a place in the unit square.
    pub(crate) fn screen(&self, part: [f32; 2]) -> Pos2 {
        let [x, y] = self.turn(part);
        pos2(
            self.map.left() + x * self.map.width(),
            self.map.bottom() - y * self.map.height(),
        )
    }

    pub(super) fn part(&self, at: Pos2) -> [f32; 2] {
        self.turn([
            (at.x - self.map.left()) / self.map.width(),
            (self.map.bottom() - at.y) / self.map.height(),
        ])
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_loupe_stands_in_the_lower_inboard_corner_and_gives_way_to_joints() {
        let table = Rect::from_min_size(pos2(0.0, 44.0), vec2(850.0, 690.0));
        let free = place(table, &[], false).unwrap().outer;
        assert_eq!(Align2::LEFT_BOTTOM.pos_in_rect(&free), pos2(12.0, 722.0));
        let joint = free.center_top() + vec2(0.0, 5.0);
        let smaller = place(table, &[joint], false).unwrap().outer;
        assert!(smaller.width() < free.width() && !smaller.contains(joint));
        let elsewhere = place(table, &[pos2(30.0, 700.0)], false).unwrap().outer;
        assert!(!elsewhere.contains(pos2(30.0, 700.0)));
        assert!(
            place(
                Rect::from_min_size(pos2(0.0, 0.0), vec2(150.0, 100.0)),
                &[],
                false
            )
            .is_none()
        );
    }

    #[test]
    fn a_large_one_is_larger_and_stays_on_the_table() {
        for size in [vec2(850.0, 690.0), vec2(1360.0, 970.0), vec2(600.0, 500.0)] {
            let table = Rect::from_min_size(pos2(0.0, 44.0), size);
            let usual = place(table, &[], false).unwrap().outer;
            let large = place(table, &[], true).unwrap().outer;
            assert!(large.width() > 1.2 * usual.width(), "{usual:?} {large:?}");
            assert!(table.contains_rect(large), "{large:?}");
        }
    }
}
