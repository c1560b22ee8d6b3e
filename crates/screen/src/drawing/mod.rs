//! The drawing: three projections of one build to one scale, with points that can be dragged.
//!
//! | where | what |
//! |---|---|
//! | [`Drawing`], [`DrawingInput`], [`DrawingEvent`] | the contract with the rest of the screen |
//! | [`Projection`], [`handle_name`] | the three views, and what a point is called in each |
//! | `sheet`, `layout` | from vehicle axes to the table and back; where the views stand |
//! | `scene` | the joints at rest and moved |
//! | `grid`, `wheel`, `rack`, `linkage`, `symbols`, `construction`, `badges`, `callout`, `forces` | what is inked, in the order of `ink` |
//! | `pen`, `strokes` | lines in patterns, clipped to the table, as few shapes |
//! | `handles`, `drag`, `gestures`, `controls` | what can be done on it |
//! | `keep_outs`, `bolts` | places that joints are kept out of; which way their bolts stand |
//!
//! It keeps where the table is looked at and the gesture under way, nothing about the build.

mod badges;
mod bolts;
mod callout;
mod construction;
mod controls;
mod drag;
mod forces;
mod gestures;
mod grid;
mod handles;
mod ink;
pub(crate) mod keep_outs;
mod layout;
mod linkage;
mod pen;
mod projection;
mod rack;
mod scene;
mod sheet;
pub(crate) mod strokes;
mod symbols;
mod telling;
#[cfg(test)]
mod test_scene;
mod wheel;

use egui::{Rect, Role, Sense, Ui, WidgetInfo};
use trammel_analysis::{Grade, Study};
use trammel_build::{AxleName, Build, PointRef, Side, Triple};

use crate::{number_field::tell_node, tokens::Tokens};

pub use forces::{Arrow, ForcePicture};
pub use handles::handle_name;
pub use keep_outs::{KeepOutEvent, KeepOutHand, keep_out_name};
pub use projection::Projection;

/// What the drawing shows.
#[derive(Clone, Copy, Debug)]
pub struct DrawingInput<'a> {
    /// The build, for points and what may move.
    pub build: &'a Build,
    /// Its results, for the linkage moved.
    pub study: &'a Study,
    /// The axle on the table.
    pub axle: AxleName,
    /// Wheel travel of the moved linkage, mm.
    pub travel: f64,
    /// Rack travel of the moved linkage, mm.
    pub rack: f64,
    /// Selected point.
    pub selected: Option<PointRef>,
    /// Point under the pointer, here or in the table.
    pub hovered: Option<PointRef>,
    /// Snap of a drag, in the build's unit. Nought does not snap.
    pub snap: f64,
    /// Fine snap, in the build's unit, while Shift is held.
    pub fine_snap: f64,
    /// Instant-centre lines on demand.
    pub instant_centres: bool,
    /// Marks of the worst caution at a point.
    pub marks: &'a [(PointRef, Grade)],
    /// What may be done with keep-outs.
    pub keep_outs: KeepOutHand,
    /// The toe map under the linkage of one view.
    pub map: Option<MapPicture>,
    /// Force arrows.
    pub forces: Option<&'a ForcePicture>,
    /// A part that is marked.
    pub marked: Option<crate::prove::settings::MarkedPart>,
    /// A few words beside a point in the main view, in the colour of a grade or plain.
    pub remarks: &'a [(PointRef, Option<Grade>, String)],
    /// Colours.
    pub tokens: &'a Tokens,
}

/// A picture that lies in one of the views, under the linkage.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MapPicture {
    /// The picture.
    pub texture: egui::TextureId,
    /// The view.
    pub projection: Projection,
    /// The places of the first and the last of its cells, mm, vehicle axes.
    pub corners: [trammel_geometry::Point; 2],
}

impl MapPicture {
    /// The part of the texture that is painted, where columns run to the left and rows down, or not.
    pub(crate) fn uv(turned: [bool; 2]) -> Rect {
        let ends = turned.map(|t| if t { [1.0, 0.0] } else { [0.0, 1.0] });
        let [[left, right], [top, bottom]] = ends;
        Rect::from_min_max(egui::pos2(left, top), egui::pos2(right, bottom))
    }
}

/// Where the view with the map stands on the screen, for a corner.
#[derive(Clone, Copy, Debug)]
pub(crate) struct MapView {
    sheet: sheet::Sheet,
    projection: Projection,
    side: Side,
}

impl MapView {
    /// On the screen, of a place in the corner's own frame, mm: a right corner is seen in the mirror of the centre plane.
    pub(crate) fn screen(&self, p: trammel_geometry::Point) -> egui::Pos2 {
        self.sheet.screen(self.projection, self.in_vehicle(p))
    }

    /// In vehicle axes, of a place in the corner's own frame.
    pub(crate) fn in_vehicle(&self, p: trammel_geometry::Point) -> trammel_geometry::Point {
        self.side.place_in_vehicle(p)
    }

    /// The view.
    pub(crate) fn projection(&self) -> Projection {
        self.projection
    }

    /// Whether the map's columns run to the left on the screen, and its rows down.
    pub(crate) fn turned(&self) -> [bool; 2] {
        match self.projection {
            Projection::Front => [self.is_across(), false],
            Projection::Side => [true, false],
            Projection::Plan => [self.is_across(), true],
        }
    }

    /// Whether the corner stands on the left half of the table, as a right one does from ahead and from above.
    pub(crate) fn is_across(&self) -> bool {
        self.side == Side::Right && self.projection != Projection::Side
    }
}

/// Where the views stand on the screen.
pub(crate) struct Views {
    rect: Rect,
    sheet: sheet::Sheet,
    fill: Option<Projection>,
}

impl Views {
    /// Each view that is shown, with its cell.
    pub(crate) fn cells(&self) -> impl Iterator<Item = (Projection, Rect)> {
        layout::shown(self.fill).map(|p| (p, layout::cell(&self.sheet, self.rect, self.fill, p)))
    }

    /// On the screen, of a place in vehicle axes, mm.
    pub(crate) fn screen(&self, projection: Projection, p: trammel_geometry::Point) -> egui::Pos2 {
        self.sheet.screen(projection, p)
    }
}

/// What the user did on the drawing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum DrawingEvent {
    /// The pointer is over this point.
    Hover(PointRef),
    /// Chosen, or nothing chosen.
    Select(Option<PointRef>),
    /// A drag began at this point.
    DragStarted(PointRef),
    /// It should now be here, the build's unit, vehicle axes, snapped.
    DragMoved(PointRef, Triple),
    /// The drag ended where it is.
    DragEnded,
    /// The drag was given up: put the point back.
    DragCancelled,
    /// Something was done with a keep-out.
    KeepOut(KeepOutEvent),
}

/// Zoom, pan and drag of the drawing.
#[derive(Clone, Debug, Default)]
pub struct Drawing {
    /// The projection that fills the table, or all three.
    pub fill: Option<Projection>,
    /// Only this corner is fitted to the table when one view fills it.
    pub corner: Option<Side>,
    place: Option<layout::Place>,
    gesture: gestures::Gesture,
    focused: Option<(egui::Id, PointRef)>,
}

impl Drawing {
    /// Lets the wheel and linkage fill the table again at the next frame.
    pub fn refit(&mut self) {
        self.place = None;
    }

    fn shown(&self) -> layout::Shown {
        layout::Shown {
            fill: self.fill,
            corner: self.corner.filter(|_| self.fill.is_some()),
        }
    }

    /// The point that a control with the keyboard's focus stands for, if it is one of this drawing, as of the last frame.
    #[must_use]
    pub fn point_of(&self, id: egui::Id) -> Option<PointRef> {
        let of = |(focused, point)| (focused == id).then_some(point);
        self.focused.and_then(of)
    }

    /// Whether a point or a keep-out is being dragged.
    #[must_use]
    pub fn is_dragging(&self) -> bool {
        use gestures::Gesture::{KeepOut, Point};
        matches!(self.gesture, Point(_) | KeepOut(_))
    }

    /// Takes the space that is left, paints the table there and tells what was done on it, in the order it was done. What is painted is `input`, so a drag
    /// shows in the next frame; [`Drawing::hand`] lets it show in this one.
    pub fn ui(&mut self, ui: &mut Ui, input: &DrawingInput<'_>) -> Vec<DrawingEvent> {
        let (events, inking) = self.hand(ui, input);
        inking.ink(ui, input);
        events
    }

    /// Takes the space that is left and tells what was done on the table there, without painting it. Carry the events out and paint what has come of
    /// them with [`Inking::ink`], so that the linkage follows the hand within the frame.
    pub fn hand(&mut self, ui: &mut Ui, input: &DrawingInput<'_>) -> (Vec<DrawingEvent>, Inking) {
        let rect = ui.available_rect_before_wrap();
        let table = ui.allocate_rect(rect, Sense::CLICK | Sense::DRAG);
        table.widget_info(|| WidgetInfo::labeled(Role::Canvas, true, "Drawing table"));
        tell_node(ui, table.id, &telling::words(input, self.fill));
        let scene = scene::Scene::new(input);
        let busy = self.gesture.is_under_way();
        let mut place = layout::place(self.place, rect, self.shown(), &scene, busy);
        let handles = handles::handles(input, &scene, &place.sheet(rect), rect, self.fill);
        let touch = handles::touch(ui, &handles, &table, input.selected, self.fill);
        self.focused = touch.focused;
        let controls = controls::place(ui, rect, &place, self.fill);
        let mut events = Vec::new();
        if input.keep_outs.may_move {
            let main = self.fill.unwrap_or(Projection::Front);
            let cell = (main, place.cell(rect, main));
            events = keep_outs::keys::run(ui, input, &place.sheet(rect), cell);
        }
        if touch.double {
            place = layout::place(None, rect, self.shown(), &scene, false);
        }
        let on_table = gestures::Table {
            rect,
            input,
            touch: &touch,
        };
        let place = gestures::run(ui, &mut self.gesture, place, &on_table, &mut events);
        let inking = Inking {
            rect,
            sheet: place.sheet(rect),
            fill: self.fill,
            hot: self.gesture.point().or(touch.over.map(|h| h.point)),
            hot_in: touch.over.map(|h| h.projection),
            controls,
        };
        self.place = Some(place);
        inking.controls.apply(self);
        (events, inking)
    }
}

/// A table whose gestures have been taken and that waits to be painted.
#[must_use]
pub struct Inking {
    rect: Rect,
    sheet: sheet::Sheet,
    fill: Option<Projection>,
    hot: Option<PointRef>,
    hot_in: Option<Projection>,
    controls: controls::Controls,
}

impl Inking {
    /// The corner beside the plan and above the side view, where nothing is drawn; none while one view fills the table.
    #[must_use]
    pub fn spare_corner(&self) -> Option<Rect> {
        if self.fill.is_some() {
            return None;
        }
        let plan = layout::cell(&self.sheet, self.rect, None, Projection::Plan);
        let side = layout::cell(&self.sheet, self.rect, None, Projection::Side);
        let corner = Rect::from_min_max(
            egui::pos2(side.left(), self.rect.top()),
            egui::pos2(self.rect.right(), plan.bottom()),
        );
        corner.is_positive().then_some(corner)
    }

    /// Where a view of a side stands; none while it is not shown.
    pub(crate) fn map_view(&self, projection: Projection, side: Side) -> Option<MapView> {
        self.fill
            .is_none_or(|f| f == projection)
            .then_some(MapView {
                sheet: self.sheet,
                projection,
                side,
            })
    }

    /// Where all views stand.
    pub(crate) fn views(&self) -> Views {
        Views {
            rect: self.rect,
            sheet: self.sheet,
            fill: self.fill,
        }
    }

    /// Paints the table. `input` may have changed since [`Drawing::hand`], the axle and the space on the screen not.
    pub fn ink(self, ui: &Ui, input: &DrawingInput<'_>) {
        ink::Frame {
            rect: self.rect,
            sheet: self.sheet,
            fill: self.fill,
            scene: &scene::Scene::new(input),
            input,
            hot: self.hot.or(input.hovered),
            hot_in: self.hot_in,
        }
        .ink(ui, self.controls.rects());
        self.controls.ink(&ui.painter_at(self.rect), input.tokens);
    }
}
