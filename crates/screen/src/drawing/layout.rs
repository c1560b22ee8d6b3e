//! Where the views stand on the table, and when they are fitted to it.

use egui::{Pos2, Rect, Vec2, pos2};
use trammel_build::{AxleName, Side};
use trammel_geometry::{Point, Vector};

use super::{Projection, scene::Scene, sheet::Sheet, wheel};

/// Nearest and farthest zoom, points in a millimetre.
const SCALE: [f64; 2] = [0.005, 60.0];
/// A fitted view is left alone while the linkage grows or shrinks by less than this part of its size.
const STRAY: f64 = 0.04;

/// Where the table is looked at.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Place {
    /// The sheet, its origin counted from the table's top left corner.
    local: Sheet,
    /// Fitted, and not zoomed or panned since.
    fitted: bool,
    bounds: Bounds,
    size: Vec2,
    shown: Shown,
    axle: AxleName,
}

/// What is fitted to the table.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Shown {
    /// One view, or all three.
    pub fill: Option<Projection>,
    /// One corner only.
    pub corner: Option<Side>,
}

impl Place {
    /// The sheet on the screen, for a table at `rect`.
    pub(crate) fn sheet(&self, rect: Rect) -> Sheet {
        let [x, y] = self.local.origin;
        Sheet {
            origin: [x + f64::from(rect.min.x), y + f64::from(rect.min.y)],
            ..self.local
        }
    }

    /// Larger or smaller by `factor`, what is at `about` (from the table's corner) staying there.
    pub(crate) fn zoomed(mut self, factor: f64, about: Vec2) -> Self {
        let scale = (self.local.scale * factor).clamp(SCALE[0], SCALE[1]);
        if !scale.is_finite() || scale == self.local.scale {
            return self;
        }
        let grow = scale / self.local.scale;
        for (o, a) in self.local.origin.iter_mut().zip([about.x, about.y]) {
            *o = f64::from(a) + (*o - f64::from(a)) * grow;
        }
        self.local.scale = scale;
        self.fitted = false;
        self
    }

    /// Shoved across the table.
    pub(crate) fn with_origin(mut self, origin: [f64; 2]) -> Self {
        if origin.iter().all(|o| o.is_finite()) && origin != self.local.origin {
            self.local.origin = origin;
            self.fitted = false;
        }
        self
    }

    /// The view that fills the table, or none.
    pub(crate) fn fill(&self) -> Option<Projection> {
        self.shown.fill
    }

    /// Place of the sheet's origin from the table's corner, points.
    pub(crate) fn origin(&self) -> [f64; 2] {
        self.local.origin
    }

    /// The part of the table that belongs to a view.
    pub(crate) fn cell(&self, rect: Rect, projection: Projection) -> Rect {
        cell(&self.sheet(rect), rect, self.shown.fill, projection)
    }
}

/// The part of the table that belongs to a view; negative where it is out of sight.
pub(crate) fn cell(
    sheet: &Sheet,
    rect: Rect,
    fill: Option<Projection>,
    projection: Projection,
) -> Rect {
    if fill.is_some() {
        return rect;
    }
    let border = sheet.screen_from_sheet([sheet.column, sheet.row]);
    let corner: [Pos2; 2] = match projection {
        Projection::Front => [pos2(rect.left(), border.y), pos2(border.x, rect.bottom())],
        Projection::Plan => [rect.min, border],
        Projection::Side => [border, rect.max],
    };
    Rect::from_min_max(corner[0], corner[1]).intersect(rect)
}

/// The views that are on the table.
pub(crate) fn shown(fill: Option<Projection>) -> impl Iterator<Item = Projection> {
    Projection::ALL
        .into_iter()
        .filter(move |p| fill.is_none_or(|f| f == *p))
}

/// The place for this frame: as it was, or fitted anew where the table or what is on it has changed. While something is dragged it stays.
pub(crate) fn place(
    before: Option<Place>,
    rect: Rect,
    shown: Shown,
    scene: &Scene,
    busy: bool,
) -> Place {
    let bounds = Bounds::of(scene, shown.corner);
    let Some(place) = before.filter(|p| p.shown == shown && p.axle == scene.axle) else {
        return fit(bounds, rect.size(), shown, scene.axle);
    };
    if busy {
        return place;
    }
    if place.fitted {
        if place.size != rect.size() || place.bounds.strays_from(&bounds) {
            return fit(bounds, rect.size(), shown, scene.axle);
        }
        return place;
    }
    let shift = (rect.size() - place.size) * 0.5;
    let [x, y] = place.local.origin;
    Place {
        local: Sheet {
            origin: [x + f64::from(shift.x), y + f64::from(shift.y)],
            ..place.local
        },
        size: rect.size(),
        ..place
    }
}

/// Distances around and between the views, points.
struct Margins {
    beside: f64,
    above: f64,
    below: f64,
    gap: f64,
}

impl Margins {
    fn of(size: Vec2) -> Self {
        let least = f64::from(size.min_elem());
        let part = |part: f64, low: f64, high: f64| (part * least).clamp(low, high);
        Self {
            beside: part(0.05, 14.0, 44.0),
            // Titles stand above the views.
            above: part(0.06, 27.0, 46.0),
            below: part(0.06, 14.0, 46.0),
            gap: part(0.075, 27.0, 64.0),
        }
    }
}

fn fit(bounds: Bounds, size: Vec2, shown: Shown, axle: AxleName) -> Place {
    let fill = shown.fill;
    let [x, y, z] = bounds.extents();
    let margins = Margins::of(size);
    let [width, height] = [size.x, size.y].map(f64::from);
    let (wide, high, gaps) = match fill {
        None => (y + x, z + x, margins.gap),
        Some(Projection::Front) => (y, z, 0.0),
        Some(Projection::Plan) => (y, x, 0.0),
        Some(Projection::Side) => (x, z, 0.0),
    };
    let across = (width - 2.0 * margins.beside - gaps).max(10.0);
    let down = (height - margins.above - margins.below - gaps).max(10.0);
    let scale = (across / wide).min(down / high).clamp(SCALE[0], SCALE[1]);
    // Room to spare goes evenly around and between the views.
    let spare = [across - scale * wide, down - scale * high].map(|s| (s / 3.0).max(0.0));
    let gap = spare.map(|s| (margins.gap + s.min(margins.gap)) / scale);
    let mut local = bounds.sheet(scale, gap);
    let [low, high] = bounds.on_sheet(&local, fill);
    let middle = [0.5 * (low[0] + high[0]), 0.5 * (low[1] + high[1])];
    let shift = 0.5 * (margins.above - margins.below);
    // A corner stands to the outboard side, where less lies beside it.
    let room = 0.5 * (width - scale * (high[0] - low[0])) - margins.beside;
    let aside = match shown.corner {
        Some(Side::Left) => room.max(0.0) * 0.7,
        Some(Side::Right) => room.max(0.0) * -0.7,
        None => 0.0,
    };
    local.origin = [
        width * 0.5 - scale * middle[0] + aside,
        height * 0.5 + shift - scale * middle[1],
    ];
    Place {
        local,
        fitted: true,
        bounds,
        size,
        shown,
        axle,
    }
}

/// Wheels and linkage at rest, mm, vehicle axes.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Bounds {
    low: Point,
    high: Point,
}

impl Bounds {
    fn of(scene: &Scene, corner: Option<Side>) -> Self {
        let mut bounds = Self {
            low: Point::new(f64::INFINITY, f64::INFINITY, 0.0),
            high: Point::new(f64::NEG_INFINITY, f64::NEG_INFINITY, 0.0),
        };
        let seen = |j: &&super::scene::Joints| corner.is_none_or(|side| j.side == side);
        for joints in scene.rest.iter().flatten().filter(seen) {
            joints.points().for_each(|(_, p)| bounds.take(p));
            let reach = Vector::new(
                joints.radius,
                0.5 * wheel::width(joints.radius),
                joints.radius,
            );
            bounds.take(joints.centre + reach);
            bounds.take(joints.centre - reach);
        }
        if bounds.extents().iter().all(|e| e.is_finite() && *e > 1.0) {
            bounds
        } else {
            // Nothing to show: an empty table a vehicle's size.
            Self {
                low: Point::new(-300.0, -700.0, 0.0),
                high: Point::new(300.0, 700.0, 600.0),
            }
        }
    }

    fn take(&mut self, p: Point) {
        // `inf` and `sup` would pass NaN on.
        if p.iter().all(|c| c.is_finite()) {
            self.low = self.low.inf(&p);
            self.high = self.high.sup(&p);
        }
    }

    fn extents(&self) -> [f64; 3] {
        (self.high - self.low).into()
    }

    fn strays_from(&self, other: &Self) -> bool {
        let size = self.extents().into_iter().fold(0.0, f64::max);
        let moved = (self.low - other.low)
            .amax()
            .max((self.high - other.high).amax());
        moved > STRAY * size
    }

    /// The three views side by side with `gap` mm between them, across and down.
    fn sheet(&self, scale: f64, gap: [f64; 2]) -> Sheet {
        let high = self.high;
        Sheet {
            scale,
            origin: [0.0, 0.0],
            plan_down: -high.z - gap[1] - high.x,
            side_right: high.y + gap[0] + high.x,
            column: high.y + 0.5 * gap[0],
            row: -high.z - 0.5 * gap[1],
        }
    }

    /// Corners of what is shown, on the sheet.
    fn on_sheet(&self, sheet: &Sheet, fill: Option<Projection>) -> [[f64; 2]; 2] {
        let mut low = [f64::INFINITY; 2];
        let mut high = [f64::NEG_INFINITY; 2];
        for projection in shown(fill) {
            for corner in [self.low, self.high] {
                let place = sheet.sheet_from_vehicle(projection, corner);
                for i in 0..2 {
                    low[i] = low[i].min(place[i]);
                    high[i] = high[i].max(place[i]);
                }
            }
        }
        [low, high]
    }
}
