//! The map under the linkage: made anew when something else than the mapped joint moves, a few milliseconds of it in a frame.

use egui::{Context, TextureHandle, TextureOptions};
use trammel_geometry::{Corner, Point};
use trammel_tuning::{Floor, MapFrame, Plane, Scoring, Stations, TieRodJoint, ToeMap};

use super::{
    lattice::{CELLS, Lattice, Stretch},
    picture, plane,
};
use crate::tokens::Tokens;

/// Cells worked out in a frame at most, about 3 ms (see the table in the tuning kernel's documents), and while something is dragged: the lattice of every
/// other cell.
const CELLS_PER_FRAME: [usize; 2] = [9600, 2500];
/// Height of the map for its width.
const ASPECT: f64 = 0.5625;
/// The joint may stray this far from the map's middle, in half widths and heights, before the map is laid about it anew.
const STRAY: f64 = 0.8;

/// What a map depends on.
#[derive(Clone, Debug, PartialEq)]
struct Key {
    /// The corner with the mapped joint in the middle of the map, wherever it is now.
    corner: Corner,
    joint: TieRodJoint,
    frame: MapFrame,
    stations: Stations,
}

/// What the picture depends on, the map apart.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Look {
    progress: f64,
    scoring: Scoring,
    factor: f64,
    dark: bool,
    clear: Option<u64>,
}

/// What is to be mapped.
pub(crate) struct Asked<'a> {
    pub corner: &'a Corner,
    pub joint: TieRodJoint,
    pub plane: Plane,
    pub stations: &'a Stations,
    pub scoring: Scoring,
    /// From the score's own unit to what is shown.
    pub factor: f64,
    /// Width of the map, mm.
    pub width: f64,
    /// The clear area, where it is known and wanted.
    pub clear: Option<&'a super::clear::Clear>,
    /// Counts what has come of it.
    pub clear_edition: u64,
    /// Where the joint belongs, if that is known.
    pub best: Option<Point>,
    /// Whether a drag goes on: then the map stays where it is.
    pub held: bool,
}

/// A middle with the joint in the map's inner part, and the best spot too where it is near enough.
fn both_in_sight(plane: Plane, joint: Point, best: Option<Point>, size: [f64; 2]) -> Point {
    let Some(off) = best.map(|b| b - joint) else {
        return joint;
    };
    let off = plane::parts(plane, off);
    let near = (off.iter().zip(size)).all(|(off, size)| off.abs() < STRAY * size * 0.9);
    if near {
        joint + plane::way(plane, off.map(|v| 0.5 * v))
    } else {
        joint
    }
}

/// The map with its picture and lines.
pub(crate) struct MapWork {
    key: Option<Key>,
    map: Option<ToeMap>,
    plane: Plane,
    /// Middle of the map and its size, mm.
    middle: Point,
    size: [f64; 2],
    look: Option<Look>,
    texture: Option<TextureHandle>,
    lattice: Option<Lattice>,
    lines: Vec<(f32, Vec<Stretch>)>,
    valley: Vec<Floor>,
    fault: Option<String>,
}

impl Default for MapWork {
    fn default() -> Self {
        Self {
            key: None,
            map: None,
            plane: Plane::Front,
            middle: Point::origin(),
            size: [0.0; 2],
            look: None,
            texture: None,
            lattice: None,
            lines: Vec::new(),
            valley: Vec::new(),
            fault: None,
        }
    }
}

impl MapWork {
    /// Goes on with the map that is asked for, and paints what is new. Asks for another frame while it is not complete.
    pub(crate) fn go_on(&mut self, ctx: &Context, asked: &Asked<'_>, tokens: &Tokens) {
        self.lay(asked);
        let corner = asked.joint.moved_to(asked.corner, self.middle);
        let Ok(frame) = MapFrame::new(self.plane, self.middle, self.size, CELLS) else {
            return;
        };
        let key = Key {
            corner,
            joint: asked.joint,
            frame,
            stations: asked.stations.clone(),
        };
        if self.key.as_ref() != Some(&key) {
            match ToeMap::new(&corner, asked.joint, frame, asked.stations) {
                Ok(map) => (self.map, self.fault) = (Some(map), None),
                Err(fault) => (self.map, self.fault) = (None, Some(fault.to_string())),
            }
            self.key = Some(key);
            self.look = None;
        }
        let Some(map) = &mut self.map else { return };
        let [plenty, few] = CELLS_PER_FRAME;
        if !map.is_complete() && !map.refine(if asked.held { few } else { plenty }) {
            ctx.request_repaint();
        }
        let look = Look {
            progress: map.progress(),
            scoring: asked.scoring,
            factor: asked.factor,
            dark: tokens.dark,
            clear: asked.clear.map(|_| asked.clear_edition),
        };
        if self.look != Some(look) {
            self.look = Some(look);
            self.paint(ctx, asked, tokens);
        }
    }

    /// Where the map lies: about the joint, until the joint leaves its middle part.
    fn lay(&mut self, asked: &Asked<'_>) {
        let place = asked.joint.place(asked.corner);
        let size = [asked.width, asked.width * ASPECT];
        let off = place - self.middle;
        let off = plane::parts(asked.plane, off);
        let strays = (off.iter().zip(size)).any(|(off, size)| 2.0 * off.abs() > STRAY * size);
        let other = self.key.as_ref().is_none_or(|k| k.joint != asked.joint);
        let turned = self.plane != asked.plane;
        if other || turned || (strays && !asked.held) || self.size != size {
            self.middle = both_in_sight(asked.plane, place, asked.best, size);
            (self.plane, self.size) = (asked.plane, size);
        }
        let depth = plane::depth(self.plane).index();
        self.middle[depth] = place[depth];
    }

    fn paint(&mut self, ctx: &Context, asked: &Asked<'_>, tokens: &Tokens) {
        let Some(map) = &self.map else { return };
        let Some(lattice) = Lattice::of(map, asked.scoring, asked.factor) else {
            return;
        };
        let fine = map.is_complete();
        let image = picture::paint(&lattice, asked.clear, fine, tokens);
        match &mut self.texture {
            Some(texture) => texture.set(image, TextureOptions::LINEAR),
            None => self.texture = Some(ctx.load_texture("toe map", image, TextureOptions::LINEAR)),
        }
        let levels: Vec<f32> = picture::levels().collect();
        self.lines = levels
            .iter()
            .copied()
            .zip(lattice.level_lines(&levels))
            .collect();
        self.valley = if map.is_complete() {
            map.valley(asked.scoring)
        } else {
            Vec::new()
        };
        self.lattice = Some(lattice);
    }

    /// Whether every cell is worked out.
    pub(crate) fn is_complete(&self) -> bool {
        self.map.as_ref().is_some_and(ToeMap::is_complete)
    }

    /// Why there is no map.
    pub(crate) fn fault(&self) -> Option<&str> {
        self.fault.as_deref()
    }

    /// The picture, once there is one.
    pub(crate) fn texture(&self) -> Option<egui::TextureId> {
        self.map
            .as_ref()
            .and(self.texture.as_ref())
            .map(TextureHandle::id)
    }

    /// Level lines in the unit square.
    pub(crate) fn lines(&self) -> &[(f32, Vec<Stretch>)] {
        &self.lines
    }

    /// The valley floor in the unit square.
    pub(crate) fn valley(&self) -> impl Iterator<Item = [f32; 2]> + '_ {
        let [columns, rows] = CELLS.map(|n| (n - 1) as f32);
        self.valley
            .iter()
            .map(move |f| [f.column as f32 / columns, f.row as f32 / rows])
    }

    /// The lowest score of a lattice cell for which `keeps` holds, with its place in the unit square.
    pub(crate) fn lowest(&self, keeps: impl Fn([f32; 2]) -> bool) -> Option<([f32; 2], f32)> {
        let lattice = self.lattice.as_ref()?;
        let kept = lattice
            .cells()
            .filter(|(part, value)| !value.is_nan() && keeps(*part));
        kept.min_by(|a, b| a.1.total_cmp(&b.1))
    }

    /// The score at a place of the unit square, as it is shown; not a number where it can't be told.
    pub(crate) fn score_at(&self, part: [f32; 2]) -> f32 {
        self.lattice.as_ref().map_or(f32::NAN, |l| l.at(part))
    }

    /// Width and height, mm.
    pub(crate) fn size(&self) -> [f64; 2] {
        self.size
    }

    /// The first and the last cell's place, mm.
    pub(crate) fn corners(&self) -> [Point; 2] {
        let half = plane::way(self.plane, self.size.map(|v| 0.5 * v));
        [self.middle - half, self.middle + half]
    }

    /// A place in the unit square, from the first cell's corner.
    pub(crate) fn part_of(&self, place: Point) -> [f32; 2] {
        let [across, up] = plane::parts(self.plane, place - self.corners()[0]);
        [(across / self.size[0]) as f32, (up / self.size[1]) as f32]
    }

    /// The place at a part of the unit square.
    pub(crate) fn place_at(&self, part: [f32; 2]) -> Point {
        plane::place(self.plane, self.corners(), part.map(f64::from))
    }

    /// The plane that it lies in.
    pub(crate) fn plane(&self) -> Plane {
        self.plane
    }

    /// How far a place stands out of the map's plane, mm.
    pub(crate) fn off_plane(&self, place: Point) -> f64 {
        let depth = plane::depth(self.plane).index();
        (place[depth] - self.middle[depth]).abs()
    }
}
