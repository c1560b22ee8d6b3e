//! Arms: true-shape plan, cut lengths, and the templates that wrap around the tubes for their ends.

use trammel_build::{AxleName, Build, PointName, PointRef, Section};
use trammel_drawings::model::{Axis, Dimension, Drawing, Layer, Line, Shape, Stop};
use trammel_drawings::wrap::wrap_templates;
use trammel_fabrication::arm::{ArmPlan, ArmTube, Leg};
use trammel_fabrication::end_cut::EndCut;
use trammel_fabrication::plane::Point;
use trammel_fabrication::stock::{CutPiece, StockSection};
use trammel_geometry::ArmName;

use crate::{
    Shop, defaults,
    draft::{Body, Draft, Group, Made, NotMade, Sawn, axle_word, file_name},
    rods::stock,
};

/// The longest side of a plan on paper, mm.
const PLAN: f64 = 110.0;

pub(crate) fn drafts(build: &Build, axle: AxleName, arm: ArmName, shop: &Shop) -> Made {
    let word = match arm {
        ArmName::Upper => "upper arm",
        ArmName::Lower => "lower arm",
    };
    let title = format!("{} {word}", axle_word(axle));
    let fail = |why: String| NotMade::new(title.clone(), why);
    let shape = Arm::of(build, axle, arm, shop).map_err(fail)?;
    let mut made = vec![shape.plan_sheet(&title, shop)];
    for (leg, name) in [(Leg::Rear, "rear tube"), (Leg::Front, "front tube")] {
        if let Some(tube) = shape.tube(leg).map_err(fail)? {
            made.push(
                shape
                    .ends_sheet(&format!("{title}: {name}"), &tube, shop)
                    .map_err(fail)?,
            );
        }
    }
    Ok(made)
}

struct Arm {
    plan: ArmPlan,
    /// Outside diameter of a round tube.
    round: Option<f64>,
    bush: f64,
    section: StockSection,
    material: String,
    taken: Vec<String>,
}

fn points(arm: ArmName) -> [PointName; 3] {
    match arm {
        ArmName::Upper => [
            PointName::UpperFrontPivot,
            PointName::UpperRearPivot,
            PointName::UpperBallJoint,
        ],
        ArmName::Lower => [
            PointName::LowerFrontPivot,
            PointName::LowerRearPivot,
            PointName::LowerBallJoint,
        ],
    }
}

impl Arm {
    fn of(build: &Build, axle: AxleName, arm: ArmName, shop: &Shop) -> Result<Self, String> {
        let spec = build.axle_spec(axle).ok_or("the build has no such axle")?;
        let names = points(arm);
        let at = |point| {
            build
                .point_mm(PointRef::left(axle, point))
                .ok_or("the arm's points are not given")
        };
        let [front, rear, ball] = names;
        let plan = ArmPlan::new(at(front)?, at(rear)?, at(ball)?).map_err(|e| e.to_string())?;
        let mut taken = Vec::new();
        let mm = build.unit.mm();
        let tube = spec.parts.arm(arm).tube.as_ref();
        let (section, material) = stock(tube, defaults::ARM_TUBE, mm, shop, &mut taken)?;
        let across = tube.map_or(defaults::ARM_TUBE[0], |t| t.section.across() * mm);
        let square = matches!(tube.map(|t| t.section), Some(Section::Square(..)));
        let typed = spec
            .parts
            .joints
            .get(&rear)
            .and_then(|p| p.end.as_ref()?.head_diameter);
        let least = defaults::BUSH_PER_TUBE * across;
        let bush = typed.map(|v| v * mm).filter(|v| *v >= across).unwrap_or_else(|| {
            taken.push(format!(
                "Bush at the pivots: outside diameter {} taken; one no thinner than the tube is wanted for a notch.",
                shop.text(least)
            ));
            least
        });
        taken.push(format!(
            "Housing of the ball joint: round, {} across, square to the arm: taken; measure yours.",
            shop.text(defaults::HOUSING)
        ));
        if [front, rear, ball]
            .into_iter()
            .any(|p| build.has_own_right_point(axle, p))
        {
            taken.push("The right arm has points of its own: this is the left one. Mirror the right side, or measure it apart.".to_owned());
        }
        Ok(Self {
            plan,
            round: (!square).then_some(across),
            bush,
            section,
            material,
            taken,
        })
    }

    /// A tube with its ends; none for a square one.
    fn tube(&self, leg: Leg) -> Result<Option<ArmTube>, String> {
        let made = self
            .round
            .map(|d| self.plan.tube(leg, d, self.bush, defaults::HOUSING));
        made.transpose().map_err(|e| e.to_string())
    }

    fn legs(&self) -> [(Leg, &'static str, f64, f64); 2] {
        let [rear, front] = self.plan.legs();
        let [rear_angle, front_angle] = self.plan.angles();
        [
            (Leg::Rear, "Rear tube", rear, rear_angle),
            (Leg::Front, "Front tube", front, front_angle),
        ]
    }

    fn plan_sheet(&self, title: &str, shop: &Shop) -> Draft {
        let mut notes = vec![format!(
            "True shape, looking square on the arm's plane. Pivots {} apart; one arm for each side, the right one turned over.",
            shop.text(self.plan.pivots)
        )];
        let mut sawn = Vec::new();
        for (leg, name, length, angle) in self.legs() {
            let tube = self.tube(leg).ok().flatten();
            let (cut, rest) = match &tube {
                Some(t) => (
                    t.cut_length,
                    format!(
                        "saw {} square, {} between the bottoms of its ends",
                        shop.text(t.cut_length),
                        shop.text(t.shortest)
                    ),
                ),
                None => (
                    length,
                    "square tube: fit its ends to bush and housing by hand".to_owned(),
                ),
            };
            notes.push(format!(
                "{name}: pivot to ball joint {}, {:.1}\u{b0} to the pivot axis; {rest}.",
                shop.text(length),
                angle.to_degrees()
            ));
            sawn.push(Sawn {
                section: self.section,
                material: self.material.clone(),
                piece: CutPiece {
                    name: format!("{title}: {}", name.to_lowercase()),
                    length: cut,
                    count: 2,
                },
            });
        }
        notes.extend(self.taken.iter().cloned());
        let (drawing, scale) = self.plan_drawing(title, shop);
        Draft {
            heed: Vec::new(),
            name: file_name(title),
            title: title.to_owned(),
            kind: "plan and cut lengths",
            group: Group::Arms,
            at: None,
            material: self.material.clone(),
            quantity: "1 left, 1 right, mirrored".to_owned(),
            body: Body::Figure(Box::new(drawing), scale),
            notes,
            sawn,
        }
    }

    /// The plan, made smaller by a round number so that it goes on any paper; its measures are true.
    fn plan_drawing(&self, title: &str, shop: &Shop) -> (Drawing, String) {
        let ball = self.plan.ball_joint;
        let largest = self.plan.pivots.max(ball.y).max(ball.x.abs());
        let scale = [1.0, 2.0, 5.0, 10.0, 20.0, 50.0]
            .into_iter()
            .find(|n| largest / n <= PLAN)
            .unwrap_or(100.0);
        let small = |p: Point| Point::from(p.coords / scale);
        let [rear, front] = [Point::origin(), Point::new(self.plan.pivots, 0.0)];
        let mut drawing = Drawing::new(title);
        let past = 6.0;
        let axis = [
            small(rear) - trammel_fabrication::plane::Vector::x() * past,
            small(front) + trammel_fabrication::plane::Vector::x() * past,
        ];
        drawing.stroke(Line::CENTRE, axis[0], axis[1]);
        for pivot in [rear, front] {
            drawing.stroke(Line::WIDE, small(pivot), small(ball));
        }
        for (at, radius) in [
            (rear, self.bush / 2.0),
            (front, self.bush / 2.0),
            (ball, defaults::HOUSING / 2.0),
        ] {
            drawing.add(
                Layer::Sheet,
                Line::NARROW,
                Shape::Circle {
                    centre: small(at),
                    radius: (radius / scale).max(0.8),
                },
            );
        }
        let stop = |at: Point, length: f64| Stop {
            at: small(at),
            text: shop.text(length),
        };
        let low = -12.0;
        let left = small(Point::new(ball.x.min(0.0), 0.0)).x - 14.0;
        for (axis, line_at, stops) in [
            (
                Axis::X,
                low,
                vec![stop(ball, ball.x), stop(front, self.plan.pivots)],
            ),
            (Axis::Y, left, vec![stop(ball, ball.y)]),
        ] {
            let running = Dimension::Running {
                datum: Point::origin(),
                axis,
                line_at,
                stops,
            };
            drawing.add(Layer::Sheet, Line::NARROW, Shape::Dimension(running));
        }
        for (at, name, lift) in [(front, "front pivot", 12.0), (ball, "ball joint", 10.0)] {
            let knee = small(at) + trammel_fabrication::plane::Vector::new(8.0, lift);
            let leader = Dimension::Leader {
                tip: small(at),
                knee,
                text: name.to_owned(),
            };
            drawing.add(Layer::Sheet, Line::NARROW, Shape::Dimension(leader));
        }
        (drawing, format!("1:{scale:.0}"))
    }

    fn ends_sheet(&self, tube_name: &str, tube: &ArmTube, shop: &Shop) -> Result<Draft, String> {
        let ends: [(&str, &dyn EndCut); 2] = [
            ("at the pivot", &tube.cope),
            ("at the ball joint", &tube.mitre),
        ];
        let drawing = wrap_templates(tube_name, &ends).map_err(|e| e.to_string())?;
        let title = format!("{tube_name}, ends");
        Ok(Draft {
            heed: Vec::new(),
            name: file_name(&title),
            title,
            kind: "wrap templates, full size",
            group: Group::Arms,
            at: None,
            material: self.material.clone(),
            quantity: "1 left, 1 right, turned over".to_owned(),
            body: Body::FullSize(Box::new(drawing)),
            notes: vec![
                format!(
                    "For tube {} from a bush of {} to a round housing of {}. Saw {} square and strike a line along the tube: the inside of the arm, for both ends.",
                    shop.text(tube.cope.tube_diameter()),
                    shop.text(self.bush),
                    shop.text(defaults::HOUSING),
                    shop.text(tube.cut_length)
                ),
                format!(
                    "Wrap each paper round its end, inside on the line, square edge towards the middle, tips level with the sawn end; mark, cut outside the line, file to fit. From bottom to bottom {}.",
                    shop.text(tube.shortest)
                ),
                "At the ball joint the two tubes meet each other midway; tack them in the fixture before either is welded round.".to_owned(),
            ],
            sawn: Vec::new(),
        })
    }
}
