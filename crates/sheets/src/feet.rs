//! What the ears of a tab stand on, and what the tube's place says of their height.
//!
//! An ear stands square on its bolt. Where the tube runs along the bolt the ears' feet are coped alike; where it runs askew each ear cuts the tube in an ellipse of its own,
//! shifted along the tube by as much as the ear stands off the joint.

use trammel_build::{AxleName, BoltAxis, Build, FrameTube, PointName, PointRef, Section};
use trammel_fabrication::flat_part::Quantity;
use trammel_fabrication::tab::{Foot, Saddle};
use trammel_geometry::{Point, Vector};

use crate::{Shop, hardware::Hardware};

/// One ear, or all where they are alike.
pub(crate) struct Ear {
    /// Which of a pair; empty where they are alike.
    pub which: &'static str,
    pub foot: Foot,
    /// Of the hole over the foot's middle, mm.
    pub height: f64,
    pub quantity: Quantity,
}

/// The ears that differ, and what is to be said of their feet.
pub(crate) struct Feet {
    pub ears: Vec<Ear>,
    pub notes: Vec<String>,
}

/// Nearer than this to square, a tube is taken as square through the ear, degrees: it moves the cope of an ear 20 mm off the joint by a third of a millimetre.
const SQUARE: f64 = 1.0;
/// Nearer than this to lying in the ear's plane, a tube runs along it, degrees off square.
const ALONG: f64 = 80.0;
/// Feet that differ by less are alike, mm.
const ALIKE: f64 = 0.1;

impl Feet {
    pub(crate) fn of(
        build: &Build,
        at: (AxleName, PointName),
        tube: Option<FrameTube>,
        width: f64,
        h: &Hardware,
        shop: &Shop,
    ) -> Self {
        let Some(lie) = tube.and_then(|tube| Lie::of(build, at, tube)) else {
            return Self::alike(Foot::Flat, h.height, h, Vec::new());
        };
        let mut notes = Vec::new();
        if (lie.height - h.height).abs() > shop.style.step() / 2.0 {
            notes.push(format!(
                "By the tube's line the hole stands {} over its face, and the bracket says {}. Mock it up before you cut.",
                shop.text(lie.height),
                shop.text(h.height)
            ));
        }
        let size = shop.text(2.0 * lie.radius);
        let angle = lie.angle();
        if !lie.is_round {
            notes.push(format!("Foot flat, on a face of square tube {size}."));
            return Self::alike(Foot::Flat, h.height, h, notes);
        }
        if angle > ALONG {
            return lie.beside(h, &size, shop, notes);
        }
        if width >= 2.0 * lie.radius && angle <= SQUARE {
            notes.push(format!(
                "The tab is wider than its round tube of {size}: the foot is drawn flat; fit it to the tube by hand."
            ));
            return Self::alike(Foot::Flat, h.height, h, notes);
        }
        if angle <= SQUARE {
            notes.push(format!("Foot coped to a round tube of {size}."));
            let tube_diameter = 2.0 * lie.radius;
            return Self::alike(Foot::Coped { tube_diameter }, h.height, h, notes);
        }
        lie.askew(h, width, &size, notes)
    }

    fn alike(foot: Foot, height: f64, h: &Hardware, notes: Vec<String>) -> Self {
        Self {
            ears: vec![Ear {
                which: "",
                foot,
                height,
                quantity: turned(2 * h.ears, is_symmetric(&foot)),
            }],
            notes,
        }
    }
}

/// So many, half of them turned over where their outline has a hand.
fn turned(count: u32, symmetric: bool) -> Quantity {
    let mirrored = if symmetric { 0 } else { count / 2 };
    Quantity {
        as_drawn: count - mirrored,
        mirrored,
    }
}

fn is_symmetric(foot: &Foot) -> bool {
    match foot {
        Foot::Flat | Foot::Coped { .. } => true,
        Foot::Askew(saddle) => {
            let skew = saddle.along * saddle.up * saddle.tube_diameter;
            saddle.offset.abs() < ALIKE && skew.abs() < ALIKE
        }
    }
}

/// How a tube lies to a joint on the left side, mm.
struct Lie {
    hole: Point,
    /// On the tube's middle line, nearest to the hole.
    nearest: Point,
    /// The tube's direction.
    along: Vector,
    /// The bolt's, its largest part positive.
    bolt: Vector,
    radius: f64,
    /// Of the hole over the tube's face, straight from its middle line.
    height: f64,
    is_round: bool,
}

impl Lie {
    fn of(build: &Build, (axle, point): (AxleName, PointName), tube: FrameTube) -> Option<Self> {
        let mm = build.unit.mm();
        let at = |t: [f64; 3]| Point::new(t[0], t[1], t[2]) * mm;
        let (from, to) = (at(tube.from), at(tube.to));
        let hole = build.point_mm(PointRef::left(axle, point))?;
        let along = (to - from).try_normalize(1e-9)?;
        let nearest = from + along * along.dot(&(hole - from));
        let bolt = bolt(build, axle, point).try_normalize(1e-9)?;
        let bolt = if bolt[bolt.iamax()] < 0.0 {
            -bolt
        } else {
            bolt
        };
        let radius = tube.section.across() * mm / 2.0;
        Some(Self {
            hole,
            nearest,
            along,
            bolt,
            radius,
            height: (hole - nearest).norm() - radius,
            is_round: matches!(tube.section, Section::Round(..)),
        })
    }

    /// Between tube and bolt, degrees.
    fn angle(&self) -> f64 {
        let with_bolt = self.bolt.dot(&self.along).abs();
        with_bolt.clamp(0.0, 1.0).acos().to_degrees()
    }

    /// Both ears of a pair, or the one: how far each stands from the joint along the bolt.
    fn stand_offs(h: &Hardware) -> Vec<f64> {
        let off = (h.gap + h.thickness) / 2.0;
        if h.ears == 2 {
            vec![off, -off]
        } else {
            vec![0.0]
        }
    }

    fn words(&self) -> [&'static str; 2] {
        match self.bolt.iamax() {
            0 => ["front ear", "rear ear"],
            1 => ["outer ear", "inner ear"],
            _ => ["upper ear", "lower ear"],
        }
    }

    fn seen_from(&self) -> &'static str {
        match self.bolt.iamax() {
            0 => "from ahead",
            1 => "from the left",
            _ => "from above",
        }
    }

    /// The tube runs along the ears: each stands on its flank, beside the crown.
    fn beside(&self, h: &Hardware, size: &str, shop: &Shop, mut notes: Vec<String>) -> Feet {
        let aside = self.bolt.dot(&(self.hole - self.nearest));
        let drop = |off: f64| {
            let off = off + aside;
            let under = self.radius * self.radius - off * off;
            (under > 0.0).then(|| self.radius - under.sqrt())
        };
        let drops: Option<Vec<f64>> = Self::stand_offs(h).into_iter().map(drop).collect();
        notes.push(format!("Foot flat, along a round tube of {size}."));
        let Some(drops) = drops else {
            notes.push("The ears stand wider than their tube and pass its sides: the foot is drawn at the tube's crown; fit it by hand.".to_owned());
            return Feet::alike(Foot::Flat, h.height, h, notes);
        };
        let deepest = drops.iter().copied().fold(0.0, f64::max);
        if deepest > shop.style.step() / 2.0 {
            notes.push(format!(
                "It stands beside the tube's crown and reaches {} below it.",
                shop.text(deepest)
            ));
        }
        let feet = drops.iter().map(|drop| (Foot::Flat, h.height + drop));
        Feet {
            ears: self.ears(&feet.collect::<Vec<_>>()),
            notes,
        }
    }

    /// The tube runs askew through the ears: each is cut to its own ellipse.
    fn askew(&self, h: &Hardware, width: f64, size: &str, mut notes: Vec<String>) -> Feet {
        let off = self.hole - self.nearest;
        let up = (off - self.bolt * self.bolt.dot(&off)).try_normalize(1e-6);
        let across = self.bolt.dot(&self.along);
        let feet = up.and_then(|up| {
            // Right-handed with the bolt towards the reader.
            let right = up.cross(&self.bolt);
            let crossing = self.nearest + self.along * (self.bolt.dot(&off) / across);
            let at = |stand_off: f64| {
                let from_hole = crossing - self.hole + self.along * (stand_off / across);
                let saddle = Saddle {
                    tube_diameter: 2.0 * self.radius,
                    along: self.along.dot(&right),
                    up: self.along.dot(&up),
                    offset: from_hole.dot(&right),
                };
                let height = -from_hole.dot(&up) - saddle.rise();
                saddle.carries(width).then_some((saddle, height))
            };
            let (_, middle) = at(0.0)?;
            Self::stand_offs(h)
                .into_iter()
                .map(|stand_off| {
                    let (saddle, height) = at(stand_off)?;
                    Some((Foot::Askew(saddle), h.height + height - middle))
                })
                .collect::<Option<Vec<_>>>()
        });
        let angle = self.angle();
        let Some(feet) = feet else {
            notes.push(format!("A round tube of {size} runs {angle:.0}\u{b0} off square through the tab and leaves its foot: the foot is drawn flat; fit it to the tube by hand."));
            return Feet::alike(Foot::Flat, h.height, h, notes);
        };
        notes.push(format!(
            "Foot coped to a round tube of {size} that runs {angle:.0}\u{b0} off square: the true shape in the middle of the plate; ease its edges to that angle. Drawn for the left side, seen {}.",
            self.seen_from()
        ));
        Feet {
            ears: self.ears(&feet),
            notes,
        }
    }

    fn ears(&self, feet: &[(Foot, f64)]) -> Vec<Ear> {
        let one = |which, (foot, height): (Foot, f64), count| Ear {
            which,
            foot,
            height,
            quantity: turned(count, is_symmetric(&foot)),
        };
        match *feet {
            [first, second] if are_same(&first, &second) => vec![one("", first, 4)],
            // The other ear is the same turned over, on both sides.
            [first, second] if are_mirrored(&first, &second) => vec![Ear {
                which: "",
                foot: first.0,
                height: first.1,
                quantity: turned(4, false),
            }],
            [first, second] => {
                let [ahead, behind] = self.words();
                vec![one(ahead, first, 2), one(behind, second, 2)]
            }
            [first] => vec![one("", first, 2)],
            _ => Vec::new(),
        }
    }
}

fn are_same(a: &(Foot, f64), b: &(Foot, f64)) -> bool {
    let feet = match (a.0, b.0) {
        (Foot::Askew(a), Foot::Askew(b)) => (a.offset - b.offset).abs() < ALIKE,
        (a, b) => a == b,
    };
    feet && (a.1 - b.1).abs() < ALIKE
}

fn are_mirrored(a: &(Foot, f64), b: &(Foot, f64)) -> bool {
    let (Foot::Askew(first), Foot::Askew(second)) = (a.0, b.0) else {
        return false;
    };
    let skew = first.along * first.up * first.tube_diameter;
    (first.offset + second.offset).abs() < ALIKE && skew.abs() < ALIKE && (a.1 - b.1).abs() < ALIKE
}

/// Which way the bolt stands: as typed, or along the arm's pivots.
fn bolt(build: &Build, axle: AxleName, point: PointName) -> Vector {
    let Some(spec) = build.axle_spec(axle) else {
        return Vector::x();
    };
    let typed = spec
        .parts
        .joints
        .get(&point)
        .and_then(|p| p.bolt.as_ref()?.direction);
    let on_rod = match point {
        PointName::TieRodInner => spec.joint_bolts.inner,
        PointName::TieRodOuter => spec.joint_bolts.outer,
        _ => None,
    };
    if let Some(direction) = typed.or(on_rod) {
        return BoltAxis::direction(direction);
    }
    let arm = match point {
        PointName::UpperFrontPivot | PointName::UpperRearPivot => &spec.upper_arm,
        _ => &spec.lower_arm,
    };
    let at = |t: [f64; 3]| Vector::new(t[0], t[1], t[2]);
    at(arm.front_pivot) - at(arm.rear_pivot)
}
